// The symbolic factor of a pattern: the order of elimination and which columns of L share their
// rows (supernodes), found once and used for every matrix of that pattern.
// J. W. H. Liu, SIAM J. Matrix Anal. Appl. 11 (1990) 134 (elimination tree); C. Ashcraft and
// R. Grimes, ACM Trans. Math. Softw. 15 (1989) 291 (merging of supernodes).
//
//        c columns          A front: the supernode's own columns on top, then the rows
//       ┌────────┐          below in which they have entries. Left block: c wide, by rows,
//     c │ L11, D │          kept as L. The square to its right is passed on to the parent
//       ├────────┼─────┐    ("update"), whose front holds all of its rows.
//     r │  L21   │  U  │
//       └────────┴─────┘

import { type Graph, graphOf } from './graph.ts';
import { minimumDegreeOrder } from './minimum-degree.ts';
import type { SymmetricPattern } from './symmetric.ts';

/** What a factor of any matrix of one pattern needs to know. Positions count in the order of
 * elimination. */
export interface SymbolicFactor {
  readonly pattern: SymmetricPattern;
  /** Position → unknown. */
  readonly order: Int32Array;
  /** Unknown → position. */
  readonly position: Int32Array;
  /** First column of each supernode; one longer than their number. */
  readonly column: Int32Array;
  /** First row below of each supernode; one longer than their number. */
  readonly rowStart: Int32Array;
  /** Rows below, positions, ascending within a supernode. */
  readonly row: Int32Array;
  /** Row below → its place in the front of the parent. */
  readonly inParent: Int32Array;
  /** Supernode → its parent, −1 at a root. */
  readonly parent: Int32Array;
  /** Supernode → where its left block begins among the values of L. */
  readonly valueStart: Int32Array;
  /** First of the matrix entries of each supernode; one longer than their number. */
  readonly scatterStart: Int32Array;
  /** Entries of the matrix, grouped by supernode. */
  readonly scatterEntry: Int32Array;
  /** Where each goes among the values of L. */
  readonly scatterTo: Int32Array;
  /** Most that the stack of updates holds, numbers. */
  readonly stackSize: number;
  /** Entries of L with D, zeros that were let in counted, numbers. */
  readonly entries: number;
}

/** The symbolic factor of a pattern, ordered by minimum degree, or as told: `order` lists the
 * unknowns in the order of elimination. */
export function symbolicFactor(pattern: SymmetricPattern, order?: Int32Array): SymbolicFactor {
  const graph = order === undefined ? graphOf(pattern) : plainGraph(pattern);
  const tree = eliminationTree(graph, order ?? minimumDegreeOrder(graph));
  const supernodes = mergeSmall(fundamentalSupernodes(tree));
  return layOut(pattern, graph, tree, supernodes);
}

/** The graph with one node for each unknown. */
function plainGraph(pattern: SymmetricPattern): Graph {
  const { n, start, row } = pattern;
  const lists: number[][] = Array.from({ length: n }, () => []);
  for (let j = 0; j < n; j++)
    for (let e = start[j]; e < start[j + 1]; e++)
      if (row[e] !== j) {
        lists[j].push(row[e]);
        lists[row[e]].push(j);
      }
  const first = new Int32Array(n + 1);
  lists.forEach((list, j) => {
    first[j + 1] = first[j] + list.length;
  });
  return {
    start: first,
    neighbour: Int32Array.from(lists.flat()),
    weight: new Int32Array(n).fill(1),
    nodeOf: Int32Array.from({ length: n }, (_, i) => i),
  };
}

/** Nodes of the graph in postorder of the elimination tree. */
interface Tree {
  /** Place in the order → node of the graph. */
  readonly node: Int32Array;
  /** Node of the graph → place in the order. */
  readonly place: Int32Array;
  readonly parent: Int32Array;
  /** Place → unknowns of its node. */
  readonly weight: Int32Array;
  /** Place → places of its column of L, itself left out, ascending. */
  readonly column: readonly Int32Array[];
}

function eliminationTree(graph: Graph, order: Int32Array): Tree {
  const n = order.length;
  const place = new Int32Array(n);
  order.forEach((node, k) => {
    place[node] = k;
  });
  const parent = parents(graph, order, place);
  const post = postorder(parent);
  const node = Int32Array.from(post, (k) => order[k]);
  const newPlace = new Int32Array(n);
  post.forEach((k, p) => {
    newPlace[k] = p;
  });
  const newParent = Int32Array.from(post, (k) => (parent[k] < 0 ? -1 : newPlace[parent[k]]));
  node.forEach((one, p) => {
    place[one] = p;
  });
  const weight = Int32Array.from(node, (one) => graph.weight[one]);
  return { node, place, parent: newParent, weight, column: columns(graph, node, place, newParent) };
}

