import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { hostsOf, linkOf } from '../src/io/serve-links.js';

const bin = fileURLToPath(new URL('../bin/cloche.js', import.meta.url));
const example = readFileSync(new URL('../../../examples/close-enclosure.yaml', import.meta.url), 'utf8');
let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'cloche-serve-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const running = new Set<ChildProcess>();
const ended = (child: ChildProcess) =>
  new Promise<number | null>((resolve) => {
    if (child.exitCode !== null || child.signalCode !== null) resolve(child.exitCode);
    else child.once('exit', resolve);
  });
afterEach(async () => {
  for (const child of running) {
    child.kill('SIGKILL');
    await ended(child);
  }
  running.clear();
});

/** A workbench that is up: what it printed, and its first link. */
function serve(...args: readonly string[]) {
  const child = spawn(process.execPath, [bin, 'serve', '--no-open', '--port', '0', ...args]);
  running.add(child);
  return new Promise<{ child: ChildProcess; said: string; link: string }>((resolve, reject) => {
    let said = '';
    child.stderr.on('data', (chunk) => reject(new Error(String(chunk))));
    child.stdout.on('data', (chunk) => {
      said += chunk;
      if (said.includes('Stop it')) resolve({ child, said, link: /http:\S+/.exec(said)![0] });
    });
  });
}
const refusal = (...args: readonly string[]) => {
  const { status, stderr } = spawnSync(process.execPath, [bin, 'serve', '--no-open', ...args], { encoding: 'utf8' });
  return { status, stderr };
};
const json = async <T>(url: string, headers: Record<string, string> = {}) =>
  (await (await fetch(url, { headers })).json()) as T;

describe('cloche serve', () => {
  test('keeps projects in the data folder, and opens a brief again as the project that it became', async () => {
    const data = join(folder, 'data');
    const brief = join(folder, 'bay.yaml');
    writeFileSync(brief, example);
    const first = await serve(brief, '--data', data);
    expect(first.said).toContain(`Projects are kept in ${data}`);
    const { project } = await json<{ project: string }>(`${first.link}/api/opened`);
    const answer = await fetch(`${first.link}/api/projects/${project}/steps`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({
        base: 0,
        steps: [{ window: 'w', group: 'g', kind: 'edit', splices: [{ at: 0, out: '', in: '# kept\n' }] }],
      }),
    });
    expect(answer.status).toBe(200);
    // Not asked to stop: killed.
    first.child.kill('SIGKILL');
    await ended(first.child);
    const again = await serve(brief, '--data', data);
    expect(await json(`${again.link}/api/opened`)).toMatchObject({ project });
    expect(await json(`${again.link}/api/projects/${project}`)).toMatchObject({ seq: 1, text: `# kept\n${example}` });
    expect(await json(`${again.link}/api/projects`)).toHaveLength(1);
    again.child.kill('SIGTERM');
    expect(await ended(again.child)).toBe(0);
  }, 120_000);

  test('refuses a data folder that another one uses, and goes on when that has ended', async () => {
    const data = join(folder, 'used');
    const first = await serve('--data', data);
    const { status, stderr } = refusal('--data', data);
    expect(status).toBe(1);
    expect(stderr).toContain('store/in-use');
    expect(stderr).toContain(first.link);
    first.child.kill('SIGTERM');
    await ended(first.child);
    await serve('--data', data);
  }, 120_000);

  test('lets other machines in by a link, whose token is for its owner alone and stays the same', async () => {
    const data = join(folder, 'shared');
    const first = await serve('--data', data, '--host', '0.0.0.0');
    const { port, searchParams } = new URL(first.link);
    const token = searchParams.get('token')!;
    // 128 bits are 22 letters of base64.
    expect(token.length).toBeGreaterThanOrEqual(22);
    expect(statSync(join(data, 'token')).mode & 0o777).toBe(0o600);
    const here = `http://127.0.0.1:${port}`;
    expect((await fetch(`${here}/api/projects`)).status).toBe(401);
    const cookie = (await fetch(`${here}/?token=${token}`)).headers.get('set-cookie')!.split(';')[0]!;
    expect(await json(`${here}/api/projects`, { cookie })).toEqual([]);
    first.child.kill('SIGTERM');
    await ended(first.child);
    expect((await serve('--data', data, '--host', '0.0.0.0')).said).toContain(token);
  }, 120_000);

  test('says what is wrong with an address, a brief or a folder', async () => {
    const busy = createServer();
    await new Promise<void>((up) => busy.listen(0, '127.0.0.1', up));
    const { port } = busy.address() as { port: number };
    const data = join(folder, 'wrong');
    expect(refusal('--data', data, '--port', `${port}`)).toMatchObject({
      status: 1,
      stderr: expect.stringContaining('cli/cannot-listen'),
    });
    busy.close();
    expect(refusal('--data', data, '--port', 'abc').stderr).toContain('cli/cannot-listen');
    expect(refusal('--data', data, '--host', 'no such host').stderr).toContain('cli/cannot-listen');
    expect(refusal(join(folder, 'none.yaml'), '--data', data).stderr).toContain('cli/cannot-read');
    writeFileSync(join(folder, 'nul.yaml'), 'cloche: 1\0');
    expect(refusal(join(folder, 'nul.yaml'), '--data', data).stderr).toContain('text/nul');
    expect(refusal('--data', join(folder, 'nul.yaml', 'data')).stderr).toContain('store/folder');
  }, 120_000);
});

describe('links for other machines', () => {
  const interfaces = {
    lo: [{ address: '127.0.0.1', family: 'IPv4', internal: true }],
    eth: [
      { address: '192.0.2.7', family: 'IPv4', internal: false },
      { address: '2001:db8::7', family: 'IPv6', internal: false },
      { address: 'fe80::1', family: 'IPv6', internal: false },
    ],
  } as unknown as Parameters<typeof hostsOf>[1];
  test.each([
    ['0.0.0.0', ['192.0.2.7']],
    ['::', ['192.0.2.7', '2001:db8::7']],
    ['lab.example.org', ['lab.example.org']],
  ])('listening on %s they name %o', (host, names) => {
    expect(hostsOf(host, interfaces)).toEqual(names);
  });
  test('are addresses a browser takes', () => {
    expect(linkOf('2001:db8::7', '4173', 'abc')).toBe('http://[2001:db8::7]:4173/?token=abc');
  });
});
