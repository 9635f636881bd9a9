// What went wrong with a reading that fits no kind: sides in each other's place, another face than
// was noted, inches written down as centimetres or feet and inches as decimal feet, one or two sides
// misread. Such a reading is no kind of its own. It is one against many: it is only taken for a slip
// where a kind of its own, of which so little was read, would be a greater wonder.

import { chiSquareDeviate } from './findings.ts';
import { nearestTurn } from './polygon.ts';
import { SLIP_LOG_ODDS, SLIP_RATES } from './tolerances.ts';

/** What can go wrong with a reading. */
export type Slip = 'length' | 'swapped' | 'unit' | 'face' | 'shift';

/** A reading that is explained by a slip. Sides count from 0 as they were written down. */
export interface ReadingSlip {
  /** Index in the pile's list of readings. */
  readonly reading: number;
  readonly tag: string | null;
  readonly by: string | null;
  /** What its panel is in truth. */
  readonly kind: string;
  readonly slip: Slip;
  /** What would look just the same, null for nothing: in a triangle two sides swapped look like a
   * reading from the other face. */
  readonly orElse: Slip | null;
  /** The sides it is about. */
  readonly sides: readonly number[];
  /** All sides as written, metres, and what they should read: as the panel's kind has them, with
   * what the person's tape adds. */
  readonly measured: readonly number[];
  readonly expected: readonly number[];
}

/** How a reading becomes right: its sides taken in this order, each times a factor or, where that is
 * unknown (NaN), read again. */
export interface Remedy {
  readonly slip: Slip;
  readonly orElse: Slip | null;
  /** Right side → side of the reading. */
  readonly order: readonly number[];
  /** Right side → its factor. */
  readonly factors: readonly number[];
  /** Whether inches and centimetres were taken for each other: nothing else looks like that. */
  readonly inches?: boolean;
}

/** A kind as a reading is held against it: measured lengths and their deviations, metres. */
export interface Target {
  readonly sides: readonly number[];
  readonly sds: readonly number[];
}

/** Inches written down as centimetres, and the other way round. */
const INCH = [1 / 2.54, 2.54] as const;
const FOOT = 0.3048;
/** Normal deviate of a misfit that noise may have. */
const FITS_Z = 3.5;
/** Sides of a panel up to which every choice of slipped sides is tried; beyond, one and all. */
const FEW_SIDES = 5;
/** Longest that a misread side may be off, metres: an inch, ten or a hundred millimetres and their
 * like. */
const LONGEST_SLIP = 0.11;
/** Most that feet and inches taken for decimal feet change a side, metres: 3.10 ft and 3 ft 10 in. */
const LONGEST_FEET = 0.24;

/** All remedies that make the reading fit the target in some turn; the likeliest slip first. `sd`:
 * noise of one side; `faceKnown`: whether its face was noted, so that it may be the wrong one;
 * `bias`: what was taken off the sides for the person's tape, after the unit was taken for another;
 * `only` this slip where given. */
export function remediesFor(
  reading: readonly number[],
  faceKnown: boolean,
  target: Target,
  sd: number,
  bias = 0,
  only?: Slip,
): Remedy[] {
  const n = reading.length;
  if (n !== target.sides.length) return [];
  // What the sides add up to rules most of it out at once.
  const [sum, right] = [sumOf(reading), sumOf(target.sides)];
  const off = Math.abs(sum - right) - SUM_Z * sd * n;
  const inches = Math.abs(Math.log((sum + n * bias) / (right + n * bias))) > 0.4 / n;
  const is = (slip: Slip): boolean => only === undefined || slip === only;
  return [
    ...(off < 0 && faceKnown && is('face') ? turnedOver(reading, target, sd) : []),
    ...(off < 0 && is('swapped') ? swappedSides(reading, target, sd) : []),
    ...(inches && is('unit') ? wrongUnit(reading, target, sd, bias) : []),
    ...(off < LONGEST_SLIP && is('length') ? misreadSides(reading, target, sd, 1) : []),
    ...(off < n * LONGEST_FEET && is('unit') ? wrongFeet(reading, target, sd, bias) : []),
    ...(off < 2 * LONGEST_SLIP && is('length') ? misreadSides(reading, target, sd, 2) : []),
  ];
}

/** A sum of sides that noise may have is off by less than this for each side, in standard deviations. */
const SUM_Z = 6;

const sumOf = (sides: readonly number[]): number => sides.reduce((sum, x) => sum + x, 0);

const order = (n: number): number[] => Array.from({ length: n }, (_, i) => i);

const ones = (n: number): number[] => new Array<number>(n).fill(1);

