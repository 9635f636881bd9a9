// What the Ground sheet asks: the base set out, anchored, shimmed and surveyed, the wind on the whole
// shell from every side, each stage of the build, and how one stage moves. Readings and settings come
// as the project has them; what can't be made says why.

import {
  type AnchorPlan,
  anchorPlanSheets,
  type Base,
  type BeamPiece,
  caseTotals,
  type Drawing,
  defaultGround,
  defaultLoads,
  type Enclosure,
  type Fault,
  frameOfStage,
  frameParts,
  type GroundLevels,
  groundLevels,
  gustOfPressure,
  type LoadsSettings,
  lowestLimit,
  mechanisms,
  mergeSources,
  numberOrder,
  type Provenance,
  type Read,
  ringBeam,
  ringBeamSheets,
  type Shell,
  type ShellFacts,
  type ShellSite,
  type ShimPlan,
  type Sourced,
  type StageAnswer,
  type StageModel,
  type SurveyAnswer,
  settingsPressure,
  shimSheets,
  shims,
  siteOfFacts,
  snowCases,
  stageAnswer,
  stageOf,
  stageSeries,
  stageWind,
  stakeOutSheets,
  surveyAnswer,
  surveyOptions,
  surveySheets,
  tapeOptions,
  tapePlan,
  unknownParts,
} from '@shellraise/core';
import { type Bent, bentStage } from './bent.ts';
import { keepLast } from './keep-last.ts';
import type { OnPaper } from './on-paper.ts';
import { siteKey } from './site-key.ts';

/** A shell with all that was said about its ground and its winds. */
export type GroundQuestion = ShellFacts;

/** The same with what its papers say. */
export interface GroundPapersQuestion extends GroundQuestion, OnPaper {}

/** The wind on the whole shell from one side. */
export interface WindFrom {
  /** Radians from the datum, anticlockwise seen from above. */
  readonly from: number;
  /** The most drag, lift and overturning of any law, for each pascal: m² and m³. */
  readonly drag: number;
  readonly lift: number;
  readonly overturning: number;
}

/** The wind on the whole shell. */
export interface WholeWind {
  readonly from: readonly WindFrom[];
  /** Index of the side from which it tips the shell most. */
  readonly worst: number;
  /** How open the shell is reckoned. */
  readonly enclosure: Enclosure;
  /** Velocity pressure of the design wind, Pa, and the code it is from; null where none is given. */
  readonly design: (Sourced & { readonly code: string; readonly gust: number }) | null;
  readonly assumed: readonly string[];
  readonly sources: readonly Provenance[];
}

/** The base with all that is made of it. */
export interface GroundAnswer {
  readonly base: Base;
  readonly stakeOut: readonly Drawing[];
  readonly wind: WholeWind;
  readonly anchors: Read<{ readonly plan: AnchorPlan; readonly drawings: readonly Drawing[] }>;
  readonly shims: Read<{
    readonly plan: ShimPlan;
    readonly suspects: GroundLevels['suspects'];
    readonly drawings: readonly Drawing[];
  }>;
  /** Null where none is asked for. */
  readonly beam: Read<{
    readonly pieces: readonly BeamPiece[];
    readonly drawings: readonly Drawing[];
  }> | null;
  readonly survey: Read<SurveyAnswer>;
  readonly surveySheets: readonly Drawing[];
  /** What lies on the whole shell, N, and by whose word; no case where no snow is given. */
  readonly snow: Sourced<readonly { readonly name: string; readonly force: number }[]>;
  /** Weight of the panels whose mass is known, N, and places of which it is not. */
  readonly weight: number;
  readonly unweighed: number;
}

/** The shell on its site, as the command line reckons it too; kept, for each stage asks for it. */
export const siteOfQuestion = keepLast(siteKey, siteOfFacts);

const standingPlaces = ({ shell, leftOut }: GroundQuestion): number[] => {
  const out = new Set(leftOut);
  return [...shell.kind.keys()].filter((place) => !out.has(place));
};

/** Everything about the base; faults where the shell has none. */
export function groundAnswer(question: GroundPapersQuestion): Read<GroundAnswer> {
  const ground = question.ground ?? defaultGround;
  const loads = question.loads ?? defaultLoads;
  const { facts, paper, lengths } = question;
  const site = siteOfQuestion(question);
  if (!site.ok) return site;
  const { base, stages: model, anchors } = site.value;
  const wind = wholeWind(question, model, loads);
  const tape = tapePlan(base, tapeOptions(ground));
  const onPaper = { paper, lengths };
  const survey = surveyOf(question, base);
  const standing = standingPlaces(question);
  return {
    ok: true,
    value: {
      base,
      stakeOut: stakeOutSheets(base, tape, facts, onPaper),
      wind,
      anchors: anchorsOf(question, base, anchors),
      shims: shimsOf(question, base, tape.datum),
      beam: beamOf(question, base, tape.datum),
      survey,
      surveySheets: surveySheets(
        {
          base,
          readings: ground.survey,
          answer: survey.ok ? survey.value : null,
          tolerances: ground.tolerances,
        },
        facts,
        { ...onPaper, datum: tape.datum },
      ),
      snow: {
        value: site.value.loads.snow,
        sources: mergeSources(
          ...snowCases(loads, model.wind.question.form).map(({ sources }) => sources),
        ),
      },
      weight: standing.reduce((sum, place) => sum + (model.weight[place] as number), 0),
      unweighed: standing.filter((place) => model.mass[place] === null).length,
    },
  };
}

