import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Client, put, startClient } from './client.js';

let client: Client;
beforeAll(async () => {
  client = await startClient();
});
afterAll(() => client.server.close());

interface Told {
  readonly id?: string;
  readonly event: string;
  readonly data: { readonly seq?: number; readonly steps?: { readonly seq: number; readonly window: string }[] };
}

/** Events of a stream as they come. Source of the form: HTML Living Standard, 9.2.5 (from memory). */
async function* eventsOf(answer: Response): AsyncGenerator<Told> {
  let rest = '';
  const decoder = new TextDecoder();
  for await (const chunk of answer.body!) {
    const blocks = (rest + decoder.decode(chunk, { stream: true })).split('\n\n');
    rest = blocks.pop()!;
    for (const block of blocks) {
      const fields = Object.fromEntries(block.split('\n').map((line) => line.split(/: (.*)/s).slice(0, 2)));
      if (fields['event']) yield { ...fields, event: fields['event'], data: JSON.parse(fields['data']!) };
    }
  }
}

async function listen(id: string, query = '', headers: Record<string, string> = {}) {
  const gone = new AbortController();
  const answer = await fetch(`${client.server.url}/api/projects/${id}/live?window=w9${query}`, {
    headers,
    signal: gone.signal,
  });
  const events = eventsOf(answer);
  return { answer, next: async () => (await events.next()).value as Told, close: () => gone.abort() };
}
const append = (id: string, base: number, ...steps: unknown[]) =>
  client.send('POST', `/api/projects/${id}/steps`, { base, steps });

test('every window is told each step once, the one that made it included, then revisions and the bin', async () => {
  const id = await client.project('ab');
  const [one, two] = [await listen(id), await listen(id)];
  expect(one.answer.headers.get('content-type')).toContain('text/event-stream');
  expect(one.answer.headers.get('content-security-policy')).toContain("default-src 'self'");
  for (const window of [one, two])
    expect(await window.next()).toMatchObject({ event: 'steps', data: { seq: 0, steps: [] } });
  await append(id, 0, put(0, 'x', { window: 'w9' }), put(0, 'y', { window: 'w9' }));
  const told = { id: '2', event: 'steps', data: { seq: 2, steps: [{ seq: 1 }, { seq: 2, window: 'w9' }] } };
  for (const window of [one, two]) expect(await window.next()).toMatchObject(told);
  const made = { name: 'A', note: '', by: '', seq: 2, hash: '0'.repeat(64), verdicts: null, cost: null };
  await client.send('POST', `/api/projects/${id}/revisions`, made);
  expect(await one.next()).toMatchObject({ event: 'revision', data: { number: 1 } });
  await client.send('DELETE', `/api/projects/${id}`);
  expect(await one.next()).toMatchObject({ event: 'gone', data: {} });
  one.close();
  two.close();
});

test('a window that comes back is told what it missed, by its last event or by number', async () => {
  const id = await client.project('ab');
  for (let base = 0; base < 3; base++) await append(id, base, put(0, `${base}`));
  for (const window of [await listen(id, '', { 'last-event-id': '1' }), await listen(id, '&after=1')]) {
    expect(await window.next()).toMatchObject({ id: '3', data: { seq: 3, steps: [{ seq: 2 }, { seq: 3 }] } });
    window.close();
  }
});

test('no step is told twice or left out while windows come and others write', async () => {
  const id = await client.project('');
  const writing = (async () => {
    for (let base = 0; base < 60; base++) await append(id, base, put(0, 'x'));
  })();
  const windows = await Promise.all(Array.from({ length: 5 }, () => listen(id, '&after=0')));
  for (const window of windows) {
    const seen: number[] = [];
    while (seen.at(-1) !== 60) seen.push(...(await window.next()).data.steps!.map((s) => s.seq));
    expect(seen).toEqual(Array.from({ length: 60 }, (_, i) => i + 1));
    window.close();
  }
  await writing;
});

test('a project that is not there has nothing to tell', async () => {
  expect((await client.get(`/api/projects/${'0'.repeat(32)}/live`)).status).toBe(404);
});
