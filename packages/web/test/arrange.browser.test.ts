import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { type RunningServer, startServer } from '../../server/src/index.js';
import { bundledPackWorker, repositoryOptions } from '../../server/test/options.js';
import { launch, openProjectOf } from './page.js';

const web = fileURLToPath(new URL('../', import.meta.url));
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Brief {
  readonly room: {
    readonly outline: string[][];
    readonly doors: { readonly at: string; readonly width: string }[];
    readonly columns: unknown[];
  };
  readonly tables: { readonly id: string; readonly at: string[]; readonly turn?: string; readonly length: string }[];
  readonly lasers?: { readonly id: string; readonly table: string }[];
  readonly layout: { readonly enclosures: { readonly gaps: Record<string, string> }[] };
  readonly background?: { readonly width: string; readonly at: string[]; readonly name: string };
}

let server: RunningServer;
let browser: Browser;
let page: Page;
let faults: string[];

beforeAll(async () => {
  server = await startServer(repositoryOptions({ webRoot: `${web}dist`, packWorker: await bundledPackWorker() }));
  browser = await launch();
}, 120_000);

afterAll(async () => {
  await browser?.close();
  await server?.close();
});

beforeEach(async () => {
  const context = await browser.newContext({
    locale: 'en-GB',
    viewport: { width: 1280, height: 800 },
    reducedMotion: 'reduce',
    permissions: ['clipboard-read', 'clipboard-write'],
  });
  page = await context.newPage();
  page.setDefaultTimeout(15_000);
  faults = [];
  page.on('pageerror', (error) => faults.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text());
  });
  page.on('dialog', (dialog) => dialog.accept());
  await openProjectOf(page, server.url, 'three-tables.yaml');
  await thing('table-3').waitFor();
  return () => context.close();
});

const thing = (id: string) => page.locator(`.plan [data-thing="${id}"]`);
const revision = () => page.locator('[data-revision]').getAttribute('data-revision');
const said = () => page.locator('.plan [role="status"]:not(.hand-foot *)').textContent();
const undo = () => page.keyboard.press('Control+z');

/** The text of the brief as it stands: its view is opened for it and left again. */
async function written(): Promise<string> {
  await page.getByRole('button', { name: 'Brief as text' }).click();
  const text = await page.getByLabel('Brief as text', { exact: true }).last().inputValue();
  await page.getByRole('button', { name: 'Plan', exact: true }).click();
  await page.locator('.plan .sheet-drawing').waitFor();
  return text;
}
const brief = async () => parse(await written()) as Brief;

/** Another project, with an empty room. */
async function fresh(): Promise<void> {
  await page.getByRole('button', { name: 'Projects', exact: true }).click();
  await page.getByRole('button', { name: 'New', exact: true }).click();
  await page.locator('.plan .thing.door').waitFor();
}

/** Takes things in hand by the keyboard alone. */
async function take(...ids: readonly string[]): Promise<void> {
  for (const [i, id] of ids.entries()) {
    await thing(id).focus();
    await page.keyboard.press(i === 0 ? 'Enter' : 'Shift+Enter');
  }
}
const inHand = () =>
  page.locator('.plan .thing.selected').evaluateAll((all) => all.map((e) => e.getAttribute('data-thing')));
const card = () => page.locator('.thing-card');
const arrange = () => card().getByText('Arrange', { exact: true }).click();
const tableAt = async (id: string) => (await brief()).tables.find((t) => t.id === id)!.at;
const canUndo = () => page.getByRole('button', { name: 'Undo' }).isEnabled();

