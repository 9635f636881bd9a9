import highsLoader from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import { arrangements } from '../../../src/arrange/arrangements.ts';
import { type FitAnswer, fitStock } from '../../../src/arrange/fit/fit-stock.ts';
import { defaultWishes, type Wishes } from '../../../src/arrange/fit/wishes.ts';
import { openingsFor } from '../../../src/arrange/openings/openings.ts';
import { doorOutline } from '../../../src/arrange/openings/passing.ts';
import { fewestInConflict } from '../../../src/arrange/program/conflict.ts';
import { type HighsRuntime, highsSolver } from '../../../src/arrange/program/highs-solver.ts';
import type { ProgramSolver } from '../../../src/arrange/program/solve.ts';
import { seededRandom } from '../../../src/math/random.ts';
import { orientShell } from '../../../src/shell/orient.ts';
import { partOf } from '../../../src/shell/part.ts';
import { icosahedral, pileKinds } from '../../shell/fixtures.ts';

let solver: ProgramSolver;
beforeAll(async () => {
  const load = highsLoader as unknown as () => Promise<HighsRuntime>;
  solver = highsSolver(await load());
});

const net = icosahedral(2, 0);
const kinds = pileKinds(net).map((kind) => ({ ...kind, good: Math.floor(kind.good * 0.6) }));
const list = arrangements(net.shell, kinds);
const fit = (wishes: Partial<Wishes>): FitAnswer =>
  fitStock(net.shell, kinds, { ...defaultWishes, ...wishes }, solver, {
    now: () => 0,
    seconds: 1000,
  });

describe('the fewest wishes in conflict', () => {
  it('are as few as any set that can’t be kept (random families of such sets, seeds 1 to 200)', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const random = seededRandom(seed);
      const wishes = [0, 1, 2, 3, 4, 5];
      const bad = [...Array(1 + random.below(3))].map(() => {
        const size = 1 + random.below(3);
        const set = new Set<number>();
        while (set.size < size) set.add(random.below(6));
        return set;
      });
      const possible = (kept: readonly number[]): boolean =>
        !bad.some((set) => [...set].every((one) => kept.includes(one)));
      const found = fewestInConflict(wishes, possible);
      expect(possible(found)).toBe(false);
      expect([seed, found.length]).toEqual([seed, Math.min(...bad.map((set) => set.size))]);
    }
  });
});

describe('wishes that can’t be kept', () => {
  it('are named, with what each could be with the others kept: height against what is bought', () => {
    const answer = fit({ leastHeight: 1.5, mostBought: 0 });
    expect(answer).toMatchObject({ status: 'conflict', conflict: ['leastHeight', 'mostBought'] });
    const [height, bought] = answer.nearest;
    if (height?.demand !== 'leastHeight' || bought?.demand !== 'mostBought')
      throw new Error('other wishes');
    const full = list.arrangements.filter(({ short }) => short === 0);
    expect(height.value).toBeCloseTo(Math.max(...full.map(({ cut }) => cut.height)), 9);
    const tall = list.arrangements.filter(({ cut }) => cut.height >= 1.5);
    expect(bought.value).toBe(Math.min(...tall.map(({ short }) => short)));
    expect(fit({ leastHeight: height.value, mostBought: 0 }).status).toBe('fitted');
    expect(fit({ leastHeight: height.value + 1e-6, mostBought: 0 }).status).toBe('conflict');
    expect(fit({ leastHeight: 1.5, mostBought: bought.value }).status).toBe('fitted');
    expect(fit({ leastHeight: 1.5, mostBought: bought.value - 1 }).status).toBe('conflict');
  });

  it('may be one alone: more spares than the heap has of any kind', () => {
    const answer = fit({ spares: 90, flatBase: true });
    expect(answer.conflict).toEqual(['spares']);
    const [most] = answer.nearest;
    if (most?.demand !== 'spares') throw new Error('another wish');
    expect(fit({ spares: most.value, flatBase: true }).status).toBe('fitted');
    expect(fit({ spares: most.value + 1, flatBase: true }).status).toBe('conflict');
    expect(fit({ spares: 90, flatBase: true, order: ['spares kept'] }).status).toBe('fitted');
  });

  it('may be a door larger than the shell: the highest and the widest that there can be', () => {
    const answer = fit({ door: { width: 0.3, height: 3 } });
    expect(answer.conflict).toEqual(['door']);
    const [nearest] = answer.nearest;
    if (nearest?.demand !== 'door') throw new Error('another wish');
    const [high] = nearest.doors;
    if (!high) throw new Error('no door');
    expect(high.width).toBe(0.3);
    expect(fit({ door: high }).status).toBe('fitted');
    expect(fit({ door: { width: 0.3, height: high.height + 0.05 } }).status).toBe('conflict');
    expect(fit({ door: { width: 0.3, height: 3 }, order: ['door'] }).fits[0]?.door).toBeNull();
  });
});

