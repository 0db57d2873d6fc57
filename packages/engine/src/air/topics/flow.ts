import { step } from '../../floor/calculation.js';
import { type CalculationStep, calculation, fromStep, ok, type Topic, val } from '../../floor/index.js';
import { airExchangeEfficiency, exhaustAge } from '../age-of-air.js';
import { airCautions } from '../cautions.js';
import { airChangeRate, unidirectionalFlow } from '../clean-flow.js';
import { filterData } from '../filter.js';
import { gapFlow, gapJetVelocity, meanGapVelocity, overPressure } from '../gap-flow.js';
import { fanOperatingPoint } from '../operating-point.js';
import { hundredToOneTime } from '../recovery.js';
import { sources } from '../tables.js';
import { cleanUpTime, onceThroughZone } from '../well-mixed-zone.js';
import { airDensity, andThen, choice, filterClasses, optional, pure, quantity, topic } from './inputs.js';

const gapInputs = [
  quantity('gap', 'area', 'area of all gaps together'),
  pure('discharge', 'discharge coefficient, 0.6 for a sharp edge', '0.6'),
  airDensity,
];

export const flowTopics: readonly Topic[] = [
  topic(
    'over-pressure',
    'over-pressure and gap velocity that a supply holds',
    [quantity('flow', 'flow', 'supply'), ...gapInputs],
    (given) => {
      const [flow, area] = [given.number('flow'), given.number('gap')];
      const gap = { area, dischargeCoefficient: given.number('discharge'), density: given.number('density') };
      return andThen(overPressure(gap, flow), (pressure) =>
        andThen(meanGapVelocity(flow, area), (velocity) => {
          const Q = val(flow, 'm3/s', 'supply');
          const A = val(area, 'm2', 'gap area');
          const rho = val(gap.density, 'kg/m3', 'density');
          const Cd = val(gap.dischargeCoefficient, '1', 'discharge coefficient');
          const lines = [
            step('dp', 'over-pressure', 'rho/2*(Q/(Cd*A))^2', { rho, Q, Cd, A }, pressure, 'Pa', sources.orifice),
            step('v', 'mean velocity in the gaps', 'Q/A', { Q, A }, velocity, 'm/s', sources.continuity),
          ];
          return ok(calculation('Over-pressure', lines, { cautions: [airCautions.overPressure] }));
        }),
      );
    },
  ),

  topic(
    'gap-flow',
    'flow through gaps at a pressure difference',
    [quantity('pressure', 'pressure', 'pressure difference'), ...gapInputs],
    (given) => {
      const area = given.number('gap');
      const density = given.number('density');
      const dischargeCoefficient = given.number('discharge');
      return andThen(gapFlow({ area, dischargeCoefficient, density }, given.number('pressure')), (flow) =>
        andThen(gapJetVelocity(given.number('pressure'), density), (velocity) => {
          const dp = val(given.number('pressure'), 'Pa', 'pressure difference');
          const jet = step(
            'v',
            'velocity of the jet',
            'sqrt(2*dp/rho)',
            { dp, rho: val(density, 'kg/m3') },
            velocity,
            'm/s',
            sources.orifice,
          );
          const values = { Cd: val(dischargeCoefficient, '1'), A: val(area, 'm2'), v: fromStep(jet) };
          return ok(
            calculation('Gap flow', [jet, step('Q', 'flow', 'Cd*A*v', values, flow, 'm3/s', sources.orifice)], {
              cautions: [airCautions.overPressure],
            }),
          );
        }),
      );
    },
  ),

  topic(
    'unidirectional-flow',
    'flow over a clean plane and the fan filter units for it',
    [
      quantity('area', 'area', 'clean plane'),
      quantity('velocity', 'velocity', 'mean velocity', '0.45 m/s'),
      quantity('unit-flow', 'flow', 'flow of one unit at its working pressure'),
    ],
    (given) => {
      const [area, velocity, unit] = ['area', 'velocity', 'unit-flow'].map(given.number) as [number, number, number];
      return andThen(unidirectionalFlow(area, velocity, unit), ({ flow, units }) => {
        const A = val(area, 'm2', 'clean plane');
        const Q = step('Q', 'flow', 'v*A', { v: val(velocity, 'm/s'), A }, flow, 'm3/s', sources.continuity);
        const q = val(unit, 'm3/s', 'flow of one unit');
        const lines = [
          Q,
          step('n', 'units', 'ceil(Q/q - 0.000001)', { Q: fromStep(Q), q }, units, '1', sources.continuity),
        ];
        return ok(calculation('Unidirectional flow', lines, { cautions: [airCautions.overhead] }));
      });
    },
  ),

  topic(
    'air-changes',
    'air changes and 100:1 time of a well-mixed space',
    [quantity('flow', 'flow', 'clean air'), quantity('volume', 'volume', 'volume of the space')],
    (given) =>
      andThen(airChangeRate(given.number('flow'), given.number('volume')), (rate) =>
        andThen(hundredToOneTime(rate), (time) => {
          const Q = val(given.number('flow'), 'm3/s', 'flow');
          const V = val(given.number('volume'), 'm3', 'volume');
          const n = step('n', 'air changes', '3600*Q/V', { Q, V }, rate * 3600, '1/h', sources.continuity);
          const t = step('t100', '100:1 time', '3600*log(100)/n', { n: fromStep(n) }, time, 's', sources.recovery);
          return ok(calculation('Air changes', [n, t], { assumptions: ['Perfect mixing.'] }));
        }),
      ),
  ),

  topic(
    'fan-point',
    'where a fan meets its filter and openings: p0 - a Q^2 = k Q + b Q^2',
    [
      quantity('shut-off', 'pressure', 'pressure without flow, p0'),
      pure('fall', 'a in Pa s2/m6'),
      pure('filter', 'k in Pa s/m3', '0'),
      pure('openings', 'b in Pa s2/m6', '0'),
    ],
    (given) => {
      const [p0, a, k, b] = ['shut-off', 'fall', 'filter', 'openings'].map(given.number) as [
        number,
        number,
        number,
        number,
      ];
      return andThen(fanOperatingPoint(p0, a, { linear: k, quadratic: b }), ({ flow, pressure }) => {
        const values = {
          p0: val(p0, 'Pa', 'without flow'),
          a: val(a, 'Pa s2/m6', 'fall of the fan curve'),
          k: val(k, 'Pa s/m3', 'filter'),
          b: val(b, 'Pa s2/m6', 'openings'),
        };
        const Q = step('Q', 'flow', '2*p0/(k+sqrt(k^2+4*(a+b)*p0))', values, flow, 'm3/s', sources.fanCurve);
        const lines = [
          Q,
          step(
            'p',
            'fan pressure',
            'p0-a*Q^2',
            { p0: values.p0, a: values.a, Q: fromStep(Q) },
            pressure,
            'Pa',
            sources.fanCurve,
          ),
          step(
            'pf',
            'pressure drop of the filter',
            'k*Q',
            { k: values.k, Q: fromStep(Q) },
            k * flow,
            'Pa',
            sources.fanCurve,
          ),
        ];
        return ok(calculation('Fan operating point', lines));
      });
    },
  ),

  topic(
    'well-mixed',
    'steady concentration, rate and clean-up time of a zone flushed with filtered air',
    [
      quantity('volume', 'volume', 'volume of the zone'),
      quantity('supply', 'flow', 'filtered supply'),
      choice('filter', filterClasses, 'filter class', 'H14'),
      quantity('background', 'concentration', 'concentration around the zone and before the filter', '1e7 /m3'),
      quantity('leak', 'flow', 'unfiltered air that gets in', '0 m3/s'),
      pure('source', 'particles given off inside, per second', '0'),
      optional(quantity('target', 'concentration', 'concentration to fall to from the background')),
    ],
    (given) =>
      andThen(filterData(given.word('filter')), ({ integralPenetration: penetration, filterClass }) => {
        const background = given.number('background');
        const target = given.optional('target');
        const zone = {
          volume: given.number('volume'),
          supplyFlow: given.number('supply'),
          penetration,
          upstream: background,
          leakFlow: given.number('leak'),
          room: background,
          source: given.number('source'),
          deposition: 0,
        };
        return andThen(onceThroughZone(zone), (found) => {
          const Qs = val(zone.supplyFlow, 'm3/s', 'supply');
          const Ql = val(zone.leakFlow, 'm3/s', 'leak');
          const Cb = val(background, '1/m3', 'background');
          const P = val(penetration, '1', `penetration of ${filterClass}`, 'table');
          const S = val(zone.source, '1/s', 'particles given off');
          const V = val(zone.volume, 'm3', 'volume');
          const rate = step('lambda', 'rate', '(Qs+Ql)/V', { Qs, Ql, V }, found.decayRate, '1/s', sources.wellMixed);
          const steady = step(
            'Css',
            'steady concentration',
            '(Qs*P*Cb+Ql*Cb+S)/(Qs+Ql)',
            { Qs, Ql, P, Cb, S },
            found.steady,
            '1/m3',
            sources.wellMixed,
          );
          const finish = (more: readonly CalculationStep[]) =>
            ok(
              calculation('Well-mixed zone', [rate, steady, ...more], {
                assumptions: ['Perfect mixing; no loss to surfaces.'],
                cautions: [airCautions.forecast],
              }),
            );
          if (target === undefined) return finish([]);
          return andThen(cleanUpTime(found, background, target), (time) => {
            const values = { C0: Cb, Css: fromStep(steady), Ct: val(target, '1/m3', 'target'), lambda: fromStep(rate) };
            const expression = 'log((max(C0,Ct)-Css)/(Ct-Css))/lambda';
            return finish([step('t', 'clean-up time', expression, values, time, 's', sources.wellMixed)]);
          });
        });
      }),
  ),

  topic(
    'age-of-air',
    'age at the exhaust, and air exchange efficiency when the mean age of the room is known',
    [
      quantity('volume', 'volume', 'volume of the room'),
      quantity('flow', 'flow', 'flow through it'),
      optional(quantity('room-age', 'time', 'mean age in the room')),
    ],
    (given) =>
      andThen(exhaustAge(given.number('volume'), given.number('flow')), (nominal) => {
        const values = { V: val(given.number('volume'), 'm3', 'volume'), Q: val(given.number('flow'), 'm3/s', 'flow') };
        const exhaust = step('tau', 'age at the exhaust', 'V/Q', values, nominal, 's', sources.ageOfAir);
        const roomAge = given.optional('room-age');
        if (roomAge === undefined) return ok(calculation('Age of air', [exhaust]));
        return andThen(airExchangeEfficiency(nominal, roomAge), (efficiency) => {
          const age = { tau: fromStep(exhaust), age: val(roomAge, 's', 'mean age in the room') };
          const line = step('e', 'air exchange efficiency', 'tau/(2*age)', age, efficiency, '1', sources.ageOfAir);
          return ok(calculation('Age of air', [exhaust, line]));
        });
      }),
  ),
];
