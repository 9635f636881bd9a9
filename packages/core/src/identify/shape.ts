// The answer of the identification: the shapes that the kinds of a pile close into.

import type { JoinedGroup, Kind } from '../pile/kind.ts';
import type { Shell } from '../shell/shell.ts';

/** What the identification reads. Kinds without counts, and no groups, are enough. */
export interface ShapeQuestion {
  readonly kinds: readonly Kind[];
  readonly groups: readonly JoinedGroup[];
  /** Standard deviation of an unknown length that is missing from every side alike (an unknown hub
   * allowance), metres; absent or 0 where the allowance is known. */
  readonly allowanceSd?: number;
}

/** A side whose measured length does not fit the closed net. Sides count from 0. */
export interface Suspect {
  readonly kind: string;
  readonly side: number;
  /** Metres. */
  readonly measured: number;
  /** Metres, from the fit of the whole net without this side's own weight. */
  readonly expected: number;
}

/** A subdivision with a name, as far as tape can tell. */
export interface Subdivision {
  readonly solid: 'icosahedron' | 'octahedron' | 'tetrahedron';
  /** Steps along and across, in the notation {3,q+}b,c; class I has c = 0, class II b = c. */
  readonly b: number;
  readonly c: number;
  /** Several, joined by " or ", where the readings can't tell them apart. */
  readonly division: string;
}

/** One shape that these kinds close into. */
export interface Shape {
  /** Places carry the index of their kind in the question's list. They stand in the order in which
   * the engine laid them: each but the first shares a side with an earlier one. */
  readonly shell: Shell;
  /** Metres. */
  readonly radius: number;
  /** Standard deviation of the radius, metres. */
  readonly radiusSd: number;
  readonly closed: boolean;
  /** Kind (index) → fitted length of each side, metres. */
  readonly fittedSides: readonly (readonly number[])[];
  /** Root mean square of side misfit over the kinds' sides, metres. */
  readonly residual: number;
  /** Of this shape among all; the listed ones and what was not found add up to 1. */
  readonly probability: number;
  /** Null where it follows no rule that has a name. */
  readonly subdivision: Subdivision | null;
  readonly suspects: readonly Suspect[];
  /** Kinds (ids) that the readings can't tell apart and that may stand for one another. */
  readonly interchangeable: readonly (readonly string[])[];
  /** Kinds (ids) that look the same when turned, as far as the readings can tell, though their sides
   * differ: their turn is free. */
  readonly freeTurns: readonly string[];
  /** Joined groups that occur nowhere in this shape. */
  readonly misfitGroups: readonly JoinedGroup[];
  /** Kinds (ids) it has no place for. */
  readonly strangers: readonly string[];
  /** What tells this shape from the others listed, in words; empty where it stands alone. */
  readonly apart: string;
}

/** A part of a net that stood together while the search went on, as flat panels. One axis of the
 * rotations that were tried is up (+z). Made of the sides believed at that moment, so where it closes
 * a ring the panels gape by what the readings are off. */
export interface GrownPart {
  /** Metres. */
  readonly radius: number;
  /** Corners of all panels, stride 3, metres from the sphere's centre; those of a panel anticlockwise
   * seen from outside, from the first corner of its kind's first side on. */
  readonly corners: Float64Array;
  /** First corner of each panel; one longer than the number of panels. */
  readonly placeStart: Int32Array;
  /** Panel → index of its kind in the question's list. */
  readonly kind: Int32Array;
}

/** An open side at which no panel fitted. */
export interface Stuck {
  readonly kind: string;
  /** From 0. */
  readonly side: number;
  /** As measured, metres. */
  readonly length: number;
  /** The panel of the part that it belongs to; by the rotations that were tried, others are alike. */
  readonly panel: number;
}

/** All shapes found, best first; when none, the reasons. */
export interface Identification {
  readonly shapes: readonly Shape[];
  /** Why nothing closed: how far it got and the most telling reason. Empty when something did. */
  readonly reasons: readonly string[];
  /** What to measure or look at next, if more than one shape fits. */
  readonly settle: readonly string[];
  /** False where the search was cut short by its budget or cancelled: there may be more shapes. */
  readonly complete: boolean;
  /** Where there are no shapes: the largest part that stood together with the sides as they were
   * read, folded out. Null where there are some, or nothing stood. */
  readonly furthest: GrownPart | null;
  /** Where `furthest` stuck: the open side that was to be filled and that no panel fitted, together
   * with what stood; empty where the search ended for another reason. */
  readonly stuck: readonly Stuck[];
}

/** How far the identification is: shown while it runs. */
export interface IdentifyProgress {
  readonly step: 'net' | 'fit';
  /** Panels in the largest net grown so far. */
  readonly placed: number;
  /** 0 … 1, of the work that can be foreseen. */
  readonly done: number;
  /** The largest part that stood together so far with the sides as they were read, as a cap about
   * one axis; the same object until it grows. Null before anything stands. */
  readonly part: GrownPart | null;
}
