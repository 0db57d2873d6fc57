import { type Outcome, ok, refuse } from '../floor/index.js';
import { aboveZero, checked, finite, shares, zeroOrMore } from './arguments.js';
import { taskUnknown } from './messages.js';
import { lightLevels } from './tables.js';

export interface LumenMethod {
  /** Phi of one strip [lm] */
  readonly flux: number;
  /** UF: share of the flux that reaches the plane [-] */
  readonly utilisationFactor: number;
  /** MF: 0.8 in clean rooms (common practice) [-] */
  readonly maintenanceFactor: number;
  /** A lit [m2] */
  readonly area: number;
}

const lumenProblems = (m: LumenMethod) => [
  ...aboveZero({
    flux: [m.flux, 'lm'],
    area: [m.area, 'm2'],
    utilisationFactor: [m.utilisationFactor, '1'],
    maintenanceFactor: [m.maintenanceFactor, '1'],
  }),
  ...shares({ maintenanceFactor: m.maintenanceFactor }),
];

/**
 * Mean illuminance of a plane.
 *
 *     E = N Phi UF MF / A
 * @param strips N [-]
 * @returns      E [lx], or `air/not-positive`, `air/not-a-share`, `air/negative`
 * Source: lumen method (from memory).
 */
export const meanIlluminance = (m: LumenMethod, strips: number): Outcome<number> =>
  checked(
    [...lumenProblems(m), ...zeroOrMore({ strips: [strips, '1'] })],
    () => (strips * m.flux * m.utilisationFactor * m.maintenanceFactor) / m.area,
  );

/**
 * Strips that reach a mean illuminance.
 *
 *     N = E A / (Phi UF MF), rounded up
 * @param target E [lx]
 * @returns      N [-], or `air/not-positive`, `air/not-a-share`
 * Source: lumen method (from memory).
 */
export const stripsNeeded = (m: LumenMethod, target: number): Outcome<number> =>
  checked([...lumenProblems(m), ...aboveZero({ target: [target, 'lx'] })], () =>
    Math.ceil(((target * m.area) / (m.flux * m.utilisationFactor * m.maintenanceFactor)) * (1 - 1e-9)),
  );

/**
 * Illuminance of a level plane by a point source.
 *
 *     E = I h / (h^2 + d^2)^1.5
 * @param intensity I towards the point [cd]
 * @param height    h of the source over the plane [m]
 * @param offset    d in plan [m]
 * @returns         E [lx], or `air/negative`, `air/not-positive`, `air/not-finite`
 * Source: inverse square and cosine laws (derived).
 */
export const pointIlluminance = (intensity: number, height: number, offset: number): Outcome<number> =>
  checked(
    [
      ...zeroOrMore({ intensity: [intensity, 'cd'] }),
      ...aboveZero({ height: [height, 'm'] }),
      ...finite({ offset: [offset, 'm'] }),
    ],
    () => (intensity * height) / (height ** 2 + offset ** 2) ** 1.5,
  );

export interface LitStrip {
  /** phi [lm/m] */
  readonly fluxPerLength: number;
  /** h over the plane [m] */
  readonly height: number;
  /** y, sideways from the strip in plan [m] */
  readonly lateral: number;
}

const stripProblems = (s: LitStrip) => [
  ...aboveZero({ fluxPerLength: [s.fluxPerLength, 'lm/m'], height: [s.height, 'm'] }),
  ...finite({ lateral: [s.lateral, 'm'] }),
];

/**
 * Illuminance of a level plane by a straight strip that shines down as Lambert's law says.
 *
 *     E = phi/pi h^2 / (2 d^3) (F(atan(x2/d)) - F(atan(x1/d))),  F(a) = a + sin a cos a,  d = sqrt(h^2 + y^2)
 * @param strip  light and place
 * @param length of the strip [m]
 * @param along  from the strip's middle, along it [m]
 * @returns      E [lx], or `air/not-positive`, `air/not-finite`; light thrown back by walls comes on top
 * Source: integral of I cos^2/r^2 (derived).
 */
export const stripIlluminance = (strip: LitStrip, length: number, along: number): Outcome<number> =>
  checked(
    [...stripProblems(strip), ...aboveZero({ length: [length, 'm'] }), ...finite({ along: [along, 'm'] })],
    () => {
      const d = Math.hypot(strip.height, strip.lateral);
      const primitive = (x: number) => {
        const a = Math.atan(x / d);
        return a + Math.sin(a) * Math.cos(a);
      };
      const span = primitive(length / 2 - along) - primitive(-length / 2 - along);
      return ((strip.fluxPerLength / Math.PI) * strip.height ** 2 * span) / (2 * d ** 3);
    },
  );

/**
 * The same for a strip without ends.
 *
 *     E = phi h^2 / (2 d^3)
 * @returns E [lx], or `air/not-positive`, `air/not-finite`
 * Source: integral of I cos^2/r^2 (derived).
 */
export const endlessStripIlluminance = (strip: LitStrip): Outcome<number> =>
  checked(
    stripProblems(strip),
    () => (strip.fluxPerLength * strip.height ** 2) / (2 * Math.hypot(strip.height, strip.lateral) ** 3),
  );

/**
 * Maintained illuminance for a task.
 * @param task as in the table
 * @returns    E [lx], or `air/light-task`
 * Source: EN 12464-1 (from memory).
 */
export function maintainedIlluminance(task: string): Outcome<number> {
  const level = Object.hasOwn(lightLevels, task) ? lightLevels[task] : undefined;
  return level === undefined ? refuse([taskUnknown(task)]) : ok(level);
}
