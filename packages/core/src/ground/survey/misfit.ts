// What a base out of true does to the courses above. Panels are stiff plates. Each moves a little as
// a body (three shifts, three turns); at the two ends of every seam the two panels that meet part by
// what they moved differently, and a seam also opens or closes like a hinge. The movements are those
// that make the squares of all of it least, less what the bolts' play in their holes takes up:
//
//   minimise  Σ seam ends |d − p|² + Σ hinges (g − q)²,   |p| ≤ slack, |q| ≤ gap
//
// d: parting at a seam end, g: flange depth × change of the angle between the panels. Panels and
// play are found in turn: the matrix stays, so that one sparse factor serves all rounds (projection
// on the play is convex, the sum never grows), sped up as by Y. Nesterov (1983) with restarts.
// The ends of the base ring's sides part from the base hubs as they stand. First order: hubs are off
// by millimetres on metres.

import { factorize } from '../../math/sparse/factor.ts';
import { solve } from '../../math/sparse/solve.ts';
import { symbolicFactor } from '../../math/sparse/symbolic.ts';
import {
  addBlockInto,
  cliquesOf,
  patternOfCliques,
  type SymmetricMatrix,
} from '../../math/sparse/symmetric.ts';
import { cross, type Vec3 } from '../../math/vector.ts';
import { endHubAt, hubPoint, placeCentre } from '../../shell/geometry.ts';
import type { HubId, PlaceId, SideId } from '../../shell/ids.ts';
import { baseRing } from '../../shell/rims.ts';
import { hubAt, placeCount, type Shell, seamCount } from '../../shell/shell.ts';

/** Play at the seams, metres. */
export interface SeamPlay {
  /** How far two panels may part at a seam end: hole less bolt. */
  readonly slack: number;
  /** How far a seam may gape at the foot of its flanges before its bolts draw it shut. */
  readonly gap: number;
  /** Depth of the flanges. */
  readonly depth: number;
}

/** 1.5 mm of play, gaps to 2 mm, flanges 50 mm deep: common practice, no source. */
export const commonPlay: SeamPlay = { slack: 0.0015, gap: 0.002, depth: 0.05 };

/** What one seam, or one side of the base ring, has to take; metres. */
export interface SeamMisfit {
  /** The side; of a seam the lower of its two. */
  readonly side: SideId;
  /** The panels part by this much at its worse end before the play helps: where the misfit comes
   * from. */
  readonly part: number;
  /** What is left beyond the play once every seam gives what it can. */
  readonly left: number;
  /** The seam gapes by this much at the foot of its flanges, before the play; 0 at the base. */
  readonly gape: number;
}

/** The misfits above a base. */
export interface Misfits {
  readonly seams: readonly SeamMisfit[];
  /** Largest of `part`, `left` and `gape`, metres. */
  readonly part: number;
  readonly left: number;
  readonly gape: number;
  /** Rounds taken; 0 where the play takes up all that a first solution asks. */
  readonly rounds: number;
}

/** Options of `seamMisfits`. */
export interface MisfitOptions {
  /** Places left out on purpose: they hold nothing together. */
  readonly leftOut?: ReadonlySet<number>;
  /** Most rounds of panels and play; 200 unless told. */
  readonly rounds?: number;
}

/** The system of a shell, to be solved for any base. */
export interface MisfitSystem {
  /** Misfits where base hubs stand off their plan by `off` (hub of the shell → metres, frame of the
   * shell); hubs that are not named stand as planned. */
  readonly misfits: (off: ReadonlyMap<HubId, Vec3>) => Misfits;
  /** Sum of squares of all misfits before any play, m²: what ranks one base against another. */
  readonly strain: (off: ReadonlyMap<HubId, Vec3>) => number;
}

/** One row: coefficients by unknown, and what base hub it takes away along which direction. */
interface Row {
  readonly unknowns: readonly number[];
  readonly coefficients: readonly number[];
  readonly base: { readonly hub: HubId; readonly axis: number } | null;
}

/** Rows of one seam: two ends of three rows each, and the hinge where there is one. */
interface SeamRows {
  readonly side: SideId;
  readonly first: number;
  readonly hinged: boolean;
}

/** Rounds end when no row changes by more, metres. */
const SETTLED = 1e-7;

