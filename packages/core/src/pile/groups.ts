// Groups of panels still joined: the names in them turned into kinds. A mark may stand for several
// kinds; neighbours in a group share a seam, so their touching sides have one length, and that often
// leaves a single choice. Going anticlockwise round a hub, seen from outside, the side of a panel
// that ends at the hub meets the side of the next panel that starts there.

import type { JoinedGroup, Kind } from './kind.ts';
import { fromOtherFace } from './polygon.ts';
import type { GroupRow } from './schema.ts';
import { SEAM_Z } from './tolerances.ts';
import { readMark } from './written-mark.ts';

/** A group whose kinds are not settled. */
export interface UnsettledGroup {
  /** Index in the pile's list of groups. */
  readonly group: number;
  /** Every way to read it, kind ids anticlockwise; none: neighbours have no side in common. */
  readonly readings: readonly (readonly string[])[];
  /** True where there are more ways than are listed. */
  readonly more: boolean;
  /** Each panel with the kinds (ids) that it may be, anticlockwise; as in the file otherwise. */
  readonly around: readonly (readonly string[])[];
  readonly closed: boolean;
  readonly count: number;
}

/** The groups in kinds, and those that cannot be settled. */
export interface ResolvedGroups {
  readonly groups: readonly JoinedGroup[];
  readonly unsettled: readonly UnsettledGroup[];
}

const MOST_WAYS = 12;

/** Groups with each name turned into the kinds it may be: an id, or a mark, also a faded one; a panel
 * without a mark, or with one that no kind carries, may be any. `closed` is true only
 * where the file says so; an absent one says nothing, and an open run is the weaker claim. `readingSd`: of a
 * distance across one, metres. */
export function resolveGroups(
  rows: readonly GroupRow[],
  kinds: readonly Kind[],
  kindsOfMark: ReadonlyMap<string, readonly string[]>,
  readingSd = 0.001,
): ResolvedGroups {
  const byId = new Map(kinds.map((kind) => [kind.id, kind]));
  const groups: JoinedGroup[] = [];
  const unsettled: UnsettledGroup[] = [];
  rows.forEach((row, group) => {
    const closed = row.closed === true;
    const choices = row.around.map((name) =>
      kindsNamed(name, byId, kindsOfMark).map((id) => byId.get(id) as Kind),
    );
    const ways = waysToRead(choices, closed);
    const rim = row.rim?.map((one) => ({ ...one, sd: readingSd }));
    if (ways.length === 1)
      groups.push({ around: ways[0] as string[], closed, count: row.count, ...(rim && { rim }) });
    else {
      const more = ways.length > MOST_WAYS;
      const around = choices.map((kinds, i) => {
        const ids = kinds.map((kind) => kind.id);
        return more || ways.length === 0 ? ids : ids.filter((id) => ways.some((w) => w[i] === id));
      });
      const readings = ways.slice(0, MOST_WAYS);
      unsettled.push({ group, readings, more, around, closed, count: row.count });
    }
  });
  return { groups, unsettled };
}

/** The kinds that a name in a group may stand for. */
function kindsNamed(
  name: string,
  byId: ReadonlyMap<string, Kind>,
  kindsOfMark: ReadonlyMap<string, readonly string[]>,
): readonly string[] {
  if (byId.has(name)) return [name];
  const { marks, open } = readMark(name);
  const named = marks.flatMap((mark) => (byId.has(mark) ? [mark] : (kindsOfMark.get(mark) ?? [])));
  return open || named.length === 0 ? [...byId.keys()] : [...new Set(named)];
}

/** Choices of one kind a panel whose neighbours can share seams; stops past `MOST_WAYS`. */
function waysToRead(choices: readonly (readonly Kind[])[], closed: boolean): string[][] {
  const ways: string[][] = [];
  const extend = (chosen: readonly Kind[]): void => {
    if (ways.length > MOST_WAYS) return;
    if (!canMeet(chosen, closed && chosen.length === choices.length)) return;
    if (chosen.length === choices.length) {
      ways.push(chosen.map((kind) => kind.id));
      return;
    }
    for (const kind of choices[chosen.length] as readonly Kind[]) extend([...chosen, kind]);
  };
  extend([]);
  return ways;
}

/** A panel's corner at the hub: the side that starts there, of the kind or its other hand. */
interface Corner {
  readonly kind: Kind;
  readonly side: number;
}

/** Whether the kinds can be turned so that each shares a seam with the next (and last with first). */
function canMeet(chosen: readonly Kind[], closed: boolean): boolean {
  const [first, ...rest] = chosen;
  if (!first) return true;
  return cornersOf(first).some((start) => {
    let reached = [start];
    for (const next of rest) {
      const from = reached;
      reached = cornersOf(next).filter((corner) => from.some((one) => meet(one, corner)));
    }
    return closed ? reached.some((last) => meet(last, start)) : reached.length > 0;
  });
}

const cornersOf = (kind: Kind): Corner[] =>
  bothWaysRound(kind).flatMap((one) => one.sides.map((_, side) => ({ kind: one, side })));

/** A kind, and its other hand where panels of it may be that. */
function bothWaysRound(kind: Kind): Kind[] {
  if (!kind.faceUnknown && !kind.bothHands) return [kind];
  const { sides, sideSds } = kind;
  return [kind, { ...kind, sides: fromOtherFace(sides), sideSds: fromOtherFace(sideSds) }];
}

/** Whether the side of the one corner's panel that ends at the hub and the side of the other's that
 * starts there may be of one length. */
function meet(one: Corner, next: Corner): boolean {
  const [a, b] = [one.kind, next.kind];
  const ending = (one.side + a.sides.length - 1) % a.sides.length;
  const off = Math.abs((a.sides[ending] as number) - (b.sides[next.side] as number));
  const sd = Math.hypot(a.sideSds[ending] as number, b.sideSds[next.side] as number);
  return off <= SEAM_Z * sd;
}
