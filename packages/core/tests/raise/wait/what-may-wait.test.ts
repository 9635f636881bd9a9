import { describe, expect, it } from 'vitest';
import { frameParts } from '../../../src/frame/parts.ts';
import { unknownParts } from '../../../src/frame/schema.ts';
import { holdingOf } from '../../../src/ground/anchors/plan.ts';
import { practices } from '../../../src/ground/anchors/practice.ts';
import { loadsSection } from '../../../src/loads/schema.ts';
import { plainBrief, planRaising } from '../../../src/raise/order/raise.ts';
import { gustBetween } from '../../../src/raise/wait/gust-between.ts';
import { stateWithout } from '../../../src/raise/wait/items.ts';
import {
  type WaitAnswer,
  type WaitOptions,
  type WaitQuestion,
  whatMayWait,
} from '../../../src/raise/wait/what-may-wait.ts';
import type { Shell } from '../../../src/shell/shell.ts';
import { stageAnswer } from '../../../src/stages/answer.ts';
import { nothingKnown, type StageBears, stageModel } from '../../../src/stages/model.ts';
import { closedDown } from '../../../src/stages/stop-work.ts';
import { cutBall, numbersOf } from '../../stages/fixtures.ts';

const small = cutBall(2, 40);
const shell: Shell = { ...small, radius: 3, hubs: small.hubs.map((x) => 3 * x) };
const made = planRaising(plainBrief(shell), { tries: 0 });
if (!made.ok) throw new Error(JSON.stringify(made.faults));
const plan = made.value;
const end = plan.stages.length;
const plates = [...Array(shell.hubs.length / 3).keys()];
const loads = loadsSection.parse({ wind: { as: 'gust', speed: 35 } });

const holding = holdingOf(
  { type: 'lawn stake' },
  {
    soil: { kind: 'loam', firm: true, wet: false },
    tie: { pull: { way: 'up' }, height: 0 },
    tests: [],
  },
);
if (!holding.ok) throw new Error(JSON.stringify(holding.faults));
const allKnown: StageBears = {
  anchors: {
    words: 'stake',
    holding: holding.value,
    practices: [practices.working],
    count: () => 2,
  },
  prop: 5000,
  hub: 8000,
  parts: frameParts({
    ...unknownParts,
    panel: { ...unknownParts.panel, material: 'fibreglass', thickness: 0.004, strength: 30e6 },
    bolt: { thread: '5/16-18', grade: 'SAE J429 Gr 5' },
  }),
  seamBolts: () => 8,
};

const ask = (
  stage: number,
  gust: number,
  bears: Partial<StageBears> = {},
  options: WaitOptions = { strength: false },
): { readonly question: WaitQuestion; readonly answer: WaitAnswer } => {
  const model = stageModel(shell, numbersOf(shell), {
    loads,
    massOf: () => ({ value: 12, sources: [] }),
    bears: { ...nothingKnown, ...bears },
    directions: 4,
  });
  if (!model.ok) throw new Error(JSON.stringify(model.faults));
  const question = { model: model.value, plan, stage, gust, plates, tapeInSeams: true };
  const found = whatMayWait(question, options);
  if (!found.ok) throw new Error(JSON.stringify(found.faults));
  return { question, answer: found.value };
};

