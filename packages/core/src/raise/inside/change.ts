// The least change that lets a thing out when it is no more needed, each tried before it is told: take it
// apart, leave one more panel out to the last, or two.

import type { PassOptions } from '../../passage/passing.ts';
import { coursesOf } from '../../shell/courses.ts';
import { vectorArea } from '../../shell/geometry.ts';
import type { PlaceId } from '../../shell/ids.ts';
import { type Shell, sidesOf } from '../../shell/shell.ts';
import type { ThingInside } from '../gear.ts';
import { type InsideOptions, type InsideQuestion, passesAfter, placedAfter } from './leave.ts';

/** A change that was tried. */
export interface Change {
  readonly what: 'take apart' | 'leave out' | 'nothing found';
  /** Places to be left out besides to the last; none for other changes. */
  readonly places: readonly number[];
  readonly words: string;
}

/** Sets of places that are tried before it is given up. */
const MOST_TRIED = 18;
/** A quick look for each: no proof, a quarter of the poses. */
const QUICK = {
  cells: 0,
  crossings: 2000,
  followed: 6,
  movements: 300,
  allMovements: 1000,
} as const;

/** The least change that lets a thing out after a stage. */
export function leastChangeFor(
  question: InsideQuestion,
  thing: ThingInside,
  stage: number,
  { seed, shouldStop }: InsideOptions,
): Change {
  const options: PassOptions = {
    ...QUICK,
    ...(seed !== undefined && { seed }),
    ...(shouldStop && { shouldStop }),
  };
  const placed = placedAfter(question, stage);
  if (passesInParts(question, thing, placed, options))
    return {
      what: 'take apart',
      places: [],
      words: 'Taken apart, each of its parts passes then.',
    };
  const { numbers } = coursesOf(question.shell);
  for (const more of candidates(question.shell, placed)) {
    if (shouldStop?.()) break;
    const left = placed.filter((p) => !more.includes(p));
    if (passesAfter(question, thing, left, options).answer.status !== 'passes') continue;
    const named = more.map((p) => numbers[p] as string).join(' and ');
    return {
      what: 'leave out',
      places: more,
      words: `Least change that helps, of those tried: leave ${named} out until it is through.`,
    };
  }
  return {
    what: 'nothing found',
    places: [],
    words:
      'Neither one panel nor two left out were found to be enough: use what can be taken apart, or leave it inside.',
  };
}

function passesInParts(
  question: InsideQuestion,
  thing: ThingInside,
  placed: readonly number[],
  options: PassOptions,
): boolean {
  const { shape } = thing;
  return (
    shape.form === 'parts' &&
    shape.parts.length > 1 &&
    shape.parts.every(
      (part) =>
        passesAfter(question, { ...thing, shape: part.shape }, placed, options).answer.status ===
        'passes',
    )
  );
}

/** Sets of one place, then of two that share a seam, beside what is open low down, or low down where
 * nothing is open: the largest first. */
function candidates(shell: Shell, placed: readonly number[]): number[][] {
  const { course } = coursesOf(shell);
  const isPlaced = new Uint8Array(course.length);
  for (const p of placed) isPlaced[p] = 1;
  const isLow = (p: number): boolean => isPlaced[p] === 1 && (course[p] as number) <= 2;
  const across = (p: number): number[] =>
    sidesOf(shell, p as PlaceId).flatMap((side) => {
      const mate = shell.mate[side] as number;
      return mate < 0 ? [] : [shell.sidePlace[mate] as number];
    });
  const open = [...course.keys()].filter((p) => !isPlaced[p] && (course[p] as number) <= 2);
  const beside = [...new Set(open.flatMap(across))].filter(isLow);
  const size = (p: number): number => Math.hypot(...vectorArea(shell, p as PlaceId));
  const bySize = (list: readonly number[]): number[] =>
    [...list].sort((a, b) => size(b) - size(a) || a - b);
  const singles = bySize(beside.length > 0 ? beside : [...course.keys()].filter(isLow)).slice(
    0,
    MOST_TRIED / 3,
  );
  const pairs = singles.flatMap((p) => bySize(across(p).filter(isLow)).map((q) => [p, q]));
  return [...singles.map((p) => [p]), ...pairs].slice(0, MOST_TRIED);
}
