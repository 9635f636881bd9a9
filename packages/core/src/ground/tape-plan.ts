// Setting out with two tapes: which pegs they swing from, in which order, and how far each stake can
// be off. A stake stands where two tapes cross. Errors are carried on with their correlations: a
// stake set from other stakes inherits what those are off (linear propagation, as in any text on
// survey adjustment), so that the plan never walks round the ring chord by chord.
//
//   centre ●─────────── tape 1 ───────────╮
//                                         ✕ stake: left or right of the line from the first
//   datum  ●─────────── tape 2 ───────────╯        peg to the second, looking from the first

import { assertNumber } from '../math/doors.ts';
import { type Base, type PlanPoint, planDistance } from './base.ts';
import {
  CHECK_SDS,
  CROSSING,
  DATUM_CLEAR,
  SAME_SD,
  STAKE_AIM,
  TAPE_LENGTH,
  TAPE_SD,
} from './tolerances.ts';

/** What a tape is hooked on: the centre peg, the datum peg, or the stake of a base hub by number. */
export type Peg = 'centre' | 'datum' | number;

/** One stake to set. */
export interface TapeStake {
  /** Number of the base hub. */
  readonly hub: number;
  /** Level lengths of the two tapes, metres, in the order of the round's pegs. */
  readonly lengths: readonly [number, number];
  /** On which side of the line from the first peg to the second, looking from the first. */
  readonly side: 'left' | 'right';
  /** Angle between the tapes at the stake, radians, 0 to π. */
  readonly crossing: number;
  /** Standard deviation of the stake in its worst direction, metres. */
  readonly sd: number;
}

/** Stakes set without moving the tapes' hooks. */
export interface TapeRound {
  readonly pegs: readonly [Peg, Peg];
  readonly stakes: readonly TapeStake[];
}

/** A distance to measure once the stakes stand. */
export interface TapeCheck {
  readonly from: Peg;
  readonly to: Peg;
  /** `again`: a tape that set the stake, to be read once more by someone else. */
  readonly what: 'chord' | 'diagonal' | 'radius' | 'again';
  /** Level distance, metres. */
  readonly length: number;
  /** May differ by so much, metres: three standard deviations of the difference. */
  readonly allowed: number;
}

/** Setting out by tape alone. */
export interface TapePlan {
  /** Distance of the datum peg from the centre along the datum line, metres. */
  readonly datum: number;
  /** Standard deviation of one tape reading that it was reckoned with, metres. */
  readonly tapeSd: number;
  readonly rounds: readonly TapeRound[];
  /** Chords round the ring, diagonals through it and radii that set no stake. */
  readonly checks: readonly TapeCheck[];
  /** Hubs that no two tapes reach, by number: the tape is too short. */
  readonly unreached: readonly number[];
}

/** Options of `tapePlan`; lengths in metres. */
export interface TapeOptions {
  /** Standard deviation of one tape reading; 2 mm unless told (common practice, no source). */
  readonly tapeSd?: number;
  /** Longest pull; 30 m unless told. */
  readonly tapeLength?: number;
  /** Distance of the datum peg; 1 m outside the ring unless told. */
  readonly datum?: number;
}

/** Which tapes swing from which pegs. In each round the pair of pegs is taken that sets most of the
 * stakes left within twice the tape's deviation (ties: the more exact, then the earlier set);
 * where no pair does, the most exact stake of all is set alone. RangeError for an option that is
 * no length. */
export function tapePlan(base: Base, options: TapeOptions = {}): TapePlan {
  const sd = options.tapeSd ?? TAPE_SD;
  const reach = options.tapeLength ?? TAPE_LENGTH;
  const outer = Math.max(...base.hubs.map((hub) => hub.radius));
  const datum = options.datum ?? outer + DATUM_CLEAR;
  assertNumber('tapeSd', sd, 1e-6);
  assertNumber('tapeLength', reach, 0);
  assertNumber('datum', datum, 1e-3);
  const field = new Field(base, datum, sd, reach);
  const rounds: TapeRound[] = [];
  for (let left = base.hubs.map((hub) => hub.number); left.length > 0; ) {
    const round = field.bestRound(left);
    if (round === null)
      return { datum, tapeSd: sd, rounds, checks: checksOf(base, field), unreached: left };
    for (const stake of round.stakes) field.set(round.pegs, stake);
    const done = new Set(round.stakes.map((stake) => stake.hub));
    left = left.filter((hub) => !done.has(hub));
    rounds.push(round);
  }
  return { datum, tapeSd: sd, rounds, checks: checksOf(base, field), unreached: [] };
}

/** Chords of neighbours and, from each hub, the diagonal to the farthest; none that set a stake.
 * Where those of a hub all point nearly the same way, the measure that crosses them best is added,
 * and where none does, the two tapes that set it, to be read again by someone else: so no slip of
 * a stake goes unseen. */
