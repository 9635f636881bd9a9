// The best shells that the stock can stand, each with what a screen shows of it.

import {
  type DecidedOpening,
  decidedWay,
  type Fit,
  type FitAnswer,
  fitStock,
  type InfillPanel,
  infillOf,
  type JoinedGroup,
  type Kind,
  type PlacesDecision,
  type Shell,
  type Source,
  type Standing,
  standingShell,
  type Wishes,
} from '@shellraise/core';
import { type CandidatePicture, candidatePicture } from './drawings.ts';
import { solver } from './solver.ts';

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
