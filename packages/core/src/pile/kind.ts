// What a pile says of each kind once its readings are worked up: the form every later step reads.

/** How a side's flange lies on its neighbour's. */
export type Lap = 'over' | 'under' | 'flush';

/** A length or an angle as measured, with its standard deviation; metres or radians. */
export interface Measured {
  readonly value: number;
  readonly sd: number;
}

/** Hand of a kind: `null` where it is its own mirror image. */
export type Hand = 'L' | 'R' | null;

/** Panels interchangeable with each other. */
export interface Kind {
  /** As in the file; else numbered from the smallest, a left and right pair as `3L` and `3R`. */
  readonly id: string;
  readonly marks: readonly string[];
  /** Hub-to-hub sides, metres, anticlockwise seen from outside (measured side + hub allowance). */
  readonly sides: readonly number[];
  /** Standard deviation of each side as known from its readings, metres. */
  readonly sideSds: readonly number[];
  readonly hand: Hand;
  readonly good: number;
  readonly repair: number;
  readonly scrap: number;
  /** False where nobody counted: `good`, `repair` and `scrap` are then 0 and say nothing. */
  readonly counted: boolean;
  /** Mass of one panel, kilograms, or null where unknown. */
  readonly mass: number | null;
  /** True where nobody noted from which face it was read: `sides` may run the other way round, and
   * panels of both hands may be among its counts. Absent: known. */
  readonly faceUnknown?: boolean;
  /** True where its own face is known but that of some of its panels is not, and none of the other
   * hand is known: panels of both hands may be among its counts. Absent: of this hand alone. */
  readonly bothHands?: boolean;
  /** Side → how it laps, null where nobody looked. Absent: nobody looked at any. */
  readonly laps?: readonly (Lap | null)[];
  /** Side → number of holes, null where nobody counted. Absent: nobody counted any. */
  readonly holes?: readonly (number | null)[];
  /** Side → angle between the two panels that meet there, radians, π where they are level; null where
   * nobody measured. Absent: nobody measured any. */
  readonly dihedrals?: readonly (Measured | null)[];
}

/** Panels still joined: kind ids anticlockwise seen from outside around one hub. */
export interface JoinedGroup {
  readonly around: readonly string[];
  /** True where the run goes all the way round the hub. */
  readonly closed: boolean;
  readonly count: number;
  /** Distances across it, as read; absent: none. */
  readonly rim?: readonly RimLength[];
}

/** A distance across a joined group, metres, between the far ends of two spokes, taken between the
 * same points as the sides were. Spoke i is the seam on the clockwise side of panel i; an open run has
 * one more at its end. */
export interface RimLength {
  readonly from: number;
  readonly to: number;
  readonly length: number;
  readonly sd: number;
}

/** What a sort of hub plate says. `radius`: metres from its middle to where the sides were measured
 * from; null where nobody measured. `arms`: angles from each arm to the next, anticlockwise seen from
 * outside, radians; empty where nobody did. */
export interface HubPlate {
  readonly corners: number;
  readonly radius: Measured | null;
  readonly arms: readonly Measured[];
}
