// How high hands come from ladders, platforms and towers, and how each must stand. Metres, radians.

import {
  commonPractice,
  confirmed,
  fromMemory,
  mergeSources,
  type Sourced,
} from '../../loads/provenance.ts';
import { assertNumber } from '../../math/doors.ts';
import type { Gear } from '../gear.ts';

/** How high above the feet hands still bolt, and how far aside of them. */
export const REACH = {
  up: { value: 2, sources: [commonPractice('hands bolt up to 2.0 m above the feet, for short')] },
  aside: {
    value: 0.5,
    sources: [
      fromMemory('ladder guidance LA455: belt buckle inside the stiles, so an arm’s length aside'),
    ],
  },
} as const satisfies Readonly<Record<string, Sourced>>;

const QUARTER = confirmed(
  'OSHA 29 CFR 1926.1053(b)(5)(i): foot out a quarter of the working length',
);
const TOP_RUNGS = confirmed('ladder guidance: not on the top three rungs of a leaning ladder');
const TOP_STEPS = fromMemory(
  'LA455: not on the top three steps of a stepladder without a handrail',
);
const RUNG = commonPractice('rungs 0.28 m apart');
/** Rungs or steps left above the feet, and the way between them. */
const LEFT_FREE = 3;
const RUNG_STEP = 0.28;
/** How far a stepladder's climbing side leans, from memory. */
const STEP_LEAN = (75 * Math.PI) / 180;

/** How a leaning ladder stands. */
export interface LadderSet {
  /** Angle to the ground, radians: arccos ¼ = 75.5°. */
  readonly angle: number;
  /** Foot out from below the support, m. */
  readonly foot: number;
  /** Working length along the rails to the support, m. */
  readonly length: number;
}

/** A leaning ladder set by the rule of a quarter: for a support at a height, m. RangeError unless the
 * height is over 0. */
export function ladderSet(support: number): LadderSet & Pick<Sourced, 'sources'> {
  if (!(support > 0 && support < Infinity))
    throw new RangeError(`support is ${support} m, expected a height over 0`);
  const angle = Math.acos(1 / 4);
  const length = support / Math.sin(angle);
  return { angle, length, foot: length / 4, sources: [QUARTER] };
}

/** Most height of a tower's boards for each metre of its smaller base. */
export const TOWER_RATIO = {
  outdoors: 3,
  indoors: 3.5,
} as const;
const RATIO = confirmed(
  'mobile tower guidance: height no more than 3 times the smaller base outdoors, 3.5 indoors',
);

/** How high the boards of a tower may be, m: its own, or what its smaller base bears. */
export function towerHeight(
  { height, base }: Pick<Gear['towers'][number], 'height' | 'base'>,
  where: keyof typeof TOWER_RATIO = 'outdoors',
): Sourced {
  assertNumber('height', height, 0);
  return {
    value: Math.min(height, TOWER_RATIO[where] * Math.min(...base)),
    sources: [RATIO],
  };
}

/** A way to get hands to a height. */
export interface Foothold {
  readonly name: string;
  readonly kind: 'ground' | 'platform' | 'self-standing ladder' | 'leaning ladder' | 'tower';
  /** Of the feet above the ground, m. */
  readonly feet: number;
  /** Highest that hands bolt, m above the ground. */
  readonly hands: number;
  /** Why it is lower than the gear could be, or what it must have; empty where nothing. */
  readonly note: string;
  readonly sources: Sourced['sources'];
}

/** Everything owned that people stand on, with the ground itself, the lowest first. A leaning ladder
 * needs something that bears it, which a half-built shell is not. */
export function footholds(gear: Gear): Foothold[] {
  const at = (
    name: string,
    kind: Foothold['kind'],
    feet: number,
    note: string,
    sources: Sourced['sources'],
  ): Foothold => ({
    name,
    kind,
    feet,
    hands: feet + REACH.up.value,
    note,
    sources: mergeSources(REACH.up.sources, sources),
  });
  const ladders = gear.ladders.map(({ name, form, length }) => {
    const leaning = form === 'leaning';
    const along = Math.max(0, length - LEFT_FREE * RUNG_STEP);
    const lean = leaning ? Math.acos(1 / 4) : STEP_LEAN;
    return at(
      name,
      leaning ? 'leaning ladder' : 'self-standing ladder',
      along * Math.sin(lean),
      leaning ? 'only against what bears it and is tied, never against a half-built shell' : '',
      leaning ? [QUARTER, TOP_RUNGS, RUNG] : [TOP_STEPS, RUNG],
    );
  });
  const towers = gear.towers.map((tower) => {
    const { value, sources } = towerHeight(tower);
    const cut = value < tower.height - 1e-9;
    const base = Math.min(...tower.base);
    return at(
      tower.name,
      'tower',
      value,
      cut
        ? `boards at ${value.toFixed(2)} m, not ${tower.height.toFixed(2)} m: 3 times the base of ${base.toFixed(2)} m; outriggers to ${(tower.height / 3).toFixed(2)} m would do`
        : '',
      sources,
    );
  });
  return [
    at('the ground', 'ground', 0, '', []),
    ...gear.platforms.map(({ name, height }) => at(name, 'platform', height, '', [])),
    ...ladders,
    ...towers,
  ].sort((a, b) => a.hands - b.hands || a.name.localeCompare(b.name, 'en'));
}

/** How far inside the shell's skin the middle of a seam at a height is from the nearest edge of boards
 * that fit under the shell, m, level: 0 where they come right under it. `radius` and `height`: of the
 * sphere and above its centre; `boards` above its centre; `half`: half the boards' smaller side; the
 * guard rail 1 m over the boards must stay inside. */
export function gapToWall(radius: number, height: number, boards: number, half: number): number {
  const across = (z: number): number => Math.sqrt(Math.max(0, radius ** 2 - z ** 2));
  const wall = across(height);
  const nearest = Math.min(across(boards), across(boards + GUARD));
  return Math.max(0, wall - Math.max(nearest, half));
}

/** Height of a guard rail over the boards, m. */
const GUARD = 1;
