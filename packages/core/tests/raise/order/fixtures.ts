// Shells to be raised, and what the stages say of a plan: every state asked whole.

import type { Random } from '../../../src/math/random.ts';
import { stageAfterLift } from '../../../src/raise/order/check-order.ts';
import { plainBrief, type RaisingBrief } from '../../../src/raise/order/raise.ts';
import { completeCourses, type OrderSite, orderSite } from '../../../src/raise/order/site.ts';
import type { RaisingPlan } from '../../../src/raise/plan.ts';
import type { Shell } from '../../../src/shell/shell.ts';
import { howItStands } from '../../../src/stages/how-it-stands.ts';
import { stageFaults } from '../../../src/stages/stage.ts';
import { cutBall } from '../../stages/fixtures.ts';

/** A brief in which groups of up to six are made up on the ground, on a ball of radius 1. */
export const madeUpBrief = (shell: Shell): RaisingBrief => ({
  ...plainBrief(shell),
  makeUp: { mayLift: (places) => places.length <= 6, highest: 0.7 },
});

/** What the stages find wrong in a plan: movements left after a lift, and faults of a state. */
export function unstable(site: OrderSite, plan: RaisingPlan): string[] {
  const wrong: string[] = [];
  const groupOf = new Map<number, number>();
  let lifts = 0;
  for (const stage of plan.stages)
    for (const { places, props } of stage.lifts) {
      const complete = completeCourses(site, (p) => groupOf.has(p));
      for (const p of places) groupOf.set(p, lifts);
      lifts++;
      const state = stageAfterLift(site, groupOf, props, complete);
      for (const fault of stageFaults(site.shell, site.numbers, state))
        wrong.push(`lift ${lifts}: ${fault.path} ${fault.found}`);
      const { movements } = howItStands(site.shell, state, { sets: 1 });
      if (movements > 0) wrong.push(`lift ${lifts}: ${movements} movements`);
    }
  return wrong;
}

/** A brief drawn by a seed: a net of 2 to 4 steps, a cut, openings, groups, a way out, a lift. */
export function drawnBrief(random: Random): RaisingBrief {
  const b = 2 + random.below(3);
  const whole = 20 * b * b;
  const shell = cutBall(b, Math.round(whole * (0.3 + 0.4 * random.uniform())));
  const site = orderSite(shell);
  const door = random.uniform() < 0.6 ? openingFrom(site, random) : [];
  const free = new Set(door);
  const groups = random.shuffle([...site.around.keys()]).flatMap((hub) => {
    const places = site.around[hub] as readonly number[];
    if (places.length < 5 || site.base[hub] || places.some((p) => free.has(p))) return [];
    if (random.uniform() < 0.7) return [];
    for (const p of places) free.add(p);
    return [{ places, made: 'group' as const }];
  });
  return {
    ...plainBrief(shell),
    openings: door,
    groups: groups.slice(0, 4),
    makeUp: random.uniform() < 0.5 ? madeUpBrief(shell).makeUp : null,
    mayLiftCap: random.uniform() < 0.3 ? (places) => places.length <= 40 : null,
  };
}

/** A place of the first course and up to two neighbours. */
function openingFrom(site: OrderSite, random: Random): number[] {
  const first = site.ofCourse[0] as readonly number[];
  const places = [first[random.below(first.length)] as number];
  for (let more = random.below(3); more > 0; more--) {
    const next = places
      .flatMap((p) => site.across[p] ?? [])
      .map(({ place }) => place)
      .filter((p) => !places.includes(p));
    places.push(next[random.below(next.length)] as number);
  }
  return places;
}
