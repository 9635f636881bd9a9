// The best shell that a stock can stand, by the lead's wishes: every way up and natural cut as an
// outline, filled from the stock as well as it can be, the best outline first; and the others worth
// seeing. Outlines are tried in the order of what they could be at best; once none left could beat
// what is found, that is the proof.

import type { Kind } from '../../pile/kind.ts';
import { placeNormal } from '../../shell/geometry.ts';
import type { PlaceId } from '../../shell/ids.ts';
import { orientShell } from '../../shell/orient.ts';
import { placeCount, type Shell } from '../../shell/shell.ts';
import { type Arrangement, type ArrangeOptions, arrangements } from '../arrangements.ts';
import { familiesOf, familyIndex } from '../families.ts';
import { smallestConflict } from '../program/conflict.ts';
import type { ProgramSolver, SolveOptions } from '../program/solve.ts';
import type { WayUp } from '../ways-up.ts';
import { type Filled, fillOutline } from './fill.ts';
import type { Objective, Wishes } from './wishes.ts';

/** How a fit is watched and bounded. */
export interface FitOptions
  extends Pick<ArrangeOptions, 'interchangeable' | 'crowns' | 'leastFloor'>,
    Pick<SolveOptions, 'shouldStop'> {
  /** Seconds on some clock that only goes forward. */
  readonly now: () => number;
  /** Seconds that may be used. */
  readonly seconds: number;
  /** Told of each better fit. */
  readonly onBetter?: (fit: Fit) => void;
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
  /** The demands that can't be kept together, none to spare. */
  readonly conflict: readonly Demand[];
}

/** Demands that can stand against each other. */
export type Demand = 'flatBase' | 'leastHeight' | 'leastFloor' | 'mostFloor' | 'mostBought';

const demands: readonly Demand[] = [
  'flatBase',
  'leastHeight',
  'leastFloor',
  'mostFloor',
  'mostBought',
];

/** The best shells for a closed net and its kinds. Gaps, bought and mended panels are counted over the
 * whole shell. Nothing here says what a shell bears. */
export function fitStock(
  shell: Shell,
  kinds: readonly Kind[],
  wishes: Wishes,
  solver: ProgramSolver,
  options: FitOptions,
): FitAnswer {
  const { interchangeable, crowns, leastFloor } = options;
  const list = arrangements(shell, kinds, {
    most: MOST_OUTLINES,
    ...(interchangeable && { interchangeable }),
    ...(crowns && { crowns }),
    ...(leastFloor !== undefined && { leastFloor }),
  });
  const nothing = { fits: [], proved: false, tried: 0, outlines: 0, conflict: [] };
  if (list.arrangements.length === 0)
    return { status: 'none', reason: list.reason || 'the net has no sound cut', ...nothing };
  const search = new FitSearch(shell, kinds, list, wishes, solver, options);
  const found = search.run(wishes);
  if (found.fits.length > 0) return { status: 'fitted', reason: '', conflict: [], ...found };
  const asked = demands.filter((one) => wishes[one] !== undefined && wishes[one] !== false);
  const conflict = smallestConflict(asked, (kept) => search.possible(only(wishes, kept)));
  const reason = 'no way up and cut keeps all that was asked for';
  return { status: 'conflict', reason, ...found, conflict };
}

/** Outlines looked at, at most. */
const MOST_OUTLINES = 2000;

/** The wishes with only some of the demands. */
function only(wishes: Wishes, kept: readonly Demand[]): Wishes {
  const { flatBase, leastHeight, leastFloor, mostFloor, mostBought, ...rest } = wishes;
  return {
    ...rest,
    flatBase: kept.includes('flatBase') && flatBase,
    ...(kept.includes('leastHeight') && { leastHeight }),
    ...(kept.includes('leastFloor') && { leastFloor }),
    ...(kept.includes('mostFloor') && { mostFloor }),
    ...(kept.includes('mostBought') && { mostBought }),
  };
}

/** An outline with what it could be at best and at worst. */
interface Outline {
  readonly arrangement: Arrangement;
  /** Objective → the least it can be; all are made to be small. */
  readonly least: Readonly<Record<Objective, number>>;
}

