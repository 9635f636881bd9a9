import { produce } from 'immer';
import { describe, expect, test } from 'vitest';
import type { Cell } from '../../src/sheets/pile/cells.ts';
import { columnsOf, hasHeader, putBlock, readBlock } from '../../src/sheets/pile/paste.ts';
import { docOfReadings, faultsOf, millimetres, reading, row } from './notation.ts';

const block = (text: string) => readBlock(text) ?? [];
const columns = (text: string, start: Cell = 'tag') => columnsOf(block(text), start, 'mm');

describe('a pasted text', () => {
  test.each(['1103', '43 7/16"', `3' 7 7/16"`, '1,103', '0,928'])('%s is for one cell', (text) => {
    expect(readBlock(text)).toBeNull();
  });

  test.each([
    ['920\t920\t1073\n1071\t1071\t1073\n', 2, 3],
    ['920,920,1073', 1, 3],
    ['0,920;0,920;1,073\r\n0,920;0,920;1,073', 2, 3],
    ['920\n921\n922', 3, 1],
  ])('%j is a block', (text, rows, width) => {
    expect(block(text)).toHaveLength(rows);
    expect(block(text)[0]).toHaveLength(width);
  });

  test('quotes hold separators and doubled quotes; a lone quote is an inch mark', () => {
    expect(block(`"3' 7 7/16""",36",42 1/4"`)).toEqual([[`3' 7 7/16"`, '36"', '42 1/4"']]);
    expect(block(`36 1/4"\t"42"""\t"a\tb"`)).toEqual([['36 1/4"', '42"', 'a\tb']]);
  });

  test('a header is known by its words', () => {
    expect(hasHeader(block('tag\tside1 mm\tside2 mm\tside3 mm\n1\t920\t920\t1073'))).toBe(true);
    expect(hasHeader(block('tag\t920\t920\t1073'))).toBe(false);
  });
});

describe('a block finds its columns', () => {
  test.each<[string, Cell, (Cell | null)[]]>([
    ['920\t920\t1073', 'tag', [0, 1, 2]],
    ['920\t920\t1073', 0, [0, 1, 2]],
    ['1073\t920', 1, [1, 2]],
    ['A1\towl\t920\t920\t1073', 'tag', ['tag', 'mark', 0, 1, 2]],
    ['owl\t920\t920\t1073', 'mark', ['mark', 0, 1, 2]],
    ['017\t920\t920\t1073', 'tag', ['tag', 0, 1, 2]],
    ['101\t920\t920\t1073\n102\t920\t920\t1073', 'tag', ['tag', 0, 1, 2]],
    [
      'A\t920\t920\t1073\tinside\tgood\t4',
      'tag',
      ['tag', 0, 1, 2, 'seenFrom', 'condition', 'count'],
    ],
    ['A\nB', 'tag', ['tag']],
    ['good\nscrap', 'condition', ['condition']],
  ])('%j pasted at %s', (text, start, expected) => {
    expect(columns(text, start)).toEqual(expected);
  });
});

test('rows that are there are written over, the rest are begun, and nothing unread is lost', () => {
  const doc = docOfReadings(reading([1, 1, 1], { tag: 'A' }));
  const text = '920\t920\t1073\n1071\t?\t1073\n1138\t1138\t1182';
  const after = produce(doc, (draft) => {
    putBlock(draft, [row(0)], block(text), columns(text, 0), 'mm');
  });
  expect(millimetres(after, 0)).toEqual([920, 920, 1073]);
  expect(after.project.pile.readings[0]?.tag).toBe('A');
  expect(millimetres(after, 1)).toEqual([1138, 1138, 1182]);
  expect(after.drafts.map(({ sides }) => sides)).toEqual([['1071 mm', '?', '1073 mm']]);
});

test('a tag pasted on panels of three and of four sides is kept as text on the second', () => {
  const text = 'A\t920\t920\t1073\t\nA\t900\t900\t900\t900';
  const after = produce(docOfReadings(), (draft) => {
    putBlock(draft, [], block(text), ['tag', 0, 1, 2, 3], 'mm');
  });
  expect(after.project.pile.readings).toHaveLength(1);
  expect(after.drafts[0]).toMatchObject({ tag: 'A', sides: Array(4).fill('900 mm') });
  expect(faultsOf(after)).toEqual([]);
});
