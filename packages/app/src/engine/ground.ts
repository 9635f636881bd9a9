// What the Ground sheet asks: the base set out, anchored, shimmed and surveyed, the wind on the whole
// shell from every side, each stage of the build, and how one stage moves. Readings and settings come
// as the project has them; what can't be made says why.

import {
  type AnchorPlan,
  anchorPlan,
  anchorPlanSheets,
  type Base,
  type BaseForces,
  baseOf,
  caseTotals,
  type Drawing,
  defaultGround,
  defaultLoads,
  type Fault,
  frameOfStage,
  type GroundLevels,
  type GroundSettings,
  groundLevels,
  gustOfPressure,
  holdingOf,
  type Kind,
  type LengthsShown,
  type LoadsSettings,
  lowestLimit,
  massByArea,
  mechanisms,
  mergeSources,
  nothingKnown,
  numberOrder,
  type Paper,
  type Practice,
  type Provenance,
  practices,
  type Read,
  type Shell,
  type ShimPlan,
  type Sourced,
  type StageAnchors,
  type StageAnswer,
  type StageModel,
  type SurveyAnswer,
  settingsPressure,
  sharedForces,
  shimSheets,
  shims,
  stageAnswer,
  stageModel,
  stageOf,
  stageSeries,
  stageWind,
  stakeOutSheets,
  surveyAnswer,
  tapePlan,
} from '@shellraise/core';

/** A shell with all that was said about its ground and its winds. */
export interface GroundQuestion {
  readonly shell: Shell;
  readonly numbers: readonly string[];
  readonly leftOut: readonly number[];
  readonly kinds: readonly Kind[];
  readonly loads: LoadsSettings | undefined;
  readonly ground: GroundSettings | undefined;
}

/** The same with what its papers say. */
export interface GroundPapersQuestion extends GroundQuestion {
  readonly facts: {
    readonly project: string;
    readonly sheet: string;
    readonly date: string;
    readonly assumes: string;
    readonly caution: string;
  };
  readonly paper: Paper;
  readonly lengths: LengthsShown;
}

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
  readonly survey: Read<SurveyAnswer>;
  /** Weight of the panels whose mass is known, N, and places of which it is not. */
  readonly weight: number;
  readonly unweighed: number;
}

const chosenPractices = ({ practice }: GroundSettings): readonly Practice[] =>
  practice === 'worst of all' ? Object.values(practices) : [practices[practice]];

const tieOf = ({ guy }: GroundSettings) =>
  guy === null
    ? ({ pull: { way: 'up' }, height: 0 } as const)
    : { pull: { way: 'guy', elevation: guy.elevation } as const, height: guy.height };

/** Mass of each place: as weighed by kind, else by area, else unknown. */
function massesOf(
  { shell, kinds }: GroundQuestion,
  loads: LoadsSettings,
  model: StageModel['wind'] | null,
): (place: number) => Sourced | null {
  const byArea =
    loads.panelMass !== null && model !== null
      ? massByArea(model.faces, {
          value: loads.panelMass,
          sources: [{ text: 'mass of a square metre of panel', confirmation: 'entered' }],
        })
      : null;
  return (place) => {
    const kind = kinds[shell.kind[place] as number];
    if (kind?.mass)
      return {
        value: kind.mass,
        sources: [{ text: 'masses of panels as weighed', confirmation: 'entered' }],
      };
    return byArea?.(place) ?? null;
  };
}

/** The model of all stages; anchors by their number at a base hub where they are known. */
function modelOf(question: GroundQuestion, anchors: StageAnchors | null): Read<StageModel> {
  const loads = question.loads ?? defaultLoads;
  const { shell, numbers } = question;
  const plain = stageModel(shell, numbers, {
    loads,
    massOf: massesOf(question, loads, null),
    bears: { ...nothingKnown, anchors },
  });
  if (!plain.ok || loads.panelMass === null) return plain;
  return stageModel(shell, numbers, {
    loads,
    massOf: massesOf(question, loads, plain.value.wind),
    bears: { ...nothingKnown, anchors },
  });
}

const standingPlaces = ({ shell, leftOut }: GroundQuestion): number[] => {
  const out = new Set(leftOut);
  return [...shell.kind.keys()].filter((place) => !out.has(place));
};

/** Everything about the base; faults where the shell has none. */
export function groundAnswer(question: GroundPapersQuestion): Read<GroundAnswer> {
  const ground = question.ground ?? defaultGround;
  const loads = question.loads ?? defaultLoads;
  const { shell, facts, paper, lengths } = question;
  const found = baseOf(shell);
  if (!found.ok) return found;
  const base = found.value;
  const model = modelOf(question, null);
  if (!model.ok) return model;
  const wind = wholeWind(question, model.value, loads);
  const { sd, length, datum } = ground.tape;
  const tape = tapePlan(base, {
    tapeSd: sd,
    tapeLength: length,
    ...(datum === null ? {} : { datum }),
  });
  const onPaper = { paper, lengths };
  const weight = standingPlaces(question).reduce(
    (sum, place) => sum + (model.value.weight[place] as number),
    0,
  );
  return {
    ok: true,
    value: {
      base,
      stakeOut: stakeOutSheets(base, tape, facts, onPaper),
      wind,
      anchors: anchorsOf(question, base, model.value, wind, weight),
      shims: shimsOf(question, base, tape.datum),
      survey: surveyAnswer(shell, base, ground.survey, {
        tolerances: ground.tolerances,
        play: ground.play,
        leftOut: new Set(question.leftOut),
      }),
      weight,
      unweighed: standingPlaces(question).filter((p) => model.value.mass[p] === null).length,
    },
  };
}

