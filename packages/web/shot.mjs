import { chromium } from 'playwright-core';

const [, , name, scheme = 'light', w = '1280', h = '800', ...acts] = process.argv;
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
const p = await (
  await b.newContext({ viewport: { width: +w, height: +h }, colorScheme: scheme, reducedMotion: 'reduce' })
).newPage();
p.on('pageerror', (e) => console.log('ERR', e.message));
p.on('console', (m) => m.type() === 'error' && console.log('CON', m.text()));
await p.goto(process.env.URL || 'http://127.0.0.1:4210');
await p
  .locator(process.env.WAIT || '.plan .thing.table')
  .first()
  .waitFor({ timeout: 90000 });
for (const a of acts) {
  const [k, ...r] = a.split(':');
  const v = r.join(':');
  if (k === 'key') await p.keyboard.press(v);
  if (k === 'click') await p.locator(v).first().click();
  if (k === 'text') await p.getByText(v, { exact: true }).first().click();
  if (k === 'btn') await p.getByRole('button', { name: v }).first().click();
  if (k === 'ex') {
    await p.getByLabel('Choose an example').selectOption(v);
    await p.waitForTimeout(800);
  }
  if (k === 'wait') await p.waitForTimeout(+v);
  if (k === 'type') await p.keyboard.type(v);
  if (k === 'goto') {
    await p.goto(v);
  }
  if (k === 'shot') await p.screenshot({ path: `/tmp/me/${v}.png` });
}
await p.waitForTimeout(500);
await p.screenshot({ path: `/tmp/me/${name}.png` });
await b.close();
