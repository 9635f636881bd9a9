// The slips of a pile, each told with what its reading should say: those that would have been kinds
// of their own, and sides that stand off from their kind too far for noise.

import type { AssignedReading } from './assign.ts';
import type { Compared } from './findings.ts';
import { fromOtherFace, nearestTurn } from './polygon.ts';
import type { ReadingRow } from './schema.ts';
import { type ReadingSlip, type Remedy, remedied, remediesFor } from './slips.ts';
import { SLIP_Z } from './tolerances.ts';

/** Readings that a kind must have before one that disagrees is the one at fault. */
const ESTABLISHED = 3;

/** What the slips are found from. */
export interface Readings {
  readonly rows: readonly ReadingRow[];
  readonly kinds: readonly Compared[];
  readonly assigned: readonly AssignedReading[];
  /** Index of a reading → its remedy, of those that would have been kinds of their own. */
  readonly remedies: ReadonlyMap<number, Remedy>;
  /** Person → what the tape adds, metres. */
  readonly biases: ReadonlyMap<string, number>;
  /** Noise of one side, metres. */
  readonly sd: number;
}

/** The slips, in the order of the readings. */
export function slipsOf({ rows, kinds, assigned, remedies, biases, sd }: Readings): ReadingSlip[] {
  const byId = new Map(kinds.map((kind) => [kind.id, kind]));
  return assigned.flatMap((entry): ReadingSlip[] => {
    const row = rows[entry.reading] as ReadingRow;
    const kind = byId.get(entry.candidates[0] as string) as Compared;
    if (row.asRead) return [];
    const bias = row.by === undefined ? 0 : (biases.get(row.by) ?? 0);
    const inside = row.seenFrom === 'inside';
    const asSeen = (inside ? fromOtherFace(row.sides) : row.sides).map((x) => x - bias);
    const known = remedies.get(entry.reading);
    const remedy = known ?? remedyOf(asSeen, row, entry, kind, bias, sd);
    if (!remedy) return [];
    const expected = expectedOf(asSeen, remedy, kind, row.seenFrom === 'unknown');
    const n = row.sides.length;
    const sides = sidesAtFault(remedy).map((side) => (inside ? n - 1 - side : side));
    return [
      {
        reading: entry.reading,
        tag: row.tag ?? null,
        by: row.by ?? null,
        kind: kind.id,
        slip: remedy.slip,
        orElse: remedy.orElse,
        sides: sides.sort((a, b) => a - b),
        measured: row.sides,
        expected: (inside ? fromOtherFace(expected) : expected).map((x) => x + bias),
      },
    ];
  });
}

/** What makes a reading right that lies on a kind of which enough was read, or null where it is right
 * or nothing does. */
function remedyOf(
  asSeen: readonly number[],
  row: ReadingRow,
  entry: AssignedReading,
  kind: Compared,
  bias: number,
  sd: number,
): Remedy | null {
  if (kind.readings < ESTABLISHED) return null;
  const isOff = row.sides.some((measured, side) => {
    const on = entry.liesOn[side] as number;
    if ((kind.rivals[on] ?? null) !== null) return false;
    const off = Math.abs(measured - bias - (kind.sides[on] as number));
    return off > SLIP_Z * Math.hypot(sd, kind.sds[on] as number);
  });
  if (!isOff || kind.rivals.some((rival) => rival !== null)) return null;
  return remediesFor(asSeen, row.seenFrom !== 'unknown', kind, sd)[0] ?? null;
}

/** What the reading should say, in the order of its sides as seen from outside. */
function expectedOf(
  asSeen: readonly number[],
  remedy: Remedy,
  kind: Compared,
  faceUnknown: boolean,
): number[] {
  const right = remedied(asSeen, remedy);
  const lay = (sides: readonly number[]): { cost: number; sides: number[] } => {
    const { turn, cost } = nearestTurn(
      sides,
      right.map((x) => (Number.isNaN(x) ? 0 : x)),
      (_, at) => (Number.isNaN(right[at]) ? 0 : 1),
    );
    return { cost, sides: right.map((_, i) => sides[(i + turn) % sides.length] as number) };
  };
  const [ahead, back] = [lay(kind.sides), lay(fromOtherFace(kind.sides))];
  return faceUnknown && back.cost < ahead.cost ? back.sides : ahead.sides;
}

/** The sides of the reading that the remedy is about, as seen from outside. */
function sidesAtFault({ slip, order, factors }: Remedy): number[] {
  if (slip === 'face') return [...order];
  return order.filter((from, i) => from !== i || factors[i] !== 1);
}
