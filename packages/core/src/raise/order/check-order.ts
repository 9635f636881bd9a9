// What an order changed by hand breaks, told at once: the stage that falls, with its movements, the
// hub that moves most and the movement itself; a panel that floats; a piece whose way in is closed;
// a place left out or brought twice; a pin that is not kept.

import { type Mechanism, mechanisms } from '../../frame/mechanisms.ts';
import type { FrameModel } from '../../frame/model.ts';
import { howItStands } from '../../stages/how-it-stands.ts';
import { frameOfStage, type Stage } from '../../stages/stage.ts';
import type { RaisingPlan } from '../plan.ts';
import { BARRED, type Barred, barredBy } from './entry.ts';
import { type Piece, pieceOf } from './pieces.ts';
import { brokenPins, type Pins } from './pins.ts';
import { completeCourses, type OrderSite } from './site.ts';
import { ringPass } from './walk.ts';

/** A lift as ordered: its places, and the hubs propped when it is let go. */
export interface OrderedLift {
  readonly places: readonly number[];
  readonly props: readonly number[];
}

/** A movement to be drawn: of every corner of the placed panels, stride 3, the largest 1 long. */
export interface FallingWay {
  readonly hub: number;
  /** Placed places in the order of the corners, ascending; each has as many as it has hubs. */
  readonly places: readonly number[];
  readonly corners: Float64Array;
}

/** One thing that an order breaks. */
export type OrderBreak =
  | {
      readonly what: 'falls';
      /** From 0. */
      readonly lift: number;
      readonly movements: number;
      /** The hub that moves most, and the places that move. */
      readonly hub: number;
      readonly moving: readonly number[];
      readonly way: FallingWay;
      /** Hubs to prop besides, so that it stands; null: none are enough. */
      readonly needs: readonly number[] | null;
      readonly words: string;
    }
  | { readonly what: Barred; readonly lift: number; readonly words: string }
  | {
      readonly what: 'prop on air' | 'prop on the ground';
      readonly lift: number;
      readonly hub: number;
      readonly words: string;
    }
  | { readonly what: 'missing' | 'twice'; readonly place: number; readonly words: string }
  | { readonly what: 'way out'; readonly lift: number; readonly words: string }
  | { readonly what: 'not joined'; readonly lift: number; readonly words: string }
  | {
      readonly what: 'pin';
      readonly place: number;
      readonly than: number;
      readonly words: string;
    };

/** Options of `checkOrder`. */
export interface CheckOptions {
  /** Lifts whose states are asked, from … to, from 0: all where left out. */
  readonly from?: number;
  readonly to?: number;
  /** Stop at the first that falls. */
  readonly firstOnly?: boolean;
  readonly mayProp?: (hub: number) => boolean;
}

/** All that an order breaks, in its order; nothing: every state stands. */
export function checkOrder(
  site: OrderSite,
  lifts: readonly OrderedLift[],
  pins: Pins,
  options: CheckOptions = {},
): OrderBreak[] {
  const breaks = countBreaks(site, lifts);
  const pieces: Piece[] = [];
  for (const [lift, { places }] of lifts.entries()) {
    try {
      pieces.push(pieceOf(site, places, 'made up'));
    } catch {
      breaks.push({ what: 'not joined', lift, words: `lift ${lift + 1} is not one piece` });
    }
  }
  if (breaks.length > 0) return breaks;
  for (const { place, than } of brokenPins(pieces, pins))
    breaks.push({
      what: 'pin',
      place,
      than,
      words: `${site.numbers[place]} is to go up before ${site.numbers[than]}`,
    });
  breaks.push(...wayOutBreaks(pieces));
  const groupOf = new Map<number, number>();
  const isPlaced = (p: number): boolean => groupOf.has(p);
  let complete = 0;
  for (const [lift, piece] of pieces.entries()) {
    const made = isCap(site, piece) ? 'cap' : piece.made;
    const barred = barredBy(site, { ...piece, made }, isPlaced);
    for (const p of piece.places) groupOf.set(p, lift);
    if (barred !== null) {
      breaks.push({ what: barred, lift, words: BARRED[barred] });
      if (barred === 'floats') return breaks;
    }
    const asked = lift >= (options.from ?? 0) && lift <= (options.to ?? lifts.length);
    const { props } = lifts[lift] as OrderedLift;
    if (asked) {
      breaks.push(...propBreaks(site, lift, props, isPlaced));
      const found = fallOf(site, groupOf, props, complete, lift, options);
      if (found) breaks.push(found);
      if (found && options.firstOnly) return breaks;
    }
    complete = completeCourses(site, isPlaced);
  }
  return breaks;
}

