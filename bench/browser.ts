import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Browser, type CDPSession, chromium, type Page } from 'playwright-core';
import { build } from 'vite';
import { startServer } from '../packages/server/src/index.js';
import { repositoryOptions } from '../packages/server/test/options.js';
import { projectOf } from '../packages/web/test/page.js';

/**
 * The workbench in a real browser: how soon findings answer a drag, the longest task of the page meanwhile, the first useful
 * paint, and memory after many edits. Times stand as ratios to an empty round trip to a worker of the same page, and in
 * milliseconds beside.
 *
 *     npm run bench -- browser [example] [edits]
 */
const example = process.argv[3] ?? 'three-tables.yaml';
const edits = Number(process.argv[4] ?? 3000);
const web = fileURLToPath(new URL('../packages/web/', import.meta.url));
const flags = ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--no-first-run'];
/** Moves of one drag and how far apart they come [ms], as a hand moves at 60 pictures a second. */
const moves = 240;
const pause = 16;

const at = (sorted: readonly number[], share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;

const wait = (ms: number) => new Promise((done) => setTimeout(done, ms));

interface Record {
  readonly light: number[];
  readonly all: number[];
  readonly tasks: number[];
}

/** Watches the page from inside: what the workbench measures about its answers, and tasks of 50 ms and more. */
function watch(): void {
  const record: Record = { light: [], all: [], tasks: [] };
  (globalThis as unknown as { record: Record }).record = record;
  new PerformanceObserver((list) => {
    // Told in a task of its own, after the answer was drawn into the document.
    for (const entry of list.getEntries()) {
      const took = performance.now() - entry.startTime;
      if (entry.name === 'cloche light findings') record.light.push(took);
      if (entry.name === 'cloche all findings') record.all.push(took);
    }
  }).observe({ type: 'measure' });
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) record.tasks.push(entry.duration);
  }).observe({ type: 'longtask' });
}

/** Time of an empty question to a worker of the page [ms]: mean of many, because the clock of a page is coarse. */
const emptyRoundTrip = (page: Page): Promise<number> =>
  page.evaluate(async () => {
    const blob = new Blob(['onmessage = () => postMessage(0)'], { type: 'text/javascript' });
    const worker = new Worker(URL.createObjectURL(blob));
    let start = 0;
    // The first answer waits for the worker to start.
    for (let i = -1; i < 500; i++) {
      if (i === 0) start = performance.now();
      await new Promise((done) => {
        worker.onmessage = done;
        worker.postMessage(0);
      });
    }
    const took = performance.now() - start;
    worker.terminate();
    return took / 500;
  });

async function measure(page: Page, cdp: CDPSession, browser: Browser, url: string): Promise<void> {
  const id = await projectOf(url, example);
  const loadStart = performance.now();
  await page.goto(`${url.replace(/\/$/, '')}/#/project/${id}/survey`);
  await page.locator('.plan .thing.table').first().waitFor();
  const firstPaint = performance.now() - loadStart;
  const trip = await emptyRoundTrip(page);
  const told = (name: string, ms: number) =>
    console.log(`${name.padEnd(44)} ${ms.toFixed(1).padStart(8)} ms ${(ms / trip).toFixed(0).padStart(7)} x`);
  console.log(`empty round trip to a worker: ${trip.toFixed(3)} ms; everything in x is a ratio to it\n`);
  told('first useful paint (plan with tables)', firstPaint);

  await page.locator('.notes .note').first().waitFor();
  await settled(page);
  for (const round of ['cold', 'warm']) {
    await page.evaluate(watch);
    const before = await processorTime(browser);
    await drag(page);
    const spent = await processorTime(browser);
    const each = [...spent].map(([thread, ms]) => `${thread} ${((ms - (before.get(thread) ?? 0)) / moves).toFixed(1)}`);
    console.log(`${round} drag, processor time for each move [ms]: ${each.join(', ')}`);
    const { light, all, tasks } = await page.evaluate(() => (globalThis as unknown as { record: Record }).record);
    for (const [name, list] of [
      ['light findings', light],
      ['all findings', all],
    ] as const) {
      const sorted = [...list].sort((a, b) => a - b);
      told(`${round} drag, ${name}, p50 of ${list.length}`, at(sorted, 0.5));
      told(`${round} drag, ${name}, p95`, at(sorted, 0.95));
    }
    const longest = Math.max(0, ...tasks);
    console.log(`${round} drag, tasks of the page over 50 ms: ${tasks.length}, longest ${longest.toFixed(0)} ms`);
  }

  const before = await memory(cdp, browser);
  console.log(`\nmemory before the edits: ${before}`);
  await page.locator('.plan .thing.table').first().focus();
  await page.keyboard.press('Enter');
  const start = performance.now();
  for (let i = 0; i < edits; i++) await page.keyboard.press(i % 20 < 10 ? 'ArrowRight' : 'ArrowLeft');
  await settled(page);
  told(`${edits} edits by key, each`, (performance.now() - start) / Math.max(1, edits));
  console.log(`memory after ${edits} edits: ${await memory(cdp, browser)}`);
}

