import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { type RunningServer, startServer } from '../../server/src/index.js';
import { bundledPackWorker, repositoryOptions } from '../../server/test/options.js';
import { launch, openProjectOf } from './page.js';

const web = fileURLToPath(new URL('../', import.meta.url));
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

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
  });
  page = await context.newPage();
  faults = [];
  page.on('pageerror', (error) => faults.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text());
  });
  await openProjectOf(page, server.url, 'close-enclosure.yaml');
  await page.locator('[data-thing="enclosure-1"]').waitFor();
  return () => context.close();
});

/** The example is a room of 6 m by 4.5 m, its origin in the south-west. */
const room = { length: 6, width: 4.5 };

/** A point of the room on the screen. */
async function onScreen(x: number, y: number): Promise<[number, number]> {
  const box = (await page.locator('.plan .floor').boundingBox())!;
  return [box.x + (x / room.length) * box.width, box.y + box.height - (y / room.width) * box.height];
}
const clickAt = async (x: number, y: number) => page.mouse.click(...(await onScreen(x, y)));
const moveTo = async (x: number, y: number) => page.mouse.move(...(await onScreen(x, y)));

const revision = () => page.locator('[data-revision]').getAttribute('data-revision');
const changedFrom = (before: string | null) =>
  page.waitForFunction(
    (old) => document.querySelector('[data-revision]')?.getAttribute('data-revision') !== old,
    before,
  );
const backTo = (wanted: string | null) =>
  page.waitForFunction(
    (old) => document.querySelector('[data-revision]')?.getAttribute('data-revision') === old,
    wanted,
  );
const step = (name: string) => page.locator('.index button', { hasText: name }).click();
const inHand = () => page.locator('.in-hand-sheet');
/** From the strip, unfolded where the word is folded away. */
async function take(tool: string): Promise<void> {
  const word = page.locator(`[data-tool="${tool}"]`);
  await word.focus();
  await word.press('Enter');
  await inHand().waitFor();
}
const briefText = async () => {
  await page.getByRole('button', { name: 'Brief as text' }).click();
  const text = await page.getByLabel('Brief as text').inputValue();
  await page.getByRole('button', { name: 'Plan', exact: true }).click();
  await page.locator('.plan .thing.table').first().waitFor();
  return text;
};
const noProblems = () => expect.poll(() => page.locator('.held-back').count()).toBe(0);
const said = () => page.locator('.hand-foot [role="status"]').textContent();

async function violations(): Promise<string[]> {
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
}

const standing = [
  'put-column',
  'put-obstruction',
  'put-sprinkler',
  'put-detector',
  'put-exit-sign',
  'put-supply',
  'put-return',
  'put-luminaire',
  'put-equipment',
];

