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

/** Bounds of the search and what it calls on its way. */
export interface FoldSearch {
  /** Largest misfit of one seam or star, in standard deviations. */
  readonly gate: number;
  /** Nets whose misfit exceeds the best by more than this are dropped. */
  readonly window: number;
  /** Kinds that may stay unused. */
  readonly spareKinds: number;
  /** Largest change of κ / κ₀ that this search is answerable for. */
  readonly kappaReach: number;
  readonly maxNodes: number;
  /** Kind → sides after which the panel looks the same again; its number of sides where no turn does
   * that. Turns beyond are not tried. */
  readonly periods: readonly number[];
  /** Called at every node with the number of pieces; false stops the search. */
  readonly onNode: (pieces: number) => boolean;
}

/** What a search found, and whether it went through everything. */
export interface FoldOutcome {
  readonly nets: readonly FoldedNet[];
  readonly nodes: number;
  readonly complete: boolean;
  /** Most pieces that stood together. */
  readonly deepest: number;
}

const MAX_FILL = 3;
/** What the linear model may be off at a star that closes exactly, radians: second order in κ and in
 * the sides' errors. */
const NEGLECTED = 2e-5;
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
  return new Gluing(model, prior, fold, search).run(seed);
}

/** One search under way; everything it changes it also takes back. */
class Gluing {
  private readonly pieceKind: number[] = [];
  private readonly pieceAxis: number[] = [];
  private readonly kindSide: number[] = [];
  private readonly piece: number[] = [];
  private readonly next: number[] = [];
  private readonly previous: number[] = [];
  private readonly mate: number[] = [];
  private readonly axesLeft: number[];
  private readonly used: number[];
  private readonly meets: readonly (readonly number[])[];
  private readonly mayMeet: Uint8Array;
  private readonly levels: Level[] = [];
  private readonly gain: Float64Array;
  private readonly equation: Equation;
  private readonly priorVariance: number;
  private readonly found: FoldedNet[] = [];
  private best = Number.POSITIVE_INFINITY;
  private nodes = 0;
  private deepest = 0;
  private stopped = false;

  constructor(
    private readonly model: CornerModel,
    private readonly prior: Belief,
    private readonly fold: Fold,
    private readonly search: FoldSearch,
  ) {
    const sides = model.lengths.length;
    this.axesLeft = [...fold.axes];
    this.used = new Array(model.first.length - 1).fill(0);
    this.gain = new Float64Array(prior.size);
    this.equation = makeEquation(prior.size);
    this.mayMeet = new Uint8Array(sides * sides);
    this.meets = this.sidesThatMayMeet(sides);
    let variance = 0;
    for (let s = 0; s < sides; s++) variance += prior.covariance[s * (prior.size + 1)] as number;
    this.priorVariance = variance / sides;
  }

  run(seed: FoldSeed): FoldOutcome {
    const level = this.level(0);
    copyBeliefInto(this.prior, level.belief);
    level.chi2 = 0;
    level.equations = 0;
    if (this.plant(seed, level)) this.grow(0);
    return {
      nets: this.found,
      nodes: this.nodes,
      complete: !this.stopped,
      deepest: this.deepest,
    };
  }

