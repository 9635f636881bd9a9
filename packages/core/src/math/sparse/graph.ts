// The graph of a symmetric pattern with unknowns that have the same neighbours drawn together: the
// six unknowns of a node of a frame become one node of the graph, of weight six. Ordering and the
// symbolic factor work on it, which is some thirty times less than the matrix.

import type { SymmetricPattern } from './symmetric.ts';

/** A graph whose nodes stand for one or more unknowns. */
export interface Graph {
  /** First neighbour of each node; one longer than the number of nodes. */
  readonly start: Int32Array;
  /** Neighbours, none of them the node itself, both ways. */
  readonly neighbour: Int32Array;
  /** Node → how many unknowns it stands for. */
  readonly weight: Int32Array;
  /** Unknown → its node. */
  readonly nodeOf: Int32Array;
}

/** The graph of a pattern, indistinguishable unknowns drawn together. */
export function graphOf(pattern: SymmetricPattern): Graph {
  const full = bothTriangles(pattern);
  const nodeOf = drawTogether(full);
  const nodes = nodeOf.reduce((most, node) => Math.max(most, node + 1), 0);
  const weight = new Int32Array(nodes);
  const first = new Int32Array(nodes).fill(-1);
  nodeOf.forEach((node, i) => {
    weight[node]++;
    if (first[node] < 0) first[node] = i;
  });
  const start = new Int32Array(nodes + 1);
  const neighbour: number[] = [];
  const seen = new Int32Array(nodes).fill(-1);
  for (let node = 0; node < nodes; node++) {
    const i = first[node];
    seen[node] = node;
    for (let e = full.start[i]; e < full.start[i + 1]; e++) {
      const other = nodeOf[full.row[e]];
      if (seen[other] === node) continue;
      seen[other] = node;
      neighbour.push(other);
    }
    start[node + 1] = neighbour.length;
  }
  return { start, neighbour: Int32Array.from(neighbour), weight, nodeOf };
}

/** Unknown → node, from both triangles. Unknowns of one node have equal columns, themselves counted
 * in. */
function drawTogether(full: SymmetricPattern): Int32Array {
  const { n } = full;
  const nodeOf = new Int32Array(n).fill(-1);
  const byHash = new Map<number, number[]>();
  const marked = new Int32Array(n).fill(-1);
  let nodes = 0;
  for (let j = 0; j < n; j++) {
    const from = full.start[j];
    const to = full.start[j + 1];
    let hash = to - from;
    for (let e = from; e < to; e++) {
      hash = (hash + Math.imul(full.row[e] + 1, 0x9e3779b1)) | 0;
      marked[full.row[e]] = j;
    }
    const alike = byHash.get(hash) ?? [];
    const twin = alike.find((i) => {
      if (full.start[i + 1] - full.start[i] !== to - from) return false;
      for (let e = full.start[i]; e < full.start[i + 1]; e++)
        if (marked[full.row[e]] !== j) return false;
      return true;
    });
    if (twin !== undefined) {
      nodeOf[j] = nodeOf[twin];
      continue;
    }
    nodeOf[j] = nodes++;
    alike.push(j);
    byHash.set(hash, alike);
  }
  return nodeOf;
}

/** Both triangles of a pattern by columns, diagonal included. */
function bothTriangles({ n, start, row }: SymmetricPattern): SymmetricPattern {
  const first = new Int32Array(n + 1);
  for (let j = 0; j < n; j++)
    for (let e = start[j]; e < start[j + 1]; e++) {
      first[j + 1]++;
      if (row[e] !== j) first[row[e] + 1]++;
    }
  for (let j = 0; j < n; j++) first[j + 1] += first[j];
  const at = first.slice();
  const rows = new Int32Array(first[n]);
  for (let j = 0; j < n; j++)
    for (let e = start[j]; e < start[j + 1]; e++) {
      rows[at[j]++] = row[e];
      if (row[e] !== j) rows[at[row[e]]++] = j;
    }
  return { n, start: first, row: rows };
}
