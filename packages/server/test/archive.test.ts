import { createHash } from 'node:crypto';
import { strFromU8, strToU8, unzipSync, type Zippable, zipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { unpackProject } from '../src/archive/unpack-project.js';
import { unzipBounded } from '../src/archive/unzip-bounded.js';
import { type Client, problemOf, put, startClient } from './client.js';
import { bundledArchiveWorker } from './options.js';

let client: Client;
beforeAll(async () => {
  client = await startClient({ archiveWorker: await bundledArchiveWorker() });
}, 60_000);
afterAll(() => client.server.close());

const png = new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 1, 2, 3]);
const json = async (path: string) => (await client.get(path)).json();
const take = (zip: Uint8Array) => client.bytes('/api/projects/import', zip, 'application/zip');

/** A project with a history, a revision and a picture, as its archive. */
async function exported() {
  const id = await client.project('ab');
  await client.send('POST', `/api/projects/${id}/steps`, {
    base: 0,
    steps: [put(2, 'ü'), put(0, 'x', { kind: 'redo' })],
  });
  const revision = {
    name: 'A',
    note: 'n',
    by: 'me',
    seq: 1,
    hash: '0'.repeat(64),
    verdicts: null,
    cost: { total: '1' },
  };
  await client.send('POST', `/api/projects/${id}/revisions`, revision);
  await client.bytes(`/api/projects/${id}/attachments?name=photo.png`, png);
  const answer = await client.get(`/api/projects/${id}/export`);
  return { id, answer, zip: new Uint8Array(await answer.arrayBuffer()) };
}

describe('an archive', () => {
  test('holds text, history and attachments, and the same project gives the same bytes', async () => {
    const { id, answer, zip } = await exported();
    expect(answer.headers.get('content-type')).toBe('application/zip');
    expect(answer.headers.get('content-disposition')).toBe('attachment; filename="project.zip"');
    const files = unzipSync(zip);
    const hash = createHash('sha256').update(png).digest('hex');
    expect(Object.keys(files)).toEqual(['brief.yaml', 'project.json', `attachments/${hash}.png`]);
    expect(strFromU8(files['brief.yaml']!)).toBe('xabü');
    expect(files[`attachments/${hash}.png`]).toEqual(png);
    const again = new Uint8Array(await (await client.get(`/api/projects/${id}/export`)).arrayBuffer());
    expect(Buffer.compare(zip, again)).toBe(0);
  });

  test('carries the texts that it was computed with, and tells on its way in where this shelf differs', async () => {
    const { zip } = await exported();
    const same = (await (await take(zip)).json()) as { shelf: unknown };
    expect(same.shelf).toEqual([]);
    const original = client.options.rulesFiles['eu']!;
    await client.send('PUT', '/api/shelf/rules/eu', { text: `# ours\n${original}`, because: 'our site' });
    const other = (await (await take(zip)).json()) as { shelf: unknown };
    expect(other.shelf).toEqual([{ kind: 'rules', name: 'eu', what: 'other', text: original }]);
    await client.send('DELETE', '/api/shelf/rules/eu?because=enough');
  });

  test('without data files, as older ones are, is taken and says so; with changed ones it is refused', async () => {
    const { zip } = await exported();
    const files = unzipSync(zip);
    const project = JSON.parse(strFromU8(files['project.json']!));
    const withJson = (json: object) => zipSync({ ...files, 'project.json': strToU8(JSON.stringify(json)) } as Zippable);
    const { stock, texts, ...older } = project;
    expect(((await (await take(withJson(older))).json()) as { shelf: unknown }).shelf).toBeNull();
    const [hash, text] = Object.entries(texts as Record<string, string>)[0]!;
    for (const wrong of [
      { ...project, texts: { ...texts, [hash]: `${text} ` } },
      { ...project, texts: {} },
    ])
      expect(await problemOf(await take(withJson(wrong)))).toContain('archive/texts');
    expect(stock.rules).toHaveProperty('eu');
  });

  test('comes in as a project of its own, with all that the first one has', async () => {
    const { id, zip } = await exported();
    const made = await take(zip);
    expect(made.status).toBe(201);
    const { id: copy } = (await made.json()) as { id: string };
    expect(copy).not.toBe(id);
    for (const path of ['/steps', '/revisions', '/revisions/1'])
      expect(await json(`/api/projects/${copy}${path}`)).toEqual(await json(`/api/projects/${id}${path}`));
    expect(await json(`/api/projects/${copy}`)).toMatchObject({ text: 'xabü', seq: 2 });
    const hash = createHash('sha256').update(png).digest('hex');
    const picture = await client.get(`/api/projects/${copy}/attachments/${hash}`);
    expect(new Uint8Array(await picture.arrayBuffer())).toEqual(png);
  });

  test('that is none is refused over the wire, and larger than 64 MB unread', async () => {
    expect(await problemOf(await take(strToU8('no archive at all')))).toEqual([
      422,
      'archive-refused',
      'archive/no-zip',
    ]);
    expect((await take(new Uint8Array(64 * 1024 * 1024 + 1))).status).toBe(413);
  });
});

const codesOf = (outcome: { ok: boolean; problems?: readonly { code: string }[] }) =>
  outcome.ok ? [] : outcome.problems!.map((p) => p.code);

/** Writes another unpacked size into the directory of an archive of one file. Source: ZIP application note 4.3.12, offset 24 (from memory). */
function lying(zip: Uint8Array, size: number): Uint8Array {
  const view = new DataView(zip.buffer, zip.byteOffset, zip.byteLength);
  for (let at = 0; at < zip.length - 4; at++)
    if (view.getUint32(at, true) === 0x02014b50) view.setUint32(at + 24, size, true);
  return zip;
}

