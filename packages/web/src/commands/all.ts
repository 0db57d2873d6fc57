import { arrangeCommands } from '../arrange/commands.js';
import type { Command } from './command.js';
import { sheetCommands } from './sheet-commands.js';

/** Everything that can be done by name or key; each area brings its own list. */
export const allCommands: readonly Command[] = [...sheetCommands, ...arrangeCommands];
