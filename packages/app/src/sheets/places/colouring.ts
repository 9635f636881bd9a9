// What the plan's fills say: kind, course, condition or stock. Hatch and tint together, so that no
// two differ by colour alone.

import {
  type Fill,
  type HatchName,
  type Kind,
  kindFills,
  type StockRow,
  tints,
} from '@shellraise/core';
import type { Colouring } from '../../state/settings.ts';

/** One sample below the plan. */
export interface Sample {
  /** A kind's id, a course's number, or a state's name. */
  readonly key: string;
  readonly fill: Fill;
  readonly places: number;
}

/** Fills of all places, and what they mean. */
export interface Coloured {
  readonly fills: readonly Fill[];
  readonly samples: readonly Sample[];
}

/** What is coloured. */
export interface ColouringContent {
  /** Place → index of its kind. */
  readonly kind: ArrayLike<number>;
  readonly kinds: readonly Kind[];
  /** Place → its course, from 1. */
  readonly course: ArrayLike<number>;
  readonly stock: readonly StockRow[];
  /** Places that no panel stands in: white, and not counted. */
  readonly leftOut?: readonly number[];
}

/** How panels of a kind come to their places. */
export type ConditionState = 'good' | 'mended' | 'mendable' | 'missing' | 'uncounted';
/** How far the stock of a kind goes. */
export type StockState = 'over' | 'exact' | 'short' | 'uncounted';

/** The fills of every place. */
export function coloured(by: Colouring, content: ColouringContent): Coloured {
  switch (by) {
    case 'kind': {
      const fills = kindFills(content.kinds);
      const ids = content.kinds.map((kind) => kind.id);
      return byKey(
        content,
        (p) => content.kind[p] as number,
        (k) => ids[k] ?? '',
        (k) => fills[k],
      );
    }
    case 'course':
      return byKey(
        content,
        (p) => (content.course[p] as number) - 1,
        (c) => `${c + 1}`,
        courseFill,
      );
    case 'condition':
      return byState(content, conditionOf, conditionFills);
    case 'stock':
      return byState(content, stockStateOf, stockFills);
  }
}

const white: Fill = { tint: null, hatch: null };
const fill = (tint: keyof typeof tints, hatch: HatchName): Fill => ({ tint: tints[tint], hatch });

const conditionFills: Readonly<Record<ConditionState, Fill>> = {
  good: white,
  mended: fill('sand', 'level-dashed'),
  mendable: fill('peach', 'upright-dashed'),
  missing: fill('rose', 'grid'),
  uncounted: fill('mist', 'dots'),
};

const stockFills: Readonly<Record<StockState, Fill>> = {
  exact: white,
  over: fill('mint', 'dots'),
  short: fill('rose', 'grid'),
  uncounted: fill('mist', 'rings'),
};

/** Whether good panels fill all places of a kind, and if not, what would. */
export function conditionOf(row: StockRow): ConditionState {
  if (!row.counted) return 'uncounted';
  if (row.short > 0) return row.mendable > 0 ? 'mendable' : 'missing';
  return row.mended > 0 ? 'mended' : 'good';
}

/** Whether panels of a kind are left over, just enough, or short. */
export function stockStateOf(row: StockRow): StockState {
  if (!row.counted) return 'uncounted';
  if (row.short > 0) return 'short';
  return row.left > 0 ? 'over' : 'exact';
}

/** Hatches and tints of courses go on with unequal periods, so that many courses differ. */
const courseHatches: readonly (HatchName | null)[] = [null, 'dots', 'level', 'grid', 'upright'];
const courseTints = [null, 'sand', 'sky', 'rose', 'mint', 'violet'] as const;

function courseFill(course: number): Fill {
  const tint = courseTints[course % courseTints.length] ?? null;
  return {
    tint: tint && tints[tint],
    hatch: courseHatches[course % courseHatches.length] ?? null,
  };
}

/** Fills by something that every place has one of, counted from 0. */
function byKey(
  { kind, leftOut = [] }: ColouringContent,
  keyAt: (place: number) => number,
  name: (key: number) => string,
  fillOf: (key: number) => Fill | undefined,
): Coloured {
  const counts = new Map<number, number>();
  const out = new Set(leftOut);
  const fills = Array.from(kind, (_, place) => {
    if (out.has(place)) return white;
    const key = keyAt(place);
    counts.set(key, (counts.get(key) ?? 0) + 1);
    return fillOf(key) ?? white;
  });
  const samples = [...counts]
    .sort(([a], [b]) => a - b)
    .map(([key, places]) => ({ key: name(key), fill: fillOf(key) ?? white, places }));
  return { fills, samples };
}

/** Fills by the state of the stock that a place draws on. */
function byState<S extends string>(
  { kind, kinds, stock, leftOut = [] }: ColouringContent,
  stateOf: (row: StockRow) => S,
  fillsOf: Readonly<Record<S, Fill>>,
): Coloured {
  const states = kinds.map(({ id }) => {
    const row = stock.find((one) => one.kinds.includes(id));
    return row ? stateOf(row) : null;
  });
  const counts = new Map<S, number>();
  const out = new Set(leftOut);
  const fills = Array.from(kind, (k, place) => {
    const state = states[k] ?? null;
    if (state === null || out.has(place)) return white;
    counts.set(state, (counts.get(state) ?? 0) + 1);
    return fillsOf[state];
  });
  const samples = (Object.keys(fillsOf) as S[])
    .filter((state) => counts.has(state))
    .map((state) => ({ key: state, fill: fillsOf[state], places: counts.get(state) ?? 0 }));
  return { fills, samples };
}
