/** A quantity as two cells of a schedule: its number, and its unit. */
export interface Amount {
  readonly value: string;
  readonly unit: string;
}

const number = String.raw`[+-]?(?:\d+(?:\.\d+)?|\.\d+)(?:e[+-]?\d+)?`;
const bare = new RegExp(`^${number}$`, 'i');
/** One number and one unit; `7 ft 10 1/2 in` is a quantity that stays whole. */
const numberAndUnit = new RegExp(String.raw`^(${number})\s*([^\s\d.,+-][^\s]*)$`, 'i');

/** A written quantity cut into number and unit; one that is no single number with a unit stays whole in the first. */
export function amountOf(text: string): Amount {
  const found = numberAndUnit.exec(text.trim());
  return found ? { value: found[1]!, unit: found[2]! } : { value: text.trim(), unit: '' };
}

/**
 * The quantity that two cells make. A number takes the unit beside it; a value that brings its own unit keeps it. A number without any
 * unit is left as it is: a unit is never guessed.
 */
export function joined({ value, unit }: Amount): string {
  const [number, word] = [value.trim(), unit.trim()];
  return bare.test(number) && word !== '' ? `${number} ${word}` : number;
}

/** True where a value brings another unit than the one that stands beside it. */
export function unitsDisagree({ value, unit }: Amount): boolean {
  const own = amountOf(value).unit;
  return own !== '' && unit.trim() !== '' && own !== unit.trim();
}
