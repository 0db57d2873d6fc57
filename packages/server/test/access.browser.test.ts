import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Client, put, startClient } from './client.js';

const token = 'B'.repeat(43);
let client: Client;
let mail: Server;
let browser: Browser;
const port = () => new URL(client.server.url).port;

beforeAll(async () => {
  client = await startClient({ host: '0.0.0.0', token });
  // A page of another site, as a mail in a browser is one.
  mail = createServer((_, response) => {
    response.setHeader('content-type', 'text/html');
    response.end(`<a href="http://127.0.0.1:${port()}/?token=${token}">the link</a>`);
  });
  await new Promise<void>((up) => mail.listen(0, '127.0.0.1', up));
  browser = await chromium.launch({
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--no-first-run'],
  });
}, 60_000);
afterAll(async () => {
  await browser?.close();
  mail?.close();
  await client?.server.close();
});

test('a link clicked on a page of another site lets a browser in, under the clean address, to steps as they happen', async () => {
  const page = await (await browser.newContext()).newPage();
  await page.goto(`http://localhost:${(mail.address() as AddressInfo).port}/`);
  await page.getByText('the link').click();
  const home = `http://127.0.0.1:${port()}/`;
  await page.waitForURL(home);
  await page.waitForFunction(() => document.title === 'Cloche');
  const told = await page.evaluate(
    async (step) => {
      const json = { 'content-type': 'application/json' };
      const post = (path: string, body: unknown) =>
        fetch(path, { method: 'POST', headers: json, body: JSON.stringify(body) });
      const { id } = (await (await post('/api/projects', { text: 'ab' })).json()) as { id: string };
      const live = new EventSource(`/api/projects/${id}/live?window=w1`);
      const heard = new Promise<string>((resolve) => {
        live.addEventListener('steps', (event) => {
          if (event.lastEventId === '1') resolve(event.data);
          else post(`/api/projects/${id}/steps`, { base: 0, steps: [step] });
        });
      });
      const data = await heard;
      live.close();
      return JSON.parse(data) as { seq: number };
    },
    put(2, 'c'),
  );
  expect(told).toMatchObject({ seq: 1, steps: [{ window: 'w1', kind: 'edit' }] });
  // The address with the token is not kept.
  await page.goBack();
  expect(page.url()).not.toContain(token);
}, 60_000);

test('without the link a browser sees one sentence', async () => {
  const page = await (await browser.newContext()).newPage();
  const answer = await page.goto(`http://127.0.0.1:${port()}/`);
  expect(answer!.status()).toBe(401);
  expect(await page.textContent('body')).toContain('opens with the link');
});
