// The answer of the identification: the shapes that the kinds of a pile close into.

import type { HubPlate, JoinedGroup, Kind } from '../pile/kind.ts';
import type { Slip } from '../pile/slips.ts';
import type { Shell } from '../shell/shell.ts';

/** What the identification reads. Kinds without counts, and no groups, are enough. */
export interface ShapeQuestion {
  readonly kinds: readonly Kind[];
  readonly groups: readonly JoinedGroup[];
  /** Standard deviation of an unknown length that is missing from every side alike (an unknown hub
   * allowance), metres; absent or 0 where the allowance is known. */
  readonly allowanceSd?: number;
  /** Hub allowance that the sides have been given already, metres; 0 if absent. */
  readonly allowance?: number;
  /** Joined groups of which not every panel's kind is settled: each panel with the kinds (ids) it may
   * be. */
  readonly looseGroups?: readonly LooseGroup[];
  /** Hub plates that somebody measured. */
  readonly hubPlates?: readonly HubPlate[];
  /** Standard deviation of one reading of a side, metres; absent: that of the side known worst. */
  readonly readingSd?: number;
}

/** Panels still joined around one hub, anticlockwise seen from outside, each with the kinds (ids) that
 * it may be. */
export interface LooseGroup {
  readonly around: readonly (readonly string[])[];
  readonly closed: boolean;
  readonly count: number;
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

/** A kind that a shape needs besides those of the question. Such kinds follow the question's in the
 * shell's numbering: see {@link kindsOfShape}. */
export interface AddedKind {
  /** `wanted`: the pile has none, and these sides (with their deviations) are what it would have to
   * be. `other hand`: the mirror image of a kind whose face was not noted. */
  readonly why: 'wanted' | 'other hand';
  /** Index in the question's list of the kind that it is the other hand of; null for a wanted one. */
  readonly of: number | null;
  readonly kind: Kind;
}

/** What was wrong with a kind's sides, where the net says what they should be. */
export interface Mend {
  /** Its id. */
  readonly kind: string;
  /** `length`: one or two sides misread. `swapped`: two sides written down in each other's place.
   * `unit`: read in one unit and written in another. `face`: read from the other face. `shift`: every
   * side off by one length, as by a broken hook. */
  readonly slip: 'length' | 'swapped' | 'unit' | 'face' | 'shift';
  /** The sides it is about, from 0. */
  readonly sides: readonly number[];
  /** All sides of the kind as measured and as the net has them, metres, same order. */
  readonly measured: readonly number[];
  readonly expected: readonly number[];
}

/** A kind that has no place in the sphere, and what it is instead. Lengths in metres. */
export type Stranger = {
  /** Its id. */
  readonly kind: string;
} & (
  | {
      /** A panel that the ground cut: a place's panel, cut along `cutSide` (from 0). */
      readonly as: 'cut';
      readonly cutSide: number;
      /** Kind (index) that it was cut from, and where its side `turn` lies. */
      readonly from: number;
      /** How well it fits there: root mean square of its sides, metres. */
      readonly misfit: number;
    }
  | {
      /** A panel of a straight course between two halves, and the sides on the halves' rims. */
      readonly as: 'course';
      readonly rimSides: readonly number[];
      readonly height: number;
      readonly misfit: number;
    }
  | {
      /** One more panel of a kind (index), with a slip in its reading. */
      readonly as: 'misread';
      readonly of: number;
      readonly slip: Slip;
      /** All its sides as they should read, metres, in their order, and those at fault, from 0. */
      readonly expected: readonly number[];
      readonly sides: readonly number[];
    }
  /** Part of another shell: see {@link Identification.besides}. */
  | { readonly as: 'other shell' }
  /** Nothing explains it. */
  | { readonly as: 'nothing' }
);

/** The plane that cuts the lowest panels. */
export interface CutPlane {
  /** Unit normal, upwards, in the shell's frame. */
  readonly up: readonly [number, number, number];
  /** Height of the plane above the sphere's centre, metres; negative below it. */
  readonly height: number;
  readonly heightSd: number;
  /** Radius of the circle through the base corners, metres: the mean over them. */
  readonly baseRadius: number;
}

/** A straight course between two halves of a ball. */
export interface StraightCourse {
  readonly up: readonly [number, number, number];
  /** Metres, and the number of panels around. */
  readonly height: number;
  readonly panels: number;
}

/** How far hub-to-hub lengths lie beyond the measured ones, as the net says. */
export interface AllowanceFound {
  /** Metres, beyond the allowance that the question's sides already have. */
  readonly value: number;
  readonly sd: number;
  /** False where it can't be told from the radius: the deviation is that of the radius's share. */
  readonly tellable: boolean;
  /** Deviation that a further reading would leave, metres, the sharpest first: of a hub plate from its
   * middle to where the tape was held; across all panels joined around a hub; of the angles between
   * panels. Of the first shape, where the allowance is not known well; else absent. */
  readonly sharper?: readonly { readonly by: 'plate' | 'rim' | 'angle'; readonly sd: number }[];
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
  /** False for a part of a sphere with an open rim: it closes around every inner hub. */
  readonly closed: boolean;
  /** Kind (index, the added ones too) → fitted length of each side, metres. */
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
  /** What the interchangeable kinds of each list differ by when one stands for another: root mean
   * square of a side, metres. */
  readonly interchangeCosts: readonly number[];
  /** Kinds (ids) it has no place for. */
  readonly strangers: readonly string[];
  /** The same kinds, each with what it is instead. */
  readonly explained: readonly Stranger[];
  /** Kinds beyond the question's. */
  readonly added: readonly AddedKind[];
  /** Kinds that were measured or written down wrong, the worst first. */
  readonly mends: readonly Mend[];
  /** Where the ground cut the lowest panels. */
  readonly cut: CutPlane | null;
  readonly course: StraightCourse | null;
  /** Null where the question knew the allowance. */
  readonly allowance: AllowanceFound | null;
  /** Whether the faces were noted: `mirrored`: of no panel that has a hand, so the mirror image of the
   * whole fits as well, and one look settles it. */
  readonly hands: 'known' | 'mirrored';
  /** What tells this shape from the others listed, in words; empty where it stands alone. */
  readonly apart: string;
}

/** What to read, look at or count next. */
export interface NextReading {
  /** `read`: a side to be measured (again), or a length that is no side. `look`: which run of kinds lies
   * around a hub, or which way round a panel is. `count`: panels of a kind. */
  readonly act: 'read' | 'look' | 'count';
  /** What it tells: which shape it is, which of two mirror images, the hub allowance, the sphere's
   * radius, how long the side is, or how many panels there are. Absent: the hand. */
  readonly about?: 'shape' | 'hand' | 'allowance' | 'radius' | 'side' | 'count';
  /** Kind id and side (from 0) to be read; null for a look or a count at no side. */
  readonly kind: string | null;
  readonly side: number | null;
  /** On how many panels of the kind; absent: one. */
  readonly panels?: number;
  /** In the words of a person with a tape. */
  readonly words: string;
  /** Expected information on what it is about, bits. */
  readonly bits: number;
  /** What one would find, and the probability of each shape then (index in the list of shapes; the
   * last entry: none of them). */
  readonly outcomes: readonly NextOutcome[];
}

/** One thing that one may find. */
export interface NextOutcome {
  /** In words; a reading as the tape would show it, in millimetres. */
  readonly find: string;
  readonly shapes: readonly number[];
  /** Of a reading: metres, as the tape would show it. */
  readonly length?: number;
  /** Of a look at a hub: the kinds (ids; of interchangeable ones the first) around it, anticlockwise
   * seen from outside. */
  readonly run?: readonly string[];
  /** How probable the find is. */
  readonly probability?: number;
}

/** The one star to lay out on the grass before anyone commits. */
export interface GrassTrial {
  /** Kinds (ids) around the hub, anticlockwise seen from outside, and the side of each that starts at
   * the hub: it meets the side before that of the panel before. */
  readonly around: readonly { readonly kind: string; readonly side: number }[];
  /** Gap that the last seam would show when the panels are bolted flat on the grass up to it: at the
   * far end of the seam, metres; its standard deviation by readings. */
  readonly gap: number;
  readonly gapSd: number;
  /** What a gap beyond this means, metres, and in words. */
  readonly most: number;
  /** A gap below this means the same, metres. */
  readonly least?: number;
  /** Length of the last seam, metres. */
  readonly seam?: number;
  /** Shapes (index in the list) that make the gap another, and what they make it, metres. */
  readonly rivals?: readonly { readonly shape: number; readonly gap: number }[];
  readonly words: string;
}

/** What the readings leave open among answers that fit, and whether one has to care. */
export interface Freedom {
  /** What every answer agrees in, in words. */
  readonly settled: readonly string[];
  readonly free: readonly Free[];
  /** Whether the choice makes a difference to the shell that stands: of a seam by more than its bolts
   * give, of the radius, or of how many panels of a kind it takes. */
  readonly matters: boolean;
}

/** One thing that is open. */
export type Free = {
  readonly words: string;
  readonly matters: boolean;
} & (
  | {
      /** Several nets of the same panels. `shapes`: their indices; `hubs`: of so many around which
       * different kinds lie; `atLeast`: the search was cut short, so that there may be more. */
      readonly what: 'net';
      readonly shapes: readonly number[];
      readonly hubs: number;
      readonly atLeast: boolean;
    }
  | {
      /** Kinds (ids) that stand for one another in the best shape; metres that it costs. */
      readonly what: 'kinds';
      readonly kinds: readonly string[];
      readonly cost: number;
    }
  | {
      /** Kinds (ids) whose panels may be turned in their places; metres that it costs. */
      readonly what: 'turn';
      readonly kinds: readonly string[];
      readonly cost: number;
    }
  /** The whole or its mirror image. */
  | { readonly what: 'hand' }
);

/** Sides that ask for laps or hole patterns that nothing in the pile answers. */
export interface JointConflict {
  /** Kind ids and sides (from 0) that together can't be met. */
  readonly sides: readonly { readonly kind: string; readonly side: number }[];
  readonly words: string;
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
  /** What to read or look at next, the most telling first; empty where nothing would tell more. */
  readonly next: readonly NextReading[];
  /** Whether more readings would change nothing that matters. */
  readonly enough: boolean;
  /** Null where there is no shape. */
  readonly trial: GrassTrial | null;
  /** What is settled and what is free among the answers; absent or null where there is no shape. */
  readonly freedom?: Freedom | null;
  /** Why laps or holes do not allow any net, the smallest conflict first. */
  readonly conflicts: readonly JointConflict[];
  /** What the kinds that the best shape has no place for close into on their own; null where they do
   * not. */
  readonly besides: Identification | null;
}

/** The kinds that a shape's shell is numbered by: the question's, then the added ones. */
export const kindsOfShape = (
  { added }: Pick<Shape, 'added'>,
  kinds: readonly Kind[],
): readonly Kind[] => (added.length === 0 ? kinds : [...kinds, ...added.map((one) => one.kind)]);

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

/** A stranger whose kinds (index) are numbered anew. */
export function strangerRenumbered(one: Stranger, at: (kind: number) => number): Stranger {
  if (one.as === 'cut') return { ...one, from: at(one.from) };
  return one.as === 'misread' ? { ...one, of: at(one.of) } : one;
}

/** The answer of which nothing is known yet. */
export const noAnswer: Identification = {
  shapes: [],
  reasons: [],
  settle: [],
  complete: false,
  furthest: null,
  stuck: [],
  next: [],
  enough: false,
  trial: null,
  conflicts: [],
  besides: null,
};
