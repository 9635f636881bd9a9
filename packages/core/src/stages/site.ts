// The whole shell on its site: design loads at its base, the anchors that they ask for, and with
// those what every stage is reckoned from.

import type { FrameParts } from '../frame/parts.ts';
import { anchorWords } from '../ground/anchors/choice.ts';
import type { BaseForces } from '../ground/anchors/demand.ts';
import { type AnchorPlan, anchorPlan, holdingOf } from '../ground/anchors/plan.ts';
import { type Base, baseOf } from '../ground/base.ts';
import { anchorBrief, chosenPractices, tieOf } from '../ground/from-settings.ts';
import type { GroundSettings } from '../ground/schema.ts';
import type { WindCode } from '../loads/peak-pressure.ts';
import { flagsOf, mergeSources, type Provenance, type Sourced } from '../loads/provenance.ts';
import { settingsPressure, snowCases } from '../loads/question.ts';
import type { LoadsSettings } from '../loads/schema.ts';
import { snowForces } from '../loads/snow/panels.ts';
import { type Read, refuse } from '../measure/fault.ts';
import { placeCount, type Shell } from '../shell/shell.ts';
import { type Bearing, bearing, SHARED } from './bearing.ts';
import { howItStands } from './how-it-stands.ts';
import { caseWords } from './limits.ts';
import { nothingKnown, type StageAnchors, type StageModel, stageModel } from './model.ts';
import type { StagesKnown } from './schema.ts';
import { gearOf } from './supports/gear.ts';

/** What a site is reckoned from. */
export interface SiteBrief {
  readonly loads: LoadsSettings;
  readonly ground: GroundSettings;
  /** What the lead knows of the parts; null: nothing. */
  readonly parts: FrameParts | null;
  /** What the lead knows of props and hubs. */
  readonly stages: StagesKnown;
  /** Mass of the panel at a place, kg; null where unknown. */
  readonly massOf: (place: number) => Sourced | null;
  /** Bolts on a seam by its index; null where nobody knows. */
  readonly seamBolts: (seam: number) => number | null;
}

/** Loads on the whole, closed shell. */
export interface DesignLoads {
  /** Peak velocity pressure at the crown, Pa, and the code that gives it; null: no wind entered. */
  readonly wind: (Sourced & { readonly code: WindCode }) | null;
  /** The most that any wind case drags and lifts, N at that pressure; null likewise. */
  readonly drag: { readonly force: number; readonly from: string } | null;
  readonly lift: { readonly force: number; readonly from: string } | null;
  /** N, of the panels whose mass is known. */
  readonly weight: number;
  /** Numbers of the places whose panel nobody weighed. */
  readonly unweighed: readonly string[];
  /** Snow cases: what lies on the shell, N; none where no snow is entered. */
  readonly snow: readonly { readonly name: string; readonly force: number }[];
  /** The sources of all these that are not confirmed. */
  readonly flags: readonly Provenance[];
  readonly assumed: readonly string[];
}

/** A shell on its site. */
export interface Site {
  readonly base: Base;
  readonly loads: DesignLoads;
  /** The anchor plan, or what keeps it from being made. */
  readonly anchors: Read<AnchorPlan>;
  /** What every stage is reckoned from, those anchors in place. */
  readonly stages: StageModel;
}

/** A whole shell on its site; faults where it has no base ring or its whole does not stand. */
export function siteOf(shell: Shell, numbers: readonly string[], brief: SiteBrief): Read<Site> {
  const base = baseOf(shell);
  if (!base.ok) return base;
  const { loads, ground, massOf, parts, seamBolts } = brief;
  const bears = {
    ...nothingKnown,
    parts,
    seamBolts,
    prop: brief.stages.propBears,
    hub: brief.stages.hubBears,
  };
  const gear = gearOf(brief.stages, base.value);
  if (!gear.ok) return gear;
  const made = stageModel(shell, numbers, { loads, massOf, bears, gear: gear.value });
  if (!made.ok) return made;
  const model = made.value;
  const how = howItStands(shell, { placed: [...Array(placeCount(shell)).keys()] });
  if (how.movements > 0 || how.props === null)
    return refuse(
      'shell',
      `${how.movements} free movements with every panel placed, most at hub ${how.at}`,
      'a shell that stands when it is whole',
    );
  const held = bearing(model, how.propped);
  const design = designLoads(model, held, loads);
  const plan = planOf(base.value, model, held, design, ground);
  const anchors = stageAnchors(plan, ground);
  return {
    ok: true,
    value: {
      base: base.value,
      loads: design,
      anchors: plan,
      stages: { ...model, bears: { ...bears, anchors } },
    },
  };
}

