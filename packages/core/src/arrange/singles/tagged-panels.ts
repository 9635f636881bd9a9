// The tagged panels of a pile as single panels: what their sides are off by from their readings.

import type { AssignedReading } from '../../pile/assign.ts';
import type { Kind } from '../../pile/kind.ts';
import type { PileKinds } from '../../pile/kinds.ts';
import type { Pile } from '../../pile/schema.ts';
import type { SinglePanel } from './single-panels.ts';

/** Tagged panels of a settled kind that are not scrap: the mean of their readings against the sides of
 * `kinds` (metres; as fitted, if they are to go together), each person's own error taken off and the hub
 * allowance put on. `family` is the kind's index in `kinds`; a panel whose kind is not among them is
 * left out. */
export function taggedPanels(
  pile: Pick<Pile, 'readings' | 'hubAllowance'>,
  { assigned, people }: Pick<PileKinds, 'assigned' | 'people'>,
  kinds: readonly Kind[],
): SinglePanel[] {
  const biases = new Map(people.map((one) => [one.by, one.applied ? one.bias : 0]));
  const byTag = new Map<string, AssignedReading[]>();
  for (const one of assigned)
    if (one.tag !== null && one.kind !== null)
      byTag.set(one.tag, [...(byTag.get(one.tag) ?? []), one]);
  return [...byTag].flatMap(([tag, readings]) => {
    const family = kinds.findIndex((kind) => kind.id === readings[0]?.kind);
    const sides = kinds[family]?.sides;
    const rows = readings.flatMap(({ reading }) => pile.readings[reading] ?? []);
    if (!sides || rows.some((row) => row.condition === 'scrap')) return [];
    const sums = sides.map(() => 0);
    readings.forEach(({ liesOn }, r) => {
      const row = rows[r];
      row?.sides.forEach((measured, i) => {
        const at = liesOn[i] as number;
        const bias = row.by === undefined ? 0 : (biases.get(row.by) ?? 0);
        sums[at] = (sums[at] as number) + measured - bias + (pile.hubAllowance ?? 0);
      });
    });
    const off = sides.map((side, i) => (sums[i] as number) / readings.length - side);
    return [{ tag, family, off, weak: rows.some((row) => row.condition === 'repair') }];
  });
}
