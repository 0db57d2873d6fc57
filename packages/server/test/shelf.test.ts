import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Client, problemOf, startClient } from './client.js';
import { bundledPackWorker } from './options.js';

let client: Client;
beforeAll(async () => {
  client = await startClient({ packWorker: await bundledPackWorker() });
}, 60_000);
afterAll(() => client.server.close());

interface Line {
  readonly kind: string;
  readonly name: string;
  readonly shipped: boolean;
  readonly inForce: string | null;
  readonly versions: readonly { readonly hash: string | null; readonly because: string }[];
}
const json = async <T>(path: string) => (await (await client.get(path)).json()) as T;
const line = async (name: string) => (await json<Line[]>('/api/shelf')).find((l) => l.name === name)!;
const put = (kind: string, name: string, text: string, because = 'new prices') =>
  client.send('PUT', `/api/shelf/${kind}/${name}`, { text, because });
const takeBack = (kind: string, name: string) => client.send('DELETE', `/api/shelf/${kind}/${name}?because=enough`);

describe('the shelf', () => {
  test('shows what was shipped as in force, with its text', async () => {
    const lines = await json<Line[]>('/api/shelf');
    expect(lines.map((l) => l.name)).toEqual(
      expect.arrayContaining([...client.options.catalogueFiles.map((f) => f.name), 'eu', 'us']),
    );
    expect(lines.every((l) => l.shipped && l.versions.length === 0)).toBe(true);
    const { inForce } = await line('eu');
    expect(await (await client.get(`/api/shelf/rules/eu/${inForce}`)).text()).toBe(client.options.rulesFiles['eu']);
  });

  test('replaces a file with a reason, keeps every version, and gives back what was shipped', async () => {
    const original = client.options.rulesFiles['eu']!;
    const text = `# ours\n${original}`;
    const { hash } = (await (await put('rules', 'eu', text, 'our site')).json()) as { hash: string };
    expect((await json<Record<string, string>>('/api/rules'))['eu']).toBe(text);
    expect(await line('eu')).toMatchObject({
      shipped: false,
      inForce: hash,
      versions: [{ hash, because: 'our site' }],
    });
    expect((await takeBack('rules', 'eu')).status).toBe(200);
    expect((await json<Record<string, string>>('/api/rules'))['eu']).toBe(original);
    expect(await line('eu')).toMatchObject({ shipped: true, versions: [{ hash }, { hash: null, because: 'enough' }] });
    expect(await (await client.get(`/api/shelf/rules/eu/${hash}`)).text()).toBe(text);
    expect((await problemOf(await takeBack('rules', 'eu')))[1]).toBe('not-on-shelf');
  });

  test('refuses files with all their problems, read together', async () => {
    const file = client.options.catalogueFiles[0]!;
    const twice = await put('catalogue', 'twice.yaml', file.text);
    expect(await problemOf(twice)).toContain('catalogue/same-id');
    expect(await problemOf(await put('rules', 'eu', 'cloche: 1\nnonsense: 2\n'))).toEqual(
      expect.arrayContaining([422, 'shelf-refused']),
    );
    expect(await problemOf(await put('rules', 'eu', `${client.options.rulesFiles['eu']}# \0`))).toContain('text/nul');
    expect((await line('eu')).shipped).toBe(true);
  });

  test.each([
    ['rules', '..%2f..%2fetc'],
    ['rules', '.hidden'],
    ['rules', '__proto__'],
    ['rules', 'eu.yaml'],
    ['catalogue', 'parts'],
    ['catalogue', 'parts.exe'],
    ['prices', 'eu'],
  ])('has no place %s/%s', async (kind, name) => {
    expect((await put(kind, name, 'x')).status).toBe(400);
  });

  test('a name that every object has is no file', async () => {
    expect((await takeBack('rules', 'constructor')).status).toBe(404);
    expect((await client.get(`/api/shelf/rules/constructor/${'0'.repeat(64)}`)).status).toBe(404);
  });

  test('needs a reason', async () => {
    expect((await put('rules', 'eu', client.options.rulesFiles['eu']!, '')).status).toBe(400);
    expect((await client.send('DELETE', '/api/shelf/rules/eu')).status).toBe(400);
  });
});

test('a pack is made from what is in force when it is asked for', async () => {
  const brief = client.options.examples.find((e) => e.name === 'close-enclosure.yaml')!.text;
  const parts = async () => (await client.send('POST', '/api/pack?file=parts.csv', { brief })).text();
  const before = await parts();
  const file = client.options.catalogueFiles.find((f) => f.text.includes('3450.00 EUR'))!;
  expect(before).toContain('3450.00');
  expect((await put('catalogue', file.name, file.text.replaceAll('3450.00 EUR', '3456.78 EUR'))).status).toBe(200);
  expect(await parts()).toContain('3456.78');
  await takeBack('catalogue', file.name);
  expect(await parts()).toBe(before);
}, 60_000);
