import { describe, expect, it } from 'vitest';
import { defaultLoads } from '../../../src/loads/schema.ts';
import { wayAnswer } from '../../../src/raise/raised/inside.ts';
import { kitAnswer } from '../../../src/raise/raised/kit.ts';
import { liftsOfStages } from '../../../src/raise/raised/lifts.ts';
import { designGust } from '../../../src/raise/raised/raised.ts';
import { waitAnswer } from '../../../src/raise/raised/wait.ts';
import { yardAnswer } from '../../../src/raise/raised/yard.ts';
import { raised } from './fixture.ts';

const { plan } = raised;
const lifting = plan.stages.filter(({ lifts }) => lifts.length > 0);
const windless = { ...raised, loads: defaultLoads };

describe('the yard of a raised shell', () => {
  it('stacks every panel of the plan once, for the design gust where none is named', () => {
    const yard = yardAnswer(raised);
    if (!yard.ok) throw new Error(JSON.stringify(yard.faults));
    const stacked = yard.value.stacks.flatMap(({ pieces }) => pieces.flatMap((one) => one.places));
    expect([...stacked].sort((a, b) => a - b)).toEqual(plan.stages.at(-1)?.placed);
    expect(yard.value.gust).toBe(designGust(raised)?.value);
    const calmer = yardAnswer(raised, { gust: 8 });
    expect(calmer).toMatchObject({ ok: true, value: { gust: 8 } });
  });
  it('asks for a gust where nobody gives any, and for room where there is none', () => {
    expect(yardAnswer(windless)).toMatchObject({ ok: false, faults: [{ path: 'loads.wind' }] });
    const nowhere = yardAnswer(raised, { avoid: [[0, 2 * Math.PI - 1e-9]] });
    expect(nowhere).toMatchObject({ ok: false, faults: [{ path: 'yard' }] });
  });
});

describe('the lifts of a raised shell', () => {
  it('are those of the plan, with a card for each that ends high', () => {
    const all = liftsOfStages(raised);
    expect(all.map(({ stage }) => stage)).toEqual(lifting.map(({ number }) => number));
    for (const { lifts } of all)
      for (const { told, card, needsCard } of lifts) {
        expect(card === null).toBe(!needsCard || told.best === null);
        if (told.piece.high > 1 && told.best) expect(card?.title).toContain('anel');
      }
    expect(all.flatMap(({ lifts }) => lifts).some(({ card }) => card !== null)).toBe(true);
    expect(liftsOfStages(raised, { gust: null }, [2]).map(({ stage }) => stage)).toEqual([2]);
  });
});

describe('way in and way out of a raised shell', () => {
  it('tells heights, until when each ladder is needed, and what becomes of each thing', () => {
    const { heights, standing, inside } = wayAnswer(raised, { cells: 0, movements: 200 });
    expect(heights).toHaveLength(lifting.length);
    const high = heights.filter((one) => one.standing?.name === 'stepladder');
    expect(standing).toEqual([{ name: 'stepladder', until: high.at(-1)?.stage }]);
    expect(inside.things).toMatchObject([{ name: 'crate', status: 'free' }]);
  });
});

describe('bags and kit of a raised shell', () => {
  it('go together: bags, what to buy, tools of each stage, charge, and the count-down', () => {
    const kit = kitAnswer(raised);
    expect(kit.tools.map(({ stage }) => stage)).toEqual(plan.stages.map(({ number }) => number));
    expect(kit.tools.at(-1)?.tools).toContain('1 torque wrench with a socket 1/2 in');
    expect(kit.buy[0]?.line.item).toBeTruthy();
    expect(kit.charge?.stages).toHaveLength(plan.stages.length);
    const first = kit.bags.bags[0];
    const ticks = (first?.needs ?? []).map((need) => ({
      stage: first?.stage ?? null,
      need,
      quantity: need.quantity,
    }));
    const ticked = kitAnswer(raised, { ticks });
    expect(ticked.check.left).toBe(kit.check.left - ticks.length);
    const { powerTools: _, ...bare } = raised.gear;
    expect(kitAnswer({ ...raised, gear: { ...bare, powerTools: [] } }).charge).toBeNull();
  });
});

describe('what may wait of a raised shell', () => {
  it('is asked for the end and a fortnight where nobody says, with a plate over every hub', () => {
    const found = waitAnswer(raised, {}, { strength: false });
    if (!found.ok) throw new Error(JSON.stringify(found.faults));
    const { stage, days, gust, items } = found.value;
    expect({ stage, days }).toEqual({ stage: plan.stages.length, days: 14 });
    expect(gust).toBeGreaterThan(0);
    const plated = new Set(items.flatMap(({ item }) => item.hubs));
    const hubs = new Set((plan.stages.at(-1)?.placed ?? []).flatMap((p) => hubsAt(p)));
    expect(plated).toEqual(hubs);
  });
  it('refuses days and stages that are none, and asks for a gust where nobody gives any', () => {
    expect(waitAnswer(raised, { days: 0 })).toMatchObject({ faults: [{ path: 'days' }] });
    expect(waitAnswer(raised, { stage: 99 })).toMatchObject({ faults: [{ path: 'stage' }] });
    expect(waitAnswer(windless)).toMatchObject({ faults: [{ path: 'loads.wind' }] });
  });
});

const hubsAt = (place: number): number[] => [
  ...raised.shell.sideHub.slice(raised.shell.placeStart[place], raised.shell.placeStart[place + 1]),
];
