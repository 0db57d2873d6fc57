import type { Design, Part, Vec2, Vec3 } from '../engine/contract.js';

/** How far each kind of part is drawn from its place when a design is pulled apart wholly [m]: up, and outward from its thing. */
function farOf(role: Part['role']): { readonly up: number; readonly out: number } {
  switch (role) {
    case 'foot':
      return { up: -0.05, out: 0 };
    case 'beam':
    case 'cap':
      return { up: 0.35, out: 0 };
    case 'cross beam':
      return { up: 0.6, out: 0 };
    case 'joint':
      return { up: 0.18, out: 0 };
    case 'light':
      return { up: -0.35, out: 0 };
    case 'roof panel':
      return { up: 0.9, out: 0 };
    case 'fan filter unit':
      return { up: 1.3, out: 0 };
    case 'side panel':
      return { up: 0, out: 0.7 };
    case 'support':
      return { up: 0.3, out: 0.2 };
    case 'track':
    case 'track curve':
    case 'connector':
    case 'end stop':
      return { up: 0.12, out: 0.2 };
    case 'curtain panel':
    case 'strip panel':
      return { up: -0.1, out: 0.45 };
    case 'cover':
      return { up: 0, out: 0.3 };
    default:
      return { up: 0, out: 0 };
  }
}

/** Middle of a part in the plan, and the way along it where it is a line. */
function lineOf({ shape }: Part): { readonly middle: Vec2; readonly along: Vec2 | null } {
  const from = (a: Vec2, b: Vec2) => {
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const along: Vec2 | null = length > 1e-3 ? [(b[0] - a[0]) / length, (b[1] - a[1]) / length] : null;
    return { middle: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] as const, along };
  };
  switch (shape.shape) {
    case 'bar':
      return from([shape.from[0], shape.from[1]], [shape.to[0], shape.to[1]]);
    case 'bend':
      return from([shape.centre[0], shape.centre[1]], [shape.centre[0], shape.centre[1]]);
    case 'box':
      return { middle: [shape.centre[0], shape.centre[1]], along: null };
    case 'plate': {
      const [a, b] = [shape.corners[0]!, shape.corners[2]!];
      return from([a[0], a[1]], [b[0], b[1]]);
    }
    case 'cloth':
      return from(shape.line[0]!, shape.line.at(-1)!);
    case 'loose':
      return { middle: [shape.at[0], shape.at[1]], along: null };
  }
}

/** Outward from the middle of the thing: across the part where it is a line, else straight away. */
function outward(part: Part, centre: Vec2): Vec2 {
  const { middle, along } = lineOf(part);
  const away: Vec2 = [middle[0] - centre[0], middle[1] - centre[1]];
  const normal: Vec2 = along ? [along[1], -along[0]] : away;
  const length = Math.hypot(...normal);
  if (length < 1e-9) return [0, 0];
  const sign = normal[0] * away[0] + normal[1] * away[1] < 0 ? -1 : 1;
  return [(sign * normal[0]) / length, (sign * normal[1]) / length];
}

const middleOf = (points: readonly Vec2[]): Vec2 => [
  points.reduce((sum, p) => sum + p[0], 0) / points.length,
  points.reduce((sum, p) => sum + p[1], 0) / points.length,
];

/** Middles that parts are pulled away from: of their enclosure or run, else of the room. */
export function centresOf(design: Pick<Design, 'enclosures' | 'runs' | 'room'>): (part: Part) => Vec2 {
  const centres = new Map<string, Vec2>([
    ...design.enclosures.map((e) => [e.id, e.centre] as const),
    ...design.runs.map((r) => [r.id, middleOf(r.corners)] as const),
  ]);
  const room = middleOf(design.room.outline);
  return (part) => centres.get(part.of) ?? room;
}

/** How far a part is drawn from its place [m], for a share from 0 (in place) to 1 (wholly apart). */
export function apart(part: Part, centre: Vec2, share: number): Vec3 {
  const { up, out } = farOf(part.role);
  if (out === 0) return [0, 0, up * share];
  // A cover lies on the wall: away from it is towards the middle.
  const sign = part.role === 'cover' ? -1 : 1;
  const [x, y] = outward(part, centre);
  return [x * out * share * sign, y * out * share * sign, up * share];
}
