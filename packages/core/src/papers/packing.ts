// How a dismantled shell is stacked: single panels lying on each other, course by course, what is taken down
// first at the bottom and so what goes up first on top. Metres, kilograms. An estimate.

import { METRIC_LIFT, recommendedWeight } from '../raise/lifts/niosh.ts';
import type { Piece } from '../raise/lifts/piece.ts';
import { MOST_TEAM, teamFactor } from '../raise/lifts/team.ts';

/** A panel to be stacked. */
export interface PackedPanel {
  readonly number: string;
  readonly kind: string;
  readonly course: number;
  /** Null where nobody weighed it. */
  readonly mass: number | null;
  /** Length and width of the smallest rectangle that it lies in. */
  readonly size: readonly [number, number];
  /** Its turn in the order of the raising, from 0; null or left out where there is no order. */
  readonly turn?: number | null;
}

/** A stack, from 1. */
export interface PackedStack {
  readonly number: number;
  readonly course: number;
  /** From the bottom up. */
  readonly panels: readonly PackedPanel[];
  /** Of the panels weighed; how many are not. */
  readonly mass: number;
  readonly unweighed: number;
  /** Length, width, height with battens. */
  readonly size: readonly [length: number, width: number, height: number];
}

/** What a stack may be. */
export interface StackLimits {
  /** Panels at most; 12 where left out. */
  readonly most?: number;
  /** Mass at most, kg, save of a single panel; 150 where left out. */
  readonly mass?: number;
  /** Height at most with battens, m; 1.2 where left out. */
  readonly height?: number;
  /** Depth of a panel with its flanges, m; 0.06 where left out or null. */
  readonly depth?: number | null;
}

/** Battens under a stack, m, and room that panels that lie askew take besides: common practice, no
 * source. */
const BATTENS = 0.1;
const DEPTH = 0.06;
const MOST = 12;
const HEAVIEST = 150;
const HIGHEST = 1.2;

/** What lies above may be so much longer or wider than what bears it: common practice, no source. */
export const OVERHANG = 1.1;

/** The stacks: courses from the ground up, in each the panels in the order of the raising, on the first stack
 * that takes them; where there is
 * none, panels alike together and the largest at the bottom. A panel that is over a limit by itself lies
 * alone. RangeError for a limit that is not above 0. */
export function stacksOf(panels: readonly PackedPanel[], limits: StackLimits = {}): PackedStack[] {
  const { most = MOST, mass: heaviest = HEAVIEST, height: highest = HIGHEST } = limits;
  const depth = limits.depth ?? DEPTH;
  for (const [name, value] of [
    ['panels', most],
    ['mass', heaviest],
    ['height', highest],
    ['depth', depth],
  ] as const)
    if (!(value > 0))
      throw new RangeError(`${name} of a stack: found ${value}, expected more than 0`);
  const fits = (stack: readonly PackedPanel[], panel: PackedPanel): boolean =>
    stack[0]?.course === panel.course &&
    stack.length < most &&
    BATTENS + (stack.length + 1) * depth <= highest + 1e-9 &&
    massOf([...stack, panel]) <= heaviest + 1e-9 &&
    // One that goes up later lies below: it must bear those above it.
    (turnOf(panel) === Number.POSITIVE_INFINITY ||
      [0, 1].every((way) => longest(stack, way) <= OVERHANG * (panel.size[way] as number)));
  const stacks: PackedPanel[][] = [];
  for (const panel of [...panels].sort(inTurn)) {
    // The first that can take it: several are open at a time, the next to go up on top of one of them.
    const open = stacks.find((stack) => fits(stack, panel));
    if (open) open.push(panel);
    else stacks.push([panel]);
  }
  return stacks.map((own, i) => ({
    number: i + 1,
    course: (own[0] as PackedPanel).course,
    panels: [...own].sort(
      (a, b) => later(turnOf(b), turnOf(a)) || b.size[0] * b.size[1] - a.size[0] * a.size[1],
    ),
    mass: massOf(own),
    unweighed: own.filter((one) => one.mass === null).length,
    size: [longest(own, 0), longest(own, 1), BATTENS + own.length * depth],
  }));
}

const turnOf = ({ turn = null }: PackedPanel): number => turn ?? Number.POSITIVE_INFINITY;

/** Infinity less infinity is no number. */
const later = (a: number, b: number): number => (a === b ? 0 : a - b);

const inTurn = (a: PackedPanel, b: PackedPanel): number =>
  a.course - b.course ||
  later(turnOf(a), turnOf(b)) ||
  (a.kind < b.kind ? -1 : a.kind > b.kind ? 1 : 0);

const massOf = (panels: readonly PackedPanel[]): number =>
  panels.reduce((sum, { mass }) => sum + (mass ?? 0), 0);

const longest = (panels: readonly PackedPanel[], way: number): number =>
  Math.max(...panels.map(({ size }) => size[way] as number));

/** A panel of a piece that is a single one. */
export const packedPanel = (
  piece: Piece,
  kind: string,
  course: number,
  turn: number | null = null,
): PackedPanel => ({
  number: piece.numbers[0] as string,
  kind,
  course,
  mass: piece.mass,
  size: [piece.size[0], piece.size[1]],
  turn,
});

/** How many panels of each kind, in the order in which they first lie: `6 × 1, 2 × 3L`. */
export function kindsIn(panels: readonly PackedPanel[]): string {
  const counts = new Map<string, number>();
  for (const { kind } of panels) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  return [...counts].map(([kind, count]) => `${count} × ${kind}`).join(', ');
}

/** Off battens and into a van: hands at 0.15 m, 0.35 m before the ankles, up to 0.75 m, one lift in five
 * minutes, held by an edge. Common practice, no source. */
const LOADING = {
  ...{ reach: 0.35, height: 0.15, travel: 0.6, twist: 0, perMinute: 0.2 },
  hours: 2,
  coupling: 'fair',
} as const;

/** What one person, and at most four together, load by hand off the ground, kg: the lifting equation of
 * NIOSH, and of its sum what HSE says a team does (1, 2/3, 1/2, three eighths). RangeError unless 1 to 4
 * people. */
export const loadsByHand = (people: number = MOST_TEAM): number =>
  people * teamFactor(people).value * recommendedWeight(LOADING, METRIC_LIFT);
