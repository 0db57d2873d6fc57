import { fileURLToPath } from 'node:url';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { type KillableServer, killableServer } from './killable-server.js';
import { launch, openProjectOf } from './page.js';
import { lengthField, lengthIn, setLength, takeTable, textOnServer } from './table-length.js';

const webRoot = fileURLToPath(new URL('../dist', import.meta.url));

let browser: Browser;
let server: KillableServer;
let context: BrowserContext;
let page: Page;

beforeAll(async () => {
  [browser, server] = await Promise.all([launch(), killableServer(webRoot)]);
}, 120_000);

afterAll(async () => {
  await browser?.close();
  await server?.kill();
});

beforeEach(async () => {
  context = await browser.newContext({
    locale: 'en-GB',
    viewport: { width: 1280, height: 800 },
    reducedMotion: 'reduce',
  });
  page = await context.newPage();
  return async () => {
    await context.close();
    await server.kill();
    await server.restart();
  };
});

/** Waits long enough for a busy machine. */
const poll = <T>(read: () => T) => expect.poll(read, { timeout: 30_000 });
const safety = (is: string, on = page) => on.locator(`.cell.file [data-safety="${is}"]`).waitFor();

/** The page and every part of it are kept, the parts that nobody has looked at among them. */
const pageKept = (on = page) =>
  poll(() =>
    on.evaluate(async () => {
      const files = (await (await fetch('files.json')).json()) as readonly string[];
      const kept = await Promise.all([...files, './', 'api/opened'].map((file) => caches.match(file)));
      return kept.filter((each) => each === undefined).length;
    }),
  ).toBe(0);

test('with the server away a project opens from this browser, is edited, and all edits arrive when it is back', async () => {
  const id = await openProjectOf(page, server.url);
  await takeTable(page);
  await setLength(page, '2.1 m');
  await safety('saved');
  await pageKept();
  await server.kill();
  await setLength(page, '2.2 m');
  await safety('kept');

  await page.reload();
  await page.locator('.plan .thing.table').first().waitFor();
  await safety('kept');
  expect(await page.locator('.cell.file').textContent()).toContain('Kept in this browser; the server does not answer');
  // What was not on the server yet is there again, and it goes on from there.
  await takeTable(page);
  await poll(() => lengthField(page).inputValue()).toBe('2.2 m');
  await setLength(page, '2.3 m');
  // The engine computes without the server, and a part that was never looked at opens.
  await page.getByRole('button', { name: 'In space' }).click();
  await page.locator('canvas').first().waitFor();

  await page.reload();
  await safety('kept');
  await server.restart();
  await safety('saved');
  expect(lengthIn(await textOnServer(server.url, id))).toBe('2.3 m');
  // All of it can be undone, back to what the server had before it went away.
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await poll(async () => lengthIn(await textOnServer(server.url, id))).toBe('2.2 m');
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await poll(async () => lengthIn(await textOnServer(server.url, id))).toBe('2.1 m');
});

test('what another browser wrote meanwhile is merged with what was written here', async () => {
  const id = await openProjectOf(page, server.url);
  await safety('saved');
  await pageKept();
  await server.kill();
  await page.reload();
  await page.locator('.plan .thing.table').first().waitFor();
  await takeTable(page);
  await setLength(page, '2.2 m');
  await safety('kept');
  await page.close();

  await server.restart();
  const text = await textOnServer(server.url, id);
  const named = text.replace(/(project:\s*\n\s+name: ).*/, '$1Changed elsewhere');
  const at = text.indexOf(/project:\s*\n\s+name: (.*)/.exec(text)![1]!);
  const answer = await fetch(new URL(`api/projects/${id}/steps`, server.url), {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({
      base: 0,
      steps: [
        {
          window: 'welsewhere-1',
          group: 'welsewhere-1-1',
          kind: 'edit',
          splices: [{ at, out: text.slice(at, text.indexOf('\n', at)), in: 'Changed elsewhere' }],
        },
      ],
    }),
  });
  expect([answer.status, await textOnServer(server.url, id)]).toEqual([200, named]);

  page = await context.newPage();
  await page.goto(`${server.url}/#/project/${id}/survey`);
  await poll(async () => lengthIn(await textOnServer(server.url, id))).toBe('2.2 m');
  expect(await textOnServer(server.url, id)).toContain('Changed elsewhere');
  await safety('saved');
});

test('a project that this browser never had is told as out of reach, beside the list of those it knows', async () => {
  await openProjectOf(page, server.url);
  await page.getByRole('button', { name: 'Projects', exact: true }).click();
  await page.locator('a[href^="#/project/"]').first().waitFor();
  await pageKept();
  await server.kill();
  await page.goto(`${server.url}/#/project/${'0'.repeat(32)}/survey`);
  await page.getByText('The server does not answer.').waitFor();
});
