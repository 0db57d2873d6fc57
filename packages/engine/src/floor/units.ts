import { argumentProblem, type Outcome, ok, refuse } from './problem.js';

declare const unitBrand: unique symbol;
/** A number that carries its SI unit in its type. Arithmetic gives a plain `number`. */
export type Quantity<U extends string> = number & { readonly [unitBrand]: U };
export type Metre = Quantity<'m'>;
export type Second = Quantity<'s'>;
export type Watt = Quantity<'W'>;
export type Joule = Quantity<'J'>;
export type Radian = Quantity<'rad'>;
export type Kilogram = Quantity<'kg'>;
export type Newton = Quantity<'N'>;
export type Pascal = Quantity<'Pa'>;

/** Every dimension that a brief, catalogue or rule may ask for, with its SI unit inside and a few examples for hints. */
export const dimensions = {
  length: { si: 'm', example: '2.4 m, 2400 mm, 7 ft 10 1/2 in' },
  area: { si: 'm2', example: '1.2 m2' },
  volume: { si: 'm3', example: '12 m3' },
  angle: { si: 'rad', example: '90 deg, 0.5 mrad' },
  time: { si: 's', example: '10 s, 5 ns, 8 h' },
  frequency: { si: 'Hz', example: '1 kHz, 80 MHz' },
  power: { si: 'W', example: '150 mW, 20 W' },
  energy: { si: 'J', example: '2 mJ' },
  mass: { si: 'kg', example: '25 kg, 55 lb' },
  'mass per length': { si: 'kg/m', example: '1.6 kg/m' },
  'mass per area': { si: 'kg/m2', example: '0.4 kg/m2, 400 g/m2' },
  force: { si: 'N', example: '250 N, 1 kN, 50 lbf' },
  'force per length': { si: 'N/m', example: '50 N/m' },
  torque: { si: 'N m', example: '14 N m' },
  'torque per angle': { si: 'N m/rad', example: '3000 N m/rad' },
  pressure: { si: 'Pa', example: '12 Pa, 4 kN/m2' },
  stress: { si: 'Pa', example: '160 MPa, 160 N/mm2' },
  velocity: { si: 'm/s', example: '0.45 m/s, 90 ft/min' },
  flow: { si: 'm3/s', example: '1000 m3/h, 0.3 m3/s, 600 cfm' },
  irradiance: { si: 'W/m2', example: '100 W/cm2, 1e6 W/m2' },
  'radiant exposure': { si: 'J/m2', example: '2 J/cm2' },
  illuminance: { si: 'lx', example: '500 lx' },
  'luminous flux': { si: 'lm', example: '2400 lm' },
  'sound level': { si: 'dB', example: '52 dB' },
  temperature: { si: 'K', example: '21 degC, 70 degF, 294 K' },
  'temperature difference': { si: 'K', example: '0.5 K' },
  voltage: { si: 'V', example: '230 V' },
  current: { si: 'A', example: '16 A' },
  concentration: { si: '1/m3', example: '1e7 /m3, 3520 /m3, 100 /ft3' },
  ratio: { si: '1', example: '8 %, 0.08' },
  expansion: { si: '1/K', example: '23e-6 /K' },
} as const;

export type Dimension = keyof typeof dimensions;

interface Unit {
  readonly dimension: Dimension;
  readonly factor: number;
  /** Added after the factor: only for temperatures on a scale. */
  readonly offset?: number;
}

const prefixes: Readonly<Record<string, number>> = {
  f: 1e-15, p: 1e-12, n: 1e-9, u: 1e-6, '\u00b5': 1e-6, '\u03bc': 1e-6, m: 1e-3, c: 1e-2, d: 1e-1, k: 1e3, M: 1e6, G: 1e9, T: 1e12,
}; // biome-ignore format: one table

const inch = 0.0254;
const foot = 0.3048;
const pound = 0.45359237;
const poundForce = 4.4482216152605;
const degree = Math.PI / 180;

