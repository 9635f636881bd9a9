// Finds folded nets (fold.ts) by gluing: take the open side whose hub is nearest to closing, try every side that may
// meet it (an open one of a piece that is there, or one of a new piece), keep a try only while
// each of its hubs can still be closed by some run of corners, and learn from every seam and
// every closed star (belief.ts), so that the tolerance of the next one shrinks.

import { TAU } from '../math/angle.ts';
import {
  type Belief,
  conditionInto,
  copyBeliefInto,
  type Equation,
  innovationOf,
  makeBelief,
  makeEquation,
} from './belief.ts';
import type { CornerModel } from './corner-model.ts';
import { setSeamInto, setStarInto } from './equations.ts';
import { type Fold, type FoldedNet, type FoldSeed, isFoldedSphere } from './fold.ts';
import type { FoldedPart } from './grown.ts';
import { type Joints, jointMatrix, mayBeOneMake, mayJoin } from './joints.ts';
import { type HubRun, Pieces } from './pieces.ts';
import { type BothWays, unusedKinds } from './side-belief.ts';

/** Bounds of the search and what it calls on its way. */
export interface FoldSearch {
  /** Largest misfit of one seam or star, in standard deviations. */
  readonly gate: number;
  /** Nets whose misfit exceeds the best by more than this are dropped. */
  readonly window: number;
  /** Kinds that may stay unused. */
  readonly spareKinds: number;
  /** Sides, over all pieces, beyond which a panel may be missing; 0 unless told. */
  readonly holeSides?: number;
  /** Pieces of one kind, at most; no limit unless told. */
  readonly mostUses?: number;
  /** Kinds offered both ways round, of which one way will do. */
  readonly bothWays?: BothWays;
  /** Largest change of κ / κ₀ that this search is answerable for. */
  readonly kappaReach: number;
  /** Most work, in tries to glue two sides of an ordinary pile (see `weight`). */
  readonly maxTries: number;
  /** Kind → sides after which the panel looks the same again; its number of sides where no turn does
   * that. Turns beyond are not tried. */
  readonly periods: readonly number[];
  /** How the kinds' sides are joined, which forbids some to meet; absent where nobody looked. */
  readonly joints?: Joints;
  /** Called at every try with the number of pieces and the work it is; false stops the search. */
  readonly onTry: (pieces: number, work: number) => boolean;
  /** Called for every part that stands before its next side is tried, and again where nothing fits
   * there (`stuck`), with the number of pieces; `copy` gives the part. */
  readonly onPart?: (pieces: number, stuck: boolean, copy: () => FoldedPart) => void;
}

/** What a search found, and whether it went through everything. */
export interface FoldOutcome {
  readonly nets: readonly FoldedNet[];
  readonly complete: boolean;
  /** Most pieces that stood together. */
  readonly deepest: number;
}

/** Most corners that are tried to fill a gap at a hub, and most runs of them at one hub: where sides
 * are so alike that there would be more, fewer corners are looked ahead. */
const MAX_FILL = 3;
const MAX_FILLS = 8000;
/** What the linear model may be off at a star that closes exactly, radians: second order in κ and in
 * the sides' errors. */
const NEGLECTED = 2e-5;
/** No corner of a missing panel is sharper, radians. */
const LEAST_CORNER = 0.25;
/** No net has more places: panels so flat that they would never close are given up. */
const MOST_PLACES = 2000;
/** … and none is grown from more pieces: each is a call deeper. */
const MOST_PIECES = 800;
/** Below this share of a prior variance an equation was known before and teaches nothing. */
const KNOWN = 1e-5;

/** All closed folded nets that grow from the seed and use every kind. `prior` is the belief of the
 * model's unknowns before anything is joined. */
export function foldedNets(
  model: CornerModel,
  prior: Belief,
  fold: Fold,
  seed: FoldSeed,
  search: FoldSearch,
): FoldOutcome {
  return new Gluing(model, prior, fold, seed, search).run();
}

