import { describe, expect, it } from 'vitest';
import { flatItems } from '../../src/papers/drawing.ts';
import { pageOf, scaleFor, scales, titleBlockItems } from '../../src/papers/page.ts';
import { textCorners } from '../../src/papers/text-box.ts';

const block = {
  project: 'Heron Flats shell',
  sheet: '3 Places',
  scale: '1 : 40',
  date: '14 May 2026',
  lengths: 'mm (inches)',
  assumes: 'Sides measured hole to hole. '.repeat(6),
};

describe('a page', () => {
  it('keeps 20 mm on the filing edge and 10 mm elsewhere', () => {
    expect(pageOf('A4', 'across')).toEqual({
      width: 297,
      height: 210,
      frame: { x: 20, y: 10, width: 267, height: 190 },
    });
    expect(pageOf('Letter', 'upright').width).toBe(215.9);
  });

  it.each([70, 90, 180, 277])('has a title block %i mm wide that holds all its words', (width) => {
    const { items, top } = titleBlockItems(block, 20, 200, width);
    const texts = flatItems(items).filter((item) => item.type === 'text');
    for (const item of texts)
      for (const [x, y] of textCorners(item)) {
        expect(x >= 20 && x <= 20 + width).toBe(true);
        expect(y >= top && y <= 200).toBe(true);
      }
    const all = texts.map((item) => item.text).join(' ');
    for (const words of [block.project, block.sheet, block.scale, block.date, block.lengths])
      expect(all).toContain(words);
    expect(all.match(/hole to hole/g)?.length).toBe(6);
  });

  it('has the largest scale on the list that fits', () => {
    expect(scaleFor(7.2, 180)).toBe(40);
    expect(scaleFor(7.21, 180)).toBe(45);
    expect(scaleFor(1e6, 10)).toBe(scales.at(-1));
    expect([...scales].sort((a, b) => a - b)).toEqual(scales);
  });
});
