import { chromium } from 'playwright-core';
import { createServer } from './packages/server/dist/index.js';
const server = createServer({ root: process.cwd() + '/packages/app/dist' });
await server.listen({ host: '127.0.0.1', port: 0 });
const address = `http://localhost:${server.server.address().port}/`;
const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--enable-unsafe-swiftshader', '--use-angle=swiftshader'] });
const [sheet, sel, ...rest] = process.argv.slice(2);
for (const [n, o] of Object.entries({ laptop: { viewport: { width: 1440, height: 900 } }, phone: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true } })) for (const scheme of rest.length ? rest : ['light']) {
  const c = await browser.newContext(o); const p = await c.newPage();
  p.on('pageerror', e => console.log('ERR', e.message)); p.on('console', m => { if (m.type() === 'error') console.log('con', m.text()); });
  await p.addInitScript((s) => localStorage.setItem('shellraise-settings', JSON.stringify({ scheme: s, offlineTold: true })), scheme);
  const t = Date.now();
  await p.goto(address + '#' + sheet);
  await p.locator(sel).first().waitFor({ timeout: 120000 }).catch(e => console.log(n, e.message.slice(0, 200)));
  console.log(n, scheme, 'shown after', Date.now() - t);
  await p.waitForTimeout(2500);
  await p.screenshot({ path: `/tmp/shots/${sheet}-${n}-${scheme}.png` });
  if (n === 'phone') await p.screenshot({ path: `/tmp/shots/${sheet}-${n}-${scheme}-full.png`, fullPage: true });
  await c.close();
}
await browser.close(); await server.close();
