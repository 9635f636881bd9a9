// What all papers of one standing shell are made from, as plain data that can be copied between threads.

import type { CrewSettings } from '../../crew/schema.ts';
import type { FitoutSettings } from '../../fitout/schema.ts';
import type { Kind } from '../../pile/kind.ts';
import type { Gear } from '../../raise/gear.ts';
import type { RaisingPlan } from '../../raise/plan.ts';
import type { RaisingSettings } from '../../raise/schema.ts';
import type { ShellFacts } from '../../stages/shell-facts.ts';
import type { HardwareLot } from '../../takeoff/hardware.ts';
import type { LengthsShown } from '../length-text.ts';
import type { Paper } from '../page.ts';
import type { StorageSettings } from '../storage-section.ts';

/** A standing shell with all that its papers say. What is undefined nobody said. */
export interface PaperQuestion extends ShellFacts {
  /** Of the project, as title blocks bear it. */
  readonly title: string;
  /** The day that the sheets bear: as 2026-05-01 where it goes into a PDF. */
  readonly date: string;
  /** What the sheets take for granted. */
  readonly assumes: string;
  /** What tells this shell from others of the same pile, a sentence; empty: nothing. */
  readonly which: string;
  /** With sides as the whole net fits them. */
  readonly kinds: readonly Kind[];
  /** True where the numbers are those painted on the panels. */
  readonly painted: boolean;
  readonly paper: Paper;
  readonly lengths: LengthsShown;
  readonly hardware: readonly HardwareLot[];
  readonly gear: Gear | undefined;
  readonly crew: CrewSettings | undefined;
  readonly raising: RaisingSettings | undefined;
  /** The order of work, where it is found already. */
  readonly plan: RaisingPlan | null;
  readonly fitout: FitoutSettings | undefined;
  readonly storage: StorageSettings | undefined;
  /** Where the wind mostly comes from, radians from the datum; null: not told. */
  readonly windFrom: number | null;
}
