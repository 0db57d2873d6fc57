import fc from 'fast-check';
import { expect, test } from 'vitest';
import { briefData, withEntry, withValue } from '../brief/document.js';
import { listAt, valueAt } from '../brief/path.js';
import type { Conflict } from './merge-data.js';
import { type NewStep, replayed, type Step } from './steps.js';
import { openSession, type Session, type SessionState } from './sync.js';
import type { Appended, Heard, Kept, Opened, Stop } from './wire.js';

const start = `cloche: 1
project:
  name: Shared
tables:
  - { id: table-1, length: 2 m }
  - { id: table-2, length: 3 m }
`;

/** A message on its way: it arrives, or is lost. */
interface Message {
  readonly arrive: () => void;
  readonly lose: () => void;
}

/** A server and the ways to it, where nothing happens until the test says so. */
class World {
  text = start;
  readonly steps: Step[] = [];
  readonly texts: string[] = [start];
  readonly onTheWay: Message[] = [];
  readonly listeners = new Set<{ readonly heard: Heard; readonly queue: (() => void)[] }>();
  readonly timers: { at: number; run: () => void }[] = [];
  readonly browser = new Map<string, Kept>();
  /** What all windows of the browser last had from the server; it may lag behind. */
  copy: Opened | null = null;
  copies = 0;
  time = 0;

  /** A request: it travels, the server answers, the answer travels. Each way may lose it. */
  ask<T>(answer: () => T): Promise<T> {
    return new Promise((resolve, reject) => {
      const lost = () => reject(new TypeError('lost'));
      this.onTheWay.push({
        arrive: () => {
          const value = answer();
          this.onTheWay.push({ arrive: () => resolve(value), lose: lost });
        },
        lose: lost,
      });
    });
  }

  append(base: number, steps: readonly NewStep[]): Appended {
    if (base !== this.steps.length) return { outcome: 'behind', steps: this.steps.slice(base) };
    if (steps.length === 0 || steps.some(({ splices }) => splices.length === 0))
      return { outcome: 'refused', why: 'nothing in it' };
    const text = replayed(this.text, steps);
    if (text === null) return { outcome: 'refused', why: 'does not fit' };
    if (text.includes('\0')) return { outcome: 'refused', why: 'NUL' };
    const kept = steps.map((step, i): Step => ({ ...step, seq: base + i + 1, at: '' }));
    this.steps.push(...kept);
    this.text = text;
    this.texts.push(text);
    for (const { heard, queue } of this.listeners) queue.push(() => heard.steps(kept));
    return { outcome: 'kept', seq: this.steps.length };
  }

  listen(heard: Heard): Stop {
    const listener = { heard, queue: [] as (() => void)[] };
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  async tick(ms: number): Promise<void> {
    this.time += ms;
    for (const timer of this.timers.filter((t) => t.at <= this.time)) {
      this.timers.splice(this.timers.indexOf(timer), 1);
      timer.run();
      await settled();
    }
  }

  /** Everything arrives, until nothing is left to happen. */
  async calm(): Promise<void> {
    for (let round = 0; round < 500; round++) {
      await settled();
      const [message] = this.onTheWay.splice(0, 1);
      if (message) message.arrive();
      else if ([...this.listeners].some(({ queue }) => queue.length > 0))
        for (const { queue } of this.listeners) queue.shift()?.();
      else if (this.timers.length > 0) await this.tick(20_000);
      else return;
    }
    throw new Error('It never comes to rest.');
  }
}

/** All that follows from what has arrived. */
async function settled(): Promise<void> {
  for (let i = 0; i < 40; i++) await null;
}

/** A window of the browser, which can be killed at any time. */
class Window {
  session: Session | null = null;
  state: SessionState | null = null;
  private life = 0;
  private readonly world: World;
  readonly name: string;

  constructor(world: World, name: string) {
    this.world = world;
    this.name = name;
  }

