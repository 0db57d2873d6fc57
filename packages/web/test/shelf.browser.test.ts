import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { type RunningServer, startServer } from '../../server/src/index.js';
import { repositoryOptions } from '../../server/test/options.js';
import { launch, openProjectOf, violations } from './page.js';

const web = fileURLToPath(new URL('../', import.meta.url));

let browser: Browser;
let server: RunningServer;
let context: BrowserContext;
let page: Page;
let faults: string[];

beforeAll(async () => {
  browser = await launch();
}, 120_000);

afterAll(() => browser?.close());

beforeEach(async () => {
  server = await startServer(repositoryOptions({ webRoot: `${web}dist` }));
  await begin();
  return async () => {
    await context.close();
    await server.close();
  };
});

async function begin(colorScheme: 'light' | 'dark' = 'light'): Promise<void> {
  context = await browser.newContext({
    locale: 'en-GB',
    viewport: { width: 1280, height: 800 },
    reducedMotion: 'reduce',
    colorScheme,
  });
  page = await context.newPage();
  page.setDefaultTimeout(20_000);
  faults = [];
  page.on('pageerror', (error) => faults.push(String(error)));
}

const poll = <T>(read: () => T) => expect.poll(read, { timeout: 20_000 });
const dialog = () => page.locator('dialog[open]');
const press = (name: string) => page.getByRole('button', { name, exact: true }).first().click();
const pressIn = (name: string | RegExp) => dialog().getByRole('button', { name, exact: true }).click();
const openLeaf = async (id: string) => {
  await press('Schedules');
  await page.getByLabel('Schedule', { exact: true }).selectOption(id);
};

/** Brings a file in from the leaf that is open, and waits for the shelf's answer. */
async function bring(name: string, text: string, because = 'our site'): Promise<string> {
  await press('Bring a file');
  await dialog()
    .getByLabel('File', { exact: true })
    .setInputFiles({ name, mimeType: 'text/yaml', buffer: Buffer.from(text) });
  await dialog().getByLabel('Why it is brought in').fill(because);
  await pressIn('Put it on the shelf');
  const answer = dialog().getByRole('status');
  await poll(() => answer.textContent()).not.toBe('');
  return (await answer.textContent()) ?? '';
}

async function saved(how: () => Promise<void>): Promise<string> {
  const download = page.waitForEvent('download');
  await how();
  return readFileSync(await (await download).path(), 'utf8');
}

const catalogueText = (items: string) => `cloche: 1
catalogue:
  group: offers of a test
  invented: true
  priceDate: 2026-11-02
  priceBasis: invented for a test
items:
${items}`;
const item = (id: string, price: string) => `  - id: ${id}
    kind: end stop
    name: Invented ${id}
    partNumber: T-${id}
    price: ${price}
    mass: 10 g
    system: invented
    length: 30 mm
`;
const inForce = async (kind: 'catalogue' | 'rules') =>
  JSON.stringify(await (await fetch(new URL(`api/${kind}`, server.url))).json());

describe('a catalogue file', () => {
  const text = catalogueText(item('test-clip', '1.50 EUR') + item('test-clamp', '2.50 EUR'));

  test('that is accepted is shown, used by the open project, and given back as it was', async () => {
    await openProjectOf(page, server.url);
    await openLeaf('catalogue');
    expect(await bring('offers (1).yaml', text)).toBe('It is on the shelf and in force.');
    await pressIn('Close');
    await page.getByRole('searchbox', { name: 'Look for' }).fill('test-clip');
    await page.locator('.catalogue-list button').click();
    await page.getByRole('heading', { name: 'Invented test-clip' }).waitFor();
    expect(await saved(() => press('Save as a file'))).toBe(text);
    // The project may price what was brought: its schedule knows the item by its name.
    await openLeaf('prices');
    const cell = (column: number) => page.locator(`[role=row][aria-rowindex="2"] [aria-colindex="${column}"]`);
    await cell(1).focus();
    await page.keyboard.type('Invented test-clip');
    await page.keyboard.press('Enter');
    await poll(() => cell(1).textContent()).toBe('test-clip');
    expect(faults).toEqual([]);
  });

  test('that is wrong is refused with every problem and its place, and nothing has changed', async () => {
    await openProjectOf(page, server.url);
    await openLeaf('catalogue');
    const before = await inForce('catalogue');
    const wrong = catalogueText(
      item('test-clip', '1.50 EUR').replace('10 g', '10') +
        item('test-clamp', '2.50 EUR').replace('end stop', 'gadget'),
    );
    const answer = await bring('offers.yaml', wrong);
    // The mass stands in line 13, the kind of the second item in line 17.
    expect(answer).toContain('The shelf did not take it.');
    expect(answer).toMatch(/offers\.yaml, line 13: .*unit/);
    expect(answer).toMatch(/offers\.yaml, line 17: "gadget" is no kind of part\./);
    await pressIn('Leave it');
    expect(await inForce('catalogue')).toBe(before);
  });
});

