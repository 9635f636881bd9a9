// What might be left for the next trip, ring by ring: hub plates with their bolts, seams left finger-tight,
// the final pass, seals; and the state of the shell with some of it missing.

import type { SeamPass } from '../../frame/model.ts';
import { layersFrom } from '../../shell/courses.ts';
import { baseRing } from '../../shell/rims.ts';
import type { Shell } from '../../shell/shell.ts';
import type { Stage } from '../../stages/stage.ts';
import type { RaisingStage } from '../plan.ts';

/** Sorts of work that might wait. */
export type WaitSort = 'hub plates' | 'snug pass' | 'final pass' | 'seal';

/** One item: the work of one sort in one ring. */
export interface WaitItem {
  readonly sort: WaitSort;
  /** Ring of hubs, 0 at the ground, or course of seams, 1 at the ground; null: all of it. */
  readonly ring: number | null;
  /** Hubs without their plates, or seams, ascending. */
  readonly hubs: readonly number[];
  readonly seams: readonly number[];
}

/** An item in words. */
export function itemWords({ sort, ring, hubs, seams }: WaitItem): string {
  switch (sort) {
    case 'hub plates':
      return hubs.length === 1
        ? `1 hub plate with its bolts, ring ${ring}`
        : `${hubs.length} hub plates with their bolts, ring ${ring}`;
    case 'snug pass':
      return `the snug pass of ${seams.length} seams, course ${ring}`;
    case 'final pass':
      return `the final pass of ${seams.length} seams`;
    case 'seal':
      return `sealing over ${seams.length} seams`;
  }
}

/** All that might wait once a stage is done; the final pass only once all is up. `plates`: hubs that have a plate to be bolted on; a hub counts
 * once all its panels that will ever be there are in. */
export function waitItems(
  shell: Shell,
  stage: Pick<RaisingStage, 'placed'>,
  built: readonly number[],
  plates: readonly number[],
): WaitItem[] {
  const placed = flagsOf(shell, stage.placed);
  const later = flagsOf(shell, built);
  const isOpen = new Set<number>();
  shell.sideHub.forEach((hub, side) => {
    const place = shell.sidePlace[side] as number;
    if (later[place] === 1 && placed[place] === 0) isOpen.add(hub);
  });
  const reached = new Set(
    [...shell.sideHub].filter((_, side) => placed[shell.sidePlace[side] as number] === 1),
  );
  const layers = layersFrom(shell, baseRing(shell)?.hubs ?? []);
  const ready = plates.filter((hub) => reached.has(hub) && !isOpen.has(hub));
  const seams = seamsIn(shell, placed);
  const course = (seam: number): number =>
    Math.max(...[0, 1].map((end) => layers.places[shell.sidePlace[shell.seams[2 * seam + end]]]));
  const isWhole = built.every((p) => placed[p] === 1);
  const all: WaitItem[] = [
    { sort: 'seal', ring: null, hubs: [], seams },
    { sort: 'final pass', ring: null, hubs: [], seams: isWhole ? seams : [] },
  ];
  return [
    ...all,
    ...byRing(ready, (hub) => layers.hubs[hub] as number).map(
      ([ring, hubs]): WaitItem => ({ sort: 'hub plates', ring, hubs, seams: [] }),
    ),
    ...byRing(seams, course).map(
      ([ring, own]): WaitItem => ({ sort: 'snug pass', ring, hubs: [], seams: own }),
    ),
  ].filter(({ hubs, seams: own }) => hubs.length + own.length > 0);
}

function flagsOf(shell: Shell, places: readonly number[]): Uint8Array {
  const flags = new Uint8Array(shell.placeStart.length - 1);
  for (const p of places) flags[p] = 1;
  return flags;
}

const seamsIn = (shell: Shell, placed: Uint8Array): number[] =>
  Array.from({ length: shell.seams.length / 2 }, (_, seam) => seam).filter((seam) =>
    [0, 1].every((end) => placed[shell.sidePlace[shell.seams[2 * seam + end]]] === 1),
  );

function byRing(
  list: readonly number[],
  ringOf: (one: number) => number,
): [ring: number, list: number[]][] {
  const rings = new Map<number, number[]>();
  for (const one of list) rings.set(ringOf(one), [...(rings.get(ringOf(one)) ?? []), one]);
  return [...rings].sort(([a], [b]) => a - b);
}

/** The shell after a stage with everything done that can be, but for some items. A plate that lacks bolts
 * counts as missing; seals hold nothing. */
export function stateWithout(
  shell: Shell,
  stage: Pick<RaisingStage, 'placed' | 'props'>,
  plates: readonly number[],
  items: readonly WaitItem[],
): Stage {
  const missing = new Set(items.flatMap(({ hubs }) => hubs));
  const loose = new Map<number, SeamPass>();
  for (const { sort, seams } of items)
    for (const seam of seams)
      if (sort === 'snug pass') loose.set(seam, 'finger');
      else if (sort === 'final pass' && loose.get(seam) !== 'finger') loose.set(seam, 'snug');
  const placed = flagsOf(shell, stage.placed);
  const reached = new Set(
    [...shell.sideHub].filter((_, side) => placed[shell.sidePlace[side] as number] === 1),
  );
  return {
    placed: stage.placed,
    props: stage.props,
    plates: plates.filter((hub) => reached.has(hub) && !missing.has(hub)),
    pass: (seam) => loose.get(seam) ?? 'final',
  };
}
