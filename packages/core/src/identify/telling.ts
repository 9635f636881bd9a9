// The identification in words: what tells shapes apart, what to look at next, why nothing closed.
// Runs of kinds are read anticlockwise seen from outside around one hub.

import type { Shell } from '../shell/shell.ts';
import type { Candidates } from './candidates.ts';
import { starRuns } from './groups.ts';
import { netCode } from './net-code.ts';
import type { Identification, Shape, ShapeQuestion } from './shape.ts';
import { FINEST_SD } from './side-belief.ts';

/** For each shape: what tells it from the others; empty where it stands alone. */
export function apartness(
  shells: readonly Shell[],
  family: readonly number[],
  nameOf: (family: number) => string,
): string[] {
  if (shells.length < 2) return shells.map(() => '');
  const signs = signsOf(shells, family);
  const codes = shells.map((shell) => kindsCode(shell, family));
  return shells.map((_, i) => {
    const sign = signs[i];
    const like = codes.indexOf(codes[i] as string);
    if (like < i)
      return `the kinds stand as in shape ${like + 1}; only panels whose sides are nearly equal are turned another way`;
    if (!sign && codes.lastIndexOf(codes[i] as string) > i)
      return 'panels whose sides are nearly equal are turned as they fit best';
    return sign
      ? `only here a hub has around it, anticlockwise seen from outside, the kinds ${runName(sign, nameOf)}`
      : 'no run of kinds around a hub marks it; where the others have one, it lacks that';
  });
}

/** Equal for shells that differ only in how panels are turned in their places. */
function kindsCode(shell: Shell, family: readonly number[]): string {
  const labels = Array.from(
    shell.sidePlace,
    (place) => family[shell.kind[place] as number] as number,
  );
  return netCode(shell, labels).code;
}

/** What to look at or measure next, when more than one shape is listed. `levelWith`: whether the
 * sides fit them all equally well, so that measuring again can't tell. */
export function settling(
  shells: readonly Shell[],
  family: readonly number[],
  nameOf: (family: number) => string,
  levelWith: boolean,
): string[] {
  if (shells.length < 2) return [];
  const signs = signsOf(shells, family);
  const out = signs.flatMap((sign, i) =>
    sign
      ? `look for panels still joined, or hub marks, in the run ${runName(sign, nameOf)} (anticlockwise seen from outside): then it is shape ${i + 1}`
      : [],
  );
  out.push(
    levelWith
      ? 'the same panels close into each of these shapes equally well: measuring again will not tell them apart; if no joined group or mark does, any of them may be built'
      : 'measure the sides of each kind again on three panels and enter every reading: the mean of nine is three times as sure',
  );
  return out;
}

/** The suspect sides of the best shape, to be measured again before anything else. */
export function againFirst(best: Shape | undefined): string[] {
  return (best?.suspects ?? []).map(
    ({ kind, side, measured, expected }) =>
      `measure side ${side + 1} of kind ${kind} again, on more than one panel: ${millimetres(measured)} does not fit, ${millimetres(expected)} hub to hub would`,
  );
}

const millimetres = (metres: number): string => `${(1000 * metres).toFixed(0)} mm`;

/** For each shape a run of kinds around a hub that no other shape has, as a text; undefined where
 * there is none. */
function signsOf(shells: readonly Shell[], family: readonly number[]): (string | undefined)[] {
  const runs = shells.map((shell) => starRuns(shell, family).map((run) => run.join()));
  return runs.map((own, i) =>
    own.find((run) => !runs.some((others, j) => j !== i && others.includes(run))),
  );
}

/** Why nothing closed: how far it got, where it stuck, and the most telling reason. */
export function reasonsFor(
  question: ShapeQuestion,
  found: Candidates,
  far: Pick<Identification, 'furthest' | 'stuck'> = { furthest: null, stuck: [] },
): string[] {
  if (question.kinds.length === 0) return ['there are no kinds: nothing has been measured yet'];
  const out: string[] = [];
  const lone = loneSides(question);
  if (lone.length > 0)
    out.push(
      `no other side is as long as ${lone.slice(0, 4).join(', ')}${lone.length > 4 ? ' and others' : ''}: it can only meet its like on another panel of its kind; where it does not, the panels that go there are not in the pile`,
    );
  out.push(
    found.deepest > 0
      ? `no net closes with these kinds; the largest part that stood together had ${found.deepest} places when folded out`
      : 'no star of these kinds closes: no hub of three, four or five equal corners, at any radius',
  );
  out.push(
    ...far.stuck.map(
      ({ kind, side, length }) =>
        `a part of ${far.furthest?.kind.length} panels stood with the sides as they were read, and stuck where side ${side + 1} of kind ${kind} lies open, ${millimetres(length)} long: no panel fitted there together with what stood`,
    ),
  );
  if (!found.complete) out.push('the search was cut short before every possibility had been tried');
  return out;
}

/** Kind and side (from 1) of sides that no other kind-side is as long as. */
function loneSides(question: ShapeQuestion): string[] {
  const all = question.kinds.flatMap((kind, k) =>
    kind.sides.map((length, i) => ({
      k,
      i,
      length,
      sd: Math.max(kind.sideSds[i] as number, FINEST_SD),
    })),
  );
  return all
    .filter(
      (side) =>
        !all.some(
          (other) =>
            (other.k !== side.k || other.i !== side.i) &&
            Math.abs(other.length - side.length) <= 4.5 * Math.hypot(other.sd, side.sd),
        ),
    )
    .map((side) => `kind ${(question.kinds[side.k] as { id: string }).id} side ${side.i + 1}`);
}

function runName(run: string, nameOf: (family: number) => string): string {
  return run.split(',').map(Number).map(nameOf).join(' ');
}
