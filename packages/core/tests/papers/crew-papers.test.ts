import { describe, expect, it } from 'vitest';
import { type Drawing, flatItems } from '../../src/papers/drawing.ts';
import { buySheets, kitSheets, mostTools } from '../../src/papers/kit-sheets.ts';
import { liftCardSheets } from '../../src/papers/lift-card-sheets.ts';
import { tallySheets } from '../../src/papers/tally-sheets.ts';
import { twinSheets } from '../../src/papers/twin-sheets.ts';
import { gearSection } from '../../src/raise/gear.ts';
import { liftCard, needsCard } from '../../src/raise/lifts/card.ts';
import { liftOf } from '../../src/raise/lifts/lift.ts';
import { pieceModel, pieceOf } from '../../src/raise/lifts/piece.ts';
import type { StageLifts } from '../../src/raise/raised/lifts.ts';
import { recordPlan } from '../../src/record/names.ts';
import { readTwin, twinCheck, twinLines } from '../../src/record/twin.ts';
import { coursesOf } from '../../src/shell/courses.ts';
import type { BuyLine } from '../../src/takeoff/buy-line.ts';
import { outside, overlaps } from './sheet-checks.ts';
import { standing } from './standing.ts';

const of = standing({ solid: 'icosahedron', b: 2, c: 0, division: 'equal chords' }, -0.1, 2.4);
const plan = recordPlan(of.shell, coursesOf(of.shell));
const facts = {
  project: 'Купол у пруда 穹頂 🙂, 24 ft',
  sheet: 'Trial',
  date: '2026-05-14',
  assumes: 'Nothing.',
};
const textOf = (sheets: readonly Drawing[]): string =>
  sheets
    .flatMap(({ items }) => flatItems(items))
    .flatMap((item) => (item.type === 'text' ? [item.text] : []))
    .join(' ');
function sound(sheets: readonly Drawing[]): readonly Drawing[] {
  expect(sheets.flatMap(overlaps)).toEqual([]);
  expect(sheets.flatMap(outside)).toEqual([]);
  return sheets;
}

describe('tally sheets', () => {
  it('have a cell for every side of every known kind, as often as asked for, then blank rows', () => {
    for (const paper of ['A4', 'Letter'] as const) {
      const said = textOf(sound(tallySheets(of.kinds, facts, { paper, readings: 3, blank: 10 })));
      for (const kind of of.kinds) expect(said).toContain(`Kind ${kind.id}`);
      expect(said).toContain('Other panels');
    }
    const rows = (readings: number): number =>
      tallySheets(of.kinds, facts, { readings, blank: 0 })
        .flatMap(({ items }) => flatItems(items))
        .filter((item) => item.type === 'path' && item.closed && item.points.length === 4).length;
    expect(rows(5) - rows(3)).toBeGreaterThanOrEqual(2 * of.kinds.length);
  });

  it('can be for a pile of which nothing is known, of panels with up to eight sides', () => {
    expect(textOf(sound(tallySheets([], facts, { sides: 6 })))).toContain('side 6');
    expect(() => tallySheets([], facts, { sides: 9 })).toThrow('9 sides a panel: expected 3 to 8');
    expect(() => tallySheets([], facts, { blank: -1 })).toThrow('-1 rows: expected 0 to 1000');
  });
});

describe('the record on paper', () => {
  it('has every line with its number, so that what is ticked reads back', () => {
    const lines = twinLines(plan);
    const said = textOf(sound(twinSheets(lines, facts)));
    expect(said).toContain(`sheets of plan ${twinCheck(lines)}`);
    for (const { number } of lines) expect(said).toMatch(new RegExp(`\\b${number} a\\b`));
    const places = lines.filter(({ sort }) => sort === 'place');
    for (const { name } of places) expect(said).toContain(name);
    const state = {
      placed: plan.places.map(() => null),
      passes: plan.seams.map(() => 'none'),
      sealed: [],
      plates: [],
      props: [],
    } as unknown as Parameters<typeof readTwin>[2];
    expect(readTwin(`${places[0]?.number}a=0143`, lines, state).says).toMatchObject([
      { kind: 'panel placed', place: places[0]?.name, tag: '0143' },
    ]);
  });
});

