// What the stock can stand, as the worker answers it: the best fit, replacements, doors, leftovers. The
// integer-program engine is loaded when it is first asked.

import {
  bestSplit,
  cutDown,
  type DecidedOpening,
  type DecidedSecond,
  defaultTakeoff,
  doorOutline,
  type Fit,
  type FitAnswer,
  fitStock,
  frameParts,
  type HighsRuntime,
  type HoleCounts,
  hatchesFor,
  highsSolver,
  type InfillPanel,
  infillOf,
  type JoinedGroup,
  type Kind,
  type Opening,
  openingStiffness,
  openingsFor,
  type PanelToMake,
  type PartsKnown,
  type PlacesDecision,
  type ProgramSolver,
  panelShape,
  panelToMake,
  type Replacement,
  replacementsFor,
  type SecondShell,
  type Shell,
  type Source,
  type Standing,
  type StiffnessKept,
  secondShells,
  sidePatterns,
  standingShell,
  type TakeoffSettings,
  type Trim,
  unknownParts,
  type ViewPoint,
  type WayUp,
  type Wishes,
} from '@shellraise/core';
import { type Besides, kindsAfter, leftAfter, leftOutOf, openingsIn } from './decided.ts';
import { type CandidatePicture, candidatePicture } from './drawings.ts';

/** What is to be fitted. */
export interface FitQuestion {
  readonly shell: Shell;
  readonly kinds: readonly Kind[];
  readonly interchangeable: readonly (readonly string[])[];
  /** Panels that are still joined. */
  readonly groups: readonly JoinedGroup[];
  readonly wishes: Wishes;
  /** Seconds that it may take. */
  readonly seconds: number;
}

/** A fit with what a screen shows of it. */
export interface ShownFit {
  readonly fit: Fit;
  /** Decides for its way up and cut. */
  readonly decision: PlacesDecision;
  /** Numbers of the places that are left open, and of those with bought or mended panels. */
  readonly open: readonly string[];
  readonly bought: readonly string[];
  readonly mended: readonly string[];
  readonly infill: readonly InfillPanel[];
  /** Numbers of the places that the door asked for leaves out. */
  readonly door: readonly string[];
  /** Groups that stay joined: their kinds, and the numbers of their places in turn. */
  readonly joined: readonly {
    readonly kinds: readonly string[];
    readonly places: readonly string[];
  }[];
  /** Kinds of which not every place gets a good panel, in the order of the kinds' list. */
  readonly lacking: readonly LackingKind[];
  /** From the datum side. */
  readonly picture: CandidatePicture;
}

/** What is done about a kind with fewer good panels than places. */
export interface LackingKind {
  readonly kind: string;
  readonly places: number;
  /** Numbers of its places. */
  readonly mended: readonly string[];
  readonly bought: readonly string[];
  readonly open: readonly string[];
}

/** The fits, the best first, and what was proved. */
export interface FitShown {
  readonly answer: Omit<FitAnswer, 'fits'>;
  readonly fits: readonly ShownFit[];
}

/** A panel of a standing shell is broken. */
export interface BrokenQuestion {
  readonly shell: Shell;
  /** Kinds with their sides as fitted. */
  readonly kinds: readonly Kind[];
  readonly interchangeable: readonly (readonly string[])[];
  /** Place → its number with the datum not turned on, and what was decided so far. */
  readonly plain: readonly string[];
  readonly besides: Besides;
  readonly place: number;
  /** Place → 1 where its panel is up. */
  readonly built: Uint8Array;
  /** Hub-to-hub length less the measured side, metres; null: unknown. */
  readonly allowance: number | null;
  readonly holes: HoleCounts;
  readonly settings: TakeoffSettings | undefined;
}

/** The ways out, and what one could be cut from. */
export interface BrokenAnswer {
  readonly ways: readonly Replacement[];
  readonly cuts: readonly ShownCut[];
  readonly card: MakeCard;
}

/** A surplus panel that could be cut down to the one wanted. */
export interface ShownCut {
  readonly kind: string;
  readonly spare: number;
  readonly trim: Trim;
  /** Its corners in the axes of the side that is kept, metres. */
  readonly outer: readonly (readonly [number, number])[];
}

/** What one needs to make a panel. */
export interface MakeCard {
  readonly kind: string;
  /** Null where its sides are no panel on the sphere. */
  readonly panel: PanelToMake | null;
}

/** What a standing shell leaves over is asked for. */
export interface LeftoverQuestion {
  readonly net: Shell;
  readonly shell: Shell;
  readonly kinds: readonly Kind[];
  readonly interchangeable: readonly (readonly string[])[];
  readonly plain: readonly string[];
  readonly besides: Besides;
  /** Lesser shells that were decided on: their panels are taken. */
  readonly seconds: readonly DecidedSecond[];
}

