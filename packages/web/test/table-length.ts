import type { Page } from 'playwright-core';

/** The field for the length of the table in hand. */
export const lengthField = (page: Page) => page.locator('.thing-card').getByLabel('length', { exact: true });

/** Takes the first table in hand, by keyboard. */
export async function takeTable(page: Page): Promise<void> {
  await page.locator('.plan .thing.table').first().focus();
  await page.keyboard.press('Enter');
  await lengthField(page).waitFor();
}

export async function setLength(page: Page, value: string): Promise<void> {
  await lengthField(page).fill(value);
  await lengthField(page).blur();
}

/** The text of a project as a server has it. */
export const textOnServer = async (url: string, id: string): Promise<string> =>
  ((await (await fetch(new URL(`api/projects/${id}`, url))).json()) as { readonly text: string }).text;

/** Length of the table in a text of the close enclosure. */
export const lengthIn = (text: string): string | undefined => /id: table-1[\s\S]*?length: ([\d.]+ m)/.exec(text)?.[1];
