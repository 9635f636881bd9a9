// Slips of readings put right, or told to be none; and whose tape is taken off. Recipes for one step
// each, so that every one can be undone. Sides count from 0; metres as written down.

import type { PileKinds, ReadingRow, ReadingSlip, Slip } from '@shellraise/core';
import type { Draft } from 'immer';
import type { Doc } from '../../state/doc.ts';

const INCH = 2.54;
const FOOT = 0.3048;
/** Lengths that the others of a kind say are written to a tenth of a millimetre. */
const round = (metres: number): number => Number(metres.toFixed(4));
const LONGEST_NOTE = 2000;
/** Sides further than this from what they should read are taken from the kind, not reckoned over. */
const NEAR = 0.02;

/** A slip of a reading as one may see it. `as`: what it is taken for, where two look alike. */
export interface SlipMend {
  readonly slip: ReadingSlip;
  readonly as: Slip;
}

/** Puts a reading right. `note` says what it read before. */
export function mendReading(
  doc: Draft<Doc>,
  row: number,
  { slip, as }: SlipMend,
  note: string,
): void {
  const reading = doc.project.pile.readings[row];
  if (!reading || !isOf(reading as ReadingRow, slip)) return;
  if (as === 'face') {
    if (reading.seenFrom === 'unknown') return;
    reading.seenFrom = reading.seenFrom === 'outside' ? 'inside' : 'outside';
    return;
  }
  reading.sides = rightSides(slip, as);
  reading.note = [reading.note, note].filter(Boolean).join(' ').slice(0, LONGEST_NOTE);
}

/** Whether the reading still says what the slip is about. */
export const isOf = ({ sides }: ReadingRow, { measured }: ReadingSlip): boolean =>
  sides.length === measured.length && sides.every((x, i) => x === measured[i]);

/** The sides as they should have been written. */
export function rightSides({ sides, measured, expected }: ReadingSlip, as: Slip): number[] {
  if (as === 'swapped') return reordered(measured, expected);
  return measured.map((x, i) => {
    const wanted = expected[i] as number;
    if (!sides.includes(i)) return x;
    return as === 'unit' ? inOtherUnit(x, wanted) : round(wanted);
  });
}

/** The measured sides in the order in which they come nearest to the expected ones. */
function reordered(measured: readonly number[], expected: readonly number[]): number[] {
  const left = [...measured];
  return expected.map((wanted) => {
    const off = left.map((x) => Math.abs(x - wanted));
    return left.splice(off.indexOf(Math.min(...off)), 1)[0] as number;
  });
}

/** Inches taken for centimetres, feet and inches for decimal feet, or the other way round: whichever
 * comes near. */
function inOtherUnit(x: number, wanted: number): number {
  const feet = Math.floor(x / FOOT);
  const rest = x / FOOT - feet;
  const ways = [
    x * INCH,
    x / INCH,
    FOOT * (feet + (10 * rest) / 12),
    FOOT * (feet + (100 * rest) / 12),
    FOOT * (feet + rest * 1.2),
  ];
  const off = ways.map((one) => Math.abs(one - wanted));
  const least = Math.min(...off);
  return least < NEAR ? round(ways[off.indexOf(least)] as number) : round(wanted);
}

/** Says that a reading stands as it was read, or takes that back. */
export function standAsRead(doc: Draft<Doc>, row: number, stands: boolean): void {
  const reading = doc.project.pile.readings[row];
  if (!reading) return;
  if (stands) reading.asRead = true;
  else delete reading.asRead;
}

/** States what a person's tape adds, metres; null lets it be reckoned from the readings again. */
export function stateTape(doc: Draft<Doc>, by: string, shift: number | null): void {
  const { pile } = doc.project;
  const others = (pile.people ?? []).filter((one) => one.by !== by);
  const people = shift === null ? others : [...others, { by, shift: round(shift) }];
  if (people.length > 0) pile.people = people;
  else delete pile.people;
}

/** Kinds of which the face of some or all panels is not noted, with a reading to look at. */
export interface FaceUnknown {
  readonly kind: string;
  /** All panels, or some. */
  readonly all: boolean;
  /** Index of a reading of unknown face; null where only the row of the file is of it. */
  readonly row: number | null;
}

/** The kinds whose face somebody should look at, in the order of the pile. */
export function facesUnknown(
  { kinds, assigned }: Pick<PileKinds, 'kinds' | 'assigned'>,
  readings: readonly ReadingRow[],
): FaceUnknown[] {
  return kinds.flatMap(({ id, hand, laps, faceUnknown, bothHands }): FaceUnknown[] => {
    if (!faceUnknown && !bothHands) return [];
    // The same from either face: nothing to look for.
    if (hand === null && !laps) return [];
    const own = assigned.find(
      ({ reading, kind, candidates }) =>
        (kind ?? candidates[0]) === id && readings[reading]?.seenFrom === 'unknown',
    );
    return [{ kind: id, all: faceUnknown === true, row: own?.reading ?? null }];
  });
}