describe('several things in hand', () => {
  test('are taken with Shift, moved together by dragging one, and brought back by one undo', async () => {
    await thing('table-3')
      .locator('.body')
      .click({ position: { x: 60, y: 34 } });
    await page.keyboard.down('Shift');
    await thing('column-1').click();
    await page.keyboard.up('Shift');
    expect((await inHand()).sort()).toEqual(['column-1', 'table-3']);
    expect(await card().getByRole('heading').textContent()).toBe('2 things in hand');
    const box = (await thing('table-3').locator('.body').boundingBox())!;
    const [x, y] = [box.x + 60, box.y + 34];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.keyboard.down('Alt');
    for (let i = 1; i <= 5; i++) await page.mouse.move(x - 4 * i, y + 2 * i);
    await page.mouse.up();
    await page.keyboard.up('Alt');
    const after = await brief();
    const column = after.room.columns[0] as { at: string[] };
    const by = Number.parseFloat(after.tables[2]!.at[0]!) - 7.6;
    expect(by).toBeLessThan(-0.1);
    expect(Number.parseFloat(column.at[0]!) - 5.2).toBeCloseTo(by, 3);
    await undo();
    expect(await tableAt('table-3')).toEqual(['7.6 m', '3.6 m']);
    expect(await canUndo()).toBe(false);
  });

  test('are taken by a frame over empty paper, all of a kind and everything by key', async () => {
    const [first, last] = [(await thing('column-1').boundingBox())!, (await thing('column-2').boundingBox())!];
    await page.keyboard.down('Shift');
    await page.mouse.move(first.x - 6, first.y - 6);
    await page.mouse.down();
    await page.mouse.move(first.x + 20, first.y + 10);
    await page.mouse.move(last.x + 2, first.y + first.height + 4);
    await page.mouse.up();
    await page.keyboard.up('Shift');
    expect((await inHand()).sort()).toEqual(['column-1', 'column-2']);
    await page.keyboard.press('Escape');
    await take('table-1');
    await page.keyboard.press('Control+a');
    expect((await inHand()).sort()).toEqual(['table-1', 'table-2', 'table-3']);
    await page.keyboard.press('Control+a');
    expect((await inHand()).length).toBeGreaterThan(20);
  });

  test('two tables are lined up by the keyboard alone', async () => {
    await take('table-1', 'table-3');
    await page.keyboard.press('Shift+S');
    // South edges at 1.1 m and 2.85 m: the table 1.5 m wide comes down to a middle at 1.85 m.
    expect(await tableAt('table-3')).toEqual(['7.6 m', '1.85 m']);
    expect(await tableAt('table-1')).toEqual(['2.1 m', '1.55 m']);
  });

  test('are lined up, spread and moved by buttons and arrow keys, each as one step', async () => {
    await take('table-1', 'table-2', 'table-3');
    await card().getByRole('button', { name: 'south\u2013north' }).first().click();
    // Between 1.1 m and 4.35 m stand 0.9, 0.9 and 1.5 m: they overlap by 25 mm each.
    expect(await said()).toContain('overlap by 25 mm');
    expect((await tableAt('table-2'))[1]).toBe('2.425 m');
    await undo();
    await card().getByRole('button', { name: 'west', exact: true }).click();
    expect((await tableAt('table-3'))[0]).toBe('2.6 m');
    await undo();
    await thing('table-1').focus();
    await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('ArrowRight');
    expect([(await tableAt('table-1'))[0], (await tableAt('table-3'))[0]]).toEqual(['2.21 m', '7.71 m']);
    await undo();
    expect(await tableAt('table-1')).toEqual(['2.1 m', '1.55 m']);
  });

  test('the distance between two things is typed, and the last one taken moves', async () => {
    await take('table-1', 'table-2');
    const field = page.getByLabel('between table-1 and table-2, which moves');
    expect(await field.inputValue()).toBe('920 mm');
    await field.fill('1 m');
    await field.press('Enter');
    expect(await tableAt('table-2')).toEqual(['2.1 m', '3.45 m']);
  });
});

