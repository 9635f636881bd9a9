// All stages of a build, one after another: until a raising plan says otherwise, places in number
// order.

import type { Read } from '../measure/fault.ts';
import { coursesOf } from '../shell/courses.ts';
import { baseRing } from '../shell/rims.ts';
import { placeCount, type Shell } from '../shell/shell.ts';
import { answerWithPatches, type StageAnswer, type StageOptions } from './answer.ts';
import type { StageModel } from './model.ts';
import { PatchMemory } from './patch-memory.ts';
import type { Patch } from './patches.ts';
import type { Stage } from './stage.ts';

/** Sets of props looked at for each stage of a series. */
const SETS_IN_SERIES = 60;

/** The places of a shell in number order, save that one whose panel would float waits until a seam
 * or the ground carries it. */
export function numberOrder(shell: Shell): number[] {
  const { course, position } = coursesOf(shell);
  const waiting = [...Array(placeCount(shell)).keys()].sort(
    (a, b) => course[a] - course[b] || position[a] - position[b],
  );
  const base = new Set<number>(baseRing(shell)?.hubs);
  const placed = new Uint8Array(waiting.length);
  const isCarried = (place: number): boolean => {
    for (let s = shell.placeStart[place]; s < shell.placeStart[place + 1]; s++)
      if (
        base.has(shell.sideHub[s]) ||
        (shell.mate[s] >= 0 && placed[shell.sidePlace[shell.mate[s]]] === 1)
      )
        return true;
    return false;
  };
  const order: number[] = [];
  while (waiting.length > 0) {
    const at = Math.max(0, waiting.findIndex(isCarried));
    const [place] = waiting.splice(at, 1);
    placed[place as number] = 1;
    order.push(place as number);
  }
  return order;
}

/** Stage n (from 1) of a build: the first n places of an order, every seam finger-tight, as
 * they are until the shell has closed. */
export const stageOf = (order: readonly number[], n: number): Stage => ({
  placed: order.slice(0, n),
});

/** The answers for every stage of a build, one by one; seams and panels are left out, and guys and
 * chains but for `supports`. Each stage
 * begins with the patches of the one before. */
export function* stageSeries(
  model: StageModel,
  order: readonly number[] = numberOrder(model.shell),
  options: StageOptions = {},
): Generator<Read<StageAnswer>> {
  let patches: readonly Patch[] = [];
  const memory = new PatchMemory();
  for (let n = 1; n <= order.length; n++) {
    const found = answerWithPatches(model, stageOf(order, n), {
      strength: false,
      supports: false,
      sets: SETS_IN_SERIES,
      patches,
      memory,
      ...options,
    });
    if (found.ok) patches = found.value.patches;
    yield found.ok ? { ok: true, value: found.value.answer } : found;
  }
}