function wholeWind(question: GroundQuestion, model: StageModel, loads: LoadsSettings): WholeWind {
  const placed = standingPlaces(question);
  const turned = { ...model.wind };
  const { cases, assumed } = stageWind(turned, placed);
  const sides = model.wind.question.directions.map((from): WindFrom => {
    const totals = cases
      .filter((one) => one.windFrom === from)
      .map((one) => caseTotals(turned, placed, one));
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

function anchorsOf(
  question: GroundPapersQuestion,
  base: Base,
  model: StageModel,
  wind: WholeWind,
  weight: number,
): GroundAnswer['anchors'] {
  const ground = question.ground ?? defaultGround;
  const { facts, paper, lengths } = question;
  const planned = planOf(question, base, model, wind.design, weight);
  if (!planned.ok || ground.anchor === null)
    return planned.ok ? { ok: false, faults: [] } : planned;
  const drawings = anchorPlanSheets(base, ground.anchor, planned.value, facts, { paper, lengths });
  return { ok: true, value: { plan: planned.value, drawings } };
}

/** The anchor plan for the design wind on the whole shell. */
function planOf(
  question: GroundQuestion,
  base: Base,
  model: StageModel,
  design: WholeWind['design'],
  weight: number,
): Read<AnchorPlan> {
  const ground = question.ground ?? defaultGround;
  const faults: Fault[] = [];
  if (design === null)
    faults.push({
      path: 'wind',
      found: 'no design wind',
      expected: 'the gust or ten-minute mean that the shell is to stand in',
    });
  if (ground.anchor === null)
    faults.push({
      path: 'anchor',
      found: 'none chosen',
      expected: 'the sort of anchor that is at hand',
    });
  if (ground.soil === null && (ground.pullTests.length === 0 || ground.anchor?.type === 'ballast'))
    faults.push({
      path: 'soil',
      found: 'unknown',
      expected: 'the soil, or test pulls on the site',
    });
  if (faults.length > 0 || design === null) return { ok: false, faults };
  return anchorPlan(base, {
    anchor: ground.anchor,
    soil: ground.soil,
    tie: tieOf(ground),
    tests: ground.pullTests,
    cases: casesOf(question, base, model, design, weight),
    practices: chosenPractices(ground),
    price: ground.price,
  });
}

/** The forces at the base in every case of the design wind. */
function casesOf(
  question: GroundQuestion,
  base: Base,
  model: StageModel,
  design: Sourced,
  weight: number,
): BaseForces[] {
  const placed = standingPlaces(question);
  const { cases } = stageWind(model.wind, placed);
  return cases.map((one) => {
    const { drag, lift, overturning } = caseTotals(model.wind, placed, one);
    const forces = sharedForces(
      base,
      {
        drag: drag * design.value,
        lift: lift * design.value,
        weight,
        armHeight: Math.abs(drag) > 1e-9 ? Math.abs(overturning / drag) : 0,
      },
      `${one.name}, from ${compass(one.windFrom)}°`,
    );
    return {
      ...forces,
      sources: mergeSources(forces.sources, one.sources, design.sources, model.weightSources),
    };
  });
}

/** Degrees clockwise from the datum. */
const compass = (from: number): number =>
  Math.round(((360 - (from * 180) / Math.PI) % 360) + 360) % 360;

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

/** The anchors that the project has, for stages; null where they are not known. */
function stageAnchors(question: GroundQuestion): StageAnchors | null {
  const ground = question.ground ?? defaultGround;
  const loads = question.loads ?? defaultLoads;
  const { anchor, soil, pullTests } = ground;
  if (anchor === null) return null;
  const holding = holdingOf(anchor, { soil, tie: tieOf(ground), tests: pullTests });
  if (!holding.ok) return null;
  const base = baseOf(question.shell);
  const model = modelOf(question, null);
  if (!base.ok || !model.ok) return null;
  const design = settingsPressure(loads, model.value.wind.question.form);
  const weight = standingPlaces(question).reduce(
    (sum, place) => sum + (model.value.weight[place] as number),
    0,
  );
  const plan = planOf(question, base.value, model.value, design && { ...design, gust: 0 }, weight);
  const counts = plan.ok ? new Map(plan.value.hubs.map(({ hub, count }) => [hub, count])) : null;
  return {
    words: anchor.type,
    holding: holding.value,
    practices: chosenPractices(ground),
    count: (hub) => counts?.get(hub) ?? 1,
  };
}

function buildOf(question: GroundQuestion): Read<{ model: StageModel; order: number[] }> {
  const model = modelOf(question, stageAnchors(question));
  if (!model.ok) return model;
  const out = new Set(question.leftOut);
  const order = numberOrder(question.shell).filter((place) => !out.has(place));
  return { ok: true, value: { model: model.value, order } };
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
  readonly answer: StageAnswer;
  /** Places that have their panels, in the order of the build. */
  readonly placed: readonly number[];
  /** Movement of every corner of those panels under the movement shown, in the same order, stride 3;
   * the largest is 1 long. Null where it stands. */
  readonly movement: Float64Array | null;
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
  const answer = stageAnswer(model, stage, { strength: false, sets: 400 });
  if (!answer.ok) return answer;
  const placed = stage.placed;
  return {
    ok: true,
    value: {
      n: question.n,
      answer: answer.value,
      placed,
      movement: answer.value.movements === 0 ? null : movementOf(question.shell, stage),
    },
  };
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
