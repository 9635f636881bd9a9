import { describe, expect, it } from 'vitest';
import { numberOf } from '../../../src/loads/numbers.ts';
import { seededRandom } from '../../../src/math/random.ts';
import { pieceModel } from '../../../src/raise/lifts/piece.ts';
import { planRaising } from '../../../src/raise/order/raise.ts';
import { STACK_FRICTION, STACK_LIFT, stackWind } from '../../../src/raise/yard/stack-wind.ts';
import { walkRound } from '../../../src/raise/yard/walk.ts';
import { type Yard, yardOf } from '../../../src/raise/yard/yard.ts';
import type { Shell } from '../../../src/shell/shell.ts';
import { cutBall, numbersOf } from '../../stages/fixtures.ts';
import { madeUpBrief } from '../order/fixtures.ts';

const small = cutBall(2, 40);
const shell: Shell = { ...small, radius: 3, hubs: small.hubs.map((x) => 3 * x) };
const made = planRaising(madeUpBrief(shell), { tries: 0 });
if (!made.ok) throw new Error(JSON.stringify(made.faults));
const plan = made.value;
const model = pieceModel(shell, numbersOf(shell), () => ({ value: 14, sources: [] }), 0.05);
const base = Math.max(
  ...Array.from({ length: shell.hubs.length / 3 }, (_, h) =>
    Math.hypot(shell.hubs[3 * h] as number, shell.hubs[3 * h + 1] as number),
  ),
);
const yard = yardOf({ plan, model, gust: 15 });

/** Gaps between stacks as circles round their boxes, the least. */
const leastGap = ({ stacks }: Yard): number =>
  Math.min(
    ...stacks.flatMap((a, i) =>
      stacks
        .slice(0, i)
        .map(
          (b) =>
            Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]) -
            (Math.hypot(a.size[0], a.size[1]) + Math.hypot(b.size[0], b.size[1])) / 2,
        ),
    ),
  );

describe('the yard', () => {
  it('has every panel once, the stacks in the order of the stages, the first to go up on top', () => {
    const lain = yard.stacks.flatMap(({ pieces }) => pieces.flatMap(({ places }) => places));
    const lifted = plan.stages.flatMap(({ lifts }) => lifts.flatMap(({ places }) => places));
    expect(lain).toEqual(lifted);
    expect(yard.stacks.map(({ number }) => number)).toEqual(yard.stacks.map((_, i) => i + 1));
    expect(yard.stacks.every(({ panels }) => panels <= 10)).toBe(true);
    expect(yard.stacks.every(({ mass, panels }) => Math.abs(mass - 14 * panels) < 1e-9)).toBe(true);
  });

  it('keeps ways between stacks and stays clear of the base', () => {
    expect(leastGap(yard)).toBeGreaterThan(0.8 - 1e-9);
    for (const { out, size } of yard.stacks)
      expect(out - Math.hypot(size[0], size[1]) / 2).toBeGreaterThan(base + 3 - 0.2);
    expect(yard.reach).toBeGreaterThan(base + 3);
  });

  it('walks less than with its stacks changed about (seed 3)', () => {
    const random = seededRandom(3);
    const walkWith = (at: readonly (readonly [number, number])[]): number =>
      yard.stacks.reduce(
        (sum, { pieces }, i) =>
          sum +
          pieces.reduce((own, { places }) => {
            const piece = places[0] as number;
            const hubs = [0, 1, 2].map((k) => shell.sideHub[3 * piece + k] as number);
            const [x, y] = [0, 1].map((axis) =>
              hubs.reduce((all, hub) => all + (shell.hubs[3 * hub + axis] as number), 0),
            ) as [number, number];
            const d = Math.hypot(x, y);
            const foot = d > 1e-6 ? ([(base * x) / d, (base * y) / d] as const) : at[i];
            return own + places.length * walkRound(at[i] ?? [0, 0], foot ?? [0, 0], base);
          }, 0),
        0,
      );
    const spots = yard.stacks.map(({ at }) => at);
    for (let n = 0; n < 50; n++)
      expect(walkWith(random.shuffle(spots))).toBeGreaterThanOrEqual(yard.walk - 1e-6 * yard.walk);
    expect(yard.longest).toBeLessThanOrEqual(yard.walk);
  });

  it('leaves out sectors that are to be avoided, and says where there is no room', () => {
    const half = yardOf({ plan, model, gust: 15, avoid: [[0, Math.PI]] });
    expect(half.stacks.every(({ azimuth }) => azimuth >= Math.PI - 1e-9)).toBe(true);
    expect(half.walk).toBeGreaterThan(yard.walk);
    const all = [[0, 2 * Math.PI - 1e-9]] as const;
    expect(() => yardOf({ plan, model, gust: 15, avoid: all, most: 1 })).toThrow('leave room for');
    expect(() => yardOf({ plan, model, gust: 15, most: 0 })).toThrow('holds 0 panels');
  });

  it('names panels that nobody weighed and counts them as nothing', () => {
    const unknown = yardOf({ plan, model: { ...model, massOf: () => null }, gust: 15 });
    expect(unknown.stacks[0]?.unweighed.length).toBe(unknown.stacks[0]?.panels);
    expect(unknown.stacks[0]?.wind.loose).toBeGreaterThan(yard.stacks[0]?.wind.loose ?? 0);
    expect(unknown.stacks[0]?.words).toContain('nobody weighed');
  });
});

