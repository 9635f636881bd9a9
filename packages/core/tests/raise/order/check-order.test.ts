import { describe, expect, it } from 'vitest';
import { distance, dot, pointAt, subtract } from '../../../src/math/vector.ts';
import {
  checkOrder,
  liftsOf,
  type OrderBreak,
  type OrderedLift,
  reordered,
} from '../../../src/raise/order/check-order.ts';
import { noPins } from '../../../src/raise/order/pins.ts';
import { plainBrief, planRaising, siteFor } from '../../../src/raise/order/raise.ts';
import { cutBall } from '../../stages/fixtures.ts';

const shell = cutBall(1, 15);
const brief = plainBrief(shell);
const [made, read] = [planRaising(brief, { tries: 20 }), siteFor(brief)];
if (!made.ok || !read.ok) throw new Error('no plan');
const [plan, site] = [made.value, read.value];
const numbers = plan.stages.map(({ number }) => number);

type Fall = Extract<OrderBreak, { readonly what: 'falls' }>;
const fallOf = (lifts: readonly OrderedLift[]): Fall | undefined =>
  checkOrder(site, lifts, noPins).find((one): one is Fall => one.what === 'falls');

describe('an order changed by hand', () => {
  it('breaks nothing where it is the plan’s own', () => {
    expect(checkOrder(site, liftsOf(plan), noPins)).toEqual([]);
  });

  it('is refused where a stage falls: with the lift, what moves, and the props that would hold it', () => {
    const order = [2, 1, ...numbers.slice(2)];
    const fall = fallOf(reordered(plan, order));
    if (!fall) throw new Error('nothing falls');
    expect(fall).toMatchObject({ lift: 0, movements: 1 });
    expect(fall.words).toMatch(
      /^After lift 1 it moves freely in 1 way, most at hub \d+: 1-\d\d\.$/,
    );
    const lifts = reordered(plan, order).map((lift, i) =>
      i === 0 ? { ...lift, props: [...lift.props, ...(fall.needs ?? [])] } : lift,
    );
    const again = checkOrder(site, lifts, noPins, { to: 0 });
    expect(again.filter(({ what }) => what === 'falls')).toEqual([]);
  });

  it('shows a mechanism in which every panel keeps its shape and the largest movement is 1 long', () => {
    const bare = liftsOf(plan).map((lift) => ({ ...lift, props: [] }));
    const fall = fallOf(bare);
    if (!fall) throw new Error('nothing falls without props');
    const { corners, places } = fall.way;
    let corner = 0;
    let most = 0;
    for (const place of places) {
      const hubs = [...shell.sideHub.slice(shell.placeStart[place], shell.placeStart[place + 1])];
      const at = hubs.map((hub) => pointAt(shell.hubs, hub));
      const by = hubs.map((_, k) => pointAt(corners, corner + k));
      for (const [k, one] of at.entries()) {
        most = Math.max(most, Math.hypot(...(by[k] ?? [0, 0, 0])));
        const next = (k + 1) % at.length;
        const along = subtract(at[next] ?? one, one);
        const apart = subtract(by[next] ?? [0, 0, 0], by[k] ?? [0, 0, 0]);
        expect(Math.abs(dot(along, apart)) / distance(at[next] ?? one, one)).toBeLessThan(1e-6);
      }
      corner += hubs.length;
    }
    expect(most).toBeCloseTo(1, 6);
    expect(fall.moving.every((place) => places.includes(place))).toBe(true);
  });

  it('is refused where a piece floats, is brought twice or left out, or the way out closes first', () => {
    const whats = (lifts: readonly OrderedLift[]): string[] =>
      checkOrder(site, lifts, noPins).map(({ what }) => what);
    const own = liftsOf(plan);
    expect(whats([...own].reverse())).toContain('floats');
    expect(whats([...own, own[0] as OrderedLift])).toContain('twice');
    expect(whats(own.slice(0, -1))).toContain('missing');
    const last = own.at(-1) as OrderedLift;
    expect(whats([last, ...own.slice(0, -1)])).toContain('way out');
    expect(() => reordered(plan, [1, 1])).toThrow('a stage comes twice');
    expect(() => reordered(plan, [99])).toThrow('stage 99: the plan has 1 to');
  });
});
