// What the stock can stand, as the worker answers it: the best fit, replacements, doors, leftovers. The
// integer-program engine is loaded when it is first asked.

import {
  bestSplit,
  doorOutline,
  type Fit,
  type FitAnswer,
  fitStock,
  type HighsRuntime,
  highsSolver,
  type InfillPanel,
  infillOf,
  type Kind,
  type Opening,
  openingsFor,
  type PlacesDecision,
  type ProgramSolver,
  type Replacement,
  replacementsFor,
  type SecondShell,
  type Shell,
  type Source,
  type Split,
  secondShells,
  standingShell,
  type Trim,
  trims,
  type Wishes,
} from '@shellraise/core';
import { type CandidatePicture, candidatePicture } from './drawings.ts';

/** What is to be fitted. */
export interface FitQuestion {
  readonly shell: Shell;
  readonly kinds: readonly Kind[];
  readonly interchangeable: readonly (readonly string[])[];
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
  readonly place: number;
  /** Place → 1 where its panel is up. */
  readonly built: Uint8Array;
}

/** The ways out, and what one could be cut from. */
export interface BrokenAnswer {
  readonly ways: readonly Replacement[];
  readonly cuts: readonly { readonly kind: string; readonly spare: number; readonly trim: Trim }[];
}

/** What is left over, and what it stands. */
export interface LeftoverAnswer {
  readonly left: readonly number[];
  readonly second: readonly SecondShell[];
  readonly split: Split | null;
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
  { shell, kinds, interchangeable, wishes, seconds }: FitQuestion,
  onProgress?: (done: number) => void,
  onBetter?: (fit: ShownFit) => void,
): Promise<FitShown> {
  const show = (fit: Fit): ShownFit => shown(shell, kinds, fit);
  const { fits, ...answer } = fitStock(shell, kinds, wishes, await solver(), {
    interchangeable,
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

function shown(shell: Shell, all: readonly Kind[], fit: Fit): ShownFit {
  const { way, arrangement, sources, mended } = fit;
  const { at, kinds, orbit } = way;
  const { places } = arrangement.cut;
  const cut = { places: places.length, height: arrangement.cut.height };
  const standing = standingShell(shell, way, arrangement.cut);
  const numbers = (source: Source, kind?: number): string[] =>
    sources.flatMap((own, i) =>
      own === source && (kind === undefined || shell.kind[places[i] as number] === kind)
        ? [standing.courses.numbers[i] as string]
        : [],
    );
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
      wayUp: { at, kinds: [...kinds], orbit },
      cut,
      repaired: mended > 0,
      datumTurn: 0,
    },
    open: numbers('open'),
    bought: numbers('bought'),
    mended: numbers('mended'),
    infill: infillOf(standing.shell),
    lacking: lacking.filter((one) => one.mended.length + one.bought.length + one.open.length > 0),
    picture: candidatePicture(shell, { crown: way.crown, places }),
  };
}

/** Room that a saw and a new flange want at each cut side, metres: our own judgement. */
const CUT_ROOM = 0.01;

/** What to do for a broken panel. */
export function waysOut(question: BrokenQuestion): BrokenAnswer {
  const { shell, kinds, place, built, interchangeable } = question;
  const spares = leftOf(shell, kinds);
  const wanted = shell.kind[place] as number;
  const cuts = kinds.flatMap((kind, k) => {
    const spare = spares[k] as number;
    const own = kinds[wanted] as Kind;
    const [trim] = k === wanted || spare === 0 ? [] : trims(kind.sides, own.sides, CUT_ROOM);
    return trim ? [{ kind: kind.id, spare, trim }] : [];
  });
  cuts.sort((a, b) => b.trim.margin - a.trim.margin);
  const ways = replacementsFor(shell, kinds, place, { built, spares }, { interchangeable });
  return { ways, cuts };
}

/** Where a door may be, one of each sort by the places of its courses. */
export const doors = (shell: Shell, width: number, height: number): readonly Opening[] =>
  openingsFor(shell, { outline: doorOutline(width, height) });

/** What a standing shell leaves over, and what that stands of the same net. */
export function leftovers(
  net: Shell,
  standing: Shell,
  kinds: readonly Kind[],
  interchangeable: readonly (readonly string[])[],
): LeftoverAnswer {
  const left = leftOf(standing, kinds);
  const stock = kinds.map((kind) => kind.good);
  return {
    left,
    second: secondShells(net, kinds, left, { interchangeable }),
    split: bestSplit(net, kinds, stock, { interchangeable }),
  };
}

/** Kind → good panels that no place needs; 0 where nobody counted. */
function leftOf(shell: Shell, kinds: readonly Kind[]): number[] {
  const places = kinds.map(() => 0);
  for (const kind of shell.kind) places[kind] = (places[kind] as number) + 1;
  return kinds.map((kind, k) =>
    kind.counted ? Math.max(0, kind.good - (places[k] as number)) : 0,
  );
}
