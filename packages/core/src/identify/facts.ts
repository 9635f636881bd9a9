// Readings beside the sides that a net can be held against: angles between panels, distances across
// joined groups, hub plates' radii. Each is one noisy equation of the unknowns of a corner model,
// made again at every step of the fit. The hub allowance is no unknown of its own: it follows from the
// sides (see allowance.ts).

import { flangeAngles } from '../sphere/flange.ts';
import { polygonOnSphere } from '../sphere/polygon.ts';
import { addTerm, type Equation } from './belief.ts';
import type { CornerModel } from './corner-model.ts';
import type { SideBelief } from './side-belief.ts';

/** One reading and where the net has it; kind-sides are numbered through all kinds. */
export type Fact =
  | {
      readonly what: 'dihedral';
      readonly value: number;
      readonly sd: number;
      readonly side: number;
      /** Kind-side that meets it. */
      readonly mate: number;
    }
  | {
      readonly what: 'rim';
      readonly value: number;
      readonly sd: number;
      /** Spokes that it goes between, metres from the hub to their far ends. */
      readonly spokes: readonly [number, number];
      /** Corners (kind-sides) between the two. */
      readonly corners: readonly number[];
      /** Allowance that the sides already have, metres. */
      readonly allowance: number;
    }
  | {
      /** Of the length that all readings lack, metres. */
      readonly what: 'allowance';
      readonly value: number;
      readonly sd: number;
    };

/** How the length that all readings lack follows from the sides: Σ weight (side − reading), and what
 * stays unknown of it even then. */
export interface SharedShares {
  readonly weights: readonly number[];
  readonly measured: readonly number[];
  readonly variance: number;
}

/** Shares of every kind-side in the length that all readings lack; null where none is unknown. */
export function sharedShares(readings: SideBelief): SharedShares | null {
  if (readings.sharedVariance === 0) return null;
  const same = readings.bothWays?.same;
  const precisions = readings.variances
    .flat()
    .map((variance, s) => ((same?.[s] ?? s) === s ? 1 / variance : 0));
  const total = 1 / readings.sharedVariance + precisions.reduce((sum, x) => sum + x, 0);
  return {
    weights: precisions.map((x) => x / total),
    measured: readings.sides.flat(),
    variance: 1 / total,
  };
}

/** Sets the equation that the fact asks of the model's unknowns; returns the variance it holds with. */
export function setFactInto(
  equation: Equation,
  model: CornerModel,
  fact: Fact,
  shares: SharedShares | null,
): number {
  equation.terms = 0;
  switch (fact.what) {
    case 'dihedral':
      return setDihedral(equation, model, fact);
    case 'rim':
      return setRim(equation, model, fact, shares);
    case 'allowance': {
      const variance = addShared(equation, model, shares, 1);
      equation.value = fact.value - sharedAt(model, shares);
      return fact.sd ** 2 + variance;
    }
  }
}

/** What the model has for the fact at its reference, radians or metres. */
export function factAt(model: CornerModel, fact: Fact, shares: SharedShares | null): number {
  if (fact.what === 'allowance') return sharedAt(model, shares);
  if (fact.what === 'rim') return rimOf(model, fact, shares).distance;
  return flangeOf(model, fact.side).angle + flangeOf(model, fact.mate).angle;
}

function sharedAt(model: CornerModel, shares: SharedShares | null): number {
  if (!shares) return 0;
  return shares.weights.reduce(
    (sum, w, s) => sum + w * ((model.lengths[s] as number) - (shares.measured[s] as number)),
    0,
  );
}

/** Adds `by` times the length that all readings lack; returns the variance that comes with it. */
function addShared(
  equation: Equation,
  model: CornerModel,
  shares: SharedShares | null,
  by: number,
): number {
  if (!shares) return 0;
  for (let s = 0; s < model.lengths.length; s++)
    addTerm(equation, s, by * (shares.weights[s] as number));
  return by ** 2 * shares.variance;
}

interface Flange {
  readonly angle: number;
  /** By the sides of its kind, and by κ / κ₀. */
  readonly bySides: readonly number[];
  readonly byKappa: number;
}

