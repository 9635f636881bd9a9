// The stiffness that an opening costs: the frame of the whole shell against that of the shell without
// the opening's panels, every seam snug, a plate on every hub, the base ring held.

import { frameOf } from '../../frame/from-shell.ts';
import { type FrameMesh, meshOf } from '../../frame/mesh.ts';
import type { FrameParts } from '../../frame/parts.ts';
import { type Prepared, prepare, statics } from '../../frame/statics.ts';
import { dotOf } from '../../math/eigen/krylov.ts';
import { hubCount, placeCount, type Shell } from '../../shell/shell.ts';
import type { OpeningRank } from './rank.ts';

/** What is left of a shell's stiffness. */
export interface StiffnessKept {
  /** Work that equal pushes on all hubs that are left do on the whole shell, over what they do on the
   * shell with the opening: 1 nothing lost, 0 it does not stand. The least of three pushes. */
  readonly kept: number;
  /** The push that finds it softest: along x (towards the datum), y, or z (down). */
  readonly push: 'x' | 'y' | 'z';
}

const PUSHES = ['x', 'y', 'z'] as const;

/** A shell whose openings are asked about one after another; the whole is worked out once. Places
 * left out must leave a shell with a base ring; RangeError where one is none of the shell's. No frame
 * around the opening is counted: it would give some of the stiffness back. */
export function openingStiffness(
  shell: Shell,
  parts: FrameParts,
): (places: readonly number[]) => StiffnessKept {
  const all = [...Array(placeCount(shell)).keys()];
  const whole = workOut(shell, parts, all);
  return (places) => {
    const odd = places.find((p) => !(Number.isInteger(p) && p >= 0 && p < all.length));
    if (odd !== undefined) throw new RangeError(`place ${odd} of ${all.length}`);
    const out = new Set(places);
    const left = workOut(
      shell,
      parts,
      all.filter((p) => !out.has(p)),
    );
    return stiffnessKept(whole, left);
  };
}

/** What is left of the stiffness of a whole frame in one of the same shell without some panels. */
export function stiffnessKept(whole: Worked, left: Worked): StiffnessKept {
  const kept = PUSHES.map((_, axis) => {
    const soft = workOf(left, left.mesh, axis);
    return soft === null ? 0 : (workOf(whole, left.mesh, axis) as number) / soft;
  });
  const least = Math.min(...kept);
  return { kept: least, push: PUSHES[kept.indexOf(least)] as 'x' };
}

/** Openings of a list that are asked what they leave, at most: each takes the frame of a whole shell. */
export const STIFFNESS_ASKED = 10;

/** Something of a list of openings with what it leaves; null where that was not worked out. */
export type WithStiffness<T> = T & { readonly stiffness: StiffnessKept | null };

/** A ranked list with what its first ones leave (`kept`, in the list's order; of more than the list has
 * the rest is passed over). Ranked by `least harm` these come stiffest first, as seams cut and hubs
 * freed only say which are worth asking about; the rest follows as it was. */
export function withStiffness<T>(
  list: readonly T[],
  kept: readonly StiffnessKept[],
  rank: OpeningRank,
): WithStiffness<T>[] {
  const all = list.map((one, i) => ({ ...one, stiffness: kept[i] ?? null }));
  if (rank !== 'least harm') return all;
  const left = ({ stiffness }: WithStiffness<T>): number => stiffness?.kept ?? -1;
  return all.sort((a, b) => left(b) - left(a));
}

/** A frame that is factored. */
export interface Worked {
  readonly mesh: FrameMesh;
  readonly prepared: Prepared;
}

function workOut(shell: Shell, parts: FrameParts, placed: readonly number[]): Worked {
  const plates = [...Array(hubCount(shell)).keys()];
  const mesh = meshOf(frameOf(shell, { placed, plates, pass: () => 'snug' }), parts);
  return { mesh, prepared: prepare(mesh.structure) };
}

/** Work of a newton along an axis on each hub that stands in `standing`; null where the frame moves
 * freely. */
function workOf({ mesh, prepared }: Worked, standing: FrameMesh, axis: number): number | null {
  const load = new Float64Array(2 * mesh.structure.nodes.length);
  for (const hub of new Set(standing.hubOfNode))
    if (hub >= 0) load[6 * mesh.hubOfNode.indexOf(hub) + axis] = axis === 2 ? -1 : 1;
  const found = statics(prepared, load);
  return found.status === 'stands' ? dotOf(load, found.moved) : null;
}