const settled = (page: Page) =>
  page.waitForFunction(() => document.querySelector('.cell.revision .busy')?.textContent === '');

/** A point of the last table that is covered by nothing else. */
const freePoint = (page: Page): Promise<readonly [number, number]> =>
  page.evaluate(() => {
    const table = [...document.querySelectorAll('.plan .thing.table')].at(-1)!;
    const box = table.querySelector('.body')!.getBoundingClientRect();
    for (let i = 1; i < 400; i++) {
      const [x, y] = [box.left + ((i % 20) / 20) * box.width, box.top + (Math.floor(i / 20) / 20) * box.height];
      if (document.elementFromPoint(x, y)?.closest('.thing') === table) return [x, y] as const;
    }
    throw new Error('nothing of the table can be touched');
  });

/** One long drag of the last table, back and forth. */
async function drag(page: Page): Promise<void> {
  const [x, y] = await freePoint(page);
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let i = 1; i <= moves; i++) {
    const there = i % 60 < 30 ? i % 30 : 30 - (i % 30);
    const due = wait(pause);
    await page.mouse.move(x + 5 + there, y + 5 + there / 2);
    await due;
  }
  await page.mouse.up();
  await settled(page);
  await page.getByRole('button', { name: 'Undo' }).click();
  await settled(page);
}

/**
 * Processor time of the threads that matter [ms]: unlike the times on the clock it hardly depends on what else the machine does.
 * Linux only; empty elsewhere.
 */
async function processorTime(browser: Browser): Promise<ReadonlyMap<string, number>> {
  const times = new Map<string, number>();
  const workers = ['worker that follows the hand', 'worker of the heavy checks'];
  for (const pid of await renderers(browser)) {
    const tasks = readdirSync(`/proc/${pid}/task`).sort((a, b) => Number(a) - Number(b));
    for (const task of tasks) {
      const stat = readFileSync(`/proc/${pid}/task/${task}/stat`, 'utf8');
      const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
      const name = task === String(pid) ? 'page' : stat.includes('(DedicatedWorker)') ? workers.shift() : undefined;
      // User and system time, in hundredths of a second.
      if (name) times.set(name, (times.get(name) ?? 0) + (Number(fields[11]) + Number(fields[12])) * 10);
    }
  }
  return times;
}

/** Processes that draw pages and are alive. */
async function renderers(browser: Browser): Promise<readonly number[]> {
  const root = await browser.newBrowserCDPSession();
  const { processInfo } = await root.send('SystemInfo.getProcessInfo');
  await root.detach();
  return processInfo.filter((p) => p.type === 'renderer' && existsSync(`/proc/${p.id}/status`)).map((p) => p.id);
}

/** Resident memory of the largest process that draws pages: page and workers together. */
async function memory(cdp: CDPSession, browser: Browser): Promise<string> {
  await cdp.send('HeapProfiler.collectGarbage');
  const { metrics } = await cdp.send('Performance.getMetrics');
  const heap = metrics.find((m) => m.name === 'JSHeapUsedSize')!.value / 1e6;
  const sizes = (await renderers(browser)).map(
    (pid) => Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1] ?? 0) / 1000,
  );
  return `${heap.toFixed(0)} MB heap of the page, ${Math.max(0, ...sizes).toFixed(0)} MB resident in all (page and workers)`;
}

await build({ configFile: `${web}vite.config.ts`, logLevel: 'error' });
const server = await startServer(repositoryOptions({ webRoot: `${web}dist` }));
const browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args: flags });
try {
  const context = await browser.newContext({
    viewport: { width: 1280, height: 800 },
    reducedMotion: 'reduce',
    bypassCSP: true,
  });
  const page = await context.newPage();
  const cdp = await context.newCDPSession(page);
  await cdp.send('Performance.enable');
  await measure(page, cdp, browser, server.url);
} finally {
  await browser.close();
  await server.close();
}
