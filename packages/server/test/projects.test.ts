import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { valueOf } from '@cloche/engine';
import { openStore } from '@cloche/store';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { startServer } from '../src/index.js';
import { type Client, problemOf, put, startClient } from './client.js';
import { repositoryOptions } from './options.js';

let client: Client;
let clock = Date.parse('2026-10-01T12:00:00.000Z');
beforeAll(async () => {
  // Every time that is asked for is a second later than the one before.
  const now = () => {
    clock += 1000;
    return new Date(clock).toISOString();
  };
  client = await startClient({ now });
});
afterAll(() => client.server.close());

const json = async (path: string) => (await client.get(path)).json();
const append = (id: string, base: number, ...steps: unknown[]) =>
  client.send('POST', `/api/projects/${id}/steps`, { base, steps });

describe('a project', () => {
  test('is made from a text, has the name that its brief says, and is listed', async () => {
    const text = client.options.examples.find((e) => e.name === 'close-enclosure.yaml')!.text;
    const made = await client.send('POST', '/api/projects', { text });
    expect(made.status).toBe(201);
    const { id } = (await made.json()) as { id: string };
    const name = /^ {2}name: (.*)$/m.exec(text)![1];
    expect(await json(`/api/projects/${id}`)).toMatchObject({ id, name, seq: 0, text });
    expect(await json('/api/projects')).toContainEqual(
      expect.objectContaining({ id, name, revisions: 0, verdicts: null, hasPicture: false }),
    );
  });

  test('has no name that would come back changed', async () => {
    const text = client.options.examples.find((e) => e.name === 'close-enclosure.yaml')!.text;
    const id = await client.project(text.replace(/^ {2}name: .*$/m, '  name: "a\\0b"'));
    expect(await json(`/api/projects/${id}`)).toMatchObject({ name: '' });
  });

  test('may be any text while it is being written, but none that would come back changed', async () => {
    const id = await client.project('not yet: [a brief');
    expect(await json(`/api/projects/${id}`)).toMatchObject({ name: '', text: 'not yet: [a brief' });
    expect(await problemOf(await client.send('POST', '/api/projects', { text: 'a\0b' }))).toEqual([
      422,
      'text-refused',
      'text/nul',
    ]);
  });

  test('goes into the bin and out of it', async () => {
    const id = await client.project();
    const path = `/api/projects/${id}`;
    expect((await client.send('DELETE', path)).status).toBe(200);
    expect((await problemOf(await client.get(path))).slice(0, 2)).toEqual([410, 'project-removed']);
    expect((await problemOf(await append(id, 0, put(0, 'x')))).slice(0, 2)).toEqual([410, 'project-removed']);
    const ids = async (list: string) => ((await json(list)) as { id: string }[]).map((p) => p.id);
    expect(await ids('/api/projects')).not.toContain(id);
    expect(await ids('/api/projects?removed=1')).toContain(id);
    expect((await client.send('POST', `${path}/restore`)).status).toBe(200);
    expect(await ids('/api/projects')).toContain(id);
  });

  test('is thrown away only when it is named and lies in the bin', async () => {
    const [kept, gone] = [await client.project(), await client.project()];
    await client.send('DELETE', `/api/projects/${gone}`);
    const answer = await client.send('POST', '/api/bin/empty', { ids: [kept, gone] });
    expect(await answer.json()).toEqual({ emptied: 1 });
    expect((await client.get(`/api/projects/${kept}`)).status).toBe(200);
    expect((await problemOf(await client.send('POST', `/api/projects/${gone}/restore`))).slice(0, 2)).toEqual([
      404,
      'no-such-project',
    ]);
    expect((await client.send('POST', '/api/bin/empty', { ids: ['../etc'] })).status).toBe(400);
  });

  test('shows what its windows tell, its picture drawn and able to do nothing else', async () => {
    const id = await client.project();
    const verdicts = { meets: 5, attention: 1, fails: 0, notAssessed: 2 };
    const summary = { seq: 0, name: 'Bay', picture: '<svg xmlns="http://www.w3.org/2000/svg"/>', verdicts };
    expect((await client.send('PUT', `/api/projects/${id}/summary`, summary)).status).toBe(200);
    expect(await json('/api/projects')).toContainEqual(
      expect.objectContaining({ id, name: 'Bay', verdicts, hasPicture: true }),
    );
    const picture = await client.get(`/api/projects/${id}/picture`);
    expect(picture.headers.get('content-type')).toContain('image/svg+xml');
    expect(picture.headers.get('content-security-policy')).toBe(
      "sandbox; default-src 'none'; style-src 'unsafe-inline'",
    );
    expect(await picture.text()).toBe(summary.picture);
    for (const wrong of ['<html><svg></svg></html>', `<svg>${'x'.repeat(300_000)}</svg>`])
      expect((await client.send('PUT', `/api/projects/${id}/summary`, { ...summary, picture: wrong })).status).toBe(
        400,
      );
  });
});

