// An order of pieces walked through, lift by lift: which hubs are propped when each is let go, so
// that every state stands. The props of the lift before are kept while they are enough; where they
// are not, the fewest that make the state stand, of these those that move fewest; and each goes as
// soon as the state stands without it.

import type { SeamPass } from '../../frame/model.ts';
import { howFrameStands } from '../../stages/how-it-stands.ts';
import { LOOSE } from '../../stages/tolerances.ts';
import { type Beyond, frameBeyond, standsBeyond } from './beyond.ts';
import { type Barred, barredBy } from './entry.ts';
import type { Piece } from './pieces.ts';
import type { OrderSite } from './site.ts';
import { isStiff } from './stiff.ts';

/** One lift of a walk. */
export interface Step {
  readonly piece: Piece;
  /** Hubs propped when the piece is let go, ascending: the state stands. */
  readonly props: readonly number[];
  /** Those still propped when seams have been tightened after it. */
  readonly after: readonly number[];
  /** Of `props`, those that were not propped before. */
  readonly propsIn: number;
  /** Seams along which it is bolted up there, ascending. */
  readonly seams: readonly number[];
  /** Whether panels meet the piece on all sides. */
  readonly isEnclosed: boolean;
  /** Courses complete when it is in. */
  readonly complete: number;
  /** Whether what stands after it is stiff enough to count as firm for what is built on. */
  readonly isFirm: boolean;
}

/** Options of a walk. */
export interface WalkOptions {
  /** Which hubs may be propped; all above the ground where left out. */
  readonly mayProp?: (hub: number) => boolean;
  /** Hubs propped as long as a placed panel reaches them and they are not let go: the lead's. */
  readonly keepProps?: readonly number[];
  /** Sets of props looked at before the search for fewer gives up. */
  readonly sets?: number;
  /** Every state asked whole: slower, and the last word. */
  readonly whole?: boolean;
}

/** A walk cut short: the piece at `at` in the order can't go in, or its state can't be propped. */
export interface Stuck {
  readonly at: number;
  readonly why: Barred | 'cannot be propped';
}

/** Sets of props looked at for one lift. */
const SETS = 60;

/** A half-built shell that takes one piece after another. Identity: it keeps who is placed. */
export class Walker {
  /** Place → index of its lift; above every index where not placed. */
  private readonly rank: Int32Array;
  private readonly left: Int32Array;
  readonly steps: Step[] = [];

  constructor(
    private readonly site: OrderSite,
    private readonly options: WalkOptions = {},
  ) {
    this.rank = new Int32Array(site.built.length).fill(FAR);
    this.left = Int32Array.from(site.ofCourse, (places) => places.length);
  }

  isPlaced = (place: number): boolean => this.rank[place] < FAR;

  /** Takes up a step known from another walk with the same places placed and props before. */
  take(step: Step): void {
    this.place(step.piece);
    this.steps.push(step);
  }

  /** Back to so many lifts. */
  backTo(count: number): void {
    for (const { piece } of this.steps.splice(count))
      for (const p of piece.places) {
        this.rank[p] = FAR;
        if (!this.site.wayOut[p]) this.left[this.site.course[p] - 1]++;
      }
  }

  /** Puts a piece in; why not, where it can't go in or not be propped. */
  put(piece: Piece): Stuck['why'] | null {
    const { site } = this;
    const barred = barredBy(site, piece, this.isPlaced);
    if (barred !== null) return barred;
    const k = this.steps.length;
    const before = this.steps.at(-1);
    const carried = before?.after ?? [];
    const passed = before?.complete ?? 0;
    const free = piece.places.reduce((sum, p) => sum + (site.hubs[p]?.length ?? 0), 0);
    const seams = piece.outer.flatMap(({ place, seam }) => (this.isPlaced(place) ? [seam] : []));
    this.place(piece);
    const kept = this.withKept(carried, k);
    const props = this.propsFor(k, kept, passed);
    if (props === null) {
      this.unplace(piece);
      return 'cannot be propped';
    }
    const complete = this.complete();
    const after = complete > passed ? this.pruned(k, props, complete, true) : props;
    this.steps.push({
      piece,
      props,
      after,
      propsIn: props.filter((hub) => !carried.includes(hub)).length,
      seams: seams.sort(ascending),
      isEnclosed: seams.length === free - 2 * piece.inner.length,
      complete,
      isFirm:
        complete > passed &&
        isStiff(frameBeyond(site, this.beyond(k, this.coreFor(k, after), complete), after), FIRM),
    });
    return null;
  }

