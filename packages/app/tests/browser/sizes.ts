// Finds what is too small or too wide on a screen: things to be touched, text, the page itself.

import type { Page } from 'playwright-core';

/** The least height of anything that is touched, pixels. */
const TOUCH = 48;
/** The least size of text on a phone, pixels. */
const TEXT = 16;

/** What is too small to be touched or read with a phone in hand, one line each. */
export const tooSmall = (page: Page): Promise<string[]> =>
  page.evaluate(
    ([touch, text]) => {
      const name = (element: Element): string =>
        `${element.tagName.toLowerCase()} "${(element.textContent || element.getAttribute('aria-label') || '').slice(0, 40)}"`;
      return [...untouchable(touch as number), ...unreadable(text as number)];

      function untouchable(least: number): string[] {
        const touched = 'button, a[href], input, select, summary, [role=tab], [role=option]';
        return [...document.querySelectorAll(touched)]
          .filter((one) => one.checkVisibility() && !one.closest('.read-out, .skip, svg'))
          .map((one) => {
            // A box or a dot is touched by its label.
            const target = one.matches('[type=radio], [type=checkbox]')
              ? one.closest('label')
              : one;
            return { one, box: (target ?? one).getBoundingClientRect() };
          })
          .filter(({ box }) => box.height > 0 && (box.height < least - 0.5 || box.width < 24))
          .map(({ one, box }) => `too small to touch: ${name(one)}: ${box.width} × ${box.height}`);
      }

      function unreadable(least: number): string[] {
        const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
        const found: string[] = [];
        for (let node = walker.nextNode(); node; node = walker.nextNode()) {
          const holder = node.parentElement;
          if (!holder || !node.textContent?.trim() || !holder.checkVisibility()) continue;
          if (holder.closest('svg, .read-out, script, style')) continue;
          const size = Number.parseFloat(getComputedStyle(holder).fontSize);
          if (size < least)
            found.push(`small text, ${size} px: ${node.textContent.trim().slice(0, 40)}`);
        }
        return found;
      }
    },
    [TOUCH, TEXT],
  );

/** Where the page is wider than its screen, by how much. */
export const tooWide = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const { scrollWidth, clientWidth } = document.documentElement;
    return scrollWidth > clientWidth
      ? [`${scrollWidth - clientWidth} px wider than the screen`]
      : [];
  });
