// Grows parts of a sphere in which every kind stands once for each turn about an axis: hub after hub,
// many islands side by side, the best kept. A hub is closed by a whole run of corners at once, or is
// taken to lie on the rim. An island that has gone astray soon finds no run that closes as well as
// readings let true ones, and falls behind; so no search has to go back, however many panels lack.
//
// As each kind is laid once, a piece is its kind and its sides are the kind-sides of the corner model.

import { TAU } from '../math/angle.ts';
import {
  type Belief,
  conditionInto,
  copyBeliefInto,
  innovationOf,
  makeBelief,
  makeEquation,
} from './belief.ts';
import { type CornerModel, cornerModel } from './corner-model.ts';
import { setSeamInto, setStarInto } from './equations.ts';
import type { Fold, FoldedNet } from './fold.ts';
import { priorOf, type SideBelief } from './side-belief.ts';

/** A seam or star further off than this many deviations is none. */
const GATE = 3.8;
/** Together, the seams of one run that closes a hub may cost this much more than they should. */
const MOST_COST = 34;
/** What a linear model may be off at a star, radians (see FoldSearch). */
const NEGLECTED = 2e-5;
/** What it costs to take a hub for one on the rim, and a kind not to be laid: natural logarithms. */
const RIM = 5;
const UNLAID = 4;
/** No missing panel has a sharper corner, radians. */
const LEAST_CORNER = 0.25;
/** Most corners that close a hub, and most ways to close one that are looked at further. */
const MOST_CORNERS = 5;
const MOST_WAYS = 40;
/** Prior deviation of κ / κ₀ about the radius of a start. */
const KAPPA_SD = 0.08;

/** How widely is looked. */
export interface GrowOptions {
  /** Islands kept at each step. */
  readonly width: number;
  /** Told the work done (see FoldSearch); false stops. */
  readonly onWork: (work: number) => boolean;
}

/** A part that has grown as far as it could. */
export interface GrownIsland {
  readonly net: FoldedNet;
  /** Metres; about that of the part. */
  readonly radius: number;
  /** Natural logarithm of how much better it closes than chance. */
  readonly score: number;
  /** Kinds that found no place. */
  readonly unlaid: readonly number[];
}

/** Where islands start: two sides of one panel on the axis, or just one panel. */
export interface IslandSeed {
  readonly radius: number;
  /** Kind-side whose corner lies on the axis, with the side before it glued to it. */
  readonly pole: number | null;
  /** Kind-side of a hub that is closed first where there is no pole. */
  readonly corner: number;
}

interface Island {
  /** Kind-side → the kind-side it is glued to, −1 where it is open. */
  readonly mate: Int16Array;
  /** Kind → whether it is laid. */
  readonly laid: Uint8Array;
  /** Corner → whether its hub is taken to be on the rim. */
  readonly rim: Uint8Array;
  readonly belief: Belief;
  readonly angles: Float64Array;
  readonly sds: Float64Array;
  score: number;
  /** Axes left: hubs at which the corners of an n-th of a turn may close. */
  axes: number;
}

/** The corners around a hub as far as they are glued: see HubRun. */
interface Run {
  readonly angle: number;
  readonly sd: number;
  readonly from: number;
  readonly to: number;
  readonly corners: readonly number[];
  readonly isRim: boolean;
}

/** A way to close a hub. */
interface Way {
  readonly island: Island;
  /** Sides to be glued, in turn; none where the hub is left on the rim. */
  readonly seams: readonly (readonly [number, number])[];
  readonly run: Run;
  readonly gain: number;
}

/** The parts that grow from seeds at one radius, the best first. */
export function growParts(
  readings: SideBelief,
  fold: Fold,
  seeds: readonly IslandSeed[],
  options: GrowOptions,
): GrownIsland[] {
  const radius = seeds[0]?.radius;
  const model = radius === undefined ? null : cornerModel(readings.sides, 1 / radius ** 2);
  if (!model || radius === undefined) return [];
  return new Growth(readings, model, fold, options).from(seeds).map((island) => ({
    radius,
    ...island,
  }));
}

class Growth {
  private readonly meets: readonly (readonly number[])[];
  private readonly equation;
  private readonly gain;
  private readonly work: number;
  private stopped = false;

