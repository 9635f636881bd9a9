// What can't be read, reached or touched on the page as it stands, in every scheme.

import type { Page } from 'playwright-core';
import { accessFaults } from './access.ts';
import { tooSmall, tooWide } from './sizes.ts';
import { type Screen, screens } from './support.ts';
import { faultLines, textFaults } from './text-faults.ts';

const schemes = ['light', 'dark', 'outdoor'] as const;

/** Each fault once, with its schemes. With `roles`, of roles, names and colours too: they are the same
 * on every screen, and need be asked for on one. */
export async function unreadable(
  page: Page,
  where: string,
  screen: Screen,
  roles = screen === 'laptop',
): Promise<string[]> {
  const found = new Map<string, string[]>();
  for (const scheme of schemes) {
    await page.evaluate((one) => {
      document.documentElement.dataset.scheme = one;
    }, scheme);
    const lines = [
      ...(roles ? await accessFaults(page, scheme === 'light' ? 'all' : 'colours') : []),
      ...faultLines(await textFaults(page)),
      ...(await tooWide(page)),
      ...(screen === 'phone' ? await tooSmall(page) : []),
    ];
    for (const line of lines) found.set(line, [...(found.get(line) ?? []), scheme]);
  }
  return [...found].map(([line, inSchemes]) => `${where} (${inSchemes.join(', ')}): ${line}`);
}

/** The same on both screens, of a page opened on either. */
export async function unreadableAnywhere(page: Page, where: string): Promise<string[]> {
  const found: string[] = [];
  for (const screen of ['laptop', 'phone'] as const) {
    await page.setViewportSize(screens[screen].viewport);
    await page.waitForTimeout(300);
    found.push(...(await unreadable(page, `${where} on a ${screen}`, screen)));
  }
  return found;
}