  async open(server: 'answers' | 'is away' = 'answers'): Promise<void> {
    const { world } = this;
    this.life++;
    const id = `${this.name}${this.life}`;
    // A new window finds what this name's windows before it have left.
    const mine = [...world.browser.keys()].filter((key) => key.startsWith(this.name) && key !== id);
    const left = mine.map((key) => world.browser.get(key)!);
    const opening = openSession({
      window: id,
      wire: {
        open: () => world.ask(() => ({ text: world.text, seq: world.steps.length, steps: [...world.steps] })),
        since: (after) => world.ask(() => world.steps.slice(after)),
        append: (base, steps) => world.ask(() => world.append(base, steps)),
        listen: (heard) => world.listen(heard),
      },
      keep: {
        write: (kept) => {
          // As in a browser, what is kept is a text.
          if (kept) world.browser.set(id, JSON.parse(JSON.stringify(kept)));
          else world.browser.delete(id);
          return true;
        },
        left: () => left,
        clearLeft: () => {
          for (const key of mine) world.browser.delete(key);
        },
      },
      copy: {
        read: async () => world.copy,
        write: (opened) => {
          // A killed browser has not written the last of it.
          if (world.copies++ % 3 === 0) world.copy = opened && JSON.parse(JSON.stringify(opened));
        },
        close: () => undefined,
      },
      clock: {
        now: () => world.time,
        after: (ms, run) => {
          const timer = { at: world.time + ms, run };
          world.timers.push(timer);
          return () => {
            const at = world.timers.indexOf(timer);
            if (at >= 0) world.timers.splice(at, 1);
          };
        },
      },
      onChange: (state) => {
        this.state = state;
      },
    });
    const { onTheWay } = world;
    if (server === 'is away') onTheWay.pop()!.lose();
    else {
      onTheWay.pop()!.arrive();
      onTheWay.pop()!.arrive();
    }
    this.session = await opening;
    await settled();
  }

  /** The window vanishes; what it has sent may still arrive. */
  kill(): void {
    this.session?.close();
    this.session = null;
  }