function wholeWind(question: GroundQuestion, model: StageModel, loads: LoadsSettings): WholeWind {
  const placed = standingPlaces(question);
  const { cases, assumed, enclosure } = stageWind(model.wind, placed);
  const sides = model.wind.question.directions.map((from): WindFrom => {
    const totals = cases
      .filter((one) => one.windFrom === from)
      .map((one) => caseTotals(model.wind, placed, one));
    const most = (key: 'drag' | 'lift' | 'overturning'): number =>
      totals.reduce((best, one) => Math.max(best, one[key]), 0);
    return { from, drag: most('drag'), lift: most('lift'), overturning: most('overturning') };
  });
  const worst = sides.reduce(
    (best, one, i) =>
      one.overturning > (sides[best] as WindFrom).overturning * (1 + 1e-9) ? i : best,
    0,
  );
  const design = settingsPressure(loads, model.wind.question.form);
  return {
    from: sides,
    worst,
    enclosure,
    design: design && { ...design, gust: gustOfPressure(design.value, model.airDensity.value) },
    assumed,
    sources: mergeSources(
      ...cases.map(({ sources }) => sources),
      design?.sources ?? [],
      model.weightSources,
      model.airDensity.sources,
    ),
  };
}

/** The anchor plan with its sheets, or all that is still to be chosen. */
function anchorsOf(
  question: GroundPapersQuestion,
  base: Base,
  plan: ShellSite['anchors'],
): GroundAnswer['anchors'] {
  const { ground = defaultGround, loads = defaultLoads, facts, paper, lengths } = question;
  const { anchor, soil, pullTests } = ground;
  const faults: Fault[] = [];
  const lacks = (path: string, found: string, expected: string): void => {
    faults.push({ path, found, expected });
  };
  if (loads.wind === null)
    lacks('wind', 'no design wind', 'the gust or ten-minute mean that the shell is to stand in');
  if (anchor === null) lacks('anchor', 'none chosen', 'the sort of anchor that is at hand');
  if (soil === null && (pullTests.length === 0 || anchor?.type === 'ballast'))
    lacks('soil', 'unknown', 'the soil, or test pulls on the site');
  if (faults.length > 0 || anchor === null) return { ok: false, faults };
  if (!plan.ok) return plan;
  const drawings = anchorPlanSheets(base, anchor, plan.value, facts, { paper, lengths });
  return { ok: true, value: { plan: plan.value, drawings } };
}

/** The pieces of the ring beam with their sheets; a fault where it leaves one of them no inner face. */
function beamOf(
  { ground = defaultGround, facts, paper, lengths }: GroundPapersQuestion,
  base: Base,
  datum: number,
): GroundAnswer['beam'] {
  const { ringBeam: beam } = ground;
  if (beam === null) return null;
  try {
    const pieces = ringBeam(base, beam);
    const drawings = ringBeamSheets(base, beam, facts, { paper, lengths, datum });
    return { ok: true, value: { pieces, drawings } };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    const narrower = 'a beam that leaves every piece an inner face';
    return { ok: false, faults: [{ path: 'beam', found: error.message, expected: narrower }] };
  }
}

const surveyOf = (
  { shell, ground = defaultGround, leftOut }: GroundPapersQuestion,
  base: Base,
): Read<SurveyAnswer> =>
  surveyAnswer(shell, base, ground.survey, surveyOptions(ground, new Set(leftOut)));

function shimsOf(
  { ground = defaultGround, facts, paper, lengths }: GroundPapersQuestion,
  base: Base,
  datum: number,
): GroundAnswer['shims'] {
  const levels = groundLevels(ground.levels);
  if (!levels.ok) return levels;
  const plan = shims(base, levels.value.heights, ground.shims);
  if (!plan.ok) return plan;
  const drawings = shimSheets(base, plan.value, facts, { paper, lengths, datum });
  return { ok: true, value: { plan: plan.value, suspects: levels.value.suspects, drawings } };
}

// --- stages ---

/** One stage of the build as the chart shows it. */
export interface StageRow {
  /** Panels placed. */
  readonly n: number;
  /** Number of the place that this stage adds. */
  readonly place: string;
  readonly status: StageAnswer['status'];
  readonly movements: number;
  readonly props: number;
  /** Gusts, m/s: what first gives way, when work stops; null where unknown. */
  readonly limit: number | null;
  readonly limitOf: string | null;
  readonly untied: number | null;
  readonly stop: number | null;
  readonly stopBy: string | null;
}

