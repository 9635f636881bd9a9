// How much sealant, tape and foam a length of seam takes, and what packs that is. Metres, cubic metres.

import { assertBetween } from '../loads/doors.ts';
import { commonPractice, confirmed, type Provenance } from '../loads/provenance.ts';

/** What the depths, volumes and waste rest on. */
export const SEALANT_SOURCES: readonly Provenance[] = [
  confirmed('joint depth: Allen and Rand, Architectural Detailing: half the width, 6 to 13 mm'),
  commonPractice('waste of 10 %; packs as sold'),
];

/** Depth of sealant in a joint of a width, metres: half the width, at least 6 mm, at most 13 mm. Allen
 * and Rand, Architectural Detailing. RangeError for a joint under 6 mm (too narrow to move) or over
 * 50 mm. */
export function sealantDepth(width: number): number {
  assertBetween('joint width', width, 0.006, 0.05, 'm');
  return Math.min(0.013, Math.max(0.006, width / 2));
}

/** Width of a joint that moves, metres: α L ΔT / S + tolerance, S the movement class of the sealant (0.25
 * for 25 %). Form of ASTM C1472, from memory. */
export function jointWidth(move: {
  /** Per kelvin; laminate about 25e-6 (from memory). */
  readonly expansion: number;
  readonly length: number;
  readonly warming: number;
  readonly movementClass: number;
  readonly tolerance?: number;
}): number {
  assertBetween('expansion', move.expansion, 0, 5e-4, '/K');
  assertBetween('length', move.length, 0, 100, 'm');
  assertBetween('warming', move.warming, 0, 150, 'K');
  assertBetween('movement class', move.movementClass, 0.05, 1);
  const { expansion, length, warming, movementClass, tolerance = 0 } = move;
  return (expansion * length * warming) / movementClass + tolerance;
}

/** The section of a bead, square metres: a joint's width times depth, or the triangle of a fillet. */
export type Bead =
  | { readonly form: 'joint'; readonly width: number; readonly depth: number }
  | { readonly form: 'fillet'; readonly legs: readonly [number, number] };

/** Area of a bead's section, square metres. */
export const beadArea = (bead: Bead): number =>
  bead.form === 'joint' ? bead.width * bead.depth : (bead.legs[0] * bead.legs[1]) / 2;

/** Metres of bead that a pack of a volume (cubic metres) fills, nothing wasted. RangeError for a bead of
 * no section or a pack of no volume. */
export function beadLength(pack: number, bead: Bead): number {
  assertBetween('pack', pack, 1e-6, 1, 'm³');
  assertBetween('section of the bead', beadArea(bead), 1e-7, 1e-2, 'm²');
  return pack / beadArea(bead);
}

/** US fluid ounce, cubic metres, exact. */
export const FLUID_OUNCE = 29.5735295625e-6;

/** Packs of sealant as sold, cubic metres. */
export const SEALANT_PACKS = {
  'cartridge 290 ml': 290e-6,
  'cartridge 300 ml': 300e-6,
  'cartridge 310 ml': 310e-6,
  'cartridge 10.1 fl oz': 10.1 * FLUID_OUNCE,
  'foil 400 ml': 400e-6,
  'foil 600 ml': 600e-6,
  'foil 20 fl oz': 20 * FLUID_OUNCE,
} as const;

/** A pack of the table. */
export type SealantPack = keyof typeof SEALANT_PACKS;

/** A line of the seal's buying list. */
export interface SealLine {
  readonly item: 'tape' | 'foam' | 'sealant' | 'backer rod';
  /** Metres of seam that want it, without waste. */
  readonly length: number;
  /** With waste: metres for tape, foam and rod, cubic metres for sealant. */
  readonly amount: number;
  readonly unit: 'm' | 'm³';
  /** In one pack, in the same unit, and packs to buy; null: nobody said how it is sold. */
  readonly pack: number | null;
  readonly packs: number | null;
}

/** A line: what is wanted with its waste, in whole packs. */
export function sealLine(
  item: SealLine['item'],
  length: number,
  perMetre: number,
  waste: number,
  pack: number | null,
): SealLine {
  assertBetween('waste', waste, 0, 2);
  const amount = length * perMetre * (1 + waste);
  // A share of a pack that is rounding is none.
  const packs = pack === null ? null : Math.ceil(amount / pack - 1e-9);
  return { item, length, amount, unit: item === 'sealant' ? 'm³' : 'm', pack, packs };
}

/** Says whether a table that promises `metres` from a `pack` of a `bead` can be right; it can't where it
 * promises more than the pack holds. */
export const isPossibleYield = (metres: number, pack: number, bead: Bead): boolean =>
  metres <= beadLength(pack, bead) * (1 + 1e-9);

/** Litres of coating for one square metre at a wet film of `thickness` metres: as much as the film. */
export const coatingVolume = (area: number, thickness: number): number => area * thickness;
