// The search through the outlines: the one that could be best is filled first. Where a door is asked
// for, an outline's doors are looked for when its turn comes, and it then waits for its turn again.

import { TAU } from '../../math/angle.ts';
import type { Kind } from '../../pile/kind.ts';
import { placeNormal } from '../../shell/geometry.ts';
import type { PlaceId } from '../../shell/ids.ts';
import { orientShell } from '../../shell/orient.ts';
import { partOf } from '../../shell/part.ts';
import { hubsOf, placeCount, type Shell } from '../../shell/shell.ts';
import type { Arrangement, Arrangements } from '../arrangements.ts';
import { familiesOf, familyIndex } from '../families.ts';
import { type Opening, openingsFor } from '../openings/openings.ts';
import { doorOutline } from '../openings/passing.ts';
import { harmOf } from '../openings/rank.ts';
import type { ProgramSolver } from '../program/solve.ts';
import type { WayUp } from '../ways-up.ts';
import { exposureOf } from './exposure.ts';
import { type DoorToChoose, type Filled, fillOutline, type GroupToPlace } from './fill.ts';
import type { Fit, FitAnswer, FitOptions } from './fit-stock.ts';
import { familyGroups, runsFor } from './group-runs.ts';
import {
  beats,
  compareBy,
  dominates,
  type FamilyStock,
  familyStock,
  fullOrder,
  heightOf,
  isSawn,
  type Outline,
  outlineOf,
  type Values,
  valuesOf,
  withDoors,
} from './outlines.ts';
import { isRanked, type Wishes } from './wishes.ts';

/** A fit with what it comes to. */
interface Found {
  readonly fit: Fit;
  readonly values: Values;
}

/** Heights and azimuths of a way up's places, by net place. */
interface Stance {
  readonly shell: Shell;
  readonly heights: Float64Array;
  readonly azimuths: Float64Array;
}

/** All outlines of one net against one stock; the clock starts when it is made. */
export class FitSearch {
  private readonly stock: FamilyStock;
  private readonly groups: readonly GroupToPlace[];
  private readonly stances = new Map<number, Stance>();
  private readonly openings = new Map<string, readonly Opening[]>();
  private readonly until: number;

  constructor(
    private readonly shell: Shell,
    kinds: readonly Kind[],
    private readonly list: Arrangements,
    private readonly solver: ProgramSolver,
    private readonly options: FitOptions,
  ) {
    const families = familiesOf(kinds, options.interchangeable);
    this.stock = familyStock(shell, kinds, families);
    const familyOf = familyIndex(kinds, families);
    const byId = new Map(kinds.map(({ id }, k) => [id, familyOf[k] as number]));
    const groups = familyGroups(options.groups ?? [], (id) => byId.get(id));
    this.groups = groups.map((one) => ({ ...one, runs: runsFor(shell, this.stock.family, one) }));
    this.until = options.now() + options.seconds;
  }