describe('a file of site rules', () => {
  const eu = () => repositoryOptions({ webRoot: '' }).rulesFiles['eu']!;
  const wider = () => eu().replace(/(way\.clear-width:[\s\S]*?value: )[^,}\n]+/, '$11.37 m');

  test('that is accepted holds for the open project at once, and is given back as it was', async () => {
    await openProjectOf(page, server.url);
    await openLeaf('rules');
    const row = page.locator('[data-rule="way.clear-width"] .figure');
    await row.waitFor();
    expect(await row.textContent()).not.toContain('1.37 m');
    const before = await page.locator('[data-rules]').getAttribute('data-rules');
    const revision = await page.locator('[data-revision]').getAttribute('data-revision');
    expect(await bring('eu.yaml', wider())).toBe('It is on the shelf and in force.');
    await pressIn('Close');
    await poll(() => row.textContent()).toContain('1.37 m');
    await poll(() => page.locator('[data-rules]').getAttribute('data-rules')).not.toBe(before);
    // The name of the state is a hash of all that it was computed from.
    await poll(() => page.locator('[data-revision]').getAttribute('data-revision')).not.toBe(revision);
    expect(await saved(() => press('Save as a file'))).toBe(wider());
  });

  test('needs a reason, and names all that is missing', async () => {
    await openProjectOf(page, server.url);
    await openLeaf('rules');
    expect(await bring('eu.yaml', eu(), ' ')).toContain('Say why');
    await pressIn('Leave it');
    const answer = await bring('eu.yaml', 'cloche: 1\nprofile: { id: eu, title: Ours }\nrules: {}\n');
    expect(answer).toContain('jurisdiction is missing');
    expect(answer).toContain('caution is missing');
    expect((await inForce('rules')).includes('Ours')).toBe(false);
  });
});

describe('the versions on the shelf', () => {
  const put = async (name: string, text: string, because: string, file: string) => {
    const response = await fetch(new URL(`api/shelf/catalogue/${name}`, server.url), {
      method: 'PUT',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ text, because, file }),
    });
    expect(response.status).toBe(200);
  };
  const file = () => dialog().locator('[data-file="track.yaml"]');
  const heads = () => file().locator('.versions > ol > li .head .name').allTextContents();
  const shipped = () => repositoryOptions({ webRoot: '' }).catalogueFiles.find((f) => f.name === 'track.yaml')!.text;
  const more = () => `${shipped().trimEnd()}\n${item('test-clip', '1.50 EUR')}`;

  const open = async () => {
    await put('track.yaml', more(), 'one clip more', 'offer-4711.yaml');
    await page.goto(`${server.url}#/`);
    await press('Shelf');
    await file().locator('summary').first().click();
    await poll(() => file().locator('.counts').textContent()).toContain('1 item added.');
  };

  test('tell when, by what file, why, and what each changed', async () => {
    await open();
    expect(await heads()).toEqual(['offer-4711.yaml', 'What was shipped']);
    const newest = file().locator('.versions > ol > li').first();
    expect(await newest.locator('time').textContent()).toMatch(/\d{1,2} \w{3,4} \d{4}/);
    expect(await newest.textContent()).toContain('because one clip more');
    expect(await newest.textContent()).toContain('in force');
    await file().locator('.counts summary').click();
    expect(await file().locator('.counts dd').textContent()).toBe('test-clip');
    expect(faults).toEqual([]);
  });

  test('lead back to what was shipped; the replaced one stays, and can be put in force again', async () => {
    const original = await inForce('catalogue');
    await open();
    const replaced = await inForce('catalogue');
    await pressIn('Back to what was shipped: track.yaml');
    await pressIn('Do it');
    expect(await file().locator('form').textContent()).toContain('Say why');
    await dialog().getByLabel('Why', { exact: true }).fill('offer withdrawn');
    await pressIn('Do it');
    await poll(heads).toEqual(['Went back to what was shipped', 'offer-4711.yaml', 'What was shipped']);
    expect(await inForce('catalogue')).toBe(original);
    expect(await saved(() => pressIn(/^Save as a file: offer-4711\.yaml, \d/))).toBe(more());
    await pressIn(/^Put in force again: offer-4711\.yaml, \d/);
    await dialog().getByLabel('Why', { exact: true }).fill('offer holds after all');
    await pressIn('Do it');
    await poll(async () => (await heads())[0]).toBe('offer-4711.yaml');
    expect(await inForce('catalogue')).toBe(replaced);
    await page.keyboard.press('Escape');
    await poll(() => dialog().count()).toBe(0);
  });

  test.each(['light', 'dark'] as const)('have no serious accessibility violation in %s', async (colorScheme) => {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    await open();
    await pressIn('Back to what was shipped: track.yaml');
    expect(await violations(page)).toEqual([]);
  });
});
