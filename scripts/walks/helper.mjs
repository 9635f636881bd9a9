// The walk of a helper with a phone, who has never seen it: comes by the picture of the join code, finds
// what goes where, notes it, is cut off from the laptop and comes back, and goes home.

const PATIENCE = 240_000;

/** Walks from the join code to the way home; `site` can be killed and started again. */
export async function helperThrough(page, shot, { address, code, site }) {
  const see = (name) => shot(page, `helper-${name}`, 'phone');
  const button = (name) => page.getByRole('button', { name, exact: true });
  const tab = (name) => page.getByRole('tab', { name, exact: true });
  const rest = (ms = 900) => page.waitForTimeout(ms);
  const top = async () => {
    await page.evaluate(() => scrollTo(0, 0));
    await rest(500);
  };
  const middle = async (number) => {
    const label = page.locator('.plan text').getByText(number, { exact: true }).first();
    const box = await label.boundingBox();
    return [box.x + box.width / 2, box.y + box.height / 2];
  };
  const tap = async (...numbers) => {
    await top();
    const spots = [];
    for (const number of numbers) spots.push(await middle(number));
    const [x, y] = [0, 1].map((k) => spots.reduce((sum, at) => sum + at[k], 0) / spots.length);
    await page.touchscreen.tap(x, y);
    await rest();
  };

  await page.goto(`${address}#join=${code('crew')}`);
  await page.locator('.plan text').first().waitFor({ timeout: PATIENCE });
  await rest(2000);
  await see('01-joined');
  await button('Say it').tap();
  await page.keyboard.type('Tove');
  await rest();
  await see('02-name');
  await button('Work out the order of work').tap();
  await page.locator('.raise-card').waitFor({ timeout: PATIENCE });
  await page.waitForFunction(() => !document.querySelector('progress'), undefined, {
    timeout: PATIENCE,
  });
  await tab('Next').evaluate((one) => one.scrollIntoView({ block: 'start' }));
  await rest();
  await see('03-next');
  await top();
  await see('04-what-goes-up');

  const up = await page.evaluate(() =>
    [...document.querySelectorAll('.plan text')]
      .filter(
        (text) =>
          /^\d-\d\d$/.test(text.textContent ?? '') &&
          Number(getComputedStyle(text).fontWeight) >= 600,
      )
      .map((text) => text.textContent),
  );
  const [first, second] = neighbours(up);
  await tap(first);
  await page.getByText('Which way round').scrollIntoViewIfNeeded();
  await page.getByText('Which way round').tap();
  await rest();
  await page
    .locator('.noting-choices')
    .first()
    .evaluate((one) => one.scrollIntoView({ block: 'start' }));
  await see('05-which-way-round');
  await tap(second);
  await see('06-in-place');
  await button('Seams').tap();
  await tap(first, second);
  await tap(first, second);
  await see('07-bolts');
  await button('Take back').tap();
  await rest();
  await see('08-taken-back');

  await tab('Note').tap();
  await tab('Note').evaluate((one) => one.scrollIntoView({ block: 'start' }));
  await page.locator('[role=tabpanel] .record-form button[type=submit]').tap();
  await rest();
  await see('09-signed-in');
  await button('Note, photo').tap();
  await page
    .getByLabel('What is to be known')
    .fill('Flange bent at the hub, bolts go in all the same.');
  const photo = { name: 'flange.png', mimeType: 'image/png', buffer: await page.screenshot() };
  await page.locator('.photo-add input').setInputFiles(photo);
  await page.getByText(/goes with the note/).waitFor();
  await page.getByText(/goes with the note/).scrollIntoViewIfNeeded();
  await see('10-photo');
  await page.locator('[role=tabpanel] .record-form button[type=submit]').tap();
  await rest();

  await site.kill();
  await button('Panels').tap();
  const third = up.find((number) => number !== first && number !== second);
  await tap(third);
  await page
    .locator('.site-strip')
    .getByText(/waits?/)
    .first()
    .waitFor({ timeout: PATIENCE });
  await see('11-cut-off');
  await site.start();
  await page.locator('.site-strip').getByText('On the laptop').waitFor({ timeout: PATIENCE });
  await see('12-back');

  for (const [look, name] of [
    ['dark', '13-dark'],
    ['outdoors', '14-outdoors'],
    ['light', null],
  ]) {
    await button('View').tap();
    await page.getByRole('radio', { name: look }).check();
    await button('Close').tap();
    await rest();
    if (name) await see(name);
  }

  await page.getByRole('link', { name: 'Papers' }).click();
  const book = page.locator('.paper-sets tr[data-set="crew-book"]');
  await book.locator('td.paper-count').filter({ hasText: /\d/ }).waitFor({ timeout: PATIENCE });
  await book.getByRole('button').click();
  await page.getByRole('region', { name: /^Crew book, page 1/ }).waitFor();
  await rest(2000);
  await see('15-crew-book');
  await page.getByRole('link', { name: 'Record' }).click();
  await tab('Note').tap();
  await button('Somebody in or out').tap();
  await button('Tove goes').tap();
  await tab('Day').tap();
  await tab('Day').evaluate((one) => one.scrollIntoView({ block: 'start' }));
  await rest();
  await see('16-home');
  return [first, second, third];
}

/** Two places of one course, one after the other. */
function neighbours(numbers) {
  const there = new Set(numbers);
  const next = (number) =>
    `${number.slice(0, 2)}${String(Number(number.slice(2)) + 1).padStart(2, '0')}`;
  const first = numbers.find((number) => there.has(next(number))) ?? numbers[0];
  return [first, next(first)];
}
