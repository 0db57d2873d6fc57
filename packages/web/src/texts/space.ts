import type { Stage } from '../solid/assembly-order.js';
import type { Look } from '../solid/stand.js';

/** Words of the drawing in space. */
export const spaceTexts = {
  label: 'The space',
  canvas:
    'Drawing of the space. Drag to turn, drag with the right button to move, wheel to come closer. Arrow keys turn, with Shift they move, plus and minus come closer, 0 shows the whole room.',
  canvasOnFoot:
    'The space at eye height. W, A, S, D or the arrow keys walk and turn, drag to look round, Escape leaves.',
  canvasRole: 'drawing in space',
  state: (cuts: number, apart: number, step: number | null): string =>
    [
      cuts > 0 && `Cut open in ${cuts === 1 ? '1 plane' : `${cuts} planes`}.`,
      apart > 0 && `Pulled apart by ${Math.round(apart * 100)} %.`,
      step !== null && `Set up to step ${step + 1}.`,
    ]
      .filter(Boolean)
      .join(' '),
  waiting: 'The space is being drawn.',
  noCanvas: 'This browser cannot draw in space; the plan shows the same things.',
  tools: 'Work in the space',
  looksLabel: 'Look at the space',
  looks: {
    above: 'from above',
    south: 'from the south',
    east: 'from the east',
    north: 'from the north',
    west: 'from the west',
    corner: 'from the corner',
  } satisfies Record<Look, string>,
  looksShort: { above: 'above', south: 'S', east: 'E', north: 'N', west: 'W', corner: 'corner' } satisfies Record<
    Look,
    string
  >,
  hand: 'in hand',
  handLabel: 'what is in hand',
  closer: 'Closer',
  farther: 'Farther',
  hint: 'Drag turns, right button moves, wheel comes closer.',
  hintOnFoot: 'W A S D walk, drag looks round, Escape leaves.',
  tool: {
    cut: 'Cut open',
    walk: 'Walk through',
    apart: 'Pull apart',
    steps: 'Step by step',
    shown: 'Shown',
    things: 'Things',
  },
  cut: {
    about: 'Drag the handle of a cut on the drawing, or type its place.',
    add: 'Add a cut',
    remove: 'Take out',
    turn: 'Other side',
    place: 'place',
    across: 'measured',
    axes: ['from the west', 'from the south', 'from the floor'],
    name: (n: number) => `Cut ${n}`,
    handle: (n: number, from: string) => `Cut ${n}, ${from}. Arrow keys move it by 10 mm, with Shift by 100 mm.`,
    outside: (low: string, high: string) => `The cut must lie between ${low} and ${high}.`,
    outsideHint: 'There is nothing to cut further out.',
    keeps: (axis: 0 | 1 | 2, keeps: 'lesser' | 'greater') =>
      `Shows what lies ${[
        ['west of it', 'east of it'],
        ['south of it', 'north of it'],
        ['under it', 'over it'],
      ][axis]![keeps === 'lesser' ? 0 : 1]!}.`,
  },
  walk: {
    begin: 'Walk through',
    end: 'Leave the walk',
    about: 'Walk with W, A, S, D or the arrow keys, drag to look round. Escape leaves.',
    passes: 'Walls, tables and panels stop you; curtains let you through.',
    noPlace: 'Nobody fits into this room on foot: no free place is wide enough.',
    eyes: 'eye height',
    standing: 'standing',
    seated: 'seated',
    source: 'Standing 1.60 m, seated 1.20 m: common practice.',
    outside: (low: string, high: string) => `Eyes must be between ${low} and ${high} above the floor.`,
    outsideHint: 'Eyes in the floor or over the ceiling see nothing of the room.',
    where: (west: string, south: string, way: string) =>
      `${west} from the west, ${south} from the south, looking ${way}`,
    ways: ['east', 'north-east', 'north', 'north-west', 'west', 'south-west', 'south', 'south-east'],
    plan: 'Where you stand',
  },
  apart: {
    about: 'Draws the parts of every thing away from each other. Point at a piece to read its mark.',
    slider: 'Pulled apart',
    share: (share: number) => `${Math.round(share * 100)} %`,
    together: 'Put together',
  },
  steps: {
    caution:
      'A reading order, not a checked erection sequence: whether what stands half built is stable or can be lifted is not assessed. A competent person plans the work.',
    slider: 'Step',
    all: 'Show everything',
    before: 'Step back',
    after: 'Next step',
    none: 'There are no parts yet.',
    whole: 'Everything',
    count: (n: number, of: number) => `${n} of ${of}`,
    name: (stage: Stage, of: string | null) => (of === null ? stageNames[stage] : `${stageNames[stage]}, ${of}`),
  },
  shown: { curtains: 'Curtains', panels: 'Panels', barriers: 'Barrier faces', beams: 'Beams', ceiling: 'Ceiling' },
  things: {
    label: 'Things in the space. Arrow keys choose, Enter looks at it, Escape lets go.',
    pieces: (of: string) => `Pieces of ${of}`,
    piecesHint: 'Arrow keys mark the pieces in the drawing, Escape lets go.',
    kinds: {
      tables: 'Tables',
      equipment: 'Equipment',
      lasers: 'Lasers',
      enclosures: 'Enclosures',
      runs: 'Curtain runs',
      openings: 'Doors and windows',
      devices: 'Signs and devices',
      building: 'Building',
    },
    none: 'Nothing stands here yet.',
  },
  wavelength: (nanometres: string) => `${nanometres} nm`,
} as const;

const stageNames: Readonly<Record<Stage, string>> = {
  feet: 'Feet',
  posts: 'Posts',
  'lower perimeter': 'Lower perimeter',
  'upper perimeter': 'Upper perimeter',
  'cross beams': 'Cross beams',
  'mullions and transoms': 'Mullions and transoms',
  joints: 'Joints of the frame',
  'side panels': 'Side panels',
  'roof panels': 'Roof panels',
  'fan filter units': 'Fan filter units',
  lights: 'Lights',
  'slot covers': 'Slot covers',
  'track supports': 'Track supports',
  track: 'Track',
  curtains: 'Curtains',
  covers: 'Covers of windows and doors',
  'signs and devices': 'Signs, sensors and interlocks',
};
