// The yard: the panels of each stage in stacks, the first to go up on top, where each stack lies so that
// all walks together are shortest, and what keeps it down in the wind. Stacks lie flat on battens in
// rings round the shell, clear of it. Shell's frame, level; metres, kilograms.

import type { Override } from '../../loads/numbers.ts';
import {
  commonPractice,
  flagsOf,
  mergeSources,
  type Provenance,
  type Sourced,
} from '../../loads/provenance.ts';
import { assignment } from '../../math/assignment.ts';
import { pointAt } from '../../math/vector.ts';
import { baseRing } from '../../shell/rims.ts';
import { type Piece, type PieceModel, pieceOf } from '../lifts/piece.ts';
import type { PieceMade, RaisingPlan } from '../plan.ts';
import type { Sector } from './sectors.ts';
import { STACK_FRICTION, type StackWind, stackWind } from './stack-wind.ts';
import { type Ground, walkRound } from './walk.ts';

/** What the yard is asked for. */
export interface YardQuestion {
  readonly plan: Pick<RaisingPlan, 'stages'>;
  readonly model: PieceModel;
  /** Gust that the stacks must bear, m/s at their height: of the nights ahead, or the design's. */
  readonly gust: number;
  /** Friction of battens on the ground; wood on wet ground where left out. */
  readonly friction?: Sourced;
  /** Clear of the base ring, m: guys, the ladder's foot, what may fall. 3 where left out. */
  readonly clear?: number;
  /** Panels in a stack at most; 10 where left out. */
  readonly most?: number;
  /** Sectors where nothing may lie, radians clockwise seen from above from the datum, from … to. */
  readonly avoid?: readonly Sector[];
  readonly overrides?: readonly Override[];
}

/** A piece in a stack, as many panels as it has places. */
export interface StackedPiece {
  readonly places: readonly number[];
  readonly numbers: readonly string[];
  readonly made: PieceMade;
  /** From the stack to the foot of its place, m, round the shell. */
  readonly walk: number;
}

/** A stack. */
export interface YardStack {
  /** From 1, in the order in which they are used up. */
  readonly number: number;
  readonly stage: number;
  /** Topmost first: the order of work. */
  readonly pieces: readonly StackedPiece[];
  readonly panels: number;
  /** Of the panels whose mass is known, kg; numbers of the others. */
  readonly mass: number;
  readonly unweighed: readonly string[];
  /** Length, width and height with battens, m. */
  readonly size: readonly [length: number, width: number, height: number];
  /** Its middle: from the axis, and clockwise seen from above from the datum, radians. */
  readonly at: Ground;
  readonly out: number;
  readonly azimuth: number;
  readonly wind: StackWind;
  /** In words: what goes on top of it. */
  readonly words: string;
}

/** The yard. */
export interface Yard {
  readonly stacks: readonly YardStack[];
  /** All panels' walks one way, m, and the longest. */
  readonly walk: number;
  readonly longest: number;
  /** How far out the yard reaches from the axis, m. */
  readonly reach: number;
  readonly assumed: readonly string[];
  readonly flags: readonly Provenance[];
}

/** Battens under a stack, m; way between stacks, m; clear of the base, m; panels in a stack. */
const BATTENS = 0.1;
const AISLE = 0.8;
const CLEAR = 3;
const MOST = 10;
/** Depth of a panel in a stack where nobody knows its flange, m. */
const DEEP = 0.06;
const YARD_PRACTICE = commonPractice(
  'panels flat on battens, ten to a stack, ways of 0.8 m between, 3 m clear of the base ring',
);

/** The yard of a plan. RangeError for a gust or clearance below 0, fewer than one panel to a stack, or
 * where the sectors to avoid leave no room. */
