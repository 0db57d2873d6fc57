import type { Computed, Design, Finding, Shape, Vec2, Vec3 } from '../engine/contract.js';

const middleOf = (points: readonly Vec2[]): Vec2 | undefined => {
  if (points.length === 0) return undefined;
  const xs = points.map((p) => p[0]);
  const ys = points.map((p) => p[1]);
  return [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
};

/** Points of the plan that a thing covers; empty for what is not drawn. */
export function extentOf(design: Design, id: string): readonly Vec2[] {
  const { room } = design;
  const ring = [
    ...design.tables,
    ...design.tables.flatMap((t) => t.equipment),
    ...design.equipment,
    ...design.enclosures,
    ...room.columns,
    ...room.beams,
    ...room.obstructions,
  ].find((t) => t.id === id);
  if (ring) return ring.outline;
  const opening = [...room.doors, ...room.windows, ...room.boards, ...design.barriers].find((t) => t.id === id);
  if (opening) return [opening.from, opening.to];
  const run = design.runs.find((t) => t.id === id);
  if (run) return run.line;
  const laser = design.lasers.find((t) => t.id === id);
  if (laser) return laser.path.map(([x, y]) => [x, y] as const);
  const device = design.devices.find((t) => t.id === id);
  if (device) return [[device.at[0], device.at[1]]];
  const point = [
    ...room.sprinklers,
    ...room.detectors,
    ...room.exitSigns,
    ...room.airTerminals,
    ...room.luminaires,
  ].find((t) => t.id === id);
  return point ? [point.at] : [];
}

const flat = ([x, y]: Vec3): Vec2 => [x, y];

/** Points of the plan that a part covers, roughly: enough to look at it. */
export function extentOfShape(shape: Shape): readonly Vec2[] {
  switch (shape.shape) {
    case 'bar':
      return [flat(shape.from), flat(shape.to)];
    case 'bend':
    case 'box':
      return [flat(shape.centre)];
    case 'plate':
      return shape.corners.map(flat);
    case 'cloth':
      return shape.line;
    case 'loose':
      return [flat(shape.at)];
  }
}

/** Where a finding points in the plan: its own place, else the middle of its subject. */
export function placeOfFinding(computed: Computed, finding: Finding): Vec2 | undefined {
  return finding.at ?? middleOf(extentOf(computed.design, finding.subject));
}

export { middleOf };
