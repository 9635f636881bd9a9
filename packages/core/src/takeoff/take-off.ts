// The take-off: what the shell needs, what the pile holds of it, what is short and what to buy.
// Pieces, metres of tape, and the project's own currency. It counts; it does not choose: grade,
// tightening and whether a used bolt is sound are not decided here.

import type { Kind } from '../pile/kind.ts';
import { sideLength } from '../shell/geometry.ts';
import type { SideId } from '../shell/ids.ts';
import { kindSide, placeAt, type Shell, seamCount } from '../shell/shell.ts';
import { type BuyLine, buyLine } from './buy-line.ts';
import { type CountAccount, countAccount } from './count-account.ts';
import { type HardwareLot, itemNamed, type LotAside, lotsAside } from './hardware.ts';
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

export type { BuyLine } from './buy-line.ts';

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