describe('steps', () => {
  test('are taken in the order of the head, and a window that is behind is told what it missed', async () => {
    const id = await client.project('ab');
    expect(await (await append(id, 0, put(2, 'c'))).json()).toEqual({ seq: 1 });
    const late = await append(id, 0, put(0, 'x', { window: 'w2' }));
    expect(late.status).toBe(409);
    expect(await late.json()).toMatchObject({ seq: 1, steps: [{ ...put(2, 'c'), seq: 1 }] });
    expect((await append(id, 1, put(0, 'x', { window: 'w2' }))).status).toBe(200);
    expect(await json(`/api/projects/${id}`)).toMatchObject({ seq: 2, text: 'xabc' });
    expect(await json(`/api/projects/${id}/steps?after=1`)).toMatchObject({
      seq: 2,
      steps: [{ seq: 2, window: 'w2' }],
    });
    expect(await json(`/api/projects/${id}/steps`)).toMatchObject({ seq: 2, steps: [{ seq: 1 }, { seq: 2 }] });
  });

  test('that do not fit are refused with their place', async () => {
    const id = await client.project('ab');
    const answer = await append(id, 0, put(0, 'x'), { ...put(0, ''), splices: [{ at: 0, out: 'ab', in: '' }] });
    expect(answer.status).toBe(422);
    expect(await answer.json()).toMatchObject({
      problems: [{ code: 'steps/does-not-fit', path: ['steps', 1, 'splices', 0] }],
    });
  });

  test.each<[string, unknown]>([
    ['without steps', { base: 0, steps: [] }],
    ['without splices', { base: 0, steps: [{ ...put(0, 'x'), splices: [] }] }],
    ['of an unknown kind', { base: 0, steps: [{ ...put(0, 'x'), kind: 'paste' }] }],
    ['at a place before the text', { base: 0, steps: [put(-1, 'x')] }],
    ['with a field that nobody knows', { base: 0, steps: [{ ...put(0, 'x'), at: 'now' }] }],
    ['of a window with a wrong name', { base: 0, steps: [put(0, 'x', { window: '../w' })] }],
  ])('%s are none', async (_, body) => {
    const id = await client.project();
    expect((await client.send('POST', `/api/projects/${id}/steps`, body)).status).toBe(400);
  });

  test('larger than any text are refused unread', async () => {
    const id = await client.project();
    expect((await append(id, 0, put(0, 'x'.repeat(6 * 1024 * 1024)))).status).toBe(413);
    expect((await append(id, 0, put(0, 'x'.repeat(2_000_001)))).status).toBe(400);
    expect((await append(id, 0, put(0, 'x'.repeat(1_999_999)))).status).toBe(422);
    const many = { ...put(0, ''), splices: Array(5001).fill({ at: 0, out: '', in: '' }) };
    expect((await append(id, 0, many)).status).toBe(413);
  });
});

