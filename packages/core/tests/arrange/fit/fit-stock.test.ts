import highsLoader from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import { arrangements } from '../../../src/arrange/arrangements.ts';
import { type FitAnswer, fitStock } from '../../../src/arrange/fit/fit-stock.ts';
import { defaultWishes, type Wishes } from '../../../src/arrange/fit/wishes.ts';
import { type HighsRuntime, highsSolver } from '../../../src/arrange/program/highs-solver.ts';
import type { ProgramSolver } from '../../../src/arrange/program/solve.ts';
import { seededRandom } from '../../../src/math/random.ts';
import type { NetShell } from '../../../src/nets/kinds.ts';
import type { Kind } from '../../../src/pile/kind.ts';
import { partOf } from '../../../src/shell/part.ts';
import type { Shell } from '../../../src/shell/shell.ts';
import { starsOf } from '../../../src/shell/stars.ts';
import { icosahedral, octahedral, pileKinds } from '../../shell/fixtures.ts';

let solver: ProgramSolver;
beforeAll(async () => {
  const load = highsLoader as unknown as () => Promise<HighsRuntime>;
  solver = highsSolver(await load());
});

const stocked = (net: NetShell, share: (kind: Kind, k: number) => Partial<Kind>): Kind[] =>
  pileKinds(net).map((kind, k) => ({ ...kind, ...share(kind, k) }));

const fit = (net: NetShell, kinds: readonly Kind[], wishes: Partial<Wishes>): FitAnswer =>
  fitStock(net.shell, kinds, { ...defaultWishes, ...wishes }, solver, {
    now: () => 0,
    seconds: 1000,
  });

/** Whether these places may be left out of those, by the laws as words have them. */
function mayBeOpen(shell: Shell, places: readonly number[], open: ReadonlySet<number>): boolean {
  const inside = new Set(places);
  const across = (s: number): number => {
    const mate = shell.mate[s] as number;
    const place = mate < 0 ? -1 : (shell.sidePlace[mate] as number);
    return inside.has(place) ? place : -1;
  };
  for (const p of places) {
    const sides = [...Array(shell.sideHub.length).keys()].filter((s) => shell.sidePlace[s] === p);
    const around = sides.map(across).filter((q) => q >= 0);
    if (open.has(p) && around.some((q) => open.has(q))) return false;
    const held = around.filter((q) => !open.has(q)).length;
    if (!open.has(p) && held < Math.min(2, around.length)) return false;
  }
  const part = partOf(shell, places);
  return starsOf(part.shell).every(({ corners, closed }) => {
    const own = corners.map((s) => part.places[part.shell.sidePlace[s] as number] as number);
    const lost = own.filter((p) => open.has(p)).length;
    if (!closed) return lost <= 1;
    const seams = own.filter(
      (p, i) => !open.has(p) && !open.has(own[(i + 1) % own.length] as number),
    );
    return lost === 0 || seams.length >= 3;
  });
}

function subsets<T>(items: readonly T[], most: number): T[][] {
  if (items.length === 0 || most === 0) return [[]];
  const [first, ...rest] = items as [T, ...T[]];
  return [...subsets(rest, most), ...subsets(rest, most - 1).map((own) => [first, ...own])];
}

describe('the best fit', () => {
  it('of a full stock is the tallest shell, with nothing bought, mended or left open', () => {
    const net = icosahedral(3, 0);
    const answer = fit(net, pileKinds(net), {});
    expect(answer).toMatchObject({ status: 'fitted', proved: true });
    const list = arrangements(net.shell, pileKinds(net));
    const tallest = Math.max(...list.arrangements.map((one) => one.cut.rise));
    expect(answer.fits[0]).toMatchObject({ bought: 0, mended: 0, gaps: 0 });
    expect(answer.fits[0]?.arrangement.cut.rise).toBeCloseTo(tallest, 6);
  });

  it('is that of trying every gap in every outline (octahedral and icosahedral nets, seeds 1 to 4)', () => {
    for (let seed = 1; seed <= 4; seed++) {
      const random = seededRandom(seed);
      const net = seed % 2 === 0 ? octahedral(2, 0) : icosahedral(2, 0);
      const kinds = stocked(net, ({ good }) => ({
        good: Math.max(0, Math.floor(good / 2) - random.below(4)),
        repair: random.below(2),
      }));
      const mostGaps = random.below(3);
      const answer = fit(net, kinds, {
        mostGaps,
        order: ['fewest bought', 'tallest', 'fewest gaps'],
      });
      const best = answer.fits[0];
      if (!best) throw new Error(`seed ${seed}: nothing`);
      expect(answer.proved).toBe(true);
      const least = byTrying(net, kinds, mostGaps);
      expect([seed, best.bought, -Math.round(best.arrangement.cut.rise * 1000)]).toEqual([
        seed,
        ...least,
      ]);
    }
  });
});

/** Fewest bought, then tallest (in steps of a thousandth of the unit radius), by trying every gap. */
function byTrying(net: NetShell, kinds: readonly Kind[], mostGaps: number): [number, number] {
  const list = arrangements(net.shell, kinds, { most: 2000 });
  let best: [number, number] = [Infinity, Infinity];
  for (const { cut, wayUp } of list.arrangements) {
    const places = Array.from(cut.places);
    const height = -Math.round(cut.rise * 1000);
    const crown = list.waysUp[wayUp];
    expect(crown).toBeDefined();
    for (const open of subsets(places, mostGaps)) {
      if (!mayBeOpen(net.shell, places, new Set(open))) continue;
      let bought = 0;
      kinds.forEach((kind, k) => {
        const need = places.filter((p) => !open.includes(p) && net.shell.kind[p] === k).length;
        bought += Math.max(0, need - kind.good - kind.repair);
      });
      if (bought < best[0] || (bought === best[0] && height < best[1])) best = [bought, height];
    }
  }
  return best;
}