/** Unit by dimension and spelling. The exact inch, foot, pound and pound-force: NIST SP 811, Appendix B (from memory). */
const table: ReadonlyMap<string, readonly Unit[]> = (() => {
  const units = new Map<string, Unit[]>();
  const put = (dimension: Dimension, spelling: string, factor: number, offset?: number) => {
    const entry = offset === undefined ? { dimension, factor } : { dimension, factor, offset };
    units.set(spelling, [...(units.get(spelling) ?? []), entry]);
  };
  const prefixed = (dimension: Dimension, base: string, factor: number, letters: string, power = 1, tail = '') => {
    put(dimension, base + tail, factor);
    for (const p of letters) put(dimension, p + base + tail, factor * prefixes[p]! ** power);
  };
  const micro = 'u\u00b5\u03bc';
  prefixed('length', 'm', 1, `pn${micro}mcdk`);
  put('length', 'in', inch);
  put('length', '"', inch);
  put('length', '\u2033', inch);
  put('length', 'ft', foot);
  put('length', "'", foot);
  put('length', '\u2032', foot);
  for (const two of ['2', '\u00b2', '^2']) {
    put('area', `m${two}`, 1);
    put('area', `cm${two}`, 1e-4);
    put('area', `mm${two}`, 1e-6);
    put('area', `ft${two}`, foot ** 2);
    put('area', `in${two}`, inch ** 2);
    for (const [length, square] of [
      ['m', 1],
      ['cm', 1e4],
      ['mm', 1e6],
    ] as const) {
      prefixed('irradiance', 'W', square, `${micro}mkMGT`, 1, `/${length}${two}`);
      prefixed('radiant exposure', 'J', square, `n${micro}mk`, 1, `/${length}${two}`);
      if (length !== 'cm') {
        prefixed('stress', 'N', square, 'kM', 1, `/${length}${two}`);
        prefixed('pressure', 'N', square, 'k', 1, `/${length}${two}`);
      }
    }
    put('mass per area', `kg/m${two}`, 1);
    put('mass per area', `g/m${two}`, 1e-3);
    put('mass per area', `oz/yd${two}`, pound / 16 / (3 * foot) ** 2);
    put('mass per area', `lb/ft${two}`, pound / foot ** 2);
  }
  for (const three of ['3', '\u00b3', '^3']) {
    put('volume', `m${three}`, 1);
    put('volume', `ft${three}`, foot ** 3);
    put('flow', `m${three}/s`, 1);
    put('flow', `m${three}/h`, 1 / 3600);
    put('flow', `ft${three}/min`, foot ** 3 / 60);
    put('concentration', `/m${three}`, 1);
    put('concentration', `1/m${three}`, 1);
    put('concentration', `/ft${three}`, 1 / foot ** 3);
    put('concentration', `1/ft${three}`, 1 / foot ** 3);
    put('concentration', `/cm${three}`, 1e6);
  }
  put('volume', 'L', 1e-3);
  put('volume', 'l', 1e-3);
  put('flow', 'L/s', 1e-3);
  put('flow', 'l/s', 1e-3);
  put('flow', 'cfm', foot ** 3 / 60);
  put('flow', 'CFM', foot ** 3 / 60);
  prefixed('angle', 'rad', 1, `n${micro}m`);
  put('angle', 'deg', degree);
  put('angle', '\u00b0', degree);
  prefixed('time', 's', 1, `fpn${micro}m`);
  put('time', 'min', 60);
  put('time', 'h', 3600);
  put('time', 'd', 86_400);
  prefixed('frequency', 'Hz', 1, 'mkMGT');
  prefixed('power', 'W', 1, `pn${micro}mkMGT`);
  prefixed('energy', 'J', 1, `fpn${micro}mkM`);
  put('mass', 'kg', 1);
  put('mass', 'g', 1e-3);
  put('mass', 'mg', 1e-6);
  put('mass', 't', 1000);
  put('mass', 'lb', pound);
  put('mass', 'oz', pound / 16);
  put('mass per length', 'kg/m', 1);
  put('mass per length', 'g/m', 1e-3);
  put('mass per length', 'lb/ft', pound / foot);
  prefixed('force', 'N', 1, 'mkM');
  put('force', 'lbf', poundForce);
  prefixed('force per length', 'N', 1, 'k', 1, '/m');
  put('force per length', 'lbf/ft', poundForce / foot);
  for (const join of [' ', '', '*', '\u00b7', '.']) {
    put('torque', `N${join}m`, 1);
    put('torque per angle', `N${join}m/rad`, 1);
    put('torque per angle', `kN${join}m/rad`, 1000);
  }
  put('torque', 'lbf ft', poundForce * foot);
  prefixed('pressure', 'Pa', 1, 'mkM');
  prefixed('stress', 'Pa', 1, 'kMG');
  put('pressure', 'bar', 1e5);
  put('pressure', 'mbar', 100);
  put('pressure', 'psi', poundForce / inch ** 2);
  put('pressure', 'inH2O', 249.08891);
  put('stress', 'psi', poundForce / inch ** 2);
  put('stress', 'ksi', (1000 * poundForce) / inch ** 2);
  put('velocity', 'm/s', 1);
  put('velocity', 'mm/s', 1e-3);
  put('velocity', 'ft/min', foot / 60);
  put('velocity', 'fpm', foot / 60);
  put('illuminance', 'lx', 1);
  put('illuminance', 'mlx', 1e-3);
  put('illuminance', 'klx', 1e3);
  put('illuminance', 'fc', 1 / foot ** 2);
  put('luminous flux', 'lm', 1);
  put('sound level', 'dB', 1);
  put('sound level', 'dB(A)', 1);
  put('sound level', 'dBA', 1);
  put('temperature', 'K', 1);
  for (const c of ['degC', '\u00b0C', 'C']) put('temperature', c, 1, 273.15);
  for (const f of ['degF', '\u00b0F', 'F']) put('temperature', f, 5 / 9, 459.67 * (5 / 9));
  put('temperature difference', 'K', 1);
  put('temperature difference', 'mK', 1e-3);
  put('temperature difference', '\u0394degF', 5 / 9);
  prefixed('voltage', 'V', 1, 'mk');
  prefixed('current', 'A', 1, 'm');
  put('ratio', '%', 0.01);
  put('ratio', '', 1);
  put('expansion', '/K', 1);
  put('expansion', '1/K', 1);
  return units;
})();

