import { describe, expect, it } from 'vitest';
import { familiesOf, labelsOf } from '../../src/arrange/families.ts';
import type { Kind } from '../../src/pile/kind.ts';
import { symmetries } from '../../src/shell/symmetry.ts';
import { cube, icosahedral, pileKinds } from '../shell/fixtures.ts';

const kind = (id: string, sides: number[], sd = 0): Kind => ({
  id,
  marks: [],
  sides,
  sideSds: sides.map(() => sd),
  hand: null,
  good: 0,
  repair: 0,
  scrap: 0,
  counted: true,
  mass: null,
});

describe('families', () => {
  it('are one kind each unless told', () => {
    expect(familiesOf([kind('1', [1, 1, 1]), kind('2', [1, 1, 2])]).map((f) => f.kinds)).toEqual([
      [0],
      [1],
    ]);
  });

  it('join lists that share an id, and match the sides of kinds that start elsewhere', () => {
    const kinds = [
      kind('a', [3, 4, 5]),
      kind('b', [5.001, 3, 4]),
      kind('c', [4, 5, 3.001]),
      kind('d', [9, 9, 9]),
    ];
    const families = familiesOf(kinds, [
      ['a', 'b'],
      ['c', 'b'],
    ]);
    expect(families.map((f) => f.kinds)).toEqual([[0, 1, 2], [3]]);
    expect(families[0]?.offsets).toEqual([0, 1, 2]);
  });

  it('repeat after one side where all are equal, after two on a rectangle, never on an isosceles triangle', () => {
    const period = (sides: number[], sd = 0): number | undefined =>
      familiesOf([kind('1', sides, sd)])[0]?.period;
    expect(period([1, 1, 1])).toBe(1);
    expect(period([1, 2, 1, 2])).toBe(2);
    expect(period([1, 1, 2])).toBe(3);
    expect(period([1, 1.002, 1], 0.001)).toBe(1);
    expect(period([1, 1.02, 1], 0.001)).toBe(3);
  });

  it('throw for an unknown id and for kinds that cannot stand for one another', () => {
    expect(() => familiesOf([kind('1', [1, 1, 1])], [['1', '7']])).toThrow('kind 7');
    const odd = [kind('1', [1, 1, 1]), kind('2', [1, 1, 1, 1])];
    expect(() => familiesOf(odd, [['1', '2']])).toThrow('number of sides');
  });
});

describe('labels', () => {
  it.each([
    ['four-step ball, left and right kinds in it', icosahedral(4, 0), 60, 60],
    ['(2, 1) ball', icosahedral(2, 1), 60, 0],
    ['cube', cube(), 24, 24],
  ])('leave the %s its symmetries', (_, net, turns, mirrors) => {
    const kinds = pileKinds(net);
    const { labels, mirrored } = labelsOf(net.shell, kinds, familiesOf(kinds));
    const group = symmetries(net.shell, labels, { mirrored });
    expect(group.filter((g) => !g.reflected)).toHaveLength(turns);
    expect(group.filter((g) => g.reflected)).toHaveLength(mirrors);
  });

  it('do not depend on which of its sides a kind starts with', () => {
    const net = icosahedral(4, 0);
    const kinds = pileKinds(net).map((k) => ({
      ...k,
      sides: [...k.sides.slice(1), ...k.sides.slice(0, 1)],
    }));
    const shell = { ...net.shell, turn: net.shell.turn.map((t) => (t + 2) % 3) };
    const { labels } = labelsOf(shell, kinds, familiesOf(kinds));
    expect(symmetries(shell, labels)).toHaveLength(60);
  });

  it('throw where a place and its kind do not fit', () => {
    const net = cube();
    const kinds = [kind('1', [1, 1, 1])];
    expect(() => labelsOf(net.shell, kinds, familiesOf(kinds))).toThrow('do not fit');
    expect(() => labelsOf(net.shell, [], [])).toThrow('do not fit');
  });
});
