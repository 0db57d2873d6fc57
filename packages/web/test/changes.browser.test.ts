import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type RunningServer, startServer } from '../../server/src/index.js';
import { bundledPackWorker, repositoryOptions } from '../../server/test/options.js';
import { launch, openProjectOf } from './page.js';

const web = fileURLToPath(new URL('../', import.meta.url));
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const example = readFileSync(new URL('../../../examples/three-tables.yaml', import.meta.url), 'utf8');

/** What becomes of the example: a table to the north, too near to the next; another to the south; a stop elsewhere; a cover gone. */
const edited = example
  .replace('at: [2.1 m, 1.55 m]', 'at: [2.1 m, 1.65 m]')
  .replace('at: [7.6 m, 3.6 m]', 'at: [7.6 m, 3.4 m]')
  .replace('id: stop-1, at: [8.9 m', 'id: stop-9, at: [6.9 m')
  .replace('    - { id: cover-1, over: window-1, item: cover-blackout-large }\n', '')
  .replace('  covers:\n', '')
  .replace(', cover-1]', ']');

/** Conditions are waited for as long as a busy machine needs. */
const eventually = <T>(of: () => Promise<T>) => expect.poll(of, { timeout: 20_000 });

let server: RunningServer;
let browser: Browser;

beforeAll(async () => {
  server = await startServer(repositoryOptions({ webRoot: `${web}dist`, packWorker: await bundledPackWorker() }));
  browser = await launch();
}, 120_000);

afterAll(async () => {
  await browser?.close();
  await server?.close();
});

interface Opened {
  readonly page: Page;
  readonly faults: string[];
}

/** The workbench with the example opened. */
async function opened(
  look: { readonly colorScheme?: 'light' | 'dark'; readonly width?: number } = {},
): Promise<Opened> {
  const context = await browser.newContext({
    locale: 'en-GB',
    viewport: { width: look.width ?? 1280, height: 800 },
    colorScheme: look.colorScheme ?? 'light',
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text());
  });
  await openProjectOf(page, server.url, 'three-tables.yaml');
  return { page, faults };
}

const step = (page: Page, name: string) => page.locator('.index button', { hasText: name }).click();

async function write(page: Page, text: string): Promise<void> {
  await page.getByRole('button', { name: 'Brief as text', exact: true }).click();
  await page.locator('.brief-text textarea').fill(text);
}

/** The example, edited, with its comparison on the sheet. */
async function compared(look: Parameters<typeof opened>[0] = {}): Promise<Opened> {
  const all = await opened(look);
  await write(all.page, edited);
  await step(all.page, 'Changes');
  await all.page.locator('[data-change="table-1"]').waitFor();
  return all;
}

async function violations(page: Page): Promise<string[]> {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    type Axe = { run(): Promise<{ violations: { id: string; nodes: { html: string; failureSummary: string }[] }[] }> };
    const { violations: found } = await (globalThis as unknown as { axe: Axe }).axe.run();
    return found.map((v) => `${v.id}: ${v.nodes[0]?.html} ${v.nodes[0]?.failureSummary}`);
  });
}

/** Parts of the sheet whose content is wider than they are. */
const cutOff = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('.changes, .compare-lists, .compare-summary, .compare-choice')]
      .filter((e) => e.scrollWidth > e.clientWidth)
      .map((e) => e.className),
  );