describe('bombs and traps are refused before they are unpacked', () => {
  const zeros = (mega: number) => new Uint8Array(mega * 1024 * 1024);
  const pictures = (count: number): Zippable =>
    Object.fromEntries(
      Array.from({ length: count }, (_, i) => [`attachments/${i.toString(16).padStart(64, '0')}.png`, png]),
    );
  test.each<[string, () => Zippable, string]>([
    ['one file that is a thousand times its size', () => ({ 'brief.yaml': zeros(8) }), 'archive/too-dense'],
    ['one file above its size', () => ({ 'brief.yaml': zeros(17) }), 'archive/too-large'],
    ['too many files', () => pictures(301), 'archive/too-many-files'],
    ['a way out of the folder', () => ({ '../../evil.yaml': png }), 'archive/unknown-file'],
    ['a way from the root', () => ({ '/brief.yaml': png }), 'archive/unknown-file'],
    ['a way out with backslashes', () => ({ 'attachments\\..\\brief.yaml': png }), 'archive/unknown-file'],
    ['a name that every object has', () => ({ ['__proto__/x']: png }), 'archive/unknown-file'],
    [
      'a picture under the name of a page',
      () => ({ [`attachments/${'0'.repeat(64)}.html`]: png }),
      'archive/unknown-file',
    ],
    ['an archive in an archive', () => ({ 'project.zip': zipSync({ 'brief.yaml': png }) }), 'archive/unknown-file'],
  ])('%s', (_, files, code) => {
    expect(codesOf(unzipBounded(zipSync(files())))).toContain(code);
  });

  test('many files above the size of all', () => {
    expect(codesOf(unzipBounded(lying(zipSync(pictures(13)), 15 * 1024 * 1024)))).toContain('archive/too-large');
  });

  test('a directory that lies about a size fills no more memory than it says', () => {
    const small = unzipBounded(lying(zipSync({ 'brief.yaml': zeros(8) }), 1000));
    expect(small.ok && small.value['brief.yaml']!.length).toBe(1000);
    expect(codesOf(unzipBounded(lying(zipSync({ 'brief.yaml': png }), 0xffffffff)))).toContain('archive/too-large');
  });

  test.each([
    ['cut off', () => zipSync({ 'brief.yaml': png }).slice(0, 60)],
    ['empty', () => new Uint8Array()],
  ])('bytes that are %s', (_, bytes) => {
    expect(codesOf(unzipBounded(bytes()))).toEqual(['archive/no-zip']);
  });
});

test('an end that claims files which are not there gives none', () => {
  const end = Uint8Array.from([0x50, 0x4b, 5, 6, 0, 0, 0, 0, 9, 0, 9, ...Array(11).fill(9)]);
  expect(unzipBounded(end).ok).toBe(false);
});

describe('an archive that was changed is refused', () => {
  interface Json {
    cloche: number;
    start: string;
    steps: { seq: number; at: string; splices: { at: number }[] }[];
    revisions: { number: number; seq: number }[];
    attachments: { hash: string; mediaType: string }[];
  }
  let zip: Uint8Array;
  beforeAll(async () => {
    ({ zip } = await exported());
  });
  /** What is said of the archive once its files were changed. */
  async function after(change: (project: Json, files: Record<string, Uint8Array>) => void) {
    const files = unzipSync(zip);
    const project = JSON.parse(strFromU8(files['project.json']!)) as Json;
    change(project, files);
    if (files['project.json']) files['project.json'] = strToU8(JSON.stringify(project));
    return codesOf(unpackProject(zipSync(files)));
  }

  test('unchanged it is taken', async () => {
    expect(await after(() => {})).toEqual([]);
  });
  test.each<[string, (project: Json, files: Record<string, Uint8Array>) => void, string]>([
    ['text', (_, files) => Object.assign(files, { 'brief.yaml': strToU8('other') }), 'archive/history'],
    ['no text', (_, files) => delete files['brief.yaml'], 'archive/history'],
    ['start', (project) => Object.assign(project, { start: 'b' }), 'archive/history'],
    ['a hole', (project) => project.steps.splice(0, 1), 'archive/history'],
    ['a splice', (project) => Object.assign(project.steps[0]!.splices[0]!, { at: 99 }), 'archive/history'],
    ['a time', (project) => Object.assign(project.steps[0]!, { at: 'yesterday' }), 'archive/shape'],
    ['a field', (project) => Object.assign(project, { more: 1 }), 'archive/shape'],
    ['another form', (project) => Object.assign(project, { cloche: 9 }), 'archive/shape'],
    ['a revision', (project) => Object.assign(project.revisions[0]!, { seq: 9 }), 'archive/revision'],
    ['no project', (_, files) => delete files['project.json'], 'archive/no-project'],
    [
      'a picture',
      (_, files) => {
        for (const name of Object.keys(files)) if (name.endsWith('.png')) files[name] = strToU8('<html>');
      },
      'archive/attachment',
    ],
    ['a kind', (project) => Object.assign(project.attachments[0]!, { mediaType: 'image/jpeg' }), 'archive/attachment'],
  ])('%s', async (_, change, code) => {
    expect(await after(change)).toContain(code);
  });
  test('project.json that is no JSON', () => {
    expect(codesOf(unpackProject(zipSync({ 'project.json': strToU8('{') })))).toEqual(['archive/shape']);
  });
});
