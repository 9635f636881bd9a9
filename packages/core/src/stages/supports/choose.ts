// Which hubs guys and chains can hold in the place of props. A prop goes only where lines that pull
// and cannot push keep the stage standing under its weight and, to a gust, under every wind case.
// Lines in balance with two loads are so with all between them (the loads that they can balance are a
// convex cone), so every gust below that one is covered too.

import type { FrameModel } from '../../frame/model.ts';
import { dot, norm, normalize, pointAt, subtract, type Vec3 } from '../../math/vector.ts';
import { type CaseForces, onJoints, pressedBy, weightOf } from '../bearing.ts';
import { caseWords, pressureOf } from '../limits.ts';
import type { StageModel } from '../model.ts';
import { HANDLING_LIMITS, type HandlingLimit } from '../stop-work.ts';
import { MOST_LINE_SETS } from '../tolerances.ts';
import { type Line, linesAt, type Mast, type SupportGear, slopeOf } from './gear.ts';
import { type Lined, linedFrame } from './lined.ts';
import { type LinedForces, OneWayStage } from './one-way.ts';

/** A guy or chain that takes part in holding a hub. */
export interface SupportLine {
  readonly kind: 'guy' | 'chain';
  readonly hub: number;
  /** Number of its anchor point (see `SupportGear`); null for a chain, which goes to the mast. */
  readonly anchor: number | null;
  /** Its other end, shell's frame, metres. */
  readonly to: Vec3;
  /** Metres. */
  readonly length: number;
  /** From the ground, radians. */
  readonly slope: number;
  /** Its pull under the weight alone, N. */
  readonly weight: number;
  /** Its most up to the gust, N, and the wind case that asks it; null: the weight alone. */
  readonly most: number;
  readonly from: string | null;
  /** Part of what it bears; null where nobody knows that. */
  readonly use: number | null;
}

/** A hub that a prop still holds. */
export interface SupportProp {
  readonly hub: number;
  /** Force of the prop on it under the weight alone, N. */
  readonly weight: Vec3;
  /** The most that it carries up to the gust, N, and the wind case that asks it; null likewise. */
  readonly most: number;
  readonly from: string | null;
}

/** What holds a stage besides the ground, line by line and prop by prop. */
export interface SupportPlan {
  /** Lines hold up to this gust, m/s: 3-second gust at the shell. */
  readonly gust: number;
  readonly lines: readonly SupportLine[];
  readonly props: readonly SupportProp[];
  /** The most that presses on the head of the mast and pulls it sideways, N, and the part of what it
   * bears; null where no chain is used. */
  readonly mast: {
    readonly push: number;
    readonly sideways: number;
    readonly use: number | null;
  } | null;
  readonly assumed: readonly string[];
}

/** What is asked of a plan. */
export interface SupportQuestion {
  /** The stage with its base held and its own props, without those to be found. */
  readonly frame: FrameModel;
  /** Hubs that props would hold, the most helpful first, with the force of each under the weight. */
  readonly props: readonly { readonly hub: number; readonly force: Vec3 }[];
  readonly cases: readonly CaseForces[];
  /** Gust up to which lines must hold, m/s; that at which work stops at the latest where left out. */
  readonly gust?: number;
}

/** Guys and chains in the place of as many props as can be, hub by hub. A mast that only its chains
 * hold gets them at all those hubs at once, or at none. RangeError for a gust that is none. */
