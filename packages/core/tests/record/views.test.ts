import { describe, expect, it } from 'vitest';
import { commonRates, updatedRates, type WorkObserved } from '../../src/crew/rates.ts';
import { clockOffsets, timeOf } from '../../src/record/clocks.ts';
import { dayPage } from '../../src/record/day.ts';
import {
  forgotten,
  nearestFirst,
  samplesWanted,
  workingCourse,
} from '../../src/record/forgotten.ts';
import { compareNumbers, recordPlan, whereIs } from '../../src/record/names.ts';
import { recordState } from '../../src/record/state.ts';
import { readTag, whereTo } from '../../src/record/tags.ts';
import { tighteningWalk } from '../../src/record/tightening.ts';
import { measuredWork } from '../../src/record/work.ts';
import { coursesOf } from '../../src/shell/courses.ts';
import { meet, NINE, type Phone, phone, placed, plan, seam } from './fixtures.ts';

const site = plan();
const inCourse = (course: number): number[] =>
  site.places.map((_, p) => p).filter((p) => site.course[p] === course);
const stateOf = (one: Phone) => recordState(one.log, site);
const find = (one: Phone, bolts: (seam: number) => number | null = () => 5) =>
  forgotten(one.log, site, stateOf(one), bolts);

/** All panels of some courses in, and every seam between them at a pass. */
function built(one: Phone, courses: readonly number[], pass: 'finger' | 'snug' | 'final'): void {
  for (const p of courses.flatMap(inCourse)) one.say(placed(site.places[p]!, `t${p}`));
  const state = stateOf(one);
  site.seams.forEach((name, m) => {
    if (site.seamPlaces[m]!.every((p) => state.placed[p])) one.say(seam(name, pass));
  });
}

describe('names', () => {
  it('tell every place, seam and hub of a shell apart', () => {
    for (const shell of [site, plan(3), plan(4)]) {
      expect(shell.seamIndex.size).toBe(shell.seams.length);
      expect(shell.placeIndex.size).toBe(shell.places.length);
      const hubs = shell.hubs.filter((name) => name !== '');
      expect(new Set(hubs).size).toBe(hubs.length);
    }
    expect(site.seams).toContain('1-01/1-02');
  });

  it('put the lower place of a seam first, by course, then by position', () => {
    for (const name of site.seams) {
      const [a, b] = name.split('/') as [string, string];
      expect(compareNumbers(a, b)).toBeLessThan(0);
    }
    expect(compareNumbers('2-09', '10-01')).toBeLessThan(0);
    expect(compareNumbers('2-101', '2-11')).toBeGreaterThan(0);
  });

  it('are refused where two places share one', () => {
    const { course } = coursesOf(site.shell);
    expect(() =>
      recordPlan(site.shell, { numbers: site.places.map(() => '1-01'), course }),
    ).toThrow(/all different/);
  });
});

describe('the state', () => {
  it('is what was said of every place, seam and hub', () => {
    const ada = phone('Ada');
    ada.say(placed('1-01', '017'));
    ada.say(seam(site.seams[0]!, 'snug'));
    ada.say({ kind: 'seam sealed', seam: site.seams[0]!, sealed: true });
    const hub = site.hubs.findIndex((name) => name !== '');
    ada.say({ kind: 'hub plate', hub: site.hubs[hub]!, on: true });
    ada.say({ kind: 'prop', hub: site.hubs[hub]!, set: true });
    ada.say({ kind: 'hub bolt', hub: site.hubs[hub]!, pass: 'final' });
    ada.say({ kind: 'person', person: 'Ada', here: true });
    ada.say({ kind: 'person', person: 'Bob', here: true });
    ada.say({ kind: 'person', person: 'Bob', here: false });
    ada.say({ kind: 'stop', why: 'wind', on: true });
    ada.say({ kind: 'stage done', stage: 2, done: true });
    ada.say({ kind: 'closed down', stage: 2, closed: true });
    const state = stateOf(ada);
    expect(state.placed[site.placeIndex.get('1-01')!]).toEqual({ tag: '017', turn: 0 });
    expect([state.passes[0], state.sealed[0]]).toEqual(['snug', true]);
    expect([state.plates[hub], state.props[hub], state.hubBolts[hub]]).toEqual([
      true,
      true,
      'final',
    ]);
    expect(state).toMatchObject({ people: ['Ada'], stops: ['wind'], done: [2], closed: [2] });
    expect(state.questions).toEqual([]);
    ada.say({ kind: 'panel taken out', place: '1-01' });
    expect(stateOf(ada).placed[site.placeIndex.get('1-01')!]).toBeNull();
  });

  it('asks where one tag sits in two places, and where the shell lacks what was spoken of', () => {
    const ada = phone('Ada');
    ada.say(placed('1-01', '017'));
    ada.say(placed('2-01', '017'));
    ada.say(seam('9-01/9-02', 'snug'));
    expect(stateOf(ada).questions.map(({ what, about }) => [what, about])).toEqual([
      ['two places', '017'],
      ['not in the plan', 'seam 9-01/9-02'],
    ]);
  });

  it('holds a stop until all agree that it is lifted', () => {
    const [ada, bob] = [phone('Ada'), phone('Bob')];
    ada.say({ kind: 'stop', why: 'lightning', on: true });
    meet(ada, bob);
    ada.say({ kind: 'stop', why: 'lightning', on: false });
    bob.say({ kind: 'stop', why: 'lightning', on: true });
    meet(ada, bob);
    expect(stateOf(ada).stops).toEqual(['lightning']);
    expect(stateOf(ada).questions).toHaveLength(1);
  });
});