describe('one thing in hand', () => {
  test('is moved by a typed distance and turned by a typed angle, by key and by its grip', async () => {
    await take('table-3');
    await arrange();
    await card().getByLabel('east', { exact: true }).first().fill('-1 ft');
    await card().getByRole('button', { name: 'Move', exact: true }).click();
    expect((await tableAt('table-3'))[0]).toBe('7.2952 m');
    await card().getByLabel('by', { exact: true }).fill('30 deg');
    await card().getByRole('button', { name: 'Turn', exact: true }).click();
    expect((await brief()).tables[2]!.turn).toBe('30 deg');
    await thing('table-3').focus();
    await page.keyboard.press('Shift+T');
    expect((await brief()).tables[2]!.turn).toBe('120 deg');
    await page.getByRole('button', { name: /Turn what is in hand/ }).focus();
    await page.keyboard.press('ArrowLeft');
    expect((await brief()).tables[2]!.turn).toBe('135 deg');
    const grip = (await page.locator('.turn-grip').boundingBox())!;
    await page.mouse.move(grip.x + grip.width / 2, grip.y + grip.height / 2);
    await page.mouse.down();
    await page.mouse.move(grip.x + 10, grip.y + 120);
    await page.mouse.move(grip.x, grip.y + 160);
    await page.mouse.up();
    const turn = Number.parseFloat((await brief()).tables[2]!.turn!);
    expect(turn).not.toBe(135);
    expect(Math.abs(turn) % 15).toBe(0);
    await undo();
    expect((await brief()).tables[2]!.turn).toBe('135 deg');
  });

  test('is copied beside with its lasers, in a row, mirrored and taken out', async () => {
    await take('table-3');
    await page.keyboard.press('Control+d');
    await thing('table-4').waitFor();
    const copied = await brief();
    expect(copied.lasers!.filter((l) => l.table === 'table-4').map((l) => l.id)).toEqual([
      'laser-pulsed-1',
      'laser-harmonic-1',
    ]);
    await undo();
    await take('column-1');
    await arrange();
    await card().getByLabel('every', { exact: true }).fill('600 mm');
    await card().getByRole('button', { name: 'In a row' }).click();
    await thing('column-4').waitFor();
    expect((await brief()).room.columns).toHaveLength(4);
    await undo();
    await take('table-3');
    const before = await revision();
    await card().getByRole('button', { name: 'west\u2013east' }).click();
    await expect.poll(revision).not.toBe(before);
    await thing('table-3').focus();
    await page.keyboard.press('Delete');
    await thing('table-3').waitFor({ state: 'detached' });
    expect(await said()).toContain('laser-pulsed');
    await undo();
    await thing('table-3').waitFor();
    expect(faults).toEqual([]);
  });

  test('goes through the clipboard into another brief as text', async () => {
    await take('table-3');
    await page.keyboard.press('Control+x');
    await thing('table-3').waitFor({ state: 'detached' });
    const text = await page.evaluate(() => navigator.clipboard.readText());
    expect((parse(text) as Brief).tables[0]!.id).toBe('table-3');
    await fresh();
    await page.locator('.plan .sheet-drawing').focus();
    await page.keyboard.press('Control+v');
    await thing('table-3').waitFor();
    expect((await brief()).lasers!.map((l) => l.id)).toEqual(['laser-pulsed', 'laser-harmonic']);
    expect(await page.locator('.notes .problems').count()).toBe(0);
  });
});

describe('typed dimensions', () => {
  test('a wall takes another length and the wall after it follows; an impossible one is told', async () => {
    const south = page.getByLabel('length of the south wall');
    expect((await south.inputValue()).replace(/\s/g, '')).toBe('11000');
    await south.focus();
    expect(await south.inputValue()).toBe('11000 mm');
    await south.fill('11.5 m');
    await south.press('Enter');
    await expect.poll(said).toBe('The east wall moved by 500 mm; the north wall took it up.');
    expect((await brief()).room.outline.slice(0, 3)).toEqual([
      ['0 m', '0 m'],
      ['11.5 m', '0 m'],
      ['11.5 m', '7.5 m'],
    ]);
    await south.fill('2 m');
    await south.press('Enter');
    await expect.poll(said).toContain('would vanish');
    expect((await brief()).room.outline[1]).toEqual(['11.5 m', '0 m']);
  });

  test('sizes of a table, place and width of a door, and the room round a table in an enclosure', async () => {
    await take('table-3');
    await page.getByLabel('length of table-3').fill('10 ft');
    await page.keyboard.press('Enter');
    expect((await brief()).tables[2]!.length).toBe('3.048 m');
    await take('door-1');
    await page.getByLabel('from door-1 to the corner after it').fill('500 mm');
    await page.keyboard.press('Enter');
    await page.getByLabel('width of door-1').fill('1 m');
    await page.keyboard.press('Enter');
    expect((await brief()).room.doors[0]).toMatchObject({ at: '9.3 m', width: '1 m' });
    await take('enclosure-1');
    await page.getByLabel('clear distance in enclosure-1 on its east side').fill('900 mm');
    await page.keyboard.press('Enter');
    expect((await brief()).layout.enclosures[0]!.gaps['east']).toBe('900 mm');
  });
});

