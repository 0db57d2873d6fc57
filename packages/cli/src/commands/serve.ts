import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { readBrief } from '@cloche/engine';
import { startServer } from '@cloche/server';
import { home, readCatalogueFolder, readFonts, readRuleFiles, readText } from '../io/inputs.js';
import { failWith } from '../show/problems.js';
import { openBrowser } from './open-browser.js';

export interface ServeOptions {
  readonly port?: string;
  readonly open?: boolean;
}

/** The example that opens first: the smallest whole one. */
const workedExample = 'close-enclosure.yaml';

const examples = () =>
  readdirSync(join(home, 'examples'))
    .filter((f) => f.endsWith('.yaml'))
    .sort((a, b) => Number(b === workedExample) - Number(a === workedExample) || (a < b ? -1 : 1))
    .map((file) => {
      const name = basename(file, '.yaml');
      const text = readFileSync(join(home, 'examples', file), 'utf8');
      const brief = readBrief(text, file);
      return { name, text, title: brief.ok ? brief.value.project.name : name };
    });

/** `cloche serve`: the workbench on this machine, until it is stopped. */
export async function serve(file: string | undefined, options: ServeOptions): Promise<number> {
  const catalogue = readCatalogueFolder();
  const rules = readRuleFiles();
  const opened = file === undefined ? undefined : readText(file, 'brief');
  if (!catalogue.ok || !rules.ok || opened?.ok === false)
    return failWith(
      [catalogue, rules, ...(opened ? [opened] : [])].flatMap((o) => (o.ok ? [] : [...o.problems])),
      false,
    );
  const { url, close } = await startServer({
    port: Number(options.port ?? 4173),
    webRoot: join(home, 'packages/web/dist'),
    examples: examples(),
    catalogueFiles: catalogue.value,
    rulesFiles: rules.value.texts,
    fonts: readFonts(),
    ...(opened ? { openBrief: { name: basename(file!), text: opened.value } } : {}),
  });
  process.stdout.write(`Cloche is at ${url}\nStop it with Ctrl+C.\n`);
  if (options.open !== false) openBrowser(url);
  await new Promise<void>((done) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => done());
  });
  await close();
  return 0;
}