describe('what may wait', () => {
  it('is not the snug pass of the first course, which gives way when it is left finger-tight', () => {
    const { answer } = ask(4, 5);
    const snug = answer.items.find(({ item }) => item.sort === 'snug pass');
    expect(snug).toMatchObject({ mayWait: 'no' });
    expect(snug?.reserve ?? 0).toBeLessThan(answer.done.reserve ?? 0);
    expect(answer.leave?.card.before[0]).toBe(`Do now: ${snug?.words}`);
    expect(answer.leave?.waiting).not.toContain(answer.items.indexOf(snug as never));
  });

  it('is held by a state that the stages themselves find to stand, and not in a higher gust', () => {
    const { question, answer } = ask(end, 12);
    const { leave } = answer;
    if (leave === null) throw new Error(answer.words);
    const again = stageAnswer(question.model, leave.stage, { strength: false });
    if (!again.ok || again.value.bears === null)
      throw new Error('the leave-it state has no answer');
    expect(again.value.status).toBe('stands');
    const { limits, untied } = again.value.bears;
    expect(closedDown(limits, untied, 12).verdict).toBe('unknown');
    const reserve = leave.left.reserve as number;
    expect(closedDown(limits, untied, 12 * reserve * 0.99).verdict).toBe('unknown');
    expect(closedDown(limits, untied, 12 * reserve * 1.01).verdict).toBe('gives way');
  });

  it('is as much as it bears: with any item more it gives way or stands no more', () => {
    const low = ask(5, 5).answer;
    const reserve = (low.leave?.left.reserve ?? 0) * 1.02;
    const { question, answer } = ask(5, 5 * reserve);
    const { leave, items } = answer;
    if (leave === null) throw new Error(answer.words);
    expect(leave.waiting.length).toBeLessThan(low.leave?.waiting.length ?? 0);
    const stage = plan.stages[4];
    if (!stage) throw new Error('no stage 5');
    for (const [i, { item }] of items.entries()) {
      if (leave.waiting.includes(i)) continue;
      const missing = [...leave.waiting.map((k) => items[k]?.item), item].filter(
        (x) => x !== undefined,
      );
      const found = stageAnswer(question.model, stateWithout(shell, stage, plates, missing), {
        strength: false,
        sets: 1,
      });
      if (!found.ok) throw new Error('no answer');
      const { status, bears } = found.value;
      const left = bears === null ? null : closedDown(bears.limits, bears.untied, 5 * reserve);
      expect(status !== 'stands' || left?.verdict === 'gives way').toBe(true);
    }
  });

  it('is sure only where everything is known, with seams and panels asked of the frame', () => {
    const { answer } = ask(end, 8, allKnown, { strength: true });
    expect(answer.done.verdict).toBe('holds');
    expect(answer.leave?.left.verdict).toBe('holds');
    expect(answer.items.every(({ mayWait }) => mayWait === 'yes' || mayWait === 'no')).toBe(true);
    const unsure = ask(end, 8).answer;
    expect(unsure.done.verdict).toBe('unknown');
    expect(unsure.items[0]?.mayWait).toBe('as far as known');
    expect(unsure.words).toContain('as far as known');
  });

  it('is nothing where it gives way with all done: it says so and what would help', () => {
    const { answer } = ask(end, 60);
    expect(answer.leave).toBeNull();
    expect(answer.words).toContain('must not be left in 60.0 m/s');
    expect(answer.words).toContain('more anchors or guys');
    expect(answer.items.every(({ mayWait }) => mayWait === 'no')).toBe(true);
  });

  it('has tape in seams go in as they close, plates once all their panels are in, and a final pass at the end', () => {
    const half = ask(5, 5).answer;
    const seal = half.items.find(({ item }) => item.sort === 'seal');
    expect(seal?.why).toContain('tape between flanges goes in as they close');
    const placed = plan.stages[4]?.placed ?? [];
    for (const { item } of half.items)
      for (const hub of item.hubs)
        shell.sideHub.forEach((h, side) => {
          if (h === hub) expect(placed).toContain(shell.sidePlace[side]);
        });
    expect(half.items.some(({ item }) => item.sort === 'final pass')).toBe(false);
    expect(ask(end, 5).answer.items.some(({ item }) => item.sort === 'final pass')).toBe(true);
    expect(half.leave?.card.before.join()).toContain('Open places stay open to the wind');
  });

  it('is refused for a stage that is none and a gust that is none, and ends when told to', () => {
    const { question } = ask(end, 5);
    expect(whatMayWait({ ...question, stage: end + 1 })).toMatchObject({ ok: false });
    expect(whatMayWait({ ...question, gust: Number.NaN })).toMatchObject({ ok: false });
    const stopped = whatMayWait(question, { strength: false, shouldStop: () => true });
    expect(stopped.ok && stopped.value.items).toEqual([]);
  });
});

describe('the gust between two trips', () => {
  it('grows with the weeks, up to the design wind, and is unknown without one', () => {
    const week = gustBetween(loads, shell, 7)?.gust ?? 0;
    const season = gustBetween(loads, shell, 200)?.gust ?? 0;
    expect(week).toBeGreaterThan(10);
    expect(season).toBeGreaterThan(week);
    expect(gustBetween(loads, shell, 36_000)?.gust).toBeGreaterThanOrEqual(season);
    expect(gustBetween(loadsSection.parse({}), shell, 7)).toBeNull();
    expect(() => gustBetween(loads, shell, 0)).toThrow('left for 0 days');
  });
});
