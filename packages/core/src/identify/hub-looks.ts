// Which hub to look at, where panels are still joined or hubs are marked, to tell which shape it is:
// either at one corner of any panel of a kind, or for a hub that only some shapes have. Runs are read
// anticlockwise seen from outside. What a look tells follows from how often each shape shows each run.

import { turned } from '../math/cyclic.ts';
import { kindSide } from '../shell/shell.ts';
import { starsOf } from '../shell/stars.ts';
import { type Families, familyRuns } from './families.ts';
import { orList } from './find-words.ts';
import { entropy, sightBits, sum } from './information.ts';
import type { NextOutcome, NextReading, Shape, ShapeQuestion } from './shape.ts';

/** Sights that are told one by one. */
const MOST_SIGHTS = 4;

/** The look that tells most at a corner, and the run that tells most where it is found; those that tell
 * nothing are left out. */
export function hubLooks(
  shapes: readonly Shape[],
  question: ShapeQuestion,
  families: Families,
): NextReading[] {
  if (shapes.length < 2) return [];
  return [cornerLook(shapes, question, families), runLook(shapes, families)].filter(
    (look) => look !== null,
  );
}

/** What one sees at a kind of corner. */
interface Corner {
  readonly kind: string;
  /** The side that starts there; null where it can't be told from others of the kind. */
  readonly side: number | null;
  /** Run, as a key → the run and how often each shape shows it. */
  readonly sights: Map<string, { readonly run: readonly string[]; readonly seen: number[] }>;
}

function cornerLook(
  shapes: readonly Shape[],
  question: ShapeQuestion,
  families: Families,
): NextReading | null {
  const odds = shapes.map(({ probability }) => probability);
  const looks = [...cornersOf(shapes, question, families).values()].flatMap((corner) => {
    const sights = [...corner.sights.values()];
    const counts = shapes.map((_, i) => sights.map(({ seen }) => seen[i] as number));
    if (sights.length < 2 || counts.some((own) => sum(own) === 0)) return [];
    return [{ corner, counts, bits: sum(odds) * sightBits(odds, counts) }];
  });
  const [first, ...rest] = looks;
  if (!first) return null;
  const { corner, counts, bits } = rest.reduce((a, b) => (b.bits > a.bits ? b : a), first);
  const outcomes = sightsOf(corner, counts, odds, families);
  const where =
    corner.side === null ? 'any corner' : `the corner where side ${corner.side + 1} starts`;
  const told = outcomes.map(({ find, shapes: after }) => `${find} ${meaning(after)}`);
  return {
    act: 'look',
    about: 'shape',
    kind: families.ids(corner.kind)[0] as string,
    side: corner.side,
    words: `where panels are still joined, at hub marks or in a photograph, look at ${where} of a panel of kind ${corner.kind}, which kinds lie around it, from that panel on anticlockwise seen from outside: ${told.join('; ')}`,
    bits,
    outcomes,
  };
}

function cornersOf(
  shapes: readonly Shape[],
  { kinds }: ShapeQuestion,
  families: Families,
): Map<string, Corner> {
  const corners = new Map<string, Corner>();
  shapes.forEach((shape, index) => {
    const family = families.of(shape);
    for (const star of starsOf(shape.shell)) {
      if (!star.closed) continue;
      const kindsAround = star.corners.map(
        (s) => shape.shell.kind[shape.shell.sidePlace[s] as number] as number,
      );
      const around = kindsAround.map((k) => family[k] as string);
      star.corners.forEach((s, at) => {
        const k = kindsAround[at] as number;
        const id = kinds[k]?.id;
        const isPlain = id === around[at] && !shape.freeTurns.includes(id as string);
        const [kind, side] = [around[at] as string, isPlain ? kindSide(shape.shell, s) : null];
        const key = `${side} ${kind}`;
        const corner = corners.get(key) ?? { kind, side, sights: new Map() };
        corners.set(key, corner);
        const run = turned(around, at);
        const sight = corner.sights.get(run.join('\n')) ?? { run, seen: shapes.map(() => 0) };
        sight.seen[index] = (sight.seen[index] as number) + 1;
        corner.sights.set(run.join('\n'), sight);
      });
    }
  });
  return corners;
}