/** All stages of a build. */
export interface StagesAnswer {
  /** Places in the order of the build. */
  readonly order: readonly number[];
  readonly rows: readonly StageRow[];
}

/** A build on its site, places in number order; faults where the shell has no base. */
export function buildOf(question: GroundQuestion): Read<{ model: StageModel; order: number[] }> {
  const site = siteOfQuestion(question);
  if (!site.ok) return site;
  const out = new Set(question.leftOut);
  const order = numberOrder(question.shell).filter((place) => !out.has(place));
  return { ok: true, value: { model: site.value.stages, order } };
}

/** Every stage of the build, in number order; `onRows` is told of those that are new. */
export function stagesAnswer(
  question: GroundQuestion,
  onRows?: (rows: readonly StageRow[], done: number) => void,
): Read<StagesAnswer> {
  const build = buildOf(question);
  if (!build.ok) return build;
  const { model, order } = build.value;
  const rows: StageRow[] = [];
  let told = 0;
  for (const answer of stageSeries(model, order)) {
    const n = rows.length + 1;
    if (!answer.ok) return answer;
    rows.push(rowOf(answer.value, n, question.numbers[order[n - 1] as number] ?? ''));
    if (n - told < BATCH && n < order.length) continue;
    onRows?.(rows.slice(told), n / order.length);
    told = n;
  }
  return { ok: true, value: { order, rows } };
}

/** Stages told at once. */
const BATCH = 4;

function rowOf(answer: StageAnswer, n: number, place: string): StageRow {
  const { status, movements, props, bears } = answer;
  const lowest = bears && lowestLimit(bears.limits);
  return {
    n,
    place,
    status,
    movements,
    props: props.length,
    limit: lowest?.gust ?? null,
    limitOf: lowest?.what ?? null,
    untied: bears?.untied.gust ?? null,
    stop: bears?.stopWork.gust.value ?? null,
    stopBy: bears?.stopWork.setBy ?? null,
  };
}

/** One stage in full: what moves freely in it, and what it bears. */
export interface StageDetail {
  readonly n: number;
  /** Number of the place that this stage adds. */
  readonly place: string;
  readonly answer: StageAnswer;
  /** Places that have their panels, in the order of the build. */
  readonly placed: readonly number[];
  /** Movement of every corner of those panels under the movement shown, in the same order, stride 3;
   * the largest is 1 long. Null where it stands. */
  readonly movement: Float64Array | null;
  /** How it bends, propped, in the gust at which work stops; the whole shell in its design wind, where
   * one is given. Null where it can't be propped. */
  readonly bent: Bent | null;
}

/** One stage of the build in full. */
export interface StageQuestion extends GroundQuestion {
  readonly n: number;
}

/** The stage with so many panels; faults where it is none. */
export function stageDetail(question: StageQuestion): Read<StageDetail> {
  const build = buildOf(question);
  if (!build.ok) return build;
  const { model, order } = build.value;
  const stage = stageOf(order, question.n);
  // Seams and panels take longer: only where it is known what they bear.
  const { boltProof = null, strength: bears = null } = model.bears.parts ?? {};
  const strength = boltProof !== null || bears !== null;
  const answer = stageAnswer(model, stage, { strength, sets: 400 });
  if (!answer.ok) return answer;
  const placed = stage.placed;
  return {
    ok: true,
    value: {
      n: question.n,
      place: question.numbers[placed.at(-1) as number] ?? '',
      answer: answer.value,
      placed,
      movement: answer.value.movements === 0 ? null : movementOf(question.shell, stage),
      bent: bentOf(question, model, stage, answer.value, question.n === order.length),
    },
  };
}

function bentOf(
  { loads = defaultLoads, parts = unknownParts }: StageQuestion,
  model: StageModel,
  stage: ReturnType<typeof stageOf>,
  { bears, props }: StageAnswer,
  isWhole: boolean,
): Bent | null {
  if (bears === null) return null;
  const design = isWhole ? settingsPressure(loads, model.wind.question.form) : null;
  const gust = design
    ? gustOfPressure(design.value, model.airDensity.value)
    : bears.stopWork.gust.value;
  return bentStage(model, stage, props, frameParts(parts), gust);
}

/** The movement that moves most, for the corners of the placed panels in their order. */
function movementOf(shell: Shell, stage: ReturnType<typeof stageOf>): Float64Array | null {
  const frame = frameOfStage(shell, stage);
  const mode = mechanisms(frame, { softest: false }).modes[0];
  if (!mode) return null;
  const first = new Map<number, number>();
  let corner = 0;
  for (const { place, hubs } of frame.panels) {
    first.set(place, corner);
    corner += hubs.length;
  }
  return Float64Array.from(
    stage.placed.flatMap((place) => {
      const from = first.get(place) ?? 0;
      const count = (shell.placeStart[place + 1] as number) - (shell.placeStart[place] as number);
      return [...mode.corners.subarray(3 * from, 3 * (from + count))];
    }),
  );
}
