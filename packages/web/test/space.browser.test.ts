import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { type RunningServer, startServer } from '../../server/src/index.js';
import { repositoryOptions } from '../../server/test/options.js';
import { launch, projectOf } from './page.js';

const web = fileURLToPath(new URL('../', import.meta.url));
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

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
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text());
  });
  await openExample('close-enclosure.yaml');
  await page.getByRole('button', { name: 'In space' }).click();
  await page.locator('.space canvas[data-frame]').waitFor();
  return async () => {
    await context.close();
    expect(faults).toEqual([]);
  };
});

const openExample = async (name: string) => {
  const id = await projectOf(server.url, name);
  await page.goto(`${server.url}/#/project/${id}/survey`);
  await page.locator(`.paper[data-project="${id}"]`).waitFor();
  await page.locator('.plan .thing.table, .space canvas[data-frame]').first().waitFor();
};
const canvas = () => page.locator('.space canvas');
const tool = (name: string) => page.locator('.space-tools .row').getByRole('button', { name, exact: true }).click();
const press = (name: string) => page.locator('.space').getByRole('button', { name, exact: true }).click();
const drawn = async (what: 'calls' | 'triangles' | 'lines' | 'frame') =>
  Number(await canvas().getAttribute(`data-${what}`));
/** What the drawing says of itself. */
const described = () =>
  canvas().evaluate((c) => document.getElementById(c.getAttribute('aria-describedby') ?? '')?.textContent ?? '');
/** Waits until something else is drawn than before. */
const drawnAnew = async (what: 'triangles' | 'lines' | 'frame', before: number) =>
  expect.poll(() => drawn(what), { timeout: 10_000 }).not.toBe(before);
const eyes = () => page.getByRole('textbox', { name: 'eye height' });
const slider = () => page.locator('.slip input[type=range]');
const things = () => page.getByRole('listbox', { name: /^Things/ });
const chosen = () =>
  page
    .getByRole('listbox', { name: /^Things/ })
    .locator('[aria-selected=true]')
    .allTextContents();

/** Share of the picture that is not paper. */
const inked = async (): Promise<number> => {
  const picture = await canvas().screenshot();
  return page.evaluate(
    async (bytes) => {
      const image = await createImageBitmap(new Blob([new Uint8Array(bytes)], { type: 'image/png' }));
      const copy = new OffscreenCanvas(image.width, image.height).getContext('2d')!;
      copy.drawImage(image, 0, 0);
      const { data } = copy.getImageData(0, 0, image.width, image.height);
      let other = 0;
      for (let i = 0; i < data.length; i += 4)
        if (Math.abs(data[i]! - data[0]!) + Math.abs(data[i + 1]! - data[1]!) + Math.abs(data[i + 2]! - data[2]!) > 12)
          other++;
      return other / (data.length / 4);
    },
    [...picture],
  );
};

/** Every violation of axe-core, as one line each. */
async function violations(): Promise<string[]> {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    type Found = { id: string; nodes: { html: string; failureSummary: string }[] };
    type Axe = { run(within: object): Promise<{ violations: Found[] }> };
    const { violations: found } = await (globalThis as unknown as { axe: Axe }).axe.run({ include: '.space' });
    return found.map((v) => `${v.id}: ${v.nodes[0]?.html} ${v.nodes[0]?.failureSummary}`);
  });
}