export function supportPlan(
  model: StageModel,
  gear: SupportGear,
  { frame, props, cases, gust = (HANDLING_LIMITS[0] as HandlingLimit).gust }: SupportQuestion,
): SupportPlan {
  if (!(gust >= 0 && gust <= 60))
    throw new RangeError(`the gust for guys is ${gust} m/s, 0 to 60 m/s is allowed`);
  const loads = loadsOf(model, frame, cases, pressureOf(gust, model.airDensity.value));
  let lines: readonly Line[] = [];
  const tryWith = (more: readonly Line[]): boolean => {
    const all = [...lines, ...more];
    if (chainsOf(all) > (gear.mast?.chains ?? 0)) return false;
    const done = stateOf(model, gear, frame, props, all, loads);
    if (done === null || isOverdone(gear, done)) return false;
    // What never pulls is not needed: the stage has the same forces without.
    lines = all.filter((_, k) => done.forces.some(({ pulls }) => (pulls[k] as number) > 0));
    return true;
  };
  const { mast } = gear;
  const guyed = mast === null || mast.guyed;
  if (!guyed) tryWith(props.map(({ hub }) => ({ kind: 'chain', hub, anchor: 0, to: mast.head })));
  for (const { hub, force } of props) {
    if (lines.some((line) => line.hub === hub)) continue;
    const own = linesAt(gear, frame.hubs, hub).filter(({ kind }) => kind === 'guy' || guyed);
    choices(frame.hubs, own, force).find(tryWith);
  }
  const found = stateOf(model, gear, frame, props, lines, loads);
  if (found === null) throw new Error('a stage stands with all its props');
  return planOf(gear, frame, found, gust);
}

const chainsOf = (lines: readonly Line[]): number =>
  lines.filter(({ kind }) => kind === 'chain').length;

/** A load on the panels, stride 3, and its words; null: the weight alone. */
interface PanelLoad {
  readonly from: string | null;
  readonly panels: Float64Array;
}

function loadsOf(
  model: StageModel,
  frame: FrameModel,
  cases: readonly CaseForces[],
  pressure: number,
): PanelLoad[] {
  const placed = frame.panels.map(({ place }) => place);
  const weight = weightOf(model, placed);
  return [
    { from: null, panels: weight },
    ...cases.map(({ wind }) => {
      const pressed = pressedBy(model, placed, wind.coefficient);
      return { from: caseWords(wind), panels: weight.map((x, i) => x + pressure * pressed[i]) };
    }),
  ];
}

/** The forces of a stage with lines under each load. */
interface State {
  readonly lined: Lined;
  /** Hubs that props hold. */
  readonly props: readonly number[];
  readonly loads: readonly PanelLoad[];
  readonly forces: readonly LinedForces[];
}

/** Null where the stage falls under one of the loads. */
function stateOf(
  model: StageModel,
  gear: SupportGear,
  frame: FrameModel,
  props: SupportQuestion['props'],
  lines: readonly Line[],
  loads: readonly PanelLoad[],
): State | null {
  const left = props.map(({ hub }) => hub).filter((hub) => !lines.some((one) => one.hub === hub));
  const held = left.map((hub) => ({ hub, stiffness: null }));
  const lined = linedFrame({ ...frame, supports: [...frame.supports, ...held] }, lines, gear.mast);
  const stage = new OneWayStage(lined);
  const forces: LinedForces[] = [];
  for (const { panels } of loads) {
    const found = stage.under(onJoints(model, lined.tied, panels));
    if (found === null) return null;
    forces.push(found);
  }
  return { lined, props: left, loads, forces };
}

function isOverdone(gear: SupportGear, state: State): boolean {
  const beyond = state.lined.lines.some(({ kind }, k) => {
    const bears = bearsOf(gear, kind);
    return bears !== null && state.forces.some(({ pulls }) => (pulls[k] as number) > bears);
  });
  return beyond || (mastOf(gear.mast, state)?.use ?? 0) > 1;
}

const bearsOf = ({ guyBears, mast }: SupportGear, kind: Line['kind']): number | null =>
  kind === 'guy' ? guyBears : (mast?.chainBears ?? null);

/** Sets of lines to try on a hub: each by itself, that which pulls most along `force` first; then
 * pairs and threes that pull against each other (a hub that can go one way is held by two whatever
 * pushes, one that can go two ways by three), those whose level parts come nearest to balance first. */
