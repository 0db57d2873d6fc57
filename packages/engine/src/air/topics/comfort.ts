import { step } from '../../floor/calculation.js';
import { calculation, fromStep, ok, type Topic, val } from '../../floor/index.js';
import { airCautions } from '../cautions.js';
import { expansionDrift, temperatureRise } from '../heat-balance.js';
import { endlessStripIlluminance, meanIlluminance, stripIlluminance } from '../illuminance.js';
import { lightAttenuation, lightThroughGap } from '../light-tightness.js';
import { airRefractiveIndex, beamBending } from '../refractive-index.js';
import { roomConstant, roomSoundLevel, soundLevelSum } from '../sound-level.js';
import { roomAir, roomAirSource, sources } from '../tables.js';
import { andThen, pure, quantity, topic } from './inputs.js';

export const comfortTopics: readonly Topic[] = [
  topic(
    'sound-level',
    'level in a room from equal sources of known sound power',
    [
      quantity('power', 'sound level', 'sound power level of one source'),
      pure('count', 'number of sources', '1'),
      quantity('distance', 'length', 'distance to them'),
      pure('directivity', '1 free, 2 on a surface, 4 in an edge, 8 in a corner', '2'),
      quantity('surface', 'area', 'walls, floor and ceiling'),
      quantity('absorption', 'ratio', 'mean absorption of the surfaces', '0.15'),
    ],
    (given) => {
      const [power, count, distance, directivity, surface, absorption] = [
        'power',
        'count',
        'distance',
        'directivity',
        'surface',
        'absorption',
      ].map(given.number) as [number, number, number, number, number, number];
      const levels = Array.from({ length: Math.max(0, Math.round(count)) || 0 }, () => power);
      return andThen(soundLevelSum(levels), (sum) =>
        andThen(roomConstant(surface, absorption), (constant) =>
          andThen(roomSoundLevel(sum, directivity, distance, constant), (level) => {
            const Lw = step(
              'Lw',
              'sound power of all',
              'L1+10*log10(n)',
              { L1: val(power, 'dB'), n: val(levels.length, '1', 'sources') },
              sum,
              'dB',
              sources.levelSum,
            );
            const R = step(
              'R',
              'room constant',
              'S*a/(1-a)',
              { S: val(surface, 'm2'), a: val(absorption, '1', 'absorption') },
              constant,
              'm2',
              sources.roomEquation,
            );
            const values = {
              Lw: fromStep(Lw),
              D: val(directivity, '1', 'directivity'),
              r: val(distance, 'm'),
              R: fromStep(R),
            };
            const Lp = step('Lp', 'level', 'Lw+10*log10(D/(4*pi*r^2)+4/R)', values, level, 'dB', sources.roomEquation);
            return ok(calculation('Sound level in a room', [Lw, R, Lp], { cautions: [airCautions.noiseExposure] }));
          }),
        ),
      );
    },
  ),

  topic(
    'temperature-rise',
    'rise of the air through an enclosure',
    [
      quantity('heat', 'power', 'heat given off inside'),
      quantity('flow', 'flow', 'air through it'),
      pure('walls', 'U A of the walls in W/K', '0'),
    ],
    (given) => {
      const [heat, flow, walls] = ['heat', 'flow', 'walls'].map(given.number) as [number, number, number];
      return andThen(temperatureRise({ heat, flow, wallConductance: walls }), (rise) => {
        const values = {
          P: val(heat, 'W', 'heat'),
          rho: val(roomAir.density, 'kg/m3', 'density', 'table'),
          cp: val(roomAir.specificHeat, 'J/(kg K)', 'specific heat', 'table'),
          Q: val(flow, 'm3/s', 'flow'),
          UA: val(walls, 'W/K', 'walls'),
        };
        const line = step('dT', 'temperature rise', 'P/(rho*cp*Q+UA)', values, rise, 'K', sources.heatBalance);
        return ok(calculation('Temperature rise', [line], { assumptions: [`Air as in ${roomAirSource.work}.`] }));
      });
    },
  ),

  topic(
    'expansion-drift',
    'drift of a mount or length with temperature',
    [
      quantity('length', 'length', 'length'),
      quantity('expansion', 'expansion', 'thermal expansion', '23e-6 /K'),
      quantity('change', 'temperature difference', 'change of temperature'),
    ],
    (given) => {
      const [L, a, dT] = ['length', 'expansion', 'change'].map(given.number) as [number, number, number];
      return andThen(expansionDrift(L, a, dT), (drift) => {
        const values = {
          a: val(a * 1e6, 'um/(m K)', 'expansion'),
          L: val(L, 'm', 'length'),
          dT: val(dT, 'K', 'change'),
        };
        return ok(calculation('Drift', [step('dL', 'drift', 'a*L*dT', values, drift * 1e6, 'um', sources.expansion)]));
      });
    },
  ),

  topic(
    'air-index',
    'refractive index of dry air',
    [
      quantity('wavelength', 'length', 'wavelength, 0.3 um to 1.7 um'),
      quantity('temperature', 'temperature', 'temperature', '20 degC'),
      quantity('pressure', 'pressure', 'pressure', '101325 Pa'),
    ],
    (given) => {
      const [wavelength, T, p] = ['wavelength', 'temperature', 'pressure'].map(given.number) as [
        number,
        number,
        number,
      ];
      return andThen(airRefractiveIndex(wavelength, T, p), (found) => {
        const um = val(wavelength * 1e6, 'um', 'wavelength');
        const t = val(T - 273.15, 'degC', 'temperature');
        const pressure = val(p, 'Pa', 'pressure');
        const s = step(
          's',
          'wave number squared',
          '1/um^2',
          { um },
          1 / um.value ** 2,
          '1/um2',
          sources.refractiveIndex,
        );
        const ns = step(
          'ns',
          'standard air, times 1e8',
          '8342.54+2406147/(130-s)+15998/(38.9-s)',
          { s: fromStep(s) },
          8342.54 + 2406147 / (130 - s.result) + 15998 / (38.9 - s.result),
          '1',
          sources.refractiveIndex,
        );
        const X = step(
          'X',
          'density factor',
          '(1+(0.601-0.00972*t)*p/100000000)/(1+0.003661*t)',
          { t, p: pressure },
          (1 + 1e-8 * (0.601 - 0.00972 * t.value) * p) / (1 + 0.003661 * t.value),
          '1',
          sources.refractiveIndex,
        );
        const n = step(
          'N',
          '(n - 1) times 1e6',
          'p*ns*X/96095.43/100',
          { p: pressure, ns: fromStep(ns), X: fromStep(X) },
          found.refractivity * 1e6,
          '1',
          sources.refractiveIndex,
        );
        return ok(
          calculation('Refractive index of dry air', [s, ns, X, n], {
            assumptions: [
              'Dry air: water vapour lowers n by about 3.7e-10 per Pa of its pressure.',
              'The equation was fitted from 0.35 \u00b5m to 0.65 \u00b5m; longer waves rest on its form.',
            ],
          }),
        );
      });
    },
  ),

  topic(
    'beam-bending',
    'bending of a beam by a temperature gradient across it',
    [
      quantity('path', 'length', 'length of path in the gradient'),
      pure('gradient', 'gradient in K/m'),
      pure('index-slope', 'change of the index in millionths per K', '-0.93'),
    ],
    (given) => {
      const [L, g, slope] = ['path', 'gradient', 'index-slope'].map(given.number) as [number, number, number];
      return andThen(beamBending(L, g, slope * 1e-6), ({ angle, shift }) => {
        const values = {
          L: val(L, 'm', 'path'),
          g: val(g, 'K/m', 'gradient'),
          dn: val(slope, '1e-6/K', 'index slope'),
        };
        const lines = [
          step('theta', 'angle', 'L*abs(dn*g)', values, angle * 1e6, 'urad', sources.rayBending),
          step('x', 'shift at the end', 'L^2/2*abs(dn*g)', values, shift * 1e6, 'um', sources.rayBending),
        ];
        return ok(
          calculation('Bending by a gradient', lines, { assumptions: ['The beam bends towards the colder air.'] }),
        );
      });
    },
  ),

  topic(
    'illuminance',
    'mean illuminance by the lumen method',
    [
      quantity('flux', 'luminous flux', 'flux of one strip'),
      pure('strips', 'number of strips'),
      quantity('utilisation', 'ratio', 'share of the flux that reaches the plane', '0.5'),
      quantity('maintenance', 'ratio', 'maintenance factor', '0.8'),
      quantity('area', 'area', 'area lit'),
    ],
    (given) => {
      const [flux, N, UF, MF, area] = ['flux', 'strips', 'utilisation', 'maintenance', 'area'].map(given.number) as [
        number,
        number,
        number,
        number,
        number,
      ];
      return andThen(meanIlluminance({ flux, utilisationFactor: UF, maintenanceFactor: MF, area }, N), (E) => {
        const values = {
          N: val(N, '1', 'strips'),
          Phi: val(flux, 'lm', 'flux'),
          UF: val(UF, '1'),
          MF: val(MF, '1'),
          A: val(area, 'm2'),
        };
        const line = step('E', 'mean illuminance', 'N*Phi*UF*MF/A', values, E, 'lx', sources.lumenMethod);
        return ok(calculation('Illuminance', [line], { cautions: [airCautions.emergencyLight] }));
      });
    },
  ),

  topic(
    'strip-light',
    'illuminance under a light strip that shines down',
    [
      quantity('flux', 'luminous flux', 'flux of the whole strip'),
      quantity('length', 'length', 'length of the strip'),
      quantity('height', 'length', 'height over the plane'),
      quantity('lateral', 'length', 'sideways from the strip', '0 m'),
      quantity('along', 'length', 'along the strip from its middle', '0 m'),
    ],
    (given) => {
      const [flux, L, h, y, x] = ['flux', 'length', 'height', 'lateral', 'along'].map(given.number) as [
        number,
        number,
        number,
        number,
        number,
      ];
      const strip = { fluxPerLength: flux / L, height: h, lateral: y };
      return andThen(stripIlluminance(strip, L, x), (E) =>
        andThen(endlessStripIlluminance(strip), (endless) => {
          const H = val(h, 'm', 'height');
          const d = step(
            'd',
            'distance from the line',
            'sqrt(h^2+y^2)',
            { h: H, y: val(y, 'm', 'lateral') },
            Math.hypot(h, y),
            'm',
            sources.photometry,
          );
          const end = (symbol: string, name: string, sign: 1 | -1) =>
            step(
              symbol,
              name,
              sign > 0 ? 'atan((L/2-x)/d)' : 'atan((-L/2-x)/d)',
              { L: val(L, 'm'), x: val(x, 'm'), d: fromStep(d) },
              Math.atan(((sign * L) / 2 - x) / d.result),
              'rad',
              sources.photometry,
            );
          const [a, b] = [end('a', 'angle to one end', -1), end('b', 'angle to the other end', 1)];
          const phi = val(strip.fluxPerLength, 'lm/m', 'flux per metre');
          const line = step(
            'E',
            'illuminance',
            'phi/pi*h^2/(2*d^3)*(b+sin(b)*cos(b)-a-sin(a)*cos(a))',
            { phi, h: H, d: fromStep(d), a: fromStep(a), b: fromStep(b) },
            E,
            'lx',
            sources.photometry,
          );
          const long = step(
            'Ei',
            'of a strip without ends',
            'phi*h^2/(2*d^3)',
            { phi, h: H, d: fromStep(d) },
            endless,
            'lx',
            sources.photometry,
          );
          return ok(
            calculation('Light strip', [d, a, b, line, long], {
              assumptions: ['Light thrown back by walls is not counted.'],
            }),
          );
        }),
      );
    },
  ),

  topic(
    'light-tightness',
    'how much light must be kept out, and how much a gap lets in',
    [
      quantity('outside', 'illuminance', 'outside'),
      quantity('allowed', 'illuminance', 'allowed inside'),
      quantity('gap', 'area', 'open gap'),
      quantity('surface', 'area', 'surface of the inside'),
      quantity('reflectance', 'ratio', 'mean reflectance of the inside', '0.5'),
    ],
    (given) => {
      const [outside, allowed, gap, surface, rho] = ['outside', 'allowed', 'gap', 'surface', 'reflectance'].map(
        given.number,
      ) as [number, number, number, number, number];
      return andThen(lightAttenuation(outside, allowed), ({ opticalDensity }) =>
        andThen(lightThroughGap({ outside, surface, reflectance: rho }, gap), (E) => {
          const Eo = val(outside, 'lx', 'outside');
          const lines = [
            step(
              'OD',
              'optical density needed',
              'log10(Eo/Ei)',
              { Eo, Ei: val(allowed, 'lx', 'allowed') },
              opticalDensity,
              '1',
              sources.lightTightness,
            ),
            step(
              'E',
              'mean inside through the gap',
              'Eo*A/(S*(1-rho))',
              { Eo, A: val(gap, 'm2', 'gap'), S: val(surface, 'm2', 'inside'), rho: val(rho, '1') },
              E,
              'lx',
              sources.lightTightness,
            ),
          ];
          return ok(
            calculation('Light-tightness', lines, {
              assumptions: ['An open slit without baffle: an upper bound.'],
              cautions: [airCautions.blackout],
            }),
          );
        }),
      );
    },
  ),
];
