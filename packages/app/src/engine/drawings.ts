// Drawings and lists of a standing shell, made in the engine's thread: the flat plan for the screen,
// small pictures of what could stand, the sheets for the printer, what is to be bought. Millimetres
// on the drawing, x right, y down.

import {
  accountSheet,
  buyTable,
  type Crown,
  countProof,
  type Drawing,
  defaultTakeoff,
  flatPlan,
  flatPlanSheet,
  type HoleCounts,
  hubsOf,
  type Item,
  type Kind,
  kindFills,
  type LengthsShown,
  orientShell,
  type Paper,
  type Pile,
  type PlaceId,
  type Placing,
  type ProofRow,
  partOf,
  placeCount,
  placeNormal,
  planDrawing,
  type Shell,
  seamBolts,
  stockTable,
  type TakeOff,
  type TakeoffSettings,
  tableToCsv,
  takeOff,
} from '@shellraise/core';

// --- the flat plan on the screen ---

/** What the plan on the screen is of. */
export interface PlanQuestion {
  readonly shell: Shell;
  /** Place → its number. */
  readonly numbers: readonly string[];
  readonly kinds: readonly Kind[];
  readonly fromBelow: boolean;
  /** Places left out on purpose. */
  readonly leftOut?: readonly number[];
}

/** The flat plan with all that is needed to point at it. */
export interface PlanPicture {
  readonly items: readonly Item[];
  /** Place → its outline, stride 2. */
  readonly outlines: readonly Float64Array[];
  /** Place → a point well inside, stride 2. */
  readonly labels: Float64Array;
  /** Hub → its point, stride 2. */
  readonly hubs: Float64Array;
  /** Around all that is drawn: left, top, width, height. */
  readonly box: readonly [number, number, number, number];
  /** 1 : scale. */
  readonly scale: number;
  /** Size of the type of most place numbers. */
  readonly type: number;
}

/** How tall or wide the plan is drawn; with this the hatches and weights of the sheet look right. */
const PLAN = 190;

/** The flat plan for the screen. */
export function planPicture({
  shell,
  numbers,
  kinds,
  fromBelow,
  leftOut = [],
}: PlanQuestion): PlanPicture {
  const plan = flatPlan(shell, { fromBelow });
  const fills = kindFills(kinds);
  const kindAt = Array.from(shell.kind);
  const extent = extentOf(plan.outlines);
  const scale = (1000 * Math.max(extent.width, extent.height)) / PLAN;
  const placing: Placing = { centre: [0, 0], scale };
  const drawn = planDrawing(
    {
      shell,
      plan,
      numbers,
      kindIds: kindAt.map((k) => kinds[k]?.id ?? null),
      fills: kindAt.map((k) => fills[k] ?? { tint: null, hatch: null }),
      leftOut: new Set(leftOut),
      missing: new Set(),
      only: null,
      classes: null,
    },
    placing,
  );
  const k = 1000 / scale;
  const onSheet = (flat: Float64Array): Float64Array =>
    flat.map((value, i) => (i % 2 === 0 ? value * k : -value * k));
  return {
    items: drawn.items,
    outlines: plan.outlines.map(onSheet),
    labels: onSheet(plan.labels),
    hubs: onSheet(plan.hubs),
    box: [extent.left * k, -extent.top * k, extent.width * k, extent.height * k],
    scale,
    type: usualType(drawn.items),
  };
}

function extentOf(outlines: readonly Float64Array[]) {
  let [left, right, low, top] = [0, 0, 0, 0];
  for (const flat of outlines)
    flat.forEach((value, i) => {
      if (i % 2 === 0) [left, right] = [Math.min(left, value), Math.max(right, value)];
      else [low, top] = [Math.min(low, value), Math.max(top, value)];
    });
  return { left, top, width: right - left, height: top - low };
}

/** The median size of the place numbers. */
function usualType(items: readonly Item[]): number {
  const sizes = items
    .flatMap((item) =>
      item.type === 'group' && item.data?.label !== undefined && item.items[0]?.type === 'text'
        ? [item.items[0].size]
        : [],
    )
    .sort((a, b) => a - b);
  return sizes[sizes.length >> 1] ?? 1;
}

// --- what could stand ---

/** A shell that could stand: its crown and the places of the net that are kept. */
export interface CandidateQuestion {
  readonly crown: Crown;
  readonly places: Int32Array;
}

/** A small elevation from the datum side: outlines of panels as path data, one for each of three
 * shades from the lightest, and the ground. */
export interface CandidatePicture {
  readonly shades: readonly [string, string, string];
  /** Height of the ground line: the lowest hub. */
  readonly ground: number;
  readonly width: number;
  readonly height: number;
}

