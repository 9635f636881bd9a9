// The take-off: what the shell needs, what the pile holds of it, what is short and what to buy.
// Pieces, metres of tape, and the project's own currency. It counts; it does not choose: grade,
// tightening and whether a used bolt is sound are not decided here.

import type { Kind } from '../pile/kind.ts';
import { sideLength } from '../shell/geometry.ts';
import type { SideId } from '../shell/ids.ts';
import { kindSide, placeAt, type Shell, seamCount } from '../shell/shell.ts';
import { type CountAccount, countAccount } from './count-account.ts';
import {
  type HardwareLot,
  type InHand,
  inHand,
  itemNamed,
  type LotAside,
  lotsAside,
} from './hardware.ts';
import { type HubSize, hubSizes } from './hubs.ts';
import { type NearTwins, nearTwinsAmong } from './near-twins.ts';
import { type Need, needsOf } from './needs.ts';
import type { SideRule, TakeoffSettings } from './schema.ts';
import {
  type HoleCounts,
  ruleFor,
  type SeamBolts,
  type SidePattern,
  seamBolts,
} from './seam-bolts.ts';
import { classOfSide, sideClasses } from './side-classes.ts';
import { readThread } from './threads.ts';

/** Seams of one side class. */
export interface SeamSize {
  /** Side class, 1 for the shortest. */
  readonly class: number;
  /** Mean of the kinds' sides, metres. */
  readonly length: number;
  readonly seams: number;
  /** Metres of seam in all, between hubs. */
  readonly total: number;
  /** Seams whose bolts are known, of `seams`. */
  readonly known: number;
  /** Bolts through the known ones, pieces. */
  readonly bolts: number;
}

/** Seams whose two sides are said to have different holes or bolts. */
export interface Disagreement {
  /** `kind` and `side` of either side, the lower kind first. Sides count from 0. */
  readonly sides: readonly [KindSide, KindSide];
  readonly seams: number;
}

/** A side of a kind and what the settings say of it. */
export interface KindSide extends SidePattern {
  readonly kind: string;
  readonly side: number;
}

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

/** The whole list. */
export interface TakeOff {
  readonly account: CountAccount;
  readonly seams: readonly SeamSize[];
  readonly hubs: readonly HubSize[];
  readonly lines: readonly BuyLine[];
  readonly disagreements: readonly Disagreement[];
  /** Seams whose holes no rule says: they need bolts that are not in the list. */
  readonly seamsUnknown: number;
  /** Seams counted from the rule of one of their sides alone. */
  readonly seamsFromOneSide: number;
  readonly openSidesUnknown: number;
  readonly plateBoltUnknown: boolean;
  /** True where nothing above keeps a bolt out of the list. */
  readonly complete: boolean;
  /** Rules of the settings that fit no side of the kinds in the shell. */
  readonly rulesUnused: readonly SideRule[];
  readonly lotsAside: readonly LotAside[];
  /** Threads, needed or in the pile, that are easily mixed. */
  readonly nearTwins: readonly NearTwins[];
  /** Sum of the known costs. */
  readonly cost: number;
  /** True where every line to buy has a price. */
  readonly costComplete: boolean;
  readonly cautions: readonly string[];
}

/** What every list says once, beside its numbers. */
export const takeOffCautions: readonly string[] = [
  'A count of pieces, no design: grade, tightening and whether a used bolt may carry again are not decided here. An engineer or the maker decides.',
  'Spare shares, pack sizes and "lock nuts once only" are common practice, no source.',
];

/** The take-off of a shell against the hardware of the pile. The shell's places carry indices into
 * `kinds`; throws where one is out of range. `counts` are the holes counted on the panels, in the
 * order of `kinds`. */
export function takeOff(
  shell: Shell,
  kinds: readonly Kind[],
  hardware: readonly HardwareLot[],
  settings: TakeoffSettings,
  counts: HoleCounts = [],
): TakeOff {
  const seams = seamBolts(shell, kinds, settings, counts);
  const { needs, openSidesUnknown, plateBoltUnknown } = needsOf(shell, kinds, settings, counts);
  const lines = needs.map((need) => buyLine(need, hardware, settings));
  const disagreements = disagreementsOf(shell, kinds, seams);
  const seamsUnknown = seams.filter((seam) => seam.status === 'unknown').length;
  return {
    account: countAccount(shell),
    seams: seamSizes(shell, kinds, seams),
    hubs: hubSizes(shell),
    lines,
    disagreements,
    seamsUnknown,
    seamsFromOneSide: seams.filter((seam) => seam.status === 'known' && seam.fromOneSide).length,
    openSidesUnknown,
    plateBoltUnknown,
    complete: disagreements.length + seamsUnknown + openSidesUnknown === 0 && !plateBoltUnknown,
    rulesUnused: rulesUnused(shell, kinds, settings),
    lotsAside: lotsAside(hardware, needs),
    nearTwins: twinsOf(needs, hardware),
    cost: lines.reduce((sum, line) => sum + (line.cost ?? 0), 0),
    costComplete: lines.every((line) => line.cost !== null),
    cautions: takeOffCautions,
  };
}

