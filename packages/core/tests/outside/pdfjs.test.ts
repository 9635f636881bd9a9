// npm pdfjs-serverless 0.7.0 (Apache-2.0, Mozilla's PDF.js): an independent reader of PDF.

import { resolvePDFJS } from 'pdfjs-serverless';
import PDFDocument from 'pdfkit';
import { expect, it } from 'vitest';
import type { Drawing, TextItem } from '../../src/papers/drawing.ts';
import { text } from '../../src/papers/drawing.ts';
import { flatPlanSheet } from '../../src/papers/flat-plan-sheet.ts';
import { labelStock } from '../../src/papers/label-stock.ts';
import { type Paper, paperSizes } from '../../src/papers/page.ts';
import { panelLabelSheets } from '../../src/papers/panel-labels.ts';
import { toPdf } from '../../src/papers/pdf.ts';
import { textWidth } from '../../src/papers/text-width.ts';
import { faces } from '../papers/faces.ts';
import { standing } from '../papers/standing.ts';

const facts = { title: 'Heron Flats', date: '2026-05-01', faces };
const { shell, kinds, numbers } = standing(
  { solid: 'icosahedron', b: 2, c: 0, division: 'equal chords' },
  0,
);
const sheetFacts = {
  project: 'Heron Flats',
  sheet: 'Plan',
  date: '2026-05-01',
  assumes: 'Sides hole to hole, 43 7⁄16″ ± 1 mm.',
};

const plan = (paper: Paper): Drawing => flatPlanSheet(shell, numbers, kinds, sheetFacts, { paper });

const sheet = (items: readonly TextItem[]): Drawing => ({
  width: 210,
  height: 297,
  title: 'Words',
  description: '',
  items,
});

interface Word {
  readonly str: string;
  readonly width: number;
  readonly height: number;
  /** Of its start, mm from the left and from the top. */
  readonly at: readonly [number, number];
}

/** What is used of the reader, whose own types are not found. */
interface Reader {
  getDocument(options: { data: Uint8Array; useSystemFonts: boolean }): {
    promise: Promise<{
      numPages: number;
      getPage(n: number): Promise<{
        view: [number, number, number, number];
        getTextContent(): Promise<{
          items: ({ str: string; width: number; height: number; transform: number[] } | object)[];
        }>;
      }>;
    }>;
  };
}

async function read(bytes: Uint8Array) {
  const { getDocument } = (await resolvePDFJS()) as unknown as Reader;
  const file = await getDocument({ data: bytes.slice(), useSystemFonts: false }).promise;
  const pages = [];
  for (let n = 1; n <= file.numPages; n++) {
    const page = await file.getPage(n);
    const [left, low, right, high] = page.view;
    const mm = 25.4 / 72;
    const { items } = await page.getTextContent();
    const words = items.flatMap((item): Word[] =>
      'str' in item && item.str.trim() !== ''
        ? [
            {
              str: item.str,
              width: item.width * mm,
              height: item.height * mm,
              at: [(item.transform[4] as number) * mm, (high - (item.transform[5] as number)) * mm],
            },
          ]
        : [],
    );
    pages.push({ size: [(right - left) * mm, (high - low) * mm], words });
  }
  return pages;
}

it.each(['A4', 'Letter', 'A3'] as const)(
  'a page of %s has the size of its paper',
  async (paper) => {
    const { bytes } = await toPdf([plan(paper)], facts, PDFDocument);
    const [page] = await read(bytes);
    const [short, long] = paperSizes[paper];
    expect(page?.size[0]).toBeCloseTo(long, 2);
    expect(page?.size[1]).toBeCloseTo(short, 2);
  },
);

it('every place number is read back, and every other word of the sheet', async () => {
  const { bytes, missing } = await toPdf([plan('A4')], facts, PDFDocument);
  const [page] = await read(bytes);
  const found = page?.words.map(({ str }) => str) ?? [];
  for (const number of numbers) expect(found, number).toContain(number);
  // A run in another face is an item of its own.
  expect(found.join('')).toContain('Sides hole to hole, 43 7⁄16″ ± 1 mm.');
  expect(missing).toEqual([]);
});

