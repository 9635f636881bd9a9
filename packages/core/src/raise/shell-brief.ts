// What the search for an order of work is told of a standing shell: what the lead has fixed, what may be
// made up or lifted whole with the gear and the hands there are, the site's own supports.

import { defaultLoads } from '../loads/schema.ts';
import { placeMasses } from '../loads/weight/weight.ts';
import type { Read } from '../measure/fault.ts';
import { type ShellFacts, seamFacts } from '../stages/shell-facts.ts';
import type { Site } from '../stages/site.ts';
import { type Gear, noGear } from './gear.ts';
import { type Lift, liftOf } from './lifts/lift.ts';
import { pieceModel, pieceOf } from './lifts/piece.ts';
import { leadFixed } from './order/lead.ts';
import { plainBrief, type RaisingBrief } from './order/raise.ts';
import { defaultRaising, type RaisingSettings } from './schema.ts';

/** A standing shell to be raised. */
export interface RaiseAsked extends ShellFacts {
  readonly gear: Gear | undefined;
  /** What the lead has fixed, as the project keeps it. */
  readonly raising: RaisingSettings | undefined;
  /** People that can be at one piece; as many as can work at one where left out. */
  readonly hands?: number;
}

/** The brief; faults where what the lead has fixed speaks of places that don't stand. `site`: null where
 * it can't be reckoned, then nothing of the site holds a stage. */
export function raisingBrief(asked: RaiseAsked, site: Site | null): Read<RaisingBrief> {
  const { shell, numbers, leftOut, gear = noGear } = asked;
  const lead = leadFixed(asked.raising ?? defaultRaising, shell, numbers);
  if (!lead.ok) return lead;
  const plain = plainBrief(shell);
  const lift = pieceLifter(asked);
  return {
    ok: true,
    value: {
      ...plain,
      ...lead.value,
      openings: leftOut,
      ...(site && { model: site.stages }),
      holes: seamFacts(asked).bolts,
      makeUp: { mayLift: (places) => lift(places).best !== null, highest: plain.rates.reach },
      mayLiftCap:
        gear.lifts.length === 0 && gear.ginPole === null
          ? null
          : (places) => lift(places).ways.some(({ by, can }) => by !== 'hands' && can),
    },
  };
}

/** How pieces of a shell are lifted with the gear there is, on a day without wind. */
export function pieceLifter({
  shell,
  numbers,
  kinds,
  loads = defaultLoads,
  parts,
  gear = noGear,
  hands,
}: Omit<RaiseAsked, 'raising'>): (places: readonly number[]) => Lift {
  const masses = placeMasses(shell, kinds, loads.panelMass);
  const model = pieceModel(shell, numbers, masses, parts?.flange.depth ?? 0);
  const day = { gust: null, ...(hands !== undefined && { hands }) };
  return (places) => liftOf(pieceOf(model, places), gear, day);
}
