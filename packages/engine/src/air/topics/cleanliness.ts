import { step } from '../../floor/calculation.js';
import { calculation, fromStep, ok, type Topic, val } from '../../floor/index.js';
import { airCautions } from '../cautions.js';
import { coincidenceReading, countedConcentration, poissonUpperLimit } from '../counter.js';
import { cubicFoot, federalLimit } from '../federal-standard.js';
import { behindFilters, filterData } from '../filter.js';
import { humanEmission } from '../human-emission.js';
import { hundredToOneTime, recoveryRate } from '../recovery.js';
import { singleSample } from '../sample-volume.js';
import { samplingLocations } from '../sampling-locations.js';
import { classLimitStep } from '../steps.js';
import { sources } from '../tables.js';
import type { Clothing } from '../types.js';
import { cleanAirFlow } from '../well-mixed-zone.js';
import { andThen, choice, filterClasses, pure, quantity, topic } from './inputs.js';

const classInputs = [
  pure('class', 'ISO class, 1 to 9 in steps of 0.1'),
  quantity('size', 'length', 'smallest particle counted, 0.1 um to 5 um', '0.5 um'),
];
const forecast = { cautions: [airCautions.forecast] };

export const cleanlinessTopics: readonly Topic[] = [
  topic('class-limit', 'highest concentration that an ISO class allows', classInputs, (given) =>
    andThen(classLimitStep(given.number('class'), given.number('size')), (limit) =>
      ok(calculation('Class limit', [limit], forecast)),
    ),
  ),

  topic(
    'sampling-locations',
    'least number of sampling locations for a classification',
    [quantity('area', 'area', 'floor area of the clean zone')],
    (given) => {
      const area = given.number('area');
      return andThen(samplingLocations(area), (count) => {
        const inTable = area <= 1000;
        const line = step(
          'NL',
          'sampling locations',
          inTable ? 'table' : 'ceil(27*A/1000)',
          inTable
            ? { table: val(count, '1', `row of Table A.1 for ${area} m²`, 'table') }
            : { A: val(area, 'm2', 'area') },
          count,
          '1',
          sources.locations,
        );
        return ok(calculation('Number of sampling locations', [line], forecast));
      });
    },
  ),

  topic(
    'sample-volume',
    'volume and time of one sample at each location',
    [...classInputs, quantity('flow', 'flow', 'sampling flow of the counter', '1 cfm')],
    (given) =>
      andThen(classLimitStep(given.number('class'), given.number('size')), (limit) =>
        andThen(singleSample(limit.result, given.number('flow')), (sample) => {
          const volume = step(
            'Vs',
            'volume at each location',
            'max(2, 20/Cn*1000)',
            { Cn: fromStep(limit) },
            sample.leastVolume * 1000,
            'L',
            sources.sampleVolume,
          );
          const time = step(
            't',
            'time at each location',
            'max(60, Vs/q)',
            { Vs: fromStep(volume), q: val(given.number('flow') * 1000, 'L/s', 'flow of the counter') },
            sample.time,
            's',
            sources.sampleVolume,
          );
          return ok(calculation('Single sample', [limit, volume, time], forecast));
        }),
      ),
  ),

  topic(
    'recovery',
    'recovery rate and 100:1 time from two readings of a decay',
    [
      quantity('first', 'concentration', 'earlier reading'),
      quantity('last', 'concentration', 'later reading'),
      quantity('interval', 'time', 'time between them'),
    ],
    (given) => {
      const [first, last, interval] = ['first', 'last', 'interval'].map(given.number) as [number, number, number];
      return andThen(recoveryRate(first, last, interval), (rate) =>
        andThen(hundredToOneTime(rate), (time) => {
          const n = step(
            'n',
            'recovery rate',
            'log(C0/C1)/t',
            { C0: val(first, '1/m3', 'earlier'), C1: val(last, '1/m3', 'later'), t: val(interval, 's', 'interval') },
            rate,
            '1/s',
            sources.recovery,
          );
          const t = step('t100', '100:1 time', 'log(100)/n', { n: fromStep(n) }, time, 's', sources.recovery);
          const assumptions = ['The floor of the decay is not taken off: near it the rate comes out low.'];
          return ok(calculation('Recovery', [n, t], { assumptions }));
        }),
      );
    },
  ),

  topic(
    'clean-air-flow',
    'clean air that people need for a class',
    [
      ...classInputs,
      pure('people', 'number of people', '1'),
      choice('clothing', ['indoor', 'cleanroom'], 'what they wear', 'cleanroom'),
      quantity('share', 'ratio', 'share of the limit that the design uses', '0.5'),
      quantity('supply', 'concentration', 'concentration of the supply', '0 /m3'),
    ],
    (given) =>
      andThen(classLimitStep(given.number('class'), given.number('size')), (limit) =>
        andThen(humanEmission(given.word('clothing') as Clothing, given.number('size')), (each) => {
          const source = step(
            'S',
            'particles given off',
            'people*e/60',
            { people: val(given.number('people'), '1', 'people'), e: val(each * 60, '1/min', 'of one person') },
            given.number('people') * each,
            '1/s',
            sources.people,
          );
          const [share, supply] = [given.number('share'), given.number('supply')];
          return andThen(cleanAirFlow(source.result, limit.result, share, supply), (flow) => {
            const line = step(
              'Q',
              'clean air needed',
              'S/(f*Cn - Cs)',
              {
                S: fromStep(source),
                f: val(share, '1', 'share of the limit'),
                Cn: fromStep(limit),
                Cs: val(supply, '1/m3', 'supply'),
              },
              flow,
              'm3/s',
              sources.wellMixed,
            );
            return ok(calculation('Clean air for people', [limit, source, line], forecast));
          });
        }),
      ),
  ),

  topic(
    'filter',
    'penetration of a filter class and the concentration behind it',
    [
      choice('class', filterClasses, 'filter class'),
      quantity('upstream', 'concentration', 'concentration before the filter', '1e7 /m3'),
    ],
    (given) =>
      andThen(filterData(given.word('class')), (data) =>
        andThen(behindFilters(given.number('upstream'), [data.integralPenetration]), (behind) => {
          const C0 = val(given.number('upstream'), '1/m3', 'before the filter');
          const P = val(data.integralPenetration, '1', `penetration of ${data.filterClass}`, 'table');
          const lines = [step('C', 'behind the filter at most', 'C0*P', { C0, P }, behind, '1/m3', sources.filters)];
          if (data.localPenetration !== null) {
            const worst = val(data.localPenetration, '1', `local penetration of ${data.filterClass}`, 'table');
            const result = C0.value * worst.value;
            lines.push(
              step('Cl', 'behind the worst allowed spot', 'C0*P', { C0, P: worst }, result, '1/m3', sources.filters),
            );
          }
          const assumptions = [
            'Penetration at the most penetrating size: an upper bound for 0.5 \u00b5m and larger. An installed filter is limited by its seal.',
          ];
          return ok(calculation('Filter', lines, { assumptions }));
        }),
      ),
  ),

  topic(
    'particle-count',
    'concentration and its 95 % upper limit from few counts',
    [pure('counts', 'particles counted, a whole number'), quantity('volume', 'volume', 'volume sampled')],
    (given) => {
      const [counts, volume] = [given.number('counts'), given.number('volume')];
      return andThen(countedConcentration(counts, volume), (mean) =>
        andThen(poissonUpperLimit(counts), (most) => {
          const V = val(volume, 'm3', 'volume');
          const m = val(most, '1', 'upper limit of the expected counts', 'found by halving');
          return ok(
            calculation('Few counts', [
              step('C', 'mean concentration', 'N/V', { N: val(counts, '1', 'counts'), V }, mean, '1/m3', sources.units),
              step(
                'U',
                '95 % upper limit, one-sided',
                'm/V',
                { m, V },
                most / volume,
                '1/m3',
                sources.poisson,
                'm is where N counts or fewer have a chance of 5 %: half the 95 % quantile of chi-square with 2N+2 degrees of freedom.',
              ),
            ]),
          );
        }),
      );
    },
  ),

  topic(
    'coincidence',
    'what a counter shows when particles overlap in its beam',
    [
      quantity('concentration', 'concentration', 'true concentration'),
      quantity('flow', 'flow', 'sampling flow'),
      quantity('pulse', 'time', 'time that a particle keeps the counter busy', '10 us'),
    ],
    (given) => {
      const [N, q, t] = ['concentration', 'flow', 'pulse'].map(given.number) as [number, number, number];
      return andThen(coincidenceReading({ flow: q, pulseTime: t }, N), ({ indicated, lost }) => {
        const values = {
          N: val(N, '1/m3', 'true concentration'),
          q: val(q * 1000, 'L/s', 'flow'),
          t: val(t * 1e6, 'us', 'pulse time'),
        };
        const kept = step('k', 'share counted', 'exp(-N*q/1000*t/1000000)', values, 1 - lost, '1', sources.coincidence);
        const shown = step(
          'Ni',
          'shown',
          'N*k',
          { N: values.N, k: fromStep(kept) },
          indicated,
          '1/m3',
          sources.coincidence,
        );
        return ok(calculation('Coincidence', [kept, shown]));
      });
    },
  ),

  topic(
    'federal-class',
    'limit of a class of the withdrawn FED-STD-209E, to read old documents',
    [pure('class', '1, 10, 100, 1000, 10000 or 100000'), quantity('size', 'length', 'particle size', '0.5 um')],
    (given) =>
      andThen(federalLimit(given.number('class'), given.number('size')), (found) => {
        const perFoot = step(
          'Cf',
          'limit per cubic foot',
          'Nc*(0.5/d)^2.2',
          { Nc: val(given.number('class'), '1', 'class'), d: val(given.number('size') * 1e6, 'um', 'size') },
          found.perCubicFoot,
          '1/ft3',
          sources.federal,
        );
        const perMetre = step(
          'C',
          'limit per cubic metre',
          'Cf/foot^3',
          { Cf: fromStep(perFoot), foot: val(Math.cbrt(cubicFoot), 'm', 'one foot') },
          found.perCubicMetre,
          '1/m3',
          sources.units,
        );
        const assumptions = [`Withdrawn in 2001; ISO class ${found.isoClass} agrees at 0.5 \u00b5m only.`];
        return ok(calculation('Federal class', [perFoot, perMetre], { assumptions }));
      }),
  ),
];
