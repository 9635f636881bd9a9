import { describe, expect, test } from 'vitest';
import { judge, namedTrial, type Trial } from '../../bench/trials.ts';
import { alikeness } from '../../src/identify/alike.ts';
import { firstSides } from '../../src/identify/corner-model.ts';
import { identify } from '../../src/identify/identify.ts';
import { fewestSides } from '../../src/identify/joint-conflicts.ts';
import { jointMatrix, jointsOf, mayBeOneMake, mayJoin } from '../../src/identify/joints.ts';
import { seededRandom } from '../../src/math/random.ts';
import type { Kind, Lap } from '../../src/pile/kind.ts';
import type { SideId } from '../../src/shell/ids.ts';
import { kindSide, placeAt } from '../../src/shell/shell.ts';

const side = (lap: Lap | null, holes: number | null = null) => ({ lap, holes });

test('over meets under, flush meets flush, equal holes meet, unknown meets all', () => {
  expect(mayJoin(side('over'), side('under'))).toBe(true);
  expect(mayJoin(side('over'), side('over'))).toBe(false);
  expect(mayJoin(side('under'), side('flush'))).toBe(false);
  expect(mayJoin(side('flush', 5), side('flush', 5))).toBe(true);
  expect(mayJoin(side('flush', 5), side('flush', 6))).toBe(false);
  expect(mayJoin(side(null, 5), side('over', null))).toBe(true);
  expect(mayBeOneMake(side('over'), side('over'))).toBe(true);
  expect(mayBeOneMake(side('over'), side('under'))).toBe(false);
});

const plain = (id: string, laps?: Kind['laps']): Kind => ({
  id,
  marks: [],
  sides: [1, 1, 1],
  sideSds: [1e-3, 1e-3, 1e-3],
  hand: null,
  good: 0,
  repair: 0,
  scrap: 0,
  counted: false,
  mass: null,
  ...(laps && { laps }),
});

test('without laps or holes there is nothing to forbid', () => {
  expect(jointsOf([plain('a'), plain('b', [null, null, null])])).toBeNull();
  expect(jointMatrix(null, mayJoin)).toBeNull();
});

test('kinds are alike, and a panel may be turned, only where laps agree', () => {
  const kinds = [
    plain('a', ['over', 'over', 'over']),
    plain('b', ['over', 'over', 'over']),
    plain('c', ['over', 'under', 'over']),
  ];
  const sides = kinds.map((kind) => kind.sides);
  const alike = alikeness(sides, firstSides(sides), 1e-3, jointsOf(kinds));
  expect(alike.group[0]).toBe(alike.group[1]);
  expect(alike.group[2]).not.toBe(alike.group[0]);
  expect(alike.turns).toEqual([true, true, false]);
});

/** Laps and holes that the true net allows: over and under on the two sides of each sort of seam,
 * flush where a sort of side meets itself or the laps would not alternate. */
function withJoints(trial: Trial, seed: number): Trial {
  const random = seededRandom(seed);
  const { shell } = trial.truth;
  const key = (s: SideId): string => `${shell.kind[placeAt(shell, s)]}.${kindSide(shell, s)}`;
  const meets = new Map<string, Set<string>>();
  for (let i = 0; i < shell.seams.length; i += 2) {
    const [a, b] = [key(shell.seams[i] as SideId), key(shell.seams[i + 1] as SideId)];
    meets.set(a, (meets.get(a) ?? new Set()).add(b));
    meets.set(b, (meets.get(b) ?? new Set()).add(a));
  }
  const lap = new Map<string, Lap>();
  const holes = new Map<string, number>();
  for (const start of [...meets.keys()].sort()) {
    if (lap.has(start)) continue;
    const part: string[] = [start];
    lap.set(start, random.uniform() < 0.5 ? 'over' : 'under');
    let even = true;
    for (let i = 0; i < part.length; i++) {
      const own = part[i] as string;
      const answer: Lap = lap.get(own) === 'over' ? 'under' : 'over';
      for (const other of meets.get(own) ?? []) {
        if (!lap.has(other)) {
          lap.set(other, answer);
          part.push(other);
        } else if (lap.get(other) !== answer) even = false;
      }
    }
    const count = 5 + random.below(3);
    for (const one of part) {
      holes.set(one, count);
      if (!even) lap.set(one, 'flush');
    }
  }
  const kinds = trial.kinds.map((kind, i): Kind => {
    const n = kind.sides.length;
    const at = (j: number): string => `${trial.source[i]}.${(j + (trial.offset[i] as number)) % n}`;
    return {
      ...kind,
      laps: kind.sides.map((_, j) => lap.get(at(j)) ?? null),
      holes: kind.sides.map((_, j) => holes.get(at(j)) ?? null),
    };
  });
  return { ...trial, kinds };
}

