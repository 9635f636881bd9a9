// A stage with lines under its weight and under every wind case up to a gust: whether it stands, what
// lines, props and mast then carry, and whether any of them has more than it bears.

import type { FrameModel } from '../../frame/model.ts';
import type { WindCase } from '../../loads/wind-cases.ts';
import { normalize, pointAt, subtract, type Vec3 } from '../../math/vector.ts';
import { onJoints, pressedBy, weightOf } from '../bearing.ts';
import { caseWords } from '../limits.ts';
import type { StageModel } from '../model.ts';
import type { Line, Mast, SupportGear } from './gear.ts';
import { type Lined, linedFrame } from './lined.ts';
import { type LinedForces, OneWayStage } from './one-way.ts';

/** How many of these lines are chains. */
export const chainsOf = (lines: readonly Line[]): number =>
  lines.filter(({ kind }) => kind === 'chain').length;

/** A load on the panels, stride 3, and its words; null: the weight alone. */
export interface PanelLoad {
  readonly from: string | null;
  readonly panels: Float64Array;
}

/** The weight of a frame's panels alone, and with each wind case at a velocity pressure, Pa. */
export function loadsOf(
  model: StageModel,
  frame: FrameModel,
  cases: readonly WindCase[],
  pressure: number,
): PanelLoad[] {
  const placed = frame.panels.map(({ place }) => place);
  const weight = weightOf(model, placed);
  return [
    { from: null, panels: weight },
    ...cases.map((wind) => {
      const pressed = pressedBy(model, placed, wind.coefficient);
      return { from: caseWords(wind), panels: weight.map((x, i) => x + pressure * pressed[i]) };
    }),
  ];
}

/** The forces of a stage with lines under each load. */
export interface LinedState {
  readonly lined: Lined;
  /** Hubs that props hold. */
  readonly props: readonly number[];
  readonly loads: readonly PanelLoad[];
  readonly forces: readonly LinedForces[];
}

/** A frame held by lines, and by props at those of `props` that no line holds, under each load; null
 * where it falls under one of them. */
export function stateOf(
  model: StageModel,
  gear: SupportGear,
  frame: FrameModel,
  props: readonly number[],
  lines: readonly Line[],
  loads: readonly PanelLoad[],
): LinedState | null {
  const found = stateOrFall(model, gear, frame, props, lines, loads);
  return typeof found === 'number' ? null : found;
}

/** The same; where it falls, the index of the first load that makes it. */
export function stateOrFall(
  model: StageModel,
  gear: SupportGear,
  frame: FrameModel,
  props: readonly number[],
  lines: readonly Line[],
  loads: readonly PanelLoad[],
): LinedState | number {
  const left = props.filter((hub) => !lines.some((one) => one.hub === hub));
  const held = left.map((hub) => ({ hub, stiffness: null }));
  const lined = linedFrame({ ...frame, supports: [...frame.supports, ...held] }, lines, gear.mast);
  const stage = new OneWayStage(lined);
  const forces: LinedForces[] = [];
  for (const [l, { panels }] of loads.entries()) {
    const found = stage.under(onJoints(model, lined.tied, panels));
    if (found === null) return l;
    forces.push(found);
  }
  return { lined, props: left, loads, forces };
}

/** Whether a line or the mast would carry more than it bears, where that is known. */
export function isOverdone(gear: SupportGear, state: LinedState): boolean {
  const beyond = state.lined.lines.some(({ kind }, k) => {
    const bears = bearsOf(gear, kind);
    return bears !== null && state.forces.some(({ pulls }) => (pulls[k] as number) > bears);
  });
  return beyond || (mastOf(gear.mast, state)?.use ?? 0) > 1;
}

/** What a line of a sort bears, N; null: unknown. */
export const bearsOf = ({ guyBears, mast }: SupportGear, kind: Line['kind']): number | null =>
  kind === 'guy' ? guyBears : (mast?.chainBears ?? null);

/** Force of a prop or the ground on a hub, N. */
export function heldAt({ tied }: Lined, { held }: LinedForces, hub: number): Vec3 {
  const sum: [number, number, number] = [0, 0, 0];
  tied.joints.hub.forEach((one, joint) => {
    if (one === hub) for (let x = 0; x < 3; x++) sum[x] += held[3 * joint + x];
  });
  return sum;
}

/** The most that presses on the head of the mast and pulls it sideways, N, and the part of what it
 * bears; null where no chain is used. */
export function mastOf(
  mast: Mast | null,
  { lined, forces }: LinedState,
): { readonly push: number; readonly sideways: number; readonly use: number | null } | null {
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
