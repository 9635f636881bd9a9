// How far a stage is from buckling under its load, whether its hubs snap through before that, and how
// fast it swings. An estimate and no design approval: local codes and a licensed engineer decide.

import { atRest, type PreparedFrame, prepareFrame } from '../frame/answer.ts';
import { type FrameLoad, GRAVITY, nodeLoads } from '../frame/frame-loads.ts';
import { type FrameModes, frameBuckling, frameFrequencies } from '../frame/frame-modes.ts';
import type { FrameModel } from '../frame/model.ts';
import { flagsOf, fromMemory, mergeSources, type Provenance } from '../loads/provenance.ts';
import type { SnowCase } from '../loads/snow/panels.ts';
import { snowForces } from '../loads/snow/panels.ts';
import { stageWind } from '../loads/wind-cases.ts';
import { norm, pointAt } from '../math/vector.ts';
import { type HubMode, SKIN_AS_BARS, type SnapThrough, snapThrough } from './bar-net.ts';
import { caseWords, pressureOf } from './limits.ts';
import type { StageModel } from './model.ts';

/** Real shells buckle at these parts of what perfect ones bear (NASA SP-8032; D. T. Wright, 1965; from
 * memory: see `frameBuckling`). */
export const REAL_PART = { least: 1 / 5, most: 1 / 3 } as const;

/** Below this, hertz, a building rocks with the gusts, and the pressures of a code that takes it for
 * stiff are too low (ASCE 7-16, 26.2: rigid from 1 Hz up; from memory). */
export const SLOW_SWING = 1;

const SLOW = fromMemory('ASCE 7-16, 26.2: a building is rigid from 1 Hz up');

/** Why something was not reckoned. */
export interface NotReckoned {
  readonly status: 'not reckoned';
  readonly why: string;
}

/** How far a stage is from buckling. */
export interface StageBuckling {
  readonly status: 'reckoned';
  /** Times the load at which it would buckle were all perfect; null: none of the loads buckles it. */
  readonly factor: number | null;
  /** Times the load at which a real one may: by {@link REAL_PART}; null likewise. */
  readonly real: { readonly least: number; readonly most: number } | null;
  /** The load that does it. */
  readonly load: string;
  /** The hub that moves most, and how all do; null likewise. */
  readonly hub: number | null;
  readonly mode: HubMode | null;
}

/** How fast a stage swings. */
export interface StageSwing {
  readonly status: 'reckoned';
  /** Lowest natural frequency, hertz. */
  readonly frequency: number;
  /** Below {@link SLOW_SWING}. */
  readonly slow: boolean;
  readonly hub: number;
  readonly mode: HubMode;
}

/** Buckling, snap-through and swing of a stage. */
export interface StageStability {
  /** 3-second gust at the shell that was reckoned with, m/s; null: no wind. */
  readonly gust: number | null;
  readonly seams: 'finger-tight' | 'snug';
  readonly buckling: StageBuckling | NotReckoned;
  /** By the load of `buckling`; its factor too is that of a perfect shell. */
  readonly snapThrough: SnapThrough;
  readonly swing: StageSwing | NotReckoned;
  /** For comparison, where the shell is whole: an even pressure on a smooth cap of its own, as thick as
   * the panels' skin and with no flanges, at which real ones may buckle, Pa, and what part that is of
   * what a perfect sphere bears. Null for a stage, where nobody knows the parts, and for a cap so flat
   * that the rule does not hold. */
  readonly cap: { readonly pressure: number; readonly part: number } | null;
  /** What is assumed, a sentence each, and the sources that are not confirmed. */
  readonly assumed: readonly string[];
  readonly flags: readonly Provenance[];
}

/** What a stage is held against. */
export interface StabilityLoad {
  /** 3-second gust at the shell, m/s; null: no wind. */
  readonly gust: number | null;
  /** Snow cases; none where left out. */
  readonly snow?: readonly SnowCase[];
}