/** Feet with inches and the like: the only dimensions in which several number-and-unit pairs may follow each other. */
const compound: ReadonlySet<Dimension> = new Set(['length', 'angle', 'time', 'mass']);

const numberPattern =
  /[+\-\u2212]?(?:\d+\s+\d+\/\d+|\d+\/\d+|(?:\d{1,3}(?:[ \u00a0\u2009\u202f]\d{3})+|\d+)(?:[.,]\d+)?(?:[eE][+\-\u2212]?\d+)?|[.,]\d+)/y;

interface ReadNumber {
  readonly value: number;
  readonly end: number;
}

/** Reads one number at `at`; decimal point or comma; `undefined` when none stands there, `ambiguous` for `1,064`. */
function readNumber(text: string, at: number): ReadNumber | 'ambiguous' | undefined {
  numberPattern.lastIndex = at;
  const match = numberPattern.exec(text);
  if (!match) return undefined;
  const end = at + match[0].length;
  if (/^[.,]\d/.test(text.slice(end))) return 'ambiguous';
  const raw = match[0].replace(/\u2212/g, '-');
  if (raw.includes('/')) {
    const [, sign = '', whole = '0', top, bottom] = /^([+-]?)(?:(\d+)\s+)?(\d+)\/(\d+)$/.exec(raw) ?? [];
    const size = Number(whole) + Number(top) / Number(bottom);
    return { value: sign === '-' ? -size : size, end };
  }
  if (/^[+-]?[1-9]\d{0,2},\d{3}$/.test(raw)) return 'ambiguous';
  return { value: Number(raw.replace(/[ \u00a0\u2009\u202f]/g, '').replace(',', '.')), end };
}

const unitsOf = (dimension: Dimension): string[] =>
  [...table]
    .filter(([name, units]) => name !== '' && units.some((u) => u.dimension === dimension))
    .map(([name]) => name);

const findUnit = (name: string, dimension: Dimension): Unit | undefined =>
  table.get(name)?.find((u) => u.dimension === dimension);

