// The raising plan: several first orders are walked (singles only, fives and sixes made up low, caps
// lifted whole, both ways round), the cheapest is made better, and its walk asked whole, state by
// state. The first plan is told as soon as it stands.

import { type Fault, type Read, refuse } from '../../measure/fault.ts';
import { vectorArea } from '../../shell/geometry.ts';
import type { PlaceId } from '../../shell/ids.ts';
import type { Shell } from '../../shell/shell.ts';
import { howItStands } from '../../stages/how-it-stands.ts';
import type { StageModel } from '../../stages/model.ts';
import type { RaisingPlan } from '../plan.ts';
import { type Costing, isOpen, stepCost } from './cost.ts';
import { BARRED } from './entry.ts';
import { firstOrder } from './first-order.ts';
import { improve } from './improve.ts';
import { makePlan } from './make-plan.ts';
import { capFrom, type Group, type MakeUp, madeUpLow, type Piece, piecesOf } from './pieces.ts';
import { brokenPins, noPins, type Pins, ringOfPins } from './pins.ts';
import { commonRates, commonWeights, type OrderWeights, type RaisingRates } from './rates.ts';
import { rigOrder } from './rig-order.ts';
import { type OrderSite, orderSite } from './site.ts';
import { ringPass, type Step, type Stuck, Walker, type WalkOptions, walk } from './walk.ts';

/** What is to be raised, and what the lead chose. */
export interface RaisingBrief {
  /** The standing shell, crown up, whole: openings are places of it. */
  readonly shell: Shell;
  /** Places left out. */
  readonly openings: readonly number[];
  /** Groups that go up as they are: still joined, or made up as the lead says. */
  readonly groups: readonly Group[];
  /** The way out: places that go in last; null: found by the program, none where an opening of the
   * lowest course is one. */
  readonly wayOut: readonly number[] | null;
  /** What may be made up on the ground; null: nothing. */
  readonly makeUp: MakeUp | null;
  /** Whether a cap of these places may be lifted whole; null: there is no lift. */
  readonly mayLiftCap: ((places: readonly number[]) => boolean) | null;
  /** Holes of a seam by its index; null where nobody knows. */
  readonly holes: (seam: number) => number | null;
  readonly rates: RaisingRates;
  readonly weights: OrderWeights;
  /** The stages' own model of the shell: its guys and mast take the place of props where they can. None
   * do where it is left out. */
  readonly model?: StageModel;
  /** Which hubs may be propped; all above the ground where left out. */
  readonly mayProp?: (hub: number) => boolean;
  readonly pins: Pins;
  /** The lead's own order, each the places of one lift; null: the program's. */
  readonly order: readonly (readonly number[])[] | null;
}

/** A brief for a shell of which nothing else is said: single panels, common rates. */
export const plainBrief = (shell: Shell): RaisingBrief => ({
  shell,
  openings: [],
  groups: [],
  wayOut: null,
  makeUp: null,
  mayLiftCap: null,
  holes: () => null,
  rates: commonRates,
  weights: commonWeights,
  pins: noPins,
  order: null,
});

/** How the search goes. */
export interface RaisingOptions {
  readonly seed?: number;
  /** Orders tried after the first; 2000 unless told. */
  readonly tries?: number;
  /** Lifts on one card, at most; 8 unless told. */
  readonly mostLifts?: number;
  /** Asked after each order; true ends the search with the best so far. */
  readonly shouldStop?: () => boolean;
  /** Told the first plan as soon as it stands. */
  readonly onPlan?: (plan: RaisingPlan) => void;
  /** Orders tried of how many, and what the best costs. */
  readonly onProgress?: (tried: number, tries: number, total: number) => void;
}

