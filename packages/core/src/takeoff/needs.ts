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
import { cornersAtHubs, rimHubs } from './hubs.ts';
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

/** A need and where in the shell it goes: a seam, an open side or a hub, by its index. */
export interface LocatedNeed extends Need {
  readonly at: { readonly seam: number } | { readonly side: number } | { readonly hub: number };
}

/** What is needed, place by place. */
export interface LocatedNeeds extends Omit<Needs, 'needs'> {
  readonly needs: readonly LocatedNeed[];
}

/** Everything the shell needs by the settings. Seams whose holes are unknown or in dispute add
 * nothing: the caller reports them. */
export function needsOf(
  shell: Shell,
  kinds: readonly Kind[],
  settings: TakeoffSettings,
  counts: HoleCounts = [],
): Needs {
  const { needs, ...unknown } = locatedNeeds(shell, kinds, settings, counts);
  return { needs: summedNeeds(needs), ...unknown };
}

/** The same, place by place. */
export function locatedNeeds(
  shell: Shell,
  kinds: readonly Kind[],
  settings: TakeoffSettings,
  counts: HoleCounts = [],
): LocatedNeeds {
  const open = openSideBolts(shell, sidePatterns(kinds, settings, counts), settings);
  const bolts = [
    ...seamNeeds(seamBolts(shell, kinds, settings, counts)),
    ...open.bolts,
    ...plateBolts(shell, settings),
  ];
  const fittings = bolts.flatMap((bolt) =>
    fittingsOf(bolt, settings).map((fitting) => ({ ...fitting, at: bolt.at })),
  );
  const others = [...plates(shell, settings), ...tape(shell, settings)];
  return {
    needs: [...bolts, ...fittings, ...others].filter((need) => need.quantity > 0),
    openSidesUnknown: open.unknown,
    plateBoltUnknown:
      settings.plates !== null &&
      settings.plates.boltsPerCorner > 0 &&
      settings.plates.bolt === null,
  };
}

function seamNeeds(seams: readonly SeamBolts[]): LocatedNeed[] {
  return seams.flatMap((seam, i) =>
    seam.status === 'known'
      ? [
          {
            ...boltNeed(seam.pattern.thread, seam.pattern.length, seam.pattern.holes),
            at: { seam: i },
          },
        ]
      : [],
  );
}

function openSideBolts(
  shell: Shell,
  patterns: readonly (readonly (SidePattern | null)[])[],
  settings: TakeoffSettings,
): { readonly bolts: LocatedNeed[]; readonly unknown: number } {
  const bolts: LocatedNeed[] = [];
  let unknown = 0;
  rims(shell).forEach((rim, i) => {
    const bolt = i === 0 ? settings.baseBolt : settings.openingBolt;
    if (bolt === null) return;
    for (const side of rim.sides) {
      const pattern = patternAt(shell, patterns, side);
      if (pattern === null) unknown += 1;
      else
        bolts.push({
          ...boltNeed(normalThread(bolt.thread), bolt.length, pattern.holes),
          at: { side },
        });
    }
  });
  return { bolts, unknown };
}

function plateBolts(shell: Shell, settings: TakeoffSettings): LocatedNeed[] {
  if (settings.plates === null || settings.plates.bolt === null) return [];
  const { bolt, boltsPerCorner } = settings.plates;
  return plateHubs(shell, settings).map(({ hub, corners }) => ({
    ...boltNeed(normalThread(bolt.thread), bolt.length, corners * boltsPerCorner),
    at: { hub },
  }));
}

/** Hubs that take a plate: all, or the inner ones only; none where there are no plates. */
function plateHubs(
  shell: Shell,
  { plates }: TakeoffSettings,
): { readonly hub: number; readonly corners: number; readonly rim: boolean }[] {
  if (plates === null) return [];
  const isRim = rimHubs(shell);
  return [...cornersAtHubs(shell)].flatMap((corners, hub) => {
    const rim = isRim[hub] === 1;
    return corners > 0 && (plates.atRim || !rim) ? [{ hub, corners, rim }] : [];
  });
}

function plates(shell: Shell, settings: TakeoffSettings): LocatedNeed[] {
  const { plates } = settings;
  if (plates === null) return [];
  return plateHubs(shell, settings).map(({ hub, corners, rim }) => ({
    ...none,
    item: 'plate',
    corners,
    rim,
    quantity: plates.perHub,
    unit: 'piece',
    at: { hub },
  }));
}

function tape(shell: Shell, settings: TakeoffSettings): LocatedNeed[] {
  const { tape } = settings;
  if (tape === null) return [];
  return Array.from({ length: shell.seams.length / 2 }, (_, seam) => ({
    ...none,
    item: 'tape' as const,
    quantity: sideLength(shell, shell.seams[2 * seam] as SideId) * tape.runs,
    unit: 'm' as const,
    at: { seam },
  }));
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

/** Needs of one item and size added up; bolts, nuts, washers, plates, tape, each from the smallest. */
export function summedNeeds(needs: readonly Need[]): Need[] {
  const sums: Need[] = [];
  for (const { item, thread, length, corners, rim, quantity, unit } of needs) {
    const need: Need = { item, thread, length, corners, rim, quantity, unit };
    const at = sums.findIndex((sum) => sameSize(sum, need));
    const sum = sums[at];
    if (sum === undefined) sums.push(need);
    else sums[at] = { ...sum, quantity: quantity + sum.quantity };
  }
  return inOrder(sums);
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
