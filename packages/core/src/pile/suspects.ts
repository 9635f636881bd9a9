// Sides that disagree with the rest of their kind by more than noise allows. A blunder does not pull
// on its kind, so a kind's own sides are what to expect; where readings stand one against one,
// nobody can tell which is wrong, and each is expected to be like the other.

import type { AssignedReading } from './assign.ts';
import { type Compared, chiSquareDeviate, type SuspectReading } from './findings.ts';
import { nearestTurn } from './polygon.ts';
import type { KindRow, Pile } from './schema.ts';
import { MAYBE_ONE_Z, SUSPECT_Z } from './tolerances.ts';

/** Suspect sides of readings and of rows, worst first. `biases` are those taken off each person's
 * readings, metres; `rows` the pile's kinds with their sides as seen from outside. */
export function suspectsOf(
  pile: Pile,
  rows: readonly KindRow[],
  kinds: readonly Compared[],
  assigned: readonly AssignedReading[],
  sd: number,
  biases: ReadonlyMap<string, number>,
): SuspectReading[] {
  const byId = new Map(kinds.map((kind) => [kind.id, kind]));
  const ofReadings = assigned.flatMap((entry) => {
    const row = pile.readings[entry.reading] as Pile['readings'][number];
    const kind = byId.get(entry.candidates[0] as string) as Compared;
    const bias = row.by === undefined ? 0 : (biases.get(row.by) ?? 0);
    const who = { reading: entry.reading, tag: row.tag ?? null, by: row.by ?? null };
    return row.sides.flatMap((measured, side) => {
      const off = suspectSide(kind, entry.liesOn[side] as number, measured - bias, sd);
      if (!off) return [];
      return [{ ...who, kind: kind.id, side, measured, expected: off.expected + bias, z: off.z }];
    });
  });
  const ofRows = rows.flatMap((row, i) => {
    const turnedOver = row.sides !== pile.kinds[i]?.sides;
    const found = [
      ...rowAgainst(row, byId.get(row.id) as Compared, sd),
      ...unreadRow(row, kinds, sd),
    ];
    const back = (side: number): number => row.sides.length - 1 - side;
    return turnedOver ? found.map((one) => ({ ...one, side: back(one.side) })) : found;
  });
  return [...ofReadings, ...ofRows].sort(
    (a, b) => Math.abs(b.z) - Math.abs(a.z) || (a.reading ?? -1) - (b.reading ?? -1),
  );
}

/** What the side of a kind should read instead of `measured`, or null where that may be noise. */
function suspectSide(
  kind: Compared,
  side: number,
  measured: number,
  sd: number,
): { expected: number; z: number } | null {
  const rival = kind.rivals[side] ?? null;
  const settled = kind.sides[side] as number;
  if (rival !== null) {
    const expected = Math.abs(measured - rival) > Math.abs(measured - settled) ? rival : settled;
    return { expected, z: (measured - expected) / (Math.SQRT2 * sd) };
  }
  const z = (measured - settled) / Math.hypot(sd, kind.sds[side] as number);
  return Math.abs(z) < SUSPECT_Z ? null : { expected: settled, z };
}

const ROW = { reading: null, tag: null, by: null } as const;

/** Sides of a row that its own readings contradict. */
function rowAgainst(row: KindRow, kind: Compared, sd: number): SuspectReading[] {
  return row.sides.flatMap((measured, side) => {
    const off = kind.readings > 0 ? suspectSide(kind, side, measured, sd) : null;
    return off ? [{ ...ROW, kind: row.id, side, measured, ...off }] : [];
  });
}

/** A row that nothing was read of, while a kind that is in no row is like it but for one side. */
function unreadRow(row: KindRow, kinds: readonly Compared[], sd: number): SuspectReading[] {
  if ((kinds.find((kind) => kind.id === row.id) as Compared).readings > 0.5) return [];
  return kinds
    .filter((kind) => !kind.stated && kind.sides.length === row.sides.length)
    .flatMap((kind) =>
      row.sides.flatMap((measured, side) => {
        const fit = nearestTurn(kind.sides, row.sides, (on, at) =>
          at === side ? 0 : 1 / (sd ** 2 + (kind.sds[on] as number) ** 2),
        );
        if (chiSquareDeviate(fit.cost, row.sides.length - 1) > MAYBE_ONE_Z) return [];
        const expected = kind.sides[(side + fit.turn) % row.sides.length] as number;
        return [{ ...ROW, kind: row.id, side, measured, expected, z: (measured - expected) / sd }];
      }),
    );
}