describe('the sheet', () => {
  test('measures points that are typed or clicked, with angle, total and area, until it is left', async () => {
    await page.locator('.plan .sheet-drawing').focus();
    await page.keyboard.press('Shift+M');
    const panel = page.getByRole('region', { name: 'Measure' });
    for (const [west, south] of [
      ['0 m', '0 m'],
      ['3 m', '0 m'],
      ['3 m', '4 m'],
    ] as const) {
      await panel.getByLabel('from west').fill(west);
      await panel.getByLabel('from south').fill(south);
      await panel.getByRole('button', { name: 'Set point' }).click();
    }
    expect(await said()).toBe(
      'length 4000 mm, to the east 0 mm, to the north 4000 mm, angle from east 90\u00b0, all together 7000 mm',
    );
    await panel.getByLabel('from west').fill('0 m');
    await panel.getByLabel('from south').fill('0 m');
    await panel.getByRole('button', { name: 'Set point' }).click();
    // A right triangle of 3, 4 and 5 m.
    expect((await panel.locator('dd').allTextContents()).map((t) => t.replace(/\s/g, ''))).toEqual(
      expect.arrayContaining(['5000mm', '12000mm', '6.000m\u00b2']),
    );
    await panel.getByRole('button', { name: 'Copy as text' }).click();
    expect(await page.evaluate(() => navigator.clipboard.readText())).toContain('6.000 m\u00b2');
    const plan = (await page.locator('.plan .sheet-drawing').boundingBox())!;
    await page.mouse.click(plan.x + plan.width - 120, plan.y + 140);
    expect(await page.locator('.plan .measure circle').count()).toBe(1);
    await page.keyboard.press('Escape');
    expect(await panel.count()).toBe(0);
  });

  test('keeps a measured distance, which then moves the thing in hand', async () => {
    await take('table-3');
    await page.keyboard.press('Shift+M');
    const panel = page.getByRole('region', { name: 'Measure' });
    for (const [west, south] of [
      ['0 m', '3.6 m'],
      ['6.1 m', '3.6 m'],
    ] as const) {
      await panel.getByLabel('from west').fill(west);
      await panel.getByLabel('from south').fill(south);
      await panel.getByRole('button', { name: 'Set point' }).click();
    }
    await panel.getByRole('button', { name: 'Keep on the sheet' }).click();
    await panel.getByRole('button', { name: 'Leave' }).click();
    const kept = page.getByLabel(/kept distance 1/).first();
    expect(await kept.inputValue()).toBe('6100 mm');
    await kept.fill('6 m');
    await kept.press('Enter');
    expect((await tableAt('table-3'))[0]).toBe('7.5 m');
    await expect.poll(() => kept.inputValue()).toBe('6000 mm');
    await page.locator('.cell.file [data-safety="saved"]').waitFor();
    await page.reload();
    await expect.poll(() => kept.inputValue()).toBe('6000 mm');
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await expect.poll(() => kept.inputValue()).toBe('6100 mm');
  });

  test('hides and locks layers in this browser', async () => {
    await page.locator('.plan .sheet-drawing').focus();
    await page.keyboard.press('Shift+L');
    await page.getByLabel('Names: shown').uncheck();
    await page.getByLabel('Tables and equipment: locked').check();
    expect(await page.locator('.plan .labels').isVisible()).toBe(false);
    await page.reload();
    await thing('table-3').waitFor();
    expect(await page.locator('.plan .labels').isVisible()).toBe(false);
    await thing('table-3').focus();
    await page.keyboard.press('Enter');
    expect(await inHand()).toEqual([]);
    await page.locator('.plan .sheet-drawing').focus();
    await page.keyboard.press('Control+a');
    expect(await inHand()).not.toContain('table-3');
    await page.keyboard.press('Shift+L');
    await page.getByRole('button', { name: 'Show all' }).click();
    expect(await page.locator('.plan .labels').isVisible()).toBe(true);
  });

  test('looks at what is in hand, at a frame and at the whole room by keys', async () => {
    const width = async () => (await thing('table-3').locator('.body').boundingBox())!.width;
    const whole = await width();
    await take('table-3');
    await page.keyboard.press('Shift+Z');
    await expect.poll(width).toBeGreaterThan(2 * whole);
    await page.keyboard.press('Shift+R');
    await expect.poll(async () => Math.abs((await width()) - whole)).toBeLessThan(3);
    await page.keyboard.press('Shift+F');
    const plan = (await page.locator('.plan .sheet-drawing').boundingBox())!;
    await page.mouse.move(plan.x + 60, plan.y + 300);
    await page.mouse.down();
    await page.mouse.move(plan.x + 200, plan.y + 420);
    await page.mouse.up();
    await expect.poll(width).toBeGreaterThan(2 * whole);
  });
});

/** A rectangle of 8 m by 5 m with a line through it, in millimetres. */
const dxf = (() => {
  const pairs = (...all: (string | number)[]) => all.join('\n');
  const corners = [
    [1000, 1000],
    [9000, 1000],
    [9000, 6000],
    [1000, 6000],
  ].map(([x, y]) => pairs(10, x!, 20, y!));
  return pairs(
    0, 'SECTION', 2, 'HEADER', 9, '$INSUNITS', 70, 4, 0, 'ENDSEC',
    0, 'SECTION', 2, 'ENTITIES',
    0, 'LWPOLYLINE', 8, 0, 90, 4, 70, 1, ...corners,
    0, 'LINE', 8, 0, 10, 1000, 20, 1000, 11, 9000, 21, 6000,
    0, 'ENDSEC', 0, 'EOF', '',
  ); // biome-ignore format: pairs of code and value
})();

