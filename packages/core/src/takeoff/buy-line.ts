// One line of the take-off: what is needed of one size against what the pile holds, with spares, in
// whole packs. Pieces, of tape metres; prices in the project's own currency.

import { type HardwareLot, type InHand, inHand } from './hardware.ts';
import type { Need } from './needs.ts';
import type { TakeoffSettings } from './schema.ts';
import { NO_PIECE } from './tolerances.ts';

/** One line of the list. Quantities in `unit`; tape to buy in rolls. */
export interface BuyLine extends Need {
  /** On top of `quantity`, by the settings' share, rounded up. */
  readonly spare: number;
  readonly inHand: number;
  /** In the pile but in a state that does not count. */
  readonly unusable: number;
  /** Without spares: what would be missing on the day. */
  readonly short: number;
  /** With spares and in whole packs. */
  readonly toBuy: number;
  readonly pack: number;
  readonly packs: number;
  /** For one piece (tape: one roll); null where no lot or setting says. */
  readonly price: number | null;
  /** Of `toBuy`; null where the price is unknown and something is to be bought. */
  readonly cost: number | null;
  readonly grades: readonly string[];
  readonly notes: readonly string[];
}

/** What is to be bought of one need, with its spares, against the hardware in hand. */
export function buyLine(
  need: Need,
  hardware: readonly HardwareLot[],
  settings: TakeoffSettings,
): BuyLine {
  const held = inHand(need, hardware, settings);
  const spare = spareOf(need, settings);
  const short = Math.max(0, need.quantity - held.usable);
  const pack = packOf(need, held.pack, settings);
  const packs = Math.max(0, Math.ceil((need.quantity + spare - held.usable) / pack - NO_PIECE));
  const price = priceOf(need, held, settings);
  const priced = need.item === 'tape' ? packs : packs * pack;
  return {
    ...need,
    spare,
    inHand: held.usable,
    unusable: held.unusable,
    short,
    toBuy: packs * pack,
    pack,
    packs,
    price,
    cost: priced === 0 ? 0 : price === null ? null : price * priced,
    grades: held.grades,
    notes: notesOf(need, held, price, priced),
  };
}

function spareOf(need: Need, settings: TakeoffSettings): number {
  const share = {
    bolt: settings.spares.bolts,
    nut: settings.spares.nuts,
    'lock nut': settings.spares.nuts,
    washer: settings.spares.washers,
    plate: settings.spares.plates,
    tape: settings.spares.tape,
  }[need.item];
  const exact = need.quantity * share;
  return need.unit === 'm' ? exact : Math.ceil(exact - NO_PIECE);
}

function packOf(need: Need, fromLots: number | null, settings: TakeoffSettings): number {
  if (need.item === 'tape') return rollLength(fromLots, settings) ?? 1;
  const common = need.item === 'lock nut' ? settings.packs.nut : settings.packs[need.item];
  return fromLots ?? common;
}

/** Metres in a roll of tape, or null where nobody says: it is then bought by the metre. */
const rollLength = (fromLots: number | null, settings: TakeoffSettings): number | null =>
  settings.tape?.rollLength ?? fromLots;

/** For one piece or roll; a roll of unknown length has no price that could be reckoned with. */
function priceOf(need: Need, held: InHand, settings: TakeoffSettings): number | null {
  if (need.item !== 'tape') return held.price;
  return rollLength(held.pack, settings) === null ? null : (settings.tape?.price ?? held.price);
}

function notesOf(need: Need, held: InHand, price: number | null, priced: number): string[] {
  const notes: string[] = [];
  if (held.unusable > 0)
    notes.push(
      need.item === 'lock nut'
        ? `${held.unusable} used ones in the pile are not counted`
        : `${held.unusable} more in the pile in a state that does not count`,
    );
  if (held.grades.length > 1) notes.push(`grades mixed in the pile: ${held.grades.join(', ')}`);
  if (priced > 0 && price === null) notes.push('no price');
  if (priced > 0 && held.pack === null && need.item !== 'tape')
    notes.push('pack size by common practice');
  return notes;
}