class FitSearch {
  private readonly family: Int32Array;
  private readonly good: number[];
  private readonly repair: number[];
  private readonly rises = new Map<number, Float64Array>();
  private readonly until: number;

  constructor(
    private readonly shell: Shell,
    kinds: readonly Kind[],
    private readonly list: ReturnType<typeof arrangements>,
    wishes: Wishes,
    private readonly solver: ProgramSolver,
    private readonly options: FitOptions,
  ) {
    const families = familiesOf(kinds, options.interchangeable);
    const familyOf = familyIndex(kinds, families);
    this.family = Int32Array.from(shell.kind, (kind) => familyOf[kind] as number);
    const sum = (of: (kind: Kind) => number): number[] =>
      families.map((one) => one.kinds.reduce((total, k) => total + of(kinds[k] as Kind), 0));
    const counted = families.map((one) => one.kinds.every((k) => (kinds[k] as Kind).counted));
    this.good = sum((kind) => kind.good).map((n, f) =>
      counted[f] ? Math.max(0, n - wishes.spares) : Number.POSITIVE_INFINITY,
    );
    this.repair = sum((kind) => kind.repair);
    this.until = options.now() + options.seconds;
  }

  run(wishes: Wishes): Pick<FitAnswer, 'fits' | 'proved' | 'tried' | 'outlines'> {
    const outlines = this.outlinesFor(wishes);
    const order = fullOrder(wishes.order);
    const before = (a: Values, b: Values): number => compareBy(order, a, b);
    outlines.sort((a, b) => before(a.least, b.least));
    let best: { fit: Fit; values: Values } | null = null;
    const found: { fit: Fit; values: Values }[] = [];
    let proved = true;
    let tried = 0;
    for (const [i, outline] of outlines.entries()) {
      this.options.onProgress?.(i / outlines.length);
      if (found.some(({ values }) => dominates(order, values, outline.least))) continue;
      if (this.isOver()) {
        proved &&= best !== null && before(best.values, outline.least) <= 0;
        break;
      }
      const one = this.fit(outline, wishes);
      tried++;
      if (one === null) continue;
      const values = valuesOf(outline, one.filled);
      proved &&= one.filled.proved || (best !== null && before(best.values, outline.least) <= 0);
      if (wishes.mostBought !== undefined && one.filled.bought > wishes.mostBought) continue;
      found.push({ fit: one.fit, values });
      if (best === null || before(values, best.values) < 0) {
        best = { fit: one.fit, values };
        this.options.onBetter?.(one.fit);
      }
    }
    const fits = found
      .filter(({ values }) => !found.some((other) => strictly(order, other.values, values)))
      .sort((a, b) => before(a.values, b.values))
      .slice(0, MOST_FITS)
      .map(({ fit }) => fit);
    return { fits, proved: proved && fits.length > 0, tried, outlines: outlines.length };
  }

  /** Whether some outline keeps these demands; null where the time was up first. */
  possible(wishes: Wishes): boolean | null {
    const outlines = this.outlinesFor(wishes);
    if (wishes.mostBought === undefined) return outlines.length > 0;
    const most = wishes.mostBought;
    outlines.sort((a, b) => a.least['fewest bought'] - b.least['fewest bought']);
    for (const outline of outlines) {
      if (outline.least['fewest bought'] > most) return false;
      if (this.isOver()) return null;
      const one = this.fit(outline, { ...wishes, order: ['fewest bought'] });
      if (one && one.filled.bought <= most) return true;
    }
    return false;
  }

  private isOver(): boolean {
    return this.options.now() >= this.until || (this.options.shouldStop?.() ?? false);
  }

  /** The outlines that keep the demands on shape. */
  private outlinesFor(wishes: Wishes): Outline[] {
    return this.list.arrangements
      .filter(({ cut }) => {
        const { flatBase, leastHeight = 0, leastFloor = 0, mostFloor = Infinity } = wishes;
        return (
          (!flatBase || cut.flat) &&
          cut.height >= leastHeight &&
          cut.floor.inside >= leastFloor &&
          cut.floor.max <= mostFloor
        );
      })
      .map((arrangement) => ({ arrangement, least: this.leastOf(arrangement, wishes) }))
      .filter(
        ({ least }) =>
          wishes.mostBought === undefined || least['fewest bought'] <= wishes.mostBought,
      );
  }

