// Way in and way out of a plan: what becomes of each thing inside, how high hands and hooks must come at
// each stage against what is owned, and until which stage each thing to stand on is needed.

import type { InsideAnswer, InsideOptions } from '../inside/leave.ts';
import { thingsInside } from '../inside/leave.ts';
import { type HeightsOfStage, heightsByStage, neededUntil } from '../lifts/heights-by-stage.ts';
import { piecesOf, type RaisedShell } from './raised.ts';

/** The answer. */
export interface WayAnswer {
  readonly heights: readonly HeightsOfStage[];
  /** What is owned to stand on, with the last stage in which hands reach from it; null: in none. */
  readonly standing: readonly { readonly name: string; readonly until: number | null }[];
  readonly inside: InsideAnswer;
}

/** Heights by stage alone: told at once. */
export const heightsOf = (raised: RaisedShell): HeightsOfStage[] =>
  heightsByStage(raised.plan, piecesOf(raised), raised.gear);

/** Way in and way out. The search for ways takes seconds a thing: `onProgress` is told, `shouldStop` ends
 * it with what was found. */
export function wayAnswer(raised: RaisedShell, options: InsideOptions = {}): WayAnswer {
  const { shell, plan, gear, flange } = raised;
  const heights = heightsOf(raised);
  const owned = [...gear.platforms, ...gear.ladders, ...gear.towers].map(({ name }) => name);
  return {
    heights,
    standing: [...new Set(owned)].map((name) => ({ name, until: neededUntil(heights, name) })),
    inside: thingsInside({ shell, plan, gear, flange, heights }, options),
  };
}
