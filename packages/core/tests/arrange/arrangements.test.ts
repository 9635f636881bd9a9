import { describe, expect, it } from 'vitest';
import {
  type ArrangeOptions,
  arrangements,
  standingShell,
} from '../../src/arrange/arrangements.ts';
import { seededRandom } from '../../src/math/random.ts';
import type { NetShell } from '../../src/nets/kinds.ts';
import type { Kind } from '../../src/pile/kind.ts';
import { checkShell } from '../../src/shell/check.ts';
import { coursesOf } from '../../src/shell/courses.ts';
import { meanSideLength } from '../../src/shell/geometry.ts';
import type { HubId, PlaceId, SeamId } from '../../src/shell/ids.ts';
import {
  type Crown,
  crownAtHub,
  crownAtPlace,
  crownAtSeam,
  orientShell,
} from '../../src/shell/orient.ts';
import { partOf } from '../../src/shell/part.ts';
import { baseRing } from '../../src/shell/rims.ts';
import { hubCount, placeCount, type Shell, seamCount } from '../../src/shell/shell.ts';
import { icosahedral, octahedral, pileKinds } from '../shell/fixtures.ts';

const stocked = (net: NetShell, share: (kind: Kind, k: number) => Partial<Kind>): Kind[] =>
  pileKinds(net).map((kind, k) => ({ ...kind, ...share(kind, k) }));

