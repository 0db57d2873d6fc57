import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import writeXlsx from 'write-excel-file/universal';
import { parse } from 'yaml';
import { type RunningServer, startServer } from '../../server/src/index.js';
import { bundledPackWorker, repositoryOptions } from '../../server/test/options.js';
import { launch, openProjectOf } from './page.js';

const web = fileURLToPath(new URL('../', import.meta.url));
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

let server: RunningServer;
let browser: Browser;
let context: BrowserContext;
let page: Page;
let faults: string[];

beforeAll(async () => {
  server = await startServer(repositoryOptions({ webRoot: `${web}dist`, packWorker: await bundledPackWorker() }));
  browser = await launch();
}, 180_000);

afterAll(async () => {
  await browser?.close();
  await server?.close();
});

async function begin(colorScheme: 'light' | 'dark' = 'light') {
  context = await browser.newContext({
    locale: 'en-GB',
    viewport: { width: 1280, height: 800 },
    reducedMotion: 'reduce',
    colorScheme,
    permissions: ['clipboard-read', 'clipboard-write'],
  });
  page = await context.newPage();
  faults = [];
  page.on('pageerror', (error) => faults.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text());
  });
  await openProjectOf(page, server.url);
}

beforeEach(async () => {
  await begin();
  return () => context.close();
});

const press = (name: string) => page.getByRole('button', { name, exact: true }).first().click();
/** The brief as it stands, read from its text pane. */
async function brief() {
  await press('Brief as text');
  const text = await page.getByLabel('Brief as text').inputValue();
  await press('Schedules');
  return parse(text);
}
const openSchedule = async (id: string) => {
  await press('Schedules');
  await page.getByLabel('Schedule', { exact: true }).selectOption(id);
};
const cell = (row: number, column: number) =>
  page.locator(`[role=row][aria-rowindex="${row + 1}"] [aria-colindex="${column}"]`);
const focused = () => page.evaluate(() => document.activeElement?.textContent ?? '');
const keys = async (...all: readonly string[]) => {
  for (const key of all) await page.keyboard.press(key);
};
const paste = async (text: string) => {
  await page.evaluate((t) => navigator.clipboard.writeText(t), text);
  await page.keyboard.press('Control+V');
};

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

describe('a schedule', () => {
  test('is edited by keys alone and undone', async () => {
    await openSchedule('tables');
    await cell(1, 1).focus();
    await keys('ArrowRight');
    await page.keyboard.type('Long table');
    await keys('Enter');
    await expect.poll(() => cell(1, 2).textContent()).toBe('Long table');
    // Enter goes down, arrows and Home back to the first cell.
    await keys('ArrowUp', 'Home');
    expect(await focused()).toBe('table-1');
    await keys('End', 'Home', 'ArrowRight', 'F2', 'End');
    await page.keyboard.type(' 2');
    await keys('Tab');
    await expect.poll(() => cell(1, 2).textContent()).toBe('Long table 2');
    expect(await focused()).toBe('optical table');
    await keys('Control+Z', 'Control+Z');
    await expect.poll(() => cell(1, 2).textContent()).not.toContain('Long table');
    expect(faults).toEqual([]);
  });

  test('marks what cannot be read, says why and keeps it out of the brief', async () => {
    await openSchedule('lasers');
    await cell(1, 3).focus();
    await page.keyboard.type('table-77');
    await keys('Enter');
    await expect.poll(() => cell(1, 3).getAttribute('aria-invalid')).toBe('true');
    expect(await cell(1, 3).textContent()).toContain('"table-77" is none of table-1');
    expect((await brief()).lasers[0].table).toBe('table-1');
  });

  test('takes a pasted block in one step: what can be read, and rows below the end', async () => {
    await openSchedule('sensors');
    const before = (await brief()).layout?.sensors?.length ?? 0;
    await cell(before + 1, 1).focus();
    await paste('probe-a\troom\t1 m\t1 m\nprobe-b\tnowhere\t"2 m"\t1.5\n');
    await expect.poll(() => page.locator('.refusals').textContent()).toContain('2 cells could not be read');
    const after = (await brief()).layout.sensors;
    expect(after.slice(before).map((s: { id: string; at: string[] }) => [s.id, s.at[0]])).toEqual([
      ['probe-a', '1 m'],
      ['probe-b', '2 m'],
    ]);
    await press('Undo');
    expect((await brief()).layout?.sensors?.length ?? 0).toBe(before);
  });

  test('gives a range to spreadsheets and clears it', async () => {
    await openSchedule('lasers');
    const [first, second] = [await cell(1, 1).textContent(), await cell(1, 2).textContent()];
    await cell(1, 1).focus();
    await keys('Shift+ArrowRight', 'Control+C');
    expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(`${first}\t${second}`);
    await cell(1, 2).click();
    await keys('Delete');
    await expect.poll(() => cell(1, 2).textContent()).toBe('');
  });

  test('is sorted for looking only', async () => {
    await openSchedule('lasers');
    const inBrief = (await brief()).lasers.map((l: { id: string }) => l.id);
    await page.getByRole('columnheader', { name: 'id' }).getByRole('button').click();
    await page.getByRole('columnheader', { name: 'id' }).getByRole('button').click();
    expect(await page.getByRole('columnheader', { name: 'id' }).getAttribute('aria-sort')).toBe('descending');
    expect(await cell(1, 1).textContent()).toBe([...inBrief].sort().at(-1));
    expect((await brief()).lasers.map((l: { id: string }) => l.id)).toEqual(inBrief);
  });
});

