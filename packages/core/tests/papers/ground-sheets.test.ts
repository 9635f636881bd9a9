import { describe, expect, it } from 'vitest';
import type { AnchorChoice } from '../../src/ground/anchors/choice.ts';
import { sharedForces } from '../../src/ground/anchors/demand.ts';
import { type AnchorPlan, anchorPlan } from '../../src/ground/anchors/plan.ts';
import { practices } from '../../src/ground/anchors/practice.ts';
import type { Base } from '../../src/ground/base.ts';
import { type ShimPlan, shims } from '../../src/ground/shims.ts';
import { commonTolerances } from '../../src/ground/survey/out-of-true.ts';
import type { SurveyReading } from '../../src/ground/survey/readings.ts';
import { surveyAnswer } from '../../src/ground/survey/verdict.ts';
import { tapePlan } from '../../src/ground/tape-plan.ts';
import { seededRandom } from '../../src/math/random.ts';
import { anchorPlanSheets } from '../../src/papers/anchor-plan-sheet.ts';
import { type Drawing, flatItems, type GroupItem, type Item } from '../../src/papers/drawing.ts';
import { ringBeamSheets } from '../../src/papers/ring-beam-sheet.ts';
import { shimSheets } from '../../src/papers/shim-sheet.ts';
import { stakeOutSheets } from '../../src/papers/stake-out-sheet.ts';
import { surveySheets } from '../../src/papers/survey-sheet.ts';
import { toSvg } from '../../src/papers/svg.ts';
import { baseThere, dome, ring } from '../ground/bases.ts';
import { outside, overlaps, smallestType } from './sheet-checks.ts';
import { readXml } from './xml.ts';

const facts = {
  project: 'Heron Flats shell, 24 ft',
  sheet: '5 Ground',
  date: '14 May 2026',
  assumes: 'Base ring as cut below course 1; ground as read on the day.',
};
const words = (drawing: Drawing): string[] =>
  flatItems(drawing.items).flatMap((item) => (item.type === 'text' ? [item.text] : []));
const part = (drawing: Drawing, name: string): string =>
  drawing.items
    .filter((item: Item): item is GroupItem => item.type === 'group' && item.data?.part === name)
    .flatMap((item) => flatItems(item.items))
    .map((item) => (item.type === 'text' ? item.text : ''))
    .join(' ');

export function shimmed(base: Base, pieces: readonly number[] = []): ShimPlan {
  const random = seededRandom(3);
  const heights = new Map(
    base.hubs.map(({ number, rise }) => [number, rise + 0.06 * random.uniform()]),
  );
  const read = shims(base, heights, { tilt: 0.003, pieces });
  if (!read.ok) throw new Error('no plan');
  return read.value;
}

export function anchored(base: Base, anchor: AnchorChoice, guy: boolean): AnchorPlan {
  const read = anchorPlan(base, {
    anchor,
    soil: { kind: 'loam', firm: true, wet: true },
    tie: { pull: guy ? { way: 'guy', elevation: 0.6 } : { way: 'up' }, height: guy ? 0.9 : 0 },
    tests: [],
    cases: [
      sharedForces(
        base,
        { drag: 4200, lift: 7100, weight: 2600, armHeight: 0.6 },
        '25 m/s gust, whole shell',
      ),
    ],
    practices: Object.values(practices),
    price: 6.5,
  });
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value;
}

const bar: AnchorChoice = { type: 'bar', diameter: 0.025, depth: 0.8 };
const pickets: AnchorChoice = { type: 'wood pickets', combination: '3-2-1' };
const halfDome = dome(4, 0, 0, 3.6);
const half = baseThere(halfDome);
const ragged = baseThere(dome(3, 0, -0.2, 2.5));
const many = ring(40, 5.8);

/** Every hub read as planned, but hub 3 so far out (metres). */
function surveyed(out: number): readonly SurveyReading[] {
  return half.hubs.flatMap(({ number, radius, rise }): SurveyReading[] => [
    { what: 'radius', hub: number, length: radius + (number === 3 ? out : 0) },
    { what: 'level', hub: number, height: 0.4 + rise },
  ]);
}

function surveyOf(readings: readonly SurveyReading[], inches = false): readonly Drawing[] {
  const read = surveyAnswer(halfDome, half, readings);
  const content = { base: half, readings, tolerances: commonTolerances };
  return surveySheets(
    { ...content, answer: read.ok ? read.value : null },
    facts,
    inches ? { paper: 'Letter', lengths: 'inch' } : {},
  );
}

const beam = { width: 0.1, outside: 0.02, stock: 4.8 };

