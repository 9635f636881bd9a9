import { describe, expect, it } from 'vitest';
import { fittedDry, sealedBeforeClosing } from '../../src/fitout/closing-seams.ts';
import { leakPaths } from '../../src/fitout/leaks.ts';
import { lyingSeams, shingleOrder, wrongLaps } from '../../src/fitout/seams.ts';
import { sideLength } from '../../src/shell/geometry.ts';
import type { SideId } from '../../src/shell/ids.ts';
import { seamCount } from '../../src/shell/shell.ts';
import { cutBall, inNumberOrder } from '../stages/fixtures.ts';

const shell = cutBall(3, 105);
const seams = lyingSeams(shell);

describe('seams as water meets them', () => {
  it('are as long as their sides, the lower hub first, the upper place over', () => {
    for (const one of seams) {
      expect(one.length).toBeCloseTo(sideLength(shell, shell.seams[2 * one.seam] as SideId), 12);
      expect(one.rise).toBeGreaterThanOrEqual(-1e-9);
      expect(one.over).not.toBe(one.under);
    }
  });
});

describe('strips outside', () => {
  it('lap upper over lower at every hub when laid from the lowest up', () => {
    const order = shingleOrder(shell);
    expect([...order].sort((a, b) => a - b)).toEqual(seams.map(({ seam }) => seam));
    expect(wrongLaps(shell, order)).toEqual([]);
  });
  it('lap the wrong way when laid from the top down, and each such lap is told', () => {
    const wrong = wrongLaps(shell, shingleOrder(shell).reverse());
    expect(wrong.length).toBeGreaterThan(100);
    for (const { hub, upper, lower } of wrong) {
      expect(seams[upper].low).toBe(hub);
      expect(seams[lower].high).toBe(hub);
    }
  });
  it('two strips that are changed about lap wrong where they meet', () => {
    const order = shingleOrder(shell);
    const isAbove = (one: (typeof seams)[number], low: number) => one.low === low && one.rise > 0.1;
    const steep = seams.find(
      ({ high, rise }) => rise > 0.1 && seams.some((one) => isAbove(one, high)),
    )!;
    const above = seams.find((one) => isAbove(one, steep.high))!;
    const [i, j] = [order.indexOf(steep.seam), order.indexOf(above.seam)];
    [order[i], order[j]] = [order[j], order[i]];
    expect(wrongLaps(shell, order)).toContainEqual({
      hub: steep.high,
      upper: above.seam,
      lower: steep.seam,
    });
  });
});

describe('before a seam closes', () => {
  const order = inNumberOrder(shell);
  it('a seal between flanges is laid on every seam, once, with its second panel', () => {
    const closing = sealedBeforeClosing(shell, order, 'between', 2, -1);
    const all = closing.flatMap((one) => one.seams);
    expect(all.length).toBe(seamCount(shell));
    expect(new Set(all).size).toBe(all.length);
    for (const { place, seams: list } of closing)
      for (const seam of list) expect([seams[seam].over, seams[seam].under]).toContain(place);
  });
  it('one outside is laid only where nobody reaches later, one inside never', () => {
    const high = sealedBeforeClosing(shell, order, 'outside', 1, -0.3).flatMap((one) => one.seams);
    expect(high.sort((a, b) => a - b)).toEqual(
      seams.filter(({ middle }) => middle + 0.3 > 1).map(({ seam }) => seam),
    );
    expect(high.length).toBeGreaterThan(0);
    expect(sealedBeforeClosing(shell, order, 'inside', 0, 0)).toEqual([]);
  });
  it('refuses an order that fills a place twice', () => {
    expect(() => sealedBeforeClosing(shell, [1, 2, 1], 'between', 0, 0)).toThrow(
      /place 1 is filled twice/,
    );
  });
});

it('bolts fitted dry are those of bolted seams without the seal between them', () => {
  const done = [
    { pass: 'none', sealed: false, bolts: 3 },
    { pass: 'finger', sealed: false, bolts: 4 },
    { pass: 'final', sealed: true, bolts: 5 },
    { pass: 'snug', sealed: false, bolts: null },
  ] as const;
  expect(fittedDry(done, 'between')).toEqual({ seams: [1, 3], bolts: 4, unknown: 1 });
  expect(fittedDry(done, 'outside')).toEqual({ seams: [], bolts: 0, unknown: 0 });
});

describe('a leak', () => {
  const low = seams.reduce((best, one) => (one.middle < best.middle ? one : best));
  it('may come from itself first, then from seams above it only', () => {
    const paths = leakPaths(shell, [low.seam]);
    expect(paths[0]).toEqual({ seam: low.seam, leaks: [0], along: 0 });
    expect(paths.length).toBeGreaterThan(5);
    for (const { seam } of paths) expect(seams[seam].middle).toBeGreaterThan(low.middle - 1e-9);
  });
  it('two leaks put first what can feed both', () => {
    const top = seams.reduce((best, one) => (one.middle > best.middle ? one : best));
    const other = seams.findLast(({ middle, rise }) => middle < low.middle + 0.3 && rise > 0.01)!;
    const paths = leakPaths(shell, [low.seam, other.seam]);
    const both = paths.filter(({ leaks }) => leaks.length === 2);
    expect(both.length).toBeGreaterThan(0);
    expect(paths.slice(0, both.length)).toEqual(both);
    expect(leakPaths(shell, [top.seam]).length).toBeLessThan(paths.length);
  });
  it('refuses a seam that is not there', () => {
    expect(() => leakPaths(shell, [9999])).toThrow(/leak at seam 9999/);
  });
});
