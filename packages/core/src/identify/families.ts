// Kinds as they count for a run around a hub: those that stand for one another are one family, and so
// are either hand of a kind whose face is unknown.

import { lowestTurn, turned } from '../math/cyclic.ts';
import { starsOf } from '../shell/stars.ts';
import { kindsOfShape, type Shape, type ShapeQuestion } from './shape.ts';

/** Families by name: the ids of their kinds in the question's order, joined by a stroke. */
export interface Families {
  /** Kind of a shape of the question → name of its family. */
  readonly of: (shape: Shape) => readonly string[];
  /** Ids of the kinds of a family. */
  readonly ids: (name: string) => readonly string[];
}

/** The families that the best shape's interchangeable kinds make of a question's kinds. */
export function familiesOf({ interchangeable }: Shape, { kinds }: ShapeQuestion): Families {
  const lists = interchangeable.map((ids) =>
    kinds.flatMap(({ id }) => (ids.includes(id) ? [id] : [])),
  );
  const idsOf = (id: string): readonly string[] => lists.find((ids) => ids.includes(id)) ?? [id];
  const names = new Map(kinds.map(({ id }) => [idsOf(id).join('/'), idsOf(id)]));
  return {
    ids: (name) => names.get(name) ?? [name],
    of: (shape) =>
      kindsOfShape(shape, kinds).map(({ id }, k) => {
        const of = shape.added[k - kinds.length]?.of ?? null;
        return idsOf(of === null ? id : (kinds[of]?.id ?? id)).join('/');
      }),
  };
}

/** A run of families around a hub, anticlockwise seen from outside from its lowest turn. */
export interface FamilyRun {
  readonly run: readonly string[];
  /** Hubs that it lies around. */
  readonly hubs: number;
}

/** The runs around a shape's hubs, each once, by a key. Open ones begin at their open side. */
export function familyRuns({ shell }: Shape, family: readonly string[]): Map<string, FamilyRun> {
  const names = [...new Set(family)].sort();
  const runs = new Map<string, FamilyRun>();
  for (const { corners, closed } of starsOf(shell)) {
    const around = corners.map((s) => {
      const kind = shell.kind[shell.sidePlace[s] as number] as number;
      return names.indexOf(family[kind] as string);
    });
    const run = (closed ? turned(around, lowestTurn(around)) : around).map(
      (own) => names[own] as string,
    );
    const key = JSON.stringify([closed, run]);
    runs.set(key, { run, hubs: (runs.get(key)?.hubs ?? 0) + 1 });
  }
  return runs;
}
