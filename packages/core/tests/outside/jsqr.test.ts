// npm jsqr 1.4.0 (Apache-2.0): an independent reader of QR codes.

import { expect, it } from 'vitest';
import { codeItem, codeModules } from '../../src/papers/code-item.ts';
import type { GroupItem, Item } from '../../src/papers/drawing.ts';
import { labelStock } from '../../src/papers/label-stock.ts';
import { panelLabelSheets } from '../../src/papers/panel-labels.ts';
import { readCode, readCodes } from '../papers/read-code.ts';
import { standing } from '../papers/standing.ts';

const of = standing({ solid: 'icosahedron', b: 1, c: 0, division: 'equal chords' }, -0.5);

it('reads the number on every label of a shell', () => {
  const sheets = panelLabelSheets(of.shell, of.numbers, of.kinds, 'A ball', labelStock('A4 2 x 4'));
  expect(sheets.flatMap((sheet) => readCodes(sheet)).sort()).toEqual([...of.numbers].sort());
});

it('reads a torn code of the strong level, and none with its corner marks gone', () => {
  const code = codeModules('3-07', 'strong');
  const item = code && codeItem(code, { x: 0, y: 0, width: 30, height: 30 });
  const group = item as GroupItem;
  const without = (gone: (x: number, y: number) => boolean): GroupItem => ({
    ...group,
    items: group.items.filter((bar: Item, i) => {
      const [x, y] = bar.type === 'path' ? (bar.points[0] as readonly [number, number]) : [0, 0];
      return i === 0 || !gone(x, y);
    }),
  });
  expect(readCode(group)).toBe('3-07');
  expect(readCode(without((x, y) => x > 24 && y > 24))).toBe('3-07');
  expect(readCode(without((x, y) => x < 13 && y < 13))).toBeNull();
});
