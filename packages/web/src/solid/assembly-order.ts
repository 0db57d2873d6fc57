import type { Design, Part, Vec3 } from '../engine/contract.js';
import { boxesOf, holds, type SolidBox } from './boxes.js';

/** What is set up together, in the order in which it is read; a thing goes through those that it has parts for. */
export const stages = [
  'feet',
  'posts',
  'lower perimeter',
  'upper perimeter',
  'cross beams',
  'mullions and transoms',
  'joints',
  'side panels',
  'roof panels',
  'fan filter units',
  'lights',
  'slot covers',
  'track supports',
  'track',
  'curtains',
  'covers',
  'signs and devices',
] as const;
export type Stage = (typeof stages)[number];

/** Everything of one thing that is set up at one stage. */
export interface AssemblyStep {
  readonly stage: Stage;
  /** Enclosure or run that is set up; null for what is fitted all over the room at the end. */
  readonly of: string | null;
  readonly parts: readonly Part[];
}

/** The parts that carry a frame's joints, and when each of them is there. */
const members = new Set<Part['role']>(['post', 'beam', 'cross beam', 'rail']);

/** Rules that place the parts of a frame itself; those of the curtains that hang in it have one more name. */
const ofFrame = /^compose\.enclosure\.[a-z-]+$/;

function stageOf(part: Part): Stage {
  switch (part.role) {
    case 'foot':
      return 'feet';
    case 'post':
      return 'posts';
    case 'rail':
      return part.placed.rule.endsWith('.bottom-rail') ? 'lower perimeter' : 'mullions and transoms';
    case 'beam':
      return 'upper perimeter';
    case 'cross beam':
      return 'cross beams';
    case 'joint':
    case 'cap':
    case 'fastener':
      return ofFrame.test(part.placed.rule) ? 'joints' : 'track supports';
    case 'side panel':
    case 'panel insert':
      return 'side panels';
    case 'roof panel':
      return 'roof panels';
    case 'fan filter unit':
      return 'fan filter units';
    case 'light':
      return 'lights';
    case 'slot cover':
      return 'slot covers';
    case 'support':
      return 'track supports';
    case 'track':
    case 'track curve':
    case 'connector':
      return 'track';
    case 'end stop':
    case 'runner':
    case 'curtain panel':
    case 'strip panel':
    case 'hem weight':
      return 'curtains';
    case 'cover':
      return 'covers';
    case 'sign':
    case 'sensor':
    case 'interlock':
      return 'signs and devices';
  }
}

/** Roles within one stage: what is threaded or clamped first. */
const within: readonly Part['role'][] = [
  'panel insert',
  'support',
  'runner',
  'curtain panel',
  'hem weight',
  'end stop',
];

/** How far from a member its joints may sit [m]: the largest bracket of a frame of slotted profiles (common practice). */
const jointReach = 0.06;

const placeOf = ({ shape }: Part): Vec3 | null =>
  shape.shape === 'loose' ? shape.at : shape.shape === 'box' ? shape.centre : null;

interface Member {
  readonly boxes: readonly SolidBox[];
  /** Place of its stage in the order. */
  readonly turn: number;
}

/** A joint is made when the later of the members that it joins is there; one that touches no member waits for the whole frame. */
function stageOfJoint(joint: Part, frame: readonly Member[]): Stage {
  const at = placeOf(joint);
  const touching = at ? frame.filter(({ boxes }) => boxes.some((box) => holds(box, at, jointReach))) : [];
  return touching.length === 0 ? 'joints' : stages[Math.max(...touching.map((m) => m.turn))]!;
}

function membersOf(parts: readonly Part[], of: string): readonly Member[] {
  return parts
    .filter((p) => p.of === of && members.has(p.role))
    .map((p) => ({ boxes: boxesOf(p.shape), turn: stages.indexOf(stageOf(p)) }));
}

/** Curtain runs hang on frames, so that frames come first; what is fitted to walls and doors comes last. */
function thingsInOrder({ enclosures, runs }: Pick<Design, 'enclosures' | 'runs'>): readonly string[] {
  const onFrames = new Set(enclosures.map((e) => e.id));
  const late = (on: string | null) => (on !== null && onFrames.has(on) ? 1 : 0);
  return [...enclosures.map((e) => e.id), ...[...runs].sort((a, b) => late(a.on) - late(b.on)).map((r) => r.id)];
}

/**
 * The parts of a design in an order in which they can be read: frames from the feet up, then what they carry, then curtain runs
 * from their supports down, then what is fitted to walls and doors. Every part stands in exactly one step.
 *
 * It is a reading order and no erection sequence: whether what stands half built is stable, can be reached and can be lifted is not
 * assessed. A competent person plans the work on the site.
 * Source: common practice (what carries before what is carried).
 */
export function assemblySteps(design: Pick<Design, 'enclosures' | 'runs' | 'parts'>): readonly AssemblyStep[] {
  const things = thingsInOrder(design);
  const steps = new Map<string, { stage: Stage; of: string | null; parts: Part[] }>();
  const frames = new Map(design.enclosures.map(({ id }) => [id, membersOf(design.parts, id)]));
  for (const part of design.parts) {
    const first = stageOf(part);
    const stage = first === 'joints' ? stageOfJoint(part, frames.get(part.of) ?? []) : first;
    const of = things.includes(part.of) ? part.of : null;
    const key = `${of} ${stage}`;
    const step = steps.get(key) ?? { stage, of, parts: [] };
    step.parts.push(part);
    steps.set(key, step);
  }
  const rank = ({ of, stage }: AssemblyStep) =>
    (of === null ? things.length : things.indexOf(of)) * stages.length + stages.indexOf(stage);
  const turn = (part: Part) => within.indexOf(part.role);
  return [...steps.values()]
    .map((step) => ({
      ...step,
      parts: step.parts.sort((a, b) => turn(a) - turn(b) || (a.id < b.id ? -1 : 1)),
    }))
    .sort((a, b) => rank(a) - rank(b));
}
