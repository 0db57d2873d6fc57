import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { type RunningServer, startServer } from '../../server/src/index.js';
import { bundledPackWorker, repositoryOptions } from '../../server/test/options.js';
import { launch, projectOf, violations } from './page.js';

const webRoot = fileURLToPath(new URL('../dist', import.meta.url));

let browser: Browser;
let server: RunningServer;
let context: BrowserContext;
let page: Page;

beforeAll(async () => {
  browser = await launch();
  server = await startServer(repositoryOptions({ webRoot, packWorker: await bundledPackWorker() }));
}, 120_000);

afterAll(async () => {
  await browser?.close();
  await server?.close();
});

/** A phone: narrow, touched, sharp. */
const phone = {
  viewport: { width: 390, height: 844 },
  hasTouch: true,
  isMobile: true,
  reducedMotion: 'reduce',
} as const;

beforeEach(async () => {
  context = await browser.newContext({ ...phone, locale: 'en-GB' });
  page = await context.newPage();
  return () => context.close();
});

async function openSheet(): Promise<string> {
  const id = await projectOf(server.url, 'close-enclosure.yaml');
  await page.goto(`${server.url}/#/fitting/${id}`);
  await page.locator('.fitting .steps .line').first().waitFor();
  return id;
}

describe('the sheet for fitters on a phone', () => {
  test('a project opened from the list on a phone is this sheet', async () => {
    const id = await projectOf(server.url, 'close-enclosure.yaml');
    await page.goto(`${server.url}/#/`);
    await page.locator(`a[href="#/fitting/${id}"]`).click();
    await page.locator('.fitting .steps .line').first().waitFor();
  });

  test('a tick stays when the page is loaded again', async () => {
    await openSheet();
    const first = page.locator('.fitting .line input').first();
    await first.check();
    await page.reload();
    await expect.poll(() => page.locator('.fitting .line input').first().isChecked()).toBe(true);
  });

  test('a piece is found by its mark, with the step at which it goes in', async () => {
    await openSheet();
    await page.getByRole('button', { name: 'Pieces' }).click();
    const mark = await page.locator('.pieces [data-mark]').last().getAttribute('data-mark');
    await page.getByLabel('Find a piece mark').fill(mark!.toLowerCase());
    const left = page.locator('.pieces [data-mark]');
    for (const each of await left.evaluateAll((all) => all.map((e) => e.getAttribute('data-mark'))))
      expect(each!.toLowerCase()).toContain(mark!.toLowerCase());
    expect(await left.first().textContent()).toMatch(/Goes in at step \d+/);
  });

  test('opens again without a network, ticks and drawings with it', async () => {
    await openSheet();
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    // What was fetched before the keeper was there is fetched once more through it.
    await page.reload();
    await page.locator('.fitting .line input').first().check();
    await page.getByRole('button', { name: 'Drawings' }).click();
    await page.locator('.drawings img').first().waitFor();
    await context.setOffline(true);
    await page.reload();
    await expect.poll(() => page.locator('.fitting .line input').first().isChecked(), { timeout: 20_000 }).toBe(true);
    await page.getByRole('button', { name: 'Drawings' }).click();
    await page.locator('.drawings img').first().waitFor();
  });

  test('is handed over as one file that ticks by itself and asks for nothing', async () => {
    await openSheet();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Keep it as a file' }).click(),
    ]);
    const file = join(mkdtempSync(join(tmpdir(), 'cloche-kept-')), 'fitting.html');
    await download.saveAs(file);
    expect(readFileSync(file, 'utf8')).toContain('data:image/svg+xml;base64,');
    const asked: string[] = [];
    page.on('request', (r) => asked.push(r.url()));
    await page.goto(pathToFileURL(file).href);
    await page.locator('.line input').first().check();
    await page.reload();
    expect(await page.locator('.line input').first().isChecked()).toBe(true);
    expect(asked.filter((url) => !/^(file|data):/.test(url))).toEqual([]);
  });

  test.each(['light', 'dark'] as const)(
    'has no accessibility violation in %s and never scrolls sideways',
    async (mode) => {
      await page.emulateMedia({ colorScheme: mode });
      await openSheet();
      for (const name of ['Steps', 'Pieces', 'Drawings']) {
        await page.getByRole('button', { name }).click();
        expect(await violations(page), name).toEqual([]);
        expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
      }
    },
  );
});