/** One search under way; everything it changes it also takes back. */
class Gluing {
  private readonly pieces: Pieces;
  private readonly axesLeft: number[];
  private readonly meets: readonly (readonly number[])[];
  private readonly mayMeet: Uint8Array;
  /** Kind-side × kind-side: 1 where they may be one side of a panel turned. */
  private readonly mayBeOne: Uint8Array;
  private readonly fillDepth: number;
  private readonly levels: Level[] = [];
  private readonly gain: Float64Array;
  private readonly equation: Equation;
  private readonly priorVariance: number;
  private readonly found: FoldedNet[] = [];
  private best = Number.POSITIVE_INFINITY;
  private tries = 0;
  /** Work of one try: it grows with the square of the unknowns; 1 up to 64 of them. */
  private readonly weight: number;
  private deepest = 0;
  private stopped = false;
  /** Sides beyond which a panel is taken to be missing. */
  private readonly holes = new Set<number>();

  constructor(
    private readonly model: CornerModel,
    private readonly prior: Belief,
    private readonly fold: Fold,
    private readonly seed: FoldSeed,
    private readonly search: FoldSearch,
  ) {
    const sides = model.lengths.length;
    this.axesLeft = [...fold.axes];
    this.pieces = new Pieces(model);
    this.gain = new Float64Array(prior.size);
    this.weight = Math.max(1, (prior.size / 64) ** 2);
    this.equation = makeEquation(prior.size);
    this.mayMeet = new Uint8Array(sides * sides);
    this.mayBeOne = new Uint8Array(sides * sides);
    this.meets = this.sidesThatMayMeet(sides);
    const choices = this.meets.reduce((sum, list) => sum + list.length, 0) / sides;
    const depth = Math.floor(Math.log(MAX_FILLS) / Math.log(Math.max(2, choices)));
    this.fillDepth = Math.max(1, Math.min(MAX_FILL, depth));
    let variance = 0;
    for (let s = 0; s < sides; s++) variance += prior.covariance[s * (prior.size + 1)] as number;
    this.priorVariance = variance / sides;
  }

  run(): FoldOutcome {
    const level = this.level(0);
    copyBeliefInto(this.prior, level.belief);
    level.chi2 = 0;
    level.equations = 0;
    if (this.plant(level)) this.grow(0);
    return {
      nets: this.found,
      complete: !this.stopped,
      deepest: this.deepest,
    };
  }

  private sidesThatMayMeet(sides: number): number[][] {
    const meets: number[][] = [];
    const joints = this.search.joints ?? null;
    const joined = jointMatrix(joints, mayJoin);
    const oneMake = jointMatrix(joints, mayBeOneMake);
    for (let s = 0; s < sides; s++) {
      const list: number[] = [];
      for (let t = 0; t < sides; t++) {
        this.setSeam(s, t);
        const { off, variance } = innovationOf(this.prior, this.equation);
        if (off * off > this.search.gate ** 2 * (variance + NEGLECTED ** 2)) continue;
        const at = s * sides + t;
        this.mayBeOne[at] = oneMake?.[at] ?? 1;
        if (joined?.[at] === 0) continue;
        list.push(t);
        this.mayMeet[at] = 1;
      }
      meets.push(list);
    }
    return meets;
  }

  private level(depth: number): Level {
    const there = this.levels[depth];
    if (there) return there;
    const sides = this.model.lengths.length;
    const made: Level = {
      belief: makeBelief(this.prior.size),
      angles: new Float64Array(sides),
      sds: new Float64Array(sides),
      chi2: 0,
      equations: 0,
    };
    this.levels[depth] = made;
    return made;
  }

  /** Puts the first piece down, with its axis. False where the readings forbid it. */
  private plant(level: Level): boolean {
    const { seed } = this;
    const kind = this.model.kindOf[seed.kindSide] as number;
    if (seed.through === 'nothing') {
      this.pieces.add(kind, 1);
      this.refresh(level);
      return true;
    }
    const top = seed.axis ?? (this.fold.axes[0] as number);
    if (seed.through === 'panel') {
      if (this.search.joints && !this.isRegular(kind, top)) return false;
      this.useAxis(top);
      this.pieces.add(kind, top);
      return this.takeRegular(level, kind, top);
    }
    const first = this.pieces.add(kind, 1);
    const side = first + seed.kindSide - (this.model.first[kind] as number);
    this.refresh(level);
    return this.glue(side, this.pieces.previous[side] as number, level);
  }

