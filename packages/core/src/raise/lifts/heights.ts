// How high hands, hooks and heads must come at each stage, against what is owned: told before anyone
// builds. Metres above the ground.

import type { Gear } from '../gear.ts';
import { hookNeeded, type Lift } from './lift.ts';
import { type Foothold, footholds, gapToWall, REACH } from './reach.ts';

/** Heights of one stage. */
export interface StageHeights {
  /** Highest hub that hands must bolt. */
  readonly hands: number;
  /** What is owned to get there, the lowest that does; null where nothing does. */
  readonly standing: Foothold | null;
  /** Boards that would do. */
  readonly boards: number;
  /** Hook or pole head that the pieces that no hands lift need; null where hands lift all. */
  readonly hook: number | null;
  /** The highest hook or head owned; null where there is none. */
  readonly hookOwned: number | null;
  /** How far inside the skin the nearest boards of a tower end, level, m; null where no tower is used. */
  readonly gap: number | null;
  /** What is missing, a sentence each. */
  readonly short: readonly string[];
}

/** Heights of a stage from its lifts. `radius` of the sphere and `ground` height in its frame, m. */
export function stageHeights(
  lifts: readonly Lift[],
  gear: Gear,
  sphere: { readonly radius: number; readonly ground: number },
): StageHeights {
  const hands = Math.max(0, ...lifts.map(({ piece }) => piece.high));
  const standing =
    footholds(gear).find((one) => one.kind !== 'leaning ladder' && one.hands >= hands - 1e-9) ??
    null;
  const heavy = lifts.filter(({ ways }) => !ways.some((way) => way.by === 'hands' && way.can));
  const hook = heavy.length === 0 ? null : Math.max(...heavy.map(({ piece }) => hookNeeded(piece)));
  const owned = [
    ...gear.lifts.map(({ hookHeight }) => hookHeight),
    ...(gear.ginPole === null ? [] : [gear.ginPole.height]),
  ];
  const hookOwned = owned.length === 0 ? null : Math.max(...owned);
  const short: string[] = [];
  const boards = Math.max(0, hands - REACH.up.value);
  if (standing === null)
    short.push(
      `hands must come to ${hands.toFixed(2)} m: boards ${boards.toFixed(2)} m up are needed`,
    );
  const gap = standing?.kind === 'tower' ? towerGap(standing, gear, sphere, hands) : null;
  if (gap !== null && gap > REACH.aside.value)
    short.push(
      `the boards of ${standing?.name} end ${gap.toFixed(2)} m inside the skin, ${REACH.aside.value} m can be reached`,
    );
  return { hands, standing, boards, hook, hookOwned, gap, short };
}

function towerGap(
  { name, feet }: Foothold,
  gear: Gear,
  { radius, ground }: { readonly radius: number; readonly ground: number },
  hands: number,
): number {
  const tower = gear.towers.find((one) => one.name === name);
  const half = Math.min(...(tower?.base ?? [0, 0])) / 2;
  return gapToWall(radius, hands + ground, feet + ground, half);
}
