// A net in the mirror: every kind replaced by its other hand. Two nets that are mirror images of each
// other are one answer where no face is known; a joined group may still tell them apart, as its run
// was noted from outside.

import type { HubId, SideId } from '../shell/ids.ts';
import { kindSide, makeShell, nextSide, placeAt, type Shell, sidesOf } from '../shell/shell.ts';
import type { Alikeness } from './alike.ts';
import { labelsOf } from './alike.ts';
import type { WorkingKinds } from './canonical-kinds.ts';
import type { OfferedHands, Reflected } from './hands.ts';
import { netCode, sidesCode } from './net-code.ts';

/** Kinds in working order as they are in the mirror; null where that is not among them. */
export type Mirror = readonly (Reflected | null)[];

/** The mirror of the offered kinds in working order; null where some face is known, so that no net
 * need be taken for another's mirror image. */
export function workingMirror(hands: OfferedHands, working: WorkingKinds): Mirror | null {
  if (!hands.allUnknown) return null;
  const place = new Map(working.source.map((source, w) => [source, w]));
  return working.source.map((source, w) => {
    const there = hands.inMirror[source] ?? null;
    if (there === null) return null;
    const kind = place.get(there.kind) as number;
    const n = there.side.length;
    return {
      kind,
      side: there.side.map((_, i) => {
        const onSource = (i + (working.offset[w] as number)) % n;
        return ((there.side[onSource] as number) - (working.offset[kind] as number) + n) % n;
      }),
    };
  });
}

/** Code of a net (see netCode), equal for two that are mirror images of each other where there is a
 * mirror. */
export function imageCode(shell: Shell, alike: Alikeness, mirror: Mirror | null): string {
  const { code } = netCode(shell, labelsOf(shell, alike));
  const other = mirror && mirrorCode(shell, alike, mirror);
  return other !== null && other < code ? other : code;
}

/** Whether the net in the mirror is another net. */
export const hasMirrorImage = (shell: Shell, alike: Alikeness, mirror: Mirror): boolean => {
  const code = mirrorCode(shell, alike, mirror);
  return code !== null && code !== netCode(shell, labelsOf(shell, alike)).code;
};

/** Code of the net in the mirror; null where a kind's other hand is not offered. */
function mirrorCode(shell: Shell, alike: Alikeness, mirror: Mirror): string | null {
  const count = shell.mate.length;
  const labels = new Int32Array(count);
  const before = new Int32Array(count);
  for (let s = 0; s < count; s++) {
    const there = mirror[shell.kind[placeAt(shell, s as SideId)] as number] ?? null;
    if (there === null) return null;
    const side = there.side[kindSide(shell, s as SideId)] as number;
    labels[s] = alike.label[(alike.first[there.kind] as number) + side] as number;
    before[nextSide(shell, s as SideId)] = s;
  }
  return sidesCode({ next: before, mate: shell.mate, labels }).code;
}

/** The net in the mirror, z turned over; null where a kind's other hand is not offered. */
export function mirrorImage(shell: Shell, mirror: Mirror): Shell | null {
  const places: { hubs: HubId[]; kind: number; turn: number }[] = [];
  for (let p = 0; p < shell.kind.length; p++) {
    const there = mirror[shell.kind[p] as number] ?? null;
    if (there === null) return null;
    const sides = sidesOf(shell, p as Parameters<typeof sidesOf>[1]);
    const hubs = sides.map((side) => shell.sideHub[side] as HubId);
    const [first, ...rest] = hubs as [HubId, ...HubId[]];
    const last = sides[sides.length - 1] as SideId;
    places.push({
      hubs: [first, ...rest.reverse()],
      kind: there.kind,
      turn: there.side[kindSide(shell, last)] as number,
    });
  }
  const hubs = shell.hubs.map((x, i) => (i % 3 === 2 ? -x : x));
  return makeShell({ radius: shell.radius, hubs, places });
}