export function yardOf(question: YardQuestion): Yard {
  const { plan, model, gust, clear = CLEAR, most = MOST, avoid = [] } = question;
  if (!(clear >= 0 && Number.isFinite(clear)))
    throw new RangeError(`clear is ${clear} m, expected 0 or more`);
  if (!(Number.isInteger(most) && most >= 1))
    throw new RangeError(`a stack holds ${most} panels, expected at least 1`);
  const heaps = heapsOf(plan, model, most);
  const radius = baseRadius(model);
  const pitch = AISLE + Math.max(0, ...heaps.map(({ size }) => Math.hypot(size[0], size[1])));
  const spots = spotsRound(radius + clear, pitch, heaps.length, avoid);
  const cost = heaps.map(({ pieces }) =>
    spots.map((spot) =>
      pieces.reduce((sum, { piece }) => sum + piece.places.length * walkTo(spot, piece, radius), 0),
    ),
  );
  const spotOf = heaps.length === 0 ? [] : assignment(cost);
  const stacks = heaps.map((heap, i) =>
    stackAt(question, heap, i + 1, spots[spotOf[i] as number] as Ground, radius),
  );
  return {
    stacks,
    walk: stacks.reduce(
      (sum, { pieces }) =>
        sum + pieces.reduce((own, { walk, places }) => own + walk * places.length, 0),
      0,
    ),
    longest: Math.max(0, ...stacks.flatMap(({ pieces }) => pieces.map(({ walk }) => walk))),
    reach: Math.max(radius, ...stacks.map(({ out }) => out + (pitch - AISLE) / 2)),
    assumed: [
      'Stacks lie flat on battens, never on edge; the first panel to go up lies on top.',
      `Weight on top keeps them in a gust of ${gust.toFixed(1)} m/s, with a factor of 1.5 on the wind; sandbags, not loose stones.`,
      'A panel is carried round the shell to the foot of its place.',
      'An estimate and no design approval: local codes and a licensed engineer or rigger decide.',
    ],
    flags: flagsOf({
      sources: mergeSources([YARD_PRACTICE], ...stacks.map(({ wind }) => wind.sources)),
    }),
  };
}

interface Heap {
  readonly stage: number;
  readonly pieces: readonly { readonly piece: Piece; readonly made: PieceMade }[];
  readonly size: readonly [number, number, number];
}

/** The lifts of each stage, heaped in their order. What is made up on the ground lies as single panels;
 * what is still joined lies by itself. */
function heapsOf(plan: YardQuestion['plan'], model: PieceModel, most: number): Heap[] {
  const heaps: Heap[] = [];
  for (const { number, lifts } of plan.stages) {
    let heap: { piece: Piece; made: PieceMade }[] = [];
    const close = (): void => {
      if (heap.length > 0) heaps.push({ stage: number, pieces: heap, size: sizeOf(model, heap) });
      heap = [];
    };
    for (const { places, made } of lifts) {
      const isJoined = made === 'group';
      const parts = isJoined ? [places] : places.map((p) => [p]);
      for (const part of parts) {
        if (isJoined || heap.some((one) => one.made === 'group') || heap.length >= most) close();
        heap.push({ piece: pieceOf(model, part), made });
      }
    }
    close();
  }
  return heaps;
}

function sizeOf(
  { flange }: PieceModel,
  heap: readonly { readonly piece: Piece }[],
): readonly [number, number, number] {
  const sizes = heap.map(({ piece }) => piece.size);
  const deep = flange > 0 ? flange : DEEP;
  return [
    Math.max(...sizes.map(([length]) => length)),
    Math.max(...sizes.map(([, width]) => width)),
    BATTENS +
      heap.reduce(
        (sum, { piece }, i) => sum + (piece.places.length > 1 ? (sizes[i]?.[2] ?? deep) : deep),
        0,
      ),
  ];
}

function baseRadius({ shell }: PieceModel): number {
  const hubs = baseRing(shell)?.hubs ?? [];
  return Math.max(0, ...hubs.map((hub) => Math.hypot(...pointAt(shell.hubs, hub).slice(0, 2))));
}

