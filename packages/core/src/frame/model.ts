// What the frame is asked about: a shell as it stands at one stage, as plain data. Frame of the
// shell: origin at the sphere's centre, z up; metres, newtons. Hubs keep the numbers they have in
// the whole shell, also those that no panel has reached yet.

import type { Vec3 } from '../math/vector.ts';

/** How far the bolts of a seam are: finger-tight seams turn as hinges, snug and final ones hold. */
export type SeamPass = 'finger' | 'snug' | 'final';

/** A panel that is placed. */
export interface FramePanel {
  /** Its place in the shell. */
  readonly place: number;
  /** Hubs at its corners, anticlockwise seen from outside. */
  readonly hubs: readonly number[];
}

/** A seam that is bolted: two panels along the side between two hubs. */
export interface FrameSeam {
  /** Indices of the panels in the model's list. */
  readonly panels: readonly [number, number];
  readonly hubs: readonly [number, number];
  readonly pass: SeamPass;
}

/** A hub that is held in all three directions, or by springs along x, y and z. */
export interface FrameSupport {
  readonly hub: number;
  /** Newtons per metre along x, y, z; null where it does not give. */
  readonly stiffness: Vec3 | null;
}

/** A prop under a hub: it pushes along one direction, and cannot pull. */
export interface FrameProp {
  readonly hub: number;
  /** Direction in which it pushes the hub; any length but 0. */
  readonly along: Vec3;
  /** Newtons per metre; null where it does not give. */
  readonly stiffness: number | null;
}

/** A guy from a hub to a point of the ground: it pulls, and cannot push. */
export interface FrameGuy {
  readonly hub: number;
  readonly anchor: Vec3;
  /** Stiffness E A of the line, newtons (force by strain). */
  readonly axialStiffness: number;
  /** Pull in it before any load, newtons. */
  readonly pretension: number;
}

/** A shell as it stands at one stage. */
export interface FrameModel {
  /** Positions of all hubs of the shell, stride 3. */
  readonly hubs: Float64Array;
  readonly panels: readonly FramePanel[];
  readonly seams: readonly FrameSeam[];
  /** Hub → 1 where a hub plate joins all the corners that are there. */
  readonly plates: Uint8Array;
  readonly supports: readonly FrameSupport[];
  readonly props: readonly FrameProp[];
  readonly guys: readonly FrameGuy[];
}
