import { describe, expect, it } from 'vitest';
import { bagsOf, needsByStage } from '../../../src/raise/bags/bags.ts';
import { buyBefore } from '../../../src/raise/bags/buy-before.ts';
import { chargeOf, USABLE_CHARGE } from '../../../src/raise/bags/charge.ts';
import { kitCheck } from '../../../src/raise/bags/kit-check.ts';
import { toolsOf, wrenchFor } from '../../../src/raise/bags/tools.ts';
import { needWords } from '../../../src/raise/bags/words.ts';
import { gearSection } from '../../../src/raise/gear.ts';
import { plainBrief, planRaising } from '../../../src/raise/order/raise.ts';
import { coursesOf } from '../../../src/shell/courses.ts';
import { partOf } from '../../../src/shell/part.ts';
import type { HardwareLot } from '../../../src/takeoff/hardware.ts';
import { type Need, needsOf } from '../../../src/takeoff/needs.ts';
import { takeoffSection } from '../../../src/takeoff/schema.ts';
import { above, ball } from '../../takeoff/ball.ts';

const { shell, kinds } = above(ball(3), 0.1);
const { numbers, course, position } = coursesOf(shell);
const door = [...course.keys()].filter((p) => course[p] === 1 && position[p] <= 2);
const made = planRaising({ ...plainBrief(shell), openings: door }, { tries: 0 });
if (!made.ok) throw new Error(JSON.stringify(made.faults));
const plan = made.value;
const built = plan.stages.at(-1)?.placed ?? [];

const bolt = { thread: '5/16-18', length: 0.0254 };
const settings = takeoffSection.parse({
  sides: [0.941262, 1.08958, 1.113511].map((sideLength, i) => ({
    sideLength,
    holes: 8 + i,
    ...bolt,
  })),
  baseBolt: { thread: '3/8-16', length: 0.05 },
  openingBolt: bolt,
  plates: { bolt },
  tape: { runs: 1, rollLength: 15 },
});
const lot = (item: string, count: number, more: object = {}): HardwareLot => ({
  item,
  count,
  state: 'new',
  ...bolt,
  ...more,
});
const question = { shell, numbers, plan, kinds, settings, hardware: [lot('bolt', 400)] };
const { bags, unknown } = bagsOf(question);
const stageBags = bags.filter(({ stage }) => stage !== null);
const sumOf = (list: readonly Need[], item: string): number =>
  list.reduce((sum, need) => sum + (need.item === item ? need.quantity : 0), 0);

describe('bags', () => {
  it('together hold what the take-off counts for the panels that are built, and nothing else', () => {
    const whole = needsOf(partOf(shell, built).shell, kinds, settings).needs;
    const all = stageBags.flatMap(({ needs }) => needs);
    expect(unknown).toEqual([]);
    for (const item of ['bolt', 'lock nut', 'washer', 'plate', 'tape'])
      expect(sumOf(all, item)).toBeCloseTo(sumOf(whole, item), 9);
    expect(sumOf(whole, 'plate')).toBeGreaterThan(20);
  });

  it('hold a seam’s bolts in the stage that first bolts it, base bolts with the first course', () => {
    const { byStage } = needsByStage(question);
    const base = [...byStage].filter(([, needs]) =>
      needs.some(({ thread }) => thread === '3/8-16'),
    );
    // The rim runs up the doorway too: its sides count as the base's in the take-off.
    const doorway = new Set(door.flatMap((p) => [...shell.sideHub.slice(3 * p, 3 * p + 3)]));
    expect(base[0]?.[0]).toBe(1);
    for (const [number] of base) {
      const stage = plan.stages[number - 1];
      const isRim = (p: number): boolean =>
        course[p] === 1 || [0, 1, 2].some((k) => doorway.has(shell.sideHub[3 * p + k] as number));
      expect(stage?.pieces.flat().some(isRim)).toBe(true);
    }
    expect(byStage.has(plan.stages.length)).toBe(false);
    expect(stageBags.map(({ stage }) => stage)).toEqual([...byStage.keys()].sort((a, b) => a - b));
  });

  it('are labelled with their stage, each thing in them and the places that it is for', () => {
    const label = bags[0]?.label;
    expect(label?.title).toBe('Stage 1: base');
    expect(label?.lines[0]).toMatch(/^\d+ bolts 5\/16-18 × 25\.4 mm$/);
    for (const p of plan.stages[0]?.pieces.flat() ?? [])
      expect(label?.lines.at(-1)).toContain(numbers[p]);
    expect(bags.at(-1)?.label.title).toBe('Spares');
    const need = { thread: null, length: null, corners: 5, rim: true, unit: 'piece' } as const;
    expect(needWords({ ...need, item: 'plate', quantity: 1 })).toBe(
      '1 plate for 5 corners at the rim',
    );
  });

  it('say what nobody knows the bolts of', () => {
    const none = bagsOf({ ...question, settings: takeoffSection.parse({}) });
    expect(none.unknown.join()).toMatch(/the bolts of \d+ seams.*hub plates/);
  });
});

