import { argumentProblem, type Outcome, ok, type Problem, positive, refuse } from '../floor/index.js';

/** Arguments by name, each with its value and unit. */
type Named = Readonly<Record<string, readonly [value: number, unit: string]>>;

/** `air/not-positive` for every argument that is not above zero. */
export const aboveZero = (args: Named): Problem[] =>
  Object.entries(args).flatMap(([name, [value, unit]]) => positive('air/not-positive', name, value, unit));

/** `air/negative` for every argument that is below zero or not finite. */
export const zeroOrMore = (args: Named): Problem[] =>
  Object.entries(args).flatMap(([name, [value, unit]]) =>
    Number.isFinite(value) && value >= 0
      ? []
      : [
          argumentProblem(
            'air/negative',
            name,
            `${name} is ${value} ${unit}; it cannot be below zero.`,
            `Give ${name} as zero or more, in ${unit}.`,
          ),
        ],
  );

/** `air/not-a-share` for every argument outside 0 to 1. */
export const shares = (args: Readonly<Record<string, number>>): Problem[] =>
  Object.entries(args).flatMap(([name, value]) =>
    value >= 0 && value <= 1
      ? []
      : [
          argumentProblem(
            'air/not-a-share',
            name,
            `${name} is ${value}; it is a share from 0 to 1.`,
            `Give ${name} from 0 to 1, or in per cent with its sign.`,
          ),
        ],
  );

/** `air/not-finite` for every argument that is no finite number. */
export const finite = (args: Named): Problem[] =>
  Object.entries(args).flatMap(([name, [value, unit]]) =>
    Number.isFinite(value)
      ? []
      : [argumentProblem('air/not-finite', name, `${name} is ${value} ${unit}.`, `Give ${name} as a number.`)],
  );

/** The result when there is no problem with the arguments, else the problems. */
export const checked = <T>(problems: readonly Problem[], compute: () => T): Outcome<T> =>
  problems.length > 0 ? refuse(problems) : ok(compute());
