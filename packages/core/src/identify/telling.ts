// The identification in words: what tells shapes apart, what to look at next, why nothing closed.
// Runs of kinds are read anticlockwise seen from outside around one hub.

import type { Shell } from '../shell/shell.ts';
import { placeCount } from '../shell/shell.ts';
import type { Candidates } from './candidates.ts';
import { starRuns } from './groups.ts';
import type { ShapeQuestion } from './shape.ts';
import { FINEST_SD } from './side-belief.ts';

/** What words need to know of a shape. */
export interface Told {
  readonly shell: Shell;
  /** How it came from another: that shape's number in the list, seams turned, seams in the ring. */
  readonly turned: { readonly of: number; readonly steps: number; readonly ring: number } | null;
}

/** For each shape: what tells it from the others; empty where it stands alone. */
export function apartness(
  told: readonly Told[],
  family: readonly number[],
  nameOf: (family: number) => string,
): string[] {
  if (told.length < 2) return told.map(() => '');
  const runs = told.map(({ shell }) => starRuns(shell, family).map((run) => run.join()));
  return told.map(({ shell, turned }, i) => {
    const parts: string[] = [];
    if (turned && turned.of >= 0 && turned.of !== i)
      parts.push(
        `like shape ${turned.of + 1} with one side of a flat ring of ${turned.ring} seams turned by ${turned.steps}`,
      );
    const own = (runs[i] as string[]).filter(
      (run) => !runs.some((others, j) => j !== i && others.includes(run)),
    );
    if (own.length > 0)
      parts.push(`only here a hub has around it the kinds ${runName(own[0] as string, nameOf)}`);
    if (parts.length === 0)
      parts.push(
        `${placeCount(shell)} places; its hubs have the same kinds around them as another shape's, in another arrangement`,
      );
    return parts.join('; ');
  });
}

/** What to look at or measure next, when more than one shape is listed. */
export function settling(
  told: readonly Told[],
  family: readonly number[],
  nameOf: (family: number) => string,
): string[] {
  if (told.length < 2) return [];
  const out: string[] = [];
  const runs = told.map(({ shell }) => starRuns(shell, family).map((run) => run.join()));
  const signs = runs.map((own, i) =>
    own.find((run) => !runs.some((others, j) => j !== i && others.includes(run))),
  );
  signs.forEach((sign, i) => {
    if (sign)
      out.push(
        `panels still joined, or old hub marks, in the run ${runName(sign, nameOf)} (anticlockwise seen from outside): then it is shape ${i + 1}`,
      );
  });
  const turnedRings = new Set(told.flatMap(({ turned }) => (turned ? [turned.ring] : [])));
  for (const ring of turnedRings)
    out.push(
      `these shapes differ by a turn at a flat ring of ${ring} seams: a shell that stands on that ring, or stops short of it, is the same for all of them; otherwise every turn closes and stands alike`,
    );
  if (turnedRings.size === 0)
    out.push(
      'measure the sides of each kind again, on three panels of a kind, and enter every reading: the mean of nine is three times as sure',
    );
  return out;
}

/** Why nothing closed: how far it got, and the most telling reason. */
export function reasonsFor(question: ShapeQuestion, found: Candidates): string[] {
  const out: string[] = [];
  const lone = loneSides(question);
  if (lone.length > 0)
    out.push(
      `no other side is as long as ${lone.slice(0, 4).join(', ')}${lone.length > 4 ? ' and others' : ''}: if that is right, the panels that go there are not in the pile`,
    );
  out.push(
    found.deepest > 0
      ? `no net closes with these kinds; the largest part that stood together had ${found.deepest} places when folded out`
      : 'no star of these kinds closes: no hub of three, four or five equal corners, at any radius',
  );
  if (!found.complete) out.push('the search was cut short before every possibility had been tried');
  return out;
}

/** Kind and side (from 1) of sides that no other kind-side can meet, and that do not meet their own
 * kind's either: a side may always meet its equal on another panel of its kind, so only those whose
 * kind can't be turned end to end are named. */
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
