import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circle, type Drawing, group, type Item, polygon, text } from '../../src/papers/drawing.ts';
import { hatchNames } from '../../src/papers/hatch.ts';
import { escapeXml, toSvg } from '../../src/papers/svg.ts';
import { allElements, type Element, readXml } from './xml.ts';

const sheet = (items: readonly Item[], title = 'A sheet'): Drawing => ({
  width: 210,
  height: 297,
  title,
  description: 'What is on it',
  items,
});
const parsed = (items: readonly Item[]): Element[] => allElements(readXml(toSvg(sheet(items))));
const triangle = [
  [10, 10],
  [30, 10],
  [20, 25],
] as const;
const word = (words: string): Item => text([20, 20], words, 4);

describe('a sheet as SVG', () => {
  it('has the size of the paper in millimetres, a title and a description', () => {
    const [root, title, desc] = parsed([]);
    expect(root?.attributes).toMatchObject({
      width: '210mm',
      height: '297mm',
      viewBox: '0 0 210 297',
      role: 'img',
      'aria-labelledby': 'sheet-title sheet-desc',
    });
    expect([title?.children, desc?.children]).toEqual([['A sheet'], ['What is on it']]);
    expect([title?.attributes.id, desc?.attributes.id]).toEqual(['sheet-title', 'sheet-desc']);
  });

  it('is well formed whatever words stand in it, and gives them back (seed 5)', () => {
    const property = fc.property(fc.string({ unit: 'binary', maxLength: 30 }), (words) => {
      const found = parsed([word(words), group([], { name: words })]);
      const legal = words.replace(
        /[^\t\n\r\u{20}-\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]/gu,
        '\ufffd',
      );
      expect(found.find((e) => e.name === 'text')?.children.join('')).toBe(legal);
      expect(found.find((e) => e.name === 'g')?.attributes['data-name']).toBe(legal);
    });
    fc.assert(property, { seed: 5, numRuns: 300 });
  });

  it('escapes markup and replaces what XML forbids', () => {
    expect(escapeXml(`<a b="c">&'`)).toBe('&lt;a b=&quot;c&quot;&gt;&amp;&#39;');
    expect(escapeXml('\u0000\ud800\ufffe!')).toBe('\ufffd\ufffd\ufffd!');
  });

  it('defines each hatch once, only where it is used', () => {
    const fill = { tint: '#eeeeee', hatch: 'dots' } as const;
    const found = parsed([polygon(triangle, null, fill), circle([50, 50], 5, null, fill)]);
    const patterns = found.filter((e) => e.name === 'pattern');
    expect(patterns.map((e) => e.attributes.id)).toEqual(['sheet-dots']);
    expect(found.filter((e) => e.attributes.fill === 'url(#sheet-dots)').length).toBe(2);
    expect(parsed([polygon(triangle, null)]).some((e) => e.name === 'defs')).toBe(false);
  });

  it('can draw every hatch', () => {
    const items = hatchNames.map((hatch) => polygon(triangle, null, { tint: null, hatch }));
    const patterns = parsed(items).filter((e) => e.name === 'pattern');
    expect(new Set(patterns.map((e) => e.attributes.id)).size).toBe(hatchNames.length);
    expect(patterns.every((e) => e.children.length > 0)).toBe(true);
  });

  it('fetches nothing: every reference is to the file itself', () => {
    const items = hatchNames.map((hatch) => polygon(triangle, null, { tint: null, hatch }));
    const svg = toSvg(sheet([...items, word('http')]));
    expect(svg.match(/url\([^)]*\)/g)?.every((url) => url.startsWith('url(#sheet-'))).toBe(true);
    expect(svg).not.toMatch(/href|@import|<script|<image/);
  });

  it('sets its ids apart by a prefix, and refuses one that could break out', () => {
    expect(toSvg(sheet([]), { idPrefix: 'plan-' })).toContain('id="plan-title"');
    expect(() => toSvg(sheet([]), { idPrefix: '"x' })).toThrow('id');
    expect(() => toSvg(sheet([group([], { 'on x': '1' })]))).toThrow('attribute');
  });

  it('puts the middle of the capitals at the place of the text, turned about it', () => {
    const item = text([20, 30], 'H', 10, { rotate: 90, anchor: 'middle' });
    const found = parsed([item]).find((e) => e.name === 'text');
    expect(found?.attributes).toMatchObject({
      x: '20',
      y: '33.65',
      transform: 'rotate(90 20 30)',
      'text-anchor': 'middle',
    });
  });

  it('refuses a place that is no number', () => {
    expect(() => toSvg(sheet([text([Number.NaN, 1], 'x', 3)]))).toThrow('no place on paper');
  });
});
