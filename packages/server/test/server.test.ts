import { request } from 'node:http';
import { unzipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { isThisMachine } from '../src/access/host-guard.js';
import { type RunningServer, startServer } from '../src/index.js';
import { packName } from '../src/pack-route.js';
import { bundledPackWorker, repositoryOptions } from './options.js';

let server: RunningServer;
let options = repositoryOptions();
beforeAll(async () => {
  options = repositoryOptions({ packWorker: await bundledPackWorker() });
  server = await startServer(options);
}, 60_000);
afterAll(() => server.close());

const get = (path: string) => fetch(`${server.url}${path}`);
const post = (path: string, body: unknown, headers: Record<string, string> = {}) =>
  fetch(`${server.url}${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', ...headers },
    body: JSON.stringify(body),
  });

/** fetch sets the Host header itself; a plain request does not. */
const statusUnder = (host: string): Promise<number | undefined> =>
  new Promise((resolve, reject) => {
    const sent = request(`${server.url}/api/catalogue`, { headers: { host } }, (r) => {
      r.resume();
      resolve(r.statusCode);
    });
    sent.on('error', reject).end();
  });

describe('only this machine is served', () => {
  test('it listens on the loopback address', () => {
    expect(new URL(server.url).hostname).toBe('127.0.0.1');
  });
  test('a foreign Host header is refused (DNS rebinding)', async () => {
    expect(await statusUnder('lab.example.org')).toBe(421);
    expect(await statusUnder('127.0.0.1.example.org')).toBe(421);
    expect(await statusUnder(`localhost:${new URL(server.url).port}`)).toBe(200);
  });
  test('a post from a foreign page is refused', async () => {
    expect((await post('/api/pack', { brief: '' }, { origin: 'https://example.org' })).status).toBe(403);
  });
  test.each([
    ['localhost', true],
    ['[::1]:8080', true],
    ['127.0.0.1:1', true],
    ['localhost.example.org', false],
    ['', false],
    [undefined, false],
  ])('%s names this machine: %s', (authority, expected) => {
    expect(isThisMachine(authority)).toBe(expected);
  });
});

describe('what the workbench is given', () => {
  test('catalogue, rules and examples as texts, never to be kept by a cache', async () => {
    const catalogue = await get('/api/catalogue');
    expect(catalogue.headers.get('cache-control')).toBe('no-store');
    expect(await catalogue.json()).toEqual(options.catalogueFiles);
    expect(await (await get('/api/rules')).json()).toEqual(options.rulesFiles);
    expect(await (await get('/api/examples')).json()).toEqual(options.examples);
  });
  test('no project is opened unless a brief was named, and the first example is there to start with', async () => {
    const { name, text } = options.examples[0]!;
    expect(await (await get('/api/opened')).json()).toEqual({ project: null, name, text });
  });
  test('the page allows nothing from elsewhere', async () => {
    const page = await get('/');
    expect(page.status).toBe(200);
    expect(page.headers.get('content-security-policy')).toContain("default-src 'self'");
    expect(page.headers.get('content-security-policy')).not.toContain('unsafe');
  });
  test('no file outside of the web folder is served', async () => {
    expect((await get('/..%2f..%2fetc/passwd')).status).toBeGreaterThanOrEqual(400);
  });
});

describe('problems are told as problem documents (RFC 9457)', () => {
  test('a brief that cannot be used', async () => {
    const answer = await post('/api/pack', { brief: 'cloche: 1\nroom: 5\n' });
    expect(answer.status).toBe(422);
    expect(answer.headers.get('content-type')).toContain('application/problem+json');
    const body = (await answer.json()) as { type: string; status: number; problems: { code: string; hint: string }[] };
    expect(body).toMatchObject({ type: 'urn:cloche:brief-refused', status: 422 });
    expect(body.problems.length).toBeGreaterThan(0);
  });
  test('a request that is none', async () => {
    const answer = await post('/api/pack', { text: '' });
    expect(answer.status).toBe(400);
    expect(answer.headers.get('content-type')).toContain('application/problem+json');
  });
  test('a body above 2 MB', async () => {
    expect((await post('/api/pack', { brief: 'x'.repeat(2 * 1024 * 1024 + 1) })).status).toBe(413);
  });
  test('an address that is none', async () => {
    expect((await get('/api/nothing')).status).toBe(404);
  });
});

interface Line {
  readonly done?: string;
  readonly share?: number;
  readonly name?: string;
  readonly base64?: string;
  readonly trouble?: string;
  readonly detail?: string;
}
const linesOf = (text: string): Line[] =>
  text
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Line);

describe('the pack', () => {
  const brief = () => options.examples.find((e) => e.name === 'close-enclosure.yaml')!.text;
  test('comes as a zip that is the same on the same day', async () => {
    const [one, two] = await Promise.all([
      post('/api/pack', { brief: brief() }),
      post('/api/pack', { brief: brief() }),
    ]);
    expect(one.headers.get('content-type')).toBe('application/zip');
    const bytes = new Uint8Array(await one.arrayBuffer());
    expect(Buffer.from(bytes).equals(Buffer.from(await two.arrayBuffer()))).toBe(true);
    expect(Object.keys(unzipSync(bytes))).toEqual(expect.arrayContaining(['plan.svg', 'design.json', 'parts.csv']));
  }, 60_000);
  test('or as one file of it', async () => {
    const answer = await post('/api/pack?file=plan.svg', { brief: brief() });
    expect(answer.headers.get('content-type')).toContain('image/svg+xml');
    expect(await answer.text()).toContain('<svg');
  }, 60_000);
  test('has no file of an invented name', async () => {
    expect((await post('/api/pack?file=nothing.svg', { brief: brief() })).status).toBe(404);
  }, 60_000);
  test('or line by line: each file when it is done, then all files and the zip', async () => {
    const answer = await post('/api/pack/files', { brief: brief() });
    expect(answer.headers.get('content-type')).toContain('application/x-ndjson');
    expect(answer.headers.get('content-security-policy')).toContain("default-src 'self'");
    const lines = linesOf(await answer.text());
    const done = lines.flatMap((l) => l.done ?? []);
    const files = lines.flatMap((l) => l.name ?? []);
    expect(files.slice(0, -1)).toEqual(done);
    expect(lines.filter((l) => l.done !== undefined).map((l) => l.share)).toEqual(
      lines.flatMap((l) => l.share ?? []).sort((a, b) => a - b),
    );
    expect(Object.keys(unzipSync(Buffer.from(lines.at(-1)!.base64!, 'base64')))).toEqual(done);
  }, 60_000);
  test('tells line by line why a brief is refused', async () => {
    const [line] = linesOf(await (await post('/api/pack/files', { brief: 'cloche: 1\nroom: 5\n' })).text());
    expect(line!.trouble).toContain('cannot be used');
    expect(line!.detail).not.toBe('');
  });
  test('does not keep the server from answering, and stops when the client goes away', async () => {
    const heavy = options.examples.find((e) => e.name === 'three-tables.yaml')!.text;
    const gone = new AbortController();
    const work = fetch(`${server.url}/api/pack/files`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ brief: heavy }),
      signal: gone.signal,
    }).then((r) => r.text());
    expect((await get('/api/rules')).status).toBe(200);
    gone.abort();
    await expect(work).rejects.toThrow(/abort/i);
    // The thread that worked is gone; the next pack gets a new one.
    expect((await post('/api/pack?file=plan.svg', { brief: brief() })).status).toBe(200);
  }, 60_000);
  test.each([
    ['Bay 2, Müller/Søn', 'bay-2-mu-ller-s-n.zip'],
    ['***', 'pack.zip'],
  ])('of %s is called %s', (project, name) => {
    expect(packName(project)).toBe(name);
  });
});
