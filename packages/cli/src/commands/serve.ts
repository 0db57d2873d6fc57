import { existsSync, readdirSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { basename, join, resolve } from 'node:path';
import { type Outcome, ok, type Problem, problem, readBrief, refuse } from '@cloche/engine';
import { isLoopback, type OpenedBrief, type RunningServer, startServer } from '@cloche/server';
import { defaultDataFolder, openStore, type Store, textProblems } from '@cloche/store';
import { home, readCatalogueFolder, readFonts, readRuleFiles, readText } from '../io/inputs.js';
import { hostsOf, linkOf } from '../io/serve-links.js';
import { serveToken } from '../io/serve-token.js';
import { failWith } from '../show/problems.js';
import { openBrowser } from './open-browser.js';

export interface ServeOptions {
  readonly port?: string;
  readonly open?: boolean;
  readonly host?: string;
  readonly data?: string;
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

/** `cloche serve`: the workbench, until it is stopped. */
export async function serve(file: string | undefined, options: ServeOptions): Promise<number> {
  const opened = file === undefined ? ok(undefined) : openedBrief(file);
  if (!opened.ok) return failWith(opened.problems, false);
  const folder = resolve(
    options.data ?? defaultDataFolder({ platform: process.platform, home: homedir(), env: process.env }),
  );
  const store = await openStore(folder);
  if (!store.ok) return failWith(withAddress(store.problems, folder), false);
  try {
    const token = options.host === undefined || isLoopback(options.host) ? undefined : serveToken(folder);
    const server = await started({ ...options, store: store.value, token, brief: opened.value });
    if (!server.ok) return failWith(server.problems, false);
    announce(server.value.url, folder, options, token);
    writeFileSync(addressFile(folder), server.value.url);
    await new Promise<void>((done) => {
      for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => done());
    });
    await server.value.close();
    rmSync(addressFile(folder), { force: true });
    return 0;
  } finally {
    await store.value.close();
  }
}

/** Where the workbench that uses a data folder is; only believed while the folder is in use. */
const addressFile = (folder: string): string => join(folder, 'address');

/** Tells a second start where the first one is. */
function withAddress(problems: readonly Problem[], folder: string): readonly Problem[] {
  if (!problems.some((p) => p.code === 'store/in-use') || !existsSync(addressFile(folder))) return problems;
  const address = readFileSync(addressFile(folder), 'utf8');
  return problems.map((p) => ({ ...p, hint: `Open ${address}, where it is. Or: ${p.hint}` }));
}

/** A brief to open, with the place by which it is known again. */
function openedBrief(file: string): Outcome<OpenedBrief> {
  const read = readText(file, 'brief');
  if (!read.ok) return read;
  const problems = textProblems(read.value);
  if (problems.length > 0) return refuse(problems.map((p) => ({ ...p, file })));
  return ok({ name: basename(file), text: read.value, path: realpathSync(file) });
}

interface Start extends ServeOptions {
  readonly store: Store;
  readonly token: string | undefined;
  readonly brief: OpenedBrief | undefined;
}

async function started({ port = '4173', host, store, token, brief }: Start): Promise<Outcome<RunningServer>> {
  const catalogue = readCatalogueFolder();
  const rules = readRuleFiles();
  if (!catalogue.ok || !rules.ok) return refuse([catalogue, rules].flatMap((o) => (o.ok ? [] : [...o.problems])));
  try {
    return ok(
      await startServer({
        port: Number(port),
        ...(host === undefined ? {} : { host }),
        ...(token === undefined ? {} : { token }),
        webRoot: join(home, 'packages/web/dist'),
        examples: examples(),
        catalogueFiles: catalogue.value,
        rulesFiles: rules.value.texts,
        fonts: readFonts(),
        store,
        ...(brief ? { openBrief: brief } : {}),
      }),
    );
  } catch (error) {
    return cannotListen(error, `${host ?? 'this machine'}, port ${port}`);
  }
}

const listenTroubles: Readonly<Record<string, string>> = {
  EADDRINUSE: 'something listens there already',
  EADDRNOTAVAIL: 'this machine has no such address',
  ENOTFOUND: 'there is no such name',
  EACCES: 'it is not allowed',
  ERR_SOCKET_BAD_PORT: 'there is no such port',
};

/** The server could not take its place; anything else is a bug and goes on as it was. */
function cannotListen(error: unknown, where: string): Outcome<never> {
  const why = listenTroubles[(error as NodeJS.ErrnoException).code ?? ''];
  if (why === undefined) throw error;
  return refuse([
    problem('cli/cannot-listen', [], `The workbench cannot listen on ${where}: ${why}.`, 'Choose another with --port.'),
  ]);
}

function announce(url: string, folder: string, { host, open }: ServeOptions, token: string | undefined): void {
  const { port } = new URL(url);
  const links = token === undefined ? [url] : hostsOf(host!).map((name) => linkOf(name, port, token));
  const caution =
    token === undefined
      ? ''
      : 'Whoever has the link works on all projects, and the network can read along: use it where you trust both.\n';
  process.stdout.write(
    `Cloche is at ${links.join('\n             ')}\n${caution}Projects are kept in ${folder}\nStop it with Ctrl+C.\n`,
  );
  if (open !== false) openBrowser(links[0]!);
}