describe('what was forgotten', () => {
  it('is every seam still finger below the working course, and none at it', () => {
    const ada = phone('Ada');
    built(ada, [1], 'finger');
    expect(workingCourse(site, stateOf(ada))).toBe(1);
    expect(find(ada)).toEqual([]);
    built(ada, [2], 'finger');
    const loose = find(ada).filter(({ what }) => what === 'loose seam');
    const below = site.seamPlaces.filter((pair) => pair.every((p) => site.course[p] === 1)).length;
    expect(below).toBeGreaterThan(5);
    expect(loose).toHaveLength(below);
    ada.say(seam(loose[0]!.name, 'snug'));
    expect(find(ada).filter(({ what }) => what === 'loose seam')).toHaveLength(below - 1);
  });

  it('counts a seam in question as it is by who supposes least', () => {
    const [ada, bob] = [phone('Ada'), phone('Bob')];
    built(ada, [1, 2], 'snug');
    meet(ada, bob);
    const name = '1-01/1-02';
    ada.say(seam(name, 'final'));
    bob.say(seam(name, 'finger'));
    meet(ada, bob);
    expect(
      find(ada)
        .filter(({ what }) => what === 'loose seam')
        .map((one) => one.name),
    ).toEqual([name]);
  });

  it('has plates over hubs whose panels are all in below the working course', () => {
    const ada = phone('Ada');
    built(ada, [1, 2], 'snug');
    const wanted = site.hubPlaces.filter(
      (list) => list.length > 0 && list.every((p) => site.course[p] === 1),
    );
    const missing = find(ada).filter(({ what }) => what === 'missing plate');
    expect(missing).toHaveLength(wanted.length);
    if (missing[0]) ada.say({ kind: 'hub plate', hub: missing[0].name, on: true });
    expect(find(ada).filter(({ what }) => what === 'missing plate')).toHaveLength(
      Math.max(0, wanted.length - 1),
    );
  });

  it('has a tenth of the bolts of a final seam to be sampled, and all once one fails', () => {
    expect([1, 5, 10, 11, 40].map((n) => samplesWanted(n, 0))).toEqual([1, 1, 1, 2, 4]);
    expect([samplesWanted(11, 1), samplesWanted(null, 0)]).toEqual([11, 1]);
    const ada = phone('Ada');
    const name = site.seams[0]!;
    ada.say(seam(name, 'final'));
    const due = () => find(ada, () => 12).map(({ what, bolts }) => [what, bolts]);
    expect(due()).toEqual([['samples due', 2]]);
    const good = ada.say({ kind: 'seam sampled', seam: name, bolts: 2, failed: 0 });
    expect(due()).toEqual([]);
    const bad = ada.say({ kind: 'seam sampled', seam: name, bolts: 1, failed: 1 });
    expect(due()).toEqual([['failed samples', 9]]);
    ada.undo(bad);
    expect(due()).toEqual([]);
    ada.undo(good);
    expect(due()).toEqual([['samples due', 2]]);
    expect(find(ada, () => null).map(({ bolts }) => bolts)).toEqual([null]);
  });

  it('is told by course, or nearest first', () => {
    const ada = phone('Ada');
    built(ada, [1, 2, 3], 'finger');
    const list = find(ada);
    expect(list.map(({ course }) => course)).toEqual(list.map(({ course }) => course).sort());
    const from = inCourse(1)[3]!;
    const near = nearestFirst(site, list, from);
    const far = near.map(({ what, index }) => {
      const at = whereIs(site, what === 'missing plate' ? 'hub' : 'seam', index);
      return Math.hypot(...whereIs(site, 'place', from).map((x, k) => x - at[k]!));
    });
    expect(far).toEqual([...far].sort((a, b) => a - b));
    expect(near).toHaveLength(list.length);
    expect(site.seamPlaces[near[0]!.index]).toContain(from);
  });
});

