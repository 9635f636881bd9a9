// Side classes: which sides of the kinds have the same length. Sides that meet in a seam are one
// class whatever the tape said; classes closer than the tolerance are then one. Numbered from the
// shortest. Lengths in metres, the kinds' own hub-to-hub sides.

import { joinInto, rootInto, singletons } from '../math/sets.ts';
import type { Kind } from '../pile/kind.ts';
import type { SideId } from '../shell/ids.ts';
import { kindSide, type Shell } from '../shell/shell.ts';
import { SAME_SIDE_CLASS } from './tolerances.ts';

/** One length that sides of the shell share. */
export interface ShellSideClass {
  /** 1 for the shortest. */
  readonly number: number;
  /** Mean over its kinds' sides, metres. */
  readonly length: number;
  /** The kinds' sides in it, as [kind index, side]. */
  readonly members: readonly (readonly [number, number])[];
}

/** The classes, and the way from a kind's side to its class. */
export interface ShellSideClasses {
  readonly classes: readonly ShellSideClass[];
  /** Kind → side → index in `classes`; −1 for kinds that have no place in the shell. */
  readonly of: readonly (readonly number[])[];
}

/** The side classes of the kinds that stand in the shell. */
export function sideClasses(shell: Shell, kinds: readonly Kind[]): ShellSideClasses {
  const used = new Set(shell.kind);
  const nodes = kinds.flatMap((kind, k) =>
    used.has(k) ? kind.sides.map((length, side) => ({ k, side, length })) : [],
  );
  const nodeOf = new Map(nodes.map((node, i) => [`${node.k}/${node.side}`, i]));
  const met = singletons(nodes.length);
  for (let i = 0; i < shell.seams.length; i += 2)
    joinInto(met, nodeAt(shell, nodeOf, i), nodeAt(shell, nodeOf, i + 1));
  const together = groupBy(nodes, (_, i) => rootInto(met, i));
  const groups = mergeClose([...together.values()], SAME_SIDE_CLASS * shell.radius);
  const classes = groups.map((group, i) => ({
    number: i + 1,
    length: mean(group),
    members: group.map((node) => [node.k, node.side] as const),
  }));
  const of = kinds.map((kind) => kind.sides.map(() => -1));
  classes.forEach((one, c) => {
    for (const [k, side] of one.members) (of[k] as number[])[side] = c;
  });
  return { classes, of };
}

/** The class (index) of a side of the shell. */
export function classOfSide(shell: Shell, classes: ShellSideClasses, side: SideId): number {
  const kind = shell.kind[shell.sidePlace[side] as number] as number;
  return classes.of[kind]?.[kindSide(shell, side)] ?? -1;
}

interface Node {
  readonly k: number;
  readonly side: number;
  readonly length: number;
}

function nodeAt(shell: Shell, nodeOf: ReadonlyMap<string, number>, seamEnd: number): number {
  const side = shell.seams[seamEnd] as SideId;
  const kind = shell.kind[shell.sidePlace[side] as number] as number;
  const node = nodeOf.get(`${kind}/${kindSide(shell, side)}`);
  if (node === undefined) throw new Error(`side ${side} lies on no side of kind ${kind}`);
  return node;
}

function mergeClose(groups: readonly (readonly Node[])[], tolerance: number): Node[][] {
  const merged: Node[][] = [];
  for (const group of [...groups].sort((a, b) => mean(a) - mean(b))) {
    const last = merged.at(-1);
    if (last !== undefined && mean(group) - mean(last) <= tolerance) last.push(...group);
    else merged.push([...group]);
  }
  return merged;
}

const mean = (group: readonly Node[]): number =>
  group.reduce((sum, node) => sum + node.length, 0) / group.length;

function groupBy<T>(items: readonly T[], key: (item: T, i: number) => number): Map<number, T[]> {
  const groups = new Map<number, T[]>();
  items.forEach((item, i) => {
    const k = key(item, i);
    const group = groups.get(k);
    if (group === undefined) groups.set(k, [item]);
    else group.push(item);
  });
  return groups;
}
