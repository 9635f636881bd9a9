// Ballast: weight that keeps a hub down and, by friction, in its place.

import { commonPractice, confirmed, fromMemory, type Provenance } from '../../loads/provenance.ts';
import { assertNumber } from '../../math/doors.ts';
import { type Read, refuse } from '../../measure/fault.ts';
import { type Soil, type SoilKind, soilWords } from './soil.ts';

/** What the ballast, or the base under it, rubs on the ground with. */
export const underlays = ['steel', 'wood', 'concrete'] as const;

/** One of {@link underlays}. */
export type Underlay = (typeof underlays)[number];

const fair = fromMemory('EN 13814 and EN 13782: friction on the ground');
const clays = commonPractice('friction of clay taken on wet ground and on hardpan');
const society = confirmed(
  'Concrete Society, after Pallett and others 2002 and HSE Research Report 071: least friction on concrete',
);

const onSoil: Readonly<Record<'wood' | 'concrete', Partial<Record<SoilKind, number>>>> = {
  wood: { clay: 0.25, loam: 0.4, sand: 0.65, gravel: 0.65, hardpan: 0.25 },
  concrete: { clay: 0.25, loam: 0.4, sand: 0.65, gravel: 0.65, hardpan: 0.25 },
};

const onConcrete: Readonly<Record<Underlay, number>> = { steel: 0.1, wood: 0.7, concrete: 0.4 };

/** A coefficient of friction with its sources. */
export interface Friction {
  readonly value: number;
  readonly sources: readonly Provenance[];
}

/** Friction of an underlay on the ground. On paving the least measured on concrete; on soil the code
 * values, clay's for hardpan, and clay's too on wet ground. */
export function friction(underlay: Underlay, soil: Soil): Read<Friction> {
  if (soil.kind === 'paved')
    return { ok: true, value: { value: onConcrete[underlay], sources: [society] } };
  const kind = soil.wet ? 'clay' : soil.kind;
  const guessed = underlay !== 'steel' && (soil.wet || soil.kind === 'hardpan');
  const value = underlay === 'steel' ? 0.2 : onSoil[underlay][kind];
  return value === undefined
    ? refuse('soil', soilWords(soil), 'a ground that friction is known for')
    : { ok: true, value: { value, sources: guessed ? [fair, clays] : [fair] } };
}

/** The least weight of ballast, N, that keeps one hub, or a whole base, down and in place:
 * (G + B − L) μ ≥ H and G + B ≥ L, with L the lift, H the shear and G the weight, N, each already
 * times its factor. 0 where none is needed. RangeError for a negative force or no friction. */
export function ballastWeight(
  lift: number,
  shear: number,
  weight: number,
  coefficient: number,
): number {
  assertNumber('shear', shear, 0);
  assertNumber('weight', weight, 0);
  assertNumber('lift', lift);
  assertNumber('friction', coefficient, 0.01);
  return Math.max(0, lift - weight + shear / coefficient);
}