/** What is left over, and what it stands. */
export interface LeftoverAnswer {
  /** Kind → good panels that are left when those that were decided on have theirs. */
  readonly left: readonly number[];
  readonly second: readonly ShownSecond[];
  /** What both shells are when the heap is shared: height, floor across, panels. */
  readonly split: readonly ShownHalf[];
}

/** A lesser shell with its drawing and what decides for it. */
export interface ShownSecond {
  readonly lacks: number;
  readonly lacking: SecondShell['lacking'];
  readonly height: number;
  /** Mean diameter of the base ring, metres. */
  readonly floor: number;
  readonly flat: boolean;
  readonly unevenness: number;
  readonly picture: CandidatePicture;
  readonly decided: Omit<DecidedSecond, 'name'>;
}

/** One of two shells that share a heap. */
export interface ShownHalf {
  readonly height: number;
  readonly floor: number;
  readonly panels: number;
}

let solving: Promise<ProgramSolver> | null = null;

function solver(): Promise<ProgramSolver> {
  solving ??= loadSolver();
  return solving;
}

async function loadSolver(): Promise<ProgramSolver> {
  const [{ default: loader }, { default: runtime }] = await Promise.all([
    import('highs'),
    import('highs/runtime?url'),
  ]);
  const load = loader as unknown as (options: {
    locateFile: () => string;
  }) => Promise<HighsRuntime>;
  return highsSolver(await load({ locateFile: () => runtime }));
}

/** The best fits. `onProgress` is told how far it is, 0 … 1; `onBetter` of each fit that is better
 * than those before, once it is found. */
export async function bestFits(
  { shell, kinds, interchangeable, groups, wishes, seconds }: FitQuestion,
  onProgress?: (done: number) => void,
  onBetter?: (fit: ShownFit) => void,
): Promise<FitShown> {
  const show = (fit: Fit): ShownFit => shown(shell, kinds, groups, fit);
  const { fits, ...answer } = fitStock(shell, kinds, wishes, await solver(), {
    interchangeable,
    groups,
    seconds,
    now: () => performance.now() / 1000,
    ...(onProgress && { onProgress: inSteps(onProgress) }),
    ...(onBetter && { onBetter: (fit) => onBetter(show(fit)) }),
  });
  return { answer, fits: fits.map(show) };
}

/** Tells of each whole hundredth once. */
function inSteps(onProgress: (done: number) => void): (done: number) => void {
  let told = -1;
  return (done) => {
    if (Math.floor(100 * done) === told) return;
    told = Math.floor(100 * done);
    onProgress(done);
  };
}

function shown(
  shell: Shell,
  all: readonly Kind[],
  groups: readonly JoinedGroup[],
  fit: Fit,
): ShownFit {
  const { way, arrangement, sources, mended } = fit;
  const { places } = arrangement.cut;
  const cut = { places: places.length, height: arrangement.cut.height };
  const standing = standingShell(shell, way, arrangement.cut);
  const numbers = (source: Source, kind?: number): string[] =>
    sources.flatMap((own, i) =>
      own === source && (kind === undefined || shell.kind[places[i] as number] === kind)
        ? [standing.courses.numbers[i] as string]
        : [],
    );
  const door = (fit.door?.places ?? []).map((i) => standing.courses.numbers[i] as string);
  const openings: DecidedOpening[] = [
    ...(door.length > 0 ? [{ use: 'door' as const, places: door }] : []),
    ...numbers('open').map((place) => ({ use: 'gap' as const, places: [place] })),
  ];
  const lacking = all.map(
    ({ id }, k): LackingKind => ({
      kind: id,
      places: places.filter((p) => shell.kind[p] === k).length,
      mended: numbers('mended', k),
      bought: numbers('bought', k),
      open: numbers('open', k),
    }),
  );
  return {
    fit,
    decision: {
      wayUp: decidedWay(way),
      cut,
      repaired: mended > 0,
      datumTurn: 0,
      ...(openings.length > 0 && { openings }),
    },
    open: numbers('open'),
    bought: numbers('bought'),
    mended: numbers('mended'),
    infill: infillOf(standing.shell),
    door,
    joined: joinedOf(fit, groups, standing),
    lacking: lacking.filter((one) => one.mended.length + one.bought.length + one.open.length > 0),
    picture: candidatePicture(shell, { crown: way.crown, places }),
  };
}

/** Groups that stay joined, by their places' numbers. */
function joinedOf(
  { joined }: Fit,
  groups: readonly JoinedGroup[],
  { places, courses }: Standing,
): ShownFit['joined'] {
  const numberOf = new Map(Array.from(places, (p, i) => [p, courses.numbers[i] as string]));
  return joined.map(({ group, places: own }) => ({
    kinds: groups[group]?.around ?? [],
    places: own.flatMap((p) => numberOf.get(p) ?? []),
  }));
}