const spellings: readonly string[] = [...table.keys()]
  .filter((name) => name !== '')
  .sort((a, b) => b.length - a.length);

/** The longest known unit at `at` that ends there as a word; else all that stands up to the next number, to be named as unknown. */
function unitNameAt(text: string, at: number): string {
  const endsAsWord = (name: string) => {
    const next = text[at + name.length];
    return next === undefined || next === ' ' || (/\d/.test(next) && !/\d$/.test(name));
  };
  const known = spellings.find((name) => text.startsWith(name, at) && endsAsWord(name));
  return known ?? /^.*?(?=\s+[\d.,]|$)/.exec(text.slice(at))![0];
}

/**
 * Reads a quantity as people write it and gives it in SI.
 *
 * Accepts `1064 nm`, `4 ft 6 in`, `4'6"`, `3 1/2 in`, `10,5 mm`, `1 064 nm`, `90 cfm`, `20 degC`. Case is kept apart (mW and MW
 * differ by a billion).
 * @param text what was written
 * @param dimension what it must be [-]
 * @returns the value in the SI unit of the dimension, or `units/empty`, `units/no-number`, `units/bare-number`,
 *          `units/ambiguous-number`, `units/wrong-unit`, `units/unknown-unit`, `units/not-finite`; nothing is guessed
 * Source: NIST SP 811, Appendix B, for the factors (from memory); the grammar is ours.
 */
export function parseQuantity(text: string, dimension: Dimension): Outcome<number> {
  const example = dimensions[dimension].example;
  const no = (code: string, message: string, hint = `Write it like ${example}.`) =>
    refuse([argumentProblem(`units/${code}`, 'text', message, hint)]);
  const trimmed = text.trim();
  if (trimmed === '') return no('empty', `An empty text is no ${dimension}.`);
  let at = 0;
  let total = 0;
  let pairs = 0;
  let sign = 1;
  while (at < trimmed.length) {
    const read = readNumber(trimmed, at);
    if (read === 'ambiguous')
      return no(
        'ambiguous-number',
        `"${text}" can be read in two ways: is the comma a decimal sign or a thousands sign?`,
        'Use a decimal point and no thousands sign, or a space between thousands.',
      );
    if (!read) return no('no-number', `"${text}" is no ${dimension}: no number at "${trimmed.slice(at)}".`);
    let end = read.end;
    while (trimmed[end] === ' ' || trimmed[end] === '\u00a0') end++;
    const name = unitNameAt(trimmed, end);
    const unit = findUnit(name, dimension);
    if (!unit) {
      if (name === '') return no('bare-number', `"${text}" is a bare number; a ${dimension} needs its unit.`);
      const other = table.get(name)?.[0];
      return other
        ? no('wrong-unit', `"${text}" is a ${other.dimension}; a ${dimension} is needed here.`)
        : no(
            'unknown-unit',
            `"${name}" in "${text}" is no unit of ${dimension}.`,
            `Known units: ${unitsOf(dimension).slice(0, 14).join(', ')}. Upper and lower case count.`,
          );
    }
    if (pairs > 0 && !compound.has(dimension)) return no('unknown-unit', `"${text}" has more than one number.`);
    if (pairs === 0) {
      sign = read.value < 0 || Object.is(read.value, -0) ? -1 : 1;
      total = Math.abs(read.value) * unit.factor * sign + (unit.offset ?? 0);
    } else total += sign * Math.abs(read.value) * unit.factor;
    pairs++;
    end += name.length;
    while (trimmed[end] === ' ') end++;
    if (end <= at) break;
    at = end;
  }
  if (!Number.isFinite(total)) return no('not-finite', `"${text}" is not a finite number.`);
  return ok(total);
}

/** Value of an SI number in another spelling of the same dimension; the spelling must exist (a bug otherwise). */
export function inUnit(si: number, unit: string, dimension: Dimension): number {
  const found = findUnit(unit, dimension);
  if (!found) throw new Error(`no unit ${unit} of ${dimension}`);
  return (si - (found.offset ?? 0)) / found.factor;
}
