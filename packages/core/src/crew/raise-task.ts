// A task of raising a shell, and what such tasks are made from.

import type { Sourced } from '../loads/provenance.ts';
import type { Gear } from '../raise/gear.ts';
import type { RaisingPlan } from '../raise/plan.ts';
import type { StageWinds } from '../raise/winds.ts';
import type { Shell } from '../shell/shell.ts';
import type { WorkAmount } from './durations.ts';
import type { WorkObserved } from './rates.ts';
import type { CrewSettings } from './schema.ts';
import type { Task } from './task.ts';

/** What sort of work a task is. */
export type RaiseTaskSort =
  | 'stake out'
  | 'anchors'
  | 'make up'
  | 'lift'
  | 'bolts'
  | 'tighten'
  | 'plates'
  | 'stop point';

/** A task of raising a shell. */
export interface RaiseTask extends Task {
  readonly sort: RaiseTaskSort;
  /** Number of its stage; 0: before the first. */
  readonly stage: number;
  /** Its lift in the stage, from 0; null where it is none. */
  readonly lift: number | null;
  readonly places: readonly number[];
  /** Work that it is made of; null: it only marks a point. */
  readonly amount: WorkAmount | null;
}

/** What tasks are made from. */
export interface RaiseFacts {
  /** The standing shell, and the numbers of its places. */
  readonly shell: Shell;
  readonly numbers: readonly string[];
  readonly plan: RaisingPlan;
  /** Holes of a seam by its index; null where nobody knows. */
  readonly holes: (seam: number) => number | null;
  /** Mass of the panel at a place; null where nobody knows. */
  readonly massOf: (place: number) => Sourced | null;
  readonly gear: Gear;
  readonly crew: CrewSettings;
  /** What wind stages bear; of a stage that is left out nothing is known. */
  readonly winds: readonly StageWinds[];
  /** Anchors of the anchor plan; null: one at each base hub. */
  readonly anchors: number | null;
  /** Work of this crew as its record shows it, by which its rates are corrected; none where left out. */
  readonly observed?: readonly WorkObserved[];
}
