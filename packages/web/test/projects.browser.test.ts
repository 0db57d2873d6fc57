import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { type RunningServer, startServer } from '../../server/src/index.js';
import { bundledArchiveWorker, repositoryOptions } from '../../server/test/options.js';
import { type KillableServer, killableServer } from './killable-server.js';
import { launch, openProjectOf, projectOf, violations } from './page.js';
import { lengthField, lengthIn, setLength, takeTable, textOnServer } from './table-length.js';

const web = fileURLToPath(new URL('../', import.meta.url));

let browser: Browser;
let server: RunningServer;
let context: BrowserContext;
let page: Page;
let faults: string[];

const newServer = async () =>
  startServer(repositoryOptions({ webRoot: `${web}dist`, archiveWorker: await bundledArchiveWorker() }));

beforeAll(async () => {
  browser = await launch();
}, 120_000);

afterAll(() => browser?.close());

beforeEach(async () => {
  server = await newServer();
  context = await browser.newContext({
    locale: 'en-GB',
    viewport: { width: 1280, height: 800 },
    reducedMotion: 'reduce',
  });
  page = await newPage();
  return async () => {
    await context.close();
    await server.close();
  };
});

async function newPage(): Promise<Page> {
  const made = await context.newPage();
  faults = [];
  made.on('pageerror', (error) => faults.push(String(error)));
  return made;
}

/** Waits long enough for a busy machine. */
const poll = <T>(read: () => T) => expect.poll(read, { timeout: 20_000 });

const saved = (on = page) => on.locator('.cell.file [data-safety="saved"]').waitFor();
const press = (name: string, on = page) => on.getByRole('button', { name, exact: true }).first().click();

