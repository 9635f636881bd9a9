import { describe, expect, it } from 'vitest';
import { howItStands } from '../../src/stages/how-it-stands.ts';
import { leastPatch, type Patch, stillPatch, tiesByHub } from '../../src/stages/patches.ts';
import { frameOfStage, type Stage } from '../../src/stages/stage.ts';
import { freeCount, heldToo, tiedFrame } from '../../src/stages/tied.ts';
import { cutBall, inNumberOrder } from './fixtures.ts';

const shell = cutBall(3, 105);
const order = inNumberOrder(shell);
const tiedAt = (n: number) => tiedFrame(frameOfStage(shell, { placed: order.slice(0, n) }));

/** Movements that are free with all hubs held but those of a patch. */
function movesAlone(n: number, patch: Patch): number {
  const tied = tiedAt(n);
  const others = [...tiesByHub(tied).unknowns.keys()].filter((hub) => !patch.includes(hub));
  return freeCount(heldToo(tied, others));
}

describe('holding more hubs in the ties of a stage', () => {
  it('counts the same movements as a frame made with those props', () => {
    for (const n of [9, 23, 41, 60, 84]) {
      const tied = tiedAt(n);
      const hubs = [...tiesByHub(tied).unknowns.keys()];
      for (const props of [hubs.slice(0, 1), hubs.filter((_, k) => k % 5 === 0), hubs]) {
        const stage: Stage = { placed: order.slice(0, n), props };
        expect(freeCount(heldToo(tied, props))).toBe(
          freeCount(tiedFrame(frameOfStage(shell, stage))),
        );
      }
    }
  });
});

describe('a patch', () => {
  it('moves freely with every other hub held, and not with one more held, if it is small', () => {
    let seen = 0;
    for (const n of [9, 23, 41, 60, 84])
      for (const patch of howItStands(shell, { placed: order.slice(0, n) }).patches) {
        expect(movesAlone(n, patch)).toBeGreaterThan(0);
        seen++;
        if (patch.length > 40) continue;
        for (const hub of patch)
          expect(
            movesAlone(
              n,
              patch.filter((one) => one !== hub),
            ),
          ).toBe(0);
      }
    expect(seen).toBeGreaterThan(10);
  });

  it('is hit by the props, whose number no fewer hubs reach that hit all', () => {
    for (const n of [9, 23, 41, 60, 84]) {
      const { props, patches, proved } = howItStands(shell, { placed: order.slice(0, n) });
      expect(proved).toBe(true);
      for (const patch of patches) expect(patch.some((hub) => props?.includes(hub))).toBe(true);
    }
  });

  it('of the stage before changes nothing in the answer but the way to it', () => {
    let patches: readonly Patch[] = [];
    for (let n = 20; n < 50; n += 3) {
      const stage = { placed: order.slice(0, n) };
      const alone = howItStands(shell, stage);
      const after = howItStands(shell, stage, { patches });
      expect([alone.proved, after.proved]).toEqual([true, true]);
      expect(after.props?.length).toBe(alone.props?.length);
      patches = after.patches;
    }
  });

  it('is none of hubs that hold each other, of none, or of hubs that are held', () => {
    const tied = tiedAt(41);
    const ties = tiesByHub(tied);
    const { props } = howItStands(shell, { placed: order.slice(0, 41) });
    const held = tiesByHub(heldToo(tied, props as number[]));
    expect(leastPatch(held, [...held.unknowns.keys()])).toBeNull();
    expect(leastPatch(ties, [])).toBeNull();
    expect(stillPatch(held, props as number[])).toBeNull();
    expect(leastPatch(ties, [...ties.unknowns.keys()])).not.toBeNull();
  });
});
