import { isDone } from '@cloche/engine';
import { readFonts } from '../io/inputs.js';
import { writePack } from '../io/write-pack.js';
import { tallyText } from '../show/findings.js';
import { failWith } from '../show/problems.js';
import { type BriefOptions, designOf } from './design-of.js';

export interface DesignOptions extends BriefOptions {
  readonly out?: string;
  readonly force?: boolean;
  readonly pdf?: boolean;
  readonly issued?: string;
}

/** `cloche design`: computes and writes the pack. */
export async function design(file: string, options: DesignOptions): Promise<number> {
  const json = options.json ?? false;
  const result = designOf(file, options);
  if (!result.ok) return failWith(result.problems, json);
  const { makePack, packNames } = await import('@cloche/pack');
  const { findings, revision } = result.value;
  const terminal = process.stderr.isTTY === true;
  const files = await makePack(
    {
      ...result.value,
      issued: options.issued ?? new Date().toISOString().slice(0, 10),
      fonts: readFonts(),
      revision: { name: 'A', hash: revision },
    },
    {
      ...(options.pdf === false
        ? { only: packNames(result.value.design).flatMap(({ name, use }) => (use === 'report' ? [] : [name])) }
        : {}),
      ...(terminal
        ? {
            onProgress: (done: string, share: number) =>
              process.stderr.write(`\r\x1b[K${Math.round(share * 100)} % ${done}`),
          }
        : {}),
    },
  );
  if (terminal) process.stderr.write('\r\x1b[K');
  const folder = options.out ?? 'out';
  const written = writePack(folder, files, options.force ?? false);
  if (!written.ok) return failWith(written.problems, json);
  process.stdout.write(
    json
      ? `${JSON.stringify({ revision, written: written.value, findings: tallyText(findings) }, null, 2)}\n`
      : `${written.value.map((path) => `  ${path}`).join('\n')}\nRevision ${revision.slice(0, 19)}: ${tallyText(findings)}.\n`,
  );
  return isDone(findings) ? 0 : 2;
}