  /** The state with the first k + 1 lifts in, of which those up to `core` are known to stand. */
  private beyond(k: number, core: number, complete: number): Beyond {
    const loose: number[] = [];
    for (let i = core + 1; i < k; i++) loose.push(...(this.steps[i] as Step).piece.places);
    for (const p of this.last?.places ?? []) loose.push(p);
    return { stands: (p) => this.rank[p] <= core, loose, pass: this.passOf(complete) };
  }

  /** The piece being put in. */
  private last: Piece | null = null;

  /** Seams inside a piece are snug; others by the courses that are complete. */
  private passOf(complete: number): (seam: number) => SeamPass {
    const { site, rank } = this;
    return (seam) => {
      const [a, b] = site.seamPlaces[seam] as readonly [number, number];
      if (rank[a] === rank[b]) return 'snug';
      return ringPass(site, seam, complete, this.isPlaced);
    };
  }

  /** The latest lift after which what stood was firm and whose props were all among these: what stood
   * then stands with them. Not any lift: a long open strip is soft, each panel of it by itself is not. */
  private coreFor(k: number, props: readonly number[]): number {
    for (let j = k - 1; j >= 0; j--) {
      const { after, isFirm } = this.steps[j] as Step;
      if (isFirm && after.every((hub) => props.includes(hub))) return j;
    }
    return -1;
  }

  private stands(k: number, props: readonly number[], complete: number): boolean {
    const { site, options } = this;
    const core = this.coreFor(k, props);
    if (!standsBeyond(site, this.beyond(k, core, complete), props)) return false;
    return !options.whole || core < 0 || standsBeyond(site, this.beyond(k, -1, complete), props);
  }

  private withKept(carried: readonly number[], _k: number): readonly number[] {
    const wanted = (this.options.keepProps ?? []).filter((hub) =>
      (this.site.around[hub] ?? []).some(this.isPlaced),
    );
    return [...new Set([...carried, ...wanted])].sort(ascending);
  }

  private propsFor(k: number, carried: readonly number[], complete: number): number[] | null {
    if (this.stands(k, carried, complete))
      return this.pruned(k, carried, complete, this.options.whole ?? false);
    const near = this.withOneNear(k, carried, complete);
    if (near !== null) return near;
    const added = this.added(k, carried, complete);
    if (added !== null && added.length === 1) return added;
    const fresh = this.added(k, this.withKept([], k), complete);
    if (added === null || fresh === null) return fresh ?? added;
    return fresh.length < added.length ? fresh : added;
  }

  /** One prop more at a free hub of the piece, and those gone that it makes needless: no more than
   * there were, or one where there were none; null where that is not enough. */
  private withOneNear(k: number, carried: readonly number[], complete: number): number[] | null {
    const { site, options, last } = this;
    for (const hub of new Set(last?.places.flatMap((p) => site.hubs[p] as readonly number[]))) {
      if (site.base[hub] || carried.includes(hub) || options.mayProp?.(hub) === false) continue;
      const more = [hub, ...carried].sort(ascending);
      if (!this.stands(k, more, complete)) continue;
      const now = this.pruned(k, more, complete, true);
      return now.length <= Math.max(1, carried.length) ? now : null;
    }
    return null;
  }

