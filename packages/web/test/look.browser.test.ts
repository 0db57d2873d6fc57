import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type RunningServer, startServer } from '../../server/src/index.js';
import { repositoryOptions } from '../../server/test/options.js';
import { launch, openProjectOf } from './page.js';

const webRoot = fileURLToPath(new URL('../dist', import.meta.url));

let server: RunningServer;
let browser: Browser;

beforeAll(async () => {
  server = await startServer(repositoryOptions({ webRoot }));
  browser = await launch();
}, 120_000);

afterAll(async () => {
  await browser?.close();
  await server?.close();
});

async function withPage(
  width: number,
  height: number,
  look: (page: Page) => Promise<void>,
  example = 'three-tables.yaml',
): Promise<void> {
  const context = await browser.newContext({
    locale: 'en-GB',
    viewport: { width, height },
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  await openProjectOf(page, server.url, example);
  await page.locator('.labels .name').first().waitFor();
  await look(page);
  await context.close();
}

const boxOf = async (page: Page, selector: string) => (await page.locator(selector).first().boundingBox())!;

const screens = [
  [1280, 800],
  [1920, 1080],
  [3840, 2160],
] as const;

test.each(screens)('the legend of every overlay leaves the drawing free at %d by %d', async (width, height) => {
  await withPage(width, height, async (page) => {
    for (const key of ['l', 's', 'p', 'a', 'f', 'u', 'g', 'k', 'h']) {
      await page.keyboard.press(key);
      await page.locator('.overlay-legend').waitFor();
      await page.waitForFunction(() => {
        const legend = document.querySelector('.overlay-legend')!.getBoundingClientRect();
        return document.querySelector('.plan path.wall')!.getBoundingClientRect().bottom < legend.top;
      });
      const legend = await boxOf(page, '.overlay-legend');
      const wall = await boxOf(page, '.plan path.wall');
      const head = await boxOf(page, '.sheet-head');
      expect(wall.y + wall.height).toBeLessThan(legend.y);
      expect(wall.y).toBeGreaterThan(head.y + head.height);
      await page.keyboard.press(key);
      await page.locator('.overlay-legend').waitFor({ state: 'detached' });
    }
  });
});

test.each(screens)('a leaf that swings out of the room stays over the legend at %d by %d', async (width, height) => {
  const look = async (page: Page) => {
    await page.keyboard.press('k');
    await page.locator('.overlay-legend').waitFor();
    await page.waitForFunction(() => {
      const legend = document.querySelector('.overlay-legend')!.getBoundingClientRect();
      return document.querySelector('[data-thing="door-1"]')!.getBoundingClientRect().bottom < legend.top;
    });
    const leaf = await boxOf(page, '[data-thing="door-1"]');
    const legend = await boxOf(page, '.overlay-legend');
    expect(leaf.y + leaf.height).toBeLessThan(legend.y);
  };
  await withPage(width, height, look, 'amplifier-bay.yaml');
});

test('a plan that a person has moved stays where it is when a legend comes', async () => {
  await withPage(1280, 800, async (page) => {
    await page.locator('.sheet-drawing').focus();
    await page.keyboard.press('ArrowLeft');
    const before = await boxOf(page, '.plan path.wall');
    await page.keyboard.press('g');
    await page.locator('.overlay-values .value').first().waitFor();
    expect(await boxOf(page, '.plan path.wall')).toEqual(before);
  });
});

test.each(screens)('no name on the plan lies on another at %d by %d', async (width, height) => {
  await withPage(width, height, async (page) => {
    const boxes = await page.locator('.labels text').evaluateAll((all) =>
      all.map((text) => {
        const { left, right, top, bottom } = text.getBoundingClientRect();
        return { words: text.textContent, left, right, top, bottom };
      }),
    );
    expect(boxes.length).toBeGreaterThan(10);
    const meeting = boxes.flatMap((a, i) =>
      boxes
        .slice(i + 1)
        // The box of a text has room over its capitals and under its base line.
        .filter((b) => a.left < b.right && b.left < a.right && a.top + 4 < b.bottom && b.top + 4 < a.bottom)
        .map((b) => `${a.words} on ${b.words}`),
    );
    expect(meeting).toEqual([]);
  });
});

test('the name of a thing without a name on the plan stands beside the pointer, and goes with it', async () => {
  await withPage(1280, 800, async (page) => {
    const column = await boxOf(page, '.plan [data-thing="column-1"]');
    await page.mouse.move(column.x + column.width / 2, column.y + column.height / 2);
    await page.locator('.hover-name').waitFor();
    expect(await page.locator('.hover-name').textContent()).toContain('column-1');
    await page.mouse.move(column.x + column.width / 2, column.y - 100);
    await page.locator('.hover-name').waitFor({ state: 'detached' });
  });
});

test('the name of the project is read whole in the title block of a small screen', async () => {
  await withPage(1280, 800, async (page) => {
    const cut = await page.locator('.title-block h1').evaluate((h) => h.scrollHeight > h.clientHeight + 1);
    expect(cut).toBe(false);
  });
});

test('letters are larger on a large screen, on the plan as well', async () => {
  const heights: number[] = [];
  for (const [width, height] of [screens[1], screens[2]]) {
    await withPage(width, height, async (page) => {
      heights.push((await boxOf(page, '.labels .name')).height);
    });
  }
  expect(heights[1]! / heights[0]!).toBeGreaterThan(1.3);
});