  get text(): string {
    return this.session!.state().text;
  }
}

async function twoWindows(): Promise<{ world: World; a: Window; b: Window }> {
  const world = new World();
  const [a, b] = [new Window(world, 'a'), new Window(world, 'b')];
  await a.open();
  await b.open();
  await world.calm();
  return { world, a, b };
}

const lengthOf = (text: string, table: number) => valueAt(briefData(text), ['tables', table, 'length']);
const setLength = (window: Window, table: number, value: string, key: string | null = null) =>
  window.session!.edit(withValue(window.text, ['tables', table, 'length'], value), key);

test('an edit is sent at once and reaches the other window', async () => {
  const { world, a, b } = await twoWindows();
  setLength(a, 0, '4 m');
  expect(world.onTheWay).toHaveLength(1);
  expect(a.state!.safety).toBe('saving');
  await world.calm();
  expect(a.state!.safety).toBe('saved');
  expect(lengthOf(b.text, 0)).toBe('4 m');
});

test('the steps of a drag are sent at most every quarter of a second and at its end', async () => {
  const { world, a } = await twoWindows();
  for (let i = 0; i < 100; i++) {
    setLength(a, 0, `${2 + i / 100} m`, 'drag');
    await settled();
    // Whatever is on its way arrives within the 10 ms between two movements of the hand.
    for (let way = 0; way < 2; way++) {
      for (const message of world.onTheWay.splice(0)) message.arrive();
      await settled();
    }
    await world.tick(10);
  }
  // One second: at its start, then after each quarter of a second.
  expect(world.steps.length).toBeLessThanOrEqual(5);
  expect(world.steps.length).toBeGreaterThanOrEqual(4);
  setLength(a, 0, '9 m', 'drag');
  a.session!.endGroup();
  await world.calm();
  expect(lengthOf(world.text, 0)).toBe('9 m');
  a.session!.undo();
  expect(a.text).toBe(start);
});

test('a lost answer writes nothing twice', async () => {
  const { world, a, b } = await twoWindows();
  setLength(a, 0, '4 m');
  world.onTheWay.pop()!.arrive();
  world.onTheWay.pop()!.lose();
  await settled();
  expect(a.state!.safety).toBe('kept');
  setLength(a, 1, '5 m');
  await world.calm();
  expect(world.steps).toHaveLength(2);
  expect(a.state!.safety).toBe('saved');
  expect(b.text).toBe(a.text);
});

test('a field that is changed again after a lost answer is not told as a conflict with itself', async () => {
  const { world, a } = await twoWindows();
  setLength(a, 0, '4 m');
  world.onTheWay.pop()!.arrive();
  world.onTheWay.pop()!.lose();
  setLength(a, 0, '5 m');
  await world.calm();
  expect(lengthOf(world.text, 0)).toBe('5 m');
  expect(a.state!.conflicts).toEqual([]);
});

test('a project opens from its copy while the server is away, is edited, and everything arrives when it is back', async () => {
  const { world, a, b } = await twoWindows();
  setLength(a, 0, '4 m');
  world.onTheWay.pop()!.lose();
  await settled();
  a.kill();
  await a.open('is away');
  expect(lengthOf(a.text, 0)).toBe('4 m');
  expect(a.state!.safety).toBe('kept');
  setLength(a, 1, '5 m');
  expect(a.state!.safety).toBe('kept');
  // Meanwhile another browser, which has the server, changes something else.
  b.session!.edit(withValue(b.text, ['project', 'name'], 'Other'), null);
  await world.calm();
  expect([lengthOf(world.text, 0), lengthOf(world.text, 1)]).toEqual(['4 m', '5 m']);
  expect(valueAt(briefData(world.text), ['project', 'name'])).toBe('Other');
  expect(a.text).toBe(world.text);
  expect(a.state!.safety).toBe('saved');
});

test('nothing changed while the server was away is told as kept, then as saved', async () => {
  const { world, a } = await twoWindows();
  a.kill();
  await a.open('is away');
  expect(a.state!.safety).toBe('kept');
  await world.calm();
  expect(a.state!.safety).toBe('saved');
  expect(world.steps).toEqual([]);
});

test('a project of which this browser has nothing does not open while the server is away', async () => {
  const world = new World();
  await expect(new Window(world, 'a').open('is away')).rejects.toThrow('lost');
});

test('a killed browser loses nothing, and undo goes on after it', async () => {
  const { world, a } = await twoWindows();
  setLength(a, 0, '4 m');
  world.onTheWay.pop()!.lose();
  setLength(a, 1, '5 m');
  const { text } = a;
  a.kill();
  await a.open();
  expect(a.text).toBe(text);
  await world.calm();
  expect(world.text).toBe(text);
  expect(world.browser.size).toBe(0);
  a.session!.undo();
  a.session!.undo();
  expect(a.text).toBe(start);
});

test('what was kept is merged when the project has moved on meanwhile', async () => {
  const { world, a, b } = await twoWindows();
  setLength(a, 0, '4 m');
  world.onTheWay.pop()!.lose();
  a.kill();
  setLength(b, 1, '5 m');
  await world.calm();
  await a.open();
  await world.calm();
  expect([lengthOf(b.text, 0), lengthOf(b.text, 1)]).toEqual(['4 m', '5 m']);
  expect(a.state!.conflicts).toEqual([]);
});

test('when both changed one field, the first stands and the other is told, also after a restart', async () => {
  const { world, a, b } = await twoWindows();
  setLength(a, 0, '4 m');
  setLength(b, 0, '5 m');
  await world.calm();
  expect(a.text).toBe(b.text);
  expect(lengthOf(a.text, 0)).toBe('4 m');
  const told = [{ spot: ['tables', { id: 'table-1' }, 'length'], theirs: '4 m', mine: '5 m' }];
  expect(b.state!.conflicts).toEqual(told);
  b.kill();
  await b.open();
  expect(b.state!.conflicts).toEqual(told);
  b.session!.settle(b.state!.conflicts[0]!);
  expect(world.browser.size).toBe(0);
});

test('what is typed and erased again before it was sent is nothing to send', async () => {
  const { world, a } = await twoWindows();
  setLength(a, 0, '4 m', 'drag');
  const between = a.text;
  world.onTheWay.pop()!.lose();
  await settled();
  setLength(a, 0, '5 m', 'drag');
  setLength(a, 0, '4 m', 'drag');
  expect(a.text).toBe(between);
  setLength(a, 0, '6 m', 'drag');
  await world.calm();
  expect(a.state!.safety).toBe('saved');
  expect(lengthOf(world.text, 0)).toBe('6 m');
});

test('an entry that led nowhere can be undone like any other', async () => {
  const { world, a } = await twoWindows();
  setLength(a, 0, '4 m', 'drag');
  await world.calm();
  a.session!.edit(start, 'drag');
  await world.calm();
  a.session!.undo();
  await world.calm();
  expect(a.state!).toMatchObject({ safety: 'saved', text: start, history: { done: null } });
});

test('hundreds of edits made while the server is away are brought in requests that it can take', async () => {
  const { world, a, b } = await twoWindows();
  for (let i = 0; i < 700; i++) a.session!.edit(`${start}# ${i}\n`, null);
  world.onTheWay.pop()!.lose();
  const sizes: number[] = [];
  const { append } = world;
  world.append = (base, steps) => {
    sizes.push(steps.length);
    return append.call(world, base, steps);
  };
  await world.calm();
  expect(Math.max(...sizes)).toBeLessThanOrEqual(500);
  expect(world.steps).toHaveLength(700);
  expect(b.text).toBe(a.text);
}, 30_000);

test('a text that the server refuses is told and not sent again until it changes', async () => {
  const { world, a } = await twoWindows();
  a.session!.edit(`${start}# \0\n`, null);
  await world.calm();
  expect(a.state!).toMatchObject({ safety: 'refused', refusal: 'NUL' });
  a.session!.edit(`${start}# clean\n`, null);
  await world.calm();
  expect(a.state!.safety).toBe('saved');
  expect(world.text).toBe(`${start}# clean\n`);
});

test('undo in one window takes back what the other did last: there is one history', async () => {
  const { world, a, b } = await twoWindows();
  setLength(a, 0, '4 m');
  await world.calm();
  b.session!.undo();
  await world.calm();
  expect(a.text).toBe(start);
  expect(a.state!.history.undone).not.toBeNull();
  a.session!.redo();
  await world.calm();
  expect(lengthOf(b.text, 0)).toBe('4 m');
});

// The model: two windows, any order of edits, arrivals, losses and killed windows.
const something = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.record({ do: fc.constant('set' as const), by: fc.nat(1), table: fc.nat(1), go: fc.boolean() }),
  },
  { weight: 3, arbitrary: fc.record({ do: fc.constant('add' as const), by: fc.nat(1) }) },
  { weight: 8, arbitrary: fc.record({ do: fc.constant('arrive' as const), which: fc.nat(5) }) },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('lose' as const), which: fc.nat(5) }) },
  { weight: 6, arbitrary: fc.record({ do: fc.constant('hear' as const), by: fc.nat(1) }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('cut' as const), by: fc.nat(1) }) },
  { weight: 3, arbitrary: fc.record({ do: fc.constant('time' as const), ms: fc.constantFrom(100, 600, 5000) }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('kill' as const), by: fc.nat(1), away: fc.boolean() }) },
);
const undos = fc.record({ do: fc.constantFrom('undo' as const, 'redo' as const), by: fc.nat(1) });
type Something = typeof something extends fc.Arbitrary<infer T> ? T : never;
type Undoing = typeof undos extends fc.Arbitrary<infer T> ? T : never;

