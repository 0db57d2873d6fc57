// npm run pictures (after npm run build): every screen of the built workbench as a picture in docs/, in both modes, and the sheet for fitters on a phone.
import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { startServer } from '../../server/src/index.js';
import { bundledPackWorker, repositoryOptions } from '../../server/test/options.js';
import { launch, openProjectOf, projectOf } from './page.js';
import { screens } from './screens.js';

const docs = fileURLToPath(new URL('../../../docs/screens/', import.meta.url));
const webRoot = fileURLToPath(new URL('../dist', import.meta.url));
mkdirSync(docs, { recursive: true });

const server = await startServer(repositoryOptions({ webRoot, packWorker: await bundledPackWorker() }));
const browser = await launch();
console.log(`${chromium.name()} ${browser.version()}`);

for (const mode of ['light', 'dark'] as const) {
  const look = { colorScheme: mode, locale: 'en-GB', reducedMotion: 'reduce' } as const;
  const context = await browser.newContext({ ...look, viewport: { width: 1280, height: 800 } });
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  await openProjectOf(page, server.url);
  for (const { name, open } of screens) {
    await open(page);
    await page.waitForTimeout(700);
    await page.screenshot({ path: `${docs}${name}-${mode}.png` });
  }
  await page.goto(`${server.url}/#/`);
  await page.locator('.small-sheets img').first().waitFor();
  await page.screenshot({ path: `${docs}projects-${mode}.png` });
  await context.close();

  const phone = await browser.newContext({
    ...look,
    viewport: { width: 390, height: 844 },
    isMobile: true,
    hasTouch: true,
  });
  const hand = await phone.newPage();
  await hand.goto(`${server.url}/#/fitting/${await projectOf(server.url, 'close-enclosure.yaml')}`);
  await hand.locator('.fitting .line input').first().check();
  await hand.screenshot({ path: `${docs}fitting-steps-${mode}.png` });
  await hand.getByRole('button', { name: 'Pieces' }).click();
  await hand.screenshot({ path: `${docs}fitting-pieces-${mode}.png` });
  await hand.getByRole('button', { name: 'Drawings' }).click();
  await hand.locator('.drawings img').nth(1).waitFor({ timeout: 60_000 });
  await hand.screenshot({ path: `${docs}fitting-drawings-${mode}.png` });
  await phone.close();
}
await browser.close();
await server.close();
