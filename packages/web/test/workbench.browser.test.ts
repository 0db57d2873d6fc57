import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { type RunningServer, startServer } from '../../server/src/index.js';
import { bundledPackWorker, repositoryOptions } from '../../server/test/options.js';
import { launch, openProjectOf, violations } from './page.js';

const web = fileURLToPath(new URL('../', import.meta.url));

let server: RunningServer;
let browser: Browser;
let page: Page;
let foreign: string[];
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
  foreign = [];
  faults = [];
  page.on('request', (r) => {
    if (!r.url().startsWith(server.url) && !/^(blob|data):/.test(r.url())) foreign.push(r.url());
  });
  page.on('pageerror', (error) => faults.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text());
  });
  await openExample('close-enclosure.yaml');
  return () => context.close();
});

/** A new project of an example, on the sheet. */
const openExample = (name: string) => openProjectOf(page, server.url, name);
/** A new project from the list of projects. */
const openNew = async () => {
  await press('Projects');
  await press('New');
  await page.locator('.plan .thing.table').waitFor({ state: 'detached' });
  await page.locator('.plan .wall').first().waitFor();
};
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
const noteTexts = () => page.locator('.notes .note').allTextContents();
const press = (name: string) => page.getByRole('button', { name, exact: true }).first().click();
const step = (name: string) => page.locator('.index button', { hasText: name }).click();

/** Pairs of writings of the plan whose boxes overlap. */
const overlappingLabels = () =>
  page.locator('.labels [data-label] text').evaluateAll((all) => {
    const boxes = all.map((each) => ({ text: each.textContent, box: each.getBoundingClientRect() }));
    return boxes.flatMap((a, i) =>
      boxes
        .slice(i + 1)
        .filter(
          (b) =>
            a.box.left < b.box.right - 1 &&
            b.box.left < a.box.right - 1 &&
            a.box.top < b.box.bottom - 1 &&
            b.box.top < a.box.bottom - 1,
        )
        .map((b) => `${a.text} on ${b.text}`),
    );
  });