describe('arrangements', () => {
  it('of a four-step net with half the ball in stock stand the half ball on its flat equator', () => {
    const net = icosahedral(4, 0);
    const list = arrangements(
      net.shell,
      stocked(net, (kind) => ({ good: kind.good / 2 })),
    );
    expect(list).toMatchObject({ status: 'arranged', reason: '', rotations: 60, complete: true });
    const best = list.arrangements[list.tallest as number];
    expect(best).toMatchObject({ short: 0, openSides: 20, courses: [40, 40, 35, 25, 15, 5] });
    expect(best?.cut.height).toBeCloseTo(1, 9);
    expect(best?.stock.every((row) => row.left === 0)).toBe(true);
    expect(list.tallestFlat).toBe(list.tallest);
  });

  it('with one panel less fall short of the half ball by one and say of which kind', () => {
    const net = icosahedral(4, 0);
    const kinds = stocked(net, (kind, k) => ({
      good: kind.good / 2 - (k === 2 ? 1 : 0),
      repair: k === 2 ? 1 : 0,
    }));
    const list = arrangements(net.shell, kinds);
    const miss = list.arrangements.find((a) => a.short > 0);
    expect(miss).toMatchObject({ short: 1, courses: [40, 40, 35, 25, 15, 5] });
    expect(miss?.stock.filter((row) => row.short > 0).map((row) => row.kinds)).toEqual([
      [kinds[2]?.id],
    ]);
    expect(list.arrangements[list.tallest as number]?.cut.height).toBeLessThan(1);
    const mended = arrangements(net.shell, kinds, { repaired: true });
    expect(mended.arrangements[mended.tallest as number]?.cut.height).toBeCloseTo(1, 9);
  });

  it('are in order: nothing short first, the tallest of these, then those that lack fewest', () => {
    const net = icosahedral(3, 0);
    const { arrangements: list } = arrangements(
      net.shell,
      stocked(net, () => ({ good: 50 })),
    );
    list.slice(1).forEach((a, i) => {
      const before = list[i];
      expect(a.short).toBeGreaterThanOrEqual(before?.short as number);
      if (a.short === before?.short) expect(a.cut.rise).toBeLessThanOrEqual(before.cut.rise + 1e-6);
    });
    expect(new Set(list.map((a) => `${a.wayUp} ${a.cut.places.join()}`)).size).toBe(list.length);
  });

  it('count stock, needs and leftovers without losing a panel', () => {
    const net = icosahedral(3, 1);
    const kinds = stocked(net, (_, k) => ({ good: 20 + 7 * (k % 3), repair: k % 2 }));
    for (const a of arrangements(net.shell, kinds, { repaired: true }).arrangements) {
      expect(a.stock.reduce((sum, row) => sum + row.need, 0)).toBe(a.cut.places.length);
      expect(a.stock.reduce((sum, row) => sum + row.short, 0)).toBe(a.short);
      expect(a.courses.reduce((sum, n) => sum + n, 0)).toBe(a.cut.places.length);
      for (const row of a.stock)
        expect(row.good + row.repair - row.need).toBe(row.left - row.short);
    }
  });

  it('take kinds that nobody counted as unlimited and name them', () => {
    const net = icosahedral(2, 0);
    const list = arrangements(
      net.shell,
      stocked(net, (_, k) => (k === 0 ? { good: 0, counted: false } : { good: 10 })),
    );
    expect(list.uncounted).toEqual(['1']);
    expect(list.arrangements[list.tallest as number]).toMatchObject({ short: 0, openSides: 10 });
    expect(list.arrangements[list.tallest as number]?.cut.height).toBeCloseTo(1, 9);
  });

  it('let interchangeable kinds share their stock', () => {
    const net = icosahedral(2, 0);
    const kinds = stocked(net, (_, k) => ({ good: k === 0 ? 40 : 0 }));
    const apart = arrangements(net.shell, kinds);
    expect(apart.arrangements[apart.tallest as number]?.cut.places).toHaveLength(5);
    const shared = arrangements(net.shell, kinds, { interchangeable: [['1', '2']] });
    expect(shared.arrangements[shared.tallest as number]?.cut.places).toHaveLength(40);
    expect(shared.arrangements[0]?.stock).toHaveLength(1);
  });

  it('of a net that was never complete are none, with the reason', () => {
    const net = icosahedral(2, 0);
    const open = partOf(net.shell, [...Array(70).keys()]).shell;
    const list = arrangements(open, pileKinds(net));
    expect(list).toMatchObject({ status: 'open', arrangements: [], waysUp: [], tallest: null });
    expect(list.reason).toMatch(/\d+ sides meet nothing/);
    expect(arrangements(partOf(net.shell, []).shell, pileKinds(net)).status).toBe('open');
  });

  it('of a net that is no sound surface are none, with the reason', () => {
    const net = icosahedral(2, 0);
    const hubs = net.shell.hubs.map((x, i) => (i < 3 ? 1.1 * x : x));
    const list = arrangements({ ...net.shell, hubs }, pileKinds(net));
    expect(list).toMatchObject({ status: 'unsound', arrangements: [] });
    expect(list.reason).toContain('hub 0 is off the sphere');
  });

  it('leave out balls on a foot, unless told otherwise', () => {
    const net = icosahedral(2, 0);
    const lowest = (options?: ArrangeOptions): number =>
      Math.min(
        ...arrangements(net.shell, pileKinds(net), options)
          .arrangements.filter((a) => a.cut.baseZ.mean < 0)
          .map((a) => a.cut.floor.mean),
      );
    expect(lowest()).toBeGreaterThanOrEqual(0.5);
    expect(lowest({ leastFloor: 0 })).toBeLessThan(0.5);
  });

  it('say when limits left something out', () => {
    const net = icosahedral(2, 0);
    expect(arrangements(net.shell, pileKinds(net), { most: 3 }).complete).toBe(false);
    expect(arrangements(net.shell, pileKinds(net), { mostWays: 2 }).complete).toBe(false);
    expect(arrangements(net.shell, pileKinds(net), { crowns: ['hub'] }).complete).toBe(true);
  });

  it.each([
    ['two-step', icosahedral(2, 0)],
    ['(2, 1)', icosahedral(2, 1)],
    ['octahedral three-step', octahedral(3, 0)],
  ])(
    'of the %s net find the tallest that brute force finds, with nothing short (seeds 1 to 6)',
    (_, net) => {
      const shells = everyCut(net.shell);
      for (let seed = 1; seed <= 6; seed++) {
        const random = seededRandom(seed);
        const kinds = stocked(net, (kind) => ({
          good: Math.floor(kind.good * (0.3 + 0.6 * random.uniform())),
        }));
        const list = arrangements(net.shell, kinds, { leastFloor: 0 });
        const tallest = Math.max(
          0,
          ...shells
            .filter(({ need }) => kinds.every((kind, k) => (need[k] ?? 0) <= kind.good))
            .map(({ rise }) => rise),
        );
        const found = list.tallest === null ? 0 : list.arrangements[list.tallest]?.cut.rise;
        expect(found).toBeCloseTo(tallest, 5);
      }
    },
  );
});