  constructor(
    private readonly readings: SideBelief,
    private readonly model: CornerModel,
    private readonly fold: Fold,
    private readonly options: GrowOptions,
  ) {
    const size = model.lengths.length + 1;
    this.equation = makeEquation(size);
    this.gain = new Float64Array(size);
    this.work = Math.max(1, (size / 64) ** 2);
    const prior = priorOf(readings, KAPPA_SD);
    this.meets = Array.from(model.lengths, (_, s) =>
      Array.from(model.lengths.keys()).filter((t) => {
        setSeamInto(this.equation, model, s, t);
        const { off, variance } = innovationOf(prior, this.equation);
        return s !== t && off * off <= GATE ** 2 * variance;
      }),
    );
  }

  from(seeds: readonly IslandSeed[]): Omit<GrownIsland, 'radius'>[] {
    let beam = seeds.flatMap((seed) => this.planted(seed) ?? []);
    const done: Island[] = [];
    while (beam.length > 0 && !this.stopped) {
      const ways: Way[] = [];
      for (const island of beam) {
        const run = this.openHub(island);
        if (run) ways.push(...this.waysOf(island, run));
        else done.push(island);
        if (!this.options.onWork(this.work)) this.stopped = true;
      }
      ways.sort((a, b) => b.island.score + b.gain - a.island.score - a.gain);
      beam = this.taken(ways);
    }
    return done.map((island) => this.grown(island)).sort((a, b) => b.score - a.score);
  }

  private planted({ pole, corner }: IslandSeed): Island | null {
    const { model } = this;
    const sides = model.lengths.length;
    const island: Island = {
      mate: new Int16Array(sides).fill(-1),
      laid: new Uint8Array(model.first.length - 1),
      rim: new Uint8Array(sides),
      belief: priorOf(this.readings, KAPPA_SD),
      angles: new Float64Array(sides),
      sds: new Float64Array(sides),
      score: 0,
      axes: this.fold.axes.length,
    };
    island.laid[model.kindOf[pole ?? corner] as number] = 1;
    this.refresh(island);
    if (pole === null) return island;
    return this.glued(island, [[pole, model.before[pole] as number]], [pole]) ? island : null;
  }

  /** The best ways carried out, so many as stand. */
  private taken(ways: readonly Way[]): Island[] {
    const beam: Island[] = [];
    const seen = new Set<string>();
    for (const { island, seams, run } of ways) {
      if (beam.length >= this.options.width || this.stopped) break;
      const next = copyOf(island);
      if (seams.length === 0) {
        for (const corner of run.corners) next.rim[corner] = 1;
        next.score -= RIM;
      } else {
        if (!this.glued(next, seams, [run.from])) continue;
      }
      if (!this.options.onWork(seams.length * this.work)) this.stopped = true;
      const key = `${next.mate.join()};${next.rim.join('')}`;
      if (seen.has(key)) continue;
      seen.add(key);
      beam.push(next);
    }
    return beam;
  }

  /** Glues seams and learns from them and from the hub that they close; false where it does not. */
  private glued(
    island: Island,
    seams: readonly (readonly [number, number])[],
    hubs: readonly number[],
  ): boolean {
    const { mate, laid } = island;
    for (const [a, b] of seams) {
      if ((mate[a] as number) >= 0 || (mate[b] as number) >= 0) return false;
      mate[a] = b;
      mate[b] = a;
      laid[this.model.kindOf[a] as number] = 1;
      laid[this.model.kindOf[b] as number] = 1;
    }
    for (const [a, b] of seams) {
      setSeamInto(this.equation, this.model, a, b);
      if (!this.take(island, 0)) return false;
    }
    const stars = new Map<number, number[]>();
    for (const side of [...hubs, ...seams.flat()]) {
      const star = this.starAt(island, side);
      if (star) stars.set(Math.min(...star), star);
    }
    for (const star of stars.values()) if (!this.closes(island, star)) return false;
    this.refresh(island);
    return this.runsStand(island, seams);
  }

  /** Whether every open hub that the seams touch still has room for a corner. */
  private runsStand(island: Island, seams: readonly (readonly [number, number])[]): boolean {
    for (const [a, b] of seams)
      for (const side of [a, b, this.model.after[a] as number, this.model.after[b] as number]) {
        const run = this.runAround(island, side);
        if (run && TAU - run.angle < LEAST_CORNER - GATE * run.sd) return false;
      }
    return true;
  }

