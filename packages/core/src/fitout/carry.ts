// Whether what the shell is for passes its door, or the shell before it is closed: a motion found, shown
// impossible, or neither within the search.

import { bodyOf, placedAt } from '../passage/body.ts';
import { type PassAnswer, type PassOptions, passing } from '../passage/passing.ts';
import { barrierOf } from '../passage/wall.ts';
import { placeCount, type Shell } from '../shell/shell.ts';
import type { FitoutSettings } from './schema.ts';

/** One thing that must pass. */
export type Carry = FitoutSettings['carry'][number];

/** What is asked. */
export interface CarryQuestion {
  readonly shell: Shell;
  /** Places left open on purpose. */
  readonly leftOut: readonly number[];
  /** The order in which places are filled. */
  readonly order: readonly number[];
  /** Panels placed so far, in that order; null: all. */
  readonly placed: number | null;
  /** From the skin inwards to the flanges' edge, metres. */
  readonly flange: number;
}

/** How a thing passes. */
export interface CarryAnswer {
  readonly name: string;
  readonly answer: PassAnswer;
  /** Whether only a shape that holds the thing was asked about. */
  readonly roughly: boolean;
  /** Hulls of its parts in some poses of the motion, from inside to outside, stride 3. */
  readonly seen: readonly (readonly Float64Array[])[];
  /** Places with their panels. */
  readonly placed: readonly number[];
}

/** Poses that are drawn at most. */
const MOST_SEEN = 7;

/** The answer of one thing. RangeError for a flange without depth, or a shape without size. */
export function carryThrough(
  { shell, leftOut, order, placed, flange }: CarryQuestion,
  { name, shape, roughly }: Carry,
  options: PassOptions = {},
): CarryAnswer {
  const out = new Set(leftOut);
  const upTo = placed ?? placeCount(shell);
  const standing = order.filter((place) => !out.has(place)).slice(0, upTo);
  const found = passing(shape, barrierOf(shell, standing, flange), {
    ...options,
    // Nothing that is proved of a shape that only holds the thing is true of the thing.
    ...(roughly ? { cells: 0 } : {}),
  });
  const answer: PassAnswer =
    roughly && found.status === 'cannot pass'
      ? {
          status: 'not found',
          why: `a body that holds it cannot pass (${found.why}); with its hollows it may`,
          search: { crossings: 0, clear: 0, movements: 0, why: '' },
        }
      : found;
  return { name, answer, roughly, seen: seenOf(shape, answer), placed: standing };
}

function seenOf(shape: Carry['shape'], answer: PassAnswer): CarryAnswer['seen'] {
  if (answer.status !== 'passes' || answer.motion.length === 0) return [];
  const body = bodyOf(shape);
  const { motion } = answer;
  // A dish is made of wedges: drawn as one.
  const drawn = (parts: readonly Float64Array[]): readonly Float64Array[] =>
    shape.form === 'dish' ? [Float64Array.from(parts.flatMap((part) => [...part]))] : parts;
  const count = Math.min(MOST_SEEN, motion.length);
  const step = (motion.length - 1) / Math.max(1, count - 1);
  return Array.from({ length: count }, (_, i) => motion[Math.round(i * step)]).flatMap((pose) =>
    pose === undefined ? [] : [drawn(placedAt(body, pose))],
  );
}
