// The hub that tells a net from the others: one around which kinds stand in a run that no other net
// has. Kinds that may stand for one another count as one.

import {
  familiesOf,
  familyIndex,
  fansOf,
  type Kind,
  kindsOfShape,
  type Shape,
  type Shell,
} from '@shellraise/core';

/** A telling hub. */
export interface Sign {
  readonly hub: number;
  /** Places around it. */
  readonly places: readonly number[];
}

/** For each net a hub that tells it; null where it has none. */
export function signsOf(shapes: readonly Shape[], kinds: readonly Kind[]): (Sign | null)[] {
  if (shapes.length < 2) return shapes.map(() => null);
  const alike = shapes[0]?.interchangeable;
  const runs = shapes.map((shape) => {
    const own = kindsOfShape(shape, kinds);
    return runsOf(shape.shell, familyIndex(own, familiesOf(own, alike)));
  });
  return runs.map((own, i) => {
    const found = [...own].find(([run]) => !runs.some((other, j) => j !== i && other.has(run)));
    return found?.[1] ?? null;
  });
}

/** Run of families around a hub, read from where it is lowest → the first hub that has it. */
function runsOf(shell: Shell, family: ArrayLike<number>): Map<string, Sign> {
  const runs = new Map<string, Sign>();
  fansOf(shell).forEach((fans, hub) => {
    const [fan] = fans;
    if (fans.length !== 1 || !fan?.closed) return;
    const places = fan.corners.map((corner) => shell.sidePlace[corner] as number);
    const run = lowestTurn(places.map((place) => family[shell.kind[place] as number] as number));
    if (!runs.has(run)) runs.set(run, { hub, places });
  });
  return runs;
}

/** A cyclic run as text, begun where it is lowest. */
function lowestTurn(run: readonly number[]): string {
  const turns = run.map((_, i) => [...run.slice(i), ...run.slice(0, i)].join());
  return turns.sort()[0] ?? '';
}
