// A fill-reducing order by approximate minimum degree: P. R. Amestoy, T. A. Davis, I. S. Duff,
// SIAM J. Matrix Anal. Appl. 17 (1996) 886. What is eliminated stays as an element, the clique of
// its neighbours; a node's degree is bounded from above by its elements' sizes; nodes that have
// become indistinguishable are eliminated together. Ties go to the lower index.

import type { Graph } from './graph.ts';

/** The nodes of a graph in the order in which to eliminate them. */
export function minimumDegreeOrder(graph: Graph): Int32Array {
  const quotient = quotientOf(graph);
  const order: number[] = [];
  while (quotient.left > 0) {
    const pivot = quotient.queue.takeLeast();
    order.push(pivot);
    eliminate(quotient, pivot);
  }
  return expanded(order, quotient.merged);
}

interface Quotient {
  /** Node → its neighbours that are not yet eliminated. */
  readonly nodes: number[][];
  /** Node → the elements it belongs to. */
  readonly elements: number[][];
  /** Element (named for its pivot) → its nodes. */
  readonly members: (number[] | null)[];
  /** Node → unknowns that it stands for; 0 once merged or eliminated. */
  readonly weight: Int32Array;
  /** Element → unknowns in it, as far as known. */
  readonly size: Int32Array;
  /** Node → nodes merged into it. */
  readonly merged: number[][];
  readonly degree: Int32Array;
  readonly queue: DegreeQueue;
  readonly outside: Int32Array;
  readonly stamp: Int32Array;
  mark: number;
  /** Unknowns not yet eliminated. */
  left: number;
}

function quotientOf({ start, neighbour, weight }: Graph): Quotient {
  const n = weight.length;
  const nodes = Array.from({ length: n }, (_, i) =>
    Array.from(neighbour.subarray(start[i], start[i + 1])),
  );
  const degree = Int32Array.from(nodes, (list) =>
    list.reduce((sum, other) => sum + weight[other], 0),
  );
  const left = weight.reduce((sum, w) => sum + w, 0);
  const queue = new DegreeQueue(n, left);
  for (let i = n - 1; i >= 0; i--) queue.put(i, degree[i]);
  return {
    nodes,
    elements: Array.from({ length: n }, () => []),
    members: new Array(n).fill(null),
    weight: weight.slice(),
    size: new Int32Array(n),
    merged: Array.from({ length: n }, () => []),
    degree,
    queue,
    outside: new Int32Array(n),
    stamp: new Int32Array(n).fill(-1),
    mark: 0,
    left,
  };
}

function eliminate(q: Quotient, pivot: number): void {
  const members = newElement(q, pivot);
  const inElement = q.mark;
  q.left -= q.weight[pivot];
  q.weight[pivot] = 0;
  measureOutside(q, members);
  const size = q.size[pivot];
  const buckets = new Map<number, number[]>();
  for (const i of members) {
    const hash = updateNode(q, pivot, i, size, inElement);
    if (hash < 0) continue;
    const bucket = buckets.get(hash);
    if (bucket) bucket.push(i);
    else buckets.set(hash, [i]);
  }
  for (const bucket of buckets.values()) if (bucket.length > 1) mergeAlike(q, bucket);
  const live = members.filter((i) => q.weight[i] > 0);
  q.members[pivot] = live;
  for (const i of live) q.queue.put(i, q.degree[i]);
}

/** The clique that eliminating the pivot makes; the elements it swallows are gone. */
function newElement(q: Quotient, pivot: number): number[] {
  const mark = ++q.mark;
  q.stamp[pivot] = mark;
  const members: number[] = [];
  let size = 0;
  const take = (list: readonly number[]): void => {
    for (const i of list) {
      if (q.weight[i] === 0 || q.stamp[i] === mark) continue;
      q.stamp[i] = mark;
      members.push(i);
      size += q.weight[i];
      q.queue.remove(i);
    }
  };
  take(q.nodes[pivot]);
  for (const e of q.elements[pivot]) {
    const list = q.members[e];
    if (list) take(list);
    q.members[e] = null;
  }
  q.nodes[pivot] = [];
  q.elements[pivot] = [];
  q.members[pivot] = members;
  q.size[pivot] = size;
  return members;
}

