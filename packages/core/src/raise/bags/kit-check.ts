// The kit check counts down: what is still to go into each bag after what was ticked off so far.

import type { Need } from '../../takeoff/needs.ts';
import type { Bag } from './bags.ts';
import { needKey } from './words.ts';

/** One tick: so many of a thing went into a bag; below 0 where they were taken out again. */
export interface KitTick {
  /** The bag's stage; null: the spares. */
  readonly stage: number | null;
  readonly need: Need;
  readonly quantity: number;
}

/** How far one bag is. */
export interface BagCheck {
  readonly stage: number | null;
  readonly title: string;
  /** What is still to go in, in the order of its label; what is over, and what does not belong in it. */
  readonly left: readonly Need[];
  readonly over: readonly Need[];
  readonly foreign: readonly Need[];
  readonly isFull: boolean;
}

/** How far the kit is. */
export interface KitCheck {
  readonly bags: readonly BagCheck[];
  /** Lines still to be filled, of all lines: what the count-down shows. */
  readonly left: number;
  readonly lines: number;
  /** The first bag that is not full, in the order of the stages; null: all are. */
  readonly next: BagCheck | null;
}

/** The kit check after some ticks. RangeError for a bag that there is none of, or a quantity that is no
 * number. */
export function kitCheck(bags: readonly Bag[], ticks: readonly KitTick[]): KitCheck {
  for (const { stage, quantity } of ticks) {
    if (!bags.some((bag) => bag.stage === stage))
      throw new RangeError(`no bag for ${stage === null ? 'spares' : `stage ${stage}`}`);
    if (!Number.isFinite(quantity)) throw new RangeError(`a tick of ${quantity} pieces`);
  }
  const checks = bags.map((bag) =>
    checkOf(
      bag,
      ticks.filter(({ stage }) => stage === bag.stage),
    ),
  );
  return {
    bags: checks,
    left: checks.reduce((sum, { left }) => sum + left.length, 0),
    lines: bags.reduce((sum, { needs }) => sum + needs.length, 0),
    next: checks.find(({ isFull }) => !isFull) ?? null,
  };
}

function checkOf({ stage, needs, label }: Bag, ticks: readonly KitTick[]): BagCheck {
  const sums = new Map<string, Need>();
  for (const { need, quantity } of ticks) {
    const before = sums.get(needKey(need))?.quantity ?? 0;
    sums.set(needKey(need), { ...need, quantity: before + quantity });
  }
  const keys = new Set(needs.map(needKey));
  const balance = needs.map((need) => ({
    ...need,
    quantity: need.quantity - (sums.get(needKey(need))?.quantity ?? 0),
  }));
  const left = balance.filter(({ quantity }) => quantity > TINY);
  return {
    stage,
    title: label.title,
    left,
    over: balance
      .filter(({ quantity }) => quantity < -TINY)
      .map((need) => ({ ...need, quantity: -need.quantity })),
    foreign: [...sums.values()].filter((need) => need.quantity > 0 && !keys.has(needKey(need))),
    isFull: left.length === 0,
  };
}

/** Metres of tape below which nothing is left. */
const TINY = 1e-6;
