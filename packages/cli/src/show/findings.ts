import { type Finding, utilisationText, type Verdict, verdictOrder } from '@cloche/engine';
import pc from 'picocolors';

export const paint: Readonly<Record<Verdict, (text: string) => string>> = {
  fails: pc.red,
  'not assessed': pc.dim,
  attention: pc.yellow,
  meets: pc.blue,
};
export const sign: Readonly<Record<Verdict, string>> = {
  fails: '\u2716',
  'not assessed': '\u25cc',
  attention: '\u25b2',
  meets: '\u25cf',
};

/** One line that counts the verdicts. */
export const tallyText = (findings: readonly Finding[]): string =>
  verdictOrder.map((v) => `${findings.filter((f) => f.verdict === v).length} ${v}`).join(', ');

/** Text broken at words, each further line behind an indent. */
export const wrap = (text: string, width: number, indent: string): string => {
  const lines: string[] = [''];
  for (const word of text.split(' ')) {
    const line = lines.at(-1)!;
    if (line !== '' && line.length + word.length + 1 > width) lines.push(word);
    else lines[lines.length - 1] = line === '' ? word : `${line} ${word}`;
  }
  return lines.join(`\n${indent}`);
};

/** Findings as a table for people: verdict, utilisation, what was asked, and what was found. */
export function findingsText(findings: readonly Finding[], width: number): string {
  const indent = ' '.repeat(23);
  const rows = findings.map((f) => {
    const use = f.utilisation === null ? '' : utilisationText(f.utilisation);
    const head = `${paint[f.verdict](`${sign[f.verdict]} ${f.verdict.padEnd(13)}`)} ${use.padStart(6)} `;
    return `${head}${pc.bold(f.subject)}: ${f.requirement}\n${indent}${wrap(f.message, Math.max(40, width - 23), indent)}`;
  });
  return [...rows, '', tallyText(findings)].join('\n');
}
