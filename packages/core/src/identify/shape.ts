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
  /** Places carry the index of their kind in the question's list. */
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

/** All shapes found, best first; when none, the reasons. */
export interface Identification {
  readonly shapes: readonly Shape[];
  /** Why nothing closed: how far it got and the most telling reason. Empty when something did. */
  readonly reasons: readonly string[];
  /** What to measure or look at next, if more than one shape fits. */
  readonly settle: readonly string[];
  /** False where the search was cut short by its budget or cancelled: there may be more shapes. */
  readonly complete: boolean;
}

/** How far the identification is: shown while it runs. */
export interface IdentifyProgress {
  readonly step: 'net' | 'fit';
  /** Panels in the largest net grown so far. */
  readonly placed: number;
  /** 0 … 1, of the work that can be foreseen. */
  readonly done: number;
}
