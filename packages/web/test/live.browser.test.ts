import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { designFrom, type Verdict, verdictOrder } from '@cloche/engine';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { type RunningServer, startServer } from '../../server/src/index.js';
import { repositoryOptions } from '../../server/test/options.js';
import { launch, openProjectOf } from './page.js';

const web = fileURLToPath(new URL('../', import.meta.url));
const root = fileURLToPath(new URL('../../../', import.meta.url));

let server: RunningServer;
let browser: Browser;
let page: Page;
let faults: string[];

beforeAll(async () => {
  server = await startServer(repositoryOptions({ webRoot: `${web}dist` }));
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
  await openProjectOf(page, server.url, 'three-tables.yaml');
  await page.locator('.plan [data-thing="table-3"]').waitFor();
  await settled();
  return () => context.close();
});

const settled = () =>
  page.waitForFunction(() => document.querySelector('.cell.revision .busy')?.textContent?.trim() === '');
const revision = () => page.locator('[data-revision]').getAttribute('data-revision');

/** The drawn brief as the engine computes it in one go. */
async function computedInOneGo() {
  await page.getByRole('button', { name: 'Brief as text' }).click();
  const briefText = await page.getByLabel('Brief as text', { exact: true }).last().inputValue();
  const texts = (folder: string) =>
    readdirSync(`${root}${folder}`)
      .filter((name) => name.endsWith('.yaml'))
      .sort()
      .map((name) => ({ name, text: readFileSync(`${root}${folder}/${name}`, 'utf8') }));
  const ruleTexts = Object.fromEntries(texts('rules').map(({ name, text }) => [name.replace('.yaml', ''), text]));
  const result = designFrom({ briefText, catalogueFiles: texts('catalogue'), ruleTexts });
  if (!result.ok) throw new Error(result.problems.map((p) => p.message).join('\n'));
  return result.value;
}

const tally = () => page.locator('.verdicts .tally-item').allTextContents();

test('while a table is dragged the findings of heavy checks are told as stale, and when it rests none is', async () => {
  const before = await revision();
  await page.evaluate(() => {
    const seen = { notes: new Set<string>(), tally: false };
    (globalThis as unknown as { seen: typeof seen }).seen = seen;
    new MutationObserver(() => {
      for (const note of document.querySelectorAll<HTMLElement>('.note.stale'))
        seen.notes.add(note.dataset.finding ?? '');
      seen.tally ||= document.querySelector('.verdicts .busy')?.textContent?.includes('stale') === true;
    }).observe(document.body, { subtree: true, childList: true, attributes: true, characterData: true });
  });
  const box = (await page.locator('.plan [data-thing="table-3"] .body').boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let i = 1; i <= 12; i++) await page.mouse.move(x + 2 * i, y + i);
  await page.mouse.up();
  await page.waitForFunction(
    (old) => document.querySelector('[data-revision]')?.getAttribute('data-revision') !== old,
    before,
  );
  await settled();
  const seen = await page.evaluate(() => {
    const { notes, tally } = (globalThis as unknown as { seen: { notes: Set<string>; tally: boolean } }).seen;
    return { notes: [...notes], tally };
  });
  expect(seen.tally).toBe(true);
  expect(seen.notes.length).toBeGreaterThan(0);
  expect(seen.notes.filter((id) => !/^room\/(way|exit-way)\//.test(id))).toEqual([]);
  expect(await page.locator('.note.stale').count()).toBe(0);
  expect(faults).toEqual([]);
});

test('after many quick edits the page holds what the engine computes in one go', async () => {
  await page.locator('.plan [data-thing="table-3"]').focus();
  await page.keyboard.press('Enter');
  for (let i = 0; i < 12; i++) await page.keyboard.press(['ArrowRight', 'ArrowUp', 'ArrowRight', 'ArrowLeft'][i % 4]!);
  await settled();
  const result = await computedInOneGo();
  expect(await revision()).toBe(result.revision);
  const count = (verdict: Verdict) => result.findings.filter((f) => f.verdict === verdict).length;
  const shown = (await tally()).map((text) => Number(text.replace(/\D/g, '')));
  expect(shown.sort()).toEqual(verdictOrder.map(count).sort());
  expect(faults).toEqual([]);
});

test('a brief that cannot be read in between does not disturb what follows', async () => {
  await page.getByRole('button', { name: 'Brief as text' }).click();
  const area = page.getByLabel('Brief as text', { exact: true }).last();
  const good = await area.inputValue();
  await area.fill(good.replace('at: [7.6 m, 3.6 m]', 'at: [7.6, 3.6 m]'));
  await page.locator('.problems').waitFor();
  await area.fill(good.replace('at: [7.6 m, 3.6 m]', 'at: [7.5 m, 3.6 m]'));
  await page.locator('.problems').waitFor({ state: 'detached' });
  await settled();
  expect(await revision()).toBe((await computedInOneGo()).revision);
});

test('another brief opened at once shows nothing of the one before', async () => {
  await page.locator('.plan [data-thing="table-3"]').focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('ArrowRight');
  await openProjectOf(page, server.url, 'close-enclosure.yaml');
  await page.locator('.plan .thing.table').first().waitFor();
  await settled();
  const result = await computedInOneGo();
  expect(await revision()).toBe(result.revision);
  const shown = await page
    .locator('.notes .note')
    .evaluateAll((all) => all.map((e) => (e as HTMLElement).dataset.finding));
  expect(shown.filter((id) => !result.findings.some((f) => f.id === id))).toEqual([]);
});