describe('an edited brief beside the one that was opened', () => {
  let shared: Opened;
  let page: Page;
  beforeAll(async () => {
    shared = await compared();
    page = shared.page;
  });
  afterAll(() => page?.context().close());

  test('draws both states and tells moves with length and direction', async () => {
    const states = (id: string) =>
      page
        .locator(`.compare-drawing [data-thing="${id}"]`)
        .evaluateAll((all) => all.map((e) => e.getAttribute('data-state')));
    expect(await states('table-1')).toEqual(['was', 'now']);
    expect(await states('table-2')).toEqual(['same']);
    expect([await states('stop-1'), await states('stop-9')]).toEqual([['removed'], ['added']]);
    expect(await page.locator('[data-arrow]').count()).toBeGreaterThanOrEqual(2);
    expect(await page.locator('.compare-drawing .length').allTextContents()).toEqual(
      expect.arrayContaining(['100 mm', '200 mm']),
    );
    const row = page.locator('[data-change="table-1"]');
    expect(await row.textContent()).toContain('moved 100 mm north');
    expect(await row.textContent()).toContain('Along with it: Microscope, Fibre-coupled diode, Scanner');
    expect(shared.faults).toEqual([]);
  });

  test('lists what is worse with its verdicts, and the cost of what is gone', async () => {
    const worse = page.locator('[data-direction="worse"]');
    const access = worse.locator('[data-finding-change="room/access/table-1/north"]');
    expect(await access.locator('svg title').allTextContents()).toEqual(['attention', 'fails']);
    expect(await access.locator('.utilisations').textContent()).toContain('0.98 \u2192 1.10');
    await page.getByText('Something stands in the way that did not before.').waitFor();
    // The catalogue prices the cover at 310.00 EUR.
    const cover = page.locator('.compare-parts tr', { hasText: 'Cover, blackout roller' });
    expect(await cover.textContent()).toContain('\u2212310.00 EUR');
  });

  test('opens the calculation of a finding in the margin', async () => {
    await page.locator('[data-finding-change="room/access/table-1/north"] button').click();
    await page.locator('.note.open[data-finding="room/access/table-1/north"] .calculation').waitFor();
  });

  test('read from the other side, what was worse is better', async () => {
    const count = (direction: string) => page.locator(`[data-direction="${direction}"] > ul > li`).count();
    const worse = await count('worse');
    expect(worse).toBeGreaterThan(1);
    await page.getByRole('button', { name: 'Turn round' }).click();
    await eventually(() => count('better')).toBe(worse);
    expect(await page.locator('[data-change="table-1"]').textContent()).toContain('moved 100 mm south');
    expect(await page.locator('.compare-drawing [data-thing="stop-1"]').getAttribute('data-state')).toBe('added');
  });

  test('shows a thing of the list in the plan, by keyboard too', async () => {
    await page.locator('[data-change="table-3"] button').focus();
    await page.locator('.compare-drawing .shape.pointed[data-thing="table-3"]').first().waitFor();
    await page.keyboard.press('Tab');
    await eventually(() => page.locator('.shape.pointed[data-thing="table-3"]').count()).toBe(0);
  });

  test('is scaled and moved by keys and by its buttons', async () => {
    const matrix = () => page.locator('.compare-drawing > svg > g > g[transform^="matrix"]').getAttribute('transform');
    const whole = await matrix();
    await page.locator('.compare-drawing > svg').focus();
    await page.keyboard.press('+');
    await eventually(matrix).not.toBe(whole);
    const closer = await matrix();
    await page.keyboard.press('ArrowLeft');
    await eventually(matrix).not.toBe(closer);
    await page.getByRole('button', { name: 'Whole room', exact: true }).click();
    await eventually(matrix).toBe(whole);
  });
});

describe('the sheet of changes', () => {
  test('says that nothing differs while nothing was edited', async () => {
    const { page, faults } = await opened();
    await step(page, 'Changes');
    await page.getByText('Nothing differs between these two states.').waitFor();
    expect(faults).toEqual([]);
    await page.context().close();
  });

  test('a state that cannot be read says so with what is wrong, and the other stays', async () => {
    const { page } = await opened();
    await write(page, example.replace('height: 3.1 m', 'height: 3.1'));
    await step(page, 'Changes');
    const told = page.locator('.unreadable');
    await told.waitFor();
    expect(await told.textContent()).toContain('The state "as it stands now" cannot be read.');
    expect(await told.textContent()).toContain('bare number');
    await page.context().close();
  });

  test('makes way for the other views, and for the plan in other steps', async () => {
    const { page } = await compared();
    await page.getByRole('button', { name: 'Plan', exact: true }).click();
    await page.locator('.plan .thing.table').nth(2).waitFor();
    await page.getByRole('button', { name: 'Differences', exact: true }).click();
    await page.locator('[data-change="table-1"]').waitFor();
    await step(page, 'Layout');
    await page.locator('.plan .thing.table').nth(2).waitFor();
    expect(await page.getByRole('button', { name: 'Differences', exact: true }).count()).toBe(0);
    await page.context().close();
  });

  test('follows an undo', async () => {
    const { page } = await compared();
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await page.getByText('Nothing differs between these two states.').waitFor();
    expect(await page.locator('.compare-sheet').count()).toBe(0);
    await page.context().close();
  });

  test.each([
    ['light', 1280],
    ['dark', 1280],
    ['light', 1920],
    ['dark', 700],
  ] as const)('has no violations of axe-core and nothing cut off sideways, %s at %i', async (colorScheme, width) => {
    const { page } = await compared({ colorScheme, width });
    await page.locator('.finding-changes:not([open]) > summary').evaluateAll((all) => {
      for (const summary of all) (summary as HTMLElement).click();
    });
    await page.locator('[data-direction="basis"] li').first().waitFor();
    expect(await violations(page)).toEqual([]);
    expect(await cutOff(page)).toEqual([]);
    await page.context().close();
  });
});