  private leastOf({ cut }: Arrangement, wishes: Wishes): Outline['least'] {
    const need = new Map<number, number>();
    for (const p of cut.places) {
      const f = this.family[p] as number;
      need.set(f, (need.get(f) ?? 0) + 1);
    }
    let lacking = 0;
    let mendable = 0;
    for (const [f, n] of need) {
      const lacks = Math.max(0, n - (this.good[f] as number));
      lacking += lacks;
      mendable += wishes.mended ? Math.min(lacks, this.repair[f] as number) : 0;
    }
    return {
      'fewest bought': Math.max(0, lacking - mendable - wishes.mostGaps),
      tallest: -Math.round(cut.rise / (SAME_RISE * this.shell.radius)),
      'largest floor': -Math.round(cut.floor.inside / (SAME_RISE * this.shell.radius)),
      'fewest mended': 0,
      'fewest gaps': Math.max(0, lacking - mendable - (wishes.mostBought ?? Infinity)),
    };
  }

  private fit(outline: Outline, wishes: Wishes): { fit: Fit; filled: Filled } | null {
    const { arrangement } = outline;
    const filled = this.fill(arrangement, wishes);
    if (filled === null) return null;
    const { sources, bought, mended, gaps } = filled;
    const way = this.list.waysUp[arrangement.wayUp] as WayUp;
    return { fit: { way, arrangement, sources, bought, mended, gaps }, filled };
  }

  private fill({ cut, wayUp }: Arrangement, wishes: Wishes): Filled | null {
    const { now, shouldStop } = this.options;
    return fillOutline(
      {
        shell: this.shell,
        places: cut.places,
        family: this.family,
        good: this.good,
        repair: this.repair,
        rise: this.risesOf(wayUp, cut.baseZ.min),
        wishes,
      },
      this.solver,
      {
        now,
        seconds: Math.max(0.05, Math.min(LONGEST_FILL, this.until - now())),
        gap: 0,
        ...(shouldStop && { shouldStop }),
      },
    );
  }

  /** Net place → how high its middle lies, 0 at the base … 1 at the crown. */
  private risesOf(wayUp: number, base: number): Float64Array {
    const heights = this.rises.get(wayUp) ?? this.heightsOf(wayUp);
    this.rises.set(wayUp, heights);
    const top = this.shell.radius;
    return heights.map((z) => Math.min(1, Math.max(0, (z - base) / (top - base))));
  }

  private heightsOf(wayUp: number): Float64Array {
    const up = orientShell(this.shell, (this.list.waysUp[wayUp] as WayUp).crown);
    return Float64Array.from(
      { length: placeCount(up) },
      (_, p) => placeNormal(up, p as PlaceId)[2] * up.radius,
    );
  }
}

/** Heights and floors are ranked in steps of this part of the radius. */
const SAME_RISE = 1e-3;
/** Fits that are told, at most. */
const MOST_FITS = 12;
/** Seconds that one outline may take. */
const LONGEST_FILL = 5;

type Values = Outline['least'];

const valuesOf = ({ least }: Outline, { bought, mended, gaps }: Filled): Values => ({
  ...least,
  'fewest bought': bought,
  'fewest mended': mended,
  'fewest gaps': gaps,
});

/** The order asked for, then what it leaves out, as `fitStock` ranks by. */
export const fullOrder = (order: readonly Objective[]): Objective[] => [
  ...new Set<Objective>([
    ...order,
    'fewest bought',
    'tallest',
    'fewest gaps',
    'fewest mended',
    'largest floor',
  ]),
];

function compareBy(order: readonly Objective[], a: Values, b: Values): number {
  for (const name of order) if (a[name] !== b[name]) return a[name] - b[name];
  return 0;
}

/** Whether `a` is at least as good as `b` in all. */
const dominates = (order: readonly Objective[], a: Values, b: Values): boolean =>
  order.every((name) => a[name] <= b[name]);

const strictly = (order: readonly Objective[], a: Values, b: Values): boolean =>
  dominates(order, a, b) && order.some((name) => a[name] < b[name]);
