// Can this body pass this opening: a way that was found, a proof that there is none, or neither.

import { type BodyShape, bodyOf } from './body.ts';
import { type Carried, clearance, isClearMotion, type Scene } from './clear.ts';
import { crossingImpossible, discImpossible } from './crossing.ts';
import { type Impossible, plainlyImpossible } from './impossible.ts';
import type { Pose } from './pose.ts';
import { type PassSearch, type PassSearchOptions, searchWayOut } from './search.ts';
import type { Barrier } from './wall.ts';

/** The answer. A way out turned round is a way in. */
export type PassAnswer =
  | {
      readonly status: 'passes';
      /** Poses from inside to outside; between two it moves and turns evenly. */
      readonly motion: readonly Pose[];
      /** Least distance from wall and ground at those poses, m. */
      readonly clearance: number;
    }
  | { readonly status: 'cannot pass'; readonly by: Impossible['by']; readonly why: string }
  | {
      readonly status: 'not found';
      readonly why: string;
      readonly search: Omit<PassSearch, 'motion'>;
    };

/** How to look. */
export interface PassOptions extends PassSearchOptions {
  /** How high it may be raised; by hand to `HAND_HEIGHT` where left out. */
  readonly carried?: Carried;
  /** Cells that the proof by a disc may look into, 400,000 where left out, that by all turns a sixth of
   * that; 0: none is tried after the search. */
  readonly cells?: number;
}

/** The lowest point of a thing in people's hands is no higher over the ground than this, m: common
 * practice. */
export const HAND_HEIGHT = 1.2;

/** Whether a body passes from inside a wall to outside. A motion is held to the exact test before it is
 * told; throws should it fail. RangeError for a shape without size. */
export function passing(shape: BodyShape, barrier: Barrier, options: PassOptions = {}): PassAnswer {
  const scene: Scene = {
    body: bodyOf(shape),
    barrier,
    carried: options.carried ?? { by: 'hands', rise: HAND_HEIGHT },
  };
  const plain = plainlyImpossible(scene);
  if (plain !== null) return { status: 'cannot pass', ...plain };
  const { motion, ...search } = searchWayOut(scene, options);
  if (motion !== null) {
    if (!isClearMotion(scene, motion)) throw new Error('a way out that was found is not clear');
    const least = Math.min(...motion.map((pose) => clearance(scene, pose)));
    return { status: 'passes', motion, clearance: least };
  }
  const { cells = 400_000, shouldStop } = options;
  const stop = shouldStop ? { shouldStop } : {};
  const shut =
    discImpossible(scene, { cells, ...stop }) ??
    crossingImpossible(scene, { cells: cells / 6, ...stop });
  if (shut !== null) return { status: 'cannot pass', ...shut };
  return {
    status: 'not found',
    why: `${search.why}; not found is no proof that it cannot`,
    search,
  };
}
