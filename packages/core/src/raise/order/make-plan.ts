// A walk cut into stages: one card each. A stage ends with its course, with a part of it that people
// can keep in mind, before and after the piece that closes a course, and wherever seams are tightened.

import type {
  LiftTime,
  PlannedProp,
  RaisingLift,
  RaisingPlan,
  RaisingStage,
  StageSort,
} from '../plan.ts';
import { boltsOf, type Costing, costOf, stepTime } from './cost.ts';
import { allFinal, tightened } from './passes.ts';
import { boltsBeforeLettingGo, LETTING_GO, RATES } from './rates.ts';
import type { OrderSite } from './site.ts';
import type { Step } from './walk.ts';

/** What a plan is made with. */
export interface PlanFacts {
  readonly costing: Costing;
  /** Lifts on one card, at most. */
  readonly mostLifts: number;
  readonly seed: number;
  readonly tried: number;
  /** Whether the props of a state are shown to be the fewest, by the index of its last lift. */
  readonly isFewest: (lift: number) => boolean;
}

/** The plan of a walk that places every built place. */
export function makePlan(site: OrderSite, steps: readonly Step[], facts: PlanFacts): RaisingPlan {
  const cards = cutIntoCards(site, steps, facts.mostLifts);
  const stages: RaisingStage[] = [];
  const fewest: boolean[] = [];
  const pass = new Map<number, 'finger' | 'snug'>();
  const placed: number[] = [];
  let standing: readonly number[] = [];
  for (const card of cards) {
    const [from, last] = [card.from, steps[card.to] as Step];
    const lifts = steps
      .slice(from, card.to + 1)
      .map((step, i) => liftOf(site, steps, from + i, step, facts.costing));
    for (const lift of lifts) placed.push(...lift.places);
    const own = steps.slice(from, card.to + 1);
    const finger = own.flatMap((step) => step.seams);
    const inner = own.flatMap((step) => step.piece.inner);
    for (const seam of finger) pass.set(seam, 'finger');
    for (const seam of inner) pass.set(seam, 'snug');
    const rings = tightened(site, pass, last.complete, new Set(placed));
    for (const seam of rings) pass.set(seam, 'snug');
    const during = new Set(lifts.flatMap((lift) => lift.props));
    stages.push({
      number: stages.length + 1,
      sort: card.sort,
      course: Math.min(...own.map(({ piece }) => piece.course)),
      pieces: lifts.map((lift) => lift.places),
      lifts,
      placed: [...placed].sort(ascending),
      pass: {
        finger: finger.filter((seam) => pass.get(seam) === 'finger').sort(ascending),
        snug: [...inner, ...rings],
        final: [],
      },
      props: last.after,
      propsIn: [...during].filter((hub) => !standing.includes(hub)).sort(ascending),
      propsOut: standing.filter((hub) => !last.after.includes(hub)),
      ...overnight(last.after),
      time: timeOf(lifts, boltsOf(facts.costing, rings) * facts.costing.rates.tighten),
    });
    fewest.push(facts.isFewest(card.to));
    standing = last.after;
  }
  stages.push(finalPass(site, stages, [...pass.keys()], facts.costing));
  fewest.push(fewest.at(-1) ?? true);
  return {
    stages,
    props: plannedProps(site, stages),
    rigging: null,
    wayOut: [...site.wayOut.keys()].filter((p) => site.wayOut[p] === 1),
    cost: costOf(facts.costing, steps),
    fewest,
    seed: facts.seed,
    tried: facts.tried,
    assumed: ASSUMED,
    flags: [RATES, LETTING_GO],
  };
}

const ASSUMED: readonly string[] = [
  'Every state is held to the stages: base hubs held by the ground and its anchors, finger-tight seams as hinges, a prop holding its hub, tied at head and foot. What wind it bears is told by the stages, not by the order.',
  'A piece is held by hands or hook until its bolts and props are in; what happens while it is held is not reckoned.',
  'Seams inside a group are snug; others are finger-tight until the course above has closed.',
  'An estimate and no design approval: local codes and a licensed engineer or rigger decide.',
];

const ascending = (a: number, b: number): number => a - b;

/** Lifts from … to of a walk. */
interface Card {
  readonly sort: StageSort;
  readonly from: number;
  readonly to: number;
}

function cutIntoCards(site: OrderSite, steps: readonly Step[], mostLifts: number): Card[] {
  const cards: Card[] = [];
  steps.forEach((step, k) => {
    const sort = sortOf(site, steps, k);
    const last = cards.at(-1);
    const before = last && (steps[last.to] as Step);
    const joins =
      last !== undefined &&
      before !== undefined &&
      last.sort === sort &&
      (sort === 'base' || sort === 'course') &&
      before.piece.course === step.piece.course &&
      last.to - last.from + 1 < mostLifts;
    if (joins) cards[cards.length - 1] = { ...last, to: k };
    else cards.push({ sort, from: k, to: k });
  });
  return evened(cards, steps);
}

