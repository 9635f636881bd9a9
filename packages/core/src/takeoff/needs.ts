// What a shell needs, before looking at the pile: bolts through seams, open sides and hub plates,
// and the nuts, washers, plates and tape that go with them. Quantities in pieces, tape in metres.

import { compareText } from '../math/order.ts';
import type { Kind } from '../pile/kind.ts';
import { sideLength } from '../shell/geometry.ts';
import type { SideId } from '../shell/ids.ts';
import { rims } from '../shell/rims.ts';
import type { Shell } from '../shell/shell.ts';
import type { ItemSize } from './hardware.ts';
import { sameSize } from './hardware.ts';
import { cornersAtHubs, hubSizes, rimHubs } from './hubs.ts';
import type { TakeoffSettings } from './schema.ts';
import {
  type HoleCounts,
  normalThread,
  patternAt,
  type SeamBolts,
  type SidePattern,
  seamBolts,
  sidePatterns,
} from './seam-bolts.ts';
import { nominalDiameter, nominalSize, readThread } from './threads.ts';

/** A quantity of one item and size. */
export interface Need extends ItemSize {
  readonly quantity: number;
  readonly unit: 'piece' | 'm';
}

/** What is needed; sizes in order: bolts, nuts, washers, plates, tape, each from the smallest. */
export interface Needs {
  readonly needs: readonly Need[];
  /** Open sides that should be bolted but whose holes no rule says. */
  readonly openSidesUnknown: number;
  /** True where hub plates are bolted but no bolt is named for them. */
  readonly plateBoltUnknown: boolean;
}

/** Everything the shell needs by the settings. Seams whose holes are unknown or in dispute add
 * nothing: the caller reports them. */
export function needsOf(
  shell: Shell,
  kinds: readonly Kind[],
  settings: TakeoffSettings,
  counts: HoleCounts = [],
): Needs {
  const open = openSideBolts(shell, sidePatterns(kinds, settings, counts), settings);
  const bolts = [
    ...seamNeeds(seamBolts(shell, kinds, settings, counts)),
    ...open.bolts,
    ...plateBolts(shell, settings),
  ];
  const fittings = bolts.flatMap((bolt) => fittingsOf(bolt, settings));
  const others = [...plates(shell, settings), ...tape(shell, settings)];
  return {
    needs: inOrder(summed([...bolts, ...fittings, ...others].filter((need) => need.quantity > 0))),
    openSidesUnknown: open.unknown,
    plateBoltUnknown:
      settings.plates !== null &&
      settings.plates.boltsPerCorner > 0 &&
      settings.plates.bolt === null,
  };
}

function seamNeeds(seams: readonly SeamBolts[]): Need[] {
  return seams.flatMap((seam) =>
    seam.status === 'known'
      ? [boltNeed(seam.pattern.thread, seam.pattern.length, seam.pattern.holes)]
      : [],
  );
}

function openSideBolts(
  shell: Shell,
  patterns: readonly (readonly (SidePattern | null)[])[],
  settings: TakeoffSettings,
): { readonly bolts: Need[]; readonly unknown: number } {
  const bolts: Need[] = [];
  let unknown = 0;
  rims(shell).forEach((rim, i) => {
    const bolt = i === 0 ? settings.baseBolt : settings.openingBolt;
    if (bolt === null) return;
    for (const side of rim.sides) {
      const pattern = patternAt(shell, patterns, side);
      if (pattern === null) unknown += 1;
      else bolts.push(boltNeed(normalThread(bolt.thread), bolt.length, pattern.holes));
    }
  });
  return { bolts, unknown };
}

/** Hubs that take a plate: all, or the inner ones only. */
function plateHubs(shell: Shell, atRim: boolean): number[] {
  const rim = rimHubs(shell);
  return [...cornersAtHubs(shell)].filter((n, hub) => n > 0 && (atRim || rim[hub] === 0));
}

function plateBolts(shell: Shell, settings: TakeoffSettings): Need[] {
  if (settings.plates === null || settings.plates.bolt === null) return [];
  const { bolt, boltsPerCorner, atRim } = settings.plates;
  const corners = plateHubs(shell, atRim).reduce((sum, n) => sum + n, 0);
  return [boltNeed(normalThread(bolt.thread), bolt.length, corners * boltsPerCorner)];
}

function plates(shell: Shell, settings: TakeoffSettings): Need[] {
  const { plates } = settings;
  if (plates === null) return [];
  return hubSizes(shell)
    .filter((size) => plates.atRim || !size.rim)
    .map((size) => ({
      ...none,
      item: 'plate',
      corners: size.corners,
      rim: size.rim,
      quantity: size.hubs * plates.perHub,
      unit: 'piece',
    }));
}

function tape(shell: Shell, settings: TakeoffSettings): Need[] {
  if (settings.tape === null) return [];
  let metres = 0;
  for (let i = 0; i < shell.seams.length; i += 2)
    metres += sideLength(shell, shell.seams[i] as SideId);
  return [{ ...none, item: 'tape', quantity: metres * settings.tape.runs, unit: 'm' }];
}

/** Nut and washers of a number of bolts. */
function fittingsOf(bolt: Need, settings: TakeoffSettings): Need[] {
  const thread = bolt.thread as string;
  const read = readThread(thread);
  const nominal = read.ok ? nominalSize(read.value) : thread;
  const nut = settings.nut === 'plain' ? 'nut' : 'lock nut';
  return [
    {
      ...none,
      item: nut,
      thread,
      quantity: settings.nut === 'none' ? 0 : bolt.quantity,
      unit: 'piece',
    },
    {
      ...none,
      item: 'washer',
      thread: nominal,
      quantity: bolt.quantity * settings.washersPerBolt,
      unit: 'piece',
    },
  ];
}

const none = { thread: null, length: null, corners: null, rim: null } as const;

const boltNeed = (thread: string, length: number, quantity: number): Need => ({
  ...none,
  item: 'bolt',
  thread,
  length,
  quantity,
  unit: 'piece',
});

function summed(needs: readonly Need[]): Need[] {
  const sums: Need[] = [];
  for (const need of needs) {
    const at = sums.findIndex((sum) => sameSize(sum, need));
    if (at < 0) sums.push(need);
    else sums[at] = { ...need, ...sums[at], quantity: need.quantity + (sums[at] as Need).quantity };
  }
  return sums;
}

/** Of the thread or nominal size; 0 where there is none. */
const diameterOf = ({ thread }: Need): number =>
  thread === null ? 0 : nominalDiameter(nominalSize({ designation: thread }));

const itemOrder = ['bolt', 'nut', 'lock nut', 'washer', 'plate', 'tape'] as const;

function inOrder(needs: readonly Need[]): Need[] {
  const key = (need: Need): number => itemOrder.indexOf(need.item);
  return [...needs].sort(
    (a, b) =>
      key(a) - key(b) ||
      diameterOf(a) - diameterOf(b) ||
      compareText(a.thread ?? '', b.thread ?? '') ||
      (a.length ?? 0) - (b.length ?? 0) ||
      Number(a.rim) - Number(b.rim) ||
      (b.corners ?? 0) - (a.corners ?? 0),
  );
}
