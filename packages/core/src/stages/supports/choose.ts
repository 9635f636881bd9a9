// Which hubs guys and chains can hold in the place of props. A prop goes only where lines that pull
// and cannot push keep the stage standing under its weight and, to a gust, under every wind case.
// Lines in balance with two loads are so with all between them (the loads that they can balance are a
// convex cone), so every gust below that one is covered too.

import type { FrameModel } from '../../frame/model.ts';
import { norm, pointAt, subtract, type Vec3 } from '../../math/vector.ts';
import type { CaseForces } from '../bearing.ts';
import { pressureOf } from '../limits.ts';
import type { StageModel } from '../model.ts';
import { HANDLING_LIMITS, type HandlingLimit } from '../stop-work.ts';
import { type Line, linesAt, type SupportGear, slopeOf } from './gear.ts';
import type { LinedForces } from './one-way.ts';
import { choices } from './sets.ts';
import {
  bearsOf,
  chainsOf,
  heldAt,
  isOverdone,
  type LinedState,
  loadsOf,
  mastOf,
  type PanelLoad,
  stateOf,
} from './state.ts';

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
    throw new RangeError(`the gust for guys is ${gust} m/s, expected 0 to 60 m/s`);
  const hubs = props.map(({ hub }) => hub);
  const loads = loadsOf(
    model,
    frame,
    cases.map(({ wind }) => wind),
    pressureOf(gust, model.airDensity.value),
  );
  let lines: readonly Line[] = [];
  const tryWith = (more: readonly Line[]): boolean => {
    const all = [...lines, ...more];
    if (chainsOf(all) > (gear.mast?.chains ?? 0)) return false;
    const done = stateOf(model, gear, frame, hubs, all, loads);
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
  const found = stateOf(model, gear, frame, hubs, lines, loads);
  if (found === null) throw new Error('a stage stands with all its props');
  return planOf(gear, frame, found, gust);
}

function planOf(
  gear: SupportGear,
  frame: FrameModel,
  state: LinedState,
  gust: number,
): SupportPlan {
  const { lined, props, loads, forces } = state;
  const lines = lined.lines.map((_, k) => lineCarries(gear, frame.hubs, state, k));
  return {
    gust,
    lines,
    props: props.map((hub) => {
      const force = (l: number): Vec3 => heldAt(lined, forces[l] as LinedForces, hub);
      const { value, from } = largest(loads, (l) => norm(force(l)));
      return { hub, weight: force(0), most: value, from };
    }),
    mast: mastOf(gear.mast, state),
    assumed: linesAssumed(lined.lines),
  };
}

/** What line `k` of a state carries. */
export function lineCarries(
  gear: SupportGear,
  hubs: Float64Array,
  { lined, loads, forces }: LinedState,
  k: number,
): SupportLine {
  const line = lined.lines[k] as Line;
  const at = pointAt(hubs, line.hub);
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
}

/** What is assumed of lines, a sentence each. */
export const linesAssumed = (lines: readonly Line[]): string[] => [
  LINES,
  ...(chainsOf(lines) === 0 ? [] : [MAST]),
];

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
