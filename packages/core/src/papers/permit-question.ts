// What the permit and insurance pack is drafted from.

import type { AnchorPlan } from '../ground/anchors/plan.ts';
import type { RaisingPlan } from '../raise/plan.ts';
import type { StageWinds } from '../raise/winds.ts';
import type { DesignLoads } from '../stages/site.ts';
import type { MeasuredShell } from './shell-measures.ts';

/** What the pack is drafted from. */
export interface PermitQuestion extends MeasuredShell {
  readonly loads: DesignLoads;
  /** Null where there is none yet. */
  readonly anchors: AnchorPlan | null;
  readonly plan: Pick<RaisingPlan, 'stages' | 'assumed'>;
  readonly winds: readonly StageWinds[];
}