const line = (more: Partial<BuyLine>): BuyLine =>
  ({
    item: 'bolt',
    thread: '5/16-18',
    length: 0.0254,
    corners: null,
    rim: null,
    quantity: 90,
    unit: 'piece',
    spare: 10,
    inHand: 0,
    short: 90,
    toBuy: 100,
    pack: 50,
    packs: 2,
    price: 0.2,
    cost: 20,
    notes: [],
    ...more,
  }) as BuyLine;

describe('kit, tools and what to buy', () => {
  it('take of each tool the most that one stage asks for', () => {
    const tools = [
      ['4 wrenches 1/2 in', '1 mallet'],
      ['2 wrenches 1/2 in', 'trestle'],
    ];
    expect(mostTools(tools.map((one) => ({ tools: one })))).toEqual([
      '4 wrenches 1/2 in',
      '1 mallet',
      'trestle',
    ]);
  });

  it('list what is still to go into each bag', () => {
    const sheets = kitSheets(
      {
        tools: [{ stage: 1, tools: ['4 wrenches 1/2 in'], sources: [] }],
        charge: null,
        check: {
          left: 1,
          lines: 1,
          next: null,
          bags: [
            {
              stage: 1,
              title: 'Stage 1: base',
              left: [line({})],
              over: [],
              foreign: [],
              isFull: false,
            },
          ],
        },
      },
      facts,
    );
    expect(textOf(sound(sheets))).toContain('90 bolts 5/16-18 × 25.4 mm');
  });

  it('put each item under the shop that has it, with its packs and the stage that wants it', () => {
    const sheets = buySheets(
      [
        { line: line({}), before: 3, short: [] },
        {
          line: line({ item: 'tape', thread: null, unit: 'm', toBuy: 24.5, cost: null }),
          before: null,
          short: [],
        },
      ],
      facts,
      { unknown: ['the bolts of 12 seams'] },
    );
    const said = textOf(sound(sheets));
    expect(said).toMatch(/Fastener shop .*2 of 50 20\.00 3 .*roofing shop .*24\.5 m/);
    expect(said).toContain('the bolts of 12 seams');
    expect(textOf(sound(buySheets([], facts)))).toContain('Nothing to buy');
  });
});

describe('lift cards', () => {
  const gear = gearSection.parse({ cardAbove: 0.5 });
  const model = pieceModel(of.shell, of.numbers, () => ({ value: 30, sources: [] }));
  const lifts = of.numbers.map((_, p) => liftOf(pieceOf(model, [p]), gear, { gust: null }));
  const stages: StageLifts[] = [
    {
      stage: 1,
      heights: {} as StageLifts['heights'],
      lifts: lifts.map((told, lift) => ({
        stage: 1,
        lift,
        told,
        card: liftCard(told, gear),
        needsCard: needsCard(told, gear),
      })),
    },
  ];

  it('share a card where lifts are done alike, with every panel on it, and tell those without a way', () => {
    const carded = stages[0]?.lifts.filter(({ card }) => card !== null) ?? [];
    const without = stages[0]?.lifts.filter(({ told }) => told.best === null) ?? [];
    expect(carded.length).toBeGreaterThan(2);
    expect(without.length).toBeGreaterThan(0);
    for (const paper of ['A4', 'Letter'] as const) {
      const sheets = sound(liftCardSheets(stages, facts, { paper }));
      const said = textOf(sheets);
      expect(sheets.length).toBeLessThan(carded.length);
      for (const { told } of [...carded, ...without])
        for (const number of told.piece.numbers) expect(said).toContain(number);
      expect(said).toContain('anybody calls STOP');
      expect(said).toContain('no design approval');
      expect(said).toContain('Nothing that is there lifts these');
    }
  });

  it('are none where nothing is lifted', () => {
    expect(liftCardSheets([], facts)).toEqual([]);
  });
});
