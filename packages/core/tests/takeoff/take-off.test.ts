import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pileSection } from '../../src/pile/schema.ts';
import type { HardwareLot } from '../../src/takeoff/hardware.ts';
import { itemNamed } from '../../src/takeoff/hardware.ts';
import { takeoffSection } from '../../src/takeoff/schema.ts';
import { ruleFor } from '../../src/takeoff/seam-bolts.ts';
import { type BuyLine, type TakeOff, takeOff } from '../../src/takeoff/take-off.ts';
import { above, ball } from './ball.ts';

const dome = above(ball(3), 0.1);
// 75 places, 105 seams, 15 base sides. Three side classes: 0.941, 1.090 and 1.114 m.
const rule = (sideLength: number, holes: number, thread = '5/16-18', length = 0.0254) => ({
  sideLength,
  holes,
  thread,
  length,
});
const sides = [rule(0.941262, 8), rule(1.08958, 10), rule(1.113511, 10, '5/16-18', 0.03175)];
const noPlates = { sides, plates: null };
const list = (settings: unknown, lots: readonly HardwareLot[] = []): TakeOff =>
  takeOff(dome.shell, dome.kinds, lots, takeoffSection.parse(settings));
const line = (result: TakeOff, item: string, length?: number): BuyLine => {
  const found = result.lines.find((l) => l.item === item && (length ?? l.length) === l.length);
  if (found === undefined) throw new Error(`no line for ${item}`);
  return found;
};
const lot = (item: string, count: number, more: Partial<HardwareLot> = {}): HardwareLot => ({
  item,
  count,
  thread: '5/16-18',
  state: 'new',
  ...(/bolt/.test(item) ? { length: 0.0254 } : {}),
  ...more,
});

describe('the lines', () => {
  it('run from the smallest size to the largest, by diameter and not by spelling', () => {
    const result = list({
      plates: null,
      sides: [rule(0.941262, 8, 'M10'), rule(1.08958, 10, 'M8'), rule(1.113511, 10, '3/8-16')],
      baseBolt: { thread: '#10-32', length: 0.025 },
    });
    const threads = (item: string) =>
      result.lines.filter((l) => l.item === item).map((l) => l.thread);
    expect(threads('bolt')).toEqual(['#10-32', 'M8', '3/8-16', 'M10']);
    expect(threads('washer')).toEqual(['#10', 'M8', '3/8', 'M10']);
  });
});

describe('bolts through seams', () => {
  it('are holes times seams, by size', () => {
    const result = list(noPlates);
    const [short, middle, long] = result.seams;
    expect(result.seams.map((s) => s.seams).reduce((a, b) => a + b)).toBe(105);
    expect(line(result, 'bolt', 0.0254).quantity).toBe(
      8 * (short?.seams ?? 0) + 10 * (middle?.seams ?? 0),
    );
    expect(line(result, 'bolt', 0.03175).quantity).toBe(10 * (long?.seams ?? 0));
    expect(result.complete).toBe(true);
  });

  it('take one nut and two washers each', () => {
    const result = list(noPlates);
    const bolts = result.lines.filter((l) => l.item === 'bolt').reduce((n, l) => n + l.quantity, 0);
    expect(line(result, 'lock nut').quantity).toBe(bolts);
    expect(line(result, 'washer').quantity).toBe(2 * bolts);
    expect(line(result, 'washer').thread).toBe('5/16');
  });

  it('are not averaged where the two sides disagree: the seams are named and left out', () => {
    const odd = { kind: '1', side: 2, holes: 9, thread: '5/16-18', length: 0.0254 };
    const result = list({ sides: [...sides, odd], plates: null });
    const agreed = list(noPlates);
    const dispute = result.disagreements[0];
    expect(result.complete).toBe(false);
    expect(dispute?.sides.map((s) => `${s.kind}/${s.side}: ${s.holes}`)).toEqual([
      '1/2: 9',
      '2/0: 10',
    ]);
    expect(line(agreed, 'bolt', 0.0254).quantity - line(result, 'bolt', 0.0254).quantity).toBe(
      10 * (dispute?.seams ?? 0),
    );
  });

  it('of different threads disagree too', () => {
    const odd = { kind: '1', side: 2, holes: 10, thread: 'M8', length: 0.0254 };
    expect(list({ sides: [...sides, odd] }).disagreements.length).toBe(1);
  });

  it('are unknown where no rule speaks, and counted from one side where only that was looked at', () => {
    const { seamsUnknown, seams, complete } = list({ sides: sides.slice(0, 2), plates: null });
    expect(seamsUnknown).toBe(seams[2]?.seams);
    expect(complete).toBe(false);
    const oneSide = { kind: '2', side: 0, holes: 10, thread: '5/16-18', length: 0.0254 };
    const result = list({ sides: [sides[0], sides[2], oneSide], plates: null });
    expect(result.complete).toBe(true);
    const disputed = { ...oneSide, kind: '1', side: 2, holes: 9 };
    const both = list({ sides: [...sides, disputed] }).disagreements[0]?.seams;
    expect(result.seamsFromOneSide).toBe(both);
  });

  it('go by the hand count first, then by the nearest length', () => {
    const rules = takeoffSection.parse({
      sides: [
        rule(1.0, 1),
        rule(1.001, 2),
        { ...rule(1, 3), sideLength: undefined, kind: 'a', side: 1 },
      ],
    }).sides;
    expect(ruleFor(rules, 'b', 0, 1.0008)?.holes).toBe(2);
    expect(ruleFor(rules, 'b', 0, 1.0004)?.holes).toBe(1);
    expect(ruleFor(rules, 'a', 1, 1.0)?.holes).toBe(3);
    expect(ruleFor(rules, 'b', 0, 1.02)).toBeNull();
  });

  it('go by holes counted on the panels, with the bolt that the settings name', () => {
    const settings = takeoffSection.parse({
      seamBolt: { thread: 'M8', length: 0.025 },
      plates: null,
    });
    const counts = dome.kinds.map((kind) => kind.sides.map(() => 7));
    const result = takeOff(dome.shell, dome.kinds, [], settings, counts);
    expect(line(result, 'bolt')).toMatchObject({ thread: 'M8', quantity: 7 * 105 });
    const partly = takeOff(dome.shell, dome.kinds, [], settings, [[7, 7, null], null]);
    expect(partly.seamsUnknown).toBeGreaterThan(0);
  });

  it('disagree where a count from the panels contradicts the other side', () => {
    const settings = takeoffSection.parse(noPlates);
    const counts = [[null, null, 9]];
    const result = takeOff(dome.shell, dome.kinds, [], settings, counts);
    expect(result.disagreements[0]?.sides.map((s) => s.holes)).toEqual([9, 10]);
  });

  it('name the rules that fit nothing', () => {
    const idle = rule(2, 5);
    expect(list({ sides: [...sides, idle] }).rulesUnused).toMatchObject([{ sideLength: 2 }]);
  });
});

