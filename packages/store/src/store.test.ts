import { valueOf } from '@cloche/engine';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { hashOf, type NewStep, openStore, type Store } from './index.js';

let store: Store;
beforeEach(async () => {
  store = valueOf(await openStore(null));
});
afterEach(() => store.close());

const day = (n: number) => `2026-10-0${n}T12:00:00.000Z`;
const made = (text = 'ab', n = 1) => store.projects.create({ text, name: 'Bay', at: day(n) });
const put = (at: number, text: string, more: Partial<NewStep> = {}): NewStep => ({
  window: 'w1',
  group: 'g1',
  kind: 'edit',
  splices: [{ at, out: '', in: text }],
  ...more,
});
const append = (id: string, base: number, ...steps: NewStep[]) => store.steps.append(id, { base, steps, at: day(2) });

describe('the history', () => {
  test('numbers steps from 1 and keeps all that was told of them', async () => {
    const id = await made();
    const undo: NewStep = { window: 'w2', group: 'g2', kind: 'undo', splices: [{ at: 2, out: 'c', in: '' }] };
    expect(await append(id, 0, put(2, 'c'), undo)).toMatchObject({ outcome: 'appended', seq: 2 });
    expect(await store.steps.since(id, 0)).toEqual({
      seq: 2,
      steps: [
        { ...put(2, 'c'), seq: 1, at: day(2) },
        { ...undo, seq: 2, at: day(2) },
      ],
    });
    expect(await store.steps.since(id, 1)).toMatchObject({ seq: 2, steps: [{ seq: 2 }] });
    expect(await store.projects.get(id)).toMatchObject({ seq: 2, text: 'ab', changed: day(2) });
  });

  test('of two that append to the same head, one is told what the other did', async () => {
    const id = await made();
    const both = await Promise.all([append(id, 0, put(0, 'x')), append(id, 0, put(0, 'y'))]);
    expect(both.map((b) => b.outcome).sort()).toEqual(['appended', 'behind']);
    const behind = both.find((b) => b.outcome === 'behind');
    expect(behind).toMatchObject({ seq: 1, steps: [{ seq: 1 }] });
    expect((await store.projects.get(id))!.text).toHaveLength(3);
  });

  test('takes no base from the future, and nothing of an append of which one step does not fit', async () => {
    const id = await made();
    expect(await append(id, 5, put(0, 'x'))).toEqual({ outcome: 'behind', seq: 0, steps: [] });
    const unfit = await append(id, 0, put(0, 'x'), put(9, 'y'));
    expect(unfit).toMatchObject({ outcome: 'unfit', problems: [{ path: ['steps', 1, 'splices', 0] }] });
    expect(await store.steps.since(id, 0)).toEqual({ seq: 0, steps: [] });
  });

  test('ends for a project in the bin, and goes on when it is taken out', async () => {
    const id = await made();
    expect(await store.projects.remove(id, day(3))).toBe(true);
    expect(await store.projects.remove(id, day(3))).toBe(false);
    expect(await append(id, 0, put(0, 'x'))).toEqual({ outcome: 'missing' });
    expect([await store.projects.list(), (await store.projects.list(true)).map((p) => p.id)]).toEqual([[], [id]]);
    expect(await store.projects.state(id)).toBe('removed');
    expect(await store.projects.restore(id)).toBe(true);
    expect(await append(id, 0, put(0, 'x'))).toMatchObject({ outcome: 'appended' });
  });
});

describe('the list', () => {
  test('has the newest change first', async () => {
    const [a, b] = [await made('a', 3), await made('b', 4)];
    expect((await store.projects.list()).map((p) => p.id)).toEqual([b, a]);
    await store.steps.append(a, { base: 0, steps: [put(0, 'x')], at: day(5) });
    expect((await store.projects.list()).map((p) => p.id)).toEqual([a, b]);
  });

  test('shows the summary of the window that has seen most', async () => {
    const id = await made();
    await append(id, 0, put(0, 'x'), put(0, 'y'));
    const verdicts = { meets: 3, attention: 2, fails: 1, notAssessed: 0 };
    expect(await store.projects.summarise(id, { seq: 2, name: 'New', picture: '<svg/>', verdicts })).toBe(true);
    await store.projects.summarise(id, { seq: 1, name: 'Old', picture: null, verdicts: null });
    expect((await store.projects.list())[0]).toMatchObject({ name: 'New', hasPicture: true, verdicts, revisions: 0 });
    expect(await store.projects.picture(id)).toBe('<svg/>');
    expect(await store.projects.summarise('0'.repeat(32), { seq: 0, name: '', picture: null, verdicts: null })).toBe(
      false,
    );
  });
});

describe('a revision', () => {
  const revision = { name: 'A', note: 'first', by: 'me', hash: 'sha256:x', verdicts: null, cost: { total: '12.50' } };
  const stock = { catalogue: { 'a.yaml': 'parts' }, rules: { eu: 'rules' } };

  test('keeps the text of its step, whatever follows, and what it was computed from', async () => {
    const id = await made('ab');
    await append(id, 0, put(2, 'c'), put(3, 'd'));
    expect(await store.revisions.add(id, { ...revision, seq: 1, at: day(3), stock })).toBe(1);
    expect(await store.revisions.add(id, { ...revision, name: 'B', seq: 2, at: day(4), stock })).toBe(2);
    await append(id, 2, put(0, 'x'));
    expect(await store.revisions.get(id, 1)).toEqual({
      ...revision,
      number: 1,
      at: day(3),
      seq: 1,
      text: 'abc',
      stock: { catalogue: { 'a.yaml': hashOf('parts') }, rules: { eu: hashOf('rules') } },
    });
    expect((await store.revisions.get(id, 2))!.text).toBe('abcd');
    expect((await store.revisions.list(id)).map((r) => [r.number, r.name])).toEqual([
      [1, 'A'],
      [2, 'B'],
    ]);
    expect((await store.projects.list())[0]!.revisions).toBe(2);
  });

  test('needs a step that there is', async () => {
    const id = await made();
    expect(await store.revisions.add(id, { ...revision, seq: 1, at: day(3), stock })).toBe('no-step');
    expect(await store.revisions.add('0'.repeat(32), { ...revision, seq: 0, at: day(3), stock })).toBeUndefined();
  });
});