  /** A panel turned about its middle by 1 / axis of a turn must look the same. */
  private takeRegular(level: Level, kind: number, axis: number): boolean {
    const start = this.model.first[kind] as number;
    const count = (this.model.first[kind + 1] as number) - start;
    const step = count / axis;
    for (let i = 0; i + step < count; i++) {
      this.setSeam(start + i, start + i + step);
      if (!this.take(level)) return false;
    }
    this.refresh(level);
    return true;
  }

  private isRegular(kind: number, axis: number): boolean {
    const start = this.model.first[kind] as number;
    const count = (this.model.first[kind + 1] as number) - start;
    if (count % axis !== 0) return false;
    const sides = this.model.lengths.length;
    const step = count / axis;
    for (let i = 0; i + step < count; i++)
      if (!this.mayBeOne[(start + i) * sides + start + i + step]) return false;
    return true;
  }

  /** Corner angles and their standard deviations under this level's belief. */
  private refresh(level: Level): void {
    const { model } = this;
    const { mean, covariance, size } = level.belief;
    const last = size - 1;
    for (let c = 0; c < model.angles.length; c++) {
      const kind = model.kindOf[c] as number;
      const start = model.first[kind] as number;
      const count = (model.first[kind + 1] as number) - start;
      const at = model.slopeStart[c] as number;
      const byKappa = model.kappaSlopes[c] as number;
      let angle = (model.angles[c] as number) + byKappa * (mean[last] as number);
      let variance = byKappa * byKappa * (covariance[last * size + last] as number);
      for (let i = 0; i < count; i++) {
        const a = model.slopes[at + i] as number;
        const row = (start + i) * size;
        angle += a * (mean[start + i] as number);
        variance += a * (2 * byKappa * (covariance[row + last] as number));
        for (let j = 0; j < count; j++)
          variance +=
            a * (model.slopes[at + j] as number) * (covariance[row + start + j] as number);
      }
      level.angles[c] = angle;
      level.sds[c] = Math.sqrt(Math.max(0, variance));
    }
  }

  private grow(depth: number): void {
    this.deepest = Math.max(this.deepest, this.pieces.pieceKind.length);
    const level = this.level(depth);
    if (!this.fits(level)) return;
    const side = this.nextSide(level);
    if (side < 0) {
      this.keep(level);
      return;
    }
    this.tell(level, null);
    const choices = this.choices(side, depth);
    if (choices.length === 0 && !this.stopped) this.tell(level, side);
    for (const choice of choices) {
      if (level.chi2 + choice.cost > this.best + this.search.window) break;
      this.attempt(side, choice, depth, () => this.grow(depth + 1));
      if (this.stopped) return;
    }
    this.leaveOpen(side, depth);
  }

  /** Takes it that the panel beyond a side is missing. */
  private leaveOpen(side: number, depth: number): void {
    if (this.holes.size >= this.holeSides || !this.mayTry()) return;
    const level = this.level(depth + 1);
    copyLevelInto(this.level(depth), level);
    this.holes.add(side);
    const hubs = [side, this.pieces.next[side] as number];
    if (hubs.every((hub) => this.mayStand(this.pieces.hubRun(hub, level), level)))
      this.grow(depth + 1);
    this.holes.delete(side);
  }

  private get holeSides(): number {
    return this.search.holeSides ?? 0;
  }

  /** Shows the part that stands to whom it concerns. */
  private tell(level: Level, stuckAt: number | null): void {
    const copy = (): FoldedPart => this.part(level, stuckAt);
    this.search.onPart?.(this.pieces.pieceKind.length, stuckAt !== null, copy);
  }

