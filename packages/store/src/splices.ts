import { type Outcome, ok, type Problem, problem, refuse } from '@cloche/engine';
import type { NewStep, Splice } from './types.js';

/** Longest text of a project, in UTF-16 units; readers of a brief have the same limit. */
export const longestText = 2_000_000;

const stale = 'Fetch the project again and repeat the change.';

/**
 * Applies splices one after the other: each offset counts in the text that the ones before it have left.
 *
 * @returns the new text, or `steps/does-not-fit` with the index of the first splice whose `out` does not stand at its place
 */
export function applySplices(text: string, splices: readonly Splice[]): Outcome<string> {
  let now = text;
  for (const [index, { at, out, in: put }] of splices.entries()) {
    if (at > now.length || !now.startsWith(out, at))
      return refuse([
        problem(
          'steps/does-not-fit',
          ['splices', index],
          `At ${at} the text (${now.length} long) does not read what the change takes out there.`,
          stale,
        ),
      ]);
    now = now.slice(0, at) + put + now.slice(at + out.length);
  }
  return ok(now);
}

/**
 * What keeps a text from being kept. Half of a surrogate pair has no UTF-8 form, and a NUL would end the text inside the database;
 * both would come back changed.
 */
export function textProblems(text: string): Problem[] {
  const no = (code: string, message: string, hint: string) => problem(`text/${code}`, [], message, hint);
  return [
    ...(text.length > longestText
      ? [no('too-long', `The text has ${text.length} characters; at most ${longestText} are kept.`, 'Shorten it.')]
      : []),
    ...(text.includes('\0') ? [no('nul', 'The text holds a NUL character.', 'Take it out.')] : []),
    ...(/\p{Surrogate}/u.test(text)
      ? [no('broken-character', 'The text holds half of a character.', 'Take it out and write it again.')]
      : []),
  ];
}

/** The text after steps; every step must leave a text that can be kept. Paths of problems start at `steps`. */
export function replay(text: string, steps: readonly Pick<NewStep, 'splices'>[]): Outcome<string> {
  let now = text;
  for (const [index, { splices }] of steps.entries()) {
    const next = applySplices(now, splices);
    const problems = next.ok ? textProblems(next.value) : next.problems;
    if (!next.ok || problems.length > 0)
      return refuse(problems.map((p) => ({ ...p, path: ['steps', index, ...p.path] })));
    now = next.value;
  }
  return ok(now);
}