function flangeOf(model: CornerModel, side: number): Flange {
  const kind = model.kindOf[side] as number;
  const [start, end] = [model.first[kind] as number, model.first[kind + 1] as number];
  const radius = 1 / Math.sqrt(model.kappa);
  const polygon = polygonOnSphere([...model.lengths.subarray(start, end)], radius);
  if (!polygon.ok) throw new Error(`kind ${kind} of a corner model has no place on its sphere`);
  const { angles, bySides, byRadius } = flangeAngles(polygon, radius);
  const [i, n] = [side - start, end - start];
  return {
    angle: angles[i] as number,
    bySides: [...bySides.subarray(i * n, (i + 1) * n)],
    byKappa: (-radius / 2) * (byRadius[i] as number),
  };
}

function setDihedral(
  equation: Equation,
  model: CornerModel,
  { value, sd, side, mate }: Fact & { readonly what: 'dihedral' },
): number {
  equation.value = value;
  for (const s of [side, mate]) {
    const { angle, bySides, byKappa } = flangeOf(model, s);
    equation.value -= angle;
    const start = model.first[model.kindOf[s] as number] as number;
    for (const [j, rate] of bySides.entries()) addTerm(equation, start + j, rate);
    addTerm(equation, model.lengths.length, byKappa);
  }
  return sd ** 2;
}

/** The distance between the far ends of two spokes of a hub, and how it changes. With a spoke's
 * length l, half its arc has the sine s = l √κ / 2; two spokes with the angle A between them about
 * the hub's radius have the angle between them cos⁻¹(cᵢ cⱼ cos A + sᵢ sⱼ). Held along a line between
 * the hubs, the tape's points lie half the allowance short of them. */
function rimOf(
  model: CornerModel,
  { spokes, corners, allowance }: Fact & { readonly what: 'rim' },
  shares: SharedShares | null,
) {
  const gap = (allowance + sharedAt(model, shares)) / 2;
  const root = Math.sqrt(model.kappa);
  const [l, m] = spokes.map((s) => model.lengths[s] as number) as [number, number];
  const [p, q] = [l - gap, m - gap];
  const [s, t] = [(l * root) / 2, (m * root) / 2];
  const [c, d] = [Math.sqrt(1 - s * s), Math.sqrt(1 - t * t)];
  const between = corners.reduce((sum, corner) => sum + (model.angles[corner] as number), 0);
  const cosine = c * d * Math.cos(between) + s * t;
  const distance = Math.sqrt(p * p + q * q - 2 * p * q * cosine);
  const byCosine = (-p * q) / distance;
  const byP = (p - q * cosine) / distance;
  const byQ = (q - p * cosine) / distance;
  const byS = byCosine * ((-s / c) * d * Math.cos(between) + t);
  const byT = byCosine * ((-t / d) * c * Math.cos(between) + s);
  return {
    distance,
    bySpokes: [byP + (byS * root) / 2, byQ + (byT * root) / 2] as const,
    byGap: -(byP + byQ),
    byBetween: -byCosine * c * d * Math.sin(between),
    /** By κ / κ₀, the corners' own change aside. */
    byKappa: (byS * s + byT * t) / 2,
  };
}

function setRim(
  equation: Equation,
  model: CornerModel,
  fact: Fact & { readonly what: 'rim' },
  shares: SharedShares | null,
): number {
  const { distance, bySpokes, byGap, byBetween, byKappa } = rimOf(model, fact, shares);
  equation.value = fact.value - distance;
  addTerm(equation, fact.spokes[0], bySpokes[0]);
  addTerm(equation, fact.spokes[1], bySpokes[1]);
  addTerm(equation, model.lengths.length, byKappa);
  for (const corner of fact.corners) {
    const kind = model.kindOf[corner] as number;
    const [start, end] = [model.first[kind] as number, model.first[kind + 1] as number];
    const at = (model.slopeStart[corner] as number) - start;
    for (let s = start; s < end; s++)
      addTerm(equation, s, byBetween * (model.slopes[at + s] as number));
    addTerm(equation, model.lengths.length, byBetween * (model.kappaSlopes[corner] as number));
  }
  return fact.sd ** 2 + addShared(equation, model, shares, byGap / 2);
}
