import { describe, expect, test } from 'vitest';
import { identify } from '../../src/identify/identify.ts';
import { type MarkAccount, marksInNet } from '../../src/identify/marks-in-net.ts';
import { marksWords } from '../../src/identify/marks-words.ts';
import { shapeQuestion } from '../../src/identify/question.ts';
import { readPile } from '../../src/pile/check.ts';
import { kindsOfPile } from '../../src/pile/kinds.ts';
import { placeCentre } from '../../src/shell/geometry.ts';
import type { PlaceId } from '../../src/shell/ids.ts';
import { partOf } from '../../src/shell/part.ts';
import { type Marked, markedPile, type Painted, runsOfMarks, type Wear } from './marked.ts';
import { RADIUS, truthOf } from './piles.ts';

const worn = { wrong: 0.05, faded: 0.1, bare: 0.1 };
const clean = { wrong: 0, faded: 0, bare: 0 };
const SEEDS = 40;

/** Piles of seeds 1 to 40; with `groups` unset, 0 to 12 joined groups in turn. */
function piles(
  net: readonly [number, number],
  painted: Painted,
  wear: Omit<Wear, 'groups'>,
  groups?: number,
): Marked[] {
  return Array.from({ length: SEEDS }, (_, i) =>
    markedPile(net, painted, { ...wear, groups: groups ?? i % 13 }, i + 1),
  );
}

/** Whether every place has its mark, as far as the rotations of the net tell places apart. */
function isRight({ truth, panels, shape, account }: Marked): boolean {
  const marks: string[] = [];
  for (const panel of panels) marks[panel.place] = panel.true;
  return runsOfMarks(shape.shell, account.markOf) === runsOfMarks(truth.shell, marks);
}

const isSettled = ({ account }: Marked): boolean => account.state === 'settled';

/** Wrong marks that the sides give away, those among them that were named, and right ones that were
 * called wrong. */
function wrongMarks(all: readonly Marked[]): { wrong: number; named: number; alarms: number } {
  const sums = { wrong: 0, named: 0, alarms: 0 };
  for (const { truth, panels, account, lots } of all)
    for (const { readings, as } of account.panels) {
      if (as !== 'fits' && as !== 'contradicts' && as !== 'unexplained') continue;
      const lot = lots[readings[0] as number] ?? [];
      const kindOf = (place: number): number => truth.shell.kind[place] as number;
      const kind = kindOf(lot[0]?.place as number);
      const own = new Set(panels.filter((p) => kindOf(p.place) === kind).map((p) => p.true));
      const wrong = lot.filter((p) => p.isWrong && !own.has(p.written as string)).length;
      sums.wrong += wrong;
      if (as === 'fits') continue;
      sums.named += wrong;
      sums.alarms += lot.filter((p) => !p.isWrong).length;
    }
  return sums;
}

/** Panels without a sure mark, how many got their true one, and how many should have by what was said. */
function inferred(all: readonly Marked[]): { panels: number; right: number; said: number } {
  const sums = { panels: 0, right: 0, said: 0 };
  for (const { account, lots } of all)
    for (const { readings, as, likely } of account.panels) {
      const [first] = likely;
      if ((as !== 'faded' && as !== 'unmarked') || !first) continue;
      const lot = lots[readings[0] as number] ?? [];
      sums.panels += lot.length;
      sums.right += lot.filter((p) => p.true === first.mark).length;
      sums.said += lot.length * first.probability;
    }
  return sums;
}

describe('marks by kind, worn, seeds 1 to 40', () => {
  const all = piles([3, 0], 'shape', worn);
  test('every scheme is found', () => {
    expect(all).toHaveLength(SEEDS);
    expect(all.filter(isSettled)).toHaveLength(SEEDS);
    expect(all.filter(isRight)).toHaveLength(SEEDS);
    expect(all.every(({ account }) => account.marks.every((mark) => mark.as === 'shape'))).toBe(
      true,
    );
  });
  test('every wrong mark is named, and no right one is called wrong', () => {
    const { wrong, named, alarms } = wrongMarks(all);
    expect(wrong).toBeGreaterThan(300);
    expect(named).toBe(wrong);
    expect(alarms).toBe(0);
  });
  test('faded and unmarked panels get the mark of their kind', () => {
    const { panels, right } = inferred(all);
    expect(panels).toBeGreaterThan(1000);
    expect(right).toBe(panels);
  });
});

describe('marks coarser than shape on 320 places, worn, seeds 1 to 40', () => {
  const all = piles([4, 0], 'coarser', worn);
  test('every scheme is found, the mark of two kinds told as such', () => {
    expect(all).toHaveLength(SEEDS);
    expect(all.filter((one) => isSettled(one) && isRight(one))).toHaveLength(all.length);
    for (const { account } of all) {
      const coarse = account.marks.filter((mark) => mark.as === 'coarser');
      expect(coarse).toHaveLength(1);
      expect(coarse[0]?.on).toHaveLength(2);
      expect(
        marksWords(account).some((line) => line.startsWith(`Mark ${coarse[0]?.mark} is on kinds`)),
      ).toBe(true);
    }
  });
  test('every wrong mark that the sides give away is named', () => {
    const { wrong, named, alarms } = wrongMarks(all);
    expect(wrong).toBeGreaterThan(400);
    expect([named, alarms]).toEqual([wrong, 0]);
  });
});

