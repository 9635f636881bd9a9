// The walk of the lead, at a laptop, with nothing but a spreadsheet: from an empty project to a shell whose
// crew can begin. Presses what a stranger would press, by the words that are on the screen.

import { askedNames, heapCsv, mistakes, ownNames } from './heap.mjs';

const PATIENCE = 240_000;

/** Walks as far as the site that others can join. */
export async function leadToSite(page, shot, { address, code }) {
  const see = (name) => shot(page, `lead-${name}`, 'laptop');
  const press = (name) => page.getByRole('button', { name, exact: true }).first().click();
  const tab = (name) => page.getByRole('tab', { name, exact: true }).click();
  const rest = (ms = 1200) => page.waitForTimeout(ms);
  const worked = () =>
    page.waitForFunction(() => !document.querySelector('progress'), undefined, {
      timeout: PATIENCE,
    });
  const type = async (label, text) => {
    await page.getByLabel(label).first().fill(text);
    await page.keyboard.press('Tab');
    await rest(300);
  };

  await page.goto(address);
  await page.locator('main .kinds-forming').waitFor();
  await rest();
  await see('01-first-screen');
  await press('Start my own pile');
  await page.getByText('Begin with any panel').waitFor();
  await rest();
  await putAway(page);
  await see('02-empty');
  await drop(page, heapCsv(ownNames));
  await page.getByText('heap.csv was not opened').waitFor();
  await see('03-own-headings');
  await putAway(page);
  await drop(page, heapCsv(askedNames));
  await page.getByText('One tag on two panels').waitFor();
  await putAway(page);
  await see('04-mistakes');

  await page.getByRole('button', { name: /^Put the unit right/ }).click();
  await rest();
  await page
    .getByRole('listitem')
    .filter({ hasText: `Panel ${mistakes.swapped}` })
    .getByRole('button')
    .click();
  await page.keyboard.press('Control+a');
  await page.keyboard.type(mistakes.again);
  await page.keyboard.press('Enter');
  await rest();
  await page.getByRole('button', { name: `Row ${mistakes.tagRow}, kind 2` }).click();
  await page.keyboard.press('Control+a');
  await page.keyboard.type(mistakes.tag);
  await page.keyboard.press('Enter');
  await page.getByText('60 readings of 60 panels, 2 kinds').waitFor();
  await rest();
  await see('05-mended');

  await press('What do they close into?');
  await press('Close the shell');
  await page.locator('[data-stage=found] canvas').waitFor();
  await rest(7000);
  await see('06-shape');
  await page.getByRole('button', { name: /^To the .*Places/ }).click();
  await page.locator('[data-place]').first().waitFor();
  await rest();
  await see('07-places');
  await page.getByRole('button', { name: /^Ways to stand/ }).click();
  await rest();
  await see('08-ways-to-stand');
  await page
    .locator('.candidate')
    .filter({ hasText: '40 places, flat base' })
    .getByRole('button')
    .click();
  await rest();
  await page.getByRole('combobox', { name: 'Find a place' }).fill('1-02');
  await page.keyboard.press('Enter');
  await rest();
  await see('09-chosen');

  await page.getByRole('link', { name: 'Pile' }).click();
  await type('name of the project', 'Meadow shell');
  await page.getByRole('link', { name: 'Ground' }).click();
  await page.getByLabel('Name of the site').waitFor();
  for (const [label, text] of [
    ['Name of the site', 'Lower meadow'],
    ['Design wind', '25 m/s'],
    ['Days that it stands', '3'],
    ['Panel mass', '10'],
  ])
    await type(label, text);
  await see('10-ground');
  await tab('Anchors');
  await page.getByLabel('Soil').selectOption({ label: 'loam' });
  await page.getByLabel('Sort of anchor').selectOption({ label: 'steel pickets' });
  await rest(2500);
  await see('11-pickets-refused');
  await page.getByLabel('Held by guys').check();
  await page.getByLabel('Stiff or dense').check();
  await page.getByLabel('Wet now').uncheck();
  await page.getByText(/^10 anchors/).waitFor();
  await see('12-anchors');
  await tab('Stages');
  await page.locator('.chart-stop[d^=M]').first().waitFor({ timeout: PATIENCE });
  await worked();
  await rest();
  await see('13-stages');

  await page.getByRole('link', { name: 'Raising' }).click();
  await page.locator('.raise-card').waitFor({ timeout: PATIENCE });
  await worked();
  await tab('Gear');
  await page.getByText('Platforms and trestles').click();
  await press('Add a platform');
  await page.getByText(/hands come to every hub/).waitFor({ timeout: PATIENCE });
  await worked();
  await see('14-gear');
  await tab('People');
  await page.getByLabel('Date', { exact: true }).fill('2026-12-05');
  await press('Add the day');
  for (const name of ['Ada', 'Bo', 'Cy', 'Tove']) {
    await page.getByLabel('Name', { exact: true }).fill(name);
    await press('Add');
    await rest(300);
  }
  for (const word of ['climbs', 'can lead a lift', 'comes for certain'])
    for (const box of await page.getByLabel(word).all()) await box.check();
  await rest();
  await worked();
  await tab('Days');
  await rest(9000);
  await worked();
  await see('15-days');
  await tab('Order');
  await press('Fix the order as it stands');
  await worked();
  await rest();
  await see('16-order');
  await tab('Stage');
  await rest();
  await see('17-raising');

  await page.getByRole('link', { name: 'Record' }).click();
  await tab('Laptop');
  await page.getByLabel('Join code').fill(code('lead'));
  await press('Join');
  await page.getByRole('button', { name: 'Put “Meadow shell” on the site' }).click();
  await page.getByText('Everything is kept there').waitFor();
  await page.locator('.plan text').first().waitFor();
  await tab('Laptop');
  await page.getByText('Show the join codes').click();
  await page
    .getByRole('button', { name: `Picture of the code ${code('crew')}` })
    .or(page.locator('button', { hasText: 'Picture' }).nth(1))
    .first()
    .click();
  await rest();
  await see('18-join-code');
}

/** After the helper has gone home: the rest of the panels, the papers. */
export async function leadToEnd(page, shot, numbers) {
  const see = (name) => shot(page, `lead-${name}`, 'laptop');
  await page.getByLabel('Your first name or initials').fill('Ada');
  for (const number of numbers) {
    const label = page.locator('.plan text').getByText(number, { exact: true }).first();
    const box = await label.boundingBox();
    await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
    await page.waitForTimeout(60);
  }
  await page.mouse.move(0, 0);
  await page.getByRole('tab', { name: 'Done', exact: true }).click();
  await page.waitForTimeout(1500);
  await see('19-standing');
  await page.getByRole('link', { name: 'Papers' }).click();
  const book = page.locator('.paper-sets tr[data-set="crew-book"]');
  await book.locator('td.paper-count').filter({ hasText: /\d/ }).waitFor({ timeout: PATIENCE });
  await book.getByRole('button').click();
  await page.getByRole('region', { name: /^Crew book, page 1/ }).waitFor();
  await page.waitForTimeout(2000);
  await see('20-papers');
}

async function putAway(page) {
  const close = page.locator('.notices').getByRole('button', { name: 'Close', exact: true });
  while ((await close.count()) > 0) await close.first().click();
}

async function drop(page, text) {
  const dataTransfer = await page.evaluateHandle((content) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([content], 'heap.csv'));
    return transfer;
  }, text);
  await page.dispatchEvent('body', 'drop', { dataTransfer });
}