/** Whether the sides fit the target in some turn, sides without a number left out. */
function fits(sides: readonly number[], target: Target, sd: number): boolean {
  const known = sides.map((x) => (Number.isNaN(x) ? 0 : 1));
  const filled = sides.map((x) => (Number.isNaN(x) ? 0 : x));
  const { cost } = nearestTurn(
    target.sides,
    filled,
    (on, at) => (known[at] as number) / (sd ** 2 + (target.sds[on] as number) ** 2),
  );
  const freedom = known.reduce((sum: number, one) => sum + one, 0);
  return freedom > 0 && chiSquareDeviate(cost, freedom) < FITS_Z;
}

/** A triangle with two sides swapped is one seen from the other face. */
function turnedOver(reading: readonly number[], target: Target, sd: number): Remedy[] {
  const back = order(reading.length).reverse();
  if (
    !fits(
      back.map((i) => reading[i] as number),
      target,
      sd,
    )
  )
    return [];
  const orElse = reading.length === 3 ? ('swapped' as const) : null;
  return [{ slip: 'face', orElse, order: back, factors: ones(reading.length) }];
}

function swappedSides(reading: readonly number[], target: Target, sd: number): Remedy[] {
  const n = reading.length;
  if (n === 3) return [];
  const out: Remedy[] = [];
  for (let a = 0; a < n; a++)
    for (let b = a + 1; b < n; b++) {
      const swapped = order(n).map((i) => (i === a ? b : i === b ? a : i));
      if (
        fits(
          swapped.map((i) => reading[i] as number),
          target,
          sd,
        )
      )
        out.push({ slip: 'swapped', orElse: null, order: swapped, factors: ones(n) });
    }
  return out;
}

function wrongUnit(reading: readonly number[], target: Target, sd: number, bias: number): Remedy[] {
  return INCH.flatMap((factor) =>
    choices(reading.length).flatMap((chosen): Remedy[] => {
      const sides = reading.map((x, i) => (chosen.includes(i) ? (x + bias) * factor - bias : x));
      if (!fits(sides, target, sd)) return [];
      return [{ ...inOtherUnit(reading, sides), inches: true }];
    }),
  );
}

const inOtherUnit = (reading: readonly number[], sides: readonly number[]): Remedy => ({
  slip: 'unit',
  orElse: null,
  order: order(reading.length),
  factors: sides.map((x, i) => x / (reading[i] as number)),
});

function wrongFeet(reading: readonly number[], target: Target, sd: number, bias: number): Remedy[] {
  return [decimalFeet, feetAndTenths].flatMap((right) =>
    combinations(reading.map((x) => right(x + bias).map((y) => y - bias)))
      .filter((sides) => fits(sides, target, sd))
      .map((sides) => inOtherUnit(reading, sides)),
  );
}

/** Every choice of one from each list; the first of each where there are many lists. */
const combinations = (lists: readonly (readonly number[])[]): number[][] =>
  lists.reduce<number[][]>(
    (all, list) =>
      all.flatMap((head) =>
        (lists.length > FEW_SIDES ? list.slice(0, 1) : list).map((x) => [...head, x]),
      ),
    [[]],
  );

/** Sides that may have slipped together: every choice where there are few, else one or all. */
function choices(n: number): number[][] {
  if (n > FEW_SIDES) return [order(n), ...order(n).map((i) => [i])];
  return Array.from({ length: 2 ** n - 1 }, (_, bits) =>
    order(n).filter((i) => ((bits + 1) >> i) & 1),
  );
}

/** 3 ft 7 in that was written down as 3.7 ft, or 3 ft 10 in as 3.10 ft. */
function decimalFeet(length: number): number[] {
  const feet = Math.floor(length / FOOT);
  const rest = length / FOOT - feet;
  const inches = [10 * rest, 100 * rest].filter((x, i) => i === 0 || (x >= 10 && x < 12));
  return inches.map((x) => FOOT * (feet + x / 12));
}

/** 3.7 ft that was written down as 3 ft 7 in. */
function feetAndTenths(length: number): number[] {
  const feet = Math.floor(length / FOOT);
  return [FOOT * (feet + (length / FOOT - feet) * 1.2)];
}

function misreadSides(
  reading: readonly number[],
  target: Target,
  sd: number,
  count: 1 | 2,
): Remedy[] {
  const n = reading.length;
  const one = order(n).map((a) => [a]);
  const two = order(n).flatMap((a) => order(a).map((b) => [b, a]));
  return (count === 1 ? one : two).flatMap((misread): Remedy[] => {
    const factors = order(n).map((i) => (misread.includes(i) ? Number.NaN : 1));
    if (!misreadFits(reading, factors, target, sd)) return [];
    return [{ slip: 'length', orElse: null, order: order(n), factors }];
  });
}

