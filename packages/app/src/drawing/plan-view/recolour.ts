// The plan's items in layers, so that what changes often is drawn apart from what does not: the
// places with their fills, the lines, the numbers.

import type { Fill, GroupItem, Item } from '@shellraise/core';

/** The layers, from below. */
export interface PlanLayers {
  readonly places: readonly Item[];
  readonly lines: readonly Item[];
  readonly labels: readonly Item[];
}

/** Splits the items of a plan drawing. */
export function planLayers(items: readonly Item[]): PlanLayers {
  const dataOf = (item: Item) => (item.type === 'group' ? item.data : undefined);
  return {
    places: items.filter((item) => dataOf(item)?.place !== undefined),
    lines: items.filter((item) => {
      const data = dataOf(item);
      return data?.place === undefined && data?.label === undefined;
    }),
    labels: items.filter((item) => dataOf(item)?.label !== undefined),
  };
}

/** The places with other fills: place → fill. */
export function recoloured(places: readonly Item[], fills: readonly Fill[]): Item[] {
  return places.map((item): Item => {
    if (item.type !== 'group') return item;
    const fill = fills[Number(item.data?.place)];
    return fill ? { ...item, items: item.items.map((one) => filled(one, fill)) } : item;
  });
}

const filled = (item: Item, fill: Fill): Item => (item.type === 'path' ? { ...item, fill } : item);

/** The number of one place in the accent, without the edge that keeps the hatch off it. */
export function accented(labels: readonly Item[], place: number): Item[] {
  const own = labels.find(
    (item): item is GroupItem => item.type === 'group' && item.data?.label === String(place),
  );
  return (own?.items ?? []).map((item) =>
    item.type === 'text' ? { ...item, ink: 'accent' as const } : item,
  );
}
