import { describe, expect, it } from 'vitest';
import { holesTake, nearFit } from '../../../src/arrange/swaps/near-fit.ts';
import {
  type BuildState,
  type Replacement,
  replacementsFor,
} from '../../../src/arrange/swaps/replacements.ts';
import { seededRandom } from '../../../src/math/random.ts';
import type { Kind } from '../../../src/pile/kind.ts';
import { kindSide, placeCount, type Shell, sideCount } from '../../../src/shell/shell.ts';
import { icosahedral, pileKinds } from '../../shell/fixtures.ts';

const net = icosahedral(4, 0);
const { shell } = net;
const kinds = pileKinds(net);
const places = placeCount(shell);
const of = (kind: number): number[] =>
  [...Array(places).keys()].filter((p) => shell.kind[p] === kind);
const built = (all: readonly number[]): Uint8Array =>
  Uint8Array.from({ length: places }, (_, p) => (all.includes(p) ? 1 : 0));
const none = kinds.map(() => 0);
const spare = (kind: number): number[] => kinds.map((_, k) => (k === kind ? 1 : 0));
const everything = [...Array(places).keys()];

describe('a broken panel', () => {
  const place = of(1)[0] as number;

  it('is replaced by a spare of its kind, with nothing undone', () => {
    const [first, ...rest] = replacementsFor(shell, kinds, place, {
      built: built(everything),
      spares: spare(1),
    });
    expect(first).toMatchObject({ act: 'move', undone: 0, misfit: 0, leaves: null, lacks: null });
    expect(first?.moves).toMatchObject([{ from: null, to: place, kind: kinds[1]?.id, misfit: 0 }]);
    expect(rest.at(-1)).toMatchObject({ act: 'make', lacks: kinds[1]?.id });
  });

  it('is replaced from a place not built yet, which then lacks its panel', () => {
    const later = of(1).slice(-3);
    const [first] = replacementsFor(shell, kinds, place, {
      built: built(everything.filter((p) => !later.includes(p))),
      spares: none,
    });
    expect(first).toMatchObject({ undone: 0, misfit: 0, lacks: kinds[1]?.id });
    expect(later).toContain(first?.leaves);
  });

  it('can only be made where all stand, nothing is spare and nothing else fits', () => {
    const ways = replacementsFor(
      shell,
      kinds,
      place,
      { built: built(everything), spares: none },
      { mostMisfit: 0.0001 },
    );
    expect(ways.map((one) => one.act)).toEqual(['make']);
  });

  it('leaves fixed places alone', () => {
    const later = of(1).slice(-1);
    const ways = replacementsFor(
      shell,
      kinds,
      place,
      {
        built: built(everything.filter((p) => !later.includes(p))),
        spares: none,
        fixed: new Set(later),
      },
      { mostMisfit: 0.0001 },
    );
    expect(ways.map((one) => one.act)).toEqual(['make']);
  });

  it('lies as its place asks: each side meets one of its own length', () => {
    const turned = kinds.map((kind, k) =>
      k === 2 ? { ...kind, sides: [...kind.sides.slice(1), kind.sides[0] as number] } : kind,
    );
    const state = { built: built(everything), spares: kinds.map(() => 1) };
    for (const p of [0, 17, 40, 99]) {
      const [first] = replacementsFor(shell, turned, p, state, {
        interchangeable: [],
        mostMisfit: 1,
      });
      const move = first?.moves[0] as Replacement['moves'][number];
      const kind = turned.find(({ id }) => id === move.kind) as Kind;
      const start = shell.placeStart[p] as number;
      for (let i = 0; i < 3; i++) {
        const own = turned[shell.kind[p] as number] as Kind;
        const asked = own.sides[kindSide(shell, (start + i) as never)] as number;
        expect(kind.sides[(move.turn + i) % 3]).toBeCloseTo(asked, 9);
      }
    }
  });
});

