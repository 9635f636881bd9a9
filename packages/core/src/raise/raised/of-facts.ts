// A plan on its site with the facts that all of it is asked by, out of what is known of the shell.

import { defaultLoads } from '../../loads/schema.ts';
import { placeMasses } from '../../loads/weight/weight.ts';
import type { ShellFacts } from '../../stages/shell-facts.ts';
import type { Site } from '../../stages/site.ts';
import type { HardwareLot } from '../../takeoff/hardware.ts';
import { defaultTakeoff } from '../../takeoff/schema.ts';
import { type Gear, noGear } from '../gear.ts';
import type { RaisingPlan } from '../plan.ts';
import type { RaisedShell } from './raised.ts';

/** What is known besides the shell. */
export interface RaisedFacts extends ShellFacts {
  readonly gear: Gear | undefined;
  readonly hardware: readonly HardwareLot[];
}

/** The plan with those facts. */
export function raisedShell(facts: RaisedFacts, site: Site, plan: RaisingPlan): RaisedShell {
  const { shell, numbers, kinds, hardware, gear = noGear, loads = defaultLoads } = facts;
  return {
    ...{ shell, numbers, plan, kinds, hardware, gear, loads },
    takeoff: facts.takeoff ?? defaultTakeoff,
    holes: facts.holes ?? [],
    massOf: placeMasses(shell, kinds, loads.panelMass),
    flange: facts.parts?.flange.depth ?? null,
    model: site.stages,
  };
}