const FINGER = 'The whole shell is reckoned with every seam finger-tight.';

function designLoads(model: StageModel, held: Bearing, settings: LoadsSettings): DesignLoads {
  const { form } = model.wind.question;
  const wind = settingsPressure(settings, form);
  const most = (of: 'drag' | 'lift'): DesignLoads['lift'] =>
    wind &&
    held.cases.reduce(
      (best, one) =>
        one[of] * wind.value > best.force
          ? { force: one[of] * wind.value, from: caseWords(one.wind) }
          : best,
      { force: 0, from: '' },
    );
  const places = [...model.mass.keys()];
  const snow = snowCases(settings, form).map((one) => {
    const { value, sources } = snowForces(model.wind.faces, form.radius, places, one, 0);
    const force = places.reduce((sum, _, i) => sum - value.force[3 * i + 2], 0);
    return { name: one.name, force, sources };
  });
  const sources = mergeSources(
    wind?.sources ?? [],
    [...new Set(held.cases.flatMap((one) => one.wind.sources))],
    model.weightSources,
    ...snow.map((one) => one.sources),
  );
  return {
    wind,
    drag: most('drag'),
    lift: most('lift'),
    weight: held.totalWeight,
    unweighed: places.flatMap((p) => (model.mass[p] === null ? [model.numbers[p] as string] : [])),
    snow: snow.map(({ name, force }) => ({ name, force })),
    flags: flagsOf({ sources }),
    assumed: [...held.wind.assumed, FINGER, SHARED],
  };
}

/** The forces at every base hub in every wind case at a velocity pressure, Pa, before any factor.
 * What the weight lifts somewhere counts as lift. */
function baseForces(model: StageModel, held: Bearing, pressure: number): BaseForces[] {
  return held.cases.map(({ wind, perPascal }) => ({
    name: caseWords(wind),
    sources: wind.sources,
    hubs: held.hubs.flatMap((hub, k) => {
      const number = model.baseNumber[hub];
      if (number === 0) return [];
      const weight = held.weight[3 * k + 2];
      const level = [0, 1].map((x) => held.weight[3 * k + x] + pressure * perPascal[3 * k + x]);
      return [
        {
          hub: number,
          lift: -pressure * perPascal[3 * k + 2] + Math.max(0, -weight),
          weight: Math.max(0, weight),
          shear: Math.hypot(...level),
        },
      ];
    }),
  }));
}

function planOf(
  base: Base,
  model: StageModel,
  held: Bearing,
  { wind }: DesignLoads,
  ground: GroundSettings,
): Read<AnchorPlan> {
  if (wind === null)
    return refuse('loads.wind', 'no design wind', 'the gust or mean wind that the site must bear');
  return anchorPlan(base, anchorBrief(ground, baseForces(model, held, wind.value)));
}

/** The anchors of the plan, or one of the chosen sort at each hub where there is no plan. */
function stageAnchors(plan: Read<AnchorPlan>, ground: GroundSettings): StageAnchors | null {
  const { anchor } = ground;
  if (anchor === null) return null;
  const holding = holdingOf(anchor, {
    soil: ground.soil,
    tie: tieOf(ground),
    tests: ground.pullTests,
  });
  if (!holding.ok) return null;
  const counts = plan.ok ? new Map(plan.value.hubs.map(({ hub, count }) => [hub, count])) : null;
  const words = anchorWords(anchor);
  return {
    words: counts
      ? `${words}, as many at each hub as the plan has`
      : `${words}, one at each base hub`,
    holding: holding.value,
    practices: chosenPractices(ground),
    count: (hub) => counts?.get(hub) ?? (counts ? 0 : 1),
  };
}