/** The system of a shell that stands on its base ring; throws where the shell has none. */
export function misfitSystem(
  shell: Shell,
  play: SeamPlay = commonPlay,
  options: MisfitOptions = {},
): MisfitSystem {
  const { rows, seams, unknowns } = rowsOf(shell, play.depth, options.leftOut ?? new Set());
  const matrix = normalMatrix(rows, unknowns);
  const factor = factorize(symbolicFactor(matrix), matrix);
  if (factor.weak.length > 0) throw new Error('a place that nothing holds to the base');
  const solved = (target: Float64Array): Float64Array => {
    const right = new Float64Array(unknowns);
    rows.forEach(({ unknowns: at, coefficients }, r) => {
      at.forEach((i, k) => {
        right[i] = (right[i] as number) + (coefficients[k] as number) * (target[r] as number);
      });
    });
    const x = solve(factor, right);
    return Float64Array.from(rows, ({ unknowns: at, coefficients }) =>
      at.reduce((sum, i, k) => sum + (coefficients[k] as number) * (x[i] as number), 0),
    );
  };
  const groundOf = (off: ReadonlyMap<HubId, Vec3>): Float64Array =>
    Float64Array.from(rows, ({ base }) =>
      base === null ? 0 : (off.get(base.hub)?.[base.axis as 0 | 1 | 2] ?? 0),
    );
  /** Rows' values for play p taken out: A x − ground, with x best for A x = ground + p. */
  const parted = (ground: Float64Array, taken: Float64Array): Float64Array => {
    const fit = solved(ground.map((g, r) => g + (taken[r] as number)));
    return fit.map((value, r) => value - (ground[r] as number));
  };
  return {
    strain: (off) => {
      const ground = groundOf(off);
      return parted(ground, new Float64Array(rows.length)).reduce((sum, d) => sum + d * d, 0);
    },
    misfits: (off) => {
      const ground = groundOf(off);
      let taken = new Float64Array(rows.length);
      let ahead = taken;
      let momentum = 1;
      let rounds = 0;
      const plain = parted(ground, taken);
      let d = plain;
      for (; rounds < (options.rounds ?? 200); rounds++) {
        const next = project(d, seams, play);
        const change = next.reduce(
          (most, p, r) => Math.max(most, Math.abs(p - (ahead[r] as number))),
          0,
        );
        if (rounds === 0 && withinPlay(d, seams, play)) break;
        const back = next.reduce(
          (sum, p, r) => sum + ((ahead[r] as number) - p) * (p - (taken[r] as number)),
          0,
        );
        const grown = back > 0 ? 1 : (1 + Math.sqrt(1 + 4 * momentum * momentum)) / 2;
        const carry = back > 0 ? 0 : (momentum - 1) / grown;
        ahead = next.map((p, r) => p + carry * (p - (taken[r] as number)));
        taken = next;
        momentum = grown;
        d = parted(ground, ahead);
        if (change < SETTLED) break;
      }
      return summed(plain, d, seams, play, rounds);
    },
  };
}

/** Misfits of one base at once. */
export const seamMisfits = (
  shell: Shell,
  off: ReadonlyMap<HubId, Vec3>,
  play: SeamPlay = commonPlay,
  options: MisfitOptions = {},
): Misfits => misfitSystem(shell, play, options).misfits(off);

