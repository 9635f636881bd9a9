// Parts of a sphere (open-part.ts) as shapes: with what lacks beyond their rim, as far as that is known
// (beyond-rim.ts).

import { turned } from '../math/cyclic.ts';
import type { Kind } from '../pile/kind.ts';
import { sideLength } from '../shell/geometry.ts';
import type { SideId } from '../shell/ids.ts';
import { placeCount, type Shell } from '../shell/shell.ts';
import { wholeBeyond } from './beyond-rim.ts';
import { toSource, type WorkingKinds, workingKinds } from './canonical-kinds.ts';
import { type NetFit, sideSd } from './fit.ts';
import { nameNet } from './name-net.ts';
import { type OpenPart, openParts } from './open-part.ts';
import { type Identification, noAnswer, type Shape, type ShapeQuestion } from './shape.ts';
import { type SideBelief, sideBelief } from './side-belief.ts';
import { apartness } from './telling.ts';
import { withWanted } from './wanted.ts';

/** Of so few kinds nearly anything makes a part. */
const LEAST_KINDS = 8;
/** Probability of a part that fits: others may do as well, and nothing is known beyond its rim. */
const TRUST = 0.7;

/** Orders of an axis, the likeliest first. */
export const ORDERS = [5, 4, 3, 6, 2] as const;

/** The orders of the axis that the counts allow, the likeliest first: no kind has more panels than there
 * are turns. None where nobody counted, or there are too many for any. */
export function ordersCounted(kinds: readonly Kind[]): readonly number[] {
  if (!kinds.every(({ counted }) => counted)) return [];
  const most = Math.max(...kinds.map(({ good, repair, scrap }) => good + repair + scrap));
  return ORDERS.filter((order) => order >= most);
}

/** The whole is told where the sides of all panels that it lacks are known this well, metres; else
 * the part. */
const TOLD_SD = 0.006;
/** A wanted kind is told of where one of its sides is known this well at least, metres. */
const SOME_SD = 0.012;

/** What it is to make a part whole, in tries (see FoldSearch). */
const WHOLE = 1000;

/** The parts as shapes, their kinds those of the question, or the wholes that they are parts of where
 * those are known, the likeliest first; none where there are none to be told. See {@link openParts}. */
export function partShapes(
  question: ShapeQuestion,
  orders: readonly number[],
  onWork: (work: number) => boolean,
): Shape[] {
  const { kinds } = question;
  if (kinds.length < LEAST_KINDS || kinds.some(({ faceUnknown }) => faceUnknown)) return [];
  const working = workingKinds(kinds);
  const readings = sideBelief(working.kinds, question.allowanceSd ?? 0);
  const parts = openParts(readings, orders, onWork);
  const weights = parts.map(({ fit }) =>
    Math.exp(fit.evidence - (parts[0] as OpenPart).fit.evidence),
  );
  const total = weights.reduce((sum, x) => sum + x, 0);
  const shapes = parts.flatMap((part, i): Shape[] => {
    if (!onWork(WHOLE)) return [];
    const probability = (TRUST * (weights[i] as number)) / total;
    return [{ ...shapeOf(part, readings, kinds, working), probability }];
  });
  const family = kinds.map((_, k) => k);
  const nameOf = (k: number): string => (kinds[k] as Kind | undefined)?.id ?? 'wanted';
  const shells = shapes.map(({ shell }) => shell);
  const own = [...family, ...shapes.flatMap(({ added }) => added.map((_, w) => kinds.length + w))];
  const apart = apartness(shells, own, nameOf);
  return shapes.map((shape, i) => ({ ...shape, apart: apart[i] as string }));
}

function shapeOf(
  part: OpenPart,
  readings: SideBelief,
  kinds: readonly Kind[],
  working: WorkingKinds,
): Omit<Shape, 'probability'> {
  const open = part.shell.mate.some((mate) => mate < 0);
  const beyond = open ? wholeBeyond(part.shell, part.fit, readings) : null;
  const isTold = beyond?.wanted.every(({ sds }) => Math.max(...sds) <= TOLD_SD) ?? false;
  const wanted = beyond?.wanted.filter(({ sds }) => Math.min(...sds) <= SOME_SD) ?? [];
  const { shell, fit } = beyond && isTold ? beyond : part;
  const added = withWanted(wanted);
  const all: WorkingKinds = {
    kinds: [...working.kinds, ...added.map(({ kind }) => kind)],
    source: [...working.source, ...added.map((_, i) => working.source.length + i)],
    offset: [...working.offset, ...added.map(() => 0)],
  };
  return { ...plainPart(shell, fit, kinds, all), added };
}

function plainPart(
  shell: Shell,
  fit: NetFit,
  kinds: readonly Kind[],
  working: WorkingKinds,
): Omit<Shape, 'added' | 'probability'> {
  const fittedSides: number[][] = [];
  working.kinds.forEach((kind, k) => {
    const own = fit.sides[k] ?? kind.sides;
    fittedSides[working.source[k] as number] = turned(
      own,
      own.length - (working.offset[k] as number),
    );
  });
  const off = kinds.flatMap(({ sides }, k) =>
    sides.map((side, i) => (fittedSides[k]?.[i] ?? side) - side),
  );
  const closed = shell.mate.every((mate) => mate >= 0);
  return {
    shell: toSource(shell, working),
    radius: fit.radius,
    radiusSd: fit.radiusSd,
    closed,
    fittedSides,
    residual: Math.sqrt(off.reduce((sum, x) => sum + x * x, 0) / off.length),
    subdivision: closed ? (nameNet(shell, sideSd(fit))?.subdivision ?? null) : null,
    suspects: [],
    interchangeable: [],
    interchangeCosts: [],
    freeTurns: [],
    misfitGroups: [],
    strangers: [],
    explained: [],
    mends: [],
    cut: null,
    course: null,
    allowance: null,
    hands: 'known',
    apart: '',
  };
}

/** The answer with parts alone. */
export const partAnswer = (shapes: readonly Shape[]): Identification => ({
  ...noAnswer,
  shapes,
  settle: shapes[0] ? partWords(shapes[0]) : [],
});

/** What is known of the panels that lack. */
function partWords({ shell, added, closed }: Shape): string[] {
  const open = [...shell.mate.keys()].filter((s) => (shell.mate[s] as number) < 0);
  const lengths = [...new Set(open.map((s) => mm(sideLength(shell, s as SideId))))].sort();
  const kinds = added.map(
    ({ kind }) =>
      `${kind.id}: ${kind.sides.map((x, i) => `${mm(x)} ± ${mm(kind.sideSds[i] as number)}`).join(', ')} mm`,
  );
  const rest =
    kinds.length === 0
      ? []
      : [
          `what lacks rests on the net going on as it stands, hub for hub like the named one that it is a piece of; the sides of the panels that lack would have to be, hub to hub: ${kinds.join('; ')}`,
        ];
  if (closed) return rest;
  return [
    `these kinds close around every hub of a part of ${placeCount(shell)} places with ${open.length} open sides; the panels that go there have sides of ${lengths.join(', ')} mm, hub to hub`,
    ...rest,
  ];
}

const mm = (metres: number): string => (1000 * metres).toFixed(0);
