import { expect, it } from 'vitest';
import type { AddedKind } from '../../src/identify/shape.ts';
import { sameKinds, stockOfShape } from '../../src/identify/shape-kinds.ts';
import type { Kind } from '../../src/pile/kind.ts';

const read: Kind = {
  ...{ id: 'k', marks: [], sides: [0.9, 1, 1.1], sideSds: [0.001, 0.001, 0.001], hand: null },
  ...{ good: 20, repair: 3, scrap: 0, counted: true, mass: null },
};
const wanted: AddedKind = { why: 'wanted', of: null, kind: { ...read, id: 'w', good: 0 } };

it('counts each panel once where a kind stands both ways round', () => {
  const other = { ...read, id: 'k other hand', good: 8, repair: 1 };
  const both = { added: [{ why: 'other hand', of: 0, kind: other }] as const };
  const stock = stockOfShape(both, [read]);
  expect(stock.map(({ good }) => good)).toEqual([12, 8]);
  expect(stock.map(({ repair }) => repair)).toEqual([2, 1]);
});

it('takes shapes that need other kinds for no longer comparable', () => {
  expect(sameKinds({ added: [wanted] }, { added: [wanted] })).toBe(true);
  expect(sameKinds({ added: [wanted] }, { added: [] })).toBe(false);
});