describe.each([
  ['3V', [3, 0]],
  ['(2, 2)', [2, 2]],
] as const)(
  'marks finer than shape by what stands beside a panel, %s, worn, seeds 1 to 40',
  (_, net) => {
    const all = piles(net, 'neighbours', worn);
    test('what is settled is right, most is, and nothing is without joined groups', () => {
      expect(all).toHaveLength(SEEDS);
      const settled = all.filter(isSettled);
      expect(settled.every(isRight)).toBe(true);
      expect(settled.length).toBeGreaterThanOrEqual(28);
      const alone = all.filter(({ joined }) => joined.length === 0);
      expect(alone).toHaveLength(4);
      expect(alone.filter(isSettled)).toEqual([]);
    });
    test('twelve groups settle all', () => {
      const rich = piles(net, 'neighbours', worn, 12);
      expect(rich.filter((one) => isSettled(one) && isRight(one))).toHaveLength(SEEDS);
      for (const { account } of rich) {
        expect(account.finer).toHaveLength(1);
        expect(account.finer[0]?.rule.by).toBe('neighbours');
      }
    });
    test('the mark given to a panel without a sure one is right as often as is said', () => {
      const { panels, right, said } = inferred(all);
      const sd = Math.sqrt(said * (1 - said / panels));
      expect(Math.abs(right - said)).toBeLessThan(3 * sd);
      expect(Math.abs(right - 10 * 3 * sd - said)).toBeGreaterThan(3 * sd);
    });
    test('wrong marks that the sides give away are named', () => {
      const { wrong, named, alarms } = wrongMarks(all);
      expect([named, alarms]).toEqual([wrong, 0]);
    });
  },
);

describe('marks finer than shape by level, seeds 1 to 40', () => {
  const all = piles([3, 0], 'level', worn);
  test('worn: what is settled is right, and what is open says that it is', () => {
    expect(all).toHaveLength(SEEDS);
    expect(all.filter(isSettled).every(isRight)).toBe(true);
    for (const { account } of all.filter((one) => !isSettled(one)))
      expect(account.finer.some(({ probability }) => probability < 0.9)).toBe(true);
  });
  test('in good order and with twelve groups: most often the best scheme is the true one', () => {
    const fresh = piles([3, 0], 'level', clean, 12);
    expect(fresh.filter(isSettled).every(isRight)).toBe(true);
    expect(fresh.filter(isRight).length).toBeGreaterThanOrEqual(24);
    expect(fresh.filter(isRight).length).toBeLessThanOrEqual(SEEDS);
  });
  test('the account of 320 places takes less than a second', () => {
    const times = [1, 2, 3, 4, 5].map((seed) => {
      return markedPile([4, 0], 'level', { ...worn, groups: 12 }, seed).ms;
    });
    expect(Math.min(...times)).toBeLessThan(1000);
  });
});

test('a group with one wrong mark is told with the panel and what it should be, where that is certain', () => {
  const all = piles([4, 0], 'shape', worn, 12);
  let wrong = 0;
  let named = 0;
  let falsely = 0;
  for (const { joined, account } of all)
    joined.forEach((own, g) => {
      const at = own.flatMap((p, i) => (p.isWrong ? [i] : []));
      const told = account.groups[g];
      if (at.length === 0 && !told?.held) falsely++;
      if (at.length !== 1) return;
      wrong++;
      const [only] = told?.wrong ?? [];
      if (
        told?.wrong.length === 1 &&
        only?.at === at[0] &&
        only?.shouldBe === own[at[0] as number]?.true
      )
        named++;
    });
  expect(falsely).toBe(0);
  expect(wrong).toBeGreaterThan(60);
  expect(named / wrong).toBeGreaterThan(0.8);
});

/** The account of a 3V ball of 60 and 120 panels, of which `rows` are what is marked. */
function accountOf(
  rows: readonly { kind: 0 | 1; mark?: string; count: number }[],
  groups: readonly object[] = [],
): MarkAccount {
  const { kinds } = truthOf(3, 0);
  const readings = rows.map(({ kind, ...row }) => ({
    ...row,
    seenFrom: 'outside',
    sides: kinds[kind]?.sides.map((side) => Number(side.toFixed(4))),
  }));
  const read = readPile({ hubAllowance: 0, readingSd: 0.0005, readings, groups });
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  const worked = kindsOfPile(read.value);
  const question = shapeQuestion(read.value, worked);
  const [shape] = identify(question).shapes;
  if (!shape) throw new Error('no shape');
  return marksInNet(shape, question.kinds, read.value, worked);
}

test('without marks there is nothing to say', () => {
  const account = accountOf([
    { kind: 0, count: 60 },
    { kind: 1, count: 120 },
  ]);
  expect([account.state, account.names, marksWords(account)]).toEqual(['none', [], []]);
  expect(account.markOf.every((mark) => mark === null)).toBe(true);
});

