import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { repositoryOptions } from '../../server/test/options.js';

const packages = fileURLToPath(new URL('../../', import.meta.url));

/** The server's process as one file beside the server's own libraries: a process of a test cannot read the sources as they are. */
async function bundledChild(): Promise<string> {
  const outDir = join(packages, 'server/node_modules/.cache/cloche-serve-child', String(process.pid));
  process.once('exit', () => rmSync(outDir, { recursive: true, force: true }));
  const source = (name: string) => join(packages, name, 'src/index.ts');
  await build({
    root: packages,
    configFile: false,
    logLevel: 'error',
    resolve: {
      alias: Object.fromEntries(['engine', 'pack', 'store', 'server'].map((name) => [`@cloche/${name}`, source(name)])),
    },
    build: {
      outDir,
      emptyOutDir: true,
      ssr: join(packages, 'web/test/serve-child.ts'),
      target: 'node20',
      rollupOptions: { output: { entryFileNames: 'serve-child.mjs', codeSplitting: false } },
    },
  });
  return join(outDir, 'serve-child.mjs');
}

export interface KillableServer {
  readonly url: string;
  /** Ends the process as a power cut would. */
  readonly kill: () => Promise<void>;
  /** Starts it again on the same folder and port. */
  readonly restart: () => Promise<void>;
}

/** A server in a process of its own, its projects on the disk. */
export async function killableServer(webRoot: string): Promise<KillableServer> {
  const script = await bundledChild();
  const folder = mkdtempSync(join(tmpdir(), 'cloche-killed-'));
  process.once('exit', () => rmSync(folder, { recursive: true, force: true }));
  const optionsFile = join(folder, 'options.json');
  const { fonts, today, ...options } = repositoryOptions({ webRoot });
  writeFileSync(optionsFile, JSON.stringify(options));
  let child: ChildProcess | null = null;
  const begin = (port: string) =>
    new Promise<string>((resolve, reject) => {
      const started = spawn(process.execPath, [script, join(folder, 'data'), optionsFile, port]);
      child = started;
      let said = '';
      started.stdout.on('data', (part) => {
        said += String(part);
        if (said.includes('\n')) resolve(said.trim());
      });
      let wrong = '';
      started.stderr.on('data', (part) => {
        wrong += String(part);
      });
      started.once('exit', (code) => reject(new Error(`the server ended (${code}): ${wrong}`)));
    });
  const url = await begin('0');
  return {
    url,
    kill: () =>
      new Promise((resolve) => {
        if (!child || child.exitCode !== null || child.signalCode !== null) return resolve();
        child.once('exit', () => resolve());
        child.kill('SIGKILL');
      }),
    restart: async () => {
      await begin(new URL(url).port);
    },
  };
}
