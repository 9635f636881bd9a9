import { describe, expect, it } from 'vitest';
import { type Drawing, flatItems } from '../../src/papers/drawing.ts';
import { flowSheets } from '../../src/papers/flow.ts';
import { type FlowBlock, heading, list, TICK, words } from '../../src/papers/flow-blocks.ts';
import { outside, overlaps } from './sheet-checks.ts';

const facts = {
  project: 'Heron Flats shell, 24 ft',
  sheet: 'Trial',
  date: '2026-05-14',
  assumes: 'Nothing.',
};
const flow = (blocks: readonly FlowBlock[], more: object = {}): Drawing[] =>
  flowSheets(blocks, facts, { heading: 'Trial', lengths: 'mm', ...more });
const textOf = (sheets: readonly Drawing[]): string =>
  sheets
    .flatMap(({ items }) => flatItems(items))
    .flatMap((item) => (item.type === 'text' ? [item.text] : []))
    .join(' ');
const table = (rows: readonly (readonly string[])[]): FlowBlock => ({
  block: 'table',
  columns: [
    { name: 'what', share: 0.4 },
    { name: 'how', share: 0.5, bold: true },
    { name: 'there', share: 0.1, align: 'end' },
  ],
  rows,
});
const strange = ['Ω–Щука 穹頂の下で', 'قبّة الحديقة', 'गुम्बद', '👩‍👩‍👧 on a hill', 'a'.repeat(400)];

describe('a flow', () => {
  it('keeps words of any script and length whole, apart from each other and on the sheet', () => {
    const blocks = [
      heading(strange.join(' ')),
      ...strange.map((said) => words(said.repeat(3))),
      list('tick', strange),
      list('number', strange),
      table(strange.map((said) => [said, said.repeat(4), TICK])),
      { block: 'blanks', names: strange.slice(0, 4) } as const,
    ];
    for (const paper of ['A4', 'Letter'] as const)
      for (const columns of [1, 2]) {
        const sheets = flow(blocks, { paper, columns });
        expect(sheets.flatMap(overlaps)).toEqual([]);
        expect(sheets.flatMap(outside)).toEqual([]);
        const said = textOf(sheets).replace(/\s/g, '');
        for (const one of strange) expect(said).toContain(one.replace(/\s/g, '').slice(0, 20));
        expect(said).not.toContain('…');
        expect((said.match(/a/g) ?? []).length).toBeGreaterThanOrEqual(400 * 11);
      }
  });

  it('repeats the head of a table on each sheet, and numbers the sheets', () => {
    const sheets = flow([table(Array.from({ length: 120 }, (_, i) => [`row ${i}`, 'x', TICK]))]);
    expect(sheets.length).toBeGreaterThan(2);
    for (const [i, sheet] of sheets.entries()) {
      expect(textOf([sheet])).toContain('what how there');
      expect(textOf([sheet])).toContain(`Trial, ${i + 1} of ${sheets.length}`);
    }
  });

  it('never leaves a heading at the foot, nor a sheet with nothing on it', () => {
    for (let rows = 30; rows < 60; rows++) {
      const sheets = flow([
        ...Array.from({ length: rows }, (_, i) => words(`line ${i}`)),
        heading('Last'),
        words('after it'),
      ]);
      const last = sheets.find((sheet) => /\bLast\b/.test(textOf([sheet])));
      expect(textOf(last ? [last] : [])).toContain('after it');
      for (const sheet of sheets) expect(textOf([sheet])).toMatch(/line \d|after/);
    }
  });

  it('begins a sheet where one is asked for', () => {
    expect(flow([words('one'), { block: 'sheet' }, words('two')])).toHaveLength(2);
    expect(flow([])).toHaveLength(1);
  });

  it('refuses a title that leaves no room, and says how long it is', () => {
    const long = { ...facts, project: 'W'.repeat(4000) };
    expect(() => flowSheets([], long, { heading: 'Trial', lengths: 'mm' })).toThrow(
      /at least 60 mm are needed: shorten the project’s title \("W{30}…", 4000 characters\)/,
    );
  });
});
