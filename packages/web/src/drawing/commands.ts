import type { Command } from '../commands/command.js';
import { drawingTexts } from '../texts/drawing.js';
import { scene, take } from './hand.js';
import { openTapeList } from './tape/open.js';
import { allTools } from './tools/all.js';

const { hand: say, tape } = drawingTexts;

/** Every drawing tool by its name, and the common ones by a letter. */
export const drawingCommands: readonly Command[] = [
  ...allTools.map(
    (tool): Command => ({
      id: tool.id,
      title: say.label(tool.title),
      group: say.group,
      ...(tool.keys ? { keys: tool.keys } : {}),
      can: () => scene() !== null,
      run: () => take(tool),
    }),
  ),
  { id: 'tape-list', title: say.label(tape.title), group: say.group, can: () => scene() !== null, run: openTapeList },
];