describe('what must be bought', () => {
  it('is wanted before the first stage that runs short, and none is short with it in hand', () => {
    const buy = buyBefore(question);
    const bolts = buy.find(({ line }) => line.item === 'bolt' && line.thread === '5/16-18');
    const { byStage } = needsByStage(question);
    let used = 0;
    const first = plan.stages.find(({ number }) => {
      used += (byStage.get(number) ?? [])
        .filter(({ item, thread }) => item === 'bolt' && thread === '5/16-18')
        .reduce((sum, { quantity }) => sum + quantity, 0);
      return used > 400;
    });
    expect(bolts?.before).toBe(first?.number);
    expect(bolts?.before).toBeGreaterThan(1);
    expect(bolts?.short.reduce((sum, { quantity }) => sum + quantity, 0)).toBe(bolts?.line.short);
    expect(buy[0]?.before).toBe(1);
    const bought = buy.map(({ line }) =>
      lot(line.item, line.item === 'tape' ? line.packs : line.toBuy, {
        thread: line.thread,
        length: line.item === 'tape' ? 15 : line.length,
        corners: line.corners,
        rim: line.rim,
      }),
    );
    expect(buyBefore({ ...question, hardware: [...question.hardware, ...bought] })).toEqual([]);
  });

  it('is told last where only spares are short', () => {
    const { line } = buyBefore({ ...question, hardware: [] }).find(
      (one) => one.line.item === 'bolt' && one.line.thread === '5/16-18',
    ) as ReturnType<typeof buyBefore>[number];
    const just = buyBefore({ ...question, hardware: [lot('bolt', line.quantity)] });
    expect(just.at(-1)).toMatchObject({ before: null, short: [], line: { item: 'bolt' } });
  });
});

describe('the kit check', () => {
  const first = bags[0];
  if (first === undefined) throw new Error('no bag');
  const tick = (need: Need, quantity = need.quantity) => ({ stage: first.stage, need, quantity });

  it('counts down to nothing as things go in, and up again where one is taken out', () => {
    const lines = bags.reduce((sum, { needs }) => sum + needs.length, 0);
    expect(kitCheck(bags, [])).toMatchObject({ left: lines, lines });
    const all = first.needs.map((need) => tick(need));
    const full = kitCheck(bags, all);
    expect(full.left).toBe(lines - first.needs.length);
    expect(full.next?.stage).toBe(bags[1]?.stage);
    const out = kitCheck(bags, [...all, tick(first.needs[0] as Need, -1)]);
    expect(out.next?.left).toEqual([{ ...first.needs[0], quantity: 1 }]);
  });

  it('tells what is over and what belongs in another bag, and refuses a bag that is none', () => {
    const need = first.needs[0] as Need;
    const strange: Need = { ...need, thread: 'M20' };
    const [bag] = kitCheck(bags, [tick(need, need.quantity + 2), tick(strange, 1)]).bags;
    expect(bag?.over).toEqual([{ ...need, quantity: 2 }]);
    expect(bag?.foreign).toEqual([{ ...strange, quantity: 1 }]);
    expect(() => kitCheck(bags, [{ ...tick(need), stage: 99 }])).toThrow('stage 99');
  });
});