/** Element → unknowns of it that are not in the new one, for all elements that touch it. */
function measureOutside(q: Quotient, members: readonly number[]): void {
  const touched = ++q.mark;
  for (const i of members)
    for (const e of q.elements[i]) {
      const list = q.members[e];
      if (!list) continue;
      if (q.stamp[e] !== touched) {
        q.stamp[e] = touched;
        let size = 0;
        for (const k of list) size += q.weight[k];
        q.outside[e] = size;
      }
      q.outside[e] -= q.weight[i];
    }
}

/** Brings node i of the new element, whose nodes bear the stamp `inElement`, up to date; its hash,
 * or −1 where it went with the pivot. */
function updateNode(
  q: Quotient,
  pivot: number,
  i: number,
  size: number,
  inElement: number,
): number {
  let degree = size - q.weight[i];
  let hash = pivot;
  const elements: number[] = [];
  for (const e of q.elements[i]) {
    if (!q.members[e]) continue;
    if (q.outside[e] === 0) {
      q.members[e] = null;
      continue;
    }
    degree += q.outside[e];
    hash = (hash + e) | 0;
    elements.push(e);
  }
  const nodes: number[] = [];
  for (const k of q.nodes[i]) {
    if (q.weight[k] === 0 || q.stamp[k] === inElement) continue;
    degree += q.weight[k];
    hash = (hash + k) | 0;
    nodes.push(k);
  }
  if (elements.length === 0 && nodes.length === 0) {
    q.left -= q.weight[i];
    q.weight[i] = 0;
    q.merged[pivot].push(i);
    return -1;
  }
  elements.push(pivot);
  q.elements[i] = elements;
  q.nodes[i] = nodes;
  const grown = q.degree[i] + size - q.weight[i];
  q.degree[i] = Math.min(q.left - q.weight[i], grown, degree);
  return hash & 0x7fffffff;
}

/** Merges nodes of one bucket that have the same elements and neighbours. */
function mergeAlike(q: Quotient, bucket: readonly number[]): void {
  for (let a = 0; a < bucket.length; a++) {
    const i = bucket[a];
    if (q.weight[i] === 0) continue;
    const mark = ++q.mark;
    for (const k of q.nodes[i]) q.stamp[k] = mark;
    const elements = new Set(q.elements[i]);
    for (let b = a + 1; b < bucket.length; b++) {
      const j = bucket[b];
      if (q.weight[j] === 0 || q.nodes[j].length !== q.nodes[i].length) continue;
      if (q.elements[j].length !== elements.size) continue;
      if (!q.nodes[j].every((k) => q.stamp[k] === mark)) continue;
      if (!q.elements[j].every((e) => elements.has(e))) continue;
      q.degree[i] -= q.weight[j];
      q.weight[i] += q.weight[j];
      q.weight[j] = 0;
      q.merged[i].push(j);
    }
  }
}

function expanded(order: readonly number[], merged: readonly (readonly number[])[]): Int32Array {
  const all: number[] = [];
  for (const pivot of order) {
    const stack = [pivot];
    while (stack.length > 0) {
      const node = stack.pop() as number;
      all.push(node);
      for (let k = merged[node].length - 1; k >= 0; k--) stack.push(merged[node][k]);
    }
  }
  return Int32Array.from(all);
}

/** Nodes by degree, in doubly linked lists. */
class DegreeQueue {
  private readonly head: Int32Array;
  private readonly next: Int32Array;
  private readonly before: Int32Array;
  private readonly degree: Int32Array;
  private least = 0;

  constructor(nodes: number, mostDegree: number) {
    this.head = new Int32Array(mostDegree + 1).fill(-1);
    this.next = new Int32Array(nodes).fill(-1);
    this.before = new Int32Array(nodes).fill(-1);
    this.degree = new Int32Array(nodes).fill(-1);
  }

  put(node: number, degree: number): void {
    const first = this.head[degree];
    this.next[node] = first;
    this.before[node] = -1;
    if (first >= 0) this.before[first] = node;
    this.head[degree] = node;
    this.degree[node] = degree;
    if (degree < this.least) this.least = degree;
  }

  remove(node: number): void {
    const degree = this.degree[node];
    if (degree < 0) return;
    const next = this.next[node];
    const before = this.before[node];
    if (before >= 0) this.next[before] = next;
    else this.head[degree] = next;
    if (next >= 0) this.before[next] = before;
    this.degree[node] = -1;
  }

  takeLeast(): number {
    while (this.head[this.least] < 0) this.least++;
    const node = this.head[this.least];
    this.remove(node);
    return node;
  }
}
