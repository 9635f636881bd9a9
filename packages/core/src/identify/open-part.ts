// The largest part of a sphere that the kinds close into where they close into no whole one: every kind
// has a place, every hub inside closes, and what lies beyond the open rim is not in the pile. Looked for
// with the rotations about one axis, each kind once for each of them: shells of little symmetry, whose
// lowest kinds stayed on some other field.

import { turned } from '../math/cyclic.ts';
import type { Kind } from '../pile/kind.ts';
import { sideLength } from '../shell/geometry.ts';
import type { SideId } from '../shell/ids.ts';
import { makeShell, type PlaceDraft, placeCount, type Shell } from '../shell/shell.ts';
import { wholeBeyond } from './beyond-rim.ts';
import { fitsWell } from './candidates.ts';
import { toSource, type WorkingKinds, workingKinds } from './canonical-kinds.ts';
import { firstSides } from './corner-model.ts';
import {
  conditionsOf,
  fitNet,
  type NetConditions,
  type NetFit,
  netConditions,
  sideSd,
} from './fit.ts';
import type { FoldedNet } from './fold.ts';
import { growParts } from './grow-part.ts';
import { layShell } from './lay.ts';
import { unfold } from './lift.ts';
import { nameNet } from './name-net.ts';
import { poleSeeds } from './part-starts.ts';
import type { Identification, Shape, ShapeQuestion } from './shape.ts';
import { type SideBelief, sideBelief } from './side-belief.ts';
import { withWanted } from './wanted.ts';

/** A part with an open rim, fitted. */
export interface OpenPart {
  /** Places carry the index of their kind. */
  readonly shell: Shell;
  readonly fit: NetFit;
  /** Rotations that it was grown with. */
  readonly order: number;
}

/** Conditions that the readings did not have to keep, for each kind, at least: else it says nothing. */
const TELLING = 1;

/** Islands kept side by side, and those of them that are fitted. */
const WIDTH = 16;
const MOST_FITTED = 4;
/** Parts less likely than the best by more than this (natural logarithm) are none. */
const FAINT = 6;

/** The part that uses every kind, with few open sides; null where none was found in the work allowed.
 * `orders`: of the axis, the likeliest first. `onWork` is told the work done; false stops. */
export function openPart(
  readings: SideBelief,
  orders: readonly number[],
  onWork: (work: number) => boolean,
): OpenPart | null {
  for (const order of orders) {
    const part = grownAbout(readings, order, onWork);
    if (part) return part;
  }
  return null;
}

/** The best part that grows about an axis of this order. */
function grownAbout(
  readings: SideBelief,
  order: number,
  onWork: (work: number) => boolean,
): OpenPart | null {
  const fold = { name: `${order}-fold`, order, axes: [order, order] };
  const grown = poleSeeds(readings, order)
    .flatMap((seed) => growParts(readings, fold, [seed], { width: WIDTH, onWork }))
    .filter(({ unlaid }) => unlaid.length === 0)
    .sort((a, b) => b.score - a.score);
  const least = (grown[0]?.score ?? 0) - FAINT;
  for (const { net, radius, score } of grown.slice(0, MOST_FITTED)) {
    if (score < least) break;
    const part = partOf(readings, net, radius);
    if (part && part.fit.conditions >= TELLING * readings.sides.length) return { ...part, order };
  }
  return null;
}

function partOf(
  readings: SideBelief,
  net: FoldedNet,
  radius: number,
): Omit<OpenPart, 'order'> | null {
  const folded = fitNet(readings, openConditions(net, readings), radius);
  const unfolded = folded && unfold(net, folded.sides, folded.radius);
  if (!folded || !unfolded) return null;
  const places = unfolded.places.map(({ piece, hubs }): PlaceDraft => {
    return { hubs, kind: net.pieceKind[piece] as number, turn: 0 };
  });
  const shell = makeShell({ radius: folded.radius, hubs: unfolded.hubs, places });
  const fit = fitNet(readings, conditionsOf(shell, firstSides(readings.sides)), folded.radius);
  const laid = fit && layShell(shell, fit.sides, fit.radius);
  if (!fit || !laid || placeCount(laid) === 0) return null;
  return fitsWell({ shell: laid, fit }) ? { shell: laid, fit } : null;
}