const cases: readonly (readonly [string, readonly Drawing[]])[] = [
  ['stake-out of 20 hubs', stakeOutSheets(half, tapePlan(half), facts)],
  [
    'stake-out of a ragged ring in inches on Letter',
    stakeOutSheets(ragged, tapePlan(ragged), facts, { paper: 'Letter', lengths: 'inch' }),
  ],
  ['stake-out of 40 hubs on A3', stakeOutSheets(many, tapePlan(many), facts, { paper: 'A3' })],
  ['stake-out of 40 hubs', stakeOutSheets(many, tapePlan(many), facts)],
  ['shims of 20 hubs', shimSheets(half, shimmed(half, [0.001, 0.002, 0.005, 0.01, 0.02]), facts)],
  ['shims in inches', shimSheets(ragged, shimmed(ragged), facts, { lengths: 'inch' })],
  ['shims of 40 hubs', shimSheets(many, shimmed(many), facts)],
  ['bars pulled straight up', anchorPlanSheets(half, bar, anchored(half, bar, false), facts)],
  [
    'picket holdfasts',
    anchorPlanSheets(half, pickets, anchored(half, pickets, true), facts, { paper: 'A3' }),
  ],
  [
    'bars in pounds on Letter',
    anchorPlanSheets(ragged, bar, anchored(ragged, bar, false), facts, {
      paper: 'Letter',
      lengths: 'inch',
    }),
  ],
  ['ring beam of 20 hubs', ringBeamSheets(half, beam, facts)],
  [
    'ring beam of a ragged ring in inches',
    ringBeamSheets(ragged, { width: 0.09, stock: null }, facts, {
      paper: 'Letter',
      lengths: 'inch',
    }),
  ],
  ['ring beam of 40 hubs', ringBeamSheets(many, beam, facts)],
  ['survey with nothing read', surveyOf([])],
  ['survey with a hub far out', surveyOf(surveyed(0.03))],
  ['survey as planned, in inches', surveyOf(surveyed(0), true)],
];

describe.each(cases)('%s', (_, drawings) => {
  it('keeps every word apart from every other and all of it on the paper', () => {
    for (const drawing of drawings) {
      expect(overlaps(drawing)).toEqual([]);
      expect(outside(drawing)).toEqual([]);
    }
  });

  it('can be read at arm’s length', () => {
    for (const drawing of drawings) expect(smallestType(drawing)).toBeGreaterThanOrEqual(1.9);
  });

  it('has its caution on every sheet, beside the numbers', () => {
    for (const drawing of drawings) expect(part(drawing, 'caution')).toMatch(/^Caution\./);
  });

  it('writes as an SVG that is well formed', () => {
    for (const drawing of drawings) expect(() => readXml(toSvg(drawing))).not.toThrow();
  });
});

it('the stake-out has a row for every stake and a line for every check', () => {
  const plan = tapePlan(half);
  const all = stakeOutSheets(half, plan, facts).flatMap(words);
  expect(all).toContain('0.00°');
  for (const { from, to } of plan.checks) expect(all).toContain(`${from} – ${to}`);
  const stakes = plan.rounds.flatMap((round) => round.stakes);
  expect(stakes).toHaveLength(half.hubs.length);
  for (const { lengths } of stakes) expect(all).toContain(`${lengths[0].toFixed(3)} m`);
});

it('the shim sheet says which hub gets none', () => {
  const plan = shimmed(half);
  const [drawing] = shimSheets(half, plan, facts);
  expect(part(drawing as Drawing, 'notes')).toMatch(
    new RegExp(`Hubs? ${plan.highest.join(', ')} stand`),
  );
});

it('the anchor plan tells every source from memory and from common practice', () => {
  const plan = anchored(half, bar, false);
  const notes = anchorPlanSheets(half, bar, plan, facts)
    .map((drawing) => part(drawing, 'notes'))
    .join(' ');
  for (const { confirmation, text } of plan.sources)
    if (confirmation !== 'confirmed') expect(notes.replace(/\s+/g, ' ')).toContain(text);
  expect(notes).toMatch(/From memory, to be confirmed/);
  expect(notes).toMatch(/Common practice, no published source/);
});

it('the anchor plan names who says that an anchor holds, and the case of the hub that is asked most', () => {
  const plan = anchored(half, pickets, true);
  const more = plan.hubs.map((hub, k) => (k === 3 ? { ...hub, pull: 2 * hub.pull } : hub));
  const told = more.map((hub, k) => ({ ...hub, from: `case ${k}` }));
  const [drawing] = anchorPlanSheets(half, pickets, { ...plan, hubs: told }, facts);
  const notes = part(drawing as Drawing, 'notes').replace(/\s+/g, ' ');
  expect(notes).toContain('It holds by: NAVEDTRA 14251');
  expect(notes).toContain('asks most: case 3.');
});

