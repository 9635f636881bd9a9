// Joined groups as evidence: a group is a run of kinds around one hub, so the right net has a hub
// where that run occurs.

import { lowestTurn, turned } from '../math/cyclic.ts';
import type { JoinedGroup } from '../pile/kind.ts';
import type { Shell } from '../shell/shell.ts';
import { starsOf } from '../shell/stars.ts';
import type { LooseGroup } from './shape.ts';

/** The kinds around every hub, each distinct run once, anticlockwise seen from outside from its
 * lowest turn. `family`: kind → what counts as the same kind. */
export function starRuns(shell: Shell, family: readonly number[]): number[][] {
  const runs = new Map<string, number[]>();
  for (const star of starsOf(shell)) {
    if (!star.closed) continue;
    const kinds = star.corners.map((s) => shell.kind[shell.sidePlace[s] as number] as number);
    const around = kinds.map((kind) => family[kind] as number);
    const run = turned(around, lowestTurn(around));
    runs.set(run.join(), run);
  }
  return [...runs.values()];
}

/** Whether a group's run of families (each one, or any of several) occurs around some hub; the whole
 * way round if it is closed. */
export function hasRun(
  runs: readonly (readonly number[])[],
  around: readonly (number | readonly number[])[],
  closed: boolean,
): boolean {
  return runs.some(
    (run) =>
      (closed ? run.length === around.length : run.length >= around.length) &&
      run.some((_, start) =>
        around.every((f, i) => isOneOf(run[(start + i) % run.length] as number, f)),
      ),
  );
}

const isOneOf = (family: number, asked: number | readonly number[]): boolean =>
  typeof asked === 'number' ? family === asked : asked.includes(family);

/** The groups that a shell can't hold. `familyOf`: kind id → family, undefined for unknown ids,
 * which fit nowhere. */
export function misfitGroups(
  shell: Shell,
  family: readonly number[],
  familyOf: (id: string) => number | undefined,
  groups: readonly JoinedGroup[],
): JoinedGroup[] {
  const runs = starRuns(shell, family);
  return groups.filter(
    (group) =>
      !hasRun(
        runs,
        group.around.map((id) => familyOf(id) ?? -1),
        group.closed,
      ),
  );
}

/** The groups of which not every panel's kind is settled that a shell can't hold, whatever kinds
 * they are. */
export function misfitLoose(
  shell: Shell,
  family: readonly number[],
  familyOf: (id: string) => number | undefined,
  groups: readonly LooseGroup[],
): LooseGroup[] {
  if (groups.length === 0) return [];
  const runs = starRuns(shell, family);
  return groups.filter(({ around, closed }) => {
    const asked = around.map((ids) => [...new Set(ids.map((id) => familyOf(id) ?? -1))]);
    return !hasRun(runs, asked, closed);
  });
}