function choices(hubs: Float64Array, lines: readonly Line[], force: Vec3): Line[][] {
  const ways = lines.map(({ to, hub }) => normalize(subtract(to, pointAt(hubs, hub))));
  const way = (k: number): Vec3 => ways[k] as Vec3;
  const sorted = [...lines.keys()].sort((a, b) => dot(way(b), force) - dot(way(a), force));
  const after = (k: number): number[] => sorted.slice(sorted.indexOf(k) + 1);
  const off = (set: readonly number[]): number =>
    Math.hypot(...[0, 1].map((x) => set.reduce((sum, k) => sum + (way(k)[x] as number), 0)));
  const best = (sets: number[][]): number[][] =>
    sets
      .map((set) => ({ set, off: off(set) }))
      .sort((a, b) => a.off - b.off)
      .slice(0, MOST_LINE_SETS)
      .map(({ set }) => set);
  const pairs = sorted.flatMap((a) => after(a).map((b) => [a, b]));
  const against = pairs.filter(([a, b]) => level(way(a as number), way(b as number)) < 0);
  const threes = pairs.flatMap(([a, b]) =>
    after(b as number).map((c) => [a as number, b as number, c]),
  );
  return [...sorted.map((k) => [k]), ...best(against), ...best(threes)].map((set) =>
    set.map((k) => lines[k] as Line),
  );
}

const level = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1];

function planOf(gear: SupportGear, frame: FrameModel, state: State, gust: number): SupportPlan {
  const { lined, props, loads, forces } = state;
  const lines = lined.lines.map((line, k): SupportLine => {
    const at = pointAt(frame.hubs, line.hub);
    const { value, from } = largest(loads, (l) => (forces[l] as LinedForces).pulls[k] as number);
    const bears = bearsOf(gear, line.kind);
    return {
      kind: line.kind,
      hub: line.hub,
      anchor: line.kind === 'guy' ? line.anchor : null,
      to: line.to,
      length: norm(subtract(line.to, at)),
      slope: slopeOf(at, line.to),
      weight: forces[0]?.pulls[k] as number,
      most: value,
      from,
      use: bears === null ? null : value / bears,
    };
  });
  return {
    gust,
    lines,
    props: props.map((hub) => {
      const force = (l: number): Vec3 => heldAt(lined, forces[l] as LinedForces, hub);
      const { value, from } = largest(loads, (l) => norm(force(l)));
      return { hub, weight: force(0), most: value, from };
    }),
    mast: mastOf(gear.mast, state),
    assumed: [LINES, ...(chainsOf(lined.lines) === 0 ? [] : [MAST])],
  };
}

const LINES =
  'Guys and chains pull and cannot push, and are drawn hand-tight; each holds the corners at its hub together. They are reckoned up to the gust that stands beside them, for the seams as tight as they are now: in more wind nobody goes near the shell.';
const MAST =
  'The foot of the mast does not move, and neither does its head where guys of its own hold it.';

function largest(
  loads: readonly PanelLoad[],
  of: (load: number) => number,
): { readonly value: number; readonly from: string | null } {
  let [value, from] = [0, loads[0]?.from ?? null];
  loads.forEach((load, l) => {
    const one = of(l);
    if (one > value) [value, from] = [one, load.from];
  });
  return { value, from };
}

function heldAt({ tied }: Lined, { held }: LinedForces, hub: number): Vec3 {
  const sum: [number, number, number] = [0, 0, 0];
  tied.joints.hub.forEach((one, joint) => {
    if (one === hub) for (let x = 0; x < 3; x++) sum[x] += held[3 * joint + x];
  });
  return sum;
}

function mastOf(mast: Mast | null, { lined, forces }: State): SupportPlan['mast'] {
  if (mast === null || chainsOf(lined.lines) === 0) return null;
  let [push, sideways] = [0, 0];
  for (const { pulls } of forces) {
    const sum: [number, number, number] = [0, 0, 0];
    lined.lines.forEach(({ kind, hub, to }, k) => {
      if (kind !== 'chain') return;
      const way = normalize(subtract(pointAt(lined.tied.model.hubs, hub), to));
      for (let x = 0; x < 3; x++) sum[x] += (pulls[k] as number) * way[x];
    });
    push = Math.max(push, -sum[2]);
    sideways = Math.max(sideways, Math.hypot(sum[0], sum[1]));
  }
  return { push, sideways, use: mast.bears === null ? null : push / mast.bears };
}
