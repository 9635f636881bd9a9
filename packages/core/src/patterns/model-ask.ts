// What is asked of a model and what comes of it: its files, how it came out, or what stood in the way with
// the nearest that works. Millimetres.

import type { SheetFacts } from '../papers/flat-plan-sheet.ts';
import type { LengthsShown } from '../papers/length-text.ts';
import type { Paper } from '../papers/page.ts';
import type { NamedFile } from '../papers/zip.ts';
import type { Shell } from '../shell/shell.ts';
import type { CutJoint } from './cut-parts.ts';
import type { FaceWords } from './net-sheets.ts';

/** The sorts of model, in the order in which they are told. */
export const modelSorts = ['net', 'strips', 'cut', 'print', 'snap', 'full-size'] as const;

/** A sort of model: paper net, paper net course by course, parts to cut, the shell as one solid, panels
 * and hubs to print and push together, drawings of parts in their true size. */
export type ModelSort = (typeof modelSorts)[number];

/** What is told of the shell. */
export interface ModelGround {
  readonly shell: Shell;
  /** Place → its course. */
  readonly course: ArrayLike<number>;
  /** Place → what stands on its face. */
  readonly faces: readonly FaceWords[];
  /** Kind (index) → its id. */
  readonly kinds: readonly string[];
  /** Places that stay open, by index. */
  readonly leftOut: readonly number[];
  readonly title: string;
  /** What is known of how its panels are made; absent: nothing. */
  readonly making?: {
    /** Hub-to-hub length less the measured side, metres; null: unknown. */
    readonly allowance: number | null;
    /** Kind (index) → its sides → holes along each. */
    readonly holes: (kind: number) => readonly (number | null)[];
    /** The whole net in the standing shell's axes, and its places that stay open; absent: what stands. */
    readonly whole?: { readonly shell: Shell; readonly leftOut: readonly number[] };
  };
  /** What a sheet of that name bears. */
  readonly facts: (sheet: string) => SheetFacts;
  readonly lengths: LengthsShown;
}

/** How the model is made; each sort reads its own part of it. */
export interface ModelSettings {
  /** 1 : scale. */
  readonly scale: number;
  readonly paper: Paper;
  /** Sheet to be cut: width and height, thickness, what the beam or blade takes away. */
  readonly sheet: readonly [number, number];
  readonly thickness: number;
  readonly kerf: number;
  readonly joint: CutJoint;
  /** Outlines are scored to be snapped, not cut. */
  readonly snap: boolean;
  /** Thickness of a printed wall or panel. */
  readonly wall: number;
  /** What the printer holds. */
  readonly bed: readonly [number, number, number];
  /** Between a peg and its socket, and between printed panels. */
  readonly clearance: number;
  /** Diameter of a peg. */
  readonly peg: number;
  /** At full size: depth of a flange (0: none), across a hub plate, of a hole. */
  readonly flange: number;
  readonly plate: number;
  readonly hole: number;
  /** At full size: how far a level floor lies above the lowest hub of the base ring. */
  readonly floor: number;
}

/** What a model is made with unless told otherwise; our own choice. */
export const defaultModel: ModelSettings = {
  scale: 20,
  paper: 'A4',
  sheet: [600, 400],
  thickness: 3,
  kerf: 0.15,
  joint: 'butt',
  snap: false,
  wall: 1.6,
  bed: [220, 220, 250],
  clearance: 0.2,
  peg: 4,
  flange: 40,
  plate: 200,
  hole: 9,
  floor: 0,
};

/** A model: its files, and how it came out in words and as plain data. */
export interface ModelMade {
  readonly ok: true;
  readonly files: readonly NamedFile[];
  readonly words: string;
  readonly told: object;
}

/** What stood in the way: a setting as found, and what would work. */
export interface ModelRefused {
  readonly ok: false;
  readonly setting: keyof ModelSettings | 'open';
  readonly found: string;
  readonly expected: string;
}

/** A refusal. */
export const refused = (
  setting: ModelRefused['setting'],
  found: string | number,
  expected: string,
): ModelRefused => ({ ok: false, setting, found: String(found), expected });

/** `1 piece`, `3 pieces`. */
export const counted = (count: number, one: string): string =>
  `${count} ${one}${count === 1 ? '' : 's'}`;

/** Sizes with their unit: `220 x 220 x 250 mm`. */
export const sizeWords = (sizes: readonly number[], digits = 0): string =>
  `${sizes.map((size) => Number(size.toFixed(digits))).join(' x ')} mm`;