/** Cards of one course and sort in a row made about as long as each other. */
function evened(cards: readonly Card[], steps: readonly Step[]): Card[] {
  const found: Card[] = [];
  for (let i = 0; i < cards.length; ) {
    const first = cards[i] as Card;
    const isSame = (card: Card | undefined): boolean =>
      card !== undefined &&
      card.sort === first.sort &&
      (first.sort === 'base' || first.sort === 'course') &&
      (steps[card.from] as Step).piece.course === (steps[first.from] as Step).piece.course;
    let j = i;
    while (isSame(cards[j + 1])) j++;
    const [count, from] = [j - i + 1, first.from];
    const lifts = (cards[j] as Card).to - from + 1;
    for (let c = 0; c < count; c++)
      found.push({
        sort: first.sort,
        from: from + Math.floor((c * lifts) / count),
        to: from + Math.floor(((c + 1) * lifts) / count) - 1,
      });
    i = j + 1;
  }
  return found;
}

function sortOf(site: OrderSite, steps: readonly Step[], k: number): StageSort {
  const { piece } = steps[k] as Step;
  if (piece.wayOut) return 'way out';
  if (piece.made === 'cap') return 'cap';
  if (closesCourse(site, steps, k)) return 'closing';
  return piece.course === 1 ? 'base' : 'course';
}

/** Whether a lift closes a course of its piece: no place of it that is built and no way out is left. */
function closesCourse(site: OrderSite, steps: readonly Step[], k: number): boolean {
  const later = new Set(steps.slice(k + 1).flatMap(({ piece }) => piece.places));
  return (steps[k] as Step).piece.places.some(
    (p) => !site.wayOut[p] && !(site.ofCourse[site.course[p] - 1] ?? []).some((q) => later.has(q)),
  );
}

function liftOf(
  site: OrderSite,
  steps: readonly Step[],
  k: number,
  step: Step,
  costing: Costing,
): RaisingLift {
  const before = steps[k - 1]?.after ?? [];
  const next = step.after;
  return {
    places: step.piece.places,
    made: step.piece.made,
    props: step.props,
    propsIn: step.props.filter((hub) => !before.includes(hub)),
    propsOut: [...new Set([...before, ...step.props])]
      .filter((hub) => !next.includes(hub))
      .sort(ascending),
    closes: !step.piece.wayOut && closesCourse(site, steps, k),
    height: step.piece.height,
    seams: step.seams,
    boltsBeforeLettingGo: step.seams.map((seam) => boltsBeforeLettingGo(costing.holes(seam))),
    time: stepTime(costing, step),
  };
}

function overnight(props: readonly number[]): Pick<RaisingStage, 'stopPoint' | 'overnight'> {
  const stands = props.length === 0;
  return {
    stopPoint: stands,
    overnight: {
      verdict: stands ? 'stands' : 'no',
      gust: null,
      leave: null,
      why: stands
        ? 'It stands without a prop; what wind it bears was not asked.'
        : `It stands only by ${props.length} ${props.length === 1 ? 'prop' : 'props'} that the work moves on.`,
    },
  };
}

function timeOf(lifts: readonly RaisingLift[], tighten: number): RaisingStage['time'] {
  const sum = (of: keyof LiftTime): number => lifts.reduce((all, { time }) => all + time[of], 0);
  return { ground: sum('ground'), up: sum('up'), tighten };
}

function finalPass(
  site: OrderSite,
  stages: readonly RaisingStage[],
  seams: readonly number[],
  costing: Costing,
): RaisingStage {
  const last = stages.at(-1) as RaisingStage;
  return {
    ...last,
    number: last.number + 1,
    sort: 'final pass',
    course: 1,
    pieces: [],
    lifts: [],
    pass: { finger: [], snug: [], final: allFinal(site, seams) },
    propsIn: [],
    propsOut: [],
    time: { ground: 0, up: 0, tighten: boltsOf(costing, seams) * costing.rates.tighten },
  };
}

/** Each prop with the lift it goes in with and the lift it may go after. */
function plannedProps(
  site: Pick<OrderSite, 'height'>,
  stages: readonly RaisingStage[],
): PlannedProp[] {
  const found: PlannedProp[] = [];
  const open = new Map<number, PlannedProp>();
  for (const stage of stages)
    stage.lifts.forEach((lift, i) => {
      const at = { stage: stage.number, lift: i };
      for (const hub of lift.propsIn) {
        const height = site.height[hub] as number;
        const prop = { hub, lines: [], height, from: at, until: null };
        open.set(hub, prop);
      }
      for (const hub of lift.propsOut) {
        const prop = open.get(hub);
        if (!prop) continue;
        found.push({ ...prop, until: at });
        open.delete(hub);
      }
    });
  return [...found, ...open.values()].sort(
    (a, b) => a.from.stage - b.from.stage || a.from.lift - b.from.lift || a.hub - b.hub,
  );
}