/** Whether the other sides fit where these are off by no more than people misread. */
function misreadFits(
  reading: readonly number[],
  factors: readonly number[],
  target: Target,
  sd: number,
): boolean {
  const n = reading.length;
  for (let turn = 0; turn < n; turn++) {
    let [cost, freedom, near] = [0, 0, true];
    for (let i = 0; i < n; i++) {
      const on = (i + turn) % n;
      const off = (reading[i] as number) - (target.sides[on] as number);
      if (Number.isNaN(factors[i])) near &&= Math.abs(off) <= LONGEST_SLIP;
      else {
        cost += off ** 2 / (sd ** 2 + (target.sds[on] as number) ** 2);
        freedom++;
      }
    }
    if (near && chiSquareDeviate(cost, freedom) < FITS_Z) return true;
  }
  return false;
}

/** What speaks of how the heap was read, for the odds of a slip against a kind of its own. */
export interface HeapHabits {
  /** Panels of the target, and of the odd shape. */
  readonly target: number;
  readonly own: number;
  /** Panels of a kind, typically. */
  readonly typical: number;
  /** Kinds with a hand of which the other hand is there as well, and of which it is not; the one in
   * question not counted. */
  readonly paired: number;
  readonly unpaired: number;
  /** Sides of the odd reading that are as long as no side of any kind, and kinds besides the target
   * whose sides they might have met. */
  readonly loneSides: number;
  readonly others: number;
}

/** Whether the odds are for the slip: log of its chance over that of a kind of which so few panels
 * were met. */
export function isLikelySlip(remedy: Remedy, habits: HeapHabits): boolean {
  const { slip, factors } = remedy;
  if (remedy.inches) return habits.target >= 1;
  if (slip === 'face' || (slip === 'swapped' && factors.length === 3))
    return turnedOdds(habits) > SLIP_LOG_ODDS;
  if (slip === 'length') return plainOdds(SLIP_RATES.twoSides, habits) > SLIP_LOG_ODDS;
  const agreeing = factors.length * SLIP_RATES.agreeing;
  return plainOdds(SLIP_RATES.other, habits) + agreeing > SLIP_LOG_ODDS;
}

/** The other hand of a kind would be met as often as the kind itself, where it exists. */
function turnedOdds({ target, own, paired, unpaired }: HeapHabits): number {
  const rate = SLIP_RATES.turned * target;
  const slips = own * Math.log(rate) - rate - logFactorial(own);
  return slips - logAtMost(own, target + own) + Math.log((unpaired + 0.5) / (paired + 0.5));
}

/** Another kind would be met about as often as kinds are (some are four times as rare as others), and
 * its sides would meet those of others. */
function plainOdds(rate: number, { target, own, typical, loneSides, others }: HeapHabits): number {
  const met = RARITIES.map((rarity) => {
    const mean = typical * rarity;
    return Math.exp(own * Math.log(mean) - mean - logFactorial(own)) / RARITIES.length;
  });
  const kind = Math.log(met.reduce((sum, x) => sum + x, SLIP_RATES.stranger));
  return (
    own * Math.log(rate * target) - kind + loneSides * Math.log(1 + Math.min(others, MOST_OTHERS))
  );
}

/** How often a kind is met against the typical one, each as likely. */
const RARITIES = [1 / 4, 1 / 2, 1, 2] as const;

/** A side that is as long as no other of many kinds still is a kind's own one time in ten. */
const MOST_OTHERS = 9;

const logFactorial = (n: number): number =>
  Array.from({ length: n }, (_, i) => Math.log(i + 1)).reduce((sum, x) => sum + x, 0);

/** Log of the chance of at most `most` heads in `throws` of a coin. */
function logAtMost(most: number, throws: number): number {
  let [term, sum] = [1, 1];
  for (let k = 1; k <= most; k++) {
    term *= (throws - k + 1) / k;
    sum += term;
  }
  return Math.log(sum) - throws * Math.LN2;
}

/** The sides of a reading as the remedy has them, metres; NaN where it must be read again. */
export const remedied = (reading: readonly number[], { order: from, factors }: Remedy): number[] =>
  from.map((side, i) => (reading[side] as number) * (factors[i] as number));

/** A kind's sides as they lie on a reading put right (metres, NaN where it must be read again), and the
 * sum of squares of what is left between them. */
export function sidesLaidOn(
  right: readonly number[],
  sides: readonly number[],
): { readonly cost: number; readonly sides: number[] } {
  const { turn, cost } = nearestTurn(
    sides,
    right.map((x) => (Number.isNaN(x) ? 0 : x)),
    (_, at) => (Number.isNaN(right[at]) ? 0 : 1),
  );
  return { cost, sides: right.map((_, i) => sides[(i + turn) % sides.length] as number) };
}

/** The sides of a reading that a remedy is about, from 0, ascending. */
export const sidesAtFault = ({ slip, order: from, factors }: Remedy): number[] =>
  [...from]
    .filter((side, i) => slip === 'face' || side !== i || factors[i] !== 1)
    .sort((a, b) => a - b);
