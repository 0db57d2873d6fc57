import type { DesignEnclosure } from '../design/types.js';
import type { Decider, Finding } from '../floor/finding.js';
import { frameCautions } from '../frame/index.js';
import type { CheckContext } from './context.js';
import { notAssessed } from './frame-finding.js';

interface Open {
  readonly check: string;
  readonly requirement: string;
  readonly why: string;
  readonly decider?: Decider;
  readonly cautions: readonly string[];
  readonly applies?: (enclosure: DesignEnclosure, context: CheckContext) => boolean;
  readonly required?: (enclosure: DesignEnclosure, context: CheckContext) => boolean;
}

const asksToMove = (enclosure: DesignEnclosure, { brief }: CheckContext): boolean =>
  brief.needs.movable.includes(enclosure.id);

const { engineer, anchors, joints, casters } = frameCautions;

/** What a frame needs and no check computes yet. */
const open: readonly Open[] = [
  {
    check: 'sway',
    requirement: 'Frame sways little under a push',
    why: 'Sideways stiffness is not computed: it rests on the stiffness of brackets and panels, which needs tested data and a frame analysis.',
    cautions: [engineer],
  },
  {
    check: 'natural-frequency',
    requirement: 'Natural frequency of the frame away from its fans',
    why: 'The natural frequency is not computed; keep the frame from touching the table, and measure before and after.',
    cautions: [],
  },
  {
    check: 'post-buckling',
    requirement: 'Posts do not buckle',
    why: 'Buckling of the posts is not computed: their buckling length depends on how the frame is held sideways.',
    cautions: [engineer],
  },
  {
    check: 'joint-capacity',
    requirement: 'Joints and brackets carry their forces',
    why: 'Forces in joints and brackets are not computed, so nothing is said about slip, pull-out or moment. Check them against the supplier’s data.',
    cautions: [joints, engineer],
  },
  {
    check: 'thermal-movement',
    requirement: 'Frame and panels can grow with temperature',
    why: 'Growth of bars and panels against each other is not checked in the design.',
    decider: 'group',
    cautions: [],
  },
  {
    check: 'anchors',
    requirement: 'Anchors hold in the floor',
    why: 'Anchors of the foot plates are not designed: base material, edges and slab are unknown here.',
    cautions: [anchors],
    applies: (e) => e.feet === 'foot plate',
  },
  {
    check: 'earthquake',
    requirement: 'Standing in an earthquake',
    why: 'The brief does not say whether earthquakes count at this site; nothing is computed for them.',
    cautions: [engineer],
    applies: (_, { brief }) => brief.site.seismic === undefined,
  },
  {
    check: 'movability',
    requirement: 'Frame can be moved',
    why: 'Moving is not assessed: thresholds, door heights, cables and the force to push it are not in the model.',
    decider: 'facilities',
    cautions: [casters],
    applies: (e, context) => e.feet === 'caster' || asksToMove(e, context),
    required: asksToMove,
  },
];

/** Findings for what stays open, each with its reason. */
export const openFrameFindings = (enclosure: DesignEnclosure, context: CheckContext): Finding[] =>
  open
    .filter((o) => o.applies?.(enclosure, context) ?? true)
    .map((o) =>
      notAssessed(
        {
          enclosure,
          check: o.check,
          requirement: o.requirement,
          cautions: o.cautions,
          ...(o.decider ? { decider: o.decider } : {}),
        },
        o.why,
        { required: o.required?.(enclosure, context) ?? false },
      ),
    );