const nets = [
  [3, 0],
  [4, 0],
  [2, 1],
  [3, 1],
  [2, 2],
] as const;

describe('piles with laps and holes', () => {
  test('are found, and no seam joins what does not go together, seeds 1 to 5', () => {
    for (const [i, [b, c]] of nets.entries()) {
      const trial = withJoints(namedTrial(b, c, 1e-3, true, i + 1), i + 1);
      const found = identify({ kinds: trial.kinds, groups: [] });
      const verdict = judge(trial, found);
      expect(verdict.right, trial.name).toBe(true);
      expect(found.conflicts).toEqual([]);
      const joints = jointsOf(trial.kinds);
      for (const { shell } of found.shapes)
        for (let s = 0; s < shell.seams.length; s += 2) {
          const [a, b] = [0, 1].map((e) => {
            const at = shell.seams[s + e] as SideId;
            return joints?.[shell.kind[placeAt(shell, at)] as number]?.[kindSide(shell, at)];
          });
          expect(a && b && mayJoin(a, b)).toBe(true);
        }
    }
  });

  test('may leave fewer twins than sides alone', () => {
    const trial = namedTrial(4, 0, 1e-3, false, 3);
    const alone = identify({ kinds: trial.kinds, groups: [] });
    const jointed = identify({ kinds: withJoints(trial, 3).kinds, groups: [] });
    expect(alone.shapes.length).toBeGreaterThan(1);
    expect(jointed.shapes.length).toBeLessThanOrEqual(alone.shapes.length);
    expect(judge(withJoints(trial, 3), jointed).right).toBe(true);
  });
});

describe('laps that cannot close', () => {
  test('with one side noted wrong, the net is found without and the side named, seeds 1 to 4', () => {
    for (let seed = 1; seed <= 4; seed++) {
      const trial = withJoints(namedTrial(3, 1, 1e-3, true, seed), seed);
      const k = seed % trial.kinds.length;
      const wrong = trial.kinds.map((kind, i) =>
        i === k
          ? {
              ...kind,
              laps: kind.laps?.map((lap, s) =>
                s === 1 ? (lap === 'over' ? 'under' : 'over') : lap,
              ) as Lap[],
            }
          : kind,
      );
      const found = identify({ kinds: wrong, groups: [] });
      expect(judge(trial, found).right, `seed ${seed}`).toBe(true);
      expect(found.conflicts.length).toBeGreaterThan(0);
      const [smallest] = found.conflicts;
      expect(smallest?.sides).toHaveLength(1);
      // The wrong side itself, or the only one it meets: either could be the misread one.
      const id = (wrong[k] as Kind).id;
      const shell = found.shapes[0]?.shell;
      const met = new Set<string>();
      if (shell)
        for (let i = 0; i < shell.seams.length; i += 2) {
          const pair = [0, 1].map((e) => {
            const at = shell.seams[i + e] as SideId;
            return `${(wrong[shell.kind[placeAt(shell, at)] as number] as Kind).id}.${kindSide(shell, at)}`;
          });
          if (pair.includes(`${id}.1`)) for (const one of pair) met.add(one);
        }
      expect(met).toContain(`${smallest?.sides[0]?.kind}.${smallest?.sides[0]?.side}`);
    }
  });

  test('a side that nothing answers is told in words', () => {
    const trial = withJoints(namedTrial(3, 0, 1e-3, true, 2), 2);
    const wrong = trial.kinds.map((kind, i) =>
      i === 0 ? { ...kind, holes: [99, ...(kind.holes ?? []).slice(1)] } : kind,
    );
    const found = identify({ kinds: wrong, groups: [] });
    const id = (wrong[0] as Kind).id;
    const own = found.conflicts.find((one) => one.sides[0]?.kind === id);
    expect(own?.words).toMatch(
      new RegExp(`^side 1 of kind ${id} .*and no side of that length .*: look at it again$`),
    );
    expect(judge(trial, found).right).toBe(true);
  });
});

test('the fewest sides are fewest: a star of five pairs needs one, a chain of five three', () => {
  const at = (kind: number) => ({ kind, side: 0 });
  const star = [1, 2, 3, 4, 5].map((k) => [at(0), at(k)] as const);
  const chain = [0, 1, 2, 3, 4].map((k) => [at(k), at(k + 1)] as const);
  expect(fewestSides(star)).toEqual([at(0)]);
  expect(fewestSides(chain)).toHaveLength(3);
  expect(fewestSides([])).toEqual([]);
});
