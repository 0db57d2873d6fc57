import type { Page } from 'playwright-core';

/** A screen of the workbench, and how a person comes to it from an opened project. */
export interface Screen {
  readonly name: string;
  readonly open: (page: Page) => Promise<unknown>;
}

const step = (page: Page, title: string) => page.locator('.index button', { hasText: title }).click();
const view = (page: Page, name: string) => page.locator('.views').getByRole('button', { name, exact: true }).click();

const steps = ['Survey', 'Needs', 'Layout', 'Checks', 'Parts', 'Proving'].map(
  (title): Screen => ({
    name: title.toLowerCase(),
    open: async (page) => {
      await step(page, title);
      await view(page, 'Plan');
      await page.locator('.plan .thing.table').first().waitFor();
    },
  }),
);

const onSheets =
  (title: string, drawn: string): Screen['open'] =>
  async (page) => {
    await step(page, 'Sheets');
    await page.locator('.sheet-list').getByRole('button', { name: title, exact: true }).click();
    // Pages are drawn when they come into view, on a narrow screen under what is chosen.
    await page.locator('#middle').scrollIntoViewIfNeeded();
    await page.locator(drawn).first().waitFor();
  };

const schedule =
  (name: string): Screen['open'] =>
  async (page) => {
    await step(page, 'Needs');
    await view(page, 'Schedules');
    await page.locator('.schedule-picker').selectOption({ label: name });
    await page.locator('.schedule').waitFor();
  };

/** Every screen with a project opened, in the order of the way through it. */
export const screens: readonly Screen[] = [
  ...steps,
  {
    name: 'table-in-hand',
    open: async (page) => {
      await step(page, 'Survey');
      await view(page, 'Plan');
      await page.locator('.plan .thing.table').first().focus();
      await page.keyboard.press('Enter');
      await page.locator('.thing-card').waitFor();
    },
  },
  {
    name: 'laid-over',
    open: async (page) => {
      await page.keyboard.press('Escape');
      await step(page, 'Checks');
      await page.keyboard.press('g');
      await page.locator('.overlay .laid').first().waitFor();
    },
  },
  {
    name: 'finding',
    open: async (page) => {
      await page.keyboard.press('g');
      await page
        .locator('.note', { has: page.locator('.utilisation') })
        .first()
        .getByRole('button')
        .first()
        .click();
      await page.locator('.calculation-step').first().waitFor();
    },
  },
  {
    name: 'space',
    open: async (page) => {
      await view(page, 'In space');
      await page.locator('.space canvas').waitFor();
    },
  },
  {
    name: 'text',
    open: async (page) => {
      await view(page, 'Brief as text');
      await page.locator('.brief-text textarea').waitFor();
    },
  },
  { name: 'schedule', open: schedule('Lasers') },
  { name: 'site-rules', open: schedule('Site rules') },
  { name: 'catalogue', open: schedule('Catalogue') },
  { name: 'sheets', open: onSheets('Plan', 'img.printed') },
  { name: 'report', open: onSheets('Calculation report with schedules', '.page[data-drawn]') },
  { name: 'parts-list', open: onSheets('Parts list', '.table-sheet td') },
  {
    name: 'changes',
    open: async (page) => {
      await step(page, 'Changes');
      await page.locator('.compare-choice').waitFor();
    },
  },
  {
    name: 'keys',
    open: async (page) => {
      await step(page, 'Survey');
      await page.keyboard.press('?');
      await page.locator('.key-list h2').waitFor();
    },
  },
];
