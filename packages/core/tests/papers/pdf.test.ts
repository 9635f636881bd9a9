import PDFDocument from 'pdfkit';
import { describe, expect, it } from 'vitest';
import { circle, type Drawing, polygon, text } from '../../src/papers/drawing.ts';
import { withPageNumbers } from '../../src/papers/page-numbers.ts';
import { toPdf } from '../../src/papers/pdf.ts';
import { setLetters } from '../../src/papers/set-letters.ts';
import { plainFace } from '../../src/papers/woff.ts';
import { faces } from './faces.ts';
import { outside, overlaps } from './sheet-checks.ts';

const facts = { title: 'Heron Flats', date: '2026-05-01', faces };
const sheet: Drawing = {
  width: 210,
  height: 297,
  title: 'A sheet',
  description: '',
  items: [
    polygon(
      [
        [20, 20],
        [80, 20],
        [50, 60],
      ],
      { weight: 'bold', dash: 'dashed' },
      { tint: '#faf0d4', hatch: 'slant-left' },
    ),
    circle([120, 40], 15, null, { tint: null, hatch: 'rings' }),
    text([50, 35], '3-07', 5, { anchor: 'middle', halo: 0.4, rotate: 30 }),
  ],
};

describe('a PDF', () => {
  it('is the same bytes for the same sheets and day, and others for another day', async () => {
    const [one, two, other] = await Promise.all([
      toPdf([sheet, sheet], facts, PDFDocument),
      toPdf([sheet, sheet], facts, PDFDocument),
      toPdf([sheet, sheet], { ...facts, date: '2026-05-02' }, PDFDocument),
    ]);
    expect(Buffer.compare(one.bytes, two.bytes)).toBe(0);
    expect(Buffer.compare(one.bytes, other.bytes)).not.toBe(0);
    expect(Buffer.from(one.bytes).toString('latin1')).toMatch(/^%PDF-1\.\d[\s\S]*%%EOF\s*$/);
  });

  it('tells how many pages are drawn', async () => {
    const told: number[] = [];
    await toPdf([sheet, sheet], { ...facts, onPage: (n) => told.push(n) }, PDFDocument);
    expect(told).toEqual([1, 2]);
  });

  it('is refused without a face, on a day that is none, and with a point that is no number', async () => {
    await expect(toPdf([sheet], { ...facts, faces: [] }, PDFDocument)).rejects.toThrow('typeface');
    await expect(toPdf([sheet], { ...facts, date: 'May' }, PDFDocument)).rejects.toThrow('"May"');
    const bad = { ...sheet, items: [circle([Number.NaN, 1], 1, { weight: 'thin' })] };
    await expect(toPdf([bad], facts, PDFDocument)).rejects.toThrow('NaN');
  });
});

describe('letters', () => {
  const of = (letters: string) => (code: number) => letters.includes(String.fromCodePoint(code));
  const two = [
    { name: 'a', has: of('abc e\u0301<U+>0123456789ABCDEF') },
    { name: 'b', has: of('שלוםעל') },
  ];
  const textOf = (words: string): string =>
    setLetters(words, two)
      .runs.map((r) => r.text)
      .join('');

  it('come from the first face that has them', () => {
    expect(setLetters('ab ש', two).runs).toEqual([
      { face: 'a', text: 'ab ' },
      { face: 'b', text: 'ש' },
    ]);
  });

  it('are taken apart where a face has the parts alone, and numbered where none has any', () => {
    expect(textOf('é')).toBe('e\u0301');
    expect(setLetters('a張張', two)).toEqual({
      runs: [{ face: 'a', text: 'a<U+5F35><U+5F35>' }],
      missing: ['張'],
    });
  });

  it('that join or vary others leave nothing behind', () => {
    expect(setLetters('a\u200d\ufe0fb', two)).toEqual({
      runs: [{ face: 'a', text: 'ab' }],
      missing: [],
    });
  });

  it('read leftward have their words turned round, the rest where it was', () => {
    expect(textOf('ab שלום על ab')).toBe('ab על שלום ab');
    expect(textOf('שלום 3 על')).toBe('על 3 שלום');
  });
});

describe('a WOFF face', () => {
  const woff = faces[0]?.bytes as Uint8Array;

  it('unpacks to a plain one with as many tables, in whole words of four bytes', () => {
    const plain = plainFace(woff);
    const view = new DataView(plain.buffer);
    expect(view.getUint32(0)).toBe(0x00010000);
    expect(view.getUint16(4)).toBe(new DataView(woff.buffer, woff.byteOffset).getUint16(12));
    expect(plain.length % 4).toBe(0);
    expect(plainFace(plain)).toBe(plain);
  });

  it('with a table cut short is refused', () => {
    const broken = woff.slice();
    new DataView(broken.buffer).setUint32(44 + 12, 0x00ffffff);
    expect(() => plainFace(broken)).toThrow('table 1');
  });
});

describe('page numbers', () => {
  it('stand below the frame, apart from everything and whole, at any length of the name', () => {
    const name = `${'A long title of a shell '.repeat(8)}: the flat plan, seen from above`;
    const [first, second] = withPageNumbers([sheet, sheet], name) as [Drawing, Drawing];
    expect(overlaps(first)).toEqual([]);
    expect(outside(second)).toEqual([]);
    const words = second.items.at(-1);
    const said = second.items
      .slice(sheet.items.length)
      .flatMap((item) => (item.type === 'text' ? [item.text] : []));
    expect(said.join(' ')).toBe(`${name} · page 2 of 2`);
    expect(() => withPageNumbers([sheet], 'W'.repeat(2000))).toThrow(
      '(2000 characters) does not fit',
    );
    expect(words?.type === 'text' && words.anchor).toBe('end');
    const short = withPageNumbers([sheet, sheet], 'Kinds')[1]?.items.at(-1);
    expect(short?.type === 'text' && short.text).toBe('Kinds · page 2 of 2');
    const alone = withPageNumbers([sheet], 'Kinds')[0]?.items.at(-1);
    expect(alone?.type === 'text' && alone.text).toBe('Kinds');
  });
});