describe('drawing by pointer', () => {
  test('the room is drawn corner by corner, as one step of undo', async () => {
    const before = await revision();
    await take('draw-room');
    // Corners of the room itself, except that the east wall moves in.
    for (const [x, y] of [
      [0, 0],
      [6, 0],
      [6, 4.5],
      [3, 4.5],
      [0, 4.5],
      [0, 0],
    ] as const)
      await clickAt(x, y);
    await changedFrom(before);
    await noProblems();
    expect(await page.locator('.hand-told').textContent()).toContain('5 walls');
    expect(await inHand().count()).toBe(0);
    await page.keyboard.press('Control+z');
    await backTo(before);
    expect(faults).toEqual([]);
  });

  test('what is in a wall slides along it, one after the other until the tool is left', async () => {
    for (const [tool, x, y] of [
      ['put-window', 6, 3.4],
      ['put-board', 0, 2.2],
      ['put-door', 4.5, 0],
    ] as const) {
      const before = await revision();
      await take(tool);
      await clickAt(x, y);
      await changedFrom(before);
      await noProblems();
      expect(await inHand().count()).toBe(1);
      await page.keyboard.press('Escape');
      await inHand().waitFor({ state: 'detached' });
    }
    expect(faults).toEqual([]);
  });

  test('what stands in the room stands where it is clicked', async () => {
    for (const [i, tool] of standing.entries()) {
      const before = await revision();
      await take(tool);
      const y = 0.4 + i * 0.4;
      await moveTo(0.7, y);
      await page.locator('.ghost').waitFor();
      await clickAt(0.7, y);
      await changedFrom(before);
      await noProblems();
      await page.keyboard.press('Escape');
      await inHand().waitFor({ state: 'detached' });
    }
    expect(faults).toEqual([]);
  });

  test('a table follows the pointer with its distances, and is in hand once it stands', async () => {
    const before = await revision();
    await take('put-table');
    await moveTo(1.5, 0.9);
    expect(await page.locator('.ghost .size text').count()).toBe(2);
    await page.mouse.down();
    await page.mouse.up();
    await changedFrom(before);
    await noProblems();
    await page.locator('.thing-card').waitFor();
    expect(await page.locator('.plan .thing.table').count()).toBe(2);
  });

  test('a beam or duct has two ends', async () => {
    const before = await revision();
    await take('put-beam');
    await clickAt(0.5, 0.7);
    await clickAt(5.4, 0.7);
    await changedFrom(before);
    await noProblems();
  });

  test('a source is pressed where it stands and dragged the way the beam goes', async () => {
    const before = await revision();
    await step('Needs');
    await take('put-continuous');
    await moveTo(2.4, 2.1);
    await page.mouse.down();
    await moveTo(3.6, 2.1);
    await page.mouse.up();
    await clickAt(3.6, 2.4);
    await clickAt(3.6, 2.4);
    await changedFrom(before);
    await noProblems();
    const text = await briefText();
    expect(text).toMatch(/endsOn: mirror/);
  });

  test('a run is clicked square and closed by its first corner', async () => {
    const before = await revision();
    await step('Layout');
    await take('put-run');
    for (const [x, y] of [
      [0.5, 0.4],
      [5.5, 0.45],
      [5.5, 4.1],
      [0.5, 4.1],
      [0.5, 0.4],
    ] as const)
      await clickAt(x, y);
    await changedFrom(before);
    await noProblems();
    expect(await page.locator('.hand-told').textContent()).toContain('closed');
    expect(faults).toEqual([]);
  });

  test('what belongs to a thing is put there by pointing at it', async () => {
    await step('Layout');
    for (const [tool, x, y] of [
      ['put-sign', 1.1, 0],
      ['put-cover', 3.3, 4.5],
      ['put-contact', 1.1, 0],
      ['put-stop', 0.4, 2],
      ['put-sensor', 3, 2.2],
      ['put-walk-in-enclosure', 3, 2.2],
      ['put-close-enclosure', 3, 2.2],
    ] as const) {
      const before = await revision();
      await take(tool);
      await moveTo(x, y);
      await clickAt(x, y);
      await changedFrom(before);
      await noProblems();
      await page.keyboard.press('Escape');
      await inHand().waitFor({ state: 'detached' });
      await page.keyboard.press('Control+z');
      await backTo(before);
    }
    expect(faults).toEqual([]);
  });

  test('a point that snaps says why, and Alt places freely', async () => {
    await take('put-beam');
    await moveTo(3.02, 0.04);
    await expect.poll(() => page.locator('.snap-marks text').allTextContents()).toContain('middle of the south wall');
    await page.keyboard.down('Alt');
    await moveTo(3.03, 0.05);
    await page.locator('.snap-marks').waitFor({ state: 'detached' });
    await page.keyboard.up('Alt');
  });

  test('kinds of snapping are switched off, and stay so', async () => {
    await take('put-beam');
    await page.getByText('Snaps', { exact: true }).click();
    await page.getByLabel('ends and middles').uncheck();
    await moveTo(3.02, 0.04);
    await expect
      .poll(() => page.locator('.snap-marks text').allTextContents())
      .not.toContain('middle of the south wall');
    await page.reload();
    await page.locator('.plan .thing.table').first().waitFor();
    await take('put-beam');
    await page.getByText('Snaps', { exact: true }).click();
    expect(await page.getByLabel('ends and middles').isChecked()).toBe(false);
  });
});

