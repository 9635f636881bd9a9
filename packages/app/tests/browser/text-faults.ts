// Finds text that can't be read as it stands: cut off by what it stands in, off the page's edge, or
// run into by other text. Runs in the page; SVG and HTML alike. Text that is meant for screen
// readers alone, hidden, or scrolled out of a pane's sight is no fault.

import type { Page } from 'playwright-core';

/** A text that can't be read. */
export interface TextFault {
  readonly fault: 'cut off' | 'off the page' | 'overlaps';
  readonly text: string;
  readonly where: string;
  readonly other?: string;
}

/** Every text fault of the page as it stands. */
export const textFaults = (page: Page): Promise<readonly TextFault[]> => page.evaluate(findFaults);

/** Faults as lines for a message; many of a kind in one place are one line. */
export function faultLines(faults: readonly TextFault[]): string[] {
  const lines = new Map<string, string[]>();
  for (const { fault, text, where, other } of faults) {
    const key = `${fault}|${where}`;
    const said = `"${text}"${other ? ` and "${other}"` : ''}`;
    lines.set(key, [...(lines.get(key) ?? []), said]);
  }
  return [...lines].map(([key, texts]) => {
    const [fault, where] = key.split('|');
    const more = texts.length > 3 ? `, … ${texts.length} in all` : '';
    return `${fault}: ${texts.slice(0, 3).join(', ')}${more} (${where})`;
  });
}

function findFaults(): TextFault[] {
  /** Pixels that rounding and side bearings may take. */
  const slack = 2;
  const wideScreen = innerWidth > 700;

  interface Piece {
    readonly element: Element;
    readonly text: string;
    readonly box: DOMRect;
    readonly drawing: Element | null;
  }

  const faults: TextFault[] = [];
  const pieces: Piece[] = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const text = node.textContent?.trim() ?? '';
    const element = node.parentElement;
    if (text === '' || !element || !isShown(element)) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    for (const box of range.getClientRects())
      if (box.width > 0.5 && box.height > 0.5)
        pieces.push({ element, text, box, drawing: element.closest('svg') });
  }
  for (const field of document.querySelectorAll('input, textarea'))
    if (isShown(field) && holdsMore(field as HTMLInputElement))
      note('cut off', field, (field as HTMLInputElement).value);
  const seen = pieces.filter((piece) => look(piece));
  overlaps(seen);
  return faults;

  /** Notes a text that is cut off; returns whether it is in sight. */
  function look({ element, text, box }: Piece): boolean {
    for (let holder: Element | null = element; holder; holder = holder.parentElement) {
      const style = getComputedStyle(holder);
      const [hidesX, hidesY] = [style.overflowX !== 'visible', style.overflowY !== 'visible'];
      if (!hidesX && !hidesY) continue;
      if (holder === document.documentElement || holder === document.body) continue;
      const edge = holder.getBoundingClientRect();
      const out =
        (hidesX && (box.right <= edge.left + slack || box.left >= edge.right - slack)) ||
        (hidesY && (box.bottom <= edge.top + slack || box.top >= edge.bottom - slack));
      if (holder.closest('[data-pannable]')) {
        if (out) return false;
        continue;
      }
      const cutX = hidesX && (box.left < edge.left - slack || box.right > edge.right + slack);
      const cutY = hidesY && (box.top < edge.top - slack || box.bottom > edge.bottom + slack);
      // Panes scroll up and down anywhere; sideways on a narrow screen alone.
      const scrollsX = wideScreen ? false : /auto|scroll/.test(style.overflowX);
      const scrollsY = /auto|scroll/.test(style.overflowY);
      if ((cutX && !scrollsX) || (cutY && !scrollsY)) note('cut off', element, text);
      if (out || cutX || cutY) return false;
    }
    const { clientWidth } = document.documentElement;
    const above = box.top + scrollY < -slack && layer(element) === null;
    if (above || box.left < -slack || box.right > clientWidth + slack) {
      note('off the page', element, text);
      return false;
    }
    return true;
  }

  function overlaps(all: readonly Piece[]): void {
    const sorted = [...all].sort((a, b) => a.box.left - b.box.left);
    const told = new Set<string>();
    sorted.forEach((a, i) => {
      for (const b of sorted.slice(i + 1)) {
        if (b.box.left > a.box.right - slack) break;
        if (
          a.element === b.element ||
          a.element.contains(b.element) ||
          b.element.contains(a.element)
        )
          continue;
        if (apart(a, b) || above(a, b) || again(a, b)) continue;
        const key = `${a.text}|${b.text}`;
        if (told.has(key)) continue;
        told.add(key);
        note('overlaps', a.element, a.text, b.text);
      }
    });
  }

  /** Letters fill about the middle six tenths of their line's height. */
  function apart(a: Piece, b: Piece): boolean {
    const [topA, bottomA] = middle(a.box);
    const [topB, bottomB] = middle(b.box);
    const x = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
    const y = Math.min(bottomA, bottomB) - Math.max(topA, topB);
    return x <= slack || y <= 1 || turned(a) || turned(b);
  }

  /** The same text drawn again in the same place, to mark it. */
  function again(a: Piece, b: Piece): boolean {
    const [dx, dy] = [a.box.left - b.box.left, a.box.top - b.box.top];
    return a.text === b.text && Math.hypot(dx, dy) <= slack;
  }

  /** The box of turned text says little. */
  function turned({ element }: Piece): boolean {
    return element.tagName === 'text' && /rotate/.test(element.getAttribute('transform') ?? '');
  }

  function middle(box: DOMRect): [number, number] {
    return [box.top + 0.22 * box.height, box.bottom - 0.22 * box.height];
  }

  /** One lies in a layer over the other, which it covers on purpose. */
  function above(a: Piece, b: Piece): boolean {
    return layer(a.element) !== layer(b.element);
  }

  function layer(element: Element): Element | null {
    for (let one: Element | null = element; one; one = one.parentElement)
      if (/fixed|sticky/.test(getComputedStyle(one).position)) return one;
    return null;
  }

  /** Whether a field that nobody types in holds more than it shows. */
  function holdsMore(field: HTMLInputElement): boolean {
    return (
      field !== document.activeElement &&
      field.value !== '' &&
      field.scrollWidth > field.clientWidth + 1
    );
  }

  function isShown(element: Element): boolean {
    if (
      element.closest(
        '.read-out, .skip:not(:focus), [hidden], [inert], script, style, title, desc, option',
      )
    )
      return false;
    return element.checkVisibility({ opacityProperty: true, visibilityProperty: true });
  }

  function note(fault: TextFault['fault'], element: Element, text: string, other?: string): void {
    const name = element.closest('[class]');
    const where = `${element.tagName.toLowerCase()} in ${name?.tagName.toLowerCase()}.${name?.getAttribute('class')}`;
    faults.push({
      fault,
      text: text.slice(0, 60),
      where,
      ...(other ? { other: other.slice(0, 60) } : {}),
    });
  }
}
