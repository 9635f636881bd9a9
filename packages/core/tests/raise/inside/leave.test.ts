import { describe, expect, it } from 'vitest';
import { bodyOf } from '../../../src/passage/body.ts';
import { isClearMotion } from '../../../src/passage/clear.ts';
import { HAND_HEIGHT, passing } from '../../../src/passage/passing.ts';
import { barrierOf } from '../../../src/passage/wall.ts';
import { type Gear, gearSection } from '../../../src/raise/gear.ts';
import { type ThingLeaves, thingsInside } from '../../../src/raise/inside/leave.ts';
import { heightsByStage, neededUntil } from '../../../src/raise/lifts/heights-by-stage.ts';
import { pieceModel } from '../../../src/raise/lifts/piece.ts';
import { plainBrief, planRaising } from '../../../src/raise/order/raise.ts';
import type { RaisingPlan } from '../../../src/raise/plan.ts';
import { coursesOf } from '../../../src/shell/courses.ts';
import type { Shell } from '../../../src/shell/shell.ts';
import { cutBall, numbersOf } from '../../stages/fixtures.ts';

const small = cutBall(3, 105);
const shell: Shell = { ...small, radius: 3, hubs: small.hubs.map((x) => 3 * x) };
const planOf = (openings: readonly number[]): RaisingPlan => {
  const made = planRaising({ ...plainBrief(shell), openings }, { tries: 0 });
  if (!made.ok) throw new Error(JSON.stringify(made.faults));
  return made.value;
};
const plan = planOf([]);
const end = plan.stages.length;
const model = pieceModel(shell, numbersOf(shell), () => ({ value: 9, sources: [] }), 0.05);
const box = (name: string, size: readonly number[], more: object = {}): object => ({
  name,
  shape: { form: 'box', size },
  mass: 20,
  ...more,
});
const gearOf = (...inside: readonly object[]): Gear =>
  gearSection.parse({ towers: [{ name: 'tower', height: 4, base: [1.4, 2] }], inside });
const heights = heightsByStage(plan, model, gearOf());
const leaves = (gear: Gear, of = plan): readonly ThingLeaves[] =>
  thingsInside(
    { shell, plan: of, gear, flange: 0.05, heights },
    { cells: 3000, crossings: 3000, movements: 200, allMovements: 300 },
  ).things;

describe('what stands inside', () => {
  it('passes until the last gap is closed where it is small, and sooner not the larger it is', () => {
    const [crate, chest] = leaves(
      gearOf(box('crate', [0.4, 0.4, 0.6]), box('chest', [1, 1.2, 1.4])),
    );
    expect(crate).toMatchObject({ status: 'in time', last: end - 2, shut: { shown: true } });
    expect(crate?.words).toContain(`at the latest after stage ${end - 2}, before`);
    expect(chest?.last).toBeLessThan(end - 2);
    expect(chest?.last).toBeGreaterThan(0);
    const barrier = barrierOf(shell, plan.stages[end - 3]?.placed ?? [], 0.05);
    const body = bodyOf({ form: 'box', size: [0.4, 0.4, 0.6] });
    const carried = { by: 'hands', rise: HAND_HEIGHT } as const;
    expect(isClearMotion({ body, barrier, carried }, crate?.motion ?? [])).toBe(true);
    const whole = barrierOf(shell, plan.stages[end - 1]?.placed ?? [], 0.05);
    expect(isClearMotion({ body, barrier: whole, carried }, crate?.motion ?? [])).toBe(false);
  });

  it('is trapped where it is needed longer, and the panels to be left out let it through', () => {
    const [tower] = leaves(gearOf(box('tower', [1.3, 0.6, 2])));
    expect(tower).toMatchObject({ status: 'trapped', needed: neededUntil(heights, 'tower') });
    expect(tower?.needed).toBeGreaterThan(tower?.last ?? end);
    expect(tower?.change?.what).toBe('leave out');
    const placed = plan.stages[(tower?.needed ?? 0) - 1]?.placed ?? [];
    const open = placed.filter((p) => !tower?.change?.places.includes(p));
    const shape = { form: 'box', size: [1.3, 0.6, 2] } as const;
    const statusWith = (list: readonly number[]): string =>
      passing(shape, barrierOf(shell, list, 0.05), { cells: 0, seed: 4 }).status;
    expect(statusWith(open)).toBe('passes');
    expect(statusWith(placed)).not.toBe('passes');
  });

  it('goes out in its parts where these pass, and that is told first', () => {
    const frame = { shape: { form: 'box', size: [0.1, 0.6, 1] } };
    const parts = [0, 0.6, 1.2].map((y) => ({ ...frame, at: [y, 0, 0] }));
    const gear = gearOf({ name: 'tower', mass: 20, shape: { form: 'parts', parts } });
    expect(leaves(gear)[0]?.change).toMatchObject({ what: 'take apart' });
  });

  it('passes to the end through a doorway that stays open', () => {
    const { course, position } = coursesOf(shell);
    const door = [...course.keys()].filter((p) => course[p] === 1 && position[p] <= 3);
    const [crate] = leaves(gearOf(box('crate', [0.4, 0.4, 0.6])), planOf(door));
    expect(crate).toMatchObject({ status: 'free', shut: null });
  });

  it('is told to be too heavy for hands, of unknown mass, or to stay', () => {
    const size = [0.4, 0.4, 0.6];
    const [heavy, unknown, stays] = leaves(
      gearOf(
        box('safe', size, { mass: 300 }),
        box('chest', size, { mass: null }),
        box('rack', size, { must: 'stay' }),
      ),
    );
    expect(heavy?.words).toContain('300 kg is more than');
    expect(unknown?.words).toContain('weigh it');
    expect(stays).toMatchObject({ status: 'stays', change: null });
  });

  it('is found the same for the same seed, and what is supposed is told', () => {
    const gear = gearOf(box('crate', [0.4, 0.4, 0.6]));
    const ask = { shell, plan, gear, flange: null };
    const first = thingsInside(ask, { cells: 0 });
    expect(thingsInside(ask, { cells: 0 })).toEqual(first);
    expect(first.assumed.join()).toContain('supposed: nobody measured');
  });
});

describe('heights by stage', () => {
  it('rise with the courses, and tell what is short before anyone builds', () => {
    expect(heights).toHaveLength(plan.stages.filter(({ lifts }) => lifts.length > 0).length);
    const top = Math.max(...heights.map(({ hands }) => hands));
    const bare = heightsByStage(plan, model, gearSection.parse({}));
    expect(heights.find(({ hands }) => hands === top)?.standing?.name).toBe('tower');
    expect(bare.find(({ hands }) => hands === top)?.short.join()).toContain(`${top.toFixed(2)} m`);
    expect(bare[0]?.short).toEqual([]);
  });
});
