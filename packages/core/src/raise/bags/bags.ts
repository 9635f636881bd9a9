// A bag for each stage: the bolts, nuts, washers, plates and tape that its work uses up, so that they come
// to the place with the panels; spares in a bag of their own. A seam's hardware goes with the stage that
// first bolts it, an open side's with its panel, a hub's with the last panel round it. Pieces, tape in
// metres.

import type { Kind } from '../../pile/kind.ts';
import { type Part, partOf } from '../../shell/part.ts';
import type { Shell } from '../../shell/shell.ts';
import { buyLine } from '../../takeoff/buy-line.ts';
import type { HardwareLot } from '../../takeoff/hardware.ts';
import { type LocatedNeed, locatedNeeds, type Need, summedNeeds } from '../../takeoff/needs.ts';
import type { TakeoffSettings } from '../../takeoff/schema.ts';
import type { HoleCounts } from '../../takeoff/seam-bolts.ts';
import type { RaisingPlan } from '../plan.ts';
import { needWords } from './words.ts';

/** What bags are filled from. */
export interface BagQuestion {
  /** The standing shell with a place for every panel and opening, as the plan has it. */
  readonly shell: Shell;
  readonly numbers: readonly string[];
  readonly plan: Pick<RaisingPlan, 'stages'>;
  readonly kinds: readonly Kind[];
  readonly settings: TakeoffSettings;
  readonly counts?: HoleCounts;
  readonly hardware: readonly HardwareLot[];
}

/** A bag. */
export interface Bag {
  /** Its stage; null: the spares. */
  readonly stage: number | null;
  readonly needs: readonly Need[];
  /** What is written on it: a title, and a line for each thing in it and for where it goes. */
  readonly label: { readonly title: string; readonly lines: readonly string[] };
}

/** The bags of a plan. */
export interface Bags {
  /** One for each stage that uses something up, in order, then the spares. */
  readonly bags: readonly Bag[];
  /** Seams, open sides and hub plates that nobody knows the bolts of: none are in the bags for them. */
  readonly unknown: readonly string[];
}

/** The bags of a plan. */
export function bagsOf(question: BagQuestion): Bags {
  const { plan, numbers, settings, hardware } = question;
  const { byStage, unknown } = needsByStage(question);
  const bags = plan.stages.flatMap((stage): Bag[] => {
    const needs = byStage.get(stage.number) ?? [];
    if (needs.length === 0) return [];
    const places = stage.pieces.flat().map((p) => numbers[p] as string);
    const title = `Stage ${stage.number}: ${stage.sort}${stage.sort === 'course' ? ` ${stage.course}` : ''}`;
    const where = places.length === 0 ? [] : [`For ${places.join(', ')}`];
    return [
      { stage: stage.number, needs, label: { title, lines: [...needs.map(needWords), ...where] } },
    ];
  });
  const spares = summedNeeds([...byStage.values()].flat())
    .map((need) => ({ ...need, quantity: buyLine(need, hardware, settings).spare }))
    .filter(({ quantity }) => quantity > 0);
  const spare: Bag[] =
    spares.length === 0
      ? []
      : [{ stage: null, needs: spares, label: { title: 'Spares', lines: spares.map(needWords) } }];
  return { bags: [...bags, ...spare], unknown };
}

/** What each stage uses up, in their order. Throws where the plan bolts a panel that it does not place. */
export function needsByStage({
  shell,
  plan,
  kinds,
  settings,
  counts,
}: Omit<BagQuestion, 'numbers' | 'hardware'>): {
  readonly byStage: ReadonlyMap<number, readonly Need[]>;
  readonly unknown: readonly string[];
} {
  const built = plan.stages.at(-1)?.placed ?? [];
  const part = partOf(shell, built);
  const found = locatedNeeds(part.shell, kinds, settings, counts);
  const stageOf = stagesOf(shell, part, plan);
  const lists = new Map<number, LocatedNeed[]>();
  for (const need of found.needs) {
    const stage = stageOf(need.at);
    const list = lists.get(stage) ?? [];
    list.push(need);
    lists.set(stage, list);
  }
  const known = new Set(
    found.needs.flatMap(({ item, at }) => (item === 'bolt' && 'seam' in at ? [at.seam] : [])),
  );
  const seamsUnknown = part.shell.seams.length / 2 - known.size;
  const unknown = [
    ...(seamsUnknown > 0 ? [`the bolts of ${seamsUnknown} seams`] : []),
    ...(found.openSidesUnknown > 0 ? [`the bolts of ${found.openSidesUnknown} open sides`] : []),
    ...(found.plateBoltUnknown ? ['the bolts of the hub plates'] : []),
  ];
  return {
    byStage: new Map(
      [...lists]
        .sort(([a], [b]) => a - b)
        .map(([stage, needs]) => [stage, summedNeeds(needs)] as const),
    ),
    unknown,
  };
}

/** Which stage uses up what goes to a seam, side or hub of the built part. */
function stagesOf(
  shell: Shell,
  part: Part,
  { stages }: BagQuestion['plan'],
): (at: LocatedNeed['at']) => number {
  const bolted = new Map<number, number>();
  const placed = new Map<number, number>();
  for (const { number, pass, pieces } of stages) {
    for (const seam of [...pass.finger, ...pass.snug, ...pass.final])
      if (!bolted.has(seam)) bolted.set(seam, number);
    for (const p of pieces.flat()) placed.set(p, number);
  }
  const seamOf = new Map<number, number>();
  shell.seams.forEach((side, i) => {
    seamOf.set(side, Math.floor(i / 2));
  });
  /** Side of the part → side of the whole. */
  const sideOf = (side: number): number => {
    const p = part.shell.sidePlace[side] as number;
    const off = side - (part.shell.placeStart[p] as number);
    return (shell.placeStart[part.places[p] as number] as number) + off;
  };
  const last = new Int32Array(part.hubs.length);
  part.shell.sideHub.forEach((hub, side) => {
    const place = part.places[part.shell.sidePlace[side] as number] as number;
    last[hub] = Math.max(last[hub] as number, placed.get(place) ?? 0);
  });
  return (at) => {
    const stage =
      'hub' in at
        ? last[at.hub]
        : 'side' in at
          ? placed.get(shell.sidePlace[sideOf(at.side)] as number)
          : bolted.get(seamOf.get(sideOf(part.shell.seams[2 * at.seam] as number)) as number);
    if (!stage) throw new Error(`no stage of the plan brings ${JSON.stringify(at)}`);
    return stage;
  };
}