describe('tools', () => {
  it('are the wrenches of the stage’s bolts, and a torque wrench for the final pass', () => {
    expect(['1/4', '5/16-18', '3/8-16', '1/2-13'].map(wrenchFor)).toEqual([
      '7/16 in',
      '1/2 in',
      '9/16 in',
      '3/4 in',
    ]);
    const [stage, last] = [plan.stages[0], plan.stages.at(-1)];
    if (!stage || !last) throw new Error('no stages');
    expect(toolsOf(stage, bags[0]?.needs ?? []).tools).toContain('4 wrenches 1/2 in');
    expect(toolsOf(last, [], { threads: ['M8'] }).tools).toContain(
      '1 torque wrench with a socket 13 mm',
    );
    const way = { by: 'lift', name: 'forklift', tagLines: 2, people: null } as const;
    expect(toolsOf(stage, [], { ways: [way] }).tools).toEqual(
      expect.arrayContaining(['forklift with sling', '2 tag lines']),
    );
  });
});

describe('charge', () => {
  const gear = gearSection.parse({
    powerTools: [{ name: 'driver', wattHoursPerBolt: 0.25 }],
    lights: [{ name: 'lamp', watts: 50, count: 2 }],
    batteries: [{ name: 'pack', wattHours: 90, count: 4 }],
  });
  const seams = new Set(plan.stages.flatMap(({ pass }) => pass.snug)).size;

  it('is drawn once for each bolt, and by the lights for their hours', () => {
    const burning = { ...gear, lights: gear.lights.map((one) => ({ ...one, hours: 0.1 })) };
    const charge = chargeOf({ plan, gear: burning, bolts: () => 8 });
    expect(charge.full).toBeCloseTo(USABLE_CHARGE * 360, 9);
    expect(charge.stages.reduce((sum, { bolts }) => sum + bolts, 0)).toBe(8 * seams);
    expect(charge.stages[1]?.lights).toBeCloseTo(10, 9);
    const drawn = 0.25 * 8 * seams + 10 * plan.stages.length;
    expect(charge.stages.at(-1)?.left).toBeCloseTo(charge.full - drawn, 9);
  });
  it('runs short where it does, and not when it is charged again before', () => {
    const small = { ...gear, batteries: gear.batteries.map((one) => ({ ...one, count: 2 })) };
    const short = chargeOf({ plan, gear: small, bolts: () => 8 });
    expect(short.short).toBeGreaterThan(1);
    const before = (short.short ?? 0) - 1;
    expect(short.stages[before - 1]?.left).toBeGreaterThanOrEqual(0);
    expect(chargeOf({ plan, gear: small, bolts: () => 8, recharged: [before] }).short).toBeNull();
  });
  it('names what nobody knows', () => {
    const unknownTool = { ...gear, powerTools: [{ name: 'driver', wattHoursPerBolt: null }] };
    const charge = chargeOf({ plan, gear: unknownTool, bolts: () => null });
    expect(charge.unknown.join()).toContain('driver');
    expect(charge.unknown.join()).toContain(`${seams} seams`);
    // Nobody said how long lights burn; said, it is no longer unknown.
    expect(charge.unknown.join()).toContain('how long lamp burns');
    const out = { ...unknownTool, lights: gear.lights.map((one) => ({ ...one, hours: 0 })) };
    expect(chargeOf({ plan, gear: out, bolts: () => 8 }).unknown.join()).not.toContain('lamp');
  });
});