/** An order of work in which every stage stands; or what keeps the shell from being raised so. */
export function planRaising(brief: RaisingBrief, options: RaisingOptions = {}): Read<RaisingPlan> {
  const made = siteFor(brief);
  if (!made.ok) return made;
  const site = made.value;
  const costing: Costing = brief;
  const { seed = 1, tries = 2000, mostLifts = 8 } = options;
  const whole = walkOptions(brief, true);
  const planOf = (order: readonly Piece[], tried: number, rig = true): Read<RaisingPlan> => {
    const walked = walk(site, order, whole);
    if (walked.stuck !== null) return stuckAt(site, order, walked.stuck);
    const isFewest = fewestIn(site, brief, walked.steps);
    const facts = { costing, mostLifts, seed, tried, isFewest };
    const plan = makePlan(site, walked.steps, facts);
    return { ok: true, value: rig ? rigOrder(site, walked.steps, plan, brief.model) : plan };
  };
  if (brief.order !== null) {
    const order = leadOrder(site, brief, brief.order);
    return order.ok ? planOf(order.value, 0) : order;
  }
  const variants = partitions(site, brief);
  if (!variants.ok) return variants;
  const ring = ringOfPins(variants.value[0] as Piece[], brief.pins);
  if (ring !== null)
    return refuse(
      'raising.before',
      `each of these before the next and the last before the first: ${named(site, ring)}`,
      'no ring among what goes before what',
    );
  const firstPieces = variants.value[0] as Piece[];
  const first = firstOrder(site, firstPieces, brief.pins, { start: 0, clockwise: true });
  // What lines can hold is asked of the last plan only: it takes as long as the search.
  const firstPlan = planOf(first, 0, tries === 0);
  if (!firstPlan.ok) return firstPlan;
  options.onPlan?.(firstPlan.value);
  if (tries === 0) return firstPlan;
  if (options.shouldStop?.()) return planOf(first, 0);
  const { total } = firstPlan.value.cost;
  const best = cheapest(site, brief, variants.value, { order: first, total }, options);
  const improved = improve(site, best, {
    costing,
    pins: brief.pins,
    makeUp: brief.makeUp,
    walk: walkOptions(brief, false),
    seed,
    tries,
    ...(options.shouldStop && { shouldStop: options.shouldStop }),
    onTry: (tried, total) => options.onProgress?.(tried, tries, total),
  });
  const plan = planOf(improved.order, improved.tried);
  const isBetter = plan.ok && plan.value.cost.total <= firstPlan.value.cost.total;
  return isBetter ? plan : planOf(first, improved.tried);
}

/** The site of a brief, its way out found; faults where it has none to be raised. */
export function siteFor(brief: RaisingBrief): Read<OrderSite> {
  try {
    const site = orderSite(brief.shell, brief.openings, brief.wayOut ?? []);
    const wayOut = brief.wayOut ?? foundWayOut(site, brief);
    return { ok: true, value: orderSite(brief.shell, brief.openings, wayOut) };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return refuse('raising', error.message, 'places of the shell, each in one group');
  }
}

/** Options of a walk for a brief. */
const walkOptions = (brief: RaisingBrief, whole: boolean): WalkOptions => ({
  whole,
  keepProps: brief.pins.props,
  ...(brief.mayProp && { mayProp: brief.mayProp }),
});

/** Where people get out: none besides an opening of the lowest course; else the largest single panel
 * of it that stands on a side, of equals the lowest numbered. */
function foundWayOut(site: OrderSite, { openings, groups, pins }: RaisingBrief): number[] {
  if (openings.some((p) => site.course[p] === 1)) return [];
  const grouped = new Set(groups.flatMap(({ places }) => places));
  const pinned = new Set(pins.before.flatMap(({ place, than }) => [place, than]));
  const size = (p: number): number => Math.hypot(...vectorArea(site.shell, p as PlaceId));
  const onSide = (site.ofCourse[0] ?? []).filter(
    (p) =>
      !grouped.has(p) &&
      !pinned.has(p) &&
      (site.hubs[p] ?? []).filter((hub) => site.base[hub]).length >= 2,
  );
  const best = onSide.reduce<number | null>((a, p) => {
    if (a === null) return p;
    const more = size(p) - size(a);
    if (Math.abs(more) > 1e-6 * size(a)) return more > 0 ? p : a;
    return (site.numbers[p] as string) < (site.numbers[a] as string) ? p : a;
  }, null);
  return best === null ? [] : [best];
}

/** Ways to cut the shell into pieces, the most likely first. */
function partitions(site: OrderSite, brief: RaisingBrief): Read<Piece[][]> {
  const { groups, makeUp, mayLiftCap } = brief;
  const sets: (readonly Group[])[] = [];
  if (makeUp !== null)
    for (const from of [0, 1]) sets.push([...groups, ...madeUpLow(site, groups, makeUp, from)]);
  sets.push(groups);
  if (mayLiftCap !== null)
    for (let course = 2; course <= site.courses; course++)
      for (const set of [...sets.slice(0, 1), groups]) {
        const kept = set.filter((group) => !isMadeUpAbove(site, group, course));
        const cap = capFrom(site, kept, course);
        if (cap === null || !mayLiftCap(cap.places)) continue;
        const own = new Set(cap.places);
        sets.push([...kept.filter(({ places }) => !places.some((p) => own.has(p))), cap]);
      }
  try {
    return { ok: true, value: distinct(sets.map((set) => piecesOf(site, set))) };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return refuse('raising.groups', error.message, 'groups of built places, each in one piece');
  }
}

/** Each way to cut the shell once, where it comes first. */
function distinct(ways: readonly Piece[][]): Piece[][] {
  const met = new Set<string>();
  return ways.filter((pieces) => {
    const cut = pieces.map(({ places }) => keyOf(places)).sort();
    const isNew = !met.has(cut.join(' '));
    met.add(cut.join(' '));
    return isNew;
  });
}

