// Which panels left over could be cut down to one that is short, a row a kind.

import type { Kind } from '../../pile/kind.ts';
import { type Trim, trims } from './trim.ts';

/** Room that a saw and a new flange want at each cut side, metres: our own judgement. */
const CUT_ROOM = 0.01;

/** A panel left over that could be cut down. */
export interface CutDown {
  /** Index of its kind, and how many are to spare. */
  readonly kind: number;
  readonly spare: number;
  /** The way to cut it with the most room. */
  readonly trim: Trim;
}

/** Kinds with panels to spare that one of kind `wanted` could be cut from, the most room first; ties as
 * the kinds come. `spares`: kind (index) → good panels that no place needs. RangeError for a kind that is
 * none of the list. */
export function cutDown(
  kinds: readonly Kind[],
  wanted: number,
  spares: readonly number[],
): readonly CutDown[] {
  const own = kinds[wanted];
  if (!own) throw new RangeError(`kind ${wanted} of ${kinds.length}`);
  return kinds
    .flatMap(({ sides }, kind): CutDown[] => {
      const spare = spares[kind] ?? 0;
      const [trim] = kind === wanted || spare <= 0 ? [] : trims(sides, own.sides, CUT_ROOM);
      return trim ? [{ kind, spare, trim }] : [];
    })
    .sort((a, b) => b.trim.margin - a.trim.margin);
}
