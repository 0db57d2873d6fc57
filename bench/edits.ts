import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import {
  type Composed,
  composedFrom,
  designFrom,
  forgetRemembered,
  heavyFindings,
  lightFindings,
  revisionOf,
} from '@cloche/engine';

/**
 * A table is moved step by step: what the engine takes up to the light findings and up to everything, as shares of the same
 * edits computed with nothing remembered (the catalogue is read once in both).
 *
 *     npm run bench -- edits
 */
const root = fileURLToPath(new URL('..', import.meta.url));
const steps = 40;

const texts = (folder: string) =>
  readdirSync(join(root, folder))
    .filter((f) => f.endsWith('.yaml'))
    .sort()
    .map((name) => ({ name, text: readFileSync(join(root, folder, name), 'utf8') }));

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;

const catalogueFiles = texts('catalogue');
const ruleTexts = Object.fromEntries(texts('rules').map(({ name, text }) => [name.replace('.yaml', ''), text]));
const made = (briefText: string): Composed => {
  const outcome = composedFrom({ briefText, catalogueFiles, ruleTexts });
  if (!outcome.ok) throw new Error(outcome.problems.map((p) => p.message).join('\n'));
  return outcome.value;
};

/** The brief with its last or first table moved east by millimetres. */
const movedTable = (text: string, which: 'first' | 'last', by: number): string => {
  const places = [
    ...text.slice(0, text.indexOf('\nlasers:')).matchAll(/^ {2}- id: .*table.*\n(?: {4}.*\n)*? {4}at: \[([\d.]+) m/gm),
  ];
  const place = which === 'first' ? places[0] : places.at(-1);
  if (!place) return text;
  const end = place.index + place[0].length;
  const at = (Number(place[1]) + by / 1000).toFixed(3);
  return `${text.slice(0, end - place[1]!.length - 2)}${at} m${text.slice(end)}`;
};

const timed = (work: () => void): number => {
  const start = performance.now();
  work();
  return performance.now() - start;
};

console.log(`${'table moved'.padEnd(34)} up to light findings   everything   nothing remembered [ms]`);
for (const { name, text } of texts('examples'))
  for (const which of ['first', 'last'] as const) {
    const moved = Array.from({ length: steps }, (_, i) => movedTable(text, which, i + 1));
    const whole = moved.map((briefText) =>
      timed(() => {
        forgetRemembered();
        designFrom({ briefText, catalogueFiles, ruleTexts });
      }),
    );
    const [light, all]: [number[], number[]] = [[], []];
    for (const briefText of [...moved].reverse()) {
      let state: Composed | undefined;
      const first = timed(() => {
        state = made(briefText);
        lightFindings(state);
      });
      const second = timed(() => {
        heavyFindings(state!);
        revisionOf(state!);
      });
      light.push(first);
      all.push(first + second);
    }
    const base = median(whole);
    const share = (times: readonly number[]) => (median(times) / base).toFixed(2);
    console.log(
      `${`${name}, ${which}`.padEnd(34)} ${share(light).padStart(20)} ${share(all).padStart(12)} ${base.toFixed(1).padStart(25)}`,
    );
  }