/** A piece of several panels that is all there is from its lowest course up comes from above. */
const isCap = (site: OrderSite, { places, course }: Piece): boolean =>
  places.length > 1 &&
  site.ofCourse.slice(course - 1).reduce((sum, list) => sum + list.length, 0) === places.length;

function countBreaks(site: OrderSite, lifts: readonly OrderedLift[]): OrderBreak[] {
  const count = new Int32Array(site.built.length);
  for (const { places } of lifts) for (const p of places) count[p]++;
  const breaks: OrderBreak[] = [];
  count.forEach((n, place) => {
    const number = site.numbers[place] as string;
    if (site.built[place] && n === 0)
      breaks.push({ what: 'missing', place, words: `no lift brings ${number}` });
    if (n > 1) breaks.push({ what: 'twice', place, words: `${n} lifts bring ${number}` });
  });
  return breaks;
}

function wayOutBreaks(pieces: readonly Piece[]): OrderBreak[] {
  const last = pieces.findLastIndex(({ wayOut }) => !wayOut);
  return pieces
    .slice(0, Math.max(0, last))
    .flatMap(({ wayOut }, lift): OrderBreak[] =>
      wayOut
        ? [{ what: 'way out', lift, words: 'the way out is closed before the last piece is in' }]
        : [],
    );
}

function propBreaks(
  site: OrderSite,
  lift: number,
  props: readonly number[],
  isPlaced: (place: number) => boolean,
): OrderBreak[] {
  return props.flatMap((hub): OrderBreak[] => {
    if (site.base[hub])
      return [
        {
          what: 'prop on the ground',
          lift,
          hub,
          words: `the prop under hub ${hub} is needless: that hub stands on the ground`,
        },
      ];
    if ((site.around[hub] ?? []).some(isPlaced)) return [];
    return [
      { what: 'prop on air', lift, hub, words: `no panel reaches hub ${hub} that is propped` },
    ];
  });
}

/** The stage after a lift: who is placed with which lift, its props, courses complete before it. */
export function stageAfterLift(
  site: OrderSite,
  groupOf: ReadonlyMap<number, number>,
  props: readonly number[],
  complete: number,
): Stage {
  return {
    placed: [...groupOf.keys()],
    props: props.filter((hub) => !site.base[hub] && site.around[hub]?.some((p) => groupOf.has(p))),
    pass: (seam) => {
      const [a, b] = site.seamPlaces[seam] as readonly [number, number];
      if (groupOf.get(a) === groupOf.get(b)) return 'snug';
      return ringPass(site, seam, complete, (p) => groupOf.has(p));
    },
  };
}

function fallOf(
  site: OrderSite,
  groupOf: ReadonlyMap<number, number>,
  props: readonly number[],
  complete: number,
  lift: number,
  { mayProp }: CheckOptions,
): OrderBreak | null {
  const stage = stageAfterLift(site, groupOf, props, complete);
  const how = howItStands(site.shell, stage, { sets: 60, ...(mayProp && { mayProp }) });
  if (how.movements === 0) return null;
  const ways = how.movements === 1 ? '1 way' : `${how.movements} ways`;
  return {
    what: 'falls',
    lift,
    movements: how.movements,
    hub: how.at as number,
    moving: how.moving,
    way: fallingWay(frameOfStage(site.shell, stage)),
    needs: how.props,
    words: `After lift ${lift + 1} it moves freely in ${ways}, most at hub ${how.at}: ${how.moving
      .slice(0, 8)
      .map((p) => site.numbers[p])
      .join(', ')}${how.moving.length > 8 ? ' and more' : ''}.`,
  };
}

/** How a frame that does not stand moves: without resistance, or else the softest way. */
function fallingWay(frame: FrameModel): FallingWay {
  const free = mechanisms(frame, { softest: false, modes: 1 }).modes[0];
  const mode = (free ?? mechanisms(frame, { modes: 0 }).softestMode) as Mechanism;
  return { hub: mode.hub, places: frame.panels.map(({ place }) => place), corners: mode.corners };
}

/** The lifts of a plan with its stages in another order: each keeps the props that its card tells.
 * RangeError where a number is no stage of the plan, or comes twice. */
export function reordered(plan: RaisingPlan, numbers: readonly number[]): OrderedLift[] {
  const byNumber = new Map(plan.stages.map((stage) => [stage.number, stage]));
  if (new Set(numbers).size < numbers.length) throw new RangeError('a stage comes twice');
  return numbers.flatMap((number) => {
    const stage = byNumber.get(number);
    if (!stage) throw new RangeError(`stage ${number}: the plan has 1 to ${plan.stages.length}`);
    return stage.lifts.map(({ places, props }) => ({ places, props }));
  });
}

/** The lifts of a plan as ordered. */
export const liftsOf = (plan: RaisingPlan): OrderedLift[] =>
  reordered(
    plan,
    plan.stages.map(({ number }) => number),
  );