/** Loads that press its seams together most, of all: buckling is sought under so many. */
const LOADS_SOUGHT = 3;

const PERFECT =
  'Buckling factors are those of perfect parts on ground that does not give; a real shell buckles at a third to a fifth of them.';
const SOUGHT = `Buckling is looked for under the ${LOADS_SOUGHT} loads that press its sides most, weight, wind and snow growing together; panels that dent between their sides and bolts that slip are left out.`;
const BARS =
  'Snap-through takes every side as a bar that turns freely at its ends, with its share of the skin.';
const SWINGS = 'It swings as if props and ground did not give.';

interface Case {
  readonly words: string;
  readonly load: FrameLoad;
  readonly sources: readonly Provenance[];
}

/** Buckling, snap-through and swing of a stage as a frame, its props among the supports; `seams` says
 * how far its seams are, for words. `onProgress` is told of 0 … 1. What does not stand, or has parts
 * that nobody knows, is not reckoned, and says so. */
export function stageStability(
  model: StageModel,
  frame: FrameModel,
  seams: StageStability['seams'],
  asked: StabilityLoad,
  onProgress: (done: number) => void = () => undefined,
): StageStability {
  const none = (why: string): StageStability => notStable(asked.gust, seams, why);
  const { parts } = model.bears;
  if (parts === null) return none('nobody said what the parts are: material, thickness, flanges');
  if (parts.supposed.length > 0) return none(`nobody said: ${parts.supposed.join(', ')}`);
  const prepared = prepareFrame(frame, parts);
  if (prepared.mechanism !== null)
    return none('it moves freely as it is: what does not stand has no load to buckle at');
  const cases = casesOf(model, prepared, asked);
  const hardest = mostPressed(prepared, cases, (done) => onProgress(0.2 * done));
  let found: Case = cases[0] as Case;
  let modes: FrameModes | null = null;
  hardest.forEach((one, k) => {
    const buckled = frameBuckling(prepared, one.load, 1);
    onProgress(0.2 + (0.5 * (k + 1)) / hardest.length);
    if (buckled.status !== 'stands' || buckled.values[0] === undefined) return;
    if (modes === null || buckled.values[0] < (modes.values[0] as number))
      [found, modes] = [one, buckled];
  });
  if (modes === null) found = hardest[0] ?? found;
  const snaps = snapThrough(prepared, found.load);
  onProgress(0.9);
  const swing = swingOf(model, prepared);
  onProgress(1);
  const sources = mergeSources(
    parts.sources,
    found.sources,
    (modes as FrameModes | null)?.sources ?? [],
    snaps.status === 'not reckoned' ? [] : [SKIN_AS_BARS],
    [SLOW],
  );
  return {
    gust: asked.gust,
    seams,
    buckling: bucklingOf(modes, found.words),
    snapThrough: snaps,
    swing,
    cap: null,
    assumed: [PERFECT, SOUGHT, BARS, SWINGS],
    flags: flagsOf({ sources }),
  };
}

/** A stage of which nothing is reckoned, and why. */
export function notStable(
  gust: number | null,
  seams: StageStability['seams'],
  why: string,
): StageStability {
  const not: NotReckoned = { status: 'not reckoned', why };
  return {
    gust,
    seams,
    buckling: not,
    snapThrough: not,
    swing: not,
    cap: null,
    assumed: [],
    flags: [],
  };
}

function bucklingOf(modes: FrameModes | null, load: string): StageBuckling {
  const factor = modes?.values[0] ?? null;
  const mode = modes?.modes[0] ? oneLong(modes.modes[0]) : null;
  return {
    status: 'reckoned',
    factor,
    real:
      factor === null ? null : { least: factor * REAL_PART.least, most: factor * REAL_PART.most },
    load,
    hub: mode === null ? null : mostMoved(mode),
    mode,
  };
}