interface Written {
  readonly by: Window;
  readonly table: number;
  readonly value: string;
}

const lengths = (text: string) => listAt(briefData(text), ['tables']).map((t) => valueAt(t, ['length']));

async function played(plan: readonly (Something | Undoing)[]) {
  const { world, a, b } = await twoWindows();
  const windows = [a, b] as const;
  const told: Conflict[] = [];
  let written: Written[] = [];
  const added: string[] = [];
  let count = 0;
  for (const each of plan) {
    const window = 'by' in each ? windows[each.by]! : a;
    switch (each.do) {
      case 'set': {
        const value = `${++count} m`;
        const place = listAt(briefData(window.text), ['tables']).findIndex(
          (t) => valueAt(t, ['id']) === `table-${each.table + 1}`,
        );
        setLength(window, place, value, each.go ? 'drag' : null);
        // What the same window wrote before into the same field need not be seen by anybody.
        written = written.filter((w) => w.by !== window || w.table !== each.table);
        written.push({ by: window, table: each.table, value });
        break;
      }
      case 'add': {
        const id = `added-${++count}`;
        added.push(id);
        window.session!.edit(withEntry(window.text, ['tables'], { id }), null);
        break;
      }
      case 'arrive':
        world.onTheWay.splice(each.which % Math.max(1, world.onTheWay.length), 1)[0]?.arrive();
        break;
      case 'lose':
        world.onTheWay.splice(each.which % Math.max(1, world.onTheWay.length), 1)[0]?.lose();
        break;
      case 'hear':
        [...world.listeners][each.by]?.queue.shift()?.();
        break;
      case 'cut': {
        const cut = [...world.listeners][each.by];
        cut?.queue.splice(0, cut.queue.length, () => cut.heard.opened());
        break;
      }
      case 'time':
        await world.tick(each.ms);
        break;
      case 'kill':
        told.push(...window.session!.state().conflicts);
        window.kill();
        await window.open(each.away ? 'is away' : 'answers');
        break;
      case 'undo':
        window.session!.undo();
        break;
      case 'redo':
        window.session!.redo();
        break;
    }
    await settled();
    told.push(...windows.flatMap((w) => w.session!.state().conflicts));
  }
  await world.calm();
  told.push(...windows.flatMap((w) => w.session!.state().conflicts));
  return { world, windows, told, written, added };
}

