import { describe, expect, it } from 'vitest';
import { arrangements, standingShell } from '../../src/arrange/arrangements.ts';
import { shapesHolding } from '../../src/arrange/same-in.ts';
import type { WayUp } from '../../src/arrange/ways-up.ts';
import { icosahedral, pileKinds } from '../shell/fixtures.ts';

const net = icosahedral(3, 0);
const kinds = pileKinds(net);
const list = arrangements(net.shell, kinds);
const [first] = list.arrangements;
if (!first) throw new Error('this net stands in many ways');
const standing = standingShell(net.shell, list.waysUp[first.wayUp] as WayUp, first.cut);
const shape = { shell: net.shell, interchangeable: [], added: [] };

describe('the shapes that hold a standing shell', () => {
  it('are all that have it, the one it was made from among them', () => {
    expect(shapesHolding(standing.shell, [shape, shape], 1, kinds)).toEqual([0, 1]);
  });

  it('are none that have other panels in its places', () => {
    const swapped = { ...net.shell, kind: net.shell.kind.map((k) => (k + 1) % kinds.length) };
    const other = { shell: swapped, interchangeable: [], added: [] };
    expect(shapesHolding(standing.shell, [shape, other], 0, kinds)).toEqual([0]);
  });

  it('are those that differ only where kinds may stand for one another', () => {
    const ids = kinds.map(({ id }) => id);
    const swapped = { ...net.shell, kind: net.shell.kind.map((k) => (k + 1) % kinds.length) };
    const other = { shell: swapped, interchangeable: [ids], added: [] };
    const own = { shell: net.shell, interchangeable: [ids], added: [] };
    const found = shapesHolding(standing.shell, [own, other], 0, kinds);
    expect(found).toEqual([0, 1]);
  });

  it('are none that go by other kinds', () => {
    const [kind] = kinds;
    if (!kind) throw new Error('this net has kinds');
    const added = [{ why: 'wanted' as const, of: null, kind }];
    expect(shapesHolding(standing.shell, [shape, { ...shape, added }], 0, kinds)).toEqual([0]);
  });
});