function rowsOf(
  shell: Shell,
  depth: number,
  leftOut: ReadonlySet<number>,
): { rows: Row[]; seams: SeamRows[]; unknowns: number } {
  const ring = baseRing(shell);
  if (ring === null) throw new Error('a closed shell has no base');
  const column = new Int32Array(placeCount(shell)).fill(-1);
  let unknowns = 0;
  for (let p = 0; p < placeCount(shell); p++)
    if (!leftOut.has(p)) {
      column[p] = unknowns;
      unknowns += 6;
    }
  const centres = Array.from(column, (_, p) => placeCentre(shell, p as PlaceId));
  /** Movement of a point of a panel along one axis: shift, and turn × arm. */
  const along = (place: number, at: Vec3, axis: 0 | 1 | 2, sign: number) => {
    const first = column[place] as number;
    const c = centres[place] as Vec3;
    const arm: Vec3 = [at[0] - c[0], at[1] - c[1], at[2] - c[2]];
    const unit: Vec3 = [axis === 0 ? 1 : 0, axis === 1 ? 1 : 0, axis === 2 ? 1 : 0];
    const turn = cross(arm, unit);
    return {
      unknowns: [first + axis, first + 3, first + 4, first + 5],
      coefficients: [sign, sign * turn[0], sign * turn[1], sign * turn[2]],
    };
  };
  const rows: Row[] = [];
  const seams: SeamRows[] = [];
  const axes = [0, 1, 2] as const;
  for (let m = 0; m < seamCount(shell); m++) {
    const [side, mate] = [shell.seams[2 * m] as SideId, shell.seams[2 * m + 1] as SideId];
    const [p, q] = [shell.sidePlace[side] as number, shell.sidePlace[mate] as number];
    if (leftOut.has(p) || leftOut.has(q)) continue;
    seams.push({ side, first: rows.length, hinged: true });
    const ends = [hubPoint(shell, hubAt(shell, side)), hubPoint(shell, endHubAt(shell, side))];
    for (const end of ends)
      for (const axis of axes) {
        const [a, b] = [along(p, end, axis, 1), along(q, end, axis, -1)];
        rows.push({
          unknowns: [...a.unknowns, ...b.unknowns],
          coefficients: [...a.coefficients, ...b.coefficients],
          base: null,
        });
      }
    const [from, to] = ends as [Vec3, Vec3];
    const line = axes.map((i) => to[i] - from[i]);
    const length = Math.hypot(...line);
    const hinge = line.map((d) => (depth * d) / length);
    const turns = (place: number): number[] => axes.map((i) => (column[place] as number) + 3 + i);
    rows.push({
      unknowns: [...turns(p), ...turns(q)],
      coefficients: [...hinge, ...hinge.map((h) => -h)],
      base: null,
    });
  }
  for (const side of ring.sides) {
    const place = shell.sidePlace[side] as number;
    if (leftOut.has(place)) continue;
    seams.push({ side, first: rows.length, hinged: false });
    for (const hub of [hubAt(shell, side), endHubAt(shell, side)])
      for (const axis of axes)
        rows.push({ ...along(place, hubPoint(shell, hub), axis, 1), base: { hub, axis } });
  }
  return { rows, seams, unknowns };
}

function normalMatrix(rows: readonly Row[], unknowns: number): SymmetricMatrix {
  const pattern = patternOfCliques(unknowns, cliquesOf(rows.map((row) => row.unknowns)));
  const value = new Float64Array(pattern.row.length);
  for (const { unknowns: at, coefficients: c } of rows)
    addBlockInto(
      value,
      pattern,
      at,
      c.flatMap((a) => c.map((b) => a * b)),
    );
  return { ...pattern, value };
}

const endLength = (d: Float64Array, first: number): number =>
  Math.hypot(d[first] as number, d[first + 1] as number, d[first + 2] as number);

/** What of each row the play can take up. */
function project(
  d: Float64Array,
  seams: readonly SeamRows[],
  play: SeamPlay,
): Float64Array<ArrayBuffer> {
  const taken = new Float64Array(d.length);
  for (const { first, hinged } of seams) {
    for (const end of [first, first + 3]) {
      const share = Math.min(1, play.slack / endLength(d, end) || 0);
      for (let i = end; i < end + 3; i++) taken[i] = (d[i] as number) * share;
    }
    if (hinged) taken[first + 6] = Math.max(-play.gap, Math.min(play.gap, d[first + 6] as number));
  }
  return taken;
}

const withinPlay = (d: Float64Array, seams: readonly SeamRows[], play: SeamPlay): boolean =>
  seams.every(
    ({ first, hinged }) =>
      Math.max(endLength(d, first), endLength(d, first + 3)) <= play.slack &&
      (!hinged || Math.abs(d[first + 6] as number) <= play.gap),
  );

function summed(
  plain: Float64Array,
  settled: Float64Array,
  seams: readonly SeamRows[],
  play: SeamPlay,
  rounds: number,
): Misfits {
  const worse = (d: Float64Array, first: number): number =>
    Math.max(endLength(d, first), endLength(d, first + 3));
  const found = seams.map(
    ({ side, first, hinged }): SeamMisfit => ({
      side,
      part: worse(plain, first),
      left: Math.max(0, worse(settled, first) - play.slack),
      gape: hinged ? Math.abs(plain[first + 6] as number) : 0,
    }),
  );
  const most = (value: (seam: SeamMisfit) => number): number => Math.max(0, ...found.map(value));
  return {
    seams: found,
    part: most((seam) => seam.part),
    left: most((seam) => seam.left),
    gape: most((seam) => seam.gape),
    rounds,
  };
}