describe('attachments', () => {
  const file = (text: string, name: string) => ({
    bytes: new TextEncoder().encode(text),
    name,
    mediaType: 'image/png',
    at: day(1),
  });

  test('come back byte by byte, and the same bytes are kept once', async () => {
    const [id, other] = [await made(), await made()];
    const kept = await store.attachments.add(id, file('abc', 'one.png'));
    // SHA-256 of "abc": the first example of FIPS 180 (from memory).
    expect(kept.hash).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
    expect(await store.attachments.add(id, file('abc', 'two.png'))).toEqual(kept);
    expect((await store.attachments.get(id, kept.hash))!.bytes).toEqual(new Uint8Array([97, 98, 99]));
    expect(await store.attachments.get(other, kept.hash)).toBeUndefined();
    expect(await store.attachments.list(id)).toHaveLength(1);
  });
});

describe('the shelf', () => {
  const place = { kind: 'rules', name: 'eu' } as const;

  test('has the last version in force, until it is taken back; every version stays readable', async () => {
    const one = await store.shelf.put(place, { text: 'one', because: 'a', at: day(1) });
    const two = await store.shelf.put(place, { text: 'two', because: 'b', at: day(2) });
    expect(await store.shelf.inForce()).toEqual([{ ...place, text: 'two' }]);
    await store.shelf.takeBack(place, { because: 'c', at: day(3) });
    expect(await store.shelf.inForce()).toEqual([]);
    expect(await store.shelf.text(place, one)).toBe('one');
    expect(await store.shelf.text({ kind: 'catalogue', name: 'eu' }, one)).toBeUndefined();
    expect((await store.shelf.versions()).map((v) => [v.hash, v.because])).toEqual([
      [one, 'a'],
      [two, 'b'],
      [null, 'c'],
    ]);
  });
});

describe('the bin', () => {
  test('is emptied of just the projects that are named and lie in it, and of what only they had', async () => {
    const [kept, gone, other] = [await made('ab'), await made('ab'), await made('ab')];
    const picture = (bytes: readonly number[]) => ({
      ...{ bytes: new Uint8Array(bytes), name: 'p.png', mediaType: 'image/png', at: day(1) },
    });
    const revision = { name: 'A', note: '', by: '', seq: 0, hash: 'h', verdicts: null, cost: null, at: day(2) };
    for (const id of [kept, gone]) {
      await store.attachments.add(id, picture([1]));
      await store.revisions.add(id, { ...revision, stock: { catalogue: { 'a.yaml': 'parts' }, rules: {} } });
    }
    const own = await store.attachments.add(gone, picture([2]));
    await append(gone, 0, put(0, 'x'));
    await store.openedFiles.remember({ path: '/briefs/bay.yaml', text: 'ab' }, gone);
    await store.projects.remove(gone, day(3));
    await store.projects.remove(other, day(3));
    expect(await store.projects.discard([kept, gone])).toBe(1);
    expect([await store.projects.state(gone), await store.projects.state(kept)]).toEqual(['missing', 'there']);
    // What lies in the bin besides was not named, and can still be put back.
    expect(await store.projects.state(other)).toBe('removed');
    expect(await store.projects.restore(gone)).toBe(false);
    expect(await store.attachments.get(gone, own.hash)).toBeUndefined();
    expect((await store.attachments.list(kept)).length).toBe(1);
    expect((await store.revisions.get(kept, 1))!.text).toBe('ab');
    expect((await store.whole.read(kept))!.texts).toEqual({ [hashOf('parts')]: 'parts' });
  });
});

test('a brief opened again finds its project while the file is what it was', async () => {
  const id = await made();
  const file = { path: '/briefs/bay.yaml', text: 'ab' };
  await store.openedFiles.remember(file, id);
  await append(id, 0, put(0, 'x'));
  expect(await store.openedFiles.find(file)).toBe(id);
  expect(await store.openedFiles.find({ ...file, text: 'abc' })).toBeUndefined();
  expect(await store.openedFiles.find({ ...file, path: '/briefs/other.yaml' })).toBeUndefined();
  await store.projects.remove(id, day(3));
  expect(await store.openedFiles.find(file)).toBeUndefined();
});

test('a whole project goes out and comes in as another one that is the same', async () => {
  const id = await made('ab');
  await append(id, 0, put(2, 'c'), put(3, 'd'));
  await store.revisions.add(id, {
    ...{ name: 'A', note: '', by: '', hash: 'h', verdicts: null, cost: null, seq: 1, at: day(3) },
    stock: { catalogue: { 'a.yaml': 'parts' }, rules: {} },
  });
  await store.attachments.add(id, { bytes: new Uint8Array([1, 2]), name: 'p.png', mediaType: 'image/png', at: day(4) });
  const whole = (await store.whole.read(id))!;
  const copy = await store.whole.add({ ...whole, revisions: whole.revisions.map((r) => ({ ...r, text: 'abc' })) });
  expect(copy).not.toBe(id);
  expect(await store.whole.read(copy)).toEqual(whole);
  expect((await store.revisions.get(copy, 1))!.text).toBe('abc');
  expect(await append(copy, 2, put(0, 'x'))).toMatchObject({ outcome: 'appended', seq: 3 });
});
