// What a person decides on the Shape sheet, written into the project: a mend taken, a kind left out
// or taken back, a face told, an allowance taken. Each is a recipe for one step that can be undone.
// Lengths in metres; a pile's are without the hub allowance.

import type { HandTest, Kind, Mend, Pile, PileKinds } from '@shellraise/core';
import type { Draft } from 'immer';
import type { Doc } from '../../state/doc.ts';
import { type RowBehind, rowsBehind, runsAhead } from './behind.ts';

type Sides = { sides: number[]; note?: string | undefined; seenFrom?: Face | undefined };
type Face = 'outside' | 'inside' | 'unknown';

const INCH = 2.54;
/** How near a side must come for one unit to have been taken for another, as a share. */
const SAME_UNIT = 0.02;
/** Lengths that a net says are written to a tenth of a millimetre. */
const STEP = 1e-4;
const LONGEST_NOTE = 2000;

/** Puts right what was wrong with a kind, in every row that it rests on. `note` says what the row read
 * before. */
export function takeMend(
  doc: Draft<Doc>,
  mend: Mend,
  worked: PileKinds,
  note: (measured: readonly number[]) => string,
): void {
  const { pile } = doc.project;
  const allowance = pile.hubAllowance ?? 0;
  for (const behind of rowsBehind(mend.kind, worked, pile as Pile)) {
    const row: Sides | undefined = pile[behind.list][behind.row];
    if (!row) continue;
    if (mend.slip === 'face') {
      const face = row.seenFrom ?? (behind.list === 'kinds' ? 'outside' : 'unknown');
      if (face !== 'unknown') row.seenFrom = face === 'outside' ? 'inside' : 'outside';
      continue;
    }
    const before = [...row.sides];
    const after = mended(before, behind.liesOn, mend, allowance);
    if (after.every((x, i) => x === before[i])) continue;
    row.sides = after;
    row.note = [row.note, note(before)].filter(Boolean).join(' ').slice(0, LONGEST_NOTE);
  }
}

/** Sides of one row as they should have been written. */
export function mended(
  sides: readonly number[],
  liesOn: readonly number[],
  { slip, sides: about, measured, expected }: Mend,
  allowance = 0,
): number[] {
  const wanted = (i: number): number => (expected[liesOn[i] as number] ?? 0) - allowance;
  const read = (i: number): number => (measured[liesOn[i] as number] ?? 0) - allowance;
  const isOff = (i: number): boolean =>
    Math.abs((sides[i] as number) - wanted(i)) > Math.abs(read(i) - wanted(i)) / 2;
  if (slip === 'swapped') return swapped(sides, liesOn, about, wanted);
  if (slip === 'shift') {
    const shift = expected.reduce((sum, x, i) => sum + x - (measured[i] ?? x), 0) / expected.length;
    return sides.every((_, i) => isOff(i)) ? sides.map((x) => rounded(x + shift)) : [...sides];
  }
  return sides.map((x, i) => {
    if (!about.includes(liesOn[i] as number) || !isOff(i)) return x;
    return slip === 'unit' ? inOtherUnit(x, wanted(i)) : rounded(wanted(i));
  });
}

const rounded = (metres: number): number => Number((Math.round(metres / STEP) * STEP).toFixed(4));

/** The two sides the other way about, where that is nearer to what they should be. */
function swapped(
  sides: readonly number[],
  liesOn: readonly number[],
  about: readonly number[],
  wanted: (i: number) => number,
): number[] {
  const [a, b] = about.map((side) => liesOn.indexOf(side));
  if (a === undefined || b === undefined || a < 0 || b < 0) return [...sides];
  const [x, y] = [sides[a] as number, sides[b] as number];
  const stays = Math.abs(x - wanted(a)) + Math.abs(y - wanted(b));
  const goes = Math.abs(y - wanted(a)) + Math.abs(x - wanted(b));
  return goes < stays ? sides.map((s, i) => (i === a ? y : i === b ? x : s)) : [...sides];
}

function inOtherUnit(written: number, wanted: number): number {
  const factor = [INCH, 1 / INCH].find((one) => Math.abs((written * one) / wanted - 1) < SAME_UNIT);
  return factor === undefined ? rounded(wanted) : Number((written * factor).toFixed(6));
}

/** Leaves a kind out of the shape. A kind that the file has no row for gets one. */
export function leaveOut(doc: Draft<Doc>, kind: Kind): void {
  const { pile } = doc.project;
  const row = pile.kinds.find(({ id }) => id === kind.id);
  if (row) {
    row.leaveOut = true;
    return;
  }
  const allowance = pile.hubAllowance ?? 0;
  pile.kinds.push({
    id: kind.id,
    marks: [],
    sides: kind.sides.map((x) => rounded(x - allowance)),
    ...(kind.faceUnknown && { seenFrom: 'unknown' }),
    leaveOut: true,
  });
}

/** Takes a kind back in. A row that is there for nothing but to leave it out goes. */
export function takeBack(doc: Draft<Doc>, id: string, worked: PileKinds): void {
  const { pile } = doc.project;
  const at = pile.kinds.findIndex((row) => row.id === id);
  const row = pile.kinds[at];
  if (!row) return;
  const { good, repair, scrap, marks, note, laps, holes, dihedrals, mass } = row;
  const bare = [good, repair, scrap, note, laps, holes, dihedrals, mass].every(
    (one) => one == null,
  );
  const read = worked.assigned.some(({ kind, candidates }) => (kind ?? candidates[0]) === id);
  if (bare && marks.length === 0 && read) pile.kinds.splice(at, 1);
  else delete row.leaveOut;
}

/** Kinds that somebody left out, in the order of the file. */
export const leftOutOf = ({ kinds }: Pick<Pile, 'kinds'>): string[] =>
  kinds.flatMap(({ id, leaveOut: out }) => (out ? [id] : []));

/** Adds what the net says to the hub allowance. */
export function takeAllowance(doc: Draft<Doc>, more: number): void {
  const { pile } = doc.project;
  pile.hubAllowance = rounded((pile.hubAllowance ?? 0) + more);
}

/** Notes the face of every reading and row of the kind that was looked at. `asShown`: seen from
 * outside its sides run as the test says. */
export function tellFaces(
  doc: Draft<Doc>,
  test: Pick<HandTest, 'kind' | 'order'>,
  asShown: boolean,
  worked: PileKinds,
): void {
  const { pile } = doc.project;
  const ahead = runsAhead({ liesOn: test.order }) === asShown;
  for (const behind of rowsBehind(test.kind, worked, pile as Pile)) {
    const row: Sides | undefined = pile[behind.list][behind.row];
    if (row) noteFace(row, behind, ahead);
  }
}

function noteFace(row: Sides, behind: RowBehind, ahead: boolean): void {
  if ((row.seenFrom ?? (behind.list === 'kinds' ? 'outside' : 'unknown')) !== 'unknown') return;
  row.seenFrom = runsAhead(behind) === ahead ? 'outside' : 'inside';
}
