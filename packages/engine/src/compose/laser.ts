import type { CompleteLaser } from '../brief/complete.js';
import type { Assumption, DesignLaser, DesignTable } from '../design/types.js';
import { edges, type Ring } from '../floor/geometry/polygon.js';
import { add2, at3, cross2, plan, sub2, turn2, type Vec2, type Vec3 } from '../floor/geometry/vec.js';
import { commonPractice } from '../floor/source.js';

/** Where a ray from inside a ring leaves it; the start itself when it never does. */
function exitPoint(ring: Ring, from: Vec2, angle: number): Vec2 {
  const d: Vec2 = [Math.cos(angle), Math.sin(angle)];
  const hits = edges(ring).flatMap(({ from: a, to: b }) => {
    const e = sub2(b, a);
    const denominator = cross2(d, e);
    if (Math.abs(denominator) < 1e-12) return [];
    const t = cross2(sub2(a, from), e) / denominator;
    const s = cross2(sub2(a, from), d) / denominator;
    return t > 1e-9 && s >= -1e-9 && s <= 1 + 1e-9 ? [t] : [];
  });
  const t = hits.length === 0 ? 0 : Math.min(...hits);
  return [from[0] + d[0] * t, from[1] + d[1] * t];
}

function emissionOf(laser: CompleteLaser): {
  emission: DesignLaser['emission'];
  meanPower: number | null;
  tolerance: number;
} {
  const { emission } = laser;
  if (emission.kind === 'continuous') {
    const tolerance = emission.tolerance ?? 0;
    const power = emission.power * (1 + tolerance);
    return { emission: { kind: 'continuous', power }, meanPower: power, tolerance };
  }
  if (emission.kind === 'pulsed') {
    const tolerance = emission.tolerance ?? 0;
    const energy = emission.energy * (1 + tolerance);
    const { duration, rate } = emission;
    return { emission: { kind: 'pulsed', energy, duration, rate }, meanPower: energy * rate, tolerance };
  }
  return {
    emission: { kind: emission.kind },
    meanPower: emission.kind === 'scanned' ? emission.power : null,
    tolerance: 0,
  };
}

/** A source with its beam in the room. Without stated legs the beam runs straight to the edge of its table (or of the room). */
export function composeLaser(
  laser: CompleteLaser,
  index: number,
  tables: readonly DesignTable[],
  room: Ring,
): { readonly laser: DesignLaser; readonly assumptions: readonly Assumption[] } {
  const table = tables.find((t) => t.id === laser.table);
  const origin: Vec2 = table?.centre ?? [0, 0];
  const turn = table?.turn ?? 0;
  const base = table?.height ?? 0;
  const toRoom = (p: Vec2): Vec2 => add2(origin, turn2(p, turn));
  const start = at3(toRoom(laser.at), base + laser.beamHeight);
  const given = laser.legs ?? [];
  const end = exitPoint(table?.outline ?? room, plan(start), turn + laser.direction);
  const run = Math.hypot(end[0] - start[0], end[1] - start[1]);
  const points: Vec3[] = [start];
  if (given.length === 0) points.push([end[0], end[1], start[2] + run * Math.tan(laser.elevation ?? 0)]);
  for (const leg of given)
    points.push(at3(toRoom(leg.to), leg.height === undefined ? points.at(-1)![2] : base + leg.height));
  const assumptions: Assumption[] =
    given.length > 0
      ? []
      : [
          {
            path: ['lasers', index, 'legs'],
            what: `way of the beam of ${laser.id}`,
            value: `straight to the edge of ${table?.name ?? 'the room'}`,
            reason: 'no legs are given',
            source: commonPractice,
          },
        ];
  return {
    laser: {
      id: laser.id,
      name: laser.name ?? laser.id,
      table: laser.table ?? null,
      wavelength: laser.wavelength,
      wavelengthRange: laser.wavelengthRange ?? null,
      ...emissionOf(laser),
      diameter: laser.beam.diameter,
      measuredAt: laser.beam.measuredAt,
      divergence: laser.beam.divergence,
      profile: laser.beam.profile ?? 'gaussian',
      declaredClass: laser.class ?? null,
      path: points,
      legs: points.slice(1).map((to, i) => ({
        from: points[i]!,
        to,
        carried: given[i]?.carried ?? 'open',
        endsOn:
          given[i]?.endsOn ??
          (given.length === 0 ? 'nothing stated' : i === given.length - 1 ? 'nothing stated' : 'mirror'),
      })),
      foreseeableTilt: laser.foreseeableTilt,
      heat: laser.heat ?? 0,
      electricalLoad: laser.electricalLoad ?? 0,
      settlingTime: laser.settlingTime ?? 0,
    },
    assumptions,
  };
}
