import { expect, test } from 'vitest';
import type { AnchorChoice } from '../../../src/ground/anchors/choice.ts';
import { type BaseForces, sharedForces } from '../../../src/ground/anchors/demand.ts';
import { type AnchorBrief, alongAnchor, anchorPlan } from '../../../src/ground/anchors/plan.ts';
import { practices } from '../../../src/ground/anchors/practice.ts';
import { planDistance } from '../../../src/ground/base.ts';
import { ring } from '../bases.ts';

const base = ring(12, 3.048);
const gust: BaseForces = sharedForces(
  base,
  { drag: 3357.85, lift: 5700.46, weight: 3000, armHeight: 0 },
  '25 m/s',
);
const bar: AnchorChoice = { type: 'bar', diameter: 0.025, depth: 0.8 };
const brief: AnchorBrief = {
  anchor: bar,
  soil: { kind: 'clay', firm: true, wet: false },
  tie: { pull: { way: 'up' }, height: 0 },
  tests: [],
  cases: [gust],
  practices: [practices.factored],
};
function planned(more: Partial<AnchorBrief> = {}) {
  const read = anchorPlan(base, { ...brief, ...more });
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value;
}
const refusal = (more: Partial<AnchorBrief>): string[] => {
  const read = anchorPlan(base, { ...brief, ...more });
  return read.ok ? [] : read.faults.map(({ path, found }) => `${path}: ${found}`);
};

test('a hub gets as many anchors as hold the resultant of its lift and shear, factors in', () => {
  const plan = planned();
  const up = (1.2 * 5700.46 - 3000) / 12;
  const shear = (1.2 * 3357.85) / 12;
  for (const hub of plan.hubs) {
    expect(hub.up).toBeCloseTo(up, 6);
    expect(hub.shear).toBeCloseTo(shear, 6);
    expect(hub.pull).toBeCloseTo(Math.hypot(up, shear), 6);
    expect(hub.count).toBe(1);
    expect(hub.use).toBeCloseTo(Math.hypot(up, shear) / 1300, 9);
  }
  expect(plan.count).toBe(12);
});

test('the worst of all practices is never less than any of them', () => {
  const all = planned({ practices: Object.values(practices) });
  for (const practice of Object.values(practices)) {
    const one = planned({ practices: [practice] });
    expect(all.count).toBeGreaterThanOrEqual(one.count);
    expect(all.hubs[0]?.use).toBeGreaterThanOrEqual(
      (one.hubs[0]?.use as number) * (one.count / all.count) - 1e-12,
    );
  }
});

test('a stronger wind never asks fewer anchors', () => {
  let last = 0;
  for (const times of [1, 2, 4, 8]) {
    const forces = {
      ...gust,
      hubs: gust.hubs.map((hub) => ({ ...hub, lift: hub.lift * times, shear: hub.shear * times })),
    };
    const { count } = planned({ cases: [forces] });
    expect(count).toBeGreaterThanOrEqual(last);
    last = count;
  }
  expect(last).toBeGreaterThan(12);
});

test('every hub is anchored as the worst, unless told that the wind does not turn', () => {
  const forces = {
    ...gust,
    hubs: gust.hubs.map((hub) => (hub.hub === 3 ? { ...hub, lift: 4000 } : hub)),
  };
  expect(new Set(planned({ cases: [forces] }).hubs.map(({ count }) => count)).size).toBe(1);
  const own = planned({ cases: [forces], alike: false });
  expect(own.hubs[2]?.count).toBeGreaterThan(own.hubs[3]?.count as number);
  expect(own.hubs[2]?.count).toBe(planned({ cases: [forces] }).hubs[0]?.count);
});

test('a calm that lifts nothing still gets one anchor a hub', () => {
  const calm = { ...gust, hubs: gust.hubs.map((hub) => ({ ...hub, lift: 0, shear: 0 })) };
  expect(planned({ cases: [calm] }).count).toBe(12);
});

test('along a guy the pull bears lift and shear both, and never less than either asks', () => {
  expect(alongAnchor(300, 0, { way: 'guy', elevation: Math.PI / 6 })).toBeCloseTo(600, 9);
  expect(alongAnchor(0, 300, { way: 'guy', elevation: Math.PI / 3 })).toBeCloseTo(600, 9);
  expect(alongAnchor(300, 400, { way: 'up' })).toBeCloseTo(500, 9);
});

