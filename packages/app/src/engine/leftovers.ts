// What a standing shell leaves over, and what that stands: lesser shells of the same net, or two shells
// that share the heap.

import {
  type Besides,
  bestSplit,
  type DecidedSecond,
  decidedWay,
  type Kind,
  kindsAfter,
  leftAfter,
  type SecondShell,
  type Shell,
  secondShells,
} from '@shellraise/core';
import { type CandidatePicture, candidatePicture } from './drawings.ts';

/** What a standing shell leaves over is asked for. */
export interface LeftoverQuestion {
  readonly net: Shell;
  readonly shell: Shell;
  readonly kinds: readonly Kind[];
  readonly interchangeable: readonly (readonly string[])[];
  readonly plain: readonly string[];
  readonly besides: Besides;
}

/** What is left over, and what it stands. */
export interface LeftoverAnswer {
  /** Kind → good panels that are left when those that were decided on have theirs. */
  readonly left: readonly number[];
  readonly second: readonly ShownSecond[];
  /** What both shells are when the heap is shared: height, floor across, panels. */
  readonly split: readonly ShownHalf[];
}

/** A lesser shell with its drawing and what decides for it. */
export interface ShownSecond {
  readonly lacks: number;
  readonly lacking: SecondShell['lacking'];
  readonly height: number;
  /** Mean diameter of the base ring, metres. */
  readonly floor: number;
  readonly flat: boolean;
  readonly unevenness: number;
  readonly picture: CandidatePicture;
  readonly decided: Omit<DecidedSecond, 'name'>;
}

/** One of two shells that share a heap. */
export interface ShownHalf {
  readonly height: number;
  readonly floor: number;
  readonly panels: number;
}

/** What a standing shell leaves over, and what that stands of the same net. */
export function leftovers(question: LeftoverQuestion): LeftoverAnswer {
  const { net, shell, kinds, plain, besides, interchangeable } = question;
  const left = leftAfter(shell, kinds, plain, besides);
  const stock = kindsAfter(shell, kinds, plain, besides).map((kind) => kind.good);
  const split = bestSplit(net, kinds, stock, { interchangeable });
  return {
    left,
    second: secondShells(net, kinds, left, { interchangeable }).map((one) =>
      shownSecond(net, kinds, one),
    ),
    split: (split?.cuts ?? []).map((cut) => ({
      height: cut.height,
      floor: 2 * cut.floor.mean,
      panels: cut.places.length,
    })),
  };
}

function shownSecond(net: Shell, kinds: readonly Kind[], one: SecondShell): ShownSecond {
  const { what, way, cut, places, height, lacks, lacking } = one;
  const panels = kinds.flatMap(({ id }, k) => {
    const count = places.filter((p) => net.kind[p] === k).length;
    return count > 0 ? [{ kind: id, count }] : [];
  });
  return {
    lacks,
    lacking,
    height,
    floor: 2 * cut.floor.mean,
    flat: cut.flat,
    unevenness: cut.baseZ.max - cut.baseZ.min,
    picture: candidatePicture(net, { crown: way.crown, places }),
    decided: {
      what,
      wayUp: decidedWay(way),
      cut: { places: cut.places.length, height: cut.height },
      panels,
      height,
    },
  };
}