it('every sheet of the stake-out bears the caution of its project too', () => {
  const caution = 'Keep off the bank.';
  const drawings = stakeOutSheets(half, tapePlan(half), { ...facts, caution });
  expect(drawings.length).toBeGreaterThan(1);
  for (const drawing of drawings) expect(part(drawing, 'caution')).toContain(caution);
});

it('anchors too near each other are told on the sheet', () => {
  const tight = ring(20, 1.6);
  const plan = anchored(tight, bar, false);
  expect(plan.tooNear.length).toBeGreaterThan(0);
  const [drawing] = anchorPlanSheets(tight, bar, plan, facts);
  expect(part(drawing as Drawing, 'caution')).toMatch(/Too near: .* does not hold as drawn/);
});

describe('the ring beam on paper', () => {
  const all = (drawings: readonly Drawing[]): string => drawings.flatMap(words).join(' ');

  it('has one row for pieces of one size, with lengths, mitre and the stock they take', () => {
    const [sheet] = ringBeamSheets(ring(20, 3.6), beam, facts) as [Drawing];
    // 2 r sin 9° at the hubs; half of 18° at each end.
    const chord = 2 * 3.6 * Math.sin(Math.PI / 20);
    const outer = chord + 2 * 0.07 * Math.tan(Math.PI / 20);
    const inner = chord + 2 * -0.03 * Math.tan(Math.PI / 20);
    const said = part(sheet, 'table');
    expect(said).toContain(`${Math.round(1000 * outer)} mm`);
    expect(said).toContain(`${Math.round(1000 * inner)} mm`);
    expect(said).toContain('9.0°');
    expect(part(sheet, 'notes')).toMatch(/5 lengths of 4\.800 m/);
    expect(all([sheet])).toContain('20 pieces of one size');
  });

  it('says which pieces no stock is long enough for', () => {
    const [sheet] = ringBeamSheets(ring(6, 3), { ...beam, stock: 2.4 }, facts) as [Drawing];
    expect(part(sheet, 'notes')).toContain('6 pieces are longer than that');
  });

  it('draws the beam where it lies: outer joints by width, offset and mitre beyond the hubs', () => {
    const [sheet] = ringBeamSheets(ring(12, 3), { width: 0.2, outside: 0, stock: null }, facts) as [
      Drawing,
    ];
    const plan = sheet.items.find(
      (item): item is GroupItem => item.type === 'group' && item.data?.part === 'ground-plan',
    ) as GroupItem;
    const rings = plan.items.flatMap((item) =>
      item.type === 'path' && item.closed && item.points.length === 12 ? [item.points] : [],
    );
    const [hubs, outer, inner] = rings.map((points) => {
      const [x, y] = [0, 1].map((k) => points.reduce((sum, p) => sum + (p[k] as number), 0) / 12);
      return Math.hypot((points[0]?.[0] ?? 0) - (x ?? 0), (points[0]?.[1] ?? 0) - (y ?? 0));
    }) as [number, number, number];
    const more = 0.1 / Math.cos(Math.PI / 12) / 3;
    expect(outer / hubs).toBeCloseTo(1 + more, 6);
    expect(inner / hubs).toBeCloseTo(1 - more, 6);
  });
});

describe('the survey on paper', () => {
  it('is a form with the plan in it while nothing is read', () => {
    const [sheet] = surveyOf([]) as [Drawing];
    expect(words(sheet).filter((one) => /^_+$/.test(one))).toHaveLength(60);
    expect(words(sheet).join(' ')).toContain('to be written in as it is measured');
  });

  it('says no go, which hub to move and which way', () => {
    const said = surveyOf(surveyed(0.03)).flatMap(words).join(' ');
    expect(said).toContain('no go: move hubs first');
    expect(said).toMatch(/Move, in this order: hub 3 \d+ mm inwards/);
    expect(said).toContain('Common practice, no published source');
  });

  it('says go where it stands as planned, and draws nothing larger', () => {
    const said = surveyOf(surveyed(0), true).flatMap(words).join(' ');
    expect(said).toContain('go: course 2 may start');
    expect(said).not.toContain('drawn larger');
  });

  it('says that readings can’t be where they can’t', () => {
    const [sheet] = surveyOf([{ what: 'radius', hub: 1, length: 40 }]) as [Drawing];
    expect(words(sheet).join(' ')).toContain('read again');
  });
});
