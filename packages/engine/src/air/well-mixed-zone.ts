import { type Outcome, ok, refuse } from '../floor/index.js';
import { aboveZero, checked, shares, zeroOrMore } from './arguments.js';
import { neverReached, noExchange, supplyTooDirty } from './messages.js';
import type { WellMixedZone } from './types.js';

export interface OnceThrough {
  /** V [m3] */
  readonly volume: number;
  /** Qs, filtered supply [m3/s] */
  readonly supplyFlow: number;
  /** P of the filter [-] */
  readonly penetration: number;
  /** Cup, before the filter [1/m3] */
  readonly upstream: number;
  /** Ql, unfiltered air that gets in [m3/s] */
  readonly leakFlow: number;
  /** Cr, around the zone [1/m3] */
  readonly room: number;
  /** S, particles given off inside [1/s] */
  readonly source: number;
  /** kd, loss to surfaces [1/s] */
  readonly deposition: number;
}

/**
 * A zone flushed once through.
 *
 *     V dC/dt = Qs P Cup + Ql Cr + S - (Qs + Ql + kd V) C
 *     rate = (Qs + Ql) / V + kd;  steady = (Qs P Cup + Ql Cr + S) / (Qs + Ql + kd V)
 * Valid when mixing is much faster than V/Q; under unidirectional flow it is pessimistic in the clean core and silent about
 * wakes. A forecast, never a certificate.
 * @returns rate [1/s] and steady concentration [1/m3], or `air/not-positive`, `air/negative`, `air/not-a-share`,
 *          `air/no-exchange`
 * Source: mass balance (derived).
 */
export function onceThroughZone(z: OnceThrough): Outcome<WellMixedZone> {
  const problems = [
    ...aboveZero({ volume: [z.volume, 'm3'] }),
    ...zeroOrMore({
      supplyFlow: [z.supplyFlow, 'm3/s'],
      upstream: [z.upstream, '1/m3'],
      leakFlow: [z.leakFlow, 'm3/s'],
      room: [z.room, '1/m3'],
      source: [z.source, '1/s'],
      deposition: [z.deposition, '1/s'],
    }),
    ...shares({ penetration: z.penetration }),
  ];
  const removal = z.supplyFlow + z.leakFlow + z.deposition * z.volume;
  if (problems.length === 0 && removal === 0) problems.push(noExchange());
  return checked(problems, () => ({
    decayRate: removal / z.volume,
    steady: (z.supplyFlow * z.penetration * z.upstream + z.leakFlow * z.room + z.source) / removal,
  }));
}

export interface Recirculating {
  /** V [m3] */
  readonly volume: number;
  /** Qr, through the filter and back [m3/s] */
  readonly recirculatedFlow: number;
  /** P of the filter [-] */
  readonly penetration: number;
  /** Ql, in and out [m3/s] */
  readonly leakFlow: number;
  /** Cr, around the zone [1/m3] */
  readonly room: number;
  /** S, particles given off inside [1/s] */
  readonly source: number;
}

/**
 * A zone whose air goes round through a filter, with a leak in and out.
 *
 *     V dC/dt = Ql (Cr - C) + S - Qr (1 - P) C
 *     rate = (Qr (1 - P) + Ql) / V;  steady = (Ql Cr + S) / (Qr (1 - P) + Ql)
 * @returns rate [1/s] and steady concentration [1/m3], or `air/not-positive`, `air/negative`, `air/not-a-share`,
 *          `air/no-exchange`
 * Source: mass balance (derived).
 */
export function recirculatingZone(z: Recirculating): Outcome<WellMixedZone> {
  const problems = [
    ...aboveZero({ volume: [z.volume, 'm3'] }),
    ...zeroOrMore({
      recirculatedFlow: [z.recirculatedFlow, 'm3/s'],
      leakFlow: [z.leakFlow, 'm3/s'],
      room: [z.room, '1/m3'],
      source: [z.source, '1/s'],
    }),
    ...shares({ penetration: z.penetration }),
  ];
  const removal = z.recirculatedFlow * (1 - z.penetration) + z.leakFlow;
  if (problems.length === 0 && removal === 0) problems.push(noExchange());
  return checked(problems, () => ({
    decayRate: removal / z.volume,
    steady: (z.leakFlow * z.room + z.source) / removal,
  }));
}

/**
 * Concentration a time after a known one.
 *
 *     C = Css + (C0 - Css) exp(-rate t)
 * @param zone  rate [1/s] and steady concentration [1/m3]
 * @param first C0 [1/m3]
 * @param time  t [s]
 * @returns     C [1/m3], or `air/negative`
 * Source: solution of the balance (derived).
 */
export const concentrationAfter = (zone: WellMixedZone, first: number, time: number): Outcome<number> =>
  checked(
    zeroOrMore({ first: [first, '1/m3'], time: [time, 's'] }),
    () => zone.steady + (first - zone.steady) * Math.exp(-zone.decayRate * time),
  );

/**
 * Time until the concentration has fallen to a target; zero when it is there already.
 *
 *     t = ln((C0 - Css) / (Ct - Css)) / rate
 * @param zone   rate [1/s] and steady concentration [1/m3]
 * @param first  C0 [1/m3]
 * @param target Ct [1/m3]
 * @returns      t [s], or `air/negative`, `air/never-reached`
 * Source: solution of the balance (derived).
 */
export function cleanUpTime(zone: WellMixedZone, first: number, target: number): Outcome<number> {
  const problems = zeroOrMore({ first: [first, '1/m3'], target: [target, '1/m3'] });
  if (problems.length > 0) return refuse(problems);
  if (zone.steady >= target) return refuse([neverReached(zone.steady, target)]);
  return ok(first <= target ? 0 : Math.log((first - zone.steady) / (target - zone.steady)) / zone.decayRate);
}

/**
 * Clean air that a source of particles needs.
 *
 *     Q = S / (f Cn - Csupply)
 * @param source S [1/s]
 * @param limit  Cn [1/m3]
 * @param share  f, share of the limit that the design may use [-]
 * @param supply Csupply [1/m3]
 * @returns      Q [m3/s], or `air/negative`, `air/not-positive`, `air/not-a-share`, `air/supply-too-dirty`
 * Source: mass balance (derived).
 */
export function cleanAirFlow(source: number, limit: number, share: number, supply: number): Outcome<number> {
  const problems = [
    ...zeroOrMore({ source: [source, '1/s'], supply: [supply, '1/m3'] }),
    ...aboveZero({ limit: [limit, '1/m3'] }),
    ...shares({ share }),
  ];
  if (problems.length === 0 && share * limit <= supply) problems.push(supplyTooDirty());
  return checked(problems, () => source / (share * limit - supply));
}