describe('chains of moves', () => {
  /** Kinds of which 0 fits in places of 1 well, and 1 in those of 2, but 0 not in those of 2. */
  const near = kinds.map((kind, k) => ({ ...kind, sides: kind.sides.map(() => 1 + 0.004 * k) }));

  it('undo the fewest seams, as trying every chain of up to three moves does (seeds 1 to 20)', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const random = seededRandom(seed);
      const up = everything.filter(() => random.uniform() < 0.7);
      const broken = up[random.below(up.length)] as number;
      const state = {
        built: built([...up.filter((p) => shell.kind[p] !== 2), ...of(2), broken]),
        spares: spare(random.below(2)),
      };
      for (const mostMisfit of [0, 0.005]) {
        const ways = replacementsFor(shell, near, broken, state, { mostMisfit }).filter(
          (one) => one.act === 'move',
        );
        const least = byTrying(near, state, broken, mostMisfit);
        expect([seed, mostMisfit, ways[0]?.undone ?? null]).toEqual([seed, mostMisfit, least]);
      }
    }
  });

  it('are told with fewer seams undone at a larger misfit, never more at a larger one', () => {
    const broken = of(2)[0] as number;
    const state = { built: built(everything), spares: spare(0) };
    const ways = replacementsFor(shell, near, broken, state, { mostMisfit: 0.01 });
    const moves = ways.filter((one) => one.act === 'move');
    expect(moves.map((one) => [one.undone > 0, one.misfit > 0.005, one.holesTake])).toEqual([
      [false, true, false],
      [true, false, false],
    ]);
  });
});

function byTrying(
  own: readonly Kind[],
  { built: up, spares }: BuildState,
  broken: number,
  most: number,
): number | null {
  const fits = (from: number, to: number): boolean =>
    from === to || (nearFit(own[to] as Kind, own[from] as Kind)?.misfit ?? Infinity) <= most;
  const kindAt = (p: number): number => shell.kind[p] as number;
  let least = Infinity;
  const walk = (at: number, chain: readonly number[], undone: number): void => {
    if (undone >= least) return;
    if (spares.some((n, k) => n > 0 && fits(k, kindAt(at)))) least = undone;
    for (const p of everything) {
      if (chain.includes(p) || !fits(kindAt(p), kindAt(at))) continue;
      if (!up[p]) least = Math.min(least, undone);
      else if (chain.length < 3) walk(p, [...chain, p], undone + bolted(shell, up, p));
    }
  };
  walk(broken, [broken], 0);
  return Number.isFinite(least) ? least : null;
}

function bolted(net: Shell, up: ArrayLike<number>, p: number): number {
  let seams = 0;
  for (let s = 0; s < sideCount(net); s++) {
    const mate = net.mate[s] as number;
    if (net.sidePlace[s] === p && mate >= 0 && up[net.sidePlace[mate] as number]) seams++;
  }
  return seams;
}

describe('a near fit', () => {
  const kind = (sides: readonly number[], more: Partial<Kind> = {}): Kind =>
    ({ ...(kinds[0] as Kind), sides, ...more }) as Kind;

  it('is told in the best turn, by the side that is furthest off', () => {
    const fit = nearFit(kind([1, 1.1, 1.2]), kind([1.203, 1, 1.1]));
    expect(fit?.turn).toBe(1);
    expect(fit?.misfit).toBeCloseTo(0.003, 12);
  });

  it('keeps to laps and holes where they are known', () => {
    const own = kind([1, 1, 1], { laps: ['over', 'under', 'under'], holes: [4, null, 3] });
    expect(nearFit(own, kind([1, 1, 1], { laps: ['under', 'over', 'under'] }))?.turn).toBe(1);
    expect(nearFit(own, kind([1, 1, 1], { laps: ['under', 'under', 'under'] }))).toBeNull();
    expect(nearFit(own, kind([1, 1, 1], { holes: [5, 5, 5] }))).toBeNull();
  });

  it('goes through the holes while half of it is no more than the bolt has room', () => {
    expect([holesTake(0.002), holesTake(0.0021), holesTake(0.0021, 0.002)]).toEqual([
      true,
      false,
      true,
    ]);
  });
});