/** Room for the picture of the whole ball; what is cut lower is drawn smaller, to one scale. */
const CANDIDATE = 52;

/** Small pictures of several shells of one net, to one scale. */
export const candidatePictures = (
  shell: Shell,
  candidates: readonly CandidateQuestion[],
): CandidatePicture[] => candidates.map((one) => candidatePicture(shell, one));

/** A small picture of one. */
export function candidatePicture(
  shell: Shell,
  { crown, places }: CandidateQuestion,
): CandidatePicture {
  const part = partOf(orientShell(shell, crown), places).shell;
  const k = CANDIDATE / (2 * shell.radius);
  const z = part.hubs.filter((_, i) => i % 3 === 2);
  const [low, high] = [Math.min(...z), Math.max(...z)];
  const shades: [string, string, string] = ['', '', ''];
  for (let p = 0; p < placeCount(part); p++) {
    const toward = placeNormal(part, p as PlaceId)[0];
    if (toward <= 1e-6) continue;
    const points = hubsOf(part, p as PlaceId).map((hub) => {
      const [y, up] = [part.hubs[3 * hub + 1] as number, part.hubs[3 * hub + 2] as number];
      return `${tenths(CANDIDATE / 2 + y * k)} ${tenths((high - up) * k)}`;
    });
    const shade = toward > 0.75 ? 0 : toward > 0.4 ? 1 : 2;
    shades[shade] += `M${points.join('L')}Z`;
  }
  return { shades, ground: (high - low) * k, width: CANDIDATE, height: CANDIDATE };
}

const tenths = (value: number): number => Math.round(value * 10) / 10;

// --- the printer ---

/** What the printed plans say and look like. */
export interface PrintQuestion extends Omit<PlanQuestion, 'fromBelow'> {
  readonly project: string;
  readonly sheet: string;
  readonly date: string;
  readonly assumes: string;
  readonly caution: string;
  readonly paper: Paper;
  readonly lengths: LengthsShown;
  readonly painted: boolean;
  /** The proof of count, once it is made. */
  readonly proof?: readonly ProofRow[] | undefined;
}

/** The plan's sheets: seen from above, then for people inside looking up; then the proof of count. */
export function printedPlans(question: PrintQuestion): Drawing[] {
  const {
    shell,
    numbers,
    kinds,
    leftOut = [],
    paper,
    lengths,
    painted,
    proof,
    ...facts
  } = question;
  const plans = [false, true].map((fromBelow) =>
    flatPlanSheet(shell, numbers, kinds, facts, { paper, lengths, painted, fromBelow, leftOut }),
  );
  return proof ? [...plans, accountSheet(proof, facts, { paper })] : plans;
}

// --- what is to be bought ---

/** What a standing shell needs, and the lists of it as spreadsheets. */
export interface Quantities {
  readonly takeOff: TakeOff;
  /** Seam → bolts through it; null where nobody knows. */
  readonly bolts: readonly (SeamBolt | null)[];
  /** Panels, seams, hubs and bolts by formula and by list. */
  readonly proof: readonly ProofRow[];
  readonly csv: { readonly buy: string; readonly stock: string };
}

/** Bolts through one seam. */
export interface SeamBolt {
  readonly holes: number;
  readonly thread: string;
  /** Under the head, metres. */
  readonly length: number;
}

/** Counts what a standing shell needs against what the pile has; seams are those of the whole shell,
 * also of places that are left out. */
export function quantitiesOf(
  shell: Shell,
  kinds: readonly Kind[],
  hardware: Pile['hardware'],
  settings: TakeoffSettings | undefined,
  holes: HoleCounts,
  leftOut: readonly number[] = [],
): Quantities {
  const own = settings ?? defaultTakeoff;
  const stands = standingPart(shell, leftOut);
  const list = takeOff(stands, kinds, hardware, own, holes);
  return {
    takeOff: list,
    bolts: seamBolts(shell, kinds, own, holes).map((one) =>
      one.status === 'known' ? one.pattern : null,
    ),
    proof: countProof(stands, kinds, list, own, holes),
    csv: { buy: tableToCsv(buyTable(list)), stock: tableToCsv(stockTable(stands, kinds)) },
  };
}

/** The shell without the places that are left out. */
function standingPart(shell: Shell, leftOut: readonly number[]): Shell {
  if (leftOut.length === 0) return shell;
  const out = new Set(leftOut);
  const stands = [...Array(placeCount(shell)).keys()].filter((place) => !out.has(place));
  return partOf(shell, stands).shell;
}
