// The lift card: what is said, by whom, before a piece leaves the ground and before its last metre. Plain
// data for screen and paper.

import {
  commonPractice,
  flagsOf,
  fromMemory,
  mergeSources,
  type Provenance,
  type Sourced,
} from '../../loads/provenance.ts';
import type { Gear } from '../gear.ts';
import type { Lift, LiftWay } from './lift.ts';
import { NIOSH_LIMITS } from './niosh.ts';

/** A part that somebody plays. */
export interface LiftRole {
  readonly role: string;
  readonly people: number;
  readonly does: string;
}

/** A lift card. */
export interface LiftCard {
  readonly title: string;
  /** Numbers of its places. */
  readonly numbers: readonly string[];
  /** kg; null where unknown. */
  readonly mass: number | null;
  /** m. */
  readonly size: readonly [number, number, number];
  readonly way: LiftWay;
  readonly roles: readonly LiftRole[];
  /** Words, each with one meaning; nobody else calls, but anybody calls STOP. */
  readonly words: readonly { readonly say: string; readonly means: string }[];
  /** In order; the poll stands before the last metre. */
  readonly steps: readonly string[];
  /** Gust over which nothing leaves the ground, m/s. */
  readonly gustLimit: Sourced;
  readonly cautions: readonly string[];
  readonly flags: readonly Provenance[];
}

const ROLES: Provenance = commonPractice('roles and words of a lift, one who calls');
const CARD_HEIGHT: Provenance = commonPractice('height above which a lift gets a card');
const BELOW: Provenance = fromMemory('nobody below a load, nor within its fall range');

/** The words of every lift. */
export const LIFT_WORDS: LiftCard['words'] = [
  { say: 'UP', means: 'raise, slowly, together' },
  { say: 'DOWN', means: 'lower, slowly, together' },
  { say: 'HOLD', means: 'stay as you are, keep the load' },
  { say: 'TIE OFF', means: 'make the line fast, then say TIED' },
  { say: 'BOLTS IN', means: 'the bolts that must hold are in, said by whoever put them in' },
  { say: 'LET GO', means: 'hands off: only after BOLTS IN' },
  { say: 'STOP', means: 'everything stops at once: anybody may say it' },
];

/** Whether a lift gets a card: more than one person, a machine, no way at all, an unknown mass, or an end
 * above the height that the gear sets. */
export const needsCard = ({ piece, best }: Lift, gear: Pick<Gear, 'cardAbove'>): boolean =>
  best === null ||
  best.by !== 'hands' ||
  (best.people ?? 2) > 1 ||
  piece.mass === null ||
  piece.high > gear.cardAbove;

/** The card of a lift; null where it needs none, or where no way does: `leastChange` says what helps. */
export function liftCard(lift: Lift, gear: Pick<Gear, 'cardAbove'>): LiftCard | null {
  const { piece, best } = lift;
  if (best === null || !needsCard(lift, gear)) return null;
  return {
    title: `${piece.places.length === 1 ? 'Panel' : `${piece.places.length} panels`} ${piece.numbers.join(', ')}`,
    numbers: piece.numbers,
    mass: piece.mass,
    size: piece.size,
    way: best,
    roles: rolesOf(best, piece.high > gear.cardAbove),
    words: LIFT_WORDS,
    steps: stepsOf(best),
    gustLimit: best.gustLimit,
    cautions: cautionsOf(best),
    flags: flagsOf({
      sources: mergeSources(lift.flags, best.gustLimit.sources, [ROLES, CARD_HEIGHT, BELOW]),
    }),
  };
}

function rolesOf(way: LiftWay, isHigh: boolean): LiftRole[] {
  const roles: LiftRole[] = [
    { role: 'caller', people: 1, does: 'says every word, sees everybody, lifts nothing' },
  ];
  if (way.by === 'hands')
    roles.push({ role: 'lifters', people: way.people ?? 2, does: 'lift and hold until LET GO' });
  else
    roles.push(
      {
        role: way.by === 'lift' ? 'driver' : 'haulers',
        people: way.by === 'lift' ? 1 : 2,
        does:
          way.by === 'lift'
            ? 'moves on the caller’s word only'
            : 'haul from the snatch block, clear of the fall',
      },
      {
        role: 'tag lines',
        people: way.tagLines,
        does: 'keep it from turning, never tie a line to themselves',
      },
    );
  roles.push({
    role: 'bolters',
    people: 2,
    does: 'one inside, one outside: drift, bolt, say BOLTS IN',
  });
  if (isHigh || way.by !== 'hands')
    roles.push({
      role: 'look-out',
      people: 1,
      does: 'keeps everybody out of the fall range, watches the gusts',
    });
  return roles;
}

function stepsOf(way: LiftWay): string[] {
  const hoist = way.by !== 'hands';
  return [
    'Caller reads this card aloud; everybody says back what they do.',
    'Path, footing and fall range are clear; gust is under the limit.',
    ...(hoist ? ['Raise a hand’s breadth, HOLD: does it hang level, do sling and stays sit?'] : []),
    'UP to one metre short of the place, HOLD.',
    'Poll: the caller asks each by name "ready?"; one who does not answer is no.',
    'Last metre on the caller’s word. Drift first, fingers out of holes and seams.',
    'BOLTS IN for every seam that must hold, then LET GO.',
  ];
}

function cautionsOf(way: LiftWay): string[] {
  return [
    'An estimate and no design approval: local rules and a rigger decide.',
    'Nobody stands or walks below the piece, nor where it would fall.',
    ...(way.by === 'hands' ? [NIOSH_LIMITS] : []),
    ...(way.headLoad === null
      ? []
      : [
          `Hauled by hand the pole’s head bears twice the load: ${(way.headLoad / 1000).toFixed(2)} kN, before tag lines and jerks.`,
        ]),
    ...(way.index !== null && way.index > 1
      ? [
          `Lifting index ${Number.isFinite(way.index) ? way.index.toFixed(1) : 'beyond the equation'}: more than it recommends. Take turns, one more pair of hands, or stand higher.`,
        ]
      : []),
  ];
}
