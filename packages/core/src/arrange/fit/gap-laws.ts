// Where a panel may be left out of a shell without a panel hanging or a hub falling in. Laws of our
// own judgement, common practice without a source: no two gaps side by side; a hub all round which
// panels stand keeps three seams; a hub on the rim loses one panel at most; each panel that stands
// is held by two seams; the crown stays whole.
//
// They say nothing of what the shell bears.

import { endHubAt } from '../../shell/geometry.ts';
import type { SideId } from '../../shell/ids.ts';
import { hubCount, type Shell, sideCount } from '../../shell/shell.ts';
import type { ProgramDraft, Terms } from '../program/integer-program.ts';

/** What a row of these laws is of. */
const GAP_LAW = 'gaps';

/** Seams that a hub inside the shell keeps. */
const LEAST_SEAMS = 3;
/** Seams that hold a panel. */
const LEAST_HOLD = 2;

/** The outline of a shell in its net: which places it has, and whose panels may be left out. */
export interface GapOutline {
  /** Place → 1 where it belongs to the shell. */
  readonly inside: Uint8Array;
  /** Place → its yes-or-no unknown "left open", for those that may be. */
  readonly open: ReadonlyMap<number, number>;
}

/** Writes the laws for an outline of a net into a program. */
export function addGapLaws(draft: ProgramDraft, shell: Shell, { inside, open }: GapOutline): void {
  const seams = seamsInside(shell, inside);
  for (const [p, q] of seams) {
    const pair = variablesOf(open, [p, q]);
    if (pair.length === 2) draft.atMost(GAP_LAW, ones(pair), 1);
  }
  const neighbours = new Map<number, number[]>();
  for (const [p, q] of seams) {
    neighbours.set(p, [...(neighbours.get(p) ?? []), q]);
    neighbours.set(q, [...(neighbours.get(q) ?? []), p]);
  }
  for (const [p, around] of neighbours) {
    const own = open.get(p);
    const lost = variablesOf(open, around);
    const spare = around.length - LEAST_HOLD;
    if (lost.length <= spare) continue;
    const release: Terms = own === undefined ? [] : [[own, -lost.length]];
    draft.atMost(GAP_LAW, [...ones(lost), ...release], Math.max(0, spare));
  }
  for (const { corners, whole } of hubsInside(shell, inside)) {
    const lost = variablesOf(open, corners);
    const most = whole ? Math.max(0, Math.floor((corners.length - LEAST_SEAMS) / 2)) : 1;
    if (lost.length > most) draft.atMost(GAP_LAW, ones(lost), most);
  }
}

const ones = (variables: readonly number[]): Terms => variables.map((v) => [v, 1] as const);

const variablesOf = (open: ReadonlyMap<number, number>, places: readonly number[]): number[] =>
  places.flatMap((p) => open.get(p) ?? []);

/** Seams whose two places both belong to the shell, as pairs of places. */
export function seamsInside(shell: Shell, inside: Uint8Array): [number, number][] {
  const pairs: [number, number][] = [];
  for (let i = 0; i < shell.seams.length; i += 2) {
    const [p, q] = [0, 1].map((j) => shell.sidePlace[shell.seams[i + j] as number] as number);
    if (inside[p as number] && inside[q as number]) pairs.push([p as number, q as number]);
  }
  return pairs;
}

interface HubInside {
  /** Places of the shell at the hub. */
  readonly corners: readonly number[];
  /** Whether they go all the way round. */
  readonly whole: boolean;
}

function hubsInside(shell: Shell, inside: Uint8Array): HubInside[] {
  const corners: number[][] = Array.from({ length: hubCount(shell) }, () => []);
  const onRim = new Uint8Array(hubCount(shell));
  for (let s = 0; s < sideCount(shell); s++) {
    const place = shell.sidePlace[s] as number;
    if (!inside[place]) continue;
    (corners[shell.sideHub[s] as number] as number[]).push(place);
    const mate = shell.mate[s] as number;
    if (mate >= 0 && inside[shell.sidePlace[mate] as number]) continue;
    onRim[shell.sideHub[s] as number] = 1;
    onRim[endHubAt(shell, s as SideId)] = 1;
  }
  return corners.flatMap((own, hub) =>
    own.length > 0 ? [{ corners: own, whole: onRim[hub] === 0 }] : [],
  );
}