/** The weight alone, and with it each wind case and each snow case. */
function casesOf(
  model: StageModel,
  { model: frame, parts }: PreparedFrame,
  { gust, snow = [] }: StabilityLoad,
): Case[] {
  const placed = frame.panels.map(({ place }) => place);
  const masses = placed.map((place) => model.mass[place] ?? null);
  const weight: Case = {
    words: 'its weight alone',
    load: { masses },
    sources: model.weightSources,
  };
  const pressure = gust === null ? 0 : pressureOf(gust, model.airDensity.value);
  const winds = gust === null ? [] : stageWind(model.wind, placed).cases;
  const { faces, question } = model.wind;
  return [
    weight,
    ...winds.map(
      (wind): Case => ({
        words: caseWords(wind),
        load: { masses, pressure: placed.map((p) => pressure * (wind.coefficient[p] ?? 0)) },
        sources: mergeSources(weight.sources, wind.sources, model.airDensity.sources),
      }),
    ),
    ...snow.map((one): Case => {
      const { value } = snowForces(faces, question.form.radius, placed, one, 0);
      const own = (p: number): number =>
        masses[p] ??
        parts.density * parts.thickness * norm(pointAt(faces.area, placed[p] as number));
      return {
        words: `snow: ${one.name}`,
        load: { masses: placed.map((_, p) => own(p) - (value.force[3 * p + 2] ?? 0) / GRAVITY) },
        sources: mergeSources(weight.sources, one.sources),
      };
    }),
  ];
}

/** The cases whose largest push in a side is largest; ties by order. */
function mostPressed(
  prepared: PreparedFrame,
  cases: readonly Case[],
  onProgress: (done: number) => void,
): Case[] {
  const { elements } = prepared.mesh.structure;
  return cases
    .map((one, k) => {
      const { rest } = atRest(prepared, one.load);
      onProgress((k + 1) / cases.length);
      const push = elements.reduce(
        (most, { kind }, e) =>
          kind === 'beam' ? Math.max(most, -(rest?.forces[e]?.[0] ?? 0)) : most,
        0,
      );
      return { one, push };
    })
    .sort((a, b) => b.push - a.push)
    .slice(0, LOADS_SOUGHT)
    .map(({ one }) => one);
}

/** The lowest frequency, the masses of weighed panels spread as those of their parts are. */
function swingOf(model: StageModel, prepared: PreparedFrame): StageSwing | NotReckoned {
  const found = frameFrequencies(prepared, 1);
  const [value] = found.status === 'stands' ? found.values : [];
  if (found.status !== 'stands' || value === undefined)
    return { status: 'not reckoned', why: 'nothing in it is free to swing' };
  const weighed = prepared.model.panels.map(({ place }) => model.mass[place] ?? null);
  const mass = weighed.reduce<number | null>(
    (sum, one) => (sum === null || one === null ? null : sum + one),
    0,
  );
  const frequency = mass === null ? value : value * Math.sqrt(massByParts(prepared) / mass);
  const mode = oneLong(found.modes[0] as HubMode);
  return {
    status: 'reckoned',
    frequency,
    slow: frequency < SLOW_SWING,
    hub: mostMoved(mode),
    mode,
  };
}

/** Mass of a frame by the densities of its parts, kg. */
function massByParts({ mesh, parts }: PreparedFrame): number {
  const down = nodeLoads(mesh, parts, {});
  return -down.reduce((sum, force, i) => (i % 6 === 2 ? sum + force : sum), 0) / GRAVITY;
}

/** A mode whose largest movement is 1 long. */
function oneLong(mode: HubMode): HubMode {
  const most = sizeAt(mode, mostMoved(mode));
  return most > 0 ? mode.map((x) => x / most) : mode;
}

const sizeAt = (mode: HubMode, hub: number): number =>
  Math.hypot(...mode.subarray(3 * hub, 3 * hub + 3));

function mostMoved(mode: HubMode): number {
  let hub = 0;
  for (let h = 1; 3 * h < mode.length; h++)
    if (sizeAt(mode, h) > sizeAt(mode, hub) * (1 + 1e-9)) hub = h;
  return hub;
}
