// How stiffly a hub plate holds the corners that are bolted to it. Bent by an even moment m along its
// edge (N·m/m), a round plate of radius a turns there by m a / (D (1 + ν)), D = E t³ / (12 (1 − ν²)); a
// corner of angle θ takes the arc a θ of that edge, so moment by turn is D (1 + ν) θ, whatever the
// radius. That is exact where all panels of the hub turn alike, as when it snaps through; where they
// turn by turns in and out a plate holds (1 − ν)/(1 + ν) of it. Bolts do not slip, the plate is small
// beside the panels.

import { fromMemory, type Provenance } from '../loads/provenance.ts';

/** A round plate bolted over a hub. */
export interface StiffHubPlate {
  /** Metres. */
  readonly thickness: number;
  /** Diameter of the circle of bolts, metres. */
  readonly boltCircle: number;
  /** Young's modulus, pascals. */
  readonly young: number;
  readonly poisson: number;
}

/** What goes with every force of a frame whose hub plates are stiff. */
export const HUB_PLATES: Provenance = fromMemory(
  'hub plates hold corners as a round plate bent by an even moment along its edge: S. Timoshenko, S. Woinowsky-Krieger, Theory of Plates and Shells, symmetrical bending of circular plates; bolts do not slip',
);

/** Largest part of the shortest side that a bolt circle may span: beyond it the plate is not small. */
export const LARGEST_PLATE = 0.5;

/** Moment by turn with which a plate holds one corner of angle θ (radians), N·m per radian.
 * Source: Timoshenko and Woinowsky-Krieger, circular plate bent by couples along its edge. */
export const cornerStiffness = (
  { thickness, young, poisson }: Pick<StiffHubPlate, 'thickness' | 'young' | 'poisson'>,
  theta: number,
): number => ((young * thickness ** 3) / (12 * (1 - poisson))) * theta;