describe('open sides and hub plates', () => {
  it('take base bolts only where the settings say so', () => {
    const [plain, bolted] = [null, { thread: 'M10', length: 0.04 }].map((baseBolt) =>
      list({ ...noPlates, baseBolt }),
    ) as [TakeOff, TakeOff];
    expect(plain.lines.some((l) => l.thread === 'M10')).toBe(false);
    const base = bolted.lines.find((l) => l.item === 'bolt' && l.thread === 'M10');
    const holes = dome.shell.mate.reduce((n, mate) => n + (mate < 0 ? 1 : 0), 0);
    expect(holes).toBe(15);
    expect([15 * 8, 15 * 10]).toContain(base?.quantity);
  });

  it('have plates by corners, rim hubs apart, and bolts per corner', () => {
    const bolt = { thread: '1/4-20', length: 0.01905 };
    const result = list({ sides, plates: { bolt, boltsPerCorner: 2 } });
    const plates = result.lines.filter((l) => l.item === 'plate');
    expect(plates.reduce((n, l) => n + l.quantity, 0)).toBe(46);
    expect(plates.filter((l) => l.rim).reduce((n, l) => n + l.quantity, 0)).toBe(15);
    expect(result.lines.find((l) => l.thread === '1/4-20')?.quantity).toBe(2 * 3 * 75);
  });

  it('say so where plates are bolted but no bolt is named', () => {
    expect(list({ sides }).plateBoltUnknown).toBe(true);
    expect(list({ sides }).complete).toBe(false);
  });
});