  private sidesThatMayMeet(sides: number): number[][] {
    const meets: number[][] = [];
    for (let s = 0; s < sides; s++) {
      const list: number[] = [];
      for (let t = 0; t < sides; t++) {
        this.setSeam(s, t);
        const { off, variance } = innovationOf(this.prior, this.equation);
        if (off * off <= this.search.gate ** 2 * (variance + NEGLECTED ** 2)) {
          list.push(t);
          this.mayMeet[s * sides + t] = 1;
        }
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
  private plant(seed: FoldSeed, level: Level): boolean {
    const kind = this.model.kindOf[seed.kindSide] as number;
    if (seed.through === 'nothing') {
      this.addPiece(kind, 1);
      this.refresh(level);
      return true;
    }
    const top = this.fold.axes[0] as number;
    this.axesLeft.splice(this.axesLeft.indexOf(top), 1);
    if (seed.through === 'panel')
      return this.addPiece(kind, top) >= 0 && this.takeRegular(level, kind, top);
    this.axesLeft.push(top);
    const first = this.addPiece(kind, 1);
    const side = first + seed.kindSide - (this.model.first[kind] as number);
    this.refresh(level);
    return this.glue(side, this.previous[side] as number, level);
  }

  /** Adds a piece whose middle lies on an axis of the given order; returns its first side. */
  private addPiece(kind: number, axis: number): number {
    const first = this.mate.length;
    const start = this.model.first[kind] as number;
    const count = ((this.model.first[kind + 1] as number) - start) / axis;
    for (let i = 0; i < count; i++) {
      this.kindSide.push(start + i);
      this.piece.push(this.pieceKind.length);
      this.next.push(first + ((i + 1) % count));
      this.previous.push(first + ((i + count - 1) % count));
      this.mate.push(-1);
    }
    this.pieceKind.push(kind);
    this.pieceAxis.push(axis);
    this.used[kind] = (this.used[kind] as number) + 1;
    return first;
  }

  private removePiece(): void {
    const kind = this.pieceKind.pop() as number;
    const axis = this.pieceAxis.pop() as number;
    const start = this.model.first[kind] as number;
    const count = ((this.model.first[kind + 1] as number) - start) / axis;
    for (const list of [this.kindSide, this.piece, this.next, this.previous, this.mate])
      list.length -= count;
    this.used[kind] = (this.used[kind] as number) - 1;
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
      if (!this.mayMeet[(start + i) * sides + start + i + step]) return false;
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
    this.nodes++;
    if (this.nodes > this.search.maxNodes || !this.search.onNode(this.pieceKind.length))
      this.stopped = true;
    if (this.stopped) return;
    this.deepest = Math.max(this.deepest, this.pieceKind.length);
    const level = this.level(depth);
    if (!this.fits(level)) return;
    const side = this.nextSide(level);
    if (side < 0) {
      this.keep(level);
      return;
    }
    for (const choice of this.choices(side, depth)) {
      if (level.chi2 + choice.cost > this.best + this.search.window) break;
      this.attempt(side, choice, depth, () => this.grow(depth + 1));
      if (this.stopped) return;
    }
  }

  /** The open side that starts at the hub with the largest angle, −1 where all are glued. */
  private nextSide(level: Level): number {
    let side = -1;
    let largest = -1;
    for (let s = 0; s < this.mate.length; s++) {
      if ((this.mate[s] as number) >= 0) continue;
      const { angle } = this.hubRun(s, level);
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
    const own = this.kindSide[side] as number;
    const sides = this.model.lengths.length;
    for (let t = 0; t < this.mate.length; t++) {
      if ((this.mate[t] as number) >= 0) continue;
      if (t === side && !this.axesLeft.includes(2)) continue;
      if (!this.mayMeet[own * sides + (this.kindSide[t] as number)]) continue;
      consider({ mate: t, kindSide: -1, axis: 1, cost: 0 });
    }
    for (const other of this.meets[own] as readonly number[]) {
      const kind = this.model.kindOf[other] as number;
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
    const axesBefore = [...this.axesLeft];
    const from = this.level(depth);
    const level = this.level(depth + 1);
    let mate = choice.mate;
    const isNew = mate < 0;
    let begun = false;
    const begin = (): void => {
      if (begun) return;
      begun = true;
      copyBeliefInto(from.belief, level.belief);
      level.angles.set(from.angles);
      level.sds.set(from.sds);
      level.chi2 = from.chi2;
      level.equations = from.equations;
    };
    let stands = true;
    if (isNew) {
      const kind = this.model.kindOf[choice.kindSide] as number;
      if (choice.axis > 1) {
        begin();
        this.axesLeft.splice(this.axesLeft.indexOf(choice.axis), 1);
        stands = this.takeRegular(level, kind, choice.axis);
      }
      mate =
        this.addPiece(kind, choice.axis) + choice.kindSide - (this.model.first[kind] as number);
    }
    begin();
    if (stands && this.glue(side, mate, level)) then(level);
    this.mate[side] = -1;
    this.mate[mate] = -1;
    if (isNew) this.removePiece();
    this.axesLeft.splice(0, this.axesLeft.length, ...axesBefore);
  }

  /** Glues two open sides: their lengths agree, and each of the two hubs either closes as it
   * should or can still be closed. The mates are set in any case; the caller takes them back. */
  private glue(side: number, mate: number, level: Level): boolean {
    this.mate[side] = mate;
    this.mate[mate] = side;
    if (side === mate) this.axesLeft.splice(this.axesLeft.indexOf(2), 1);
    this.setSeam(this.kindSide[side] as number, this.kindSide[mate] as number);
    const { off, variance } = innovationOf(level.belief, this.equation);
    if (off * off > this.search.gate ** 2 * (variance + NEGLECTED ** 2)) return false;
    const first = this.hubRun(side, level);
    if (!this.mayStand(first, level)) return false;
    const second = this.hubRun(mate, level);
    const same = first.closed ? this.onSameHub(side, mate) : false;
    if (!same && !this.mayStand(second, level)) return false;
    this.setSeam(this.kindSide[side] as number, this.kindSide[mate] as number);
    if (side !== mate && !this.take(level)) return false;
    if (first.closed && !this.closeStar(side, first.angle, level)) return false;
    if (second.closed && !same && !this.closeStar(mate, second.angle, level)) return false;
    this.refresh(level);
    return true;
  }

  private onSameHub(side: number, other: number): boolean {
    let corner = side;
    do {
      if (corner === other) return true;
      corner = this.mate[this.previous[corner] as number] as number;
    } while (corner !== side);
    return false;
  }

  /** The run of corners around the hub where a side starts. */
  private hubRun(side: number, level: Level): HubRun {
    let corner = side;
    let angle = 0;
    let sd = 0;
    for (;;) {
      const own = this.kindSide[corner] as number;
      angle += level.angles[own] as number;
      sd += level.sds[own] as number;
      const edge = this.previous[corner] as number;
      const across = this.mate[edge] as number;
      if (across < 0) {
        return this.clockwise(side, { closed: false, angle, sd, from: side, to: edge }, level);
      }
      corner = across;
      if (corner === side) return { closed: true, angle, sd, from: side, to: side };
    }
  }

  /** Completes an open run on its clockwise end, beyond the side it was started from. */
  private clockwise(side: number, run: HubRun, level: Level): HubRun {
    let { angle, sd } = run;
    let edge = side;
    while ((this.mate[edge] as number) >= 0) {
      edge = this.next[this.mate[edge] as number] as number;
      const own = this.kindSide[edge] as number;
      angle += level.angles[own] as number;
      sd += level.sds[own] as number;
    }
    return { ...run, angle, sd, from: edge };
  }

  /** Whether a hub's run is closed at a right sum, or can still be closed by further corners. */
  private mayStand(run: HubRun, level: Level): boolean {
    for (const axis of this.hubAxes()) {
      const gap = TAU / axis - run.angle;
      const slack = this.search.gate * run.sd + NEGLECTED;
      if (run.closed) {
        if (Math.abs(gap) <= slack) return true;
      } else if (
        gap > -slack &&
        this.canFill(run, gap, slack, MAX_FILL, this.kindSide[run.to] as number, level)
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
    const start = this.kindSide[run.from] as number;
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
    if (axis > 1) this.axesLeft.splice(this.axesLeft.indexOf(axis), 1);
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
    const corners: number[] = [];
    let corner = side;
    do {
      corners.push(this.kindSide[corner] as number);
      corner = this.mate[this.previous[corner] as number] as number;
    } while (corner !== side);
    setStarInto(this.equation, this.model, corners, sum);
  }

  /** Whether the pieces, with one more of every kind not yet used, cover no more than the folded
   * sphere, and the misfit is one that true readings could have. */
  private fits(level: Level): boolean {
    const n = level.equations;
    if (level.chi2 > n + this.search.gate * Math.sqrt(2 * n) + 10) return false;
    if (level.chi2 > this.best + this.search.window) return false;
    const last = this.prior.size - 1;
    const kappaSd = Math.sqrt(
      Math.max(0, level.belief.covariance[last * (this.prior.size + 1)] as number),
    );
    const kappaOff = Math.abs(level.belief.mean[last] as number);
    if (kappaOff > this.search.kappaReach + this.search.gate * kappaSd) return false;
    const kinds = this.used.length;
    let area = 0;
    const omega = new Float64Array(kinds);
    for (let k = 0; k < kinds; k++) {
      const start = this.model.first[k] as number;
      const end = this.model.first[k + 1] as number;
      let sum = (2 - (end - start)) * Math.PI;
      for (let c = start; c < end; c++) sum += level.angles[c] as number;
      omega[k] = sum;
      if (this.used[k] === 0 && this.search.spareKinds === 0)
        area += sum / Math.max(1, ...this.axesLeft.filter((a) => this.isRegular(k, a)));
    }
    for (let p = 0; p < this.pieceKind.length; p++)
      area += (omega[this.pieceKind[p] as number] as number) / (this.pieceAxis[p] as number);
    return area <= ((2 * TAU) / this.fold.order) * (1.02 + this.search.gate * kappaSd);
  }

  private keep(level: Level): void {
    if (this.axesLeft.length > 0) return;
    if (this.used.filter((n) => n === 0).length > this.search.spareKinds) return;
    const hubAxis = this.mate.map((_, side) =>
      Math.max(1, Math.round(TAU / this.hubRun(side, level).angle)),
    );
    if (!isFoldedSphere(this.fold.order, this.previous, this.mate, hubAxis, this.pieceAxis)) return;
    this.best = Math.min(this.best, level.chi2);
    this.found.push({
      fold: this.fold,
      pieceKind: [...this.pieceKind],
      pieceAxis: [...this.pieceAxis],
      kindSide: [...this.kindSide],
      piece: [...this.piece],
      next: [...this.next],
      mate: [...this.mate],
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

interface Choice {
  /** Side of a piece that is there, or −1. */
  readonly mate: number;
  /** Kind-side of a new piece, or −1. */
  readonly kindSide: number;
  /** Order of the axis through the new piece's middle. */
  readonly axis: number;
  readonly cost: number;
}

interface HubRun {
  readonly closed: boolean;
  readonly angle: number;
  /** Sum of the corners' standard deviations: a bound of the sum's own. */
  readonly sd: number;
  /** Open side at the clockwise end. */
  readonly from: number;
  /** Open side at the anticlockwise end. */
  readonly to: number;
}