  /** The closed star at the hub where a side starts; null where it is open. */
  private starAt({ mate }: Island, side: number): number[] | null {
    const star: number[] = [];
    let corner = side;
    do {
      star.push(corner);
      corner = mate[this.model.before[corner] as number] as number;
    } while (corner >= 0 && corner !== side);
    return corner < 0 ? null : star;
  }

  private closes(island: Island, star: readonly number[]): boolean {
    const angle = star.reduce((sum, c) => sum + (island.angles[c] as number), 0);
    const onAxis = island.axes > 0 && this.isAxis(angle);
    if (onAxis) island.axes--;
    const sum = onAxis ? TAU / this.fold.order : TAU;
    setStarInto(this.equation, this.model, star, sum);
    return this.take(island, NEGLECTED ** 2);
  }

  private isAxis = (angle: number): boolean =>
    this.fold.order > 1 && Math.abs(angle - TAU / this.fold.order) < Math.abs(angle - TAU);

  /** Conditions the island on the present equation; false where it is too far off. */
  private take(island: Island, neglected: number): boolean {
    const { off, variance: own } = innovationOf(island.belief, this.equation);
    const variance = own + neglected;
    const z2 = (off * off) / Math.max(variance, 1e-12);
    if (z2 > (GATE + 0.7) ** 2) return false;
    if (own < 1e-10) return true;
    conditionInto(island.belief, this.equation, { off, variance }, this.gain);
    island.score += (1 - z2) / 2;
    return true;
  }

  /** Corner angles and deviations, at first those that the readings give. */
  private refresh(island: Island): void {
    const { model } = this;
    const { mean, covariance, size } = island.belief;
    const last = size - 1;
    for (let c = 0; c < last; c++) {
      const kind = model.kindOf[c] as number;
      const start = model.first[kind] as number;
      const n = (model.first[kind + 1] as number) - start;
      const at = model.slopeStart[c] as number;
      const byKappa = model.kappaSlopes[c] as number;
      let angle = (model.angles[c] as number) + byKappa * (mean[last] as number);
      let variance = byKappa ** 2 * (covariance[last * size + last] as number);
      for (let i = 0; i < n; i++) {
        const a = model.slopes[at + i] as number;
        angle += a * (mean[start + i] as number);
        variance += 2 * a * byKappa * (covariance[(start + i) * size + last] as number);
        for (let j = 0; j < n; j++)
          variance +=
            a *
            (model.slopes[at + j] as number) *
            (covariance[(start + i) * size + start + j] as number);
      }
      island.angles[c] = angle;
      island.sds[c] = Math.sqrt(Math.max(0, variance));
    }
  }

  /** The run of an open side, from it on anticlockwise. */
  private runFrom({ mate, rim, angles, sds }: Island, from: number): Run {
    const corners: number[] = [];
    let [angle, sd, isRim] = [0, 0, false];
    let corner = from;
    for (;;) {
      corners.push(corner);
      angle += angles[corner] as number;
      sd += sds[corner] as number;
      if (rim[corner]) isRim = true;
      const to = this.model.before[corner] as number;
      const across = mate[to] as number;
      if (across < 0) return { angle, sd, from, to, corners, isRim };
      corner = across;
    }
  }

  /** The open run at the hub where a side starts; null where the hub is closed. */
  private runAround(island: Island, side: number): Run | null {
    let from = side;
    while ((island.mate[from] as number) >= 0) {
      from = this.model.after[island.mate[from] as number] as number;
      if (from === side) return null;
    }
    return this.runFrom(island, from);
  }

  /** The open hub nearest to closing that is not on the rim. */
  private openHub(island: Island): Run | null {
    let best: Run | null = null;
    island.mate.forEach((mate, side) => {
      if (mate >= 0 || !island.laid[this.model.kindOf[side] as number]) return;
      const run = this.runFrom(island, side);
      if (!run.isRim && run.angle > (best?.angle ?? 0)) best = run;
    });
    return best;
  }