describe('the pile against the need', () => {
  const need = line(list(noPlates), 'bolt', 0.0254).quantity;

  it('counts what is usable, tells the short and buys whole packs with spares', () => {
    const bolts = line(
      list(noPlates, [
        lot('bolt', 300, { price: 0.21, pack: 50, state: 'used' }),
        lot('Hex bolts', 100, { thread: '5/16-18 UNC' }),
        lot('bolt', 40, { state: 'rusted' }),
      ]),
      'bolt',
      0.0254,
    );
    const spare = Math.ceil(need * 0.1);
    const packs = Math.ceil((need + spare - 400) / 50);
    expect(bolts).toMatchObject({ inHand: 400, unusable: 40, short: need - 400, spare, packs });
    expect(bolts.toBuy).toBe(50 * packs);
    expect(bolts.cost).toBeCloseTo(0.21 * 50 * packs, 9);
  });

  it('never counts a near twin, and warns of it', () => {
    const result = list(noPlates, [lot('bolt', 900, { thread: 'M8', length: 0.0254 })]);
    expect(line(result, 'bolt', 0.0254).inHand).toBe(0);
    expect(result.nearTwins[0]?.warning).toMatch(/M8 .* 5\/16-18/);
    expect(result.lotsAside).toEqual([{ lot: 0, why: 'no bolt of this size is needed' }]);
  });

  it('does not count other lengths, and counts lengths that differ by rounding alone', () => {
    const held = (length: number): number =>
      line(list(noPlates, [lot('bolt', 10, { length })]), 'bolt', 0.0254).inHand;
    expect([0.0254, 0.025, 0.0222].map(held)).toEqual([10, 10, 0]);
  });

  it('counts only new lock nuts unless the settings say otherwise', () => {
    const lots = [lot('nylon-insert nut', 200, { state: 'used' }), lot('nyloc nuts', 30)];
    expect(line(list(noPlates, lots), 'lock nut')).toMatchObject({ inHand: 30, unusable: 200 });
    const lenient = { ...noPlates, lockNutsNew: false };
    expect(line(list(lenient, lots), 'lock nut')).toMatchObject({ inHand: 230, unusable: 0 });
  });

  it('has no cost where no price is known, and says so', () => {
    const result = list(noPlates);
    expect(line(result, 'bolt').cost).toBeNull();
    expect(line(result, 'bolt').notes).toContain('no price');
    expect(result.costComplete).toBe(false);
    const stocked = list(noPlates, [lot('bolt', 9999), lot('washer', 9999), lot('lock nut', 9999)]);
    expect(line(stocked, 'bolt', 0.0254)).toMatchObject({ toBuy: 0, cost: 0 });
  });

  it('sets aside lots it cannot read, with the reason', () => {
    const aside = list(noPlates, [
      lot('bolt', 5, { thread: '5/16' }),
      lot('bolt', 5, { length: null }),
      lot('plate', 5),
      lot('rope', 5),
      lot('washer', 5, { thread: null }),
    ]).lotsAside;
    expect(aside.map((one) => one.why)).toEqual([
      expect.stringContaining('expected 5/16-18 (UNC)'),
      'a bolt needs its length',
      'a plate needs its number of corners',
      '"rope" is no item of this list',
      'a washer needs its thread',
    ]);
  });

  it('says where grades are mixed', () => {
    const lots = [lot('bolt', 5, { grade: 'SAE J429 Gr 5' }), lot('bolt', 5, { grade: '8.8' })];
    expect(line(list(noPlates, lots), 'bolt', 0.0254).notes[0]).toBe(
      'grades mixed in the pile: 8.8, SAE J429 Gr 5',
    );
  });

  it('buys enough and no pack too many, for any stock and pack (seed 4)', () => {
    const property = fc.property(
      fc.nat(2000),
      fc.integer({ min: 1, max: 300 }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (count, pack, bolts) => {
        const settings = { ...noPlates, spares: { bolts } };
        const got = line(list(settings, [lot('bolt', count, { pack })]), 'bolt', 0.0254);
        const wanted = got.quantity + got.spare;
        expect(got.spare).toBeGreaterThanOrEqual(got.quantity * bolts - 1e-6);
        expect(got.inHand + got.toBuy).toBeGreaterThanOrEqual(wanted);
        expect(got.toBuy === 0 || got.inHand + got.toBuy - pack < wanted).toBe(true);
      },
    );
    fc.assert(property, { seed: 4, numRuns: 50 });
  });

  it('measures tape along the seams, in rolls', () => {
    const tape = { runs: 2, rollLength: 20, price: 6 };
    const result = list({ ...noPlates, tape });
    const total = result.seams.reduce((sum, size) => sum + size.total, 0);
    const got = line(result, 'tape');
    expect(got.unit).toBe('m');
    expect(got.quantity).toBeCloseTo(2 * total, 9);
    expect(got.packs).toBe(Math.ceil((2.2 * total) / 20));
    expect(got.cost).toBe(6 * got.packs);
  });

  it('holds rolls of tape in metres, and has no price for rolls of unknown length', () => {
    const rolls = { item: 'tape', count: 3, length: 15, state: 'new', price: 7 };
    const got = line(list({ ...noPlates, tape: {} }, [rolls]), 'tape');
    expect(got).toMatchObject({ inHand: 45, pack: 15, price: 7 });
    expect(got.packs).toBe(Math.ceil((1.1 * got.quantity - 45) / 15));
    const unknown = list({ ...noPlates, tape: { price: 7 } }, [{ ...rolls, length: null }]);
    expect(line(unknown, 'tape')).toMatchObject({ inHand: 0, cost: null });
    expect(unknown.lotsAside).toEqual([{ lot: 0, why: 'tape needs the length of a roll' }]);
  });

  it('always says that grade and tightening are not decided here', () => {
    expect(list(noPlates).cautions.join(' ')).toMatch(/grade, tightening .* not decided/);
  });

  it('takes a row of the pile as it stands, a nut graded as nylon-insert for a lock nut', () => {
    const { hardware } = pileSection.parse({
      hardware: [
        { item: 'nut', thread: '5/16-18', grade: 'nylon insert', count: 70, state: 'new' },
        { item: 'nut', thread: '5/16-18', count: 500, state: 'new' },
      ],
    });
    expect(line(list(noPlates, hardware), 'lock nut').inHand).toBe(70);
  });

  it('knows items by their usual names', () => {
    expect(
      ['Bolts', 'hex bolt', 'Lock nuts', 'NYLOC', 'nuts', 'flat washers', 'hub plate', 'glue'].map(
        itemNamed,
      ),
    ).toEqual(['bolt', 'bolt', 'lock nut', 'lock nut', 'nut', 'washer', 'plate', null]);
  });
});
