// What all stages of one shell share: the wind on every place, the weight of every panel, how a
// panel's load goes to its corners, and what is known to be borne.

import type { FrameParts } from '../frame/parts.ts';
import type { Holding } from '../ground/anchors/plan.ts';
import type { Practice } from '../ground/anchors/practice.ts';
import { baseOf } from '../ground/base.ts';
import { numberOf } from '../loads/numbers.ts';
import type { Provenance, Sourced } from '../loads/provenance.ts';
import { formOf, windQuestion } from '../loads/question.ts';
import type { LoadsSettings } from '../loads/schema.ts';
import { selfWeight } from '../loads/weight/weight.ts';
import { type WindModel, windDirections, windModel } from '../loads/wind-cases.ts';
import { cross, dot, norm, pointAt, scale, subtract, type Vec3 } from '../math/vector.ts';
import { type Read, refuse } from '../measure/fault.ts';
import { baseRing } from '../shell/rims.ts';
import { placeCount, type Shell } from '../shell/shell.ts';
import type { SupportGear } from './supports/gear.ts';

/** The anchors that stand at the base hubs. */
export interface StageAnchors {
  /** In words, one of them. */
  readonly words: string;
  readonly holding: Holding;
  /** One practice, or several: the worst of all. */
  readonly practices: readonly Practice[];
  /** How many at a base hub, by its number. */
  readonly count: (baseHub: number) => number;
}

/** What is known to be borne; null is unknown, and told so. */
export interface StageBears {
  readonly anchors: StageAnchors | null;
  /** What a prop with its ties bears, in any direction, N. */
  readonly prop: number | null;
  /** What may be brought into the shell at one held hub, N. */
  readonly hub: number | null;
  /** Parts, for seams and panels. */
  readonly parts: FrameParts | null;
  /** Bolts on a seam by its index; null where nobody knows. */
  readonly seamBolts: (seam: number) => number | null;
}

/** Nothing known. */
export const nothingKnown: StageBears = {
  anchors: null,
  prop: null,
  hub: null,
  parts: null,
  seamBolts: () => null,
};

/** What stages are reckoned from. */
export interface StageBrief {
  readonly loads: LoadsSettings;
  /** Mass of the panel at a place with its flanges and bolts, kg; null where unknown. */
  readonly massOf: (place: number) => Sourced | null;
  readonly bears: StageBears;
  /** Evenly spaced wind directions; 8 where left out. */
  readonly directions?: number;
  /** Guys and a mast that may take the place of props; none where left out. */
  readonly gear?: SupportGear | null;
}

/** What all stages of one shell share. */
export interface StageModel {
  readonly shell: Shell;
  /** Place → its number. */
  readonly numbers: readonly string[];
  /** Hub → the number of the base hub there, 0 where none. */
  readonly baseNumber: Int32Array;
  readonly wind: WindModel;
  /** Side → part of its place's load that its corner takes; those of a place sum to 1. */
  readonly share: Float64Array;
  /** Place → weight of its panel, N; 0 where unknown. */
  readonly weight: Float64Array;
  /** Place → mass, kg, null where unknown. */
  readonly mass: readonly (number | null)[];
  readonly airDensity: Sourced;
  readonly bears: StageBears;
  /** Where the weights come from. */
  readonly weightSources: readonly Provenance[];
  /** Guys and a mast that may take the place of props; none where left out. */
  readonly gear?: SupportGear | null;
}

/** What all stages of a shell share; the shell stands crown up on its base ring, with a place for
 * every panel. A fault where it has no base ring. RangeError for loads that are none. */
export function stageModel(
  shell: Shell,
  numbers: readonly string[],
  brief: StageBrief,
): Read<StageModel> {
  const base = baseOf(shell);
  if (!base.ok) return base;
  const { loads, massOf, bears, directions = 8 } = brief;
  if (numbers.length !== placeCount(shell))
    return refuse('numbers', `${numbers.length}`, `${placeCount(shell)}, one for each place`);
  const baseNumber = new Int32Array(shell.hubs.length / 3);
  for (const { hub, number } of base.value.hubs) baseNumber[hub] = number;
  const form = formOf(loads, shell.radius, baseRing(shell)?.z.mean ?? 0);
  const places = [...Array(placeCount(shell)).keys()];
  const { value, sources } = selfWeight(places, massOf, loads.overrides);
  return {
    ok: true,
    value: {
      shell,
      numbers,
      baseNumber,
      wind: windModel(shell, windQuestion(loads, form, windDirections(directions))),
      share: cornerShares(shell),
      weight: Float64Array.from(places, (p) => -value.loads.force[3 * p + 2]),
      mass: places.map((p) => massOf(p)?.value ?? null),
      airDensity: numberOf('airDensity', loads.overrides),
      bears,
      weightSources: sources,
      gear: brief.gear ?? null,
    },
  };
}

/** A third of each triangle of a panel's fan to each of its corners: force and centre of an even
 * load are kept. */
function cornerShares(shell: Shell): Float64Array {
  const share = new Float64Array(shell.sideHub.length);
  for (let p = 0; p < placeCount(shell); p++) {
    const first = shell.placeStart[p];
    const count = shell.placeStart[p + 1] - first;
    const at = (i: number): Vec3 => pointAt(shell.hubs, shell.sideHub[first + i]);
    const areas = Array.from({ length: count - 2 }, (_, i) =>
      scale(cross(subtract(at(i + 1), at(0)), subtract(at(i + 2), at(0))), 0.5),
    );
    const whole = areas.reduce<Vec3>((s, a) => [s[0] + a[0], s[1] + a[1], s[2] + a[2]], [0, 0, 0]);
    areas.forEach((area, i) => {
      const part = dot(area, whole) / norm(whole) ** 2 / 3;
      for (const corner of [0, i + 1, i + 2]) share[first + corner] += part;
    });
  }
  return share;
}
