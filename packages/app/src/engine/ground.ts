// What the Ground sheet asks of the base: set out, anchored, shimmed and surveyed, and the wind on the
// whole shell from every side. Readings and settings come as the project has them; what can't be made
// says why.

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
  type GroundLevels,
  groundLevels,
  gustOfPressure,
  type LoadsSettings,
  mergeSources,
  type Provenance,
  type Read,
  ringBeam,
  ringBeamSheets,
  type ShellFacts,
  type ShellSite,
  type ShimPlan,
  type Sourced,
  type StageModel,
  type SurveyAnswer,
  settingsPressure,
  shimSheets,
  shims,
  siteOfFacts,
  snowCases,
  stageWind,
  stakeOutSheets,
  surveyAnswer,
  surveyOptions,
  surveySheets,
  tapeOptions,
  tapePlan,
} from '@shellraise/core';
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