describe('the background', () => {
  const open = async (name: string, mimeType: string, buffer: Buffer) => {
    await page.locator('.plan .sheet-drawing').focus();
    if ((await page.getByRole('region', { name: 'What is shown' }).count()) === 0) await page.keyboard.press('Shift+L');
    await page.locator('.background-form input[type=file]').setInputFiles({ name, mimeType, buffer });
  };

  test('is a picture that takes its scale from two points, keeps the revision, and is there after a reload', async () => {
    const before = await revision();
    const png = Buffer.from(
      await page.evaluate(() => {
        const canvas = document.createElement('canvas');
        [canvas.width, canvas.height] = [200, 100];
        canvas.getContext('2d')!.fillRect(20, 20, 100, 50);
        return canvas.toDataURL('image/png').split(',')[1]!;
      }),
      'base64',
    );
    await open('room.png', 'image/png', png);
    await page.locator('.plan .background image').waitFor({ state: 'attached' });
    const first = await brief();
    expect(first.background).toMatchObject({ name: 'room.png' });
    expect(await revision()).toBe(before);
    await page.getByRole('button', { name: 'Set its scale' }).click();
    const plan = (await page.locator('.plan .sheet-drawing').boundingBox())!;
    await page.mouse.click(plan.x + 40, plan.y + 120);
    await page.mouse.click(plan.x + 240, plan.y + 120);
    await page.getByLabel('true distance').fill('2 m');
    const pixels = await thing('table-3')
      .locator('.body')
      .evaluate((e) => (e as SVGGraphicsElement).getBoundingClientRect().width / 3);
    await page.getByRole('button', { name: 'Set the scale' }).click();
    const after = await brief();
    const k = Number.parseFloat(after.background!.width) / Number.parseFloat(first.background!.width);
    expect(k).toBeCloseTo(2 / (200 / pixels), 1);
    await page.locator('.cell.file [data-safety="saved"]').waitFor();
    await page.reload();
    await page.locator('.plan .background image').waitFor({ state: 'attached' });
    expect(faults).toEqual([]);
  });

  test('is a drawing in true size whose closed line becomes the room', async () => {
    await fresh();
    await open('room.dxf', 'application/dxf', Buffer.from(dxf));
    await page.locator('.plan .background path').first().waitFor({ state: 'attached' });
    expect((await brief()).background!.width).toBe('8 m');
    await page.getByRole('button', { name: /4 corners/ }).click();
    expect(await said()).toContain('4 corners');
    expect((await brief()).room.outline).toEqual([
      ['0 m', '0 m'],
      ['8 m', '0 m'],
      ['8 m', '5 m'],
      ['0 m', '5 m'],
    ]);
    expect((await brief()).background!.at).toEqual(['0 m', '0 m']);
  });

  test('refuses what is none, in a sentence, and keeps what was there', async () => {
    const before = await revision();
    await open('notes.txt', 'text/plain', Buffer.from('just words'));
    await expect.poll(said).toContain('no PNG');
    await open('cut.dxf', 'application/dxf', Buffer.from('0\nSECTION\n2\nENTITIES\n0\nLINE'));
    await expect.poll(said).toMatch(/DXF (cannot be read|holds no lines)/);
    expect((await brief()).background).toBeUndefined();
    expect(await revision()).toBe(before);
  });
});

test.each(['light', 'dark'] as const)('has no serious accessibility violation in %s', async (colorScheme) => {
  await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
  const violations = async (): Promise<string[]> => {
    await page.evaluate(axe);
    return page.evaluate(async () => {
      type Axe = {
        run(): Promise<{
          violations: { id: string; impact: string; nodes: { html: string; failureSummary: string }[] }[];
        }>;
      };
      const { violations: found } = await (globalThis as unknown as { axe: Axe }).axe.run();
      return found
        .filter((v) => v.impact === 'serious' || v.impact === 'critical')
        .map((v) => `${v.id}: ${v.nodes[0]?.html} ${v.nodes[0]?.failureSummary}`);
    });
  };
  await take('table-3');
  await arrange();
  expect(await violations()).toEqual([]);
  await take('table-1', 'table-2');
  expect(await violations()).toEqual([]);
  await page.keyboard.press('Escape');
  await page.keyboard.press('Shift+M');
  expect(await violations()).toEqual([]);
  await page.keyboard.press('Escape');
  await page.keyboard.press('Shift+L');
  expect(await violations()).toEqual([]);
});