describe('revisions', () => {
  const revision = {
    ...{ name: 'A', note: 'for the group', by: 'me', seq: 0, hash: `sha256:${'0'.repeat(64)}` },
    verdicts: { meets: 1, attention: 0, fails: 0, notAssessed: 0 },
    cost: { total: '1200.00', currency: 'EUR' },
  };
  const add = (id: string, over = {}) => client.send('POST', `/api/projects/${id}/revisions`, { ...revision, ...over });

  test('keep their text and what was in force, and cannot be changed', async () => {
    const id = await client.project('ab');
    expect(await (await add(id)).json()).toEqual({ number: 1 });
    await append(id, 0, put(2, 'c'));
    expect(await (await add(id, { name: 'B', seq: 1 })).json()).toEqual({ number: 2 });
    const first = (await json(`/api/projects/${id}/revisions/1`)) as { stock: { rules: object } };
    expect(first).toMatchObject({ ...revision, number: 1, text: 'ab' });
    expect(Object.keys(first.stock.rules)).toEqual(Object.keys(client.options.rulesFiles).sort());
    expect(await json(`/api/projects/${id}/revisions`)).toMatchObject([{ name: 'A' }, { name: 'B' }]);
    for (const method of ['PUT', 'PATCH', 'DELETE'])
      expect((await client.send(method, `/api/projects/${id}/revisions/1`)).status).toBe(404);
  });

  test('need a step that there is, a name and a hash', async () => {
    const id = await client.project();
    expect((await problemOf(await add(id, { seq: 9 }))).slice(0, 2)).toEqual([422, 'no-such-step']);
    expect((await add(id, { name: '' })).status).toBe(400);
    expect((await add(id, { hash: 'none' })).status).toBe(400);
    expect((await add(id, { cost: 'x'.repeat(70_000) })).status).toBe(413);
    expect((await client.get(`/api/projects/${id}/revisions/1`)).status).toBe(404);
  });
});

test.each(['a\0b', 'a\ud800b'])('a name that would come back changed is refused: %j', async (name) => {
  const id = await client.project();
  const hash = '0'.repeat(64);
  const summary = { seq: 0, name: 'Bay', picture: '<svg></svg>', verdicts: null };
  const revision = { name: 'A', note: '', by: '', seq: 0, hash, verdicts: null };
  const put = (over: object) => client.send('PUT', `/api/projects/${id}/summary`, { ...summary, ...over });
  const add = (over: object) => client.send('POST', `/api/projects/${id}/revisions`, { ...revision, ...over });
  expect((await put({})).status).toBe(200);
  for (const answer of [put({ name }), put({ picture: `<svg>${name}</svg>` }), add({ name }), add({ note: name })])
    expect((await answer).status).toBe(400);
  expect((await add({ name: 'Bay \u{1F9EA}' })).status).toBe(201);
});

describe('an id from outside is no path', () => {
  test.each(['..', '..%2f..%2fetc%2fpasswd', 'A'.repeat(32), '0'.repeat(33), '%00'])('%s', async (id) => {
    for (const path of ['', '/steps', '/revisions', '/picture', '/export', '/live'])
      expect((await client.get(`/api/projects/${id}${path}`)).status).toBeGreaterThanOrEqual(400);
  });
  test('one that nobody gave is not there', async () => {
    expect((await client.get(`/api/projects/${'0'.repeat(32)}`)).status).toBe(404);
  });
});

