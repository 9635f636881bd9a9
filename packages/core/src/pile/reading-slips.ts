// The slips of a pile, each told with what its reading should say: those that would have been kinds
// of their own, and sides that stand off from their kind too far for noise.

import type { AssignedReading } from './assign.ts';
import type { Compared } from './findings.ts';
import { fromOtherFace } from './polygon.ts';
import type { ReadingRow } from './schema.ts';
import {
  type ReadingSlip,
  type Remedy,
  remedied,
  remediesFor,
  sidesAtFault,
  sidesLaidOn,
} from './slips.ts';
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
    const found = known
      ? { kind, remedy: known }
      : remedyOf({ asSeen, row, entry, bias, sd }, kind, kinds);
    if (!found) return [];
    const { kind: of, remedy } = found;
    const expected = expectedOf(asSeen, remedy, of, row.seenFrom === 'unknown');
    const n = row.sides.length;
    const sides = sidesAtFault(remedy).map((side) => (inside ? n - 1 - side : side));
    return [
      {
        reading: entry.reading,
        tag: row.tag ?? null,
        by: row.by ?? null,
        kind: of.id,
        slip: remedy.slip,
        orElse: remedy.orElse,
        sides: sides.sort((a, b) => a - b),
        measured: row.sides,
        expected: (inside ? fromOtherFace(expected) : expected).map((x) => x + bias),
      },
    ];
  });
}

interface OneReading {
  /** As seen from outside, the person's bias taken off. */
  readonly asSeen: readonly number[];
  readonly row: ReadingRow;
  readonly entry: AssignedReading;
  readonly bias: number;
  readonly sd: number;
}

/** What makes a reading right that lies on a kind of which enough was read, or null where it is right
 * or nothing does. Kinds that differ in one side fit a reading with that side off alike; one that a
 * wrong unit explains goes before. */
function remedyOf(
  { asSeen, row, entry, bias, sd }: OneReading,
  kind: Compared,
  kinds: readonly Compared[],
): { readonly kind: Compared; readonly remedy: Remedy } | null {
  if (!isEstablished(kind)) return null;
  const isOff = row.sides.some((measured, side) => {
    const on = entry.liesOn[side] as number;
    const off = Math.abs(measured - bias - (kind.sides[on] as number));
    return off > SLIP_Z * Math.hypot(sd, kind.sds[on] as number);
  });
  if (!isOff) return null;
  const faceKnown = row.seenFrom !== 'unknown';
  const remedies = [kind, ...kinds.filter((other) => other !== kind)].flatMap((other) => {
    if (!isEstablished(other)) return [];
    const [remedy] = remediesFor(asSeen, faceKnown, other, sd, bias);
    return remedy && (other === kind || remedy.inches) ? [{ kind: other, remedy }] : [];
  });
  return remedies.find(({ remedy }) => remedy.slip !== 'length') ?? remedies[0] ?? null;
}

const isEstablished = ({ readings, rivals }: Compared): boolean =>
  readings >= ESTABLISHED && rivals.every((rival) => rival === null);

/** What the reading should say, in the order of its sides as seen from outside. */
function expectedOf(
  asSeen: readonly number[],
  remedy: Remedy,
  kind: Compared,
  faceUnknown: boolean,
): number[] {
  const right = remedied(asSeen, remedy);
  const ahead = sidesLaidOn(right, kind.sides);
  const back = sidesLaidOn(right, fromOtherFace(kind.sides));
  return faceUnknown && back.cost < ahead.cost ? back.sides : ahead.sides;
}