  /** Props given, and the fewest besides, less those no longer needed; null: none are enough. */
  private added(k: number, own: readonly number[], complete: number): number[] | null {
    const core = this.coreFor(k, own);
    const all = this.addedFrom(k, core, own, complete);
    if (all === null || !this.options.whole || core < 0 || this.stands(k, all, complete))
      return all && (own.length === 0 ? all : this.pruned(k, all, complete, true));
    const more = this.addedFrom(k, -1, all, complete);
    return more && this.pruned(k, more, complete, true);
  }

  private addedFrom(
    k: number,
    core: number,
    own: readonly number[],
    complete: number,
  ): number[] | null {
    const { site, options } = this;
    const beyond = this.beyond(k, core, complete);
    const how = howFrameStands(frameBeyond(site, beyond, own), {
      mayProp: (hub) =>
        hub < site.base.length && !site.base[hub] && (options.mayProp?.(hub) ?? true),
      sets: options.sets ?? SETS,
    });
    return how.props && [...own, ...how.props].sort(ascending);
  }

  /** Props without those that the state stands without. Asked of all, or only of those near the
   * piece and when a course closes. */
  private pruned(k: number, props: readonly number[], complete: number, all: boolean): number[] {
    const kept = this.options.keepProps ?? [];
    let now = [...props];
    for (const hub of props) {
      if (kept.includes(hub) || !(all || this.isNear(hub))) continue;
      const fewer = now.filter((one) => one !== hub);
      if (this.stands(k, fewer, complete)) now = fewer;
    }
    return now;
  }

  private isNear(hub: number): boolean {
    const { site, last } = this;
    const own = new Set(site.around[hub]);
    return (last?.places ?? []).some(
      (p) =>
        own.has(p) || (site.hubs[p] ?? []).some((one) => site.around[one]?.some((q) => own.has(q))),
    );
  }

  private complete(): number {
    let complete = 0;
    while (complete < this.left.length && this.left[complete] === 0) complete++;
    return complete;
  }

  private place(piece: Piece): void {
    this.last = piece;
    const k = this.steps.length;
    for (const p of piece.places) {
      this.rank[p] = k;
      if (!this.site.wayOut[p]) this.left[this.site.course[p] - 1]--;
    }
  }

  private unplace(piece: Piece): void {
    for (const p of piece.places) {
      this.rank[p] = FAR;
      if (!this.site.wayOut[p]) this.left[this.site.course[p] - 1]++;
    }
  }
}

/** What counts as firm for what is built on: some times stiffer than what counts as loose, as it gets
 * softer together with what is built on. */
const FIRM = 4 * LOOSE;

const FAR = 1 << 30;

const ascending = (a: number, b: number): number => a - b;

/** How far a seam is by the courses complete: snug once the course above its upper panel has closed,
 * or its own where that is the topmost; round the way out finger-tight until that is in. */
export function ringPass(
  site: OrderSite,
  seam: number,
  complete: number,
  isPlaced: (place: number) => boolean,
): SeamPass {
  const [a, b] = site.seamPlaces[seam] as readonly [number, number];
  const upper = Math.max(site.course[a] as number, site.course[b] as number);
  if (complete < Math.min(upper + 1, site.courses)) return 'finger';
  for (const hub of site.seamHubs[seam] as readonly [number, number])
    for (const p of site.around[hub] as readonly number[])
      if (site.wayOut[p] && !isPlaced(p)) return 'finger';
  return 'snug';
}

/** An order walked through: a step for each piece, or where it got stuck. */
export function walk(
  site: OrderSite,
  order: readonly Piece[],
  options: WalkOptions = {},
): { readonly steps: readonly Step[]; readonly stuck: Stuck | null } {
  const walker = new Walker(site, options);
  for (const [at, piece] of order.entries()) {
    const why = walker.put(piece);
    if (why !== null) return { steps: walker.steps, stuck: { at, why } };
  }
  return { steps: walker.steps, stuck: null };
}