/** A way up as the project keeps it. */
const decidedWay = ({ at, kinds, orbit, lean }: WayUp): PlacesDecision['wayUp'] => ({
  at,
  kinds: [...kinds],
  orbit,
  ...(lean && { lean: { ...lean } }),
});

/** What to do for a broken panel. */
export function waysOut(question: BrokenQuestion): BrokenAnswer {
  const { shell, kinds, plain, besides, place, built, interchangeable } = question;
  const spares = leftAfter(shell, kinds, plain, besides);
  const wanted = shell.kind[place] as number;
  const own = kinds[wanted] as Kind;
  const cuts = cutDown(kinds, wanted, spares).map((cut): ShownCut => {
    const kind = kinds[cut.kind] as Kind;
    return { ...cut, kind: kind.id, outer: outerOf(kind, cut.trim) };
  });
  const fixed = new Set(leftOutOf(openingsIn(plain, besides)));
  const ways = replacementsFor(shell, kinds, place, { built, spares, fixed }, { interchangeable });
  const { allowance, holes, settings } = question;
  const along = sidePatterns(kinds, settings ?? defaultTakeoff, holes)[wanted];
  const counts = along?.map((pattern) => pattern?.holes ?? null) ?? null;
  const panel = panelToMake(own, shell.radius, { allowance, holes: counts });
  return { ways, cuts, card: { kind: own.id, panel } };
}

function outerOf({ sides }: Kind, { keptSide }: Trim): ShownCut['outer'] {
  const corners = panelShape(sides, keptSide)?.corners ?? [];
  const [x, y] = corners[keptSide] ?? [0, 0];
  return corners.map(([u, v]) => [u - x, v - y]);
}

/** What an opening is asked for, metres: a rectangle on the floor, a circle square to the wall, or a
 * thing's section, its corners across and up from the floor, anticlockwise and about their middle. */
export type OpeningAsked =
  | { readonly as: 'door'; readonly width: number; readonly height: number }
  | { readonly as: 'hatch'; readonly diameter: number }
  | { readonly as: 'thing'; readonly outline: readonly ViewPoint[] };

/** Every spot where such an opening may be in a standing shell. */
export function doors(shell: Shell, asked: OpeningAsked): readonly Opening[] {
  switch (asked.as) {
    case 'door':
      return openingsFor(shell, { outline: doorOutline(asked.width, asked.height) });
    case 'hatch':
      return hatchesFor(shell, { diameter: asked.diameter });
    case 'thing':
      return openingsFor(shell, { outline: asked.outline });
  }
}

/** What is left of a standing shell's stiffness with each of these sets of places left out. */
export function openingsLeave(
  shell: Shell,
  parts: PartsKnown | undefined,
  openings: readonly (readonly number[])[],
): readonly StiffnessKept[] {
  return openings.map(openingStiffness(shell, frameParts(parts ?? unknownParts)));
}

/** What a standing shell leaves over, and what that stands of the same net. */
export function leftovers(question: LeftoverQuestion): LeftoverAnswer {
  const { net, shell, kinds, plain, besides, seconds, interchangeable } = question;
  const left = leftAfter(shell, kinds, plain, besides).map((count, k) =>
    Math.max(0, count - takenBy(seconds, (kinds[k] as Kind).id)),
  );
  const stock = kindsAfter(shell, kinds, plain, besides).map((kind) => kind.good);
  const split = bestSplit(net, kinds, stock, { interchangeable });
  return {
    left,
    second: secondShells(net, kinds, left, { interchangeable }).map((one) =>
      shownSecond(net, kinds, one),
    ),
    split: (split?.cuts ?? []).map((cut) => ({
      height: cut.height,
      floor: 2 * cut.floor.mean,
      panels: cut.places.length,
    })),
  };
}

const takenBy = (seconds: readonly DecidedSecond[], kind: string): number =>
  seconds
    .flatMap(({ panels }) => panels)
    .reduce((sum, one) => sum + (one.kind === kind ? one.count : 0), 0);

function shownSecond(net: Shell, kinds: readonly Kind[], one: SecondShell): ShownSecond {
  const { what, way, cut, places, height, lacks, lacking } = one;
  const panels = kinds.flatMap(({ id }, k) => {
    const count = places.filter((p) => net.kind[p] === k).length;
    return count > 0 ? [{ kind: id, count }] : [];
  });
  return {
    lacks,
    lacking,
    height,
    floor: 2 * cut.floor.mean,
    flat: cut.flat,
    unevenness: cut.baseZ.max - cut.baseZ.min,
    picture: candidatePicture(net, { crown: way.crown, places }),
    decided: {
      what,
      wayUp: decidedWay(way),
      cut: { places: cut.places.length, height: cut.height },
      panels,
      height,
    },
  };
}
