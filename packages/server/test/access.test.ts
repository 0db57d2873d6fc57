import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { failedTries } from '../src/access/failed-tries.js';
import { isLoopback, startServer } from '../src/index.js';
import { type Client, startClient } from './client.js';
import { repositoryOptions } from './options.js';

const token = 'A'.repeat(43);

describe('beyond this machine', () => {
  let client: Client;
  beforeAll(async () => {
    client = await startClient({ host: '0.0.0.0', token });
  });
  afterAll(() => client.server.close());

  const enter = async (value: string) => {
    const answer = await fetch(`${client.server.url}/?token=${value}`, { redirect: 'manual' });
    return { answer, cookie: answer.headers.get('set-cookie') };
  };

  test('nothing is served without the token, not even the page', async () => {
    const page = await client.get('/');
    expect([page.status, page.headers.get('content-type')]).toEqual([401, 'text/plain; charset=utf-8']);
    expect(page.headers.get('content-security-policy')).toContain("default-src 'self'");
    for (const path of ['/api/projects', '/api/rules', '/index.html', '/no-such-page', `/api/projects?token=${token}`])
      expect((await client.get(path)).status).toBe(401);
  });

  test('the link gives a cookie that no script reads and no other site sends, and leads on to the clean address', async () => {
    const { answer, cookie } = await enter(token);
    expect(answer.headers.get('refresh')).toBe('0; url=/');
    expect(cookie).toMatch(/; Path=\/; HttpOnly; SameSite=Strict;/);
    expect(cookie).not.toContain(token);
    expect(answer.headers.get('referrer-policy')).toBe('no-referrer');
    expect(answer.headers.get('cache-control')).toBe('no-store');
    const pass = { cookie: `other=1; ${cookie!.split(';')[0]}` };
    expect((await client.get('/', pass)).status).toBe(200);
    expect((await client.get('/api/projects', pass)).status).toBe(200);
  });

  test('a page from elsewhere is refused even with the cookie', async () => {
    const pass = (await enter(token)).cookie!.split(';')[0]!;
    const post = (origin: string) =>
      client.send('POST', '/api/projects', { text: 'cloche: 1' }, { cookie: pass, origin });
    expect((await post('http://elsewhere.example.org')).status).toBe(403);
    expect((await post(client.server.url)).status).toBe(201);
  });

  test('wrong tokens are refused, and after ten the address waits, right token or not', async () => {
    const own = await startClient({ host: '0.0.0.0', token });
    const wrong = (value: string) => fetch(`${own.server.url}/?token=${value}`);
    const cookie = (await wrong(token)).headers.get('set-cookie')!.split(';')[0]!;
    const tries = ['', 'B', token.slice(1), `${token}A`, ...Array.from({ length: 6 }, (_, i) => `${i}`)];
    for (const value of tries) {
      const answer = await wrong(value);
      expect([answer.status, answer.headers.get('set-cookie')]).toEqual([401, null]);
    }
    const blocked = await wrong(token);
    expect(blocked.status).toBe(429);
    expect(Number(blocked.headers.get('retry-after'))).toBeGreaterThan(0);
    // Who is in stays in.
    expect((await own.get('/api/projects', { cookie })).status).toBe(200);
    await own.server.close();
  });

  test('a forged cookie is a wrong try, too', async () => {
    const name = `cloche-${new URL(client.server.url).port}`;
    expect((await client.get('/api/projects', { cookie: `${name}=${'0'.repeat(64)}` })).status).toBe(401);
    expect((await client.get('/api/projects', { cookie: `${name}=${token}` })).status).toBe(401);
  });
});

test('an address that others reach is not opened without a token', async () => {
  await expect(startServer(repositoryOptions({ host: '0.0.0.0' }))).rejects.toThrow('needs a token');
});

test.each([
  ['localhost', true],
  ['127.0.0.1', true],
  ['127.1.2.3', true],
  ['::1', true],
  ['0.0.0.0', false],
  ['::', false],
  ['127.0.0.1.example.org', false],
  ['192.0.2.1', false],
])('%s reaches no further than this machine: %s', (host, expected) => {
  expect(isLoopback(host)).toBe(expected);
});

test('tries are counted by address, and forgotten after a minute', () => {
  let now = 0;
  const tries = failedTries(() => now);
  for (let i = 0; i < 10; i++) tries.count('a');
  expect([tries.wait('a'), tries.wait('b')]).toEqual([60, 0]);
  now = 59_001;
  expect(tries.wait('a')).toBe(1);
  now = 60_000;
  expect(tries.wait('a')).toBe(0);
  tries.count('a');
  expect(tries.wait('a')).toBe(0);
});

describe('the pages', () => {
  test('may be kept usable without a connection by a script that is never an old one', async () => {
    const webRoot = mkdtempSync(join(tmpdir(), 'cloche-sw-'));
    writeFileSync(join(webRoot, 'sw.js'), '');
    const client = await startClient({ webRoot });
    const { headers } = await client.get('/sw.js');
    await client.server.close();
    rmSync(webRoot, { recursive: true });
    expect([headers.get('service-worker-allowed'), headers.get('cache-control')]).toEqual(['/', 'no-cache']);
  });

  test('may speak only with their own server', async () => {
    const client = await startClient();
    const policy = (await client.get('/')).headers.get('content-security-policy');
    await client.server.close();
    for (const part of ["connect-src 'self'", "worker-src 'self'", "manifest-src 'self'", "img-src 'self' blob: data:"])
      expect(policy).toContain(part);
    expect(policy).not.toContain('unsafe');
  });
});
