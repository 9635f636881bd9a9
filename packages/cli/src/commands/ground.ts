// `shellraise ground`: stake-out, shims, loads and anchors of the whole shell, and, for one stage of
// the build, whether it stands and in what wind.

import {
  type ClosedDown,
  closedDown,
  numberOrder,
  polarPlan,
  type StageAnswer,
  type StageStability,
  type SurveyAnswer,
  stageAnswer,
  stageOf,
  tapePlan,
} from '@shellraise/core';
import { badInput } from '../ending.ts';
import { anchorBlocks, loadBlocks } from '../ground-loads.ts';
import { type ChosenSite, orEnd, siteOfChosen } from '../ground-site.ts';
import {
  mayBuckle,
  stabilityBlocks,
  stabilityDocument,
  stabilityOfStage,
  stabilityOfWhole,
} from '../ground-stability.ts';
import { stageBlocks } from '../ground-stage.ts';
import { stakeOutBlocks } from '../ground-stakes.ts';
import { surveyBlocks, surveyDocument, surveyOfChosen } from '../ground-survey.ts';
import { type Chosen, choose } from '../job.ts';
import { lengthsIn } from '../lengths.ts';
import type { GroundOptions } from '../options.ts';
import { caution, heading, print, printJson } from '../terminal.ts';
import { writeGround } from './ground-papers.ts';
import { severalShapes } from './places.ts';

/** A stage as asked for, and its answer. */
export interface AskedStage {
  /** Panels placed. */
  readonly number: number;
  readonly of: number;
  /** Number of the place filled last. */
  readonly last: string;
  readonly answer: StageAnswer;
  readonly stability: StageStability;
  /** Null where no gust was given for the night. */
  readonly night: ClosedDown | null;
}

/** What is told of the base as it stands, of the whole shell and of the stage that was asked for. */
interface Asked {
  /** Null where no survey is entered. */
  readonly survey: SurveyAnswer | null;
  readonly whole: StageStability;
  readonly stage: AskedStage | null;
}

/** What every number of the command must carry. */
const groundCaution =
  'What follows is an estimate and no design approval. It takes the ground, the parts and the wind as entered. Local codes and a licensed engineer or rigger decide on loads, anchors, props and the wind to work in.';

/** Runs the command; exit code 1 where the stage does not stand, or the anchors do not hold. */
export async function ground(file: string, options: GroundOptions): Promise<void> {
  if (options.tonight !== undefined && options.stage === undefined)
    throw badInput('--tonight: found no stage, expected --stage as well: which one is left so');
  const chosen = await choose(file, options);
  const site = siteOfChosen(file, chosen);
  const stage = askedStage(file, chosen, site, options);
  const survey = surveyOfChosen(file, chosen, site);
  const whole = stabilityOfWhole(site);
  const asked: Asked = { survey, whole, stage };
  if (!holds(site, asked)) process.exitCode = 1;
  const written = writeGround(chosen, options);
  if (options.json) printJson(groundDocument(chosen, site, asked, options));
  else print(...report(chosen, site, asked, options), written);
}

function askedStage(
  file: string,
  { standing, numbers }: Chosen,
  on: ChosenSite,
  { stage, tonight }: GroundOptions,
): AskedStage | null {
  if (stage === undefined) return null;
  const { site } = on;
  const order = numberOrder(standing.shell);
  if (stage > order.length)
    throw badInput(
      `--stage: found ${stage}, expected 1 to ${order.length}: the shell has no more panels`,
    );
  const asked = stageOf(order, stage);
  const answer = orEnd(file, stageAnswer(site.stages, asked));
  const last = numbers.numbers[order[stage - 1] as number] as string;
  const night =
    tonight === undefined || answer.bears === null
      ? null
      : closedDown(answer.bears.limits, answer.bears.untied, tonight);
  const stability = stabilityOfStage(on, asked, answer);
  return { number: stage, of: order.length, last, answer, stability, night };
}

/** An honest yes: nothing that was reckoned says no. What is unknown is told, and is no "no". */
function holds({ site }: ChosenSite, { survey, whole, stage }: Asked): boolean {
  const anchored = site.anchors.ok ? site.anchors.value.tooNear.length === 0 : !isTooMuch(site);
  const stands = stage === null || stage.answer.status === 'stands';
  const folds = mayBuckle(whole) || (stage !== null && mayBuckle(stage.stability));
  return (
    anchored &&
    stands &&
    !folds &&
    survey?.verdict !== 'no go' &&
    stage?.night?.verdict !== 'gives way'
  );
}

/** Whether no plan was made because more is asked than the anchors hold: not because something is
 * unknown. */
const isTooMuch = ({ anchors }: ChosenSite['site']): boolean =>
  !anchors.ok && anchors.faults.some(({ path }) => path.startsWith('anchor, hub'));

function report(
  chosen: Chosen,
  site: ChosenSite,
  { survey, whole, stage }: Asked,
  options: GroundOptions,
): readonly string[] {
  const lengths = lengthsIn(options.lengths);
  return [
    heading(`Ground of arrangement ${chosen.number}`),
    severalShapes(chosen.found.shapes.length, options.shape),
    ...stakeOutBlocks(site, lengths),
    caution(groundCaution),
    ...surveyBlocks(survey, chosen, lengths),
    ...loadBlocks(site),
    ...anchorBlocks(site),
    ...stabilityBlocks(whole, chosen, 'the whole shell', [site.site.loads]),
    ...(stage === null
      ? []
      : [
          ...stageBlocks(stage, chosen, site.site.stages.airDensity.value),
          ...stabilityBlocks(stage.stability, chosen, `stage ${stage.number}`, [
            site.site.loads,
            whole,
            stage.answer,
          ]),
        ]),
  ];
}

function groundDocument(
  chosen: Chosen,
  { site, shims, ground: settings }: ChosenSite,
  { survey, whole, stage }: Asked,
  options: GroundOptions,
): object {
  const { sd, length, datum } = settings.tape;
  const tape = { tapeSd: sd, tapeLength: length, ...(datum === null ? {} : { datum }) };
  return {
    shape: { number: options.shape, of: chosen.found.shapes.length, radius: chosen.shape.radius },
    arrangement: { number: chosen.number, of: chosen.list.arrangements.length },
    base: site.base,
    stakeOut: { polar: polarPlan(site.base), tape: tapePlan(site.base, tape) },
    shims,
    survey: surveyDocument(survey),
    loads: site.loads,
    anchors: site.anchors.ok
      ? { status: 'planned', ...site.anchors.value }
      : { status: isTooMuch(site) ? 'too much asked' : 'unknown', why: site.anchors.faults },
    stability: stabilityDocument(whole),
    stage: stage && { ...stage, stability: stabilityDocument(stage.stability) },
    cautions: [groundCaution],
  };
}
