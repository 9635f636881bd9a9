// What the ground is, as far as a person with a spade can tell, and how wet it may get before the
// shell is taken down. Published capacities each hold for some of these grounds and for no other.

import { type Read, refuse } from '../../measure/fault.ts';

/** Sorts of ground. `loam` is ordinary garden or field soil under grass; `hardpan` is cemented or
 * baked ground that a pick has to break; `paved` is asphalt or concrete. */
export const soilKinds = ['clay', 'loam', 'sand', 'gravel', 'hardpan', 'paved', 'unknown'] as const;

/** One of {@link soilKinds}. */
export type SoilKind = (typeof soilKinds)[number];

/** The ground of a site. */
export interface Soil {
  readonly kind: SoilKind;
  /** Stiff or dense: a heel leaves no print, a thumb does not go in. Soft and loose ground is not. */
  readonly firm: boolean;
  /** Saturated now, or may be before the shell is down: capacities are those of wet ground. */
  readonly wet: boolean;
}

/** A soil that capacities can be told for, or a fault: nothing is reckoned from an unknown one. */
export function knownSoil(soil: Soil | null): Read<Soil> {
  if (soil === null || soil.kind === 'unknown')
    return refuse(
      'soil',
      'unknown',
      'clay, loam, sand, gravel, hardpan or paved: dig a hole, or pull a test anchor and enter it',
    );
  return { ok: true, value: soil };
}

/** The soil in words: `wet firm clay`. */
export const soilWords = ({ kind, firm, wet }: Soil): string =>
  kind === 'paved'
    ? 'paved ground'
    : [wet ? 'wet' : '', firm ? 'firm' : 'soft or loose', kind].filter((w) => w !== '').join(' ');
