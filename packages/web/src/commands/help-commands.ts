import { commandTexts as say } from '../texts/commands.js';
import { askLine, showKeys } from './ask-store.js';
import type { Command } from './command.js';

export const helpCommands: readonly Command[] = [
  { id: 'ask', title: say.ask, group: say.groups.help, keys: '/', run: askLine },
  { id: 'keys', title: say.keyList, group: say.groups.help, keys: '?', run: () => showKeys(true) },
];
