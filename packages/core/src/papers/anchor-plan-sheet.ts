// The anchors on paper: where they stand, what each base hub asks of them, and by whose word they
// hold.

import { type AnchorChoice, anchorWords } from '../ground/anchors/choice.ts';
import type { AnchorPlan, HubAnchors } from '../ground/anchors/plan.ts';
import type { Base, PlanPoint } from '../ground/base.ts';
import { writeForce } from '../measure/units.ts';
import { type Drawing, type Item, line } from './drawing.ts';
import { cautionOf, type SheetFacts } from './flat-plan-sheet.ts';
import {
  baseItems,
  type GroundPlacing,
  groundSheets,
  hubNumbers,
  plainRow,
  sourceNotes,
  stakeMark,
} from './ground-plan.ts';
import { type LengthsShown, largeFirst } from './length-text.ts';
import { type Paper, pageOf } from './page.ts';

/** Options of `anchorPlanSheets`. */
export interface AnchorPlanSheetOptions {
  readonly paper?: Paper;
  readonly lengths?: LengthsShown;
}

const caution =
  'An estimate, no design approval: ground differs from pace to pace, and only a test pull tells what holds here. Local codes and a licensed engineer decide. An anchor that moves or goes slack stops the work. Look for cables and pipes before anything is driven.';

/** The anchor plan of a base; one sheet at least. */
export function anchorPlanSheets(
  base: Base,
  anchor: AnchorChoice,
  plan: AnchorPlan,
  facts: SheetFacts,
  options: AnchorPlanSheetOptions = {},
): Drawing[] {
  const shown = options.lengths ?? 'metric';
  const reach = (points: readonly PlanPoint[]): number =>
    Math.max(...points.map((point) => Math.hypot(...point)));
  const datum =
    reach([...base.hubs.map((hub) => hub.at), ...plan.spots.flatMap(({ pieces }) => pieces)]) + 1;
  const force = (newtons: number): string =>
    shown === 'metric' ? writeForce(newtons, 'kN', 2) : writeForce(newtons, 'lbf', 0);
  const near = new Set(plan.tooNear.flatMap(({ hubs }) => hubs));
  const items = (placing: GroundPlacing): Item[] => [
    ...plan.spots.flatMap(({ hub, at, pieces }) => [
      line(placing.at((base.hubs[hub - 1] as Base['hubs'][number]).at), placing.at(at), {
        weight: 'light',
        ink: near.has(hub) ? 'accent' : 'ink',
      }),
      line(placing.at(at), placing.at(pieces.at(-1) ?? at), { weight: 'hair', ink: 'grey' }),
    ]),
    ...baseItems(base, datum, placing),
    ...plan.spots.flatMap(({ pieces }) => pieces.map((piece) => stakeMark(placing.at(piece)))),
    ...hubNumbers(base, placing, -5),
  ];
  const ballast = anchor.type === 'ballast';
  const rows = runsOfAlike(plan.hubs, (hub) => cellsOf(hub, force)).map(([first, last]) => {
    const { hub, use } = first;
    return plainRow(
      [first === last ? String(hub) : `${hub}–${last.hub}`, ...cellsOf(first, force)],
      use > 1 || near.has(hub),
    );
  });
  return groundSheets(pageOf(options.paper ?? 'A4', 'across'), {
    heading: 'Anchors',
    remark: `${plan.count} × ${anchorWords(anchor)}${plan.pieces === plan.count ? '' : `, ${plan.pieces} pieces`}${plan.cost === null ? '' : `; cost ${plan.cost.toFixed(2)}`}`,
    facts,
    lengths: shown === 'metric' ? 'metres, kilonewtons' : 'feet, pounds of force',
    caution: [...nearNotes(plan, shown), cautionOf(facts, caution)].join(' '),
    notes: [
      ballast
        ? `Each piece weighs ${force(plan.allowed)}.`
        : `Each may be pulled with ${force(plan.allowed)}; its source has it hold ${force(plan.capacity?.pull ?? 0)}.`,
      `Factors: ${plan.practice}. Lift and shear with them in; the load case that asks most: ${worstCase(plan)}.`,
      ...plan.notes,
      ...heldBy(plan),
      ...sourceNotes(plan.sources),
    ],
    points: [
      ...base.hubs.map((hub) => hub.at),
      ...plan.spots.flatMap(({ pieces }) => pieces),
      [datum, 0],
    ],
    plan: items,
    columns: [
      { name: 'hub', share: 0.1, align: 'start' },
      { name: 'lift', share: 0.21, align: 'end' },
      { name: 'shear', share: 0.21, align: 'end' },
      { name: ballast ? 'ballast' : 'pull', share: 0.21, align: 'end' },
      { name: ballast ? 'pieces' : 'anchors', share: 0.14, align: 'end' },
      { name: 'use', share: 0.13, align: 'end' },
    ],
    rows,
  });
}

const cellsOf = (
  { up, shear, pull, count, use }: HubAnchors,
  force: (newtons: number) => string,
): string[] => [force(up), force(shear), force(pull), String(count), `${Math.round(use * 100)} %`];

/** Hubs one after the other that have the same cells, as the first and the last of each run. */
function runsOfAlike(
  hubs: readonly HubAnchors[],
  cells: (hub: HubAnchors) => readonly string[],
): (readonly [HubAnchors, HubAnchors])[] {
  const runs: [HubAnchors, HubAnchors][] = [];
  for (const hub of hubs) {
    const run = runs.at(-1);
    if (run && cells(run[0]).join() === cells(hub).join()) run[1] = hub;
    else runs.push([hub, hub]);
  }
  return runs;
}

/** The load case of the hub that is asked most. */
const worstCase = ({ hubs }: AnchorPlan): string =>
  hubs.reduce<HubAnchors | null>((most, hub) => (most && most.pull >= hub.pull ? most : hub), null)
    ?.from ?? 'none';

/** By whose word an anchor holds, as far as that was read in the source: `sourceNotes` tells the rest. */
function heldBy({ capacity }: AnchorPlan): string[] {
  const read = capacity?.sources.filter(({ confirmation }) => confirmation === 'confirmed') ?? [];
  return read.length === 0 ? [] : [`It holds by: ${read.map(({ text }) => text).join('; ')}.`];
}

function nearNotes({ tooNear }: AnchorPlan, shown: LengthsShown): string[] {
  const worst = tooNear.reduce<AnchorPlan['tooNear'][number] | null>(
    (best, one) => (best === null || one.apart < best.apart ? one : best),
    null,
  );
  if (worst === null) return [];
  const [a, b] = worst.hubs;
  return [
    `Too near: anchors of ${a === b ? `hub ${a}` : `hubs ${a} and ${b}`} stand ${largeFirst(worst.apart, shown)} apart, ${largeFirst(worst.needed, shown)} is needed. This plan does not hold as drawn: choose fewer, stronger anchors, or guys further out.`,
  ];
}
