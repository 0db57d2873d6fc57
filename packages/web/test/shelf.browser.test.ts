import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { type RunningServer, startServer } from '../../server/src/index.js';
import { bundledArchiveWorker, repositoryOptions } from '../../server/test/options.js';
import { launch, openProjectOf, projectOf, violations } from './page.js';

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
  server = await startServer(repositoryOptions({ webRoot: `${web}dist`, archiveWorker: await bundledArchiveWorker() }));
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

const savedOnServer = () => page.locator('.cell.file [data-safety="saved"]').waitFor();

test('a project from elsewhere tells where the shelf differs, and brings its files when it is asked to', async () => {
  const id = await openProjectOf(page, server.url);
  const zip = Buffer.from(await (await fetch(new URL(`api/projects/${id}/export`, server.url))).arrayBuffer());
  const original = await inForce('rules');
  const eu = repositoryOptions({ webRoot: '' }).rulesFiles['eu']!;
  await fetch(new URL('api/shelf/rules/eu', server.url), {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ text: `# ours\n${eu}`, because: 'our site' }),
  });
  await page.goto(`${server.url}#/`);
  await page
    .locator('input[type="file"]')
    .setInputFiles({ name: 'project.zip', mimeType: 'application/zip', buffer: zip });
  await dialog().getByText('another text than here').waitFor();
  expect(await dialog().locator('.came-with .name').allTextContents()).toEqual(['eu']);
  expect(await violations(page)).toEqual([]);
  await pressIn('Put its file on the shelf');
  await dialog().getByText('Done.').waitFor();
  expect(await inForce('rules')).toBe(original);
  await pressIn('Close');
  expect(faults).toEqual([]);
});

test('the bin is emptied only after a question that names what is lost', async () => {
  const [gone, kept] = [
    await projectOf(server.url, 'close-enclosure.yaml'),
    await projectOf(server.url, 'three-tables.yaml'),
  ];
  await fetch(new URL(`api/projects/${gone}`, server.url), { method: 'DELETE' });
  await page.goto(`${server.url}#/`);
  await page.locator('.bin summary').click();
  await press('Empty the bin');
  expect(await dialog().locator('.came-with li').allTextContents()).toHaveLength(1);
  expect(await violations(page)).toEqual([]);
  await pressIn('Keep them');
  expect(await page.locator('.bin li').count()).toBe(1);
  await press('Empty the bin');
  await pressIn('Throw it away');
  await poll(() => page.locator('.chest-told').textContent()).toContain('1 project was thrown away.');
  expect(await page.locator('.bin').count()).toBe(0);
  expect((await fetch(new URL(`api/projects/${gone}`, server.url))).status).toBe(404);
  expect((await fetch(new URL(`api/projects/${kept}`, server.url))).status).toBe(200);
});

test('a revision tells its cost and verdicts, and differences are told by who decides', async () => {
  await openProjectOf(page, server.url);
  await savedOnServer();
  await page.locator('.index button', { hasText: 'Changes' }).click();
  await press('Name this revision');
  await page.getByLabel('Name', { exact: true }).fill('For the first review');
  await press('Keep it');
  const facts = page.locator('.revisions .facts');
  await facts.waitFor();
  await poll(() => facts.textContent()).toMatch(/\d+\.\d\d EUR/);
  await poll(() => facts.locator('.verdict-mark').count()).toBe(4);

  await press('Brief as text');
  const area = page.getByLabel('Brief as text', { exact: true }).last();
  const text = await area.inputValue();
  await area.fill(text.replace(/(id: table-1[\s\S]*?length: )[\d.]+ m/, '$12.2 m'));
  await savedOnServer();
  await poll(() => page.locator('.cell.revision .busy').textContent()).toBe('');
  await page.locator('.index button', { hasText: 'Changes' }).click();
  const lists = page.locator('.compare-lists');
  const choice = lists.locator('.deciders');
  await choice.waitFor();
  const folded = lists.locator('.finding-changes:not([open]) summary');
  const unfoldAll = async () => {
    for (let left = await folded.count(); left > 0; left--) await folded.first().click();
    await poll(() => folded.count()).toBe(0);
  };
  const words = choice.getByRole('button');
  // The lists stand once both states are checked; until then they may still grow.
  const told = async () => {
    await unfoldAll();
    return `everybody ${await lists.locator('[data-finding-change]').count()}`;
  };
  await poll(async () => (await told()) === (await words.first().textContent())).toBe(true);
  const one = await words.nth(1).textContent();
  const [, who, count] = /^(.*) (\d+)$/.exec(one!)!;
  await words.nth(1).click();
  await unfoldAll();
  await poll(() => lists.locator('[data-finding-change]').count()).toBe(Number(count));
  for (const subject of await lists.locator('[data-finding-change] .subject').allTextContents())
    expect(subject).toContain(`decided by ${who}`);
  expect(await violations(page)).toEqual([]);
});

test('what a project changed of an item is told on its part and on findings of what is made of it', async () => {
  await openProjectOf(page, server.url);
  await press('Brief as text');
  const area = page.getByLabel('Brief as text', { exact: true }).last();
  const text = await area.inputValue();
  await area.fill(text.replace(/^site:\n/m, amended));
  await press('Plan');
  await savedOnServer();
  await page.locator('.index button', { hasText: 'Parts' }).click();
  const part = page.locator('.part', { hasText: 'Profile, 40 x 80' }).first();
  await part.locator('button').first().click();
  const told = part.locator('.amended');
  await poll(() => told.textContent()).toContain('Price 10.20 EUR for one m, from offer 4711 of 2026-11-02.');
  expect(await told.textContent()).toContain('massPerLength is 3.95 kg/m in this project, because data sheet of 2026.');
  // A finding of the enclosure, whose frame is made of it.
  const note = page.locator('.note', { hasText: 'enclosure-1, asked for' }).first();
  await note.locator('button').first().click();
  await poll(() => note.locator('.amended-subject').textContent()).toContain('Profile, 40 x 80: massPerLength is 3.95');
  expect(faults).toEqual([]);
});

/** The head of the site with an offer and a changed figure. */
const amended = `site:
  prices:
    - { item: profile-40x80, price: 10.20 EUR, per: m, on: 2026-11-02, from: offer 4711 }
  changes:
    - { item: profile-40x80, field: massPerLength, value: 3.95 kg/m, because: data sheet of 2026 }
`;

test('single needs are pasted as a block of quantities, values and units', async () => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await openProjectOf(page, server.url);
  await openLeaf('needs');
  const row = page.locator('[role=row]', { hasText: 'Electrical supply: available' });
  await row.locator('[aria-colindex="2"]').click();
  await page.evaluate(() => navigator.clipboard.writeText('4100\tW\n230\tV'));
  await page.keyboard.press('Control+V');
  await poll(() => row.locator('[aria-colindex="2"]').textContent()).toBe('4100');
  await press('Brief as text');
  expect(await page.getByLabel('Brief as text', { exact: true }).last().inputValue()).toMatch(
    /electricalSupply:[\s\S]*available: 4100 W[\s\S]*voltage: 230 V/,
  );
  await openLeaf('needs');
  expect(await violations(page)).toEqual([]);
});
