import { type Outcome, ok, refuse } from '../floor/index.js';
import { aboveZero, checked, zeroOrMore } from './arguments.js';
import { curveOutside, curveShape } from './messages.js';
import type { FanPoint, OperatingPoint } from './types.js';

/** What the fan works against. */
export interface FanResistance {
  /** k: filter media, viscous [Pa s/m3] */
  readonly linear: number;
  /** b: openings, plenum, prefilter [Pa s2/m6] */
  readonly quadratic: number;
}

/** Positive root of a x^2 + b x - c = 0 with a >= 0, b >= 0, c >= 0, in the form that does not cancel. */
const positiveRoot = (a: number, b: number, c: number): number => (2 * c) / (b + Math.sqrt(b * b + 4 * a * c));

/**
 * Where a fan with a parabola for its curve meets filter and openings.
 *
 *     p0 - a Q^2 = k Q + b Q^2
 *     Q = (-k + sqrt(k^2 + 4 (a + b) p0)) / (2 (a + b))
 * @param shutOff p0, pressure without flow [Pa]
 * @param fall    a [Pa s2/m6]
 * @param against k and b
 * @returns       flow [m3/s] and fan pressure [Pa], or `air/not-positive`, `air/negative`
 * Source: fan curve meets system curve (derived).
 */
export function fanOperatingPoint(shutOff: number, fall: number, against: FanResistance): Outcome<OperatingPoint> {
  const { linear, quadratic } = against;
  const problems = [
    ...aboveZero({ shutOff: [shutOff, 'Pa'], fall: [fall, 'Pa s2/m6'] }),
    ...zeroOrMore({ linear: [linear, 'Pa s/m3'], quadratic: [quadratic, 'Pa s2/m6'] }),
  ];
  return checked(problems, () => {
    const flow = positiveRoot(fall + quadratic, linear, shutOff);
    return { flow, pressure: shutOff - fall * flow * flow };
  });
}

const isCurve = (curve: readonly FanPoint[]): boolean =>
  curve.length >= 2 &&
  curve.every(({ flow, pressure }, i) => {
    const before = curve[i - 1];
    return flow >= 0 && pressure >= 0 && (!before || (flow > before.flow && pressure <= before.pressure));
  });

const resist = ({ linear, quadratic }: FanResistance, q: number): number => linear * q + quadratic * q * q;

/**
 * Where a fan whose curve is given as points meets filter and openings. Straight lines between the points; the curve is never
 * extended.
 *
 *     p1 + (p2 - p1) (Q - Q1) / (Q2 - Q1) = k Q + b Q^2
 * @param curve   points with rising flow [m3/s] and falling static pressure [Pa]
 * @param against k and b
 * @returns       flow [m3/s] and pressure [Pa], or `air/fan-curve`, `air/negative`, `air/operating-point-outside`
 * Source: fan curve meets system curve (derived).
 */
export function tabledOperatingPoint(curve: readonly FanPoint[], against: FanResistance): Outcome<OperatingPoint> {
  const problems = zeroOrMore({
    linear: [against.linear, 'Pa s/m3'],
    quadratic: [against.quadratic, 'Pa s2/m6'],
  });
  if (!isCurve(curve)) problems.push(curveShape());
  if (problems.length > 0) return refuse(problems);
  const first = curve[0]!;
  if (resist(against, first.flow) > first.pressure) return refuse([curveOutside('below the first')]);
  const after = curve.findIndex((p) => resist(against, p.flow) >= p.pressure);
  if (after < 0) return refuse([curveOutside('beyond the last')]);
  return ok(after === 0 ? first : meet(curve[after - 1]!, curve[after]!, against));
}

/** The crossing on one straight piece: b x^2 + (k + fall) x - (p1 + fall q1) = 0 with the piece falling by `fall` per flow. */
function meet(p: FanPoint, next: FanPoint, { linear, quadratic }: FanResistance): OperatingPoint {
  const fall = (p.pressure - next.pressure) / (next.flow - p.flow);
  const flow = positiveRoot(quadratic, linear + fall, p.pressure + fall * p.flow);
  return { flow, pressure: p.pressure - fall * (flow - p.flow) };
}