describe('attachments', () => {
  const png = new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 1, 2, 3]);
  const attach = (id: string, bytes: Uint8Array, name = 'a.png', type = 'image/png') =>
    client.bytes(`/api/projects/${id}/attachments?name=${encodeURIComponent(name)}`, bytes, type);
  const ascii = (text: string) => new TextEncoder().encode(text);

  test('come back as they were, and can run nothing', async () => {
    const id = await client.project();
    const made = await attach(id, png, "plan 1 (café)'s.png");
    expect(made.status).toBe(201);
    const { hash, ...file } = (await made.json()) as { hash: string };
    expect(file).toEqual({ name: "plan 1 (café)'s.png", mediaType: 'image/png', size: png.length });
    const back = await client.get(`/api/projects/${id}/attachments/${hash}`);
    expect(new Uint8Array(await back.arrayBuffer())).toEqual(png);
    expect(back.headers.get('content-type')).toBe('image/png');
    expect(back.headers.get('x-content-type-options')).toBe('nosniff');
    expect(back.headers.get('content-security-policy')).toBe("sandbox; default-src 'none'");
    expect((await client.get(`/api/projects/${await client.project()}/attachments/${hash}`)).status).toBe(404);
  });

  test.each<[string, Uint8Array, string]>([
    ['JPEG', new Uint8Array([0xff, 0xd8, 0xff, 0xe0]), 'image/jpeg'],
    ['WebP', ascii('RIFF\u0001\u0002\u0003\u0004WEBPVP8 '), 'image/webp'],
    ['DXF', ascii('999\r\nmade by hand\r\n  0\r\nSECTION\r\n  2\r\nHEADER\r\n'), 'image/vnd.dxf'],
  ])('are told by their first bytes: %s', async (_, bytes, mediaType) => {
    const made = await attach(await client.project(), bytes, 'no-ending', 'application/octet-stream');
    expect(await made.json()).toMatchObject({ mediaType });
  });

  test.each<[string, Uint8Array]>([
    ['a page', ascii('<html><script>1</script>')],
    ['a drawing that can hold scripts', ascii('<svg xmlns="http://www.w3.org/2000/svg"/>')],
    ['a program', new Uint8Array([0x7f, 0x45, 0x4c, 0x46])],
    ['the first half of a PNG', png.slice(0, 4)],
    ['nothing', new Uint8Array()],
  ])('that only claim to be a picture are refused: %s', async (_, bytes) => {
    expect((await problemOf(await attach(await client.project(), bytes)))[0]).toBe(415);
  });

  test.each(['../a.png', 'a/b.png', 'a\\b.png', '.png', 'a\u0000.png', 'a\u202egnp.exe', '', 'x'.repeat(121)])(
    'are not named %j',
    async (name) => {
      expect((await attach(await client.project(), png, name)).status).toBe(400);
    },
  );

  test('larger than 16 MB are refused', async () => {
    const large = new Uint8Array(16 * 1024 * 1024 + 1);
    large.set(png);
    expect((await attach(await client.project(), large)).status).toBe(413);
  });

  test('have room for 48 MB together', async () => {
    const id = await client.project();
    const statuses: number[] = [];
    for (let i = 0; i < 4; i++) {
      const bytes = new Uint8Array(15 * 1024 * 1024);
      bytes.set(png);
      bytes[20] = i;
      statuses.push((await attach(id, bytes)).status);
    }
    expect(statuses).toEqual([201, 201, 201, 413]);
  }, 60_000);
});

describe('a brief named on the command line', () => {
  test('finds its project again, as it is by then', async () => {
    const store = valueOf(await openStore(null));
    const path = join(import.meta.dirname, 'options.ts');
    const openBrief = { name: 'mine.yaml', path, text: readFileSync(path, 'utf8') };
    const opened = async (brief: typeof openBrief) => {
      const server = await startServer(repositoryOptions({ store, openBrief: brief }));
      const body = (await (await fetch(`${server.url}/api/opened`)).json()) as { project: string; text: string };
      await server.close();
      return body;
    };
    const first = await opened(openBrief);
    expect(first).toMatchObject({ name: 'mine.yaml', text: openBrief.text });
    await store.steps.append(first.project, { base: 0, steps: [put(0, '# ')], at: '2026-10-01T12:00:00.000Z' });
    expect(await opened(openBrief)).toMatchObject({ project: first.project, text: `# ${openBrief.text}` });
    expect((await opened({ ...openBrief, text: 'changed: 1' })).project).not.toBe(first.project);
    await store.close();
  });
});
