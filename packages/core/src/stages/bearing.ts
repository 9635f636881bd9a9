// What holds a standing stage: forces of the ground and of props on it under its own weight and,
// per pascal of velocity pressure, under every wind case. Shell's frame, newtons.

import { type StageWind, stageWind, type WindCase } from '../loads/wind-cases.ts';
import type { StageModel } from './model.ts';
import { holdingForces, type Standing, standing, type Tied } from './tied.ts';

/** What goes with every force at a base hub or prop. */
export const SHARED =
  'Forces at base hubs and props are shared as if all sides and snug seams gave alike.';

/** A wind case and what it does per pascal of velocity pressure. */
export interface CaseForces {
  readonly wind: WindCase;
  /** Held hub by its place in `hubs`, stride 3: force on it per pascal, m². */
  readonly perPascal: Float64Array;
  /** Sum of the wind's forces per pascal, m²: along the wind, and up. */
  readonly drag: number;
  readonly lift: number;
}

/** What holds a stage. */
export interface Bearing {
  /** Held hubs that panels reach, ascending. */
  readonly hubs: readonly number[];
  /** Force of what holds each on it under the weight, stride 3, N. */
  readonly weight: Float64Array;
  readonly cases: readonly CaseForces[];
  readonly wind: StageWind;
  /** Weight of the placed panels whose mass is known, N. */
  readonly totalWeight: number;
}

/** What holds a stage that has no free movement, by its ties with all props in place. Throws where
 * something moves freely. */
export function bearing(model: StageModel, tied: Tied): Bearing {
  const stage = standing(tied);
  const placed = tied.model.panels.map(({ place }) => place);
  const held = new Set(tied.model.supports.map(({ hub }) => hub));
  const hubs = [...new Set(tied.joints.hub)].filter((hub) => held.has(hub)).sort((a, b) => a - b);
  const wind = stageWind(model.wind, placed);
  const solve = solver(model, stage, hubs);
  return {
    hubs,
    weight: solve(weightOf(model, placed)),
    cases: wind.cases.map(caseForces(model, placed, solve)),
    wind,
    totalWeight: placed.reduce((sum, p) => sum + (model.weight[p] as number), 0),
  };
}

/** The weight of placed panels, a force on each, stride 3, N. */
export function weightOf({ weight }: StageModel, placed: readonly number[]): Float64Array {
  const down = new Float64Array(3 * placed.length);
  placed.forEach((place, p) => {
    down[3 * p + 2] = -weight[place];
  });
  return down;
}

/** What a wind of 1 Pa does to placed panels by a coefficient for each place (null: 1 everywhere, an
 * even pressure from outside), a force on each, stride 3, N. */
export function pressedBy(
  { wind }: StageModel,
  placed: readonly number[],
  coefficient: Float64Array | null,
): Float64Array {
  const { area } = wind.faces;
  const forces = new Float64Array(3 * placed.length);
  placed.forEach((place, p) => {
    const by = coefficient ? coefficient[place] : 1;
    for (let x = 0; x < 3; x++) forces[3 * p + x] = -by * area[3 * place + x];
  });
  return forces;
}

/** Forces on the joints of a stage, stride 3, from a force on each of its panels, stride 3. */
export function onJoints(
  model: StageModel,
  { joints, model: frame, unknown }: Tied,
  panels: Float64Array,
): Float64Array {
  const { cornerStart, jointOfCorner } = joints;
  const load = new Float64Array(unknown.length);
  frame.panels.forEach(({ place }, p) => {
    const first = model.shell.placeStart[place];
    for (let c = cornerStart[p]; c < cornerStart[p + 1]; c++) {
      const share = model.share[first + c - cornerStart[p]];
      const joint = 3 * jointOfCorner[c];
      for (let x = 0; x < 3; x++) load[joint + x] += share * panels[3 * p + x];
    }
  });
  return load;
}

type Solve = (forces: Float64Array) => Float64Array;

/** Forces at the held hubs under a force on each panel, stride 3. */
function solver(model: StageModel, stage: Standing, hubs: readonly number[]): Solve {
  const { tied } = stage;
  const at = new Map(hubs.map((hub, k) => [hub, k]));
  const slot = Int32Array.from(tied.joints.hub, (hub) => at.get(hub) ?? -1);
  return (panels) => {
    const forces = holdingForces(stage, onJoints(model, tied, panels));
    const found = new Float64Array(3 * hubs.length);
    slot.forEach((k, joint) => {
      if (k < 0) return;
      for (let x = 0; x < 3; x++) found[3 * k + x] += forces[3 * joint + x];
    });
    return found;
  };
}

/** Forces of a case. One that differs from the case before by an even pressure only (another
 * pressure inside) is made from that, and from an even pressure of 1. */
function caseForces(
  model: StageModel,
  placed: readonly number[],
  solve: Solve,
): (wind: WindCase) => CaseForces {
  const { area } = model.wind.faces;
  const pressed = (coefficient: Float64Array | null): Float64Array =>
    pressedBy(model, placed, coefficient);
  let even: Float64Array | null = null;
  let last: CaseForces | null = null;
  return (wind) => {
    const by = last && evenDifference(last.wind.coefficient, wind.coefficient, placed);
    let perPascal: Float64Array;
    if (last !== null && by !== null) {
      even ??= solve(pressed(null));
      const [before, one] = [last.perPascal, even];
      perPascal = before.map((x, i) => x + by * one[i]);
    } else perPascal = solve(pressed(wind.coefficient));
    last = { wind, perPascal, ...sums(area, wind, placed) };
    return last;
  };
}

function evenDifference(
  before: Float64Array,
  now: Float64Array,
  placed: readonly number[],
): number | null {
  const by = now[placed[0] as number] - before[placed[0] as number];
  return placed.every((p) => Math.abs(now[p] - before[p] - by) < 1e-12) ? by : null;
}

function sums(
  area: Float64Array,
  { coefficient, windFrom }: WindCase,
  placed: readonly number[],
): { readonly drag: number; readonly lift: number } {
  const [c, s] = [Math.cos(windFrom), Math.sin(windFrom)];
  let [drag, lift] = [0, 0];
  for (const p of placed) {
    drag += coefficient[p] * (area[3 * p] * c + area[3 * p + 1] * s);
    lift -= coefficient[p] * area[3 * p + 2];
  }
  return { drag, lift };
}