  private part({ belief }: Level, stuckAt: number | null): FoldedPart {
    const { model, fold, seed } = this;
    const kappa = model.kappa * (1 + (belief.mean[belief.size - 1] as number));
    return {
      ...this.pieces.copy(),
      fold,
      seed,
      first: model.first,
      lengths: model.lengths.map((length, s) => length + (belief.mean[s] as number)),
      radius: 1 / Math.sqrt(kappa),
      stuckAt,
    };
  }

  /** The open side that starts at the hub with the largest angle, −1 where all are glued. */
  private nextSide(level: Level): number {
    let side = -1;
    let largest = -1;
    for (let s = 0; s < this.pieces.mate.length; s++) {
      if ((this.pieces.mate[s] as number) >= 0 || this.holes.has(s)) continue;
      const { angle } = this.pieces.hubRun(s, level);
      if (angle > largest) {
        largest = angle;
        side = s;
      }
    }
    return side;
  }

  /** All ways to glue the side that the readings allow, the best fitting first. */
  private choices(side: number, depth: number): Choice[] {
    const out: Choice[] = [];
    const consider = (choice: Choice): void =>
      this.attempt(side, choice, depth, (level) => {
        out.push({ ...choice, cost: level.chi2 - this.level(depth).chi2 });
      });
    const own = this.pieces.kindSide[side] as number;
    const sides = this.model.lengths.length;
    for (let t = 0; t < this.pieces.mate.length; t++) {
      if ((this.pieces.mate[t] as number) >= 0 || this.holes.has(t)) continue;
      if (t === side && !this.axesLeft.includes(2)) continue;
      if (!this.mayMeet[own * sides + (this.pieces.kindSide[t] as number)]) continue;
      consider({ mate: t, kindSide: -1, axis: 1, cost: 0 });
    }
    for (const other of this.meets[own] as readonly number[]) {
      const kind = this.model.kindOf[other] as number;
      if ((this.pieces.used[kind] as number) >= (this.search.mostUses ?? Infinity)) continue;
      const start = this.model.first[kind] as number;
      if (other - start >= (this.search.periods[kind] as number)) continue;
      consider({ mate: -1, kindSide: other, axis: 1, cost: 0 });
      for (const axis of new Set(this.axesLeft))
        if (this.isRegular(kind, axis) && other - start < this.stepOf(kind, axis))
          consider({ mate: -1, kindSide: other, axis, cost: 0 });
    }
    return out.sort((a, b) => a.cost - b.cost);
  }

  private stepOf(kind: number, axis: number): number {
    return ((this.model.first[kind + 1] as number) - (this.model.first[kind] as number)) / axis;
  }

  /** Makes the choice on the next level, calls `then` if it stands, and takes it back. */
  private attempt(side: number, choice: Choice, depth: number, then: (level: Level) => void): void {
    if (!this.mayTry()) return;
    const axesBefore = [...this.axesLeft];
    const level = this.level(depth + 1);
    copyLevelInto(this.level(depth), level);
    let mate = choice.mate;
    let stands = true;
    if (mate < 0) {
      const kind = this.model.kindOf[choice.kindSide] as number;
      if (choice.axis > 1) {
        this.useAxis(choice.axis);
        stands = this.takeRegular(level, kind, choice.axis);
      }
      const first = this.pieces.add(kind, choice.axis);
      mate = first + choice.kindSide - (this.model.first[kind] as number);
    }
    if (stands && this.glue(side, mate, level)) then(level);
    this.pieces.part(side, mate);
    if (choice.mate < 0) this.pieces.removeLast();
    this.axesLeft.splice(0, this.axesLeft.length, ...axesBefore);
  }

  private mayTry(): boolean {
    this.tries += this.weight;
    const { maxTries, onTry } = this.search;
    if (this.tries > maxTries || !onTry(this.pieces.pieceKind.length, this.weight))
      this.stopped = true;
    return !this.stopped;
  }

  private useAxis(axis: number): void {
    this.axesLeft.splice(this.axesLeft.indexOf(axis), 1);
  }