function parents({ start, neighbour }: Graph, order: Int32Array, place: Int32Array): Int32Array {
  const parent = new Int32Array(order.length).fill(-1);
  const ancestor = new Int32Array(order.length).fill(-1);
  for (let k = 0; k < order.length; k++)
    for (let e = start[order[k]]; e < start[order[k] + 1]; e++) {
      let i = place[neighbour[e]];
      while (i >= 0 && i < k) {
        const next = ancestor[i];
        ancestor[i] = k;
        if (next < 0) parent[i] = k;
        i = next;
      }
    }
  return parent;
}

/** Children before parents, each subtree in one run. */
function postorder(parent: Int32Array): Int32Array {
  const n = parent.length;
  const head = new Int32Array(n + 1).fill(-1);
  const next = new Int32Array(n);
  for (let k = n - 1; k >= 0; k--) {
    const at = parent[k] < 0 ? n : parent[k];
    next[k] = head[at];
    head[at] = k;
  }
  const post = new Int32Array(n);
  const stack: number[] = [];
  let count = 0;
  for (let root = head[n]; root >= 0; root = next[root]) {
    stack.push(root);
    while (stack.length > 0) {
      const k = stack[stack.length - 1];
      const child = head[k];
      if (child >= 0) {
        head[k] = next[child];
        stack.push(child);
      } else {
        post[count++] = k;
        stack.pop();
      }
    }
  }
  return post;
}

function columns(
  { start, neighbour }: Graph,
  node: Int32Array,
  place: Int32Array,
  parent: Int32Array,
): Int32Array[] {
  const n = node.length;
  const seen = new Int32Array(n).fill(-1);
  const children: number[][] = Array.from({ length: n }, () => []);
  const all: Int32Array[] = [];
  for (let j = 0; j < n; j++) {
    const rows: number[] = [];
    const take = (i: number): void => {
      if (i <= j || seen[i] === j) return;
      seen[i] = j;
      rows.push(i);
    };
    for (let e = start[node[j]]; e < start[node[j] + 1]; e++) take(place[neighbour[e]]);
    for (const child of children[j]) all[child].forEach(take);
    if (parent[j] >= 0) children[parent[j]].push(j);
    all.push(Int32Array.from(rows).sort());
  }
  return all;
}

/** Runs of places that are one supernode. */
interface Supernodes {
  readonly tree: Tree;
  /** First place of each; one longer than their number. */
  readonly first: readonly number[];
}

function fundamentalSupernodes(tree: Tree): Supernodes {
  const first = [0];
  for (let j = 1; j < tree.node.length; j++) {
    const before = tree.column[j - 1];
    const goesOn = tree.parent[j - 1] === j && before.length === tree.column[j].length + 1;
    if (!goesOn) first.push(j);
  }
  if (tree.node.length > 0) first.push(tree.node.length);
  return { tree, first };
}

/** Zeros that may be let in when a supernode is merged with the last of its children, as part of
 * the block, by its columns (T. A. Davis's figures for CHOLMOD, ACM TOMS Algorithm 887, 2008). */
const zerosAllowed = (columns: number): number =>
  columns <= 8 ? 1 : columns <= 24 ? 0.6 : columns <= 64 ? 0.15 : 0.05;

function mergeSmall({ tree, first }: Supernodes): Supernodes {
  const { weight, column, parent } = tree;
  const total = (places: ArrayLike<number>): number => {
    let sum = 0;
    for (let i = 0; i < places.length; i++) sum += weight[places[i]];
    return sum;
  };
  // A stack of supernodes made so far: first place, columns, rows below, zeros let in.
  const made: { first: number; columns: number; rows: number; zeros: number }[] = [];
  for (let s = 0; s + 1 < first.length; s++) {
    const last = first[s + 1] - 1;
    let columns = 0;
    for (let j = first[s]; j <= last; j++) columns += weight[j];
    let one = { first: first[s], columns, rows: total(column[last]), zeros: 0 };
    for (let child = made.at(-1); child !== undefined; child = made.at(-1)) {
      const top = parent[one.first - 1];
      if (top < one.first || top > last) break;
      const wide = child.columns + one.columns;
      const zeros = child.zeros + one.zeros + child.columns * (one.columns + one.rows - child.rows);
      const block = wide * (one.rows + wide / 2);
      if (zeros > zerosAllowed(wide) * block) break;
      made.pop();
      one = { first: child.first, columns: wide, rows: one.rows, zeros };
    }
    made.push(one);
  }
  return {
    tree,
    first: [...made.map((one) => one.first), ...(made.length ? [first.at(-1) as number] : [])],
  };
}

