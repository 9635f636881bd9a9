// With what factors loads and capacities meet. A practice multiplies loads and divides capacities;
// the lead picks one, or the worst of all, or enters his own.

import { commonPractice, fromMemory, type Provenance } from '../../loads/provenance.ts';
import type { Capacity, CapacityBasis } from './capacity.ts';

/** Factors of one practice. */
export interface Practice {
  readonly name: string;
  /** On the wind's lift and shear. */
  readonly wind: number;
  /** On the weight that holds down. */
  readonly weight: number;
  /** On the shear once more, where sliding has a factor of its own. */
  readonly sliding: number;
  /** What a capacity is divided by, by its basis. */
  readonly capacity: Readonly<Record<CapacityBasis, number>>;
  readonly sources: readonly Provenance[];
}

/** Divisors by basis where loads are as they are: half the ultimate, what is safe, a design value
 * less the factor that its loads would have had, two thirds or half of what was tested. */
const working = { ultimate: 2, safe: 1, design: 1.2, tested: 1.5, 'tested few': 2 } as const;
const divisors = commonPractice(
  'anchors held to half their ultimate pull; to two thirds of the least of three test pulls, half of fewer',
);

/** The practices on offer. */
export const practices = {
  factored: {
    name: 'loads times factors: wind 1.2, weight 1.0',
    wind: 1.2,
    weight: 1,
    sliding: 1,
    capacity: { ...working, design: 1 },
    sources: [fromMemory('EN 13814 and EN 13782: stability factors'), divisors],
  },
  working: {
    name: 'working loads: wind 1.0, weight 0.6',
    wind: 1,
    weight: 0.6,
    sliding: 1,
    capacity: working,
    sources: [fromMemory('ASCE 7, allowable stress: 0.6 D with the wind as entered'), divisors],
  },
  safety: {
    name: 'safety factor 1.5 against lift and sliding',
    wind: 1.5,
    weight: 1,
    sliding: 1,
    capacity: working,
    sources: [fromMemory('US practice: factor 1.5 on sliding and overturning'), divisors],
  },
} as const satisfies Readonly<Record<string, Practice>>;

/** A practice on offer. */
export type PracticeName = keyof typeof practices;

/** What the practice lets an anchor be pulled, N. */
export const allowedPull = ({ pull, basis }: Capacity, practice: Practice): number =>
  pull / practice.capacity[basis];