test('whatever is lost or killed, both windows end with one text, and every edit is in it or told', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(something, { minLength: 5, maxLength: 40 }), async (plan) => {
      const { world, windows, told, written, added } = await played(plan);
      for (const window of windows) {
        expect(window.text).toBe(world.text);
        expect(window.state!.safety).toBe('saved');
      }
      expect(replayed(start, world.steps)).toBe(world.text);
      // A value that was on the server once and is not there now was changed by somebody who saw it.
      const seen = new Set([...world.texts.flatMap(lengths), ...told.map((c) => c.mine)]);
      for (const { value } of written) expect(seen).toContain(value);
      const ids = listAt(briefData(world.text), ['tables']).map((t) => valueAt(t, ['id']));
      for (const id of added) expect(ids).toContain(id);
      expect(new Set(ids).size).toBe(ids.length);
    }),
    { numRuns: 150 },
  );
}, 120_000);

test('with undo and redo among it, both windows still end with one text that is the replay of all steps', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(fc.oneof(something, undos), { minLength: 5, maxLength: 40 }), async (plan) => {
      const { world, windows } = await played(
        plan.map((each) => (each.do === 'set' ? { ...each, do: 'add' as const } : each)),
      );
      for (const window of windows) expect(window.text).toBe(world.text);
      expect(replayed(start, world.steps)).toBe(world.text);
      // Everything can still be undone, by either.
      while (windows[1].state!.history.done) windows[1].session!.undo();
      await world.calm();
      expect(windows[0].text).toBe(start);
    }),
    { numRuns: 80 },
  );
}, 120_000);