describe('wind on a stack', () => {
  const stack = { topArea: 1, topMass: 14, mass: 140, side: 0.8, plan: 1 };
  const gravity = numberOf('gravity').value;

  it('lifts the top panel off where the lift is its weight', () => {
    const { flies } = stackWind(stack, 10);
    expect(stackWind(stack, flies ?? 0).topLift).toBeCloseTo(14 * gravity, 6);
    const density = numberOf('airDensity').value;
    expect(flies).toBeCloseTo(Math.sqrt((2 * 14 * gravity) / (density * STACK_LIFT.value)), 9);
  });
  it('is held by the weight told, in balance with 1.5 times the wind, and not by a tenth less', () => {
    const { loose, strapped, topLift, shove } = stackWind(stack, 30);
    const holds = (kg: number): boolean =>
      1.5 * topLift <= (14 + kg) * gravity + 1e-6 &&
      1.5 * shove <= STACK_FRICTION.value * ((140 + kg) * gravity - 1.5 * topLift) + 1e-6;
    expect(holds(loose)).toBe(true);
    expect(holds(0.9 * loose)).toBe(false);
    expect(strapped).toBeLessThanOrEqual(loose + 1e-9);
    expect(stackWind(stack, 0)).toMatchObject({ loose: 0, strapped: 0, shove: 0 });
  });
  it('grows with the square of the gust, and no wind below 0 is taken', () => {
    expect(stackWind(stack, 30).lift).toBeCloseTo(9 * stackWind(stack, 10).lift, 9);
    expect(() => stackWind(stack, -1)).toThrow('gust');
  });
});

describe('the walk round a shell', () => {
  it('is straight where nothing is between, else two tangents and an arc', () => {
    expect(walkRound([5, 0], [5, 3], 3)).toBeCloseTo(3, 12);
    expect(walkRound([5, 0], [3, 0], 3)).toBeCloseTo(2, 12);
    const opposite = 2 * 4 + 3 * (Math.PI - 2 * Math.acos(3 / 5));
    expect(walkRound([5, 0], [-5, 0], 3)).toBeCloseTo(opposite, 12);
    expect(walkRound([5, 0], [-5, 0], 0)).toBeCloseTo(10, 12);
  });
  it('is the same both ways and no shorter than the straight line (seed 2)', () => {
    const random = seededRandom(2);
    for (let n = 0; n < 200; n++) {
      const [a, b] = [0, 1].map(() => {
        const [r, t] = [3 + 4 * random.uniform(), 7 * random.uniform()];
        return [r * Math.cos(t), r * Math.sin(t)] as const;
      }) as [readonly [number, number], readonly [number, number]];
      const there = walkRound(a, b, 3);
      expect(walkRound(b, a, 3)).toBeCloseTo(there, 12);
      expect(there).toBeGreaterThanOrEqual(Math.hypot(a[0] - b[0], a[1] - b[1]) - 1e-12);
    }
    expect(() => walkRound([1, 0], [2, 0], -1)).toThrow('radius is -1 m');
  });
});
