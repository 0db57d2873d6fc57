import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright-core';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

export const launch = (): Promise<Browser> =>
  chromium.launch({
    executablePath: process.env['CHROMIUM'] ?? '/usr/bin/chromium',
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--use-gl=angle',
      '--use-angle=swiftshader',
      '--enable-unsafe-swiftshader',
      '--disable-background-networking',
      '--no-first-run',
    ],
  });

const examples = fileURLToPath(new URL('../../../examples/', import.meta.url));

/** A new project of an example on a server, as the list of projects would make it; its id. */
export async function projectOf(url: string, example: string): Promise<string> {
  const response = await fetch(`${url.replace(/\/$/, '')}/api/projects`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ text: readFileSync(`${examples}${example}`, 'utf8') }),
  });
  return ((await response.json()) as { readonly id: string }).id;
}

/** Opens a new project of an example in a page, and waits until its plan is drawn. */
export async function openProjectOf(page: Page, url: string, example = 'close-enclosure.yaml'): Promise<string> {
  const id = await projectOf(url, example);
  await page.goto(`${url.replace(/\/$/, '')}/#/project/${id}/survey`);
  await page.locator(`.paper[data-project="${id}"] .plan .thing.table`).first().waitFor();
  return id;
}

/** Serious and critical violations of axe-core, as one line each. */
export async function violations(page: Page): Promise<string[]> {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    type Axe = {
      run(): Promise<{
        violations: { id: string; impact: string; nodes: { html: string; failureSummary: string }[] }[];
      }>;
    };
    const { violations: found } = await (globalThis as unknown as { axe: Axe }).axe.run();
    return found
      .filter((v) => v.impact === 'serious' || v.impact === 'critical')
      .map((v) => `${v.id}: ${v.nodes[0]?.html} ${v.nodes[0]?.failureSummary}`);
  });
}
