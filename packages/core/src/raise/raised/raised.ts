// A raising plan with all that is asked of it besides its order: where the stacks lie, how each piece is
// lifted, what gets in and out, bags and kit, what may wait. Screens and commands put these facts together
// once, and the functions beside this file answer from them. SI; places, seams and stages by index and
// number as in the plan.

import { numberOf } from '../../loads/numbers.ts';
import type { Provenance, Sourced } from '../../loads/provenance.ts';
import { settingsPressure } from '../../loads/question.ts';
import { gustOfPressure } from '../../loads/reported-wind/gust.ts';
import type { LoadsSettings } from '../../loads/schema.ts';
import type { Kind } from '../../pile/kind.ts';
import type { Shell } from '../../shell/shell.ts';
import type { StageModel } from '../../stages/model.ts';
import type { HardwareLot } from '../../takeoff/hardware.ts';
import type { TakeoffSettings } from '../../takeoff/schema.ts';
import { type HoleCounts, type SeamBolts, seamBolts } from '../../takeoff/seam-bolts.ts';
import type { Gear } from '../gear.ts';
import { type PieceModel, pieceModel } from '../lifts/piece.ts';
import type { RaisingPlan } from '../plan.ts';

/** A plan and the facts that it is asked by. */
export interface RaisedShell {
  /** The standing shell with a place for every panel, and the numbers of its places. */
  readonly shell: Shell;
  readonly numbers: readonly string[];
  readonly plan: RaisingPlan;
  /** Kinds with their sides as the net fits them; holes counted on sides; hardware in hand. */
  readonly kinds: readonly Kind[];
  readonly takeoff: TakeoffSettings;
  readonly holes: HoleCounts;
  readonly hardware: readonly HardwareLot[];
  readonly gear: Gear;
  readonly loads: LoadsSettings;
  /** Mass of the panel at a place, kg; null where nobody knows. */
  readonly massOf: (place: number) => Sourced | null;
  /** From the skin inwards to the flanges' edge, m; null: nobody knows. */
  readonly flange: number | null;
  /** What every stage is reckoned from: the site's. */
  readonly model: StageModel;
}

/** What every answer of this folder must carry beside its numbers. */
export const RAISED_CAUTION =
  'An estimate and no design approval: local codes and a licensed engineer or rigger decide.';

/** The pieces of a raised shell. */
export const piecesOf = ({ shell, numbers, massOf, flange }: RaisedShell): PieceModel =>
  pieceModel(shell, numbers, massOf, flange ?? 0);

/** Seam → what it is bolted with. */
export const seamsOf = ({
  shell,
  kinds,
  takeoff,
  holes,
}: Pick<RaisedShell, 'shell' | 'kinds' | 'takeoff' | 'holes'>): SeamBolts[] =>
  seamBolts(shell, kinds, takeoff, holes);

/** The design gust at the crown, m/s, as the site's loads give it; null where no design wind is given. */
export function designGust({ loads, model }: Pick<RaisedShell, 'loads' | 'model'>): Sourced | null {
  const pressure = settingsPressure(loads, model.wind.question.form);
  if (pressure === null) return null;
  const density = numberOf('airDensity', loads.overrides);
  const sources: readonly Provenance[] = pressure.sources;
  return { value: gustOfPressure(pressure.value, density.value), sources };
}