  /** The best fits by the wishes; with `first` only the first that is found. */
  run(wishes: Wishes, first = false): Pick<FitAnswer, 'fits' | 'proved' | 'tried' | 'outlines'> {
    const order = fullOrder(wishes.order);
    const before = (a: Values, b: Values): number => compareBy(order, a, b);
    const queue = this.outlinesFor(wishes).sort((a, b) => before(a.least, b.least));
    const outlines = queue.length;
    const found: Found[] = [];
    const tried = new Set<Arrangement>();
    let best: Found | null = null;
    let proved = true;
    let isTold = false;
    const isBeaten = ({ least }: Outline): boolean =>
      best !== null && before(best.values, least) <= 0;
    const consider = (outline: Outline): void => {
      tried.add(outline.arrangement);
      const filled = this.fill(outline, wishes);
      if (filled === 'none') return;
      proved &&= isBeaten(outline) || filled?.proved === true;
      if (filled === null) return;
      const values = valuesOf(outline, filled, wishes);
      const one: Found = { fit: this.fitOf(outline, filled), values };
      found.push(one);
      if (best !== null && before(values, best.values) >= 0) return;
      best = one;
      this.options.onBetter?.(one.fit);
    };
    const likely = this.likelyWithDoor(wishes);
    if (likely) consider(likely);
    for (let i = 0; i < queue.length && !(first && found.length > 0); i++) {
      const outline = queue[i] as Outline;
      if (!isTold && proved && isBeaten(outline)) {
        isTold = true;
        this.options.onProved?.();
      }
      if (tried.has(outline.arrangement)) continue;
      if (found.some(({ values }) => dominates(order, values, outline.least))) continue;
      if (this.isOver()) {
        proved &&= isBeaten(outline);
        break;
      }
      if (wishes.door && outline.doors === null) {
        const known = this.withDoors(outline, wishes);
        if (known) insertAfter(queue, i, known, (a, b) => before(a.least, b.least));
        continue;
      }
      this.options.onProgress?.(tried.size / outlines);
      consider(outline);
    }
    const fits = found
      .filter(({ values }) => !found.some((other) => beats(order, other.values, values)))
      .sort((a, b) => before(a.values, b.values))
      .slice(0, MOST_FITS)
      .map(({ fit }) => fit);
    proved &&= fits.length > 0;
    if (proved && !isTold && !first) this.options.onProved?.();
    return { fits, proved, tried: tried.size, outlines };
  }

  /** Where a door is asked for, the outline that would be best without and has one: a first answer before
   * the doors of all others are looked for. Null where none of the first few has. */
  private likelyWithDoor(wishes: Wishes): Outline | null {
    const { door, ...rest } = wishes;
    if (!door) return null;
    const order = fullOrder(wishes.order);
    const likely = this.outlinesFor(rest)
      .sort((a, b) => compareBy(order, a.least, b.least))
      .slice(0, LIKELY);
    for (const outline of likely) {
      const known = this.isOver() ? null : this.withDoors(outline, wishes);
      if (known?.doors?.length) return known;
    }
    return null;
  }

  /** Whether an outline keeps these demands, the first that is tried first by `rank`, with it and its
   * filling; false for none; null where the time was up first. */
  firstThat(
    wishes: Wishes,
    rank: (arrangement: Arrangement) => number = ({ short }) => short,
  ): { readonly arrangement: Arrangement; readonly filled: Filled } | false | null {
    const outlines = this.outlinesFor(wishes).sort(
      (a, b) => rank(a.arrangement) - rank(b.arrangement),
    );
    for (const outline of outlines) {
      if (this.isOver()) return null;
      const known = wishes.door ? this.withDoors(outline, wishes) : outline;
      if (!known) continue;
      const filled = this.fill(known, wishes);
      if (filled === null) return null;
      if (filled !== 'none') return { arrangement: outline.arrangement, filled };
    }
    return false;
  }

  private isOver(): boolean {
    return this.options.now() >= this.until || (this.options.shouldStop?.() ?? false);
  }

  /** The outlines that keep the demands on shape. */
  private outlinesFor(wishes: Wishes): Outline[] {
    const { leastHeight = 0, leastFloor = 0, mostFloor = Infinity, mostBought } = wishes;
    const needsLevel = wishes.flatBase && !isRanked(wishes, 'level base');
    return this.list.arrangements
      .filter(
        ({ cut }) =>
          (!needsLevel || cut.flat || isSawn(cut, wishes)) &&
          heightOf(cut, wishes) >= leastHeight &&
          cut.floor.inside >= leastFloor &&
          cut.floor.max <= mostFloor,
      )
      .map((one) => outlineOf(one, this.stock, wishes, this.shell.radius))
      .filter(
        ({ least }) =>
          (mostBought === undefined || least['fewest bought'] <= mostBought) &&
          (isRanked(wishes, 'spares kept') || least['spares kept'] === 0),
      );
  }

