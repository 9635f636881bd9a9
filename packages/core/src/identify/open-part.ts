// The largest part of a sphere that the kinds close into where they close into no whole one: every kind
// has a place, every hub inside closes, and what lies beyond the open rim is not in the pile. Looked for
// with the rotations about one axis, each kind once for each of them: shells of little symmetry, whose
// lowest kinds stayed on some other field.

import { turned } from '../math/cyclic.ts';
import { makeShell, type PlaceDraft, placeCount, type Shell } from '../shell/shell.ts';
import { axisFolds, fitsWell } from './candidates.ts';
import { toSource, workingKinds } from './canonical-kinds.ts';
import { firstSides } from './corner-model.ts';
import { conditionsOf, fitNet, type NetConditions, type NetFit, netConditions } from './fit.ts';
import type { FoldedNet } from './fold.ts';
import { foldNets } from './folding.ts';
import { layShell } from './lay.ts';
import { unfold } from './lift.ts';
import type { Shape, ShapeQuestion } from './shape.ts';
import { type SideBelief, sideBelief } from './side-belief.ts';

/** A part with an open rim, fitted. */
export interface OpenPart {
  /** Places carry the index of their kind. */
  readonly shell: Shell;
  readonly fit: NetFit;
  /** Rotations that it was grown with. */
  readonly order: number;
}

/** Work of one start and of one axis, in tries (see FoldSearch). */
const TRIES = { start: 15000, way: 15000 };
/** Open sides, folded, at most: few first, as a search that may leave many open goes astray. */
const OPEN = [3, 6, 12] as const;
/** Conditions that the readings did not have to keep, for each kind, at least: else it says nothing. */
const TELLING = 1;

/** The part with the fewest open sides that uses every kind; null where none was found in the work
 * allowed. `onWork` is told the work done; false stops. */
export function openPart(readings: SideBelief, onWork: (work: number) => boolean): OpenPart | null {
  const kinds = readings.sides.length;
  const folds = axisFolds.filter(({ axes }) => axes.length === 2);
  const ways = OPEN.flatMap((most) => folds.map((fold) => ({ fold, most })));
  for (const { fold, most } of ways) {
    const found: { net: FoldedNet; radius: number; open: number }[] = [];
    let work = 0;
    foldNets(readings, fold, {
      mostUses: 1,
      maxTries: TRIES.start,
      spareKinds: 0,
      radius: null,
      periods: readings.sides.map((own) => own.length),
      labels: readings.sides.flat().map((_, s) => s),
      holeSides: most,
      fillHoles: (net, radius) => {
        found.push({ net, radius, open: net.mate.filter((mate) => mate < 0).length });
        return null;
      },
      onTry: (_, own) => {
        work += own;
        return work < TRIES.way && onWork(own);
      },
    });
    found.sort((a, b) => a.open - b.open);
    for (const { net, radius } of found.slice(0, 5)) {
      const part = partOf(readings, net, radius);
      if (part && part.fit.conditions >= TELLING * kinds) return { ...part, order: fold.order };
    }
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

/** The part as a shape, its kinds those of the question; null where there is none to be told. */
export function partShape(
  question: ShapeQuestion,
  onWork: (work: number) => boolean,
): Shape | null {
  if (question.kinds.length < LEAST_KINDS) return null;
  const working = workingKinds(question.kinds);
  const readings = sideBelief(working.kinds, question.allowanceSd ?? 0);
  const part = openPart(readings, onWork);
  if (!part) return null;
  const { fit, shell } = part;
  const fittedSides: number[][] = [];
  fit.sides.forEach((own, k) => {
    const offset = working.offset[k] as number;
    fittedSides[working.source[k] as number] = turned(own, own.length - offset);
  });
  const off = question.kinds.flatMap(({ sides }, k) =>
    sides.map((side, i) => (fittedSides[k]?.[i] ?? side) - side),
  );
  return {
    shell: toSource(shell, working),
    radius: fit.radius,
    radiusSd: fit.radiusSd,
    closed: false,
    fittedSides,
    residual: Math.sqrt(off.reduce((sum, x) => sum + x * x, 0) / off.length),
    probability: TRUST,
    subdivision: null,
    suspects: [],
    interchangeable: [],
    interchangeCosts: [],
    freeTurns: [],
    misfitGroups: [],
    strangers: [],
    explained: [],
    added: [],
    mends: [],
    cut: null,
    course: null,
    allowance: null,
    hands: 'known',
    apart: '',
  };
}
