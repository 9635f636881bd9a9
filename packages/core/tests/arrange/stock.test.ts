import { describe, expect, it } from 'vitest';
import { familiesOf } from '../../src/arrange/families.ts';
import { needOf, stockRows } from '../../src/arrange/stock.ts';
import { icosahedral, pileKinds } from '../shell/fixtures.ts';

const net = icosahedral(2, 0);
const kinds = pileKinds(net);
const families = familiesOf(kinds);
const having = (good: number, repair: number, counted = true) =>
  kinds.map((kind, k) => (k === 0 ? { ...kind, good, repair, counted } : kind));

describe('stock', () => {
  it('counts what places need of each family', () => {
    expect([...needOf(net.shell, net.shell.kind.keys(), kinds, families)]).toEqual([60, 20]);
  });

  it('tells what is short, what mending would fill, and what is left', () => {
    const rows = stockRows(having(55, 3), families, [60, 12], false);
    expect(rows[0]).toMatchObject({
      need: 60,
      good: 55,
      short: 5,
      mendable: 3,
      mended: 0,
      left: 0,
    });
    expect(rows[1]).toMatchObject({ need: 12, good: 20, short: 0, left: 8 });
  });

  it('uses panels to be mended last, and only when allowed', () => {
    expect(stockRows(having(55, 3), families, [60, 0], true)[0]).toMatchObject({
      mended: 3,
      short: 2,
      mendable: 0,
      left: 0,
    });
    expect(stockRows(having(55, 9), families, [60, 0], true)[0]).toMatchObject({
      mended: 5,
      short: 0,
      left: 4,
    });
  });

  it('takes a kind that nobody counted as unlimited and says so', () => {
    expect(stockRows(having(0, 0, false), families, [60, 0], false)[0]).toMatchObject({
      short: 0,
      left: 0,
      counted: false,
    });
  });

  it('is shared by interchangeable kinds', () => {
    const rows = stockRows(having(55, 0), familiesOf(kinds, [['1', '2']]), [70], false);
    expect(rows).toHaveLength(1);
    expect(rows[0]).toMatchObject({ kinds: ['1', '2'], good: 75, left: 5 });
  });

  it('throws for a place whose kind is not in the list', () => {
    expect(() => needOf(net.shell, [0], [], [])).toThrow('not in the list');
  });
});
