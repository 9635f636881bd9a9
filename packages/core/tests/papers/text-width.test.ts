import fc from 'fast-check';
import PDFDocument from 'pdfkit';
import { describe, expect, it } from 'vitest';
import { text } from '../../src/papers/drawing.ts';
import { outlinesOverlap, textCorners } from '../../src/papers/text-box.ts';
import { cutText, fittingSize, textWidth, wrapText } from '../../src/papers/text-width.ts';
import { plainFace } from '../../src/papers/woff.ts';
import { faces } from './faces.ts';

const [plain, , , bold] = faces.map(({ bytes }) => plainFace(bytes));
const dejavu = plainFace((faces[2] as (typeof faces)[number]).bytes);

/** Letters whose reckoned width is less than the face's, or more by over `over` of the type size. */
function wrong(face: Uint8Array | undefined, letters: string, heavy: boolean, over: number) {
  const pen = new PDFDocument({ autoFirstPage: false, font: face as never });
  pen.fontSize(1);
  return [...letters].filter((letter) => {
    const more = textWidth(letter, 1, heavy) - pen.widthOfString(letter);
    return more < -1e-6 || more > over;
  });
}

describe('the width of words', () => {
  it('is that of the face it is set in, rounded up to a hundredth; shifted by ten times that it is not', () => {
    const latin = 'Mil0123456789-./()%&×½äßÆéñ—… ';
    const others = 'ΩλЩжאبΞ→≤✓';
    expect(wrong(plain, latin, false, 0.01)).toEqual([]);
    expect(wrong(bold, latin, true, 0.01)).toEqual([]);
    expect(wrong(dejavu, others, false, 0.01)).toEqual([]);
    const off = [...latin].filter((letter) => wrong(plain, letter, true, 0.01).length > 0);
    expect(off.length).toBeGreaterThan(10);
    expect(wrong(dejavu, others, false, -0.1)).toHaveLength(others.length);
  });

  it('grows with size and weight', () => {
    expect(textWidth('3-07', 4)).toBeCloseTo(4 * textWidth('3-07', 1), 12);
    expect(textWidth('3-07', 1, true)).toBeGreaterThan(textWidth('3-07', 1));
    expect(textWidth('', 3)).toBe(0);
  });
});

describe('words of other scripts', () => {
  it('take a whole square and more for Chinese and emoji, nothing for marks on a letter', () => {
    expect(textWidth('穹頂', 1)).toBeGreaterThanOrEqual(2);
    expect(textWidth('🙂', 1)).toBeGreaterThanOrEqual(1.3);
    expect(textWidth('穹', 1, true)).toBeCloseTo(1.1 * textWidth('穹', 1), 12);
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
    const at = (x: number, rotate = 0) => textCorners(text([x, 0], 'abc', 10, { rotate }));
    const width = textWidth('abc', 10);
    expect(outlinesOverlap(at(0), at(width - 0.1))).toBe(true);
    expect(outlinesOverlap(at(0), at(width + 0.1))).toBe(false);
    expect(outlinesOverlap(at(0, 45), at(width * 0.9, 45))).toBe(false);
    expect(outlinesOverlap(at(0), at(0, 90))).toBe(true);
  });
});