describe('a fit with a door', () => {
  it('is the best of every outline with every door that it can have', () => {
    const door = { width: 0.25, height: 0.45 };
    const answer = fit({ door, order: ['fewest bought', 'tallest'] });
    const best = answer.fits[0];
    expect(answer.proved).toBe(true);
    let least: readonly [number, number] = [Infinity, Infinity];
    for (const { cut, wayUp } of list.arrangements) {
      const crown = list.waysUp[wayUp]?.crown;
      if (!crown) throw new Error('no crown');
      const part = partOf(orientShell(net.shell, crown), cut.places);
      const outline = doorOutline(door.width, door.height);
      for (const { places } of openingsFor(part.shell, { outline })) {
        const out = new Set(places.map((p) => part.places[p]));
        const bought = kinds.reduce((sum, { good }, k) => {
          const need = Array.from(cut.places).filter((p) => net.shell.kind[p] === k && !out.has(p));
          return sum + Math.max(0, need.length - good);
        }, 0);
        const height = -Math.round(cut.rise * 1000);
        if (bought < least[0] || (bought === least[0] && height < least[1]))
          least = [bought, height];
      }
    }
    expect([best?.bought, -Math.round((best?.arrangement.cut.rise ?? 0) * 1000)]).toEqual([
      ...least,
    ]);
    expect(best?.door?.places.length).toBe(best?.sources.filter((one) => one === 'door').length);
  });
});

describe('a base that may be sawn level', () => {
  it('counts as level, and as high as what stays', () => {
    const wishes: Partial<Wishes> = { flatBase: true, order: ['fewest bought', 'tallest'] };
    const [level, sawn] = [fit(wishes), fit({ ...wishes, mayCut: true })];
    expect(level.outlines).toBe(list.arrangements.filter(({ cut }) => cut.flat).length);
    expect(sawn.outlines).toBe(list.arrangements.length);
    const full = list.arrangements.filter(({ short }) => short === 0);
    const heights = full.map(({ cut }) =>
      cut.flat ? cut.rise : cut.height - (cut.baseZ.max - cut.baseZ.min),
    );
    const cut = sawn.fits[0]?.arrangement.cut;
    if (!cut) throw new Error('no fit');
    const own = cut.flat ? cut.rise : cut.height - (cut.baseZ.max - cut.baseZ.min);
    expect(own).toBeCloseTo(Math.max(...heights), 3);
  });

  it('and ways up off the crowns are never worse than the crowns alone', () => {
    const order: Wishes['order'] = ['fewest bought', 'tallest'];
    const [plain, all] = [fit({ order }), fit({ order, leaning: true })];
    expect(all.outlines).toBeGreaterThan(plain.outlines);
    expect(all.fits[0]?.bought).toBe(0);
    expect(all.fits[0]?.arrangement.cut.rise).toBeGreaterThanOrEqual(
      plain.fits[0]?.arrangement.cut.rise ?? Infinity,
    );
  });
});