describe('tightening', () => {
  it('is a walk once round the ring, clockwise from where one stands', () => {
    const ada = phone('Ada');
    built(ada, [1, 2], 'finger');
    for (const from of [null, inCourse(2)[4]!]) {
      const walk = tighteningWalk(site, stateOf(ada), { course: 2, to: 'snug', from });
      const start = from === null ? 0 : angle(whereIs(site, 'place', from));
      const turns = walk.map(
        (m) => (angle(whereIs(site, 'seam', m)) - start + 20 * Math.PI) % (2 * Math.PI),
      );
      for (const [i, turn] of turns.entries())
        if (i > 0) expect(turn).toBeGreaterThan(turns[i - 1]! - 2e-4);
      expect(new Set(walk).size).toBe(walk.length);
      const due = site.seamPlaces.filter(
        (pair) => Math.max(...pair.map((p) => site.course[p]!)) === 2,
      );
      expect(walk).toHaveLength(due.length);
    }
  });

  it('leaves out what is done, and seams with a panel missing', () => {
    const ada = phone('Ada');
    built(ada, [1, 2], 'finger');
    const walk = () => tighteningWalk(site, stateOf(ada), { course: 2, to: 'snug', from: null });
    const [first, ...rest] = walk();
    ada.say(seam(site.seams[first!]!, 'final'));
    expect(walk()).toEqual(rest);
    expect(tighteningWalk(site, stateOf(ada), { course: 3, to: 'snug', from: null })).toEqual([]);
  });

  const angle = ([x, y]: readonly number[]): number => {
    const turn = -Math.atan2(y!, x!);
    return turn < -1e-9 ? turn + 2 * Math.PI : Math.max(0, turn);
  };
});

describe('a tag', () => {
  const kinds = new Map<string, number | null>([
    ['017', site.shell.kind[0]!],
    ['A 3', null],
    ['a3', null],
  ]);
  const ask = (one: Phone, typed: string) => whereTo(one.log, site, stateOf(one), kinds, typed);

  it('is read whatever its capitals, blanks and zeros where one alone fits', () => {
    expect(readTag('17', kinds.keys())).toEqual(['017']);
    expect(readTag(' 017 ', kinds.keys())).toEqual(['017']);
    expect(readTag('A3', kinds.keys())).toEqual(['A 3', 'a3']);
    expect(readTag('', kinds.keys())).toEqual([]);
    expect(readTag('000', ['0'])).toEqual(['0']);
  });

  it('leads to the free places of its kind, lowest first, and says which way round', () => {
    const ada = phone('Ada');
    const where = ask(ada, '17');
    if (where.status !== 'goes') throw new Error(where.status);
    const right = site.places.filter((_, p) => site.shell.kind[p] === site.shell.kind[0]);
    expect(where.to.map(({ number }) => number).sort()).toEqual([...right].sort());
    const courses = where.to.map(({ place }) => site.course[place]!);
    expect(courses).toEqual([...courses].sort());
    for (const { place, turn } of where.to) expect(turn).toBe(site.shell.turn[place]);
  });

  it('that sits somewhere says where; scrap and strangers say so', () => {
    const ada = phone('Ada');
    ada.say(placed('2-01', '017'));
    expect(ask(ada, '17')).toMatchObject({ status: 'placed', at: [{ number: '2-01', turn: 0 }] });
    ada.say({ kind: 'panel taken out', place: '2-01' });
    ada.say({ kind: 'panel condition', tag: '017', condition: 'scrap' });
    expect(ask(ada, '17')).toMatchObject({ status: 'no place', why: 'scrap' });
    expect(ask(ada, '99')).toEqual({ status: 'unknown', typed: '99' });
    expect(ask(ada, 'A3')).toMatchObject({ status: 'ambiguous' });
  });
});