describe('the workbench', () => {
  test('draws the plan and lists the findings', async () => {
    await openExample('three-tables.yaml');
    await expect.poll(() => page.locator('.plan .thing.table').count()).toBe(3);
    expect(await page.locator('.plan .wall').count()).toBeGreaterThan(0);
    expect((await noteTexts()).length).toBeGreaterThan(3);
    expect(faults).toEqual([]);
  });

  test('opens a finding to its calculation, and points to its place', async () => {
    const note = page.locator('.note', { has: page.locator('.utilisation') }).first();
    await note.getByRole('button').click();
    await note.locator('.calculation-step .formula').first().waitFor();
    expect(await note.locator('.calculation-step .result .number').first().textContent()).toMatch(/\d/);
    expect(await note.textContent()).toContain('Decided by');
  });

  test('computes again when a table is moved by typing, and undo brings the state back', async () => {
    const [before, notes] = [await revision(), await noteTexts()];
    await page.locator('.plan .thing.table').first().focus();
    await page.keyboard.press('Enter');
    const field = page.locator('.thing-card').getByLabel('from south');
    const written = await field.inputValue();
    await field.fill(written.startsWith('1.') ? '1.62 m' : '1.5 m');
    await changedFrom(before);
    await expect.poll(noteTexts).not.toEqual(notes);
    await field.blur();
    await page.keyboard.press('Control+z');
    await backTo(before);
    await expect.poll(noteTexts).toEqual(notes);
    expect(await field.inputValue()).toBe(written);
  });

  test('computes again when a table is dragged, as one step of undo', async () => {
    const before = await revision();
    const box = (await page.locator('.plan .thing.table .body').first().boundingBox())!;
    const [x, y] = [box.x + 12, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let i = 1; i <= 6; i++) await page.mouse.move(x + i, y - 2 * i);
    await page.mouse.up();
    await changedFrom(before);
    await page.getByRole('button', { name: 'Undo' }).click();
    await backTo(before);
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
  });

  test('refuses a number without unit beside its field and keeps the last drawing', async () => {
    const before = await revision();
    await page.locator('.plan .thing.table').first().focus();
    await page.keyboard.press('Enter');
    const card = page.locator('.thing-card');
    await card.getByLabel('length').fill('2400');
    await card.locator('.told.problem').waitFor();
    expect(await card.locator('.told.problem').textContent()).toContain('unit');
    expect(await revision()).toBe(before);
  });

  test('tells where the text cannot be read', async () => {
    await page.getByRole('button', { name: 'Brief as text' }).click();
    const area = page.getByLabel('Brief as text', { exact: true }).last();
    await area.fill(`${await area.inputValue()}\nfurniture: []\n`);
    await page.locator('.problems').waitFor();
    expect(await page.locator('.problems').textContent()).toMatch(/line \d+/);
    await page.locator('.problems').getByRole('button').first().click();
    expect(await area.evaluate((e: HTMLTextAreaElement) => e.value.slice(e.selectionStart).trim())).toMatch(
      /^(furniture|\[\])/,
    );
  });

  test('shows a chosen part in the drawing and why it exists', async () => {
    await page.getByRole('button', { name: /Parts/ }).first().click();
    await page.locator('.part button').first().click();
    await page.locator('.line-pointed').waitFor({ state: 'attached' });
    expect(await page.locator('.part.pointed p').textContent()).toMatch(/\w+ .*kg/);
  });

  test('draws the space', async () => {
    await page.getByRole('button', { name: 'In space' }).click();
    await page.locator('.space canvas').waitFor();
    await expect
      .poll(() => page.locator('.space canvas').evaluate((c: HTMLCanvasElement) => c.width * c.height), {
        timeout: 10_000,
      })
      .toBeGreaterThan(10_000);
    expect(faults).toEqual([]);
  });

  test('makes the pack, and hands over the whole of it or one file', async () => {
    await step('Sheets');
    await press('Make the whole pack');
    await page.getByRole('progressbar').waitFor();
    await page.getByRole('button', { name: /^Take the whole pack/ }).waitFor({ timeout: 110_000 });
    for (const [name, file] of [
      [/^Take the whole pack/, /\.zip$/],
      ['Take Parts list', /^parts\.csv$/],
    ] as const) {
      const download = page.waitForEvent('download');
      await page.locator('.leaf').getByRole('button', { name, exact: true }).click();
      expect((await download).suggestedFilename()).toMatch(file);
    }
  });

  test('stops the pack', async () => {
    await openExample('three-tables.yaml');
    await step('Sheets');
    await press('Make the whole pack');
    await press('Stop');
    await page.getByText('Stopped. Nothing was made.').waitFor();
    expect(await page.getByRole('progressbar').count()).toBe(0);
    expect(faults).toEqual([]);
  });

  test('shows the printed plan', async () => {
    await page.getByRole('button', { name: 'Printed sheets' }).click();
    const picture = page.locator('img.printed');
    await picture.waitFor({ timeout: 60_000 });
    await expect.poll(() => picture.evaluate((i: HTMLImageElement) => i.naturalWidth)).toBeGreaterThan(100);
  });

  test.each(['light', 'dark'] as const)('has no serious accessibility violation in %s', async (colorScheme) => {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    const steps = page.locator('.index button');
    for (let i = 0; i < 8; i++) {
      await steps.nth(i).click();
      expect(await violations(page)).toEqual([]);
    }
    await press('Plan');
    await page.locator('.plan .thing.table').first().focus();
    await page.keyboard.press('Enter');
    await page.locator('.note > button').first().click();
    expect(await violations(page)).toEqual([]);
    await page.getByRole('button', { name: 'All', exact: true }).click();
    await page.evaluate(() => {
      for (const each of document.querySelectorAll<HTMLDetailsElement>('.leaf details.further, .notes details'))
        each.open = true;
    });
    expect(await violations(page)).toEqual([]);
    await openNew();
    expect(await violations(page)).toEqual([]);
    await page.getByRole('button', { name: 'Brief as text' }).click();
    expect(await violations(page)).toEqual([]);
  });

  test('no writing of the plan lies on another, near or far', async () => {
    for (const name of ['amplifier-bay.yaml', 'close-enclosure.yaml', 'three-tables.yaml']) {
      await openExample(name);
      await page.locator('.labels [data-label]').first().waitFor();
      for (const zoom of ['', 'Farther', 'Farther', 'Closer', 'Closer', 'Closer']) {
        if (zoom) await page.getByRole('button', { name: zoom }).click();
        expect(await overlappingLabels(), `${name} ${zoom}`).toEqual([]);
      }
    }
  });

  test('folds what is not assessed beside what wants attention, and shows it to the one who decides', async () => {
    await openExample('amplifier-bay.yaml');
    const group = page.locator('.note-group', { hasText: 'not assessed' });
    await group.waitFor();
    expect(await group.locator('.note').count()).toBe(0);
    expect(await group.locator('summary .count').first().textContent()).toMatch(/^\d+$/);
    await group.locator('summary').first().click();
    await expect.poll(() => group.locator('.note').count()).toBeGreaterThan(10);
    const before = (await noteTexts()).length;
    await page.locator('.deciders').getByRole('button', { name: 'fire authority' }).click();
    await expect.poll(async () => (await noteTexts()).length).toBeLessThan(before);
    await group.locator('.note > button').first().click();
    expect(await group.locator('.note.open').textContent()).toContain('Decided by: fire authority');
  });

  test('a corner of a curtain run is moved by keys, and undone', async () => {
    await openExample('amplifier-bay.yaml');
    const before = await revision();
    await page.locator('.plan .thing.run').first().focus();
    await page.keyboard.press('Enter');
    await page.locator('.corner-grip').nth(2).focus();
    await page.keyboard.press('Shift+ArrowRight');
    await changedFrom(before);
    await page.getByRole('button', { name: 'Undo' }).click();
    await backTo(before);
  });

  test('a typed distance moves the table to it', async () => {
    await openExample('close-enclosure.yaml');
    await page.locator('.plan .thing.enclosure').waitFor();
    await page.locator('.plan .thing.table').first().focus();
    await page.keyboard.press('Enter');
    const before = await revision();
    const distance = page.getByLabel('to the wall in the west', { exact: true });
    await distance.fill('1500 mm');
    await distance.press('Enter');
    await changedFrom(before);
    await expect.poll(() => distance.inputValue()).toBe('1500 mm');
    const east = page.getByLabel('to the wall in the east', { exact: true });
    // The table is 2.4 m long in a room of 6 m.
    expect(await east.inputValue()).toBe('2100 mm');
    await distance.fill('1500');
    expect(await distance.getAttribute('aria-invalid')).toBe('true');
  });

  test('a thing is renamed wherever the brief names it', async () => {
    await page.locator('.plan .thing.table').first().focus();
    await page.keyboard.press('Enter');
    await press('All');
    const id = page.locator('.entry.in-hand').getByLabel('id', { exact: true }).first();
    await id.fill('clock');
    await id.press('Enter');
    await page.locator('[data-thing="clock"]').waitFor();
    expect(await page.locator('.notes .problems').count()).toBe(0);
    await press('Brief as text');
    expect(await page.getByLabel('Brief as text', { exact: true }).last().inputValue()).not.toContain('table-1');
  });

  test('a newcomer gets from New to a checked close enclosure round a table with a laser, without the text', async () => {
    await openNew();
    expect(await page.locator('.leaf .next').textContent()).toContain('No table yet');
    await press('Add a table');
    await page.locator('.plan .thing.table').waitFor();
    await press('Go to Needs');
    await press('Add a continuous laser');
    await page.locator('.plan .thing.beam').waitFor({ state: 'attached' });
    const power = page.locator('.entry.in-hand').getByLabel('power', { exact: true });
    await power.fill('20');
    await page.locator('.entry.in-hand .told.problem').waitFor();
    await power.fill('20 mW');
    await page.locator('.entry.in-hand .told.problem').waitFor({ state: 'detached' });
    await power.blur();
    await page.locator('.next').getByRole('button', { name: 'Add a class' }).click();
    await press('Go to Layout');
    await press('Add a close enclosure');
    await page.locator('.plan .thing.enclosure').waitFor();
    await press('Ask it of enclosure-1');
    await page.locator('.next').getByRole('button', { name: 'Add a sign' }).click();
    await step('Checks');
    await expect.poll(() => page.locator('.tally td').allTextContents()).not.toContain('');
    const tally = await page.locator('.tally-item').allTextContents();
    expect(tally.reduce((sum, text) => sum + Number(text.replace(/\D/g, '')), 0)).toBeGreaterThan(30);
    expect(await noteTexts()).not.toEqual([]);
    expect(await page.locator('.notes .problems').count()).toBe(0);
    expect(faults).toEqual([]);
    // Every step of it can be undone, down to the empty room.
    const undo = page.getByRole('button', { name: 'Undo' });
    while (await undo.isEnabled()) await undo.click();
    await page.locator('.plan .thing.table').waitFor({ state: 'detached' });
    await page.locator('.cell.file [data-safety="saved"]').waitFor();
  });

  test('asks nothing of anybody else', async () => {
    await page.getByRole('button', { name: 'In space' }).click();
    await page.locator('.space canvas').waitFor();
    expect(foreign).toEqual([]);
  });

  test('reflows on a narrow screen without scrolling sideways', async () => {
    await page.setViewportSize({ width: 320, height: 640 });
    const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(overflow).toBeLessThanOrEqual(0);
  });
});