function seamSizes(shell: Shell, kinds: readonly Kind[], bolts: readonly SeamBolts[]): SeamSize[] {
  const classes = sideClasses(shell, kinds);
  const sizes = classes.classes.map((one) => ({
    class: one.number,
    length: one.length,
    seams: 0,
    total: 0,
    known: 0,
    bolts: 0,
  }));
  for (let i = 0; i < seamCount(shell); i++) {
    const side = shell.seams[2 * i] as SideId;
    const size = sizes[classOfSide(shell, classes, side)];
    if (size === undefined) throw new Error(`seam ${i} has no side class`);
    const bolt = bolts[i] as SeamBolts;
    size.seams += 1;
    size.total += sideLength(shell, side);
    size.known += bolt.status === 'known' ? 1 : 0;
    size.bolts += bolt.status === 'known' ? bolt.pattern.holes : 0;
  }
  return sizes.filter((size) => size.seams > 0);
}

function disagreementsOf(
  shell: Shell,
  kinds: readonly Kind[],
  seams: readonly SeamBolts[],
): Disagreement[] {
  const found = new Map<string, Disagreement>();
  seams.forEach((seam, i) => {
    if (seam.status !== 'disagree') return;
    const ends = [0, 1].map((end) => ({
      ...kindSideAt(shell, kinds, shell.seams[2 * i + end] as SideId),
      ...(seam.patterns[end] as SidePattern),
    }));
    const sides = ends.sort((a, b) => a.order - b.order || a.side - b.side);
    const key = sides.map((end) => `${end.order}/${end.side}`).join(' ');
    const pair = sides.map(({ order: _, ...side }) => side) as [KindSide, KindSide];
    found.set(key, { sides: pair, seams: (found.get(key)?.seams ?? 0) + 1 });
  });
  return [...found.values()];
}

function kindSideAt(shell: Shell, kinds: readonly Kind[], side: SideId) {
  const order = shell.kind[placeAt(shell, side)] as number;
  return { order, kind: (kinds[order] as Kind).id, side: kindSide(shell, side) };
}

function buyLine(need: Need, hardware: readonly HardwareLot[], settings: TakeoffSettings): BuyLine {
  const held = inHand(need, hardware, settings);
  const spare = spareOf(need, settings);
  const short = Math.max(0, need.quantity - held.usable);
  const pack = packOf(need, held.pack, settings);
  const packs = Math.max(0, Math.ceil((need.quantity + spare - held.usable) / pack - 1e-9));
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
  return need.unit === 'm' ? exact : Math.ceil(exact - 1e-9);
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

function notesOf(
  need: Need,
  held: {
    readonly unusable: number;
    readonly grades: readonly string[];
    readonly pack: number | null;
  },
  price: number | null,
  priced: number,
): string[] {
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

function rulesUnused(shell: Shell, kinds: readonly Kind[], settings: TakeoffSettings): SideRule[] {
  const used = new Set<SideRule | null>();
  for (const k of new Set(shell.kind)) {
    const kind = kinds[k] as Kind;
    kind.sides.forEach((length, side) => {
      used.add(ruleFor(settings.sides, kind.id, side, length));
    });
  }
  return settings.sides.filter((rule) => !used.has(rule));
}

function twinsOf(needs: readonly Need[], hardware: readonly HardwareLot[]): NearTwins[] {
  const needed = needs.filter((need) => need.item !== 'washer').map((need) => need.thread);
  const lying = hardware
    .filter((lot) => itemNamed(lot.item) !== 'washer')
    .map((lot) => lot.thread ?? null);
  const threads = [...needed, ...lying].flatMap((text) => {
    const read = text === null ? null : readThread(text);
    return read?.ok ? [read.value] : [];
  });
  return nearTwinsAmong(threads);
}
