import { fileURLToPath } from 'node:url';
import type { Browser, BrowserContext } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type RunningServer, startServer } from '../../server/src/index.js';
import { repositoryOptions } from '../../server/test/options.js';
import { launch, openProjectOf } from './page.js';
import { lengthField, setLength, takeTable } from './table-length.js';

const webRoot = fileURLToPath(new URL('../dist', import.meta.url));

let browser: Browser;
let server: RunningServer;
let context: BrowserContext;

beforeAll(async () => {
  server = await startServer(repositoryOptions({ webRoot }));
  browser = await launch();
  context = await browser.newContext({ locale: 'en-GB', reducedMotion: 'reduce' });
}, 120_000);

afterAll(async () => {
  await browser?.close();
  await server?.close();
});

const poll = <T>(read: () => T) => expect.poll(read, { timeout: 30_000 });

/** More than the connections that a browser opens to one server. */
const many = 8;

test('eight windows of one project stay together over one connection, also when the window that listens is closed', async () => {
  const listening = new Set<unknown>();
  context.on('request', (request) => {
    if (new URL(request.url()).pathname.endsWith('/live')) listening.add(request);
  });
  context.on('requestfinished', (request) => listening.delete(request));
  context.on('requestfailed', (request) => listening.delete(request));

  const first = await context.newPage();
  await openProjectOf(first, server.url);
  const windows = [first];
  while (windows.length < many) {
    const page = await context.newPage();
    await page.goto(first.url());
    await page.locator('.plan .thing.table').first().waitFor();
    windows.push(page);
  }
  expect(listening.size).toBe(1);
  for (const page of windows) await takeTable(page);

  await setLength(windows.at(-1)!, '2.2 m');
  for (const page of windows) await poll(() => lengthField(page).inputValue()).toBe('2.2 m');

  await first.close();
  const left = windows.slice(1);
  await poll(() => listening.size).toBe(1);
  await setLength(left[0]!, '2.1 m');
  for (const page of left) await poll(() => lengthField(page).inputValue()).toBe('2.1 m');
});
