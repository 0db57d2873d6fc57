import type { Command } from '../commands/command.js';
import { commandTexts } from '../texts/commands.js';
import { scheduleTexts as say } from '../texts/schedules.js';
import { scheduleIds } from './schedule.js';
import { openLeaf } from './state.js';

/** Each schedule by its name. */
export const scheduleCommands: readonly Command[] = scheduleIds.map((id) => ({
  id: `schedule-${id}`,
  title: say.show(say.titles[id]),
  group: commandTexts.groups.views,
  run: () => openLeaf(id),
}));