function checksOf(base: Base, field: Field): TapeCheck[] {
  const n = base.hubs.length;
  const found: TapeCheck[] = [];
  const add = (from: Peg, to: Peg, what: TapeCheck['what']): void => {
    const known = found.some((c) => pairOf(c.from, c.to) === pairOf(from, to));
    if (known || !field.isSet(from) || !field.isSet(to)) return;
    found.push({ from, to, what, ...field.measure(from, to) });
  };
  const addFresh = (a: number, b: number, what: TapeCheck['what']): void => {
    if (!field.taped(a, b)) add(Math.min(a, b), Math.max(a, b), what);
  };
  for (const { number } of base.hubs) addFresh(number, (number % n) + 1, 'chord');
  for (const { number, at } of base.hubs) addFresh(number, farthest(base, at), 'diagonal');
  const pegs: Peg[] = ['centre', ...base.hubs.map((hub) => hub.number)];
  for (const { number } of base.hubs.filter((hub) => field.isSet(hub.number))) {
    const lines = found
      .filter((c) => c.from === number || c.to === number)
      .map((c) => field.direction(number, c.from === number ? c.to : c.from));
    if (lines.some((u) => lines.some((v) => sine(u, v) >= CROSSING))) continue;
    const across = pegs.filter(
      (peg) =>
        peg !== number &&
        field.isSet(peg) &&
        !field.taped(number, peg) &&
        lines.some((u) => sine(u, field.direction(number, peg)) >= CROSSING),
    );
    const best = across.sort(
      (p, q) =>
        sineMost(lines, field.direction(number, q)) - sineMost(lines, field.direction(number, p)),
    )[0];
    if (best !== undefined) add(best, number, best === 'centre' ? 'radius' : 'diagonal');
    else for (const peg of field.setFrom(number)) add(peg, number, 'again');
  }
  return found;
}

/** Number of the hub farthest from a point; the lowest of several. */
function farthest(base: Base, at: PlanPoint): number {
  return base.hubs.reduce((best, b) =>
    planDistance(at, b.at) > planDistance(at, best.at) * (1 + SAME_SD) ? b : best,
  ).number;
}

const sineMost = (lines: readonly PlanPoint[], v: PlanPoint): number =>
  Math.max(...lines.map((u) => sine(u, v)));

const pairOf = (a: Peg, b: Peg): string => [String(a), String(b)].sort().join(' ');

const sine = (u: PlanPoint, v: PlanPoint): number => Math.abs(u[0] * v[1] - u[1] * v[0]);

/** The pegs set so far and the covariances of where they stand. The centre and the datum's
 * direction are right by definition; the datum's distance is as good as one tape. */
class Field {
  private readonly names: Peg[] = ['centre', 'datum'];
  private readonly at: PlanPoint[];
  /** Covariance of pegs a and b: 2 × 2, row-major, at `cov[a][b]`, square metres. */
  private readonly cov: number[][][];
  private readonly from = new Map<Peg, readonly [Peg, Peg]>();

  constructor(
    private readonly base: Base,
    datum: number,
    private readonly sd: number,
    private readonly reach: number,
  ) {
    this.at = [
      [0, 0],
      [datum, 0],
    ];
    const none = [0, 0, 0, 0];
    this.cov = [
      [none, none],
      [none, [sd * sd, 0, 0, 0]],
    ];
  }

  isSet(peg: Peg): boolean {
    return this.names.includes(peg);
  }

  taped(a: Peg, b: Peg): boolean {
    return this.setFrom(a).includes(b) || this.setFrom(b).includes(a);
  }

  /** The two pegs that a stake was set from; none for the centre and the datum. */
  setFrom(peg: Peg): readonly Peg[] {
    return this.from.get(peg) ?? [];
  }

  /** Unit vector from one set peg to another. */
  direction(from: Peg, to: Peg): PlanPoint {
    const [a, b] = [this.names.indexOf(from), this.names.indexOf(to)];
    return direction(this.at[a] as PlanPoint, this.at[b] as PlanPoint);
  }

  /** Distance between two set pegs and how much a tape between them may differ, metres. */
  measure(from: Peg, to: Peg): { length: number; allowed: number } {
    const [a, b] = [this.names.indexOf(from), this.names.indexOf(to)];
    const [p, q] = [this.at[a] as PlanPoint, this.at[b] as PlanPoint];
    const u = direction(p, q);
    const variance =
      through(u, this.block(a, a), u) +
      through(u, this.block(b, b), u) -
      2 * through(u, this.block(a, b), u) +
      this.sd ** 2;
    return { length: planDistance(p, q), allowed: CHECK_SDS * Math.sqrt(variance) };
  }

