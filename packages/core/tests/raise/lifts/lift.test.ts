import { describe, expect, it } from 'vitest';
import { gearSection, noGear } from '../../../src/raise/gear.ts';
import { liftCard, needsCard } from '../../../src/raise/lifts/card.ts';
import { stageHeights } from '../../../src/raise/lifts/heights.ts';
import { liftOf } from '../../../src/raise/lifts/lift.ts';
import { pieceModel, pieceOf } from '../../../src/raise/lifts/piece.ts';
import { footholds, gapToWall } from '../../../src/raise/lifts/reach.ts';
import { HELD_BY_ONE, sailForce, sailLimit } from '../../../src/raise/lifts/sail.ts';
import { coursesOf } from '../../../src/shell/courses.ts';
import { placeCount, type Shell } from '../../../src/shell/shell.ts';
import { cutBall, numbersOf } from '../../stages/fixtures.ts';

const small = cutBall(3, 105);
const shell: Shell = { ...small, radius: 3, hubs: small.hubs.map((x) => 3 * x) };
const numbers = numbersOf(shell);
const weighed = pieceModel(shell, numbers, () => ({ value: 9, sources: [] }), 0.05);
const { course } = coursesOf(shell);
const low = [...course].indexOf(1);
const top = [...course].indexOf(Math.max(...course));
const day = { gust: 4 };
const tower = { name: 'tower', height: 4, base: [1.5, 2], bears: null, count: 1 };
const withTower = gearSection.parse({ towers: [tower] });

describe('a piece', () => {
  it('is as heavy as its panels and its middle is between theirs', () => {
    const both = pieceOf(weighed, [low, top]);
    const [a, b] = [pieceOf(weighed, [low]), pieceOf(weighed, [top])];
    expect(both.mass).toBeCloseTo(18, 9);
    expect(both.area).toBeCloseTo(a.area + b.area, 9);
    for (const axis of [0, 1, 2])
      expect(both.centre[axis]).toBeCloseTo((a.centre[axis] + b.centre[axis]) / 2, 9);
    expect(both.low).toBeCloseTo(Math.min(a.low, b.low), 9);
    expect(both.high).toBeCloseTo(Math.max(a.high, b.high), 9);
  });
  it('of one panel lies in a box of its longest side, its height and its flange', () => {
    const { size, area } = pieceOf(weighed, [low]);
    expect((size[0] * size[1]) / 2).toBeCloseTo(area, 6);
    expect(size[2]).toBeCloseTo(0.05, 6);
  });
  it('names panels that nobody weighed, and has no mass where none was', () => {
    const half = pieceModel(shell, numbers, (p) => (p === low ? { value: 9, sources: [] } : null));
    expect(pieceOf(half, [low, top]).unweighed).toEqual([numbers[top]]);
    expect(pieceOf(half, [low, top]).mass).toBe(9);
    expect(pieceOf(half, [top]).mass).toBeNull();
  });
  it('of nothing, or of a place that is none, is refused', () => {
    expect(() => pieceOf(weighed, [])).toThrow('no place');
    expect(() => pieceOf(weighed, [placeCount(shell)])).toThrow(`place ${placeCount(shell)}`);
  });
});