  /** All ways to go on at a hub, the best first. */
  private waysOf(island: Island, run: Run): Way[] {
    const ways: Way[] = [];
    const { mate } = island;
    const seams: [number, number][] = [];
    const start = run.corners[0] as number;
    let looked = 0;
    const fill = (now: Run, cost: number): void => {
      looked++;
      for (const c of this.meets[now.to] as readonly number[]) {
        if ((mate[c] as number) >= 0) continue;
        const z2 = this.seamZ2(island, now.to, c);
        if (z2 > GATE ** 2 || cost + z2 > MOST_COST) continue;
        mate[now.to] = c;
        mate[c] = now.to;
        seams.push([now.to, c]);
        const next = this.runAround(island, start);
        if (!next) this.addWay(ways, island, run, seams, cost + z2);
        else if (!next.isRim && next.angle < TAU + GATE * next.sd && seams.length <= MOST_CORNERS)
          fill(next, cost + z2);
        seams.pop();
        mate[now.to] = -1;
        mate[c] = -1;
      }
    };
    fill(run, 0);
    if (!this.options.onWork((this.work * looked) / 100)) this.stopped = true;
    ways.sort((a, b) => b.gain - a.gain);
    return [...ways.slice(0, MOST_WAYS), { island, seams: [], run, gain: -RIM }];
  }

  /** Keeps a way whose seams, glued now, close the hub, where its angles say so. */
  private addWay(
    ways: Way[],
    island: Island,
    run: Run,
    seams: readonly (readonly [number, number])[],
    cost: number,
  ): void {
    const star = this.starAt(island, run.corners[0] as number) as number[];
    const angle = star.reduce((sum, c) => sum + (island.angles[c] as number), 0);
    const onAxis = island.axes > 0 && this.isAxis(angle);
    setStarInto(this.equation, this.model, star, onAxis ? TAU / this.fold.order : TAU);
    const { off, variance } = innovationOf(island.belief, this.equation);
    const z2 = (off * off) / (variance + NEGLECTED ** 2);
    if (z2 > GATE ** 2) return;
    const gain = (seams.length + 1 - cost - z2) / 2;
    ways.push({ island, seams: [...seams], run, gain });
  }

  private seamZ2({ belief }: Island, a: number, b: number): number {
    if (a === b) return Number.POSITIVE_INFINITY;
    const { mean, covariance, size } = belief;
    const off =
      (this.model.lengths[a] as number) +
      (mean[a] as number) -
      (this.model.lengths[b] as number) -
      (mean[b] as number);
    const variance =
      (covariance[a * (size + 1)] as number) +
      (covariance[b * (size + 1)] as number) -
      2 * (covariance[a * size + b] as number);
    return (off * off) / Math.max(variance, 1e-10);
  }

  private grown(island: Island): Omit<GrownIsland, 'radius'> {
    const { model } = this;
    const kinds = [...island.laid.keys()].filter((k) => island.laid[k]);
    const sides = kinds.flatMap((k) =>
      range(model.first[k] as number, model.first[k + 1] as number),
    );
    const at = new Map(sides.map((s, i) => [s, i]));
    const index = (s: number): number => at.get(s) as number;
    const unlaid = [...island.laid.keys()].filter((k) => !island.laid[k]);
    const net: FoldedNet = {
      fold: this.fold,
      pieceKind: kinds,
      pieceAxis: kinds.map(() => 1),
      kindSide: sides,
      piece: sides.map((s) => kinds.indexOf(model.kindOf[s] as number)),
      next: sides.map((s) => index(model.after[s] as number)),
      mate: sides.map((s) =>
        (island.mate[s] as number) < 0 ? -1 : index(island.mate[s] as number),
      ),
      hubAxis: sides.map((s) => {
        const star = this.starAt(island, s);
        const angle = star?.reduce((sum, c) => sum + (island.angles[c] as number), 0) ?? TAU;
        return this.isAxis(angle) ? this.fold.order : 1;
      }),
      chi2: 0,
      equations: 0,
    };
    return { net, score: island.score - UNLAID * unlaid.length, unlaid };
  }
}

function copyOf(island: Island): Island {
  const belief = makeBelief(island.belief.size);
  copyBeliefInto(island.belief, belief);
  return {
    ...island,
    mate: island.mate.slice(),
    laid: island.laid.slice(),
    rim: island.rim.slice(),
    belief,
    angles: island.angles.slice(),
    sds: island.sds.slice(),
  };
}

const range = (from: number, to: number): number[] =>
  Array.from({ length: to - from }, (_, i) => from + i);