it('words stand where the drawing has them, no wider than the layout supposed, and hardly less', async () => {
  const items = [
    text([20, 30], 'Bolts of stage 12', 6.35),
    text([190, 50], 'mWWm 0123456789', 6.35, { anchor: 'end', bold: true }),
    text([105, 70], 'Łódź, Ζωή, Иван ½ ≤ ✓', 4, { anchor: 'middle', halo: 0.5 }),
  ];
  const { bytes, missing } = await toPdf([sheet(items)], facts, PDFDocument);
  const words = (await read(bytes))[0]?.words ?? [];
  const first = words.find(({ str }) => str.startsWith('Bolts')) as Word;
  expect(first.at[0]).toBeCloseTo(20, 1);
  expect(first.at[1]).toBeCloseTo(30 + 0.365 * 6.35, 1);
  expect(first.height).toBeCloseTo(6.35, 1);
  const second = words.find(({ str }) => str.startsWith('mWW')) as Word;
  expect(second.at[0] + second.width).toBeCloseTo(190, 1);
  for (const { text: own, size, bold } of items.slice(0, 2)) {
    const word = words.find(({ str }) => str === own) as Word;
    expect(word.width).toBeLessThanOrEqual(textWidth(own, size, bold ?? false) + 0.01);
    expect(word.width).toBeGreaterThan(0.96 * textWidth(own, size, bold ?? false));
    expect(word.width).toBeLessThan(textWidth(own, 1.1 * size, bold ?? false) * 0.96);
  }
  const third = words.filter(({ at }) => Math.abs(at[1] - 71.46) < 0.1);
  // The reader tells blanks apart from words.
  expect(third.map(({ str }) => str).join('')).toContain('Łódź,Ζωή,Иван½≤ ✓');
  expect(missing).toEqual([]);
});

it('a letter that no face has stands as its number and is told, within its room', async () => {
  const item = text([20, 30], 'for 張 and 🦀', 5);
  const { bytes, missing } = await toPdf([sheet([item])], facts, PDFDocument);
  const words = (await read(bytes))[0]?.words ?? [];
  expect(missing).toEqual(['張', '🦀']);
  // The reader gives blanks with words or apart from them.
  expect(
    words
      .map(({ str }) => str)
      .join('')
      .replaceAll(' ', ''),
  ).toBe('for<U+5F35>and<U+1F980>');
  const end = Math.max(...words.map(({ at, width }) => at[0] + width));
  expect(end).toBeLessThanOrEqual(20 + textWidth(item.text, 5) + 0.1);
});

// Sheets of labels as they are sold: paper, label, first corner, step; common practice, no source.
it.each([
  ['A4 3 x 7', [210, 297], [63.5, 38.1], [7.25, 15.15], [66, 38.1]],
  ['Letter 2 x 5', [8.5 * 25.4, 11 * 25.4], [4 * 25.4, 2 * 25.4], [3.97, 12.7], [106.36, 50.8]],
] as const)(
  'labels of %s lie in the page where the packet has them',
  async (name, paper, label, corner, step) => {
    const stock = labelStock(name);
    const sheets = panelLabelSheets(shell, numbers, kinds, 'Heron Flats', stock, {});
    const pages = await read((await toPdf(sheets, facts, PDFDocument)).bytes);
    expect(pages).toHaveLength(Math.ceil(numbers.length / (stock.across * stock.down)));
    const [page] = pages;
    for (const way of [0, 1] as const) expect(page?.size[way]).toBeCloseTo(paper[way], 2);
    const big = page?.words.filter(({ str }) => numbers.includes(str)) ?? [];
    expect(big).toHaveLength(stock.across * stock.down);
    big.forEach(({ at }, i) => {
      const cell = [i % stock.across, Math.floor(i / stock.across)];
      for (const way of [0, 1] as const) {
        const first = (big[0] as Word).at[way];
        expect(at[way] - first).toBeCloseTo((cell[way] as number) * step[way], 1);
      }
    });
    // Every word lies in a label: from its corner no further than its width and height.
    const offs = (page?.words ?? []).map(({ at, width }) => {
      const [x, y] = [0, 1].map(
        (way) => (at[way as 0 | 1] - corner[way as 0 | 1]) % step[way as 0 | 1],
      );
      return [x, (x as number) + width, y] as [number, number, number];
    });
    const kept = (more: number): boolean =>
      offs.every(
        ([x, end, y]) => x >= 0 && end <= label[0] - more && y >= 0 && y <= label[1] - more,
      );
    expect(kept(0)).toBe(true);
    // A label of half its width would not hold them.
    expect(kept(label[0] / 2)).toBe(false);
  },
);