describe('rates out of the record', () => {
  it('are the times between one phone’s own entries, in the shape the crew’s rates take', () => {
    const [ada, bob] = [phone('Ada'), phone('Bob', { skew: 5e8 })];
    for (const [i, p] of inCourse(1).slice(0, 4).entries()) {
      ada.say(placed(site.places[p]!, `t${i}`, 4));
      ada.wait(300);
    }
    meet(ada, bob);
    bob.say(seam(site.seams[0]!, 'finger', 2));
    bob.wait(600);
    bob.say(seam(site.seams[1]!, 'finger', 2));
    bob.wait(120);
    bob.say(seam(site.seams[0]!, 'snug', 1));
    meet(ada, bob);
    const { observed, ...missing } = measuredWork(ada.log, site, () => 5);
    expect(missing).toEqual({ withoutHands: 0, withoutBolts: 0, withoutStart: 2 });
    expect(
      observed.map(({ work, count, people, seconds }) => [work, count, people, seconds]),
    ).toEqual([
      ['panel', 1, 4, 300],
      ['panel', 1, 4, 300],
      ['panel', 1, 4, 300],
      ['bolt', 5, 2, 600],
      ['tighten', 5, 1, 120],
    ]);
    const shape: readonly WorkObserved[] = observed;
    const rates = updatedRates(commonRates, shape);
    expect(rates.work.panel.observed).toBe(3);
    expect(rates.work.bolt.median).toBeGreaterThan(commonRates.work.bolt.median);
  });

  it('leave out what was undone, came after a break, or has no hands or bolts', () => {
    const ada = phone('Ada');
    const [a, b, c, d] = inCourse(1).map((p) => site.places[p]!) as [
      string,
      string,
      string,
      string,
    ];
    ada.say(placed(a, '1', 4));
    ada.wait(100);
    ada.undo(ada.say(placed(b, '2', 4)));
    ada.wait(7200);
    ada.say(placed(c, '3', 4));
    ada.wait(60);
    ada.say(placed(d, '4'));
    ada.wait(60);
    ada.say(seam(site.seams[0]!, 'finger', 2));
    expect(measuredWork(ada.log, site, () => null)).toEqual({
      observed: [],
      withoutHands: 1,
      withoutBolts: 1,
      withoutStart: 2,
    });
  });
});

describe('clocks', () => {
  it('that contradict what was seen are shifted; honest ones are not', () => {
    const [ada, bob, cy] = [phone('Ada'), phone('Bob', { skew: -86_400_000 }), phone('Cy')];
    for (const pass of ['finger', 'snug', 'final', 'none'] as const)
      for (const one of [ada, bob, cy]) {
        one.say(seam(site.seams[0]!, pass));
        one.wait(60);
        meet(ada, bob, cy);
      }
    const offsets = clockOffsets(ada.log.entries());
    expect([...offsets.keys()]).toEqual(['bob00000000']);
    expect(offsets.get('bob00000000')).toBeLessThan(-86_000_000);
    const entry = ada.log.entries().find(({ by }) => by === 'Bob')!;
    expect(Math.abs(timeOf(entry, offsets) - NINE)).toBeLessThan(3_600_000);
  });

  it('a few minutes apart are left alone', () => {
    const [ada, bob] = [phone('Ada'), phone('Bob', { skew: -300_000 })];
    ada.say(seam(site.seams[0]!, 'finger'));
    meet(ada, bob);
    bob.say(seam(site.seams[0]!, 'snug'));
    expect(clockOffsets(bob.log.entries()).size).toBe(0);
  });
});

describe('the page of a day', () => {
  it('has what was done in it, what is left, and what was handed in', () => {
    const ada = phone('Ada');
    built(ada, [1], 'finger');
    ada.say({ kind: 'note', text: 'wind from the west' });
    ada.say({ kind: 'person', person: 'Ada', here: true });
    ada.say({ kind: 'stage done', stage: 1, done: true });
    ada.wait(86_400);
    built(ada, [2], 'snug');
    const span = { from: NINE - 1, to: NINE + 3_600_000 };
    const outlook = { odds: 0.8, tonightGust: 17, tomorrow: ['Bob'] };
    const page = dayPage(ada.log, site, span, () => 5, outlook);
    expect(page.done).toMatchObject({ panels: inCourse(1).length, snug: 0 });
    expect(page.left.panels).toBe(site.places.length - inCourse(1).length - inCourse(2).length);
    expect(page).toMatchObject({ stagesDone: [1], stillHere: ['Ada'], outlook, questions: [] });
    expect(page.notes).toHaveLength(1);
    const next = dayPage(ada.log, site, { from: span.to, to: span.to + 864e5 }, () => 5, outlook);
    expect(next.done.panels).toBe(inCourse(2).length);
    expect(next.stagesDone).toEqual([]);
  });
});