function layOut(
  pattern: SymmetricPattern,
  graph: Graph,
  tree: Tree,
  { first }: Supernodes,
): SymbolicFactor {
  const { n } = pattern;
  const count = Math.max(0, first.length - 1);
  const placeStart = new Int32Array(tree.node.length + 1);
  tree.weight.forEach((w, k) => {
    placeStart[k + 1] = placeStart[k] + w;
  });
  const { order, position } = unknownsInOrder(n, graph, tree, placeStart);
  const column = Int32Array.from(first, (k) => placeStart[k]);
  const rowStart = new Int32Array(count + 1);
  const valueStart = new Int32Array(count + 1);
  const parent = new Int32Array(count).fill(-1);
  const superOf = new Int32Array(n);
  const rows: number[] = [];
  for (let s = 0; s < count; s++) {
    superOf.fill(s, column[s], column[s + 1]);
    for (const k of tree.column[first[s + 1] - 1])
      for (let i = placeStart[k]; i < placeStart[k + 1]; i++) rows.push(i);
    rowStart[s + 1] = rows.length;
    const wide = column[s + 1] - column[s];
    valueStart[s + 1] = valueStart[s] + wide * (wide + rowStart[s + 1] - rowStart[s]);
  }
  const row = Int32Array.from(rows);
  for (let s = 0; s < count; s++)
    if (rowStart[s + 1] > rowStart[s]) parent[s] = superOf[row[rowStart[s]]];
  const shape = { column, rowStart, row, parent, valueStart };
  return {
    pattern,
    order,
    position,
    ...shape,
    inParent: placesInParent(shape),
    ...scatter(pattern, position, superOf, shape),
    stackSize: stackSize(shape),
    entries: valueStart[count],
  };
}

function unknownsInOrder(
  n: number,
  graph: Graph,
  tree: Tree,
  placeStart: Int32Array,
): { readonly order: Int32Array; readonly position: Int32Array } {
  const at = placeStart.slice();
  const position = new Int32Array(n);
  const order = new Int32Array(n);
  graph.nodeOf.forEach((node, i) => {
    position[i] = at[tree.place[node]]++;
    order[position[i]] = i;
  });
  return { order, position };
}

type Shape = Pick<SymbolicFactor, 'column' | 'rowStart' | 'row' | 'parent' | 'valueStart'>;

/** Place of a position in the front of supernode s. */
function inFront({ column, rowStart, row }: Shape, s: number, position: number): number {
  if (position < column[s + 1]) return position - column[s];
  let low = rowStart[s];
  let high = rowStart[s + 1] - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (row[middle] < position) low = middle + 1;
    else high = middle;
  }
  return column[s + 1] - column[s] + low - rowStart[s];
}

function placesInParent(shape: Shape): Int32Array {
  const inParent = new Int32Array(shape.row.length);
  for (let s = 0; s < shape.parent.length; s++)
    for (let k = shape.rowStart[s]; k < shape.rowStart[s + 1]; k++)
      inParent[k] = inFront(shape, shape.parent[s], shape.row[k]);
  return inParent;
}

function scatter(
  { n, start, row }: SymmetricPattern,
  position: Int32Array,
  superOf: Int32Array,
  shape: Shape,
): Pick<SymbolicFactor, 'scatterStart' | 'scatterEntry' | 'scatterTo'> {
  const count = shape.parent.length;
  const scatterStart = new Int32Array(count + 1);
  const owner = new Int32Array(row.length);
  for (let j = 0; j < n; j++)
    for (let e = start[j]; e < start[j + 1]; e++) {
      owner[e] = superOf[Math.min(position[j], position[row[e]])];
      scatterStart[owner[e] + 1]++;
    }
  for (let s = 0; s < count; s++) scatterStart[s + 1] += scatterStart[s];
  const at = scatterStart.slice();
  const scatterEntry = new Int32Array(row.length);
  const scatterTo = new Int32Array(row.length);
  for (let j = 0; j < n; j++)
    for (let e = start[j]; e < start[j + 1]; e++) {
      const s = owner[e];
      const low = Math.min(position[j], position[row[e]]);
      const high = Math.max(position[j], position[row[e]]);
      const wide = shape.column[s + 1] - shape.column[s];
      const k = at[s]++;
      scatterEntry[k] = e;
      scatterTo[k] = shape.valueStart[s] + inFront(shape, s, high) * wide + low - shape.column[s];
    }
  return { scatterStart, scatterEntry, scatterTo };
}

/** Most numbers on the stack while updates are passed up: children's below, the new one above. */
function stackSize({ parent, rowStart }: Shape): number {
  let most = 0;
  let now = 0;
  const freed = new Float64Array(parent.length);
  for (let s = 0; s < parent.length; s++) {
    const size = (rowStart[s + 1] - rowStart[s]) ** 2;
    most = Math.max(most, now + size);
    now += size - freed[s];
    if (parent[s] >= 0) freed[parent[s]] += size;
  }
  return most;
}
