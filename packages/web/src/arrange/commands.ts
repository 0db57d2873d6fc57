import type { Command } from '../commands/command.js';
import { useWorkbench } from '../state/store.js';
import { arrangeTexts as say } from '../texts/arrange.js';
import {
  alignTo,
  copyBeside,
  copyToClipboard,
  cutToClipboard,
  mirrorAt,
  pasteFromClipboard,
  spreadAlong,
  takeAll,
  takeOut,
  turnBy,
} from './act.js';
import { layerNames, toggleShown } from './layers.js';
import type { Line } from './lined-up.js';
import { leaveMeasure } from './measure/state.js';
import { togglePanel } from './panel.js';
import { takeTool, tellAll, toggleTool, useArrange } from './state.js';
import { zoomToHand, zoomToRoom } from './zoom.js';

const now = useWorkbench.getState;
const onPlan = () => now().view === 'plan' && now().computed !== null;
const isWriting = () => document.activeElement?.closest('input, textarea, select') != null;
const inHand = (least: number) => () => onPlan() && now().selection.length >= least && !isWriting();

const lineKeys: Partial<Record<Line, string>> = {
  west: 'Shift+W',
  east: 'Shift+E',
  south: 'Shift+S',
  north: 'Shift+N',
};

/** What can be done with what is in hand, and how the sheet is looked at. */
export const arrangeCommands: readonly Command[] = [
  {
    id: 'take-all',
    title: say.commands.takeAll,
    group: say.commands.group,
    keys: 'Ctrl+A',
    can: () => onPlan() && !isWriting(),
    run: takeAll,
  },
  {
    id: 'take-out',
    title: say.commands.takeOut,
    group: say.commands.group,
    keys: 'Delete',
    can: inHand(1),
    run: takeOut,
  },
  {
    id: 'copy-beside',
    title: say.commands.copyBeside,
    group: say.commands.group,
    keys: 'Ctrl+D',
    can: inHand(1),
    run: copyBeside,
  },
  {
    id: 'copy',
    title: say.commands.copy,
    group: say.commands.group,
    keys: 'Ctrl+C',
    can: () => inHand(1)() && noWords(),
    run: () => void copyToClipboard(),
  },
  {
    id: 'cut',
    title: say.commands.cut,
    group: say.commands.group,
    keys: 'Ctrl+X',
    can: () => inHand(1)() && noWords(),
    run: () => void cutToClipboard(),
  },
  // The browser's own key brings the text without asking for leave to read the clipboard.
  {
    id: 'paste',
    title: say.commands.paste,
    group: say.commands.group,
    can: onPlan,
    run: () => void pasteFromClipboard(),
  },
  {
    id: 'turn-left',
    title: say.commands.turnLeft,
    group: say.commands.group,
    keys: 'Shift+T',
    can: inHand(1),
    run: () => turnBy(Math.PI / 2),
  },
  {
    id: 'turn-right',
    title: say.commands.turnRight,
    group: say.commands.group,
    can: inHand(1),
    run: () => turnBy(-Math.PI / 2),
  },
  {
    id: 'mirror-west-east',
    title: say.commands.mirror[0],
    group: say.commands.group,
    can: inHand(1),
    run: () => mirrorAt(Math.PI / 2),
  },
  {
    id: 'mirror-south-north',
    title: say.commands.mirror[1],
    group: say.commands.group,
    can: inHand(1),
    run: () => mirrorAt(0),
  },
  ...(Object.keys(say.lines) as Line[]).map(
    (line): Command => ({
      id: `line-up-${line}`,
      title: say.lines[line].about,
      group: say.commands.group,
      ...(lineKeys[line] ? { keys: lineKeys[line] } : {}),
      can: inHand(2),
      run: () => alignTo(line),
    }),
  ),
  {
    id: 'spread-west-east',
    title: say.commands.spread[0],
    group: say.commands.group,
    can: inHand(3),
    run: () => spreadAlong(0),
  },
  {
    id: 'spread-south-north',
    title: say.commands.spread[1],
    group: say.commands.group,
    can: inHand(3),
    run: () => spreadAlong(1),
  },
  {
    id: 'measure',
    title: say.measure.title,
    group: say.commands.sheet,
    keys: 'Shift+M',
    can: onPlan,
    run: () => (useArrange.getState().tool === 'measure' ? leaveMeasure() : takeTool('measure')),
  },
  {
    id: 'layers',
    title: say.layers.title,
    group: say.commands.sheet,
    keys: 'Shift+L',
    can: onPlan,
    run: () => togglePanel('layers'),
  },
  ...layerNames.map(
    (name): Command => ({
      id: `layer-${name}`,
      title: say.layers.toggle(say.layers.names[name]),
      group: say.commands.sheet,
      can: onPlan,
      run: () => toggleShown(name),
    }),
  ),
  {
    id: 'zoom-hand',
    title: say.commands.zoomHand,
    group: say.commands.sheet,
    keys: 'Shift+Z',
    can: inHand(1),
    run: zoomToHand,
  },
  {
    id: 'zoom-frame',
    title: say.commands.zoomFrame,
    group: say.commands.sheet,
    keys: 'Shift+F',
    can: onPlan,
    run: startFrame,
  },
  {
    id: 'zoom-room',
    title: say.commands.zoomRoom,
    group: say.commands.sheet,
    keys: 'Shift+R',
    can: onPlan,
    run: zoomToRoom,
  },
  {
    id: 'leave-tool',
    title: say.commands.leaveTool,
    group: say.commands.sheet,
    keys: 'Escape',
    can: () => useArrange.getState().tool !== null,
    run: () => (useArrange.getState().tool === 'measure' ? leaveMeasure() : takeTool(null)),
  },
];

/** Words that a person has marked are copied as words. */
const noWords = (): boolean => (window.getSelection()?.toString() ?? '') === '';

function startFrame(): void {
  toggleTool('zoom');
  if (useArrange.getState().tool === 'zoom') tellAll([say.commands.frameHint]);
}
