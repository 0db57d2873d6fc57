import { scheduleCommands } from '../schedules/commands.js';
import { shelfCommands } from '../shelf/commands.js';
import type { Command } from './command.js';
import { sheetCommands } from './sheet-commands.js';

/** Everything that can be done by name or key; each area brings its own list. */
export const allCommands: readonly Command[] = [...sheetCommands, ...scheduleCommands, ...shelfCommands];
