// The answer for one stage: does it stand, what must be propped, what holds it, what wind it bears,
// when work stops. An estimate and no design approval: local codes and a licensed engineer or rigger
// decide.

import { SEAM_BOLTS } from '../frame/bolts.ts';
import type { Enclosure } from '../loads/asce-7-16/internal.ts';
import { flagsOf, mergeSources, type Provenance } from '../loads/provenance.ts';
import { pointAt, type Vec3 } from '../math/vector.ts';
import type { Fault, Read } from '../measure/fault.ts';
import { type Bearing, bearing, SHARED } from './bearing.ts';
import type { PropOptions, PropSearch } from './fewest-props.ts';
import { type HowItStands, howItStands } from './how-it-stands.ts';
import { caseWords, holdingLimits, type Limit, liftsOff, noLimit } from './limits.ts';
import type { StageModel } from './model.ts';
import type { Patch } from './patches.ts';
import { frameOfStage, type Stage, stageFaults } from './stage.ts';
import { type StopWork, stopWork } from './stop-work.ts';
import { PANEL_BENDING, strengthLimits } from './strength.ts';
import { type SupportPlan, supportPlan } from './supports/choose.ts';

/** What holds one hub of a stage. */
export interface HeldHub {
  readonly hub: number;
  /** Its number on the ground; null for a prop. */
  readonly baseHub: number | null;
  /** Force of the ground or prop on it under the weight alone, N, shell's frame: up is a push,
   * below 0 it must be held down. */
  readonly weight: Vec3;
  /** The most that a wind case presses it down, lifts it and shoves it, N for each pascal of
   * velocity pressure. */
  readonly press: number;
  readonly lift: number;
  readonly shear: number;
}

/** What a stage bears with every prop in place. */
export interface StageStrength {
  readonly held: readonly HeldHub[];
  /** Weight of the placed panels whose mass is known, N. */
  readonly weight: number;
  /** Numbers of placed panels whose mass nobody knows: they count as weightless, save for seams and
   * panels, where the frame has them weigh by the density of their material. */
  readonly unweighed: readonly string[];
  /** The most that a level wind meets of the panels, from any side, m²; none shelters another. */
  readonly exposedArea: number;
  readonly enclosure: Enclosure;
  /** The largest lift and drag of any wind case, N for each pascal of velocity pressure. */
  readonly uplift: { readonly perPascal: number; readonly from: string };
  readonly drag: { readonly perPascal: number; readonly from: string };
  /** The gust at which the first base hub lifts off where nothing but the weight holds it. */
  readonly untied: Limit;
  /** One for each of anchor, prop, seam, hub and panel. */
  readonly limits: readonly Limit[];
  readonly stopWork: StopWork;
}

/** The answer for a stage. */
export interface StageAnswer {
  readonly status: 'stands' | 'needs props' | 'cannot be propped';
  /** Movements that nothing resists in it as it is; 0 where it stands. */
  readonly movements: number;
  /** The hub that they move most, and the numbers of the places they move. */
  readonly at: number | null;
  readonly moving: readonly string[];
  /** Hubs to prop besides those of the stage: a prop is tied at head and foot. */
  readonly props: readonly number[];
  /** Whether fewer props were shown not to be enough. */
  readonly fewest: boolean;
  /** What it bears with those props in place, in a state of balance that is exact where the ties
   * are just enough and else one of many; null where it can't be propped. */
  readonly bears: StageStrength | null;
  /** Guys and chains in the place of some of those props, where the lead has any and they can hold;
   * null where there is nothing to hold, no gear for it, or no panel is weighed. */
  readonly supports: SupportPlan | null;
  /** What is assumed, a sentence each, and the sources that are not confirmed. */
  readonly assumed: readonly string[];
  readonly flags: readonly Provenance[];
}

/** Options of `stageAnswer`. */
export interface StageOptions extends PropOptions {
  /** Seams and panels too, by the frame with its stiffness: slower. True where left out. */
  readonly strength?: boolean;
  /** Whether guys and chains are looked for in the place of props, where there are any. True where
   * left out. */
  readonly supports?: boolean;
  /** Gust up to which they must hold, m/s; the handling limit where left out. */
  readonly supportGust?: number;
}

/** The answer for one stage, or why it has none: see `stageFaults`. */
export function stageAnswer(
  model: StageModel,
  stage: Stage,
  options: StageOptions = {},
): Read<StageAnswer> {
  const found = answerWithPatches(model, stage, options);
  return found.ok ? { ok: true, value: found.value.answer } : found;
}