test('a contradicting panel is told with the mark that it should bear, an odd mark as one for nothing', () => {
  const account = accountOf([
    { kind: 0, mark: 'A', count: 58 },
    { kind: 0, mark: 'B', count: 1 },
    { kind: 0, mark: '77', count: 1 },
    { kind: 1, mark: 'B', count: 110 },
    { kind: 1, mark: 'A|B', count: 4 },
    { kind: 1, count: 6 },
  ]);
  expect(account.panels.map(({ as }) => as)).toEqual([
    'fits',
    'contradicts',
    'unexplained',
    'fits',
    'faded',
    'unmarked',
  ]);
  expect(account.panels[1]?.likely).toEqual([{ mark: 'A', probability: 1 }]);
  expect(account.panels[4]?.likely[0]?.mark).toBe('B');
  expect(account.marks.find((one) => one.mark === '77')?.as).toBe('nothing');
  const words = marksWords(account);
  expect(words).toContain('Mark 77 stands for nothing: no kind truly has it.');
  expect(words).toContain('6 panels of kind 2 are unmarked: most likely B.');
  expect(words).toContain(
    'One panel marked B has the sides of kind 1: by tape the mark should be A.',
  );
});

test('two marks on equal panels without groups are left open, with the ways that fit', () => {
  const account = accountOf([
    { kind: 0, mark: 'A', count: 60 },
    { kind: 1, mark: 'B', count: 60 },
    { kind: 1, mark: 'C', count: 60 },
  ]);
  expect(account.state).toBe('open');
  expect(account.schemes).toBeGreaterThan(1);
  expect(account.finer[0]).toMatchObject({ marks: ['B', 'C'] });
  expect(account.marks.map((one) => one.as)).toEqual(['shape', 'finer', 'finer']);
  expect(marksWords(account)[0]).toContain('by tape they are interchangeable');
});

describe('groups settle them', () => {
  const rows = [
    { kind: 0, mark: 'A', count: 60 },
    { kind: 1, mark: 'B', count: 60 },
    { kind: 1, mark: 'C', count: 60 },
  ] as const;
  const star = (...around: string[]): object => ({ around, closed: true, count: 3 });
  const face = star('B', 'C', 'B', 'C', 'B', 'C');

  test('around the middle of a face the marks take turns: either the one way or the other', () => {
    const account = accountOf(rows, [face]);
    expect(account.finer[0]).toMatchObject({ rule: { by: 'neighbours' }, ways: 2 });
    expect(account.state).toBe('open');
    expect(account.probability).toBeCloseTo(0.5, 1);
  });

  test('a star on an edge of the solid says which', () => {
    const account = accountOf(rows, [face, star('A', 'A', 'B', 'C', 'C', 'B')]);
    const other = accountOf(rows, [face, star('A', 'A', 'C', 'B', 'B', 'C')]);
    for (const one of [account, other]) {
      expect(one.finer[0]?.rule.by).toBe('neighbours');
      expect(one.state).toBe('settled');
      expect(one.groups.every(({ held }) => held)).toBe(true);
    }
    expect(account.markOf).not.toEqual(other.markOf);
  });
});

describe('a shell with an open rim', () => {
  const read = readPile({
    hubAllowance: 0,
    readingSd: 0.0005,
    readings: truthOf(3, 0).kinds.flatMap(({ sides }, k) =>
      (k === 0 ? ['A'] : ['B', 'C']).map((mark) => ({
        mark,
        count: 30,
        seenFrom: 'outside',
        sides: sides.map((side) => Number(side.toFixed(4))),
      })),
    ),
    groups: [{ around: ['A', 'A', 'A', 'A', 'A'], closed: true }, { around: ['A', 'A'] }],
  });
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  const worked = kindsOfPile(read.value);
  const question = shapeQuestion(read.value, worked);
  const [whole] = identify(question).shapes;
  if (!whole) throw new Error('no shape');
  const { shell } = whole;
  const accountOfPlaces = (keep: (p: number) => boolean): MarkAccount => {
    const places = [...shell.kind.keys()].filter(keep);
    const part = { ...whole, closed: false, shell: partOf(shell, places).shell };
    return marksInNet(part, question.kinds, read.value, worked);
  };

  test('its places are marked and its groups held as in a whole one', () => {
    const account = accountOfPlaces((p) => placeCentre(shell, p as PlaceId)[2] > -0.3 * RADIUS);
    expect(account.markOf.length).toBeLessThan(180);
    expect(account.markOf.filter((mark) => mark === 'A').length).toBeGreaterThan(20);
    expect(account.groups.map(({ held }) => held)).toEqual([true, true]);
    expect(account.finer[0]?.marks).toEqual(['B', 'C']);
  });
  test('one in several pieces is read as well', () => {
    const account = accountOfPlaces(
      (p) => Math.abs(placeCentre(shell, p as PlaceId)[2]) > RADIUS / 2,
    );
    expect(account.state).toBe('open');
    expect(account.groups).toHaveLength(2);
  });
});
