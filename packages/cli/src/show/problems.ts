import type { Problem } from '@cloche/engine';
import pc from 'picocolors';

const placeText = (p: Problem): string => {
  const at = p.place ? `:${p.place.line}:${p.place.column}` : '';
  const file = p.file ? `${p.file}${at}` : p.place ? `line ${p.place.line}, column ${p.place.column}` : '';
  const path = p.path.length > 0 ? p.path.join('.') : '';
  return [file, path].filter((s) => s !== '').join('  ');
};

/** Problems for people: where, what, what to do. */
export const problemsText = (problems: readonly Problem[]): string =>
  problems
    .map((p) => [`${pc.bold(p.code)}  ${placeText(p)}`, `  ${p.message}`, `  ${pc.dim(p.hint)}`].join('\n'))
    .concat(`${problems.length} ${problems.length === 1 ? 'problem' : 'problems'}; nothing was written.`)
    .join('\n');

/** Problems for programs. */
export const problemsJson = (problems: readonly Problem[]): string => JSON.stringify({ problems }, null, 2);

/** Writes problems to standard error and gives the exit code. */
export function failWith(problems: readonly Problem[], json: boolean): 1 {
  process.stderr.write(`${json ? problemsJson(problems) : problemsText(problems)}\n`);
  return 1;
}