  /** The next round, or null where no stake can be reached. */
  bestRound(left: readonly number[]): TapeRound | null {
    let best: TapeRound | null = null;
    let single: TapeRound | null = null;
    for (let a = 0; a < this.names.length; a++)
      for (let b = a + 1; b < this.names.length; b++) {
        const all = left.flatMap((hub) => this.stake(a, b, hub) ?? []);
        const pegs = [this.names[a] as Peg, this.names[b] as Peg] as const;
        const stakes = all.filter((stake) => stake.sd <= STAKE_AIM * this.sd);
        if (stakes.length > 0 && betterRound({ pegs, stakes }, best)) best = { pegs, stakes };
        for (const stake of all)
          if (betterRound({ pegs, stakes: [stake] }, single)) single = { pegs, stakes: [stake] };
      }
    return best ?? single;
  }

  /** Adds a stake to the pegs. */
  set(pegs: readonly [Peg, Peg], stake: TapeStake): void {
    const [a, b] = pegs.map((peg) => this.names.indexOf(peg)) as [number, number];
    const at = this.plan(stake.hub);
    const { inverse, own } = this.crossing(a, b, at);
    const cross = this.names.map((_, q) => {
      const ua = direction(this.at[a] as PlanPoint, at);
      const ub = direction(this.at[b] as PlanPoint, at);
      return times(inverse, [...rowTimes(ua, this.block(a, q)), ...rowTimes(ub, this.block(b, q))]);
    });
    this.names.push(stake.hub);
    this.at.push(at);
    this.cov.forEach((row, q) => {
      const [xx, xy, yx, yy] = cross[q] as [number, number, number, number];
      row.push([xx, yx, xy, yy]);
    });
    this.cov.push([...cross, own]);
    this.from.set(stake.hub, pegs);
  }

  private plan(hub: number): PlanPoint {
    return (this.base.hubs[hub - 1] as Base['hubs'][number]).at;
  }

  private block(a: number, b: number): number[] {
    return (this.cov[a] as number[][])[b] as number[];
  }

  private stake(a: number, b: number, hub: number): TapeStake | null {
    const at = this.plan(hub);
    const [p, q] = [this.at[a] as PlanPoint, this.at[b] as PlanPoint];
    const lengths = [planDistance(p, at), planDistance(q, at)] as const;
    if (Math.max(...lengths) > this.reach || Math.min(...lengths) === 0) return null;
    const turn = (q[0] - p[0]) * (at[1] - p[1]) - (q[1] - p[1]) * (at[0] - p[0]);
    const { own, crossing } = this.crossing(a, b, at);
    const sd = Math.sqrt(largest(own));
    if (!Number.isFinite(sd)) return null;
    return { hub, lengths, side: turn > 0 ? 'left' : 'right', crossing, sd };
  }

  /** The covariance of a point where tapes from pegs a and b cross. */
  private crossing(a: number, b: number, at: PlanPoint) {
    const ua = direction(this.at[a] as PlanPoint, at);
    const ub = direction(this.at[b] as PlanPoint, at);
    const turn = ua[0] * ub[1] - ua[1] * ub[0];
    const inverse = [ub[1] / turn, -ua[1] / turn, -ub[0] / turn, ua[0] / turn];
    const both = through(ua, this.block(a, b), ub);
    const tapes = [
      through(ua, this.block(a, a), ua) + this.sd ** 2,
      both,
      both,
      through(ub, this.block(b, b), ub) + this.sd ** 2,
    ];
    const own = times(times(inverse, tapes), transposed(inverse));
    const crossing = Math.atan2(Math.abs(turn), ua[0] * ub[0] + ua[1] * ub[1]);
    return { inverse, own, crossing };
  }
}

function betterRound(round: TapeRound, than: TapeRound | null): boolean {
  if (than === null) return true;
  const more = round.stakes.length - than.stakes.length;
  if (more !== 0) return more > 0;
  return worst(round) < worst(than) * (1 - SAME_SD);
}

const worst = ({ stakes }: TapeRound): number => Math.max(...stakes.map((stake) => stake.sd));

function direction(from: PlanPoint, to: PlanPoint): PlanPoint {
  const length = planDistance(from, to);
  return [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
}

const rowTimes = (u: PlanPoint, m: readonly number[]): [number, number] => [
  u[0] * (m[0] as number) + u[1] * (m[2] as number),
  u[0] * (m[1] as number) + u[1] * (m[3] as number),
];

const through = (u: PlanPoint, m: readonly number[], v: PlanPoint): number => {
  const [x, y] = rowTimes(u, m);
  return x * v[0] + y * v[1];
};

function times(m: readonly number[], n: readonly number[]): number[] {
  const [a, b, c, d] = m as [number, number, number, number];
  const [e, f, g, h] = n as [number, number, number, number];
  return [a * e + b * g, a * f + b * h, c * e + d * g, c * f + d * h];
}

const transposed = ([a, b, c, d]: readonly number[]): number[] => [a, c, b, d] as number[];

/** The larger eigenvalue of a symmetric 2 × 2 matrix. */
function largest([a, b, , d]: readonly number[]): number {
  const [x, y, z] = [a as number, b as number, d as number];
  return (x + z) / 2 + Math.hypot((x - z) / 2, y);
}