/** What the panels that stand ask of each other; hubs on the rim ask for nothing. */
function openConditions(net: FoldedNet, { sides }: SideBelief): NetConditions {
  const first = firstSides(sides);
  const own = (side: number): number => net.kindSide[side] as number;
  const seams = net.mate.flatMap((mate, side): [number, number][] =>
    mate < 0 ? [] : [[own(side), own(mate)]],
  );
  net.pieceAxis.forEach((axis, piece) => {
    const kind = net.pieceKind[piece] as number;
    const [start, end] = [first[kind] as number, first[kind + 1] as number];
    const step = (end - start) / axis;
    for (let side = start; side + step < end; side++) seams.push([side, side + step]);
  });
  return netConditions(seams, closedStars(net));
}

/** The corners (kind-sides) around each hub that closes, as often as its axis has them. */
function closedStars(net: FoldedNet): number[][] {
  const previous: number[] = [];
  net.next.forEach((next, side) => {
    previous[next] = side;
  });
  const seen = new Set<number>();
  const stars: number[][] = [];
  for (let side = 0; side < net.mate.length; side++) {
    if (seen.has(side)) continue;
    const star: number[] = [];
    let corner = side;
    do {
      star.push(corner);
      corner = net.mate[previous[corner] as number] as number;
    } while (corner >= 0 && corner !== side);
    if (corner < 0) continue;
    for (const one of star) seen.add(one);
    const around = star.map((one) => net.kindSide[one] as number);
    stars.push(Array.from({ length: net.hubAxis[side] as number }, () => around).flat());
  }
  return stars;
}

/** Of so few kinds nearly anything makes a part. */
const LEAST_KINDS = 10;
/** Probability of a part that fits: others may do as well, and nothing is known beyond its rim. */
const TRUST = 0.7;

/** Orders of an axis, the likeliest first. */
export const ORDERS = [5, 4, 3, 6, 2] as const;

/** The order of the axis that the counts tell: about it each kind has a panel for each turn, and of
 * some kinds none is missing. Null where nobody counted or no axis has so many. */
export function countedOrder(kinds: readonly Kind[]): number | null {
  if (!kinds.every(({ counted }) => counted)) return null;
  const most = Math.max(...kinds.map(({ good, repair, scrap }) => good + repair + scrap));
  return ORDERS.find((order) => order === most) ?? null;
}

/** The whole is told where the sides of all panels that it lacks are known this well, metres; else
 * the part. */
const TOLD_SD = 0.006;
/** A wanted kind is told of where one of its sides is known this well at least, metres. */
const SOME_SD = 0.012;

/** The part as a shape, its kinds those of the question, or the whole that it is a part of where that
 * is known; null where there is none to be told. See {@link openPart}. */
export function partShape(
  question: ShapeQuestion,
  orders: readonly number[],
  onWork: (work: number) => boolean,
): Shape | null {
  if (question.kinds.length < LEAST_KINDS) return null;
  if (question.kinds.some(({ faceUnknown }) => faceUnknown)) return null;
  const working = workingKinds(question.kinds);
  const readings = sideBelief(working.kinds, question.allowanceSd ?? 0);
  const part = openPart(readings, orders, onWork);
  if (!part) return null;
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
  return { ...plainPart(shell, fit, question.kinds, all), added };
}

function plainPart(
  shell: Shell,
  fit: NetFit,
  kinds: readonly Kind[],
  working: WorkingKinds,
): Omit<Shape, 'added'> {
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
    probability: TRUST,
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

/** The answer with a part alone. */
export function partAnswer(part: Shape): Identification {
  const { shell } = part;
  const open = [...shell.mate.keys()].filter((s) => (shell.mate[s] as number) < 0);
  const lengths = new Set(open.map((s) => (1000 * sideLength(shell, s as SideId)).toFixed(0)));
  return {
    shapes: [part],
    reasons: [],
    settle:
      open.length === 0
        ? []
        : [
            `these kinds close around every hub of a part of ${placeCount(shell)} places with ${open.length} open sides; the panels that go there have sides of ${[...lengths].sort().join(', ')} mm, hub to hub`,
          ],
    complete: false,
    furthest: null,
    stuck: [],
    next: [],
    enough: false,
    trial: null,
    conflicts: [],
    besides: null,
  };
}