describe('drawing by keyboard alone', () => {
  const type = async (text: string) => {
    for (const letter of text) await page.keyboard.press(letter === ' ' ? 'Space' : letter);
  };

  test('the room: lengths typed, directions by arrows, closed on the first corner', async () => {
    const before = await revision();
    await page.keyboard.press('o');
    await inHand().waitFor();
    // The crosshair starts in the middle of the sheet.
    for (let i = 0; i < 30; i++) await page.keyboard.press('Shift+ArrowLeft');
    // The room stands a little above it, over the foot of the sheet.
    for (let i = 0; i < 18; i++) await page.keyboard.press('Shift+ArrowDown');
    await expect.poll(said).toContain('0.00 m from west, 0.00 m from south');
    expect(await said()).toContain('end of the');
    await page.keyboard.press('Enter');
    for (const [length, arrow] of [
      ['6.2 m', 'ArrowRight'],
      ['4500', 'ArrowUp'],
      ['6.2 m', 'ArrowLeft'],
      ['4500', 'ArrowDown'],
    ] as const) {
      await type(length);
      await page.keyboard.press('Enter');
      await page.keyboard.press(arrow);
    }
    await changedFrom(before);
    await noProblems();
    expect(await said()).toContain('4 walls, 6200 mm by 4500 mm');
    await page.keyboard.press('Control+z');
    await backTo(before);
    expect(faults).toEqual([]);
  });

  test('a table: moved by arrows, placed by a typed distance', async () => {
    const before = await revision();
    await page.keyboard.press('t');
    await inHand().waitFor();
    await page.keyboard.press('Shift+ArrowDown');
    await expect.poll(said).toMatch(/m from west, .* m from south/);
    await type('300');
    await page.keyboard.press('Enter');
    await type('150 mm');
    await page.keyboard.press('Enter');
    await changedFrom(before);
    await noProblems();
    const text = await briefText();
    // 0.3 m and half of 2.4 m from the west, 0.15 m and half of 1.2 m from the south.
    expect(text).toMatch(/at: \[\s*1\.5 m, 0\.75 m\s*\]/);
    expect(faults).toEqual([]);
  });

  test('a run: points by arrows and Enter, the last taken back, ended where it stands', async () => {
    const before = await revision();
    await page.keyboard.press('3');
    await page.keyboard.press('c');
    await inHand().waitFor();
    for (let i = 0; i < 18; i++) await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Enter');
    for (let i = 0; i < 5; i++) await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Backspace');
    await expect.poll(said).toBe('The last point is taken back.');
    await page.keyboard.press('Control+ArrowRight');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Enter');
    await changedFrom(before);
    await noProblems();
    expect(await said()).toContain('501 mm long');
    expect(faults).toEqual([]);
  });

  test('Escape lays the tool down and gives the plan back', async () => {
    await page.keyboard.press('d');
    await inHand().waitFor();
    await page.keyboard.press('Escape');
    await inHand().waitFor({ state: 'detached' });
    expect(await page.locator('.put-in').isVisible()).toBe(true);
  });
});

describe('the tape list', () => {
  test('shows the closing error and spreads it only when asked', async () => {
    const before = await revision();
    await page.locator('[data-tool="tape-list"]').click();
    const dialog = page.getByRole('dialog');
    for (const [i, length] of ['6 m', '4.5 m', '5.98 m', '4.5 m'].entries())
      await dialog.getByLabel(`Length of wall ${i + 1}`).fill(length);
    await expect.poll(() => dialog.getByRole('status').textContent()).toContain('20 mm');
    expect(await dialog.getByRole('status').textContent()).toContain('1, 3');
    await dialog.getByLabel('Diagonal 1: From').fill('1');
    await dialog.getByLabel('Diagonal 1: To').fill('3');
    await dialog.getByLabel('Diagonal 1: Measured').fill('7.51 m');
    // The square root of 6 x 6 and 4.5 x 4.5 is 7.5 m.
    await expect.poll(() => dialog.locator('td.number').textContent()).toBe('+10 mm');
    expect(await violations()).toEqual([]);
    await dialog.getByRole('button', { name: /compass rule/ }).click();
    await changedFrom(before);
    await noProblems();
    expect(await dialog.count()).toBe(0);
    expect(faults).toEqual([]);
  });
});

describe('the page', () => {
  test('has no serious fault of accessibility with a tool in hand', async () => {
    await take('draw-room');
    await clickAt(1, 1);
    await moveTo(3, 1);
    expect(await violations()).toEqual([]);
  });

  test('lists what the step in hand puts in', async () => {
    await step('Layout');
    expect(await page.locator('.put-in').textContent()).toContain('curtain run');
    await step('Needs');
    expect(await page.locator('.put-in').textContent()).toContain('laser');
  });
});