describe('the space', () => {
  test('is drawn, from every set view, in few draws', async () => {
    expect(await inked()).toBeGreaterThan(0.1);
    for (const look of [
      'from above',
      'from the south',
      'from the east',
      'from the north',
      'from the west',
      'from the corner',
    ]) {
      const before = await drawn('frame');
      await press(look);
      await drawnAnew('frame', before);
      expect(await inked(), look).toBeGreaterThan(0.05);
    }
    expect(await drawn('calls')).toBeLessThan(40);
  });

  test('draws nothing while nothing changes', async () => {
    await press('from above');
    const settled = async () => {
      const before = await drawn('frame');
      await page.evaluate(
        () =>
          new Promise<void>((done) =>
            requestAnimationFrame(() => requestAnimationFrame(() => requestAnimationFrame(() => done()))),
          ),
      );
      return (await drawn('frame')) === before;
    };
    await expect.poll(settled).toBe(true);
    expect(await settled()).toBe(true);
  });

  test('turns, moves and comes closer by keys', async () => {
    await canvas().focus();
    for (const key of ['ArrowLeft', 'ArrowUp', 'Shift+ArrowRight', '+', '-', '0']) {
      const before = await drawn('frame');
      await page.keyboard.press(key);
      await drawnAnew('frame', before);
    }
  });

  test('is cut open at most twice, and cuts are typed, dragged and stepped', async () => {
    const whole = await drawn('lines');
    await tool('Cut open');
    await press('Add a cut');
    await drawnAnew('lines', whole);
    expect(await described()).toContain('1 table, 1 enclosure');
    expect(await described()).toContain('Cut open in 1 plane.');
    const handle = page.getByRole('slider', { name: /^Cut 1/ });
    expect(await handle.getAttribute('aria-valuenow')).toBe('2250');
    const place = page.getByLabel('Cut 1, place from the south');
    await place.fill('1.5 m');
    await expect.poll(() => handle.getAttribute('aria-valuenow')).toBe('1500');
    await handle.focus();
    await page.keyboard.press('ArrowUp');
    await expect.poll(() => place.inputValue()).toBe('1510 mm');
    const box = (await handle.boundingBox())!;
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x - 60, box.y - 40, { steps: 4 });
    await page.mouse.up();
    await expect.poll(async () => Number(await handle.getAttribute('aria-valuenow'))).toBeGreaterThan(1560);
    await place.fill('40 m');
    expect(await page.locator('.slip .told.problem').textContent()).toMatch(/between/);
    await place.fill('2000');
    expect(await page.locator('.slip .told.problem').textContent()).toMatch(/unit/);
    expect(await place.getAttribute('aria-invalid')).toBe('true');
    await press('Add a cut');
    expect(await page.getByRole('slider', { name: /^Cut/ }).count()).toBe(2);
    expect(await page.getByRole('button', { name: 'Add a cut' }).count()).toBe(0);
    await page.locator('.slip').getByRole('button', { name: 'Take out' }).first().click();
    await expect.poll(() => page.getByRole('slider', { name: /^Cut/ }).count()).toBe(1);
  });

  test('a cut closes what it opens: where bodies are cut, faces are added', async () => {
    await tool('Cut open');
    await press('Add a cut');
    await press('from the south');
    const before = await drawn('triangles');
    await page.getByLabel('Cut 1, place from the south').fill('0.2 m');
    await drawnAnew('triangles', before);
    // Near the wall only walls are cut; through the enclosure far more faces are.
    expect(await drawn('triangles')).toBeLessThan(before);
  });

  test('is walked through at the height of eyes; walls stop, Escape leaves', async () => {
    await tool('Walk through');
    await page.locator('.slip').getByRole('button', { name: 'Walk through' }).click();
    const where = page.locator('.plan-corner figcaption');
    const [first] = [await where.textContent()];
    await page.keyboard.press('w');
    await expect.poll(() => where.textContent()).not.toBe(first);
    const turned = await where.textContent();
    for (let i = 0; i < 8; i++) await page.keyboard.press('ArrowLeft');
    await expect.poll(() => where.textContent()).not.toBe(turned);
    const fromSouth = async () =>
      Number(/(\d+) mm from the south/.exec((await where.textContent())!.replace(/\s(?=\d)/g, ''))![1]);
    for (let i = 0; i < 20; i++) await page.keyboard.press('a');
    for (let i = 0; i < 20; i++) await page.keyboard.press('s');
    // A body keeps its radius of 250 mm from the wall.
    expect(await fromSouth()).toBeGreaterThanOrEqual(249);
    await page.locator('.slip').getByRole('button', { name: 'seated' }).click();
    expect(await eyes().inputValue()).toBe('1200 mm');
    await eyes().fill('1.45 m');
    await eyes().fill('9 m');
    expect(await page.locator('.slip .told.problem').textContent()).toMatch(/above the floor/);
    await eyes().fill('1.5 m');
    // From anywhere, not only from the drawing.
    await page.keyboard.press('Escape');
    await where.waitFor({ state: 'detached' });
  });

  test('is pulled apart and put together', async () => {
    const before = await inked();
    await tool('Pull apart');
    await slider().fill('100');
    expect(await slider().getAttribute('aria-valuetext')).toBe('100 %');
    await expect.poll(inked).not.toBe(before);
    await press('Put together');
    expect(await slider().inputValue()).toBe('0');
  });

  test('is set up step by step, and says that the order is not assessed', async () => {
    const whole = await drawn('lines');
    await tool('Step by step');
    expect(await page.locator('.slip .caution').textContent()).toContain('not assessed');
    await slider().fill('1');
    await drawnAnew('lines', whole);
    const feet = await drawn('lines');
    expect(feet).toBeLessThan(whole);
    expect(await page.locator('.step-now').textContent()).toContain('Feet, Clean enclosure');
    await press('Next step');
    await drawnAnew('lines', feet);
    expect(await drawn('lines')).toBeGreaterThan(feet);
    expect(await page.locator('.step-now').textContent()).toContain('Posts');
    await press('Show everything');
    await expect.poll(() => drawn('lines')).toBe(whole);
  });

  test('leaves out what is not to be shown, and shows the ceiling when asked', async () => {
    await tool('Shown');
    const before = await drawn('lines');
    await page.getByRole('checkbox', { name: 'Ceiling' }).check();
    await drawnAnew('lines', before);
    expect(await drawn('lines')).toBeGreaterThan(before);
    await page.getByRole('checkbox', { name: 'Curtains' }).uncheck();
    await expect.poll(() => drawn('lines')).toBeLessThan(before);
  });

  test('what is chosen in the list or in the plan is in hand in the space, and the other way', async () => {
    await tool('Things');
    const plain = await drawn('triangles');
    await things().focus();
    await page.keyboard.press('ArrowDown');
    expect(await chosen()).toEqual(['Clock table']);
    await drawnAnew('triangles', plain);
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Plan', exact: true }).click();
    await page.locator('.plan .thing.table.selected').waitFor();
    await page.locator('.plan .thing.enclosure').focus();
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'In space' }).click();
    await expect.poll(chosen).toEqual(['Clean enclosure']);
    const pieces = page.getByRole('listbox', { name: /^Pieces of Clean enclosure/ });
    await pieces.focus();
    await page.keyboard.press('ArrowDown');
    await page.locator('.mark-label').first().waitFor({ state: 'attached' });
    expect(await pieces.locator('[aria-selected=true]').count()).toBe(1);
  });

  test('touching a body takes its thing in hand, touching nothing lets go', async () => {
    await tool('Things');
    await press('from above');
    const box = (await canvas().boundingBox())!;
    await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
    await expect.poll(chosen).toEqual(['Clean enclosure']);
    await page.mouse.click(box.x + 8, box.y + box.height - 8);
    await expect.poll(chosen).toEqual([]);
  });

  test('the subject of a note is drawn strong while the note is in focus', async () => {
    const plain = await drawn('triangles');
    await page.locator('.note > button', { hasText: 'enclosure-1' }).first().focus();
    await drawnAnew('triangles', plain);
  });

  test('another brief begins closed and whole', async () => {
    await tool('Cut open');
    await press('Add a cut');
    await openExample('three-tables.yaml');
    await expect.poll(() => page.getByRole('slider', { name: /^Cut/ }).count()).toBe(0);
    expect(await page.locator('.slip').count()).toBe(0);
  });

  test.each(['light', 'dark'] as const)('has no accessibility violation in %s', async (colorScheme) => {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    await tool('Things');
    await things().focus();
    await page.keyboard.press('End');
    await page.keyboard.press('Home');
    expect(await violations()).toEqual([]);
    for (const name of ['Cut open', 'Walk through', 'Pull apart', 'Step by step', 'Shown']) {
      await tool(name);
      expect(await violations(), name).toEqual([]);
    }
    await tool('Cut open');
    await press('Add a cut');
    expect(await violations()).toEqual([]);
    await tool('Walk through');
    await page.locator('.slip').getByRole('button', { name: 'Walk through' }).click();
    await page.locator('.plan-corner').waitFor();
    expect(await violations()).toEqual([]);
  });
});
