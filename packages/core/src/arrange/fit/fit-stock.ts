// The best shell that a stock can stand, by the lead's wishes: every way up and natural cut as an
// outline, filled from the stock as well as it can be, the best outline first; and the others worth
// seeing. Outlines are tried in the order of what they could be at best; once none left could beat
// what is found, that is the proof.

import type { JoinedGroup, Kind } from '../../pile/kind.ts';
import type { Shell } from '../../shell/shell.ts';
import {
  type Arrangement,
  type Arrangements,
  type ArrangeOptions,
  arrangements,
} from '../arrangements.ts';
import type { Opening } from '../openings/openings.ts';
import type { ProgramSolver, SolveOptions } from '../program/solve.ts';
import type { WayUp } from '../ways-up.ts';
import { conflictOf, type Demand, type Nearest } from './conflicts.ts';
import type { Filled } from './fill.ts';
import { FitSearch } from './fit-search.ts';
import type { Wishes } from './wishes.ts';

/** How a fit is watched and bounded. */
export interface FitOptions
  extends Pick<ArrangeOptions, 'interchangeable' | 'crowns' | 'leastFloor'>,
    Pick<SolveOptions, 'shouldStop'> {
  /** Panels still joined, which are among the good ones; looked at only where a wish names groups. */
  readonly groups?: readonly JoinedGroup[];
  /** Seconds on some clock that only goes forward. */
  readonly now: () => number;
  /** Seconds that may be used. */
  readonly seconds: number;
  /** Told of each better fit. */
  readonly onBetter?: (fit: Fit) => void;
  /** Told once the best one is proved so; what follows are the others worth seeing. */
  readonly onProved?: () => void;
  /** Told how far it is, 0 … 1. */
  readonly onProgress?: (done: number) => void;
}

/** One shell that the stock can stand, with what each place gets. */
export interface Fit {
  readonly way: WayUp;
  readonly arrangement: Arrangement;
  /** For each place of the arrangement's cut. */
  readonly sources: Filled['sources'];
  readonly bought: number;
  readonly mended: number;
  readonly gaps: number;
  /** Spares wished for and not kept, over all kinds. */
  readonly sparesLacking: number;
  /** Joined groups that stay so, as indices of the groups given, with their net places in order. */
  readonly joined: Filled['joined'];
  /** Joined groups that are taken apart; 0 where no wish names groups. */
  readonly parted: number;
  /** The door that was asked for; its places are those of the arrangement's cut, by their index in it.
   * Null where none was asked for, or none is had. */
  readonly door: Opening | null;
}

/** What was found. */
export interface FitAnswer {
  /** `fitted`; `conflict`: not all demands can be kept; `none`: the net is not closed, or has no
   * cut. */
  readonly status: 'fitted' | 'conflict' | 'none';
  /** Why not, in words. */
  readonly reason: string;
  /** The best first, then those that are better in something and worse in something else. */
  readonly fits: readonly Fit[];
  /** Whether the first is proved the best by the wishes' order. */
  readonly proved: boolean;
  /** Outlines that were filled, and all there are. */
  readonly tried: number;
  readonly outlines: number;
  /** The demands that cannot be kept together: as few as there are such. */
  readonly conflict: readonly Demand[];
  /** For each of these what it could be with all the others kept, as far as that was found in time. */
  readonly nearest: readonly Nearest[];
}

/** The best shells for a closed net and its kinds. Gaps, bought and mended panels are counted over the
 * whole shell. Nothing here says what a shell bears. */
export function fitStock(
  shell: Shell,
  kinds: readonly Kind[],
  wishes: Wishes,
  solver: ProgramSolver,
  options: FitOptions,
): FitAnswer {
  const until = options.now() + options.seconds;
  const list = outlinesOf(shell, kinds, options, false);
  const nothing = { fits: [], proved: false, tried: 0, outlines: 0, conflict: [], nearest: [] };
  if (list.arrangements.length === 0)
    return { status: 'none', reason: list.reason || 'the net has no sound cut', ...nothing };
  let search = new FitSearch(shell, kinds, list, solver, options);
  if (wishes.leaning) {
    // Leaned ways up take their time: a first answer comes from the crowns.
    search.run(wishes, true);
    const all = outlinesOf(shell, kinds, options, true);
    const seconds = Math.max(0, until - options.now());
    search = new FitSearch(shell, kinds, all, solver, { ...options, seconds });
  }
  const found = search.run(wishes);
  if (found.fits.length > 0)
    return { status: 'fitted', reason: '', conflict: [], nearest: [], ...found };
  const reason = 'no way up and cut keeps all that was asked for';
  return { status: 'conflict', reason, ...found, ...conflictOf(search, wishes) };
}

function outlinesOf(
  shell: Shell,
  kinds: readonly Kind[],
  { interchangeable, crowns, leastFloor }: FitOptions,
  leaned: boolean,
): Arrangements {
  return arrangements(shell, kinds, {
    most: MOST_OUTLINES,
    leaned,
    ...(interchangeable && { interchangeable }),
    ...(crowns && { crowns }),
    ...(leastFloor !== undefined && { leastFloor }),
  });
}

/** Outlines looked at, at most. */
const MOST_OUTLINES = 2000;