describe('the list of projects', () => {
  test('the first start opens a worked example, and the list then shows its plan and verdicts', async () => {
    await page.goto(server.url);
    await page.locator('.plan .thing.table').first().waitFor();
    expect(new URL(page.url()).hash).toMatch(/^#\/project\/[0-9a-f]{32}\/survey$/);
    await page.locator('.tally-item').first().waitFor();
    await poll(() => page.locator('.tally-item').allTextContents()).not.toContain('–');
    expect(await page.title()).toBe('Bay for an ultrafast amplifier – Cloche');
    await press('Projects');
    const card = page.locator('.small-sheet');
    await card.locator('img').waitFor();
    await poll(() => card.locator('img').evaluate((i: HTMLImageElement) => i.naturalWidth)).toBeGreaterThan(0);
    expect(await card.locator('.verdict-mark').count()).toBe(4);
    expect(await card.locator('time').textContent()).toMatch(/\d{1,2} \w{3,4} \d{4}/);
    // Started again, the list and not another example.
    await page.goto('about:blank');
    await page.goto(server.url);
    await card.waitFor();
    expect(await card.count()).toBe(1);
    expect(faults).toEqual([]);
  });

  test('a project of the command line opens by itself', async () => {
    const text = readFileSync(fileURLToPath(new URL('../../../examples/three-tables.yaml', import.meta.url)), 'utf8');
    const own = await startServer(
      repositoryOptions({ webRoot: `${web}dist`, openBrief: { name: 'three-tables.yaml', text } }),
    );
    await page.goto(own.url);
    await poll(() => page.locator('.plan .thing.table').count()).toBe(3);
    await own.close();
  });

  test('new opens at the survey, and back leads to the list', async () => {
    await projectOf(server.url, 'close-enclosure.yaml');
    await page.goto(`${server.url}#/`);
    await press('New');
    await page.locator('.leaf .next').waitFor();
    expect(await page.locator('.leaf .next').textContent()).toContain('No table yet');
    await page.locator('.index button', { hasText: 'Needs' }).click();
    expect(page.url()).toMatch(/\/needs$/);
    await page.goBack();
    expect(page.url()).toMatch(/\/survey$/);
    await page.goBack();
    await poll(() => page.locator('.small-sheet').count()).toBe(2);
    await page.goForward();
    await page.locator('.plan .wall').first().waitFor();
  });

  test('what was taken out lies in the bin and is put back', async () => {
    await projectOf(server.url, 'close-enclosure.yaml');
    await page.goto(`${server.url}#/`);
    await page.getByRole('button', { name: /^Take out/ }).click();
    await page.locator('.chest-empty').waitFor();
    // The keyboard is where it can be taken back at once.
    await page.locator('.chest-told button:focus').waitFor();
    await page.keyboard.press('Enter');
    await page.locator('.small-sheet').waitFor();
    await page.getByRole('button', { name: /^Take out/ }).click();
    await poll(() => page.locator('.chest-told').textContent()).toContain('bin');
    await page.locator('.bin summary').click();
    await page
      .locator('.bin')
      .getByRole('button', { name: /^Put back/ })
      .click();
    await page.locator('.small-sheet').waitFor();
    expect(await page.locator('.bin').count()).toBe(0);
  });

  test('many projects can be searched by name', async () => {
    for (let i = 0; i < 6; i++) await projectOf(server.url, 'close-enclosure.yaml');
    await projectOf(server.url, 'three-tables.yaml');
    await page.goto(`${server.url}#/`);
    await poll(() => page.locator('.small-sheet').count()).toBe(7);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(1280);
    await page.setViewportSize({ width: 320, height: 640 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
    await page.getByLabel('Search by name').fill('three tables');
    await poll(() => page.locator('.small-sheet').count()).toBe(1);
    await page.getByLabel('Search by name').fill('nothing of the kind');
    await page.getByText('No project is called').waitFor();
  });

  test('a project goes out as a file and comes in again, dropped on the sheet or chosen', async () => {
    const id = await openProjectOf(page, server.url);
    await takeTable(page);
    await setLength(page, '2.2 m');
    await saved();
    await press('Export');
    await page.locator('dialog[open]').waitFor();
    const download = page.waitForEvent('download');
    await press('The whole project');
    const file = await (await download).path();
    expect((await download).suggestedFilename()).toMatch(/\.zip$/);
    await press('Projects');
    await page.locator('input[type="file"]').setInputFiles({
      name: 'project.zip',
      mimeType: 'application/zip',
      buffer: readFileSync(file),
    });
    await page.locator('.plan .thing.table').first().waitFor();
    const other = /project\/([0-9a-f]+)/.exec(page.url())![1]!;
    expect(other).not.toBe(id);
    expect(await textOnServer(server.url, other)).toBe(await textOnServer(server.url, id));
    // Its history came along.
    await press('Undo');
    await saved();
    expect(lengthIn(await textOnServer(server.url, other))).not.toBe('2.2 m');

    await press('Projects');
    await page.locator('.chest').waitFor();
    await drop('brief.yaml', await textOnServer(server.url, id));
    await page.locator('.plan .thing.table').first().waitFor();
    await press('Projects');
    await page.locator('.chest').waitFor();
    await drop('holiday.txt', 'no brief');
    await poll(() => page.locator('.chest-told').textContent()).toContain('no brief');
  });

  const drop = async (name: string, text: string) => {
    const data = await page.evaluateHandle(
      ([fileName, content]) => {
        const transfer = new DataTransfer();
        transfer.items.add(new File([content!], fileName!));
        return transfer;
      },
      [name, text],
    );
    await page.locator('.chest').dispatchEvent('drop', { dataTransfer: data });
  };

  test('a project that is not there is told in the list', async () => {
    await page.goto(`${server.url}#/project/${'0'.repeat(32)}/survey`);
    await poll(() => page.locator('.chest-told').textContent()).toContain('no such project');
  });

  test.each(['light', 'dark'] as const)('has no serious accessibility violation in %s', async (colorScheme) => {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    await page.goto(`${server.url}#/`);
    await page.locator('.chest-empty').waitFor();
    expect(await violations(page)).toEqual([]);
    for (let i = 0; i < 7; i++) await projectOf(server.url, 'close-enclosure.yaml');
    await page.reload();
    await page
      .getByRole('button', { name: /^Take out/ })
      .first()
      .click();
    await page.locator('.bin summary').click();
    expect(await violations(page)).toEqual([]);
    await page.locator('.small-sheet a').first().click();
    await page.locator('.plan .thing.table').first().waitFor();
    await press('Name this revision');
    expect(await violations(page)).toEqual([]);
    await press('Cancel');
    await press('Export');
    expect(await violations(page)).toEqual([]);
  });
});

describe('a project', () => {
  test('is saved as it is edited; a reload shows it, and undo goes on after it', async () => {
    const id = await openProjectOf(page, server.url);
    const before = lengthIn(await textOnServer(server.url, id));
    await takeTable(page);
    await setLength(page, '2.2 m');
    await saved();
    expect(lengthIn(await textOnServer(server.url, id))).toBe('2.2 m');
    await page.reload();
    await page.locator('.plan .thing.table').first().waitFor();
    await takeTable(page);
    expect(await lengthField(page).inputValue()).toBe('2.2 m');
    await press('Undo');
    await saved();
    await poll(async () => lengthIn(await textOnServer(server.url, id))).toBe(before);
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
    await press('Redo');
    await poll(async () => lengthIn(await textOnServer(server.url, id))).toBe('2.2 m');
  });

  test('two windows stay together', async () => {
    const id = await openProjectOf(page, server.url);
    const other = await newPage();
    await other.goto(page.url());
    await other.locator('.plan .thing.table').first().waitFor();
    await takeTable(other);
    await takeTable(page);
    await setLength(page, '2.2 m');
    await poll(() => lengthField(other).inputValue()).toBe('2.2 m');
    await setLength(other, '2.1 m');
    await poll(() => lengthField(page).inputValue()).toBe('2.1 m');
    await press('Undo');
    await poll(() => lengthField(other).inputValue()).toBe('2.2 m');
    expect(lengthIn(await textOnServer(server.url, id))).toBe('2.2 m');
    expect(await page.locator('.conflicts').isVisible()).toBe(false);
  });

  test('what is typed into the text stays in its place while another window changes the project', async () => {
    const id = await openProjectOf(page, server.url);
    const other = await newPage();
    await other.goto(page.url());
    await other.locator('.plan .thing.table').first().waitFor();
    await takeTable(other);
    await press('Brief as text');
    const area = page.getByLabel('Brief as text', { exact: true }).last();
    const end = (await area.inputValue()).length;
    await area.evaluate((e: HTMLTextAreaElement) => {
      e.focus();
      e.setSelectionRange(e.value.length, e.value.length);
    });
    await page.keyboard.type('# seen');
    await setLength(other, '2.2345 m');
    await poll(async () => lengthIn(await area.inputValue())).toBe('2.2345 m');
    await page.keyboard.type(' twice');
    await poll(() => area.inputValue()).toMatch(/# seen twice$/);
    await saved();
    await poll(async () => (await textOnServer(server.url, id)).slice(end - 10)).toContain('# seen twice');
    expect(lengthIn(await textOnServer(server.url, id))).toBe('2.2345 m');
  });

  test('a field that two changed at once is told, and mine is taken with one press', async () => {
    const id = await openProjectOf(page, server.url);
    const other = await newPage();
    await other.goto(page.url());
    await other.locator('.plan .thing.table').first().waitFor();
    await takeTable(page);
    await takeTable(other);
    // The way to the server is cut for one window.
    await page.route('**/steps*', (route) => route.abort());
    await setLength(page, '2.2 m');
    await page.locator('[data-safety="kept"]').waitFor();
    await setLength(other, '2.1 m');
    await page.unroute('**/steps*');
    const strip = page.locator('.conflicts');
    await strip.locator('li').waitFor();
    expect(await strip.locator('li').textContent()).toMatch(/table-1.*2\.1 m.*2\.2 m/);
    await poll(() => lengthField(page).inputValue()).toBe('2.1 m');
    expect(await violations(page)).toEqual([]);
    await strip.getByRole('button', { name: /^Take mine/ }).click();
    await poll(() => lengthField(other).inputValue()).toBe('2.2 m');
    expect(lengthIn(await textOnServer(server.url, id))).toBe('2.2 m');
    expect(await strip.isVisible()).toBe(false);
  });

  test('when another window takes it out, it is told and can be put back', async () => {
    const id = await openProjectOf(page, server.url);
    await fetch(new URL(`api/projects/${id}`, server.url), { method: 'DELETE' });
    await page.getByText('This project was taken out').waitFor();
    await press('Put back');
    await saved();
    await takeTable(page);
    await setLength(page, '2.2 m');
    await poll(async () => lengthIn(await textOnServer(server.url, id))).toBe('2.2 m');
  });

  test('a revision is named, read, and its text taken back', async () => {
    await openProjectOf(page, server.url);
    await saved();
    await page.locator('.index button', { hasText: 'Changes' }).click();
    await press('Name this revision');
    await press('Keep it');
    await page.getByText('Give it a name.').waitFor();
    await page.getByLabel('Name', { exact: true }).fill('For the first review');
    await page.getByLabel('Who', { exact: true }).fill('A. Planner');
    await press('Keep it');
    const line = page.locator('.revisions li');
    await line.waitFor();
    expect(await line.textContent()).toMatch(/1For the first review[0-9a-f]{10}.*by A\. Planner/);
    const revision = await page.locator('[data-revision]').getAttribute('data-revision');
    // The differences stand on the sheet; the plan is one press away.
    await press('Plan');
    await takeTable(page);
    await setLength(page, '2.2 m');
    await poll(() => page.locator('[data-revision]').getAttribute('data-revision')).not.toBe(revision);
    await press('Read it: revision 1');
    await poll(() => page.locator('[data-revision]').getAttribute('data-revision')).toBe(revision);
    // Nothing can be changed while it is read.
    await takeTable(page);
    const read = await lengthField(page).inputValue();
    expect(read).not.toBe('2.2 m');
    await press('Back to now');
    await takeTable(page);
    expect(await lengthField(page).inputValue()).toBe('2.2 m');
    await press('Read it: revision 1');
    await press('Take its text back');
    await takeTable(page);
    await poll(() => lengthField(page).inputValue()).toBe(read);
    await press('Undo');
    await poll(() => lengthField(page).inputValue()).toBe('2.2 m');
  });
});

describe('when the server is killed in the middle of edits', () => {
  let killable: KillableServer;

  beforeAll(async () => {
    killable = await killableServer(`${web}dist`);
    return () => killable.kill();
  }, 120_000);

  test('nothing acknowledged is lost, and the window goes on by itself', async () => {
    const id = await openProjectOf(page, killable.url);
    await takeTable(page);
    for (let round = 0; round < 4; round++) {
      const [first, second] = [`2.${round}1 m`, `2.${round}2 m`];
      await setLength(page, first);
      await saved();
      await killable.kill();
      await setLength(page, second);
      await page.locator('[data-safety="kept"]').waitFor();
      expect(await page.locator('.cell.file .caption').textContent()).toContain('the server does not answer');
      await killable.restart();
      // What was acknowledged is there before the window has said anything new, or with what it has said since.
      expect([first, second]).toContain(lengthIn(await textOnServer(killable.url, id)));
      await saved();
      expect(lengthIn(await textOnServer(killable.url, id))).toBe(second);
    }
    // Every edit is a step of its own that can be undone.
    for (let i = 0; i < 8; i++) await press('Undo');
    await saved();
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
  });

  test('a browser that is killed too keeps its last edits and brings them when it comes back', async () => {
    const id = await openProjectOf(page, killable.url);
    const url = page.url();
    await takeTable(page);
    await saved();
    await page.route('**/steps', (route) => route.abort());
    await setLength(page, '2.7 m');
    await page.locator('[data-safety="kept"]').waitFor();
    // The page vanishes without any chance to say goodbye.
    await page.close({ runBeforeUnload: false });
    expect(lengthIn(await textOnServer(killable.url, id))).not.toBe('2.7 m');
    page = await newPage();
    await page.goto(url);
    await page.locator('.plan .thing.table').first().waitFor();
    await saved();
    await poll(async () => lengthIn(await textOnServer(killable.url, id))).toBe('2.7 m');
  });
});
