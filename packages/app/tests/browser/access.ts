// The accessibility check: axe-core's rules for WCAG 2.2 A and AA and its best practices, in the page.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** Violations of the page as it stands, one line a rule, with the first three of its elements. With
 * `what` colours, of the rules for contrast alone: nothing else depends on the scheme. */
export async function accessFaults(page: Page, what: 'all' | 'colours' = 'all'): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(source);
  return page.evaluate(async (asked) => {
    const { axe } = window as unknown as { axe: { run: (options: object) => Promise<Result> } };
    interface Result {
      readonly violations: readonly {
        readonly id: string;
        readonly help: string;
        readonly nodes: readonly {
          readonly target: readonly string[];
          readonly failureSummary?: string;
        }[];
      }[];
    }
    const { violations } = await axe.run({
      runOnly:
        asked === 'colours'
          ? { type: 'rule', values: ['color-contrast', 'link-in-text-block'] }
          : ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
      // A bar that stays in sight covers what can be scrolled from under it: sizes.ts measures.
      ...(asked === 'all' ? { rules: { 'target-size': { enabled: innerWidth > 700 } } } : {}),
    });
    return violations.map(({ id, help, nodes }) => {
      const places = nodes.slice(0, 3).map(({ target }) => target.join(' '));
      const more = nodes.length > 3 ? ` … ${nodes.length} in all` : '';
      const why = (nodes[0]?.failureSummary ?? '').replace(/\s+/g, ' ').slice(0, 200);
      return `${id}: ${help}: ${places.join(', ')}${more}: ${why}`;
    });
  }, what);
}
