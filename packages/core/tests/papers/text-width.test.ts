import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { text } from '../../src/papers/drawing.ts';
import { outlinesOverlap, textCorners } from '../../src/papers/text-box.ts';
import { cutText, fittingSize, textWidth, wrapText } from '../../src/papers/text-width.ts';

describe('the width of words', () => {
  it('is no less than that of DejaVu Sans, the widest common face (advance widths, from memory)', () => {
    // Digits 0.636 em, M 0.863 em, i 0.278 em, hyphen 0.361 em.
    expect(textWidth('0', 1)).toBeGreaterThanOrEqual(0.636);
    expect(textWidth('M', 1)).toBeGreaterThanOrEqual(0.863);
    expect(textWidth('i', 1)).toBeGreaterThanOrEqual(0.278);
    expect(textWidth('3-07', 1)).toBeGreaterThanOrEqual(3 * 0.636 + 0.361);
  });

  it('grows with size and weight', () => {
    expect(textWidth('3-07', 4)).toBeCloseTo(4 * textWidth('3-07', 1), 12);
    expect(textWidth('3-07', 1, true)).toBeGreaterThan(textWidth('3-07', 1));
    expect(textWidth('', 3)).toBe(0);
  });
});

describe('words of other scripts', () => {
  it('take a whole square and more for Chinese and emoji, as much as capitals for Cyrillic ones', () => {
    expect(textWidth('穹頂', 1)).toBeGreaterThanOrEqual(2);
    expect(textWidth('🙂', 1)).toBeGreaterThanOrEqual(1.3);
    expect(textWidth('Щ', 1)).toBeGreaterThanOrEqual(1.05);
    expect(textWidth('e\u0301', 1)).toBe(textWidth('e', 1));
  });

  it('break between letters, never between a letter and its marks or within a joined emoji', () => {
    const family = '👩\u200d👩\u200d👧';
    expect(wrapText(`${family}${family}`, 3, 3)).toEqual([family, family]);
    expect(wrapText('e\u0301'.repeat(3), 3, 2)).toEqual(['e\u0301', 'e\u0301', 'e\u0301']);
    expect(wrapText('穹頂'.repeat(20), 3, 30).join('')).toBe('穹頂'.repeat(20));
  });
});

describe('wrapped words', () => {
  it('fit into the width and lose no letter (seed 6)', () => {
    const words = fc.array(fc.string({ unit: fc.constantFrom('a', 'm', 'i', '7'), minLength: 1 }));
    const property = fc.property(words, fc.integer({ min: 5, max: 60 }), (list, width) => {
      const lines = wrapText(list.join(' '), 3, width);
      for (const line of lines) expect(textWidth(line, 3)).toBeLessThanOrEqual(width);
      expect(lines.join('').replace(/ /g, '')).toBe(list.join(''));
    });
    fc.assert(property, { seed: 6 });
  });

  it('keep to as few lines as they can', () => {
    expect(wrapText('one two  three', 3, 1000)).toEqual(['one two three']);
    expect(wrapText('', 3, 10)).toEqual([]);
  });

  it('are set smaller to fit, or refused', () => {
    const wide = textWidth('a long name', 1);
    expect(fittingSize('a long name', 4, 2, 100)).toBe(4);
    expect(fittingSize('a long name', 4, 2, 3 * wide)).toBe(3);
    expect(fittingSize('a long name', 4, 2, wide)).toBeNull();
  });

  it('are cut with an ellipsis that fits too', () => {
    expect(cutText('short', 3, 100)).toBe('short');
    const cut = cutText('a very long name', 3, 20);
    expect(cut.endsWith('…')).toBe(true);
    expect(textWidth(cut, 3)).toBeLessThanOrEqual(20);
  });
});

describe('the box of words', () => {
  it('turns about the place of the text', () => {
    const upright = textCorners(text([10, 10], '3-07', 4, { rotate: 90, anchor: 'middle' }));
    const xs = upright.map(([x]) => x);
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(0.73 * 4, 9);
    expect((Math.max(...xs) + Math.min(...xs)) / 2).toBeCloseTo(10, 9);
  });

  it('overlaps another when they share area, not when they touch', () => {
    const at = (x: number, rotate = 0) => textCorners(text([x, 0], 'ab', 10, { rotate }));
    const width = textWidth('ab', 10);
    expect(outlinesOverlap(at(0), at(width - 0.1))).toBe(true);
    expect(outlinesOverlap(at(0), at(width + 0.1))).toBe(false);
    expect(outlinesOverlap(at(0, 45), at(width * 0.9, 45))).toBe(false);
    expect(outlinesOverlap(at(0), at(0, 90))).toBe(true);
  });
});
