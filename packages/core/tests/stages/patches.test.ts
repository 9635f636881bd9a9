import { describe, expect, it } from 'vitest';
import { howItStands } from '../../src/stages/how-it-stands.ts';
import { neededHubs } from '../../src/stages/needed-hubs.ts';
import { PatchMemory } from '../../src/stages/patch-memory.ts';
import {
  leastPatch,
  nearestFirst,
  type Patch,
  stillPatch,
  tiesByHub,
} from '../../src/stages/patches.ts';
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

describe('hubs that are needed', () => {
  it('are a patch, and none without any one of them', () => {
    for (const n of [23, 41, 60, 84]) {
      const ties = tiesByHub(tiedAt(n));
      const { patches } = howItStands(shell, { placed: order.slice(0, n) });
      for (const patch of patches.slice(0, 3)) {
        const more = nearestFirst(ties, patch[0] as number, [...ties.unknowns.keys()]).slice(0, 20);
        const list = [...new Set([...patch, ...more])];
        const needed = neededHubs(ties, list) as readonly number[];
        expect(movesAlone(n, needed)).toBeGreaterThan(0);
        for (const hub of needed)
          expect(
            movesAlone(
              n,
              needed.filter((one) => one !== hub),
            ),
          ).toBe(0);
      }
    }
  });

  it('are none where the list is no patch', () => {
    const n = 41;
    const ties = tiesByHub(tiedAt(n));
    const { patches } = howItStands(shell, { placed: order.slice(0, n) });
    expect(neededHubs(ties, (patches[0] as Patch).slice(1))).toEqual([]);
    expect(neededHubs(ties, [])).toEqual([]);
  });
});

describe('a memory of patches', () => {
  it('answers like a search from the beginning, stage after stage, and takes no stage for another', () => {
    const memory = new PatchMemory();
    let patches: readonly Patch[] = [];
    for (const n of [40, 41, 42, 60, 41]) {
      const ties = tiesByHub(tiedAt(n));
      memory.begin(ties);
      for (const patch of patches) {
        const still = memory.still(ties, patch);
        if (still !== null) expect(movesAlone(n, still)).toBeGreaterThan(0);
        else expect(stillPatch(ties, patch)).toBeNull();
      }
      const hubs = [...ties.unknowns.keys()];
      patches = hubs.flatMap((hub) => {
        const near = nearestFirst(ties, hub, hubs);
        const patch = memory.least(ties, near);
        expect(patch).toEqual(leastPatch(ties, near, 40));
        return patch ? [patch] : [];
      });
    }
  });
});