describe('the standing shell', () => {
  it('is what its arrangement says', () => {
    const net = icosahedral(3, 0);
    const list = arrangements(net.shell, pileKinds(net));
    for (const a of list.arrangements.slice(0, 40)) {
      const standing = standingShell(net.shell, list.waysUp[a.wayUp] as never, a.cut, 0.4);
      const { shell } = standing;
      expect(checkShell(shell)).toMatchObject({ sound: true, rims: 1 });
      expect(coursesOf(shell).counts).toEqual(a.courses);
      expect(baseRing(shell)?.hubs).toHaveLength(a.openSides);
      expect(baseRing(shell)?.z.min).toBeCloseTo(a.cut.baseZ.min, 9);
      expect([...standing.places].map((p) => net.shell.kind[p])).toEqual([...shell.kind]);
      expect(2 * seamCount(shell)).toBe(3 * placeCount(shell) - a.openSides);
    }
  });
});

describe('speed', () => {
  it.each([
    [320, icosahedral(4, 0), 4],
    [720, icosahedral(6, 0), 12],
  ])('all arrangements of %i places are found in seconds', (places, net, seconds) => {
    expect(placeCount(net.shell)).toBe(places);
    const start = performance.now();
    arrangements(net.shell, pileKinds(net));
    expect((performance.now() - start) / 1000).toBeLessThan(seconds);
  });
});

/** Every cut by height of every way up, without symmetry: each crown, each height of a hub, each
 * growing ring around the crown; what hangs, pinches or is ragged left out by the plainest means. */
function everyCut(net: Shell): { need: number[]; rise: number }[] {
  const crowns: Crown[] = [
    ...Array.from({ length: hubCount(net) }, (_, h) => crownAtHub(net, h as HubId)),
    ...Array.from({ length: seamCount(net) }, (_, m) => crownAtSeam(net, m as SeamId)),
    ...Array.from({ length: placeCount(net) }, (_, p) => crownAtPlace(net, p as PlaceId)),
  ];
  const side = meanSideLength(net);
  const found = new Map<string, { need: number[]; rise: number }>();
  for (const crown of crowns) {
    const up = orientShell(net, crown);
    const z = (hub: number): number => up.hubs[3 * hub + 2] as number;
    const hubsAt = (p: number): number[] => [0, 1, 2].map((i) => up.sideHub[3 * p + i] as number);
    const all = [...Array(placeCount(net)).keys()];
    const heights = [...Array(hubCount(net)).keys()].map(z);
    const top = Math.max(...heights);
    const sets = heights.map((level) =>
      all.filter(
        (p) =>
          hubsAt(p).every((h) => z(h) >= level - 1e-9) &&
          hubsAt(p).some((h) => z(h) > level + 0.02 * side),
      ),
    );
    let reached = new Set(heights.flatMap((h, i) => (h >= top - 0.02 * side ? [i] : [])));
    for (let ring = 0; ring < 12; ring++) {
      const touched = all.filter((p) => hubsAt(p).some((h) => reached.has(h)));
      reached = new Set(touched.flatMap(hubsAt));
      sets.push(all.filter((p) => hubsAt(p).every((h) => reached.has(h))));
    }
    for (const set of sets) {
      const key = `${Math.round(1e6 * top)} ${set.join()}`;
      if (set.length === 0 || found.has(key)) continue;
      const part = partOf(up, set).shell;
      const verdict = checkShell(part);
      if (!verdict.sound || verdict.rims !== 1) continue;
      const seams = set.map(() => 0);
      for (const s of part.seams)
        seams[part.sidePlace[s] as number] = (seams[part.sidePlace[s] as number] ?? 0) + 1;
      if (seams.some((n) => n < 2)) continue;
      const base = baseRing(part)?.z as { min: number; mean: number; max: number };
      if (base.max - base.min > 0.6 * side) continue;
      const need: number[] = [];
      for (const p of set) need[net.kind[p] as number] = (need[net.kind[p] as number] ?? 0) + 1;
      found.set(key, { need, rise: top - base.mean });
    }
  }
  return [...found.values()];
}

it('options that are no numbers from 0 are refused', () => {
  const net = icosahedral(1, 0);
  for (const name of ['most', 'mostWays', 'leastFloor'])
    expect(() => arrangements(net.shell, pileKinds(net), { [name]: Number.NaN })).toThrow(
      `${name} is NaN`,
    );
});