const list =
  'Item no;Description;Price;Currency;Unit;Valid from\n' +
  'profile-30x30;;9,99;EUR;m;2.11.2026\n' +
  'profile-40x40;;-3,00;EUR;m;2.11.2026\n' +
  'nothing-such;;3,00;EUR;m;2.11.2026\n' +
  'profile-30x60;;12,00;CHF;m;2.11.2026\n';

const openList = async (name: string, buffer: Buffer) => {
  await openSchedule('prices');
  await press('Read a price list');
  await page.locator('dialog input[type=file]').setInputFiles({ name, mimeType: 'application/octet-stream', buffer });
  await page.getByLabel('Where the prices come from').fill('offer 4711');
};

describe('a price list', () => {
  test('in CSV shows what is taken and what is refused, and is one step', async () => {
    await openList('offer.csv', Buffer.from(list));
    await expect
      .poll(() => page.locator('.price-report strong').textContent())
      .toBe('1 price to take, 0 unchanged, 3 rows refused.');
    const refused = await page.locator('.refused-rows tbody tr').allTextContents();
    expect(refused.map((row) => row.slice(0, 1))).toEqual(['3', '4', '5']);
    expect(refused[0]).toContain('negative');
    expect(refused[2]).toContain('CHF');
    expect(await violations()).toEqual([]);
    await press('Take 1 price');
    expect((await brief()).site.prices).toEqual([
      { item: 'profile-30x30', price: '9.99 EUR', per: 'm', on: '2026-11-02', from: 'offer 4711' },
    ]);
    await press('Undo');
    expect((await brief()).site?.prices).toBeUndefined();
    expect(faults).toEqual([]);
  });

  test('in XLSX is read with its numbers', async () => {
    const text = (value: string) => ({ value, type: String });
    const rows = [
      ['Item', 'Price', 'Currency', 'Unit'].map(text),
      [text('profile-30x30'), { value: 10.5, type: Number }, text('EUR'), text('m')],
      [text('profile-40x40'), text('on request'), text('EUR'), text('m')],
    ];
    const made = await writeXlsx([{ sheet: 'Prices', data: rows }]).toBlob();
    const buffer = Buffer.from(await made.arrayBuffer());
    await openList('offer.xlsx', buffer);
    await expect
      .poll(() => page.locator('.price-report strong').textContent())
      .toBe('1 price to take, 0 unchanged, 1 row refused.');
    await press('Take 1 price');
    expect((await brief()).site.prices[0]).toMatchObject({ item: 'profile-30x30', price: '10.50 EUR' });
    expect(faults).toEqual([]);
  });

  test('asks where it could be read in two ways', async () => {
    await openList('offer.csv', Buffer.from('Item;Price;Currency;Unit\nprofile-30x30;1.234;EUR;m\n'));
    await expect.poll(() => page.locator('.list-form').textContent()).toContain('Say which');
    expect(await page.locator('.price-report').count()).toBe(0);
    await page.getByLabel('Decimals are written').selectOption('point');
    await expect.poll(() => page.locator('.price-report strong').textContent()).toContain('1 price to take');
  });
});

describe('what is in force', () => {
  test('a site rule is changed with a reason, and given back', async () => {
    await openSchedule('rules');
    const row = page.locator('[data-rule="way.headroom"]');
    await row.getByRole('button', { name: /^Change/ }).click();
    await page.getByLabel('Value for this project').fill('2.25 m');
    await press('Keep it so');
    await expect.poll(() => page.locator('.change-form').textContent()).toContain('Say why');
    await page.getByLabel('Because').fill('trolleys');
    await press('Keep it so');
    await expect.poll(() => row.textContent()).toContain('because trolleys');
    const overrides = (await brief()).site.overrides;
    expect(overrides).toContainEqual({ rule: 'way.headroom', value: '2.25 m', because: 'trolleys' });
    await row.getByRole('button', { name: 'Back to the profile' }).click();
    await expect.poll(() => row.textContent()).not.toContain('trolleys');
  });

  test('a figure of the catalogue is changed with a reason', async () => {
    await openSchedule('catalogue');
    await page.getByRole('button', { name: /^Profile, 40 x 40/ }).click();
    expect(await page.getByRole('img', { name: 'Cross-section of Profile, 40 x 40' }).count()).toBe(1);
    const row = page.locator('[data-field="massPerLength"]');
    await row.getByRole('button', { name: /^Change/ }).click();
    await page.getByLabel('Value for this project').fill('1.9 kg/m');
    await page.getByLabel('Because').fill('data sheet');
    await press('Keep it so');
    await expect.poll(() => row.textContent()).toContain('because data sheet');
    expect((await brief()).site.changes).toEqual([
      { item: 'profile-40x40', field: 'massPerLength', value: '1.9 kg/m', because: 'data sheet' },
    ]);
    expect(await page.locator('.note-group.problems').count()).toBe(0);
  });

  test.each(['light', 'dark'] as const)(
    'schedule, rules and catalogue have no serious faults of access, %s',
    async (mode) => {
      await context.close();
      await begin(mode);
      for (const id of ['lasers', 'rules', 'catalogue']) {
        await openSchedule(id);
        if (id === 'rules') await page.locator('table.rules').waitFor();
        if (id === 'catalogue') await page.getByRole('button', { name: /^Profile, 40 x 40/ }).click();
        expect(await violations()).toEqual([]);
      }
    },
  );
});
