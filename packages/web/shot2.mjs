import { chromium } from 'playwright-core';

const b = await chromium.launch({
  executablePath: '/usr/bin/chromium',
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
for (const scheme of ['light', 'dark']) {
  const c = await b.newContext({
    viewport: { width: 390, height: 844 },
    colorScheme: scheme,
    isMobile: true,
    hasTouch: true,
    deviceScaleFactor: 2,
  });
  const p = await c.newPage();
  await p.goto('http://127.0.0.1:4210/#/');
  const id = (await (await fetch('http://127.0.0.1:4210/api/projects')).json())[0].id;
  await p.goto('http://127.0.0.1:4210/#/fitting/' + id);
  await p.locator('.line').first().waitFor({ timeout: 90000 });
  await p.locator('.line input').first().check();
  await p.locator('.line input').nth(1).check();
  await p.screenshot({ path: `/tmp/me/ph-${scheme}-1.png` });
  await p.getByRole('button', { name: 'Pieces' }).click();
  await p.screenshot({ path: `/tmp/me/ph-${scheme}-2.png` });
  await p.getByRole('button', { name: 'Drawings' }).click();
  await p.locator('.drawings img').first().waitFor({ timeout: 60000 });
  await p.waitForTimeout(1000);
  await p.screenshot({ path: `/tmp/me/ph-${scheme}-3.png` });
  await c.close();
}
await b.close();