/** The likeliest sights one by one, the others together. */
function sightsOf(
  { sights }: Corner,
  counts: readonly (readonly number[])[],
  odds: readonly number[],
  families: Families,
): NextOutcome[] {
  const none = Math.max(0, 1 - sum(odds));
  const rows = [...sights.values()].map(({ run }, s) => ({
    run,
    joint: odds.map(
      (p, i) => (p * ((counts[i] as number[])[s] as number)) / sum(counts[i] as number[]),
    ),
  }));
  rows.sort((a, b) => sum(b.joint) - sum(a.joint));
  const told = rows.slice(0, rows.length > MOST_SIGHTS ? MOST_SIGHTS - 1 : MOST_SIGHTS);
  const others = rows.slice(told.length);
  const after = (joint: readonly number[]): number[] => [
    ...joint.map((p) => (p * sum(odds)) / sum(joint)),
    none,
  ];
  const outcomes = told.map(
    ({ run, joint }): NextOutcome => ({
      find: run.join(' '),
      run: run.map((name) => families.ids(name)[0] as string),
      probability: sum(joint) / sum(odds),
      shapes: after(joint),
    }),
  );
  if (others.length === 0) return outcomes;
  const joint = odds.map((_, i) => sum(others.map((one) => one.joint[i] as number)));
  return [
    ...outcomes,
    { find: 'another run', probability: sum(joint) / sum(odds), shapes: after(joint) },
  ];
}

/** What a sight means: the shapes that it leaves. */
function meaning(after: readonly number[]): string {
  const left = after.slice(0, -1).flatMap((p, i) => (p > 0 ? [String(i + 1)] : []));
  return left.length === after.length - 1 ? 'leaves it open' : `is shape ${orList(left)}`;
}

/** The run that some shapes have around a hub and others lack, that tells most. */
function runLook(shapes: readonly Shape[], families: Families): NextReading | null {
  const odds = shapes.map(({ probability }) => probability);
  const runs = shapes.map((shape) => familyRuns(shape, families.of(shape)));
  const looks = runs.flatMap((own) =>
    [...own].map(([key, { run }]) => {
      const isSo = runs.map((other) => other.has(key));
      const so = sum(odds.filter((_, i) => isSo[i]));
      return { run, isSo, so, bits: sum(odds) * entropy([so, sum(odds) - so]) };
    }),
  );
  const best = looks.reduce<(typeof looks)[number] | null>(
    (a, b) => (a === null || b.bits > a.bits + 1e-9 ? b : a),
    null,
  );
  if (!best || !(best.bits > 0)) return null;
  const { run, isSo, so, bits } = best;
  const [listed, none] = [sum(odds), Math.max(0, 1 - sum(odds))];
  const after = (is: boolean): number[] => {
    const own = odds.map((p, i) => (isSo[i] === is ? p : 0));
    return [...own.map((p) => (p * listed) / sum(own)), none];
  };
  const which = (is: boolean): string =>
    orList(isSo.flatMap((own, i) => (own === is ? [String(i + 1)] : [])));
  return {
    act: 'look',
    about: 'shape',
    kind: null,
    side: null,
    words: `look among panels still joined, hub marks or photographs for a hub with the run ${run.join(' ')} around it, anticlockwise seen from outside: where there is one it is shape ${which(true)}, where there can be none shape ${which(false)}`,
    bits,
    outcomes: [
      {
        find: `a hub with ${run.join(' ')}`,
        run: run.map((name) => families.ids(name)[0] as string),
        probability: so / listed,
        shapes: after(true),
      },
      { find: 'no such hub', probability: 1 - so / listed, shapes: after(false) },
    ],
  };
}
