// Which sides may be joined by how their flanges lap and how many holes they have. Over meets under,
// flush meets flush, equal numbers of holes meet; what nobody looked at meets anything.
//
// Kind-sides are numbered through all kinds, as in a corner model.

import type { Kind, Lap } from '../pile/kind.ts';

/** What is known of how a side is joined. */
export interface SideJoint {
  readonly lap: Lap | null;
  readonly holes: number | null;
}

/** Kind → its sides' joints. */
export type Joints = readonly (readonly SideJoint[])[];

const ANSWER: Readonly<Record<Lap, Lap>> = { over: 'under', under: 'over', flush: 'flush' };

/** The joints of these kinds; null where nobody looked at any. */
export function jointsOf(kinds: readonly Kind[]): Joints | null {
  const joints = kinds.map((kind) =>
    kind.sides.map((_, i): SideJoint => {
      const lap = kind.laps?.[i] ?? null;
      return { lap, holes: kind.holes?.[i] ?? null };
    }),
  );
  return joints.flat().some(isKnown) ? joints : null;
}

const isKnown = ({ lap, holes }: SideJoint): boolean => lap !== null || holes !== null;

/** Whether two sides can be joined. A side may meet itself in another panel only if flush. */
export const mayJoin = (a: SideJoint, b: SideJoint): boolean =>
  (a.lap === null || b.lap === null || ANSWER[a.lap] === b.lap) && holesAgree(a, b);

/** Whether two sides may be of one make: of one kind turned, or of two kinds that are one. */
export const mayBeOneMake = (a: SideJoint, b: SideJoint): boolean =>
  (a.lap === null || b.lap === null || a.lap === b.lap) && holesAgree(a, b);

const holesAgree = (a: SideJoint, b: SideJoint): boolean =>
  a.holes === null || b.holes === null || a.holes === b.holes;

/** A number for each make: the same lap and holes as far as both are known or both unknown. */
export const makeOf = ({ lap, holes }: SideJoint): number =>
  (holes === null ? 0 : holes + 1) * 4 + (lap === null ? 0 : LAPS.indexOf(lap) + 1);

const LAPS: readonly Lap[] = ['over', 'under', 'flush'];

/** Kind-side × kind-side: 1 where the pair passes `test`. Null where no joints are known. */
export function jointMatrix(
  joints: Joints | null,
  test: (a: SideJoint, b: SideJoint) => boolean,
): Uint8Array | null {
  if (!joints) return null;
  const all = joints.flat();
  const matrix = new Uint8Array(all.length ** 2);
  all.forEach((a, s) => {
    all.forEach((b, t) => {
      matrix[s * all.length + t] = test(a, b) ? 1 : 0;
    });
  });
  return matrix;
}