/** Whether a group that the program made up reaches into a cap from a course on. */
const isMadeUpAbove = (site: OrderSite, { places, made }: Group, course: number): boolean =>
  made === 'made up' && places.some((p) => site.course[p] >= course);

/** The cheapest of the first orders, the one that the first plan has among them. One is walked no
 * farther than until it costs more than the best. */
function cheapest(
  site: OrderSite,
  brief: RaisingBrief,
  variants: readonly (readonly Piece[])[],
  { order: first, total }: { readonly order: readonly Piece[]; readonly total: number },
  { shouldStop }: RaisingOptions,
): readonly Piece[] {
  let best: { readonly order: readonly Piece[]; readonly total: number } = { order: first, total };
  for (const pieces of variants)
    for (const clockwise of [true, false]) {
      if (shouldStop?.()) return best.order;
      if (pieces === variants[0] && clockwise) continue;
      const order = firstOrder(site, pieces, brief.pins, { start: 0, clockwise });
      const sum = totalWithin(site, brief, order, best.total);
      if (sum < best.total) best = { order, total: sum };
    }
  return best.order;
}

/** What an order costs, infinite where that is more than a limit or where it can't be walked. */
function totalWithin(
  site: OrderSite,
  brief: RaisingBrief,
  order: readonly Piece[],
  limit: number,
): number {
  const walker = new Walker(site, walkOptions(brief, false));
  let total = 0;
  for (const piece of order) {
    if (walker.put(piece) !== null) return Number.POSITIVE_INFINITY;
    const step = walker.steps.at(-1) as Step;
    const isLast = walker.steps.length === order.length;
    total += stepCost(brief, step, isOpen(step, isLast));
    if (total >= limit) return Number.POSITIVE_INFINITY;
  }
  return total;
}

function leadOrder(
  site: OrderSite,
  { groups, pins }: RaisingBrief,
  order: readonly (readonly number[])[],
): Read<Piece[]> {
  const madeOf = new Map(groups.map(({ places, made }) => [keyOf(places), made]));
  try {
    const pieces = piecesOf(
      site,
      order.map((places) => ({ places, made: madeOf.get(keyOf(places)) ?? 'made up' })),
    );
    const broken = brokenPins(pieces, pins);
    if (pieces.length > order.length)
      return refuse(
        'raising.order',
        `no lift brings ${named(
          site,
          pieces.slice(order.length).flatMap(({ places }) => places),
        )}`,
        'every built place in one lift',
      );
    if (broken.length > 0)
      return { ok: false, faults: broken.map((pin) => pinFault(site, pin.place, pin.than)) };
    return { ok: true, value: pieces };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return refuse('raising.order', error.message, 'every built place in one lift');
  }
}

const keyOf = (places: readonly number[]): string => [...places].sort((a, b) => a - b).join();

const pinFault = (site: OrderSite, place: number, than: number): Fault => ({
  path: 'raising.order',
  found: `${site.numbers[place]} after ${site.numbers[than]}`,
  expected: `${site.numbers[place]} before ${site.numbers[than]}, as raising.before has it`,
});

const named = (site: OrderSite, places: readonly number[]): string =>
  places.map((p) => site.numbers[p] ?? String(p)).join(', ');

function stuckAt(site: OrderSite, order: readonly Piece[], { at, why }: Stuck): Read<never> {
  const piece = order[at] as Piece;
  const words = {
    ...BARRED,
    'cannot be propped': 'the hubs that may be propped do not make it stand',
  };
  return refuse(
    `raising, lift ${at + 1} (${named(site, piece.places)})`,
    words[why],
    'an order in which every piece goes in and every state can be propped: loosen what is pinned, or let more hubs be propped',
  );
}

/** Whether the props after a lift are the fewest, by the search of the stages. */
function fewestIn(
  site: OrderSite,
  brief: RaisingBrief,
  steps: readonly Step[],
): (lift: number) => boolean {
  return (lift) => {
    const { after, complete } = steps[lift] as Step;
    if (after.length === 0) return true;
    const groupOf = new Map<number, number>();
    steps.slice(0, lift + 1).forEach(({ piece }, i) => {
      for (const p of piece.places) groupOf.set(p, i);
    });
    const how = howItStands(
      site.shell,
      {
        placed: [...groupOf.keys()],
        props: brief.pins.props.filter((hub) => after.includes(hub)),
        pass: (seam) => {
          const [a, b] = site.seamPlaces[seam] as readonly [number, number];
          if (groupOf.get(a) === groupOf.get(b)) return 'snug';
          return ringPass(site, seam, complete, (p) => groupOf.has(p));
        },
      },
      { sets: 60, ...(brief.mayProp && { mayProp: brief.mayProp }) },
    );
    const pinned = brief.pins.props.filter((hub) => after.includes(hub)).length;
    return how.props !== null && how.proved && how.props.length + pinned >= after.length;
  };
}
