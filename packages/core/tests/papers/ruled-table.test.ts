import { describe, expect, it } from 'vitest';
import { ruledTable } from '../../src/papers/ruled-table.ts';
import { textCorners } from '../../src/papers/text-box.ts';

const columns = [
  { name: 'item', share: 0.6, align: 'start' },
  { name: 'how much', share: 0.4, align: 'end' },
] as const;
const box = { x: 10, y: 20, width: 80, height: 100 };
const table = (words: string) =>
  ruledTable(
    columns,
    [0, 1].map(() => ({ cells: [words, '1'], accent: false, bold: [], swatch: null })),
    box,
    5.2,
  ).items.flatMap((item) => (item.type === 'text' ? [item] : []));

describe('a ruled table', () => {
  it('says words that are too long for their cell in smaller type, then in lines, whole and in their row', () => {
    const long = 'a thing with a name that somebody wrote without thinking of paper at all';
    const said = table(long);
    expect(
      said
        .map(({ text }) => text)
        .join(' ')
        .split(long),
    ).toHaveLength(3);
    const cells = said.filter(({ text }) => long.includes(text) && text.length > 3);
    expect(cells.length).toBeGreaterThan(2);
    for (const item of cells) {
      const xs = textCorners(item).map(([x]) => x);
      expect(Math.max(...xs)).toBeLessThanOrEqual(10 + 48);
    }
    const ys = cells.map(({ at }) => at[1]);
    expect(Math.max(...ys) - Math.min(...ys)).toBeLessThan(2 * 5.2);
  });

  it('refuses words that no type fits, with their length and the room', () => {
    expect(() => table('many words '.repeat(60))).toThrow(
      /"many words .*…" \(660 characters\) does not fit 47 × 5\.2 mm of a sheet: shorten it/,
    );
  });
});
