import { describe, expect, it } from 'vitest';
import { growParts } from '../../src/identify/grow-part.ts';
import { poleSeeds } from '../../src/identify/part-starts.ts';
import { sideBelief } from '../../src/identify/side-belief.ts';
import type { Kind } from '../../src/pile/kind.ts';
import { kindsAtPole, oneAxisBall, readKinds } from './one-axis.ts';
import { kindWith } from './piles.ts';

const fold = { name: '5-fold', order: 5, axes: [5, 5] };

function grown(kinds: readonly Kind[], onWork = (_: number) => true) {
  const readings = sideBelief(kinds, 0);
  return poleSeeds(readings, 5)
    .flatMap((seed) => growParts(readings, fold, [seed], { width: 16, onWork }))
    .sort((a, b) => b.score - a.score);
}

/** All kinds of a ball but some. */
const allBut = (count: number, without: ReadonlySet<number>): number[] =>
  [...Array(count).keys()].filter((k) => !without.has(k));

describe('a part that grows about an axis', () => {
  it('closes all round where no kind lacks', () => {
    const { net, random } = oneAxisBall(2, 1, 1);
    const [best] = grown(readKinds(net, allBut(net.kinds.length, new Set()), random));
    expect(best?.unlaid).toEqual([]);
    expect(best?.net.mate.every((mate) => mate >= 0)).toBe(true);
    expect(Math.abs((best?.radius ?? 0) - 3)).toBeLessThan(0.3);
  });

  it('ends at a rim where some do, every other kind laid once', () => {
    const { net, random } = oneAxisBall(3, 0, 2);
    const without = kindsAtPole(net, 2);
    const [best] = grown(readKinds(net, allBut(net.kinds.length, without), random));
    expect(best?.unlaid).toEqual([]);
    expect(best?.net.pieceKind.length).toBe(net.kinds.length - 2);
    // Of the two that lack, one has two sides that look onto what stands.
    expect(best?.net.mate.filter((mate) => mate < 0).length).toBe(2);
  });

  it('leaves out a panel that has no place in it', () => {
    const { net, random } = oneAxisBall(2, 0, 4);
    const kinds = readKinds(net, allBut(net.kinds.length, new Set()), random);
    const [best] = grown([...kinds, kindWith('odd', [0.7, 0.9, 1.1], 5e-4)]);
    expect(best?.unlaid).toEqual([kinds.length]);
  });

  it('ends soon after it is told to', () => {
    const { net, random } = oneAxisBall(3, 0, 5);
    const kinds = readKinds(net, allBut(net.kinds.length, kindsAtPole(net, 2)), random);
    let [asked, late] = [0, 0];
    grown(kinds, () => {
      if (asked++ < 50) return true;
      late++;
      return false;
    });
    expect(late).toBeGreaterThan(0);
    expect(late).toBeLessThan(40);
  });
});