describe('a lift', () => {
  it('of a panel low down takes one person and no gear', () => {
    const lift = liftOf(pieceOf(weighed, [low]), noGear, day);
    expect(lift.best).toMatchObject({ by: 'hands', name: 'the ground', people: 1 });
  });
  it('of a panel at the crown is refused without something to stand on, and says how high', () => {
    const piece = pieceOf(weighed, [top]);
    const lift = liftOf(piece, noGear, day);
    expect(lift.best).toBeNull();
    expect(lift.leastChange).toContain(`${(piece.high - 2).toFixed(2)} m above the ground`);
    expect(liftOf(piece, withTower, day).best?.name).toBe('tower');
  });
  it('that is too heavy for four says the least change: parts, or a machine for one panel', () => {
    const heavy = pieceModel(shell, numbers, () => ({ value: 15, sources: [] }));
    const cap = [...course.keys()].filter((p) => course[p] === Math.max(...course));
    const lift = liftOf(pieceOf(heavy, cap), withTower, day);
    expect(lift.best).toBeNull();
    expect(lift.leastChange).toContain(`in ${Math.ceil((15 * cap.length) / 37.5)} or more parts`);
    const slab = pieceModel(shell, numbers, () => ({ value: 80, sources: [] }));
    expect(liftOf(pieceOf(slab, [low]), noGear, day).leastChange).toContain('80 kg with its hook');
  });
  it('with a machine is told whether hook and plate do', () => {
    const cap = [...course.keys()].filter((p) => course[p] === Math.max(...course));
    const piece = pieceOf(weighed, cap);
    const of = (hookHeight: number, bears: number | null) =>
      liftOf(piece, gearSection.parse({ lifts: [{ name: 'fork', hookHeight, bears }] }), day);
    expect(of(piece.high + 1.01, 500).best?.by).toBe('lift');
    expect(of(piece.high + 0.99, 500).best).toBeNull();
    expect(of(20, 10).best).toBeNull();
    expect(of(20, null).best).toBeNull();
  });
  it('with a gin pole counts the load twice on its head', () => {
    const piece = pieceOf(weighed, [top]);
    const of = (headBears: number) =>
      liftOf(
        piece,
        gearSection.parse({ ginPole: { name: 'pole', height: 9, headBears } }),
        day,
      ).ways.find(({ by }) => by === 'gin pole');
    expect(of(9 * 9.80665 * 2 + 0.1)?.can).toBe(true);
    expect(of(9 * 9.80665 * 2 - 0.1)?.can).toBe(false);
  });
  it('in more wind takes more hands, and none where four do not hold it', () => {
    const light = pieceModel(shell, numbers, () => ({ value: 3, sources: [] }));
    const piece = pieceOf(light, [...course.keys()].filter((p) => course[p] === 1).slice(0, 4));
    const two = sailLimit(piece.area, 1).value + 0.1;
    expect(liftOf(piece, withTower, { gust: two }).best?.people).toBe(2);
    const gale = liftOf(piece, noGear, { gust: 25 });
    expect(gale.best).toBeNull();
    expect(gale.leastChange).toContain('wait until gusts are under');
  });
  it('of unknown mass is never called light', () => {
    const unknown = pieceModel(shell, numbers, () => null);
    const lift = liftOf(pieceOf(unknown, [low]), noGear, day);
    expect(lift.best).toBeNull();
    expect(lift.leastChange).toContain('Weigh');
  });
});

describe('a lift card', () => {
  it('is for more than one person, a machine, or a height; not for one panel by hand', () => {
    expect(needsCard(liftOf(pieceOf(weighed, [low]), noGear, day), noGear)).toBe(
      pieceOf(weighed, [low]).high > noGear.cardAbove,
    );
    const card = liftCard(liftOf(pieceOf(weighed, [top]), withTower, day), withTower);
    expect(card?.steps.findIndex((step) => step.startsWith('Poll'))).toBeLessThan(
      card?.steps.findIndex((step) => step.startsWith('Last metre')) ?? -1,
    );
    expect(card?.words.map(({ say }) => say)).toContain('STOP');
    expect(card?.flags.length).toBeGreaterThan(0);
    expect(card?.cautions[0]).toContain('no design approval');
  });
});

describe('heights', () => {
  it('tell what boards would do where nothing owned is high enough', () => {
    const lifts = [liftOf(pieceOf(weighed, [top]), noGear, day)];
    const sphere = { radius: 3, ground: weighed.ground };
    const bare = stageHeights(lifts, noGear, sphere);
    expect(bare.standing).toBeNull();
    expect(bare.short[0]).toContain(bare.boards.toFixed(2));
    expect(stageHeights(lifts, withTower, sphere).standing?.name).toBe('tower');
  });
  it('the gap from boards to the wall is 0 at the wall and grows as the sphere closes in', () => {
    expect(gapToWall(3, 0, -2, 0.5)).toBeCloseTo(3 - Math.sqrt(5), 9);
    expect(gapToWall(3, 2.9, 0, 0.5)).toBe(0);
  });
  it('ladders keep three rungs above the feet', () => {
    const gear = gearSection.parse({ ladders: [{ name: 'a', form: 'leaning', length: 5 }] });
    const feet = footholds(gear).at(-1)?.feet ?? 0;
    expect(feet).toBeCloseTo((5 - 0.84) * Math.sqrt(15 / 16), 9);
  });
});

it('a sail’s force grows with the square of the gust and one person holds 100 N', () => {
  expect(sailForce(1.5, 8).value).toBeCloseTo(108, 6);
  expect(sailForce(2, 8).value / sailForce(2, 4).value).toBeCloseTo(4, 9);
  expect(sailForce(1.2, sailLimit(1.2, 3).value).value).toBeCloseTo(3 * HELD_BY_ONE.value, 6);
  expect(() => sailLimit(0, 1)).toThrow('area is 0');
});