/** The foot of a piece's place: on the base circle below its middle. */
function walkTo(from: Ground, { centre: [x, y] }: Piece, radius: number): number {
  const d = Math.hypot(x, y);
  return walkRound(from, d > 1e-6 * radius ? [(x * radius) / d, (y * radius) / d] : from, radius);
}

/** Spots in rings from a distance outwards, a pitch apart, at least one ring more than is needed. */
function spotsRound(
  from: number,
  pitch: number,
  needed: number,
  avoid: readonly Sector[],
): Ground[] {
  const spots: Ground[] = [];
  const isFree = (clockwise: number): boolean =>
    !avoid.some(([a, b]) => turnFrom(a, clockwise) < turnFrom(a, b));
  for (let ring = 0, rings = 0; needed > 0 && rings < 2; ring++) {
    if (ring > MOST_RINGS)
      throw new RangeError(`sectors to avoid leave room for ${spots.length} of ${needed} stacks`);
    const out = from + (ring + 0.5) * pitch;
    const count = Math.max(1, Math.floor(Math.PI / Math.asin(Math.min(1, pitch / 2 / out))));
    for (let k = 0; k < count; k++) {
      const clockwise = (2 * Math.PI * k) / count;
      if (isFree(clockwise)) spots.push([out * Math.cos(clockwise), -out * Math.sin(clockwise)]);
    }
    if (spots.length >= needed) rings++;
  }
  return spots;
}

const MOST_RINGS = 60;

/** How far clockwise from one azimuth to another, radians, 0 to 2π. */
const turnFrom = (from: number, to: number): number => {
  const turn = (to - from) % (2 * Math.PI);
  return turn < 0 ? turn + 2 * Math.PI : turn;
};

function stackAt(
  { model, gust, friction = STACK_FRICTION, overrides }: YardQuestion,
  { stage, pieces, size }: Heap,
  number: number,
  at: Ground,
  radius: number,
): YardStack {
  const top = (pieces[0] as (typeof pieces)[number]).piece;
  const mass = pieces.reduce((sum, { piece }) => sum + (piece.mass ?? 0), 0);
  const wind = stackWind(
    {
      topArea: top.area,
      topMass: top.unweighed.length > 0 ? null : top.mass,
      mass,
      side: size[0] * size[2],
      plan: Math.max(...pieces.map(({ piece }) => piece.area)),
    },
    gust,
    friction,
    overrides,
  );
  const unweighed = pieces.flatMap(({ piece }) => piece.unweighed);
  return {
    number,
    stage,
    pieces: pieces.map(({ piece, made }) => ({
      places: piece.places,
      numbers: piece.places.map((p) => model.numbers[p] as string),
      made,
      walk: walkTo(at, piece, radius),
    })),
    panels: pieces.reduce((sum, { piece }) => sum + piece.places.length, 0),
    mass,
    unweighed,
    size,
    at,
    out: Math.hypot(...at),
    azimuth: turnFrom(0, -Math.atan2(at[1], at[0])),
    wind,
    words: wordsOf(wind, gust, unweighed),
  };
}

function wordsOf(
  { flies, loose, strapped }: StackWind,
  gust: number,
  unweighed: readonly string[],
): string {
  const kg = (mass: number): string => `${(Math.ceil(mass / 5) * 5).toFixed(0)} kg`;
  const at =
    flies === null ? '' : ` With nothing on it the top panel lifts off at ${flies.toFixed(1)} m/s.`;
  const unknown =
    unweighed.length === 0
      ? ''
      : ` Panels that nobody weighed count as nothing: ${unweighed.join(', ')}.`;
  if (loose === 0) return `It stays by its own weight in ${gust.toFixed(1)} m/s.${at}${unknown}`;
  const strap = strapped < loose ? `, or ${kg(strapped)} where it is strapped as one` : '';
  return `${kg(loose)} on top${strap} for ${gust.toFixed(1)} m/s.${at}${unknown}`;
}