  /** Glues two open sides: their lengths agree, and each of the two hubs either closes as it
   * should or can still be closed. The mates are set in any case; the caller takes them back. */
  private glue(side: number, mate: number, level: Level): boolean {
    this.pieces.join(side, mate);
    if (side === mate) this.useAxis(2);
    if (this.search.joints && !this.mayBeGlued(side, mate)) return false;
    this.setSeam(this.pieces.kindSide[side] as number, this.pieces.kindSide[mate] as number);
    const { off, variance } = innovationOf(level.belief, this.equation);
    if (off * off > this.search.gate ** 2 * (variance + NEGLECTED ** 2)) return false;
    const first = this.pieces.hubRun(side, level);
    if (!this.mayStand(first, level)) return false;
    const second = this.pieces.hubRun(mate, level);
    const same = first.closed ? this.pieces.cornersAround(side).includes(mate) : false;
    if (!same && !this.mayStand(second, level)) return false;
    this.setSeam(this.pieces.kindSide[side] as number, this.pieces.kindSide[mate] as number);
    if (side !== mate && !this.take(level)) return false;
    if (first.closed && !this.closeStar(side, first.angle, level)) return false;
    if (second.closed && !same && !this.closeStar(mate, second.angle, level)) return false;
    this.refresh(level);
    return true;
  }

  private mayBeGlued(side: number, mate: number): boolean {
    const [own, other] = [this.pieces.kindSide[side], this.pieces.kindSide[mate]];
    return this.mayMeet[(own as number) * this.model.lengths.length + (other as number)] === 1;
  }

  /** Whether a hub's run is closed at a right sum, or can still be closed by further corners. */
  private mayStand(run: HubRun, level: Level): boolean {
    for (const axis of this.hubAxes()) {
      const gap = TAU / axis - run.angle;
      const slack = this.search.gate * run.sd + NEGLECTED;
      if (run.closed) {
        if (Math.abs(gap) <= slack) return true;
      } else if (this.holeSides > 0 && gap > LEAST_CORNER - slack) {
        return true;
      } else if (
        gap > -slack &&
        this.canFill(run, gap, slack, this.fillDepth, this.pieces.kindSide[run.to] as number, level)
      )
        return true;
    }
    return false;
  }

  private hubAxes(): readonly number[] {
    return [1, ...new Set(this.axesLeft)];
  }

  /** Whether up to `most` corners fill the gap from `edge` on to the start of the run; true when
   * more than that are needed. */
  private canFill(
    run: HubRun,
    gap: number,
    slack: number,
    most: number,
    edge: number,
    level: Level,
  ): boolean {
    if (most === 0) return true;
    const sides = this.model.lengths.length;
    const start = this.pieces.kindSide[run.from] as number;
    for (const corner of this.meets[edge] as readonly number[]) {
      const left = gap - (level.angles[corner] as number);
      const loose = slack + this.search.gate * (level.sds[corner] as number);
      if (left < -loose) continue;
      const last = this.model.before[corner] as number;
      if (left <= loose && this.mayMeet[last * sides + start]) return true;
      if (this.canFill(run, left, loose, most - 1, last, level)) return true;
    }
    return this.mayMeet[edge * sides + start] === 1 && gap <= slack;
  }

  /** Learns from a star that has closed, and uses up an axis where its sum asks for one. */
  private closeStar(side: number, angle: number, level: Level): boolean {
    let axis = 1;
    for (const one of this.hubAxes())
      if (Math.abs(TAU / one - angle) < Math.abs(TAU / axis - angle)) axis = one;
    if (axis > 1) this.useAxis(axis);
    this.setStar(side, TAU / axis);
    return this.take(level);
  }

  /** Conditions the level's belief on the present equation; false where it is too far off. */
  private take(level: Level): boolean {
    const { off, variance: own } = innovationOf(level.belief, this.equation);
    let scale = 0;
    for (let i = 0; i < this.equation.terms; i++)
      scale += (this.equation.coefficient[i] as number) ** 2 * this.priorVariance;
    const variance = own + NEGLECTED ** 2;
    const cost = (off * off) / variance;
    if (own <= KNOWN * scale)
      return off * off <= this.search.gate ** 2 * (variance + KNOWN * scale);
    if (cost > this.search.gate ** 2) return false;
    conditionInto(level.belief, this.equation, { off, variance }, this.gain);
    level.chi2 += cost;
    level.equations++;
    return true;
  }

