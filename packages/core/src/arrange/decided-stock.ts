// What the decisions besides way up and cut make of a standing shell: places that are left out, panels
// that broke and what was moved for them, lesser shells out of the rest; and with that what the shell
// needs of each kind and leaves over. Places in decisions go by their numbers with the datum not turned on.

import type { Kind } from '../pile/kind.ts';
import type { Shell } from '../shell/shell.ts';
import { familiesOf, familyIndex } from './families.ts';
import type { DecidedOpening, PlacesDecision } from './schema.ts';
import { type StockRow, stockRows } from './stock.ts';

/** An opening with the places that are left out, by index. */
export interface StandingOpening {
  readonly use: DecidedOpening['use'];
  readonly places: readonly number[];
}

/** The decisions that count here. */
export type Besides = Pick<PlacesDecision, 'openings' | 'broken' | 'seconds'>;

/** Openings whose places all stand in the shell; `plain`: place → number with the datum not turned on. */
export function openingsIn(
  plain: readonly string[],
  { openings = [] }: Besides,
): readonly StandingOpening[] {
  return openings
    .map(({ use, places }) => ({ use, places: places.map((number) => plain.indexOf(number)) }))
    .filter(({ places }) => places.every((place) => place >= 0));
}

/** Places that are left out, ascending, each once. */
export const leftOutOf = (openings: readonly StandingOpening[]): number[] =>
  [...new Set(openings.flatMap(({ places }) => places))].sort((a, b) => a - b);

/** Kind → panels that the shell needs: of its own kind in each place that is not left out, but where
 * one of another kind was moved in. */
export function needAfter(
  shell: Shell,
  kinds: readonly Kind[],
  plain: readonly string[],
  besides: Besides,
): number[] {
  const kindAt = Array.from(shell.kind);
  for (const { moves } of besides.broken ?? [])
    for (const { to, kind } of moves) {
      const place = plain.indexOf(to);
      const moved = kinds.findIndex(({ id }) => id === kind);
      if (place >= 0 && moved >= 0) kindAt[place] = moved;
    }
  const out = new Set(leftOutOf(openingsIn(plain, besides)));
  const need = kinds.map(() => 0);
  kindAt.forEach((kind, place) => {
    if (!out.has(place)) need[kind] = (need[kind] as number) + 1;
  });
  return need;
}

/** The kinds with each panel that broke counted as scrap instead of good. A panel that was moved in for
 * another before it broke itself is of the kind that was moved. */
export function kindsAfter(
  shell: Shell,
  kinds: readonly Kind[],
  plain: readonly string[],
  { broken = [] }: Besides,
): readonly Kind[] {
  if (broken.length === 0) return kinds;
  const lost = kinds.map(() => 0);
  const kindAt = Array.from(shell.kind);
  for (const { place, moves } of broken) {
    const kind = kindAt[plain.indexOf(place)];
    if (kind !== undefined) lost[kind] = (lost[kind] as number) + 1;
    for (const move of moves) {
      const [to, moved] = [plain.indexOf(move.to), kinds.findIndex(({ id }) => id === move.kind)];
      if (to >= 0 && moved >= 0) kindAt[to] = moved;
    }
  }
  return kinds.map((kind, k) => {
    const gone = Math.min(kind.good, lost[k] as number);
    return gone === 0 ? kind : { ...kind, good: kind.good - gone, scrap: kind.scrap + gone };
  });
}

/** Stock against need, a row a family of kinds, with all that was decided. */
export function stockAfter(
  shell: Shell,
  kinds: readonly Kind[],
  interchangeable: readonly (readonly string[])[],
  plain: readonly string[],
  decision: PlacesDecision,
): readonly StockRow[] {
  const families = familiesOf(kinds, interchangeable);
  const family = familyIndex(kinds, families);
  const need = families.map(() => 0);
  needAfter(shell, kinds, plain, decision).forEach((count, k) => {
    const f = family[k] as number;
    need[f] = (need[f] as number) + count;
  });
  const left = kindsAfter(shell, kinds, plain, decision);
  return stockRows(left, families, need, decision.repaired);
}

/** Kind → good panels that no place needs and no lesser shell has; 0 where nobody counted. */
export function leftAfter(
  shell: Shell,
  kinds: readonly Kind[],
  plain: readonly string[],
  besides: Besides,
): number[] {
  const need = needAfter(shell, kinds, plain, besides);
  return kindsAfter(shell, kinds, plain, besides).map((kind, k) =>
    kind.counted ? Math.max(0, kind.good - (need[k] as number) - takenBy(besides, kind.id)) : 0,
  );
}

const takenBy = ({ seconds = [] }: Besides, kind: string): number =>
  seconds
    .flatMap(({ panels }) => panels)
    .reduce((sum, one) => sum + (one.kind === kind ? one.count : 0), 0);