test('ballast goes by friction and lift, counted in pieces', () => {
  const plan = planned({
    anchor: { type: 'ballast', underlay: 'wood', mass: 25 },
    soil: { kind: 'loam', firm: true, wet: false },
  });
  const each = Math.max(0, (1.2 * 5700.46 - 3000 + (1.2 * 3357.85) / 0.4) / 12);
  expect(plan.hubs[0]?.pull).toBeCloseTo(each, 6);
  expect(plan.hubs[0]?.count).toBe(Math.ceil(each / (25 * 9.80665)));
  expect(plan.capacity).toBeNull();
});

test('test pulls go before published values and carry that they were entered', () => {
  const tests = [2400, 1500, 3000].map((pull) => ({ pull, held: true, wet: false }));
  const plan = planned({ tests });
  expect(plan.allowed).toBeCloseTo(1000, 9);
  expect(plan.sources.map(({ confirmation }) => confirmation)).toContain('entered');
  expect(planned({ tests, soil: null }).allowed).toBeCloseTo(500, 9);
  expect(planned({ tests: tests.slice(1, 2) }).allowed).toBeCloseTo(750, 9);
});

test('anchors stand at their spacing, out along the radius, and those too near are told', () => {
  const strong = { ...gust, hubs: gust.hubs.map((hub) => ({ ...hub, lift: 2500 })) };
  const plan = planned({ cases: [strong] });
  expect(plan.hubs[0]?.count).toBe(3);
  const own = plan.spots.filter(({ hub }) => hub === 1);
  expect(planDistance(own[0]?.at ?? [0, 0], own[1]?.at ?? [0, 0])).toBeCloseTo(0.8, 9);
  expect(plan.tooNear.length).toBe(12);
  expect(plan.tooNear[0]?.needed).toBe(0.8);
  expect(planned().tooNear).toEqual([]);
});

test('a holdfast’s pickets run out behind the guy', () => {
  const plan = planned({
    anchor: { type: 'wood pickets', combination: '3-2-1' },
    soil: { kind: 'loam', firm: true, wet: false },
    tie: { pull: { way: 'guy', elevation: Math.PI / 6 }, height: 0.6 },
  });
  const spot = plan.spots[0];
  expect(spot?.pieces).toHaveLength(6);
  expect(Math.hypot(...(spot?.at ?? [0, 0]))).toBeCloseTo(3.048 + 0.6 * Math.sqrt(3), 9);
  expect(plan.pieces).toBe(6 * plan.count);
  expect(plan.notes.some((note) => /outwards/.test(note))).toBe(true);
});

test('cost is the price of every piece, or unknown', () => {
  expect(planned().cost).toBeNull();
  expect(planned({ price: 4.5 }).cost).toBeCloseTo(12 * 4.5, 9);
});

test('no anchor, no soil, no loads and a hub without forces are told, and nothing is reckoned', () => {
  expect(refusal({ anchor: null })).toEqual(['anchor: none chosen']);
  expect(refusal({ soil: null })).toEqual(['soil: unknown']);
  expect(refusal({ soil: { kind: 'unknown', firm: true, wet: false } })).toEqual(['soil: unknown']);
  expect(refusal({ cases: [] })).toEqual(['loads: no load case']);
  expect(refusal({ cases: [{ ...gust, hubs: gust.hubs.slice(1) }] })).toEqual([
    'loads, 25 m/s: no force at hub 1',
  ]);
  expect(refusal({ anchor: { type: 'other', name: 'a tree', spacing: 1 } })).toEqual([
    'anchor: a tree, which has no published value here',
  ]);
});

test('more than twelve anchors at a hub are refused, as are forces that are none', () => {
  const storm = { ...gust, hubs: gust.hubs.map((hub) => ({ ...hub, lift: 40_000 })) };
  expect(refusal({ cases: [storm] })[0]).toMatch(/^anchor, hub 1: \d+ N asked, 1300 N each$/);
  const odd = { ...gust, hubs: gust.hubs.map((hub) => ({ ...hub, shear: Number.NaN })) };
  expect(() => planned({ cases: [odd] })).toThrow(/shear is NaN/);
});

test('every value from memory or common practice reaches the plan’s sources', () => {
  const flags = planned().sources.filter(({ confirmation }) => confirmation !== 'confirmed');
  const words = flags.map(({ text }) => text).join('; ');
  expect(words).toMatch(/bars driven/);
  expect(words).toMatch(/stability factors/);
  expect(words).toMatch(/half their ultimate/);
  expect(words).toMatch(/as far apart as they are deep/);
  expect(words).toMatch(/stiff base/);
});