  private fill({ arrangement, doors }: Outline, wishes: Wishes): Filled | 'none' | null {
    const { now, shouldStop } = this.options;
    const { cut, wayUp } = arrangement;
    const { heights, azimuths } = this.stanceOf(wayUp);
    const [base, top] = [cut.baseZ.min, this.shell.radius];
    const rise = heights.map((z) => Math.min(1, Math.max(0, (z - base) / (top - base))));
    const exposure = rise.map((own, p) => exposureOf(own, azimuths[p] as number, wishes.windFrom));
    const isAboutGroups = isRanked(wishes, 'groups joined') || wishes.mostParted !== undefined;
    return fillOutline(
      {
        shell: this.shell,
        places: cut.places,
        ...this.stock,
        rise,
        exposure,
        wishes,
        ...(isAboutGroups && { groups: this.groups }),
        ...(doors !== null && { doors }),
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

  private fitOf({ arrangement, doors }: Outline, filled: Filled): Fit {
    const { sources, bought, mended, gaps, sparesLacking, joined, parted } = filled;
    const way = this.list.waysUp[arrangement.wayUp] as WayUp;
    const door = (filled.door === null ? null : doors?.[filled.door]) as KnownDoor | null;
    return {
      way,
      arrangement,
      sources,
      bought,
      mended,
      gaps,
      sparesLacking,
      joined,
      parted,
      door: door?.opening ?? null,
    };
  }

  /** The outline with its doors; null where it has none and one must be had. */
  private withDoors(outline: Outline, wishes: Wishes): Outline | null {
    const doors = this.doorsOf(outline.arrangement, wishes);
    if (doors.length === 0 && !isRanked(wishes, 'door')) return null;
    return withDoors(outline, doors, this.stock, wishes);
  }

  private doorsOf({ cut, wayUp }: Arrangement, { door }: Wishes): KnownDoor[] {
    if (!door || door.height >= cut.height || door.width >= 2 * cut.floor.max) return [];
    const part = partOf(this.stanceOf(wayUp).shell, cut.places);
    const key = [wayUp, cut.places.length, cut.rise, door.width, door.height].join();
    const openings =
      this.openings.get(key) ??
      openingsFor(part.shell, { outline: doorOutline(door.width, door.height) });
    this.openings.set(key, openings);
    return openings.map((opening) => {
      const places = opening.places.map((p) => part.places[p] as number);
      return {
        places,
        around: placesAround(part.shell, opening.places, part.places),
        harm: harmOf(opening),
        opening,
      };
    });
  }

  private stanceOf(wayUp: number): Stance {
    const known = this.stances.get(wayUp);
    if (known) return known;
    const shell = orientShell(this.shell, (this.list.waysUp[wayUp] as WayUp).crown);
    const normals = Array.from({ length: placeCount(shell) }, (_, p) =>
      placeNormal(shell, p as PlaceId),
    );
    const stance = {
      shell,
      heights: Float64Array.from(normals, ([, , z]) => z * shell.radius),
      azimuths: Float64Array.from(normals, ([x, y]) => (Math.atan2(y, x) + TAU) % TAU),
    };
    this.stances.set(wayUp, stance);
    return stance;
  }
}

interface KnownDoor extends DoorToChoose {
  readonly opening: Opening;
}

/** Outlines in which a door is looked for before all others, at most. */
const LIKELY = 12;
/** Fits that are told, at most. */
const MOST_FITS = 12;
/** Seconds that one outline may take. */
const LONGEST_FILL = 5;

/** Net places that share a hub with some of a part's places, and are none of them. */
function placesAround(part: Shell, own: readonly number[], places: Int32Array): number[] {
  const hubs = new Set(own.flatMap((p) => hubsOf(part, p as PlaceId)));
  const mine = new Set(own);
  return [...places.keys()].flatMap((p) =>
    !mine.has(p) && hubsOf(part, p as PlaceId).some((hub) => hubs.has(hub))
      ? [places[p] as number]
      : [],
  );
}

/** Puts one into the sorted rest of a list, behind position `at`, before those that are no better. */
function insertAfter<T>(list: T[], at: number, one: T, compare: (a: T, b: T) => number): void {
  let [low, high] = [at + 1, list.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (compare(list[middle] as T, one) < 0) low = middle + 1;
    else high = middle;
  }
  list.splice(low, 0, one);
}
