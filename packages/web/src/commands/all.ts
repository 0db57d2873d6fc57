import { arrangeCommands } from '../arrange/commands.js';
import { drawingCommands } from '../drawing/commands.js';
import { overlayCommands } from '../overlay/overlay-commands.js';
import { projectCommands } from '../projects/commands.js';
import { scheduleCommands } from '../schedules/commands.js';
import { shelfCommands } from '../shelf/commands.js';
import type { Command } from './command.js';
import { helpCommands } from './help-commands.js';
import { sheetCommands } from './sheet-commands.js';

/** Everything that can be done by name or key; each area brings its own list; overlays come from the engine. */
export const allCommands = (): readonly Command[] => [
  ...sheetCommands,
  ...projectCommands,
  ...drawingCommands,
  ...arrangeCommands,
  ...overlayCommands(),
  ...scheduleCommands,
  ...shelfCommands,
  ...helpCommands,
];