/** The same with the patches that were found, for the next stage (see `PropOptions`). */
export function answerWithPatches(
  model: StageModel,
  stage: Stage,
  options: StageOptions & PropSearch = {},
): Read<{ readonly answer: StageAnswer; readonly patches: readonly Patch[] }> {
  const faults: Fault[] = stageFaults(model.shell, model.numbers, stage);
  if (faults.length > 0) return { ok: false, faults };
  const how = howItStands(model.shell, stage, options);
  const told = {
    movements: how.movements,
    at: how.at,
    moving: how.moving.map((place) => model.numbers[place] as string),
    fewest: how.proved,
  };
  if (how.props === null)
    return {
      ok: true,
      value: {
        answer: {
          ...told,
          status: 'cannot be propped',
          props: [],
          bears: null,
          supports: null,
          assumed: [PROPS],
          flags: [],
        },
        patches: [],
      },
    };
  const held = bearing(model, how.propped);
  const bears = whatItBears(model, how, held, options.strength ?? true);
  const supports = supportsOf(model, stage, how, held, options);
  const sources = mergeSources(
    model.weightSources,
    model.airDensity.sources,
    [...new Set(held.cases.flatMap(({ wind }) => wind.sources))],
    ...bears.limits.map((limit) => limitSources(model, limit)),
    bears.stopWork.gust.sources,
  );
  const answer: StageAnswer = {
    ...told,
    status: how.movements === 0 ? 'stands' : 'needs props',
    props: how.props,
    bears,
    supports,
    assumed: [
      ...held.wind.assumed,
      ...(supports?.assumed ?? []),
      PROPS,
      SHARED,
      GUSTS,
      BUCKLING,
      ...(model.bears.anchors === null ? [] : [`Anchors: ${model.bears.anchors.words}.`]),
    ],
    flags: flagsOf({ sources }),
  };
  return { ok: true, value: { answer, patches: how.patches } };
}

const entered = (text: string): Provenance => ({ text, confirmation: 'entered' });

/** What a limit rests on, where it is told. */
function limitSources({ bears }: StageModel, { what, status }: Limit): readonly Provenance[] {
  if (status !== 'known') return [];
  const { anchors, parts } = bears;
  switch (what) {
    case 'anchor':
      return anchors === null
        ? []
        : [...anchors.holding.sources, ...anchors.practices.flatMap(({ sources }) => sources)];
    case 'prop':
      return [entered('what a prop with its ties bears')];
    case 'hub':
      return [entered('what may be brought into the shell at one hub')];
    case 'seam':
      return [...(parts?.sources ?? []), SEAM_BOLTS, entered('thread and grade of the seam bolts')];
    case 'panel':
      return [...(parts?.sources ?? []), PANEL_BENDING, entered('strength of the panels')];
  }
}

const PROPS =
  'Finger-tight seams turn as hinges; base hubs are held by the ground and its anchors; a prop holds its hub, tied at head and foot.';
const GUSTS = 'Gusts are 3-second gusts at the shell.';
const BUCKLING = 'No limit knows of buckling, nor of hubs that snap through.';

function whatItBears(
  model: StageModel,
  how: HowItStands,
  held: Bearing,
  strength: boolean,
): StageStrength {
  const placed = how.propped.model.panels.map(({ place }) => place);
  const limits = [
    ...holdingLimits(model, held),
    ...(strength
      ? strengthLimits(model, how.propped.model, held)
      : (['seam', 'panel'] as const).map((what) => noLimit(what, 'unknown', 'not asked for'))),
  ];
  const most = (of: 'lift' | 'drag'): { readonly perPascal: number; readonly from: string } =>
    held.cases.reduce(
      (best, one) =>
        one[of] > best.perPascal ? { perPascal: one[of], from: caseWords(one.wind) } : best,
      { perPascal: 0, from: '' },
    );
  const untied = liftsOff(model, held);
  return {
    held: held.hubs.map((hub, k) => heldHub(model, held, hub, k)),
    weight: held.totalWeight,
    unweighed: placed
      .filter((place) => model.mass[place] === null)
      .map((place) => model.numbers[place] as string),
    exposedArea: exposedArea(model, placed),
    enclosure: held.wind.enclosure,
    uplift: most('lift'),
    drag: most('drag'),
    untied,
    limits,
    stopWork: stopWork(limits, untied),
  };
}

/** Guys and chains for the props that were found; those of the stage itself stay. */
function supportsOf(
  model: StageModel,
  stage: Stage,
  how: HowItStands,
  held: Bearing,
  { supports = true, supportGust }: StageOptions,
): SupportPlan | null {
  const { gear } = model;
  if (!gear || !supports || how.props.length === 0 || held.totalWeight === 0) return null;
  const props = how.props.map((hub) => ({
    hub,
    force: pointAt(held.weight, held.hubs.indexOf(hub)),
  }));
  const question = { frame: frameOfStage(model.shell, stage), props, cases: held.cases };
  return supportPlan(
    model,
    gear,
    supportGust === undefined ? question : { ...question, gust: supportGust },
  );
}

function heldHub({ baseNumber }: StageModel, held: Bearing, hub: number, k: number): HeldHub {
  let [press, lift, shear] = [0, 0, 0];
  for (const { perPascal } of held.cases) {
    press = Math.max(press, perPascal[3 * k + 2]);
    lift = Math.max(lift, -perPascal[3 * k + 2]);
    shear = Math.max(shear, Math.hypot(perPascal[3 * k], perPascal[3 * k + 1]));
  }
  const number = baseNumber[hub];
  const weight = pointAt(held.weight, k);
  return { hub, baseHub: number > 0 ? number : null, weight, press, lift, shear };
}

/** Panels seen from the side, every one counted, from the side that sees most of them. */
function exposedArea({ wind }: StageModel, placed: readonly number[]): number {
  const { area } = wind.faces;
  return wind.question.directions.reduce((most, from) => {
    const [c, s] = [Math.cos(from), Math.sin(from)];
    const seen = placed.reduce(
      (sum, p) => sum + Math.abs(area[3 * p] * c + area[3 * p + 1] * s),
      0,
    );
    return Math.max(most, seen);
  }, 0);
}
