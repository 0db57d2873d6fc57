import type { Catalogue, Track, TrackConnector, TrackCurve } from '../catalogue/schema.js';
import { type TrackAim, trackPieces } from '../curtain/index.js';
import type { Shape } from '../design/types.js';
import { at3, between2 } from '../floor/geometry/vec.js';
import { type Outcome, ok, type Problem, refuse } from '../floor/problem.js';
import { connectorFor, type TrackKit } from './curtain-items.js';
import { directionAt, pointAt, type TrackPath } from './curtain-path.js';
import type { PartDraft } from './draft.js';

export interface TrackInput {
  readonly of: string;
  readonly rulePrefix: string;
  readonly path: TrackPath;
  readonly track: Track;
  /** Curve used in the bends; absent when the path has none. */
  readonly curve?: TrackCurve;
  readonly kit: TrackKit;
  readonly catalogue: Catalogue;
  /** Underside of the track. */
  readonly trackHeight: number;
  readonly problemPath: readonly (string | number)[];
}

export interface TrackParts {
  readonly parts: readonly PartDraft[];
  /** Where pieces meet, along the path [m]: in line, at the ends of bends, at sharp corners. */
  readonly joints: readonly number[];
  /** Sharp corners that runners cannot pass, along the path [m]. */
  readonly blocked: readonly number[];
}

const priceOrder: readonly TrackAim[] = ['price', 'joints', 'cuts', 'off-cut'];
const unpricedOrder: readonly TrackAim[] = ['joints', 'cuts', 'off-cut'];

/** Track pieces of every straight by the cheapest exact rule, curves, connectors at every joint, stops at open ends. */
export function trackParts(input: TrackInput): Outcome<TrackParts> {
  const { path, track, curve, catalogue, problemPath } = input;
  const problems: Problem[] = [];
  const parts: PartDraft[] = [];
  const inline = new Set<number>();
  const centreHeight = input.trackHeight + track.size[1] / 2;
  const section = { width: track.size[0], height: track.size[1] };
  const common = { group: 'track' as const, of: input.of, count: 1 };
  for (const s of path.segments) {
    if (s.kind === 'bend') {
      const shape: Shape = {
        shape: 'bend',
        centre: at3(s.centre, centreHeight),
        radius: s.radius,
        start: s.startAngle,
        sweep: s.sweep,
        ...section,
      };
      parts.push({
        ...common,
        item: curve!.id,
        role: 'track curve',
        shape,
        length: s.length,
        mass: curve!.mass,
        placed: { rule: `${input.rulePrefix}.curve`, because: 'The track bends at this corner.' },
      });
      inline.add(s.start);
      if (s.start + s.length < path.length - 1e-6) inline.add(s.start + s.length);
      continue;
    }
    const split = trackPieces({
      length: s.length,
      stock: track.stock.map((p) => ({ length: p.length, price: p.price ? Number(p.price.amount) : 0 })),
      shortestPiece: track.shortestPiece,
      aims: track.stock.every((p) => p.price) ? priceOrder : unpricedOrder,
    });
    if (!split.ok) {
      problems.push(...split.problems.map((p) => ({ ...p, path: [...problemPath, 'path'] })));
      continue;
    }
    let done = 0;
    split.value.pieces.forEach((length, i) => {
      const shape: Shape = {
        shape: 'bar',
        from: at3(between2(s.from, s.to, done / s.length), centreHeight),
        to: at3(between2(s.from, s.to, (done + length) / s.length), centreHeight),
        ...section,
      };
      parts.push({
        ...common,
        item: track.id,
        role: 'track',
        shape,
        length,
        mass: length * track.massPerLength,
        placed: {
          rule: `${input.rulePrefix}.track`,
          because: 'Stock pieces, at most one of them cut, cover the straight part at the least price.',
        },
      });
      done += length;
      if (i < split.value.pieces.length - 1) inline.add(s.start + done);
    });
  }
  // The last bend of a closed track meets its first straight.
  if (path.closed && path.segments.at(-1)?.kind === 'bend') inline.add(0);
  const joints = [...inline].sort((a, b) => a - b);
  const connectors = connectorParts(input, joints, centreHeight);
  if (!connectors.ok) problems.push(...connectors.problems);
  if (problems.length > 0 || !connectors.ok) return refuse(problems);
  if (!path.closed) parts.push(...stopParts(input, centreHeight));
  const { blocked } = connectors.value;
  return ok({
    parts: [...parts, ...connectors.value.parts],
    joints: [...new Set([...joints, ...path.sharp.map((c) => c.at % path.length)])].sort((a, b) => a - b),
    blocked,
  });

  function connectorParts(from: TrackInput, places: readonly number[], height: number) {
    const made: PartDraft[] = [];
    const stopped: number[] = [];
    const missing: Problem[] = [];
    const put = (connector: TrackConnector, at: number, rule: string, because: string) =>
      made.push({
        ...common,
        item: connector.id,
        role: 'connector',
        mass: connector.mass,
        shape: {
          shape: 'box',
          centre: at3(pointAt(path, at), height),
          length: connector.size[0],
          width: connector.size[1],
          height: connector.size[2],
          turn: directionAt(path, at),
        },
        placed: { rule: `${from.rulePrefix}.${rule}`, because },
      });
    if (places.length > 0) {
      const found = connectorFor(catalogue, track.system, 0, problemPath);
      if (found.ok) for (const at of places) put(found.value, at, 'joint', 'Two pieces of track meet here.');
      else missing.push(...found.problems);
    }
    for (const { at, turn } of path.sharp) {
      const found = connectorFor(catalogue, track.system, turn, [...problemPath, 'corner']);
      if (!found.ok) missing.push(...found.problems);
      else {
        put(found.value, at, 'corner', 'Two straight parts of the track meet at this corner.');
        if (!found.value.passesRunners) stopped.push(at % path.length);
      }
    }
    return missing.length > 0 ? refuse(missing) : ok({ parts: made, blocked: stopped });
  }
}

function stopParts({ of, rulePrefix, path, track, kit }: TrackInput, height: number): PartDraft[] {
  const half = kit.endStop.length / 2;
  return [half, path.length - half].map((at) => ({
    item: kit.endStop.id,
    group: 'track',
    role: 'end stop',
    of,
    count: 1,
    mass: kit.endStop.mass,
    shape: {
      shape: 'box',
      centre: at3(pointAt(path, at), height),
      length: kit.endStop.length,
      width: track.size[0],
      height: track.size[1],
      turn: directionAt(path, at),
    },
    placed: { rule: `${rulePrefix}.end-stop`, because: 'A stop at each open end keeps the runners in the track.' },
  }));
}
