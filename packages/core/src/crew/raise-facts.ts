// What the weekend, the crew book and the record ask of a raising plan: the plan on its site with the winds
// of its stages and the people who come, out of what is known of the shell.

import { defaultLoads } from '../loads/schema.ts';
import { placeMasses } from '../loads/weight/weight.ts';
import { type Gear, noGear } from '../raise/gear.ts';
import { MOST_TEAM } from '../raise/lifts/team.ts';
import type { RaisingPlan } from '../raise/plan.ts';
import type { StageWinds } from '../raise/winds.ts';
import { type ShellFacts, seamFacts } from '../stages/shell-facts.ts';
import type { Site } from '../stages/site.ts';
import type { RaiseFacts } from './raise-task.ts';
import { type CrewSettings, defaultCrew } from './schema.ts';

/** What is known besides the shell. */
export interface CrewedFacts extends ShellFacts {
  readonly gear: Gear | undefined;
  readonly crew: CrewSettings | undefined;
}

/** A plan as the weekend is asked about it. */
export function raiseFacts(
  facts: CrewedFacts,
  site: Site,
  plan: RaisingPlan,
  winds: readonly StageWinds[],
): RaiseFacts {
  const { shell, numbers, kinds, loads = defaultLoads, gear = noGear, crew = defaultCrew } = facts;
  const { anchors } = site;
  return {
    ...{ shell, numbers, plan, gear, crew, winds },
    holes: seamFacts(facts).bolts,
    massOf: placeMasses(shell, kinds, loads.panelMass),
    anchors: anchors.ok ? anchors.value.hubs.reduce((sum, { count }) => sum + count, 0) : null,
  };
}

/** People who can be at one piece on the day with the fewest, besides two who bolt and one who calls; as
 * many as can work at one piece where no day is planned. */
export function handsAtPiece(crew: CrewSettings | undefined = defaultCrew): number {
  const planned = crew.dates.map((date) => {
    const there = crew.people.filter(({ shifts }) => shifts.some((one) => one.date === date));
    const sure = there.filter((one) => one.sure).length;
    return sure + Math.round((1 - crew.noShow) * (there.length - sure));
  });
  return planned.length === 0 ? MOST_TEAM : Math.max(1, Math.min(...planned) - 3);
}
