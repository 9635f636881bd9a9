// The stages of a build on its site: all of them in a row, and one in full with how it moves and bends.

import {
  defaultLoads,
  frameOfStage,
  frameParts,
  gustOfPressure,
  lowestLimit,
  mechanisms,
  numberOrder,
  type Read,
  type Shell,
  type StageAnswer,
  type StageModel,
  settingsPressure,
  stageAnswer,
  stageOf,
  stageSeries,
  unknownParts,
} from '@shellraise/core';
import { type Bent, bentStage } from './bent.ts';
import { type GroundQuestion, siteOfQuestion } from './ground.ts';

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