  private setSeam(a: number, b: number): void {
    setSeamInto(this.equation, this.model, a, b);
  }

  private setStar(side: number, sum: number): void {
    const corners = this.pieces.cornersAround(side).map((c) => this.pieces.kindSide[c] as number);
    setStarInto(this.equation, this.model, corners, sum);
  }

  /** Whether the pieces, with one more of every kind not yet used, cover no more than the folded
   * sphere, and the misfit is one that true readings could have. */
  private fits(level: Level): boolean {
    const most = Math.min(MOST_PLACES / this.fold.order, MOST_PIECES);
    if (this.pieces.pieceKind.length > most) return false;
    const n = level.equations;
    if (level.chi2 > n + this.search.gate * Math.sqrt(2 * n) + 10) return false;
    if (level.chi2 > this.best + this.search.window) return false;
    const last = this.prior.size - 1;
    const kappaSd = Math.sqrt(
      Math.max(0, level.belief.covariance[last * (this.prior.size + 1)] as number),
    );
    const kappaOff = Math.abs(level.belief.mean[last] as number);
    if (kappaOff > this.search.kappaReach + this.search.gate * kappaSd) return false;
    const kinds = this.pieces.used.length;
    const awaited = this.search.spareKinds === 0 ? this.unused() : [];
    let area = 0;
    const omega = new Float64Array(kinds);
    for (let k = 0; k < kinds; k++) {
      const start = this.model.first[k] as number;
      const end = this.model.first[k + 1] as number;
      let sum = (2 - (end - start)) * Math.PI;
      for (let c = start; c < end; c++) sum += level.angles[c] as number;
      omega[k] = sum;
      if (awaited.includes(k))
        area += sum / Math.max(1, ...this.axesLeft.filter((a) => this.isRegular(k, a)));
    }
    for (let p = 0; p < this.pieces.pieceKind.length; p++)
      area +=
        (omega[this.pieces.pieceKind[p] as number] as number) /
        (this.pieces.pieceAxis[p] as number);
    return area <= ((2 * TAU) / this.fold.order) * (1.02 + this.search.gate * kappaSd);
  }

  /** Kinds that are still to be used. */
  private unused(): number[] {
    const { used } = this.pieces;
    return unusedKinds(used.length, (k) => (used[k] as number) > 0, this.search.bothWays);
  }

  private keep(level: Level): void {
    if (this.axesLeft.length > 0 && this.holes.size === 0) return;
    if (this.unused().length > this.search.spareKinds) return;
    const hubAxis = this.pieces.mate.map((_, side) => {
      const { closed, angle } = this.pieces.hubRun(side, level);
      return closed ? Math.max(1, Math.round(TAU / angle)) : 1;
    });
    if (
      this.holes.size === 0 &&
      !isFoldedSphere(
        this.fold.order,
        this.pieces.previous,
        this.pieces.mate,
        hubAxis,
        this.pieces.pieceAxis,
      )
    )
      return;
    this.best = Math.min(this.best, level.chi2);
    this.found.push({
      fold: this.fold,
      ...this.pieces.copy(),
      hubAxis,
      chi2: level.chi2,
      equations: level.equations,
    });
  }
}

interface Level {
  readonly belief: Belief;
  readonly angles: Float64Array;
  readonly sds: Float64Array;
  chi2: number;
  equations: number;
}

function copyLevelInto(from: Level, to: Level): void {
  copyBeliefInto(from.belief, to.belief);
  to.angles.set(from.angles);
  to.sds.set(from.sds);
  to.chi2 = from.chi2;
  to.equations = from.equations;
}

interface Choice {
  /** Side of a piece that is there, or −1. */
  readonly mate: number;
  /** Kind-side of a new piece, or −1. */
  readonly kindSide: number;
  /** Order of the axis through the new piece's middle. */
  readonly axis: number;
  readonly cost: number;
}
