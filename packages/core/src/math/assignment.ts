// The cheapest way to give each row a column of its own. Shortest augmenting paths with potentials (H. W.
// Kuhn, 1955; R. Jonker, A. Volgenant, Computing 38, 1987; from memory).

/** Row → column so that the sum of `cost[row][column]` is least. RangeError where there are fewer columns
 * than rows, rows of different lengths, or a cost that is no number. */
export function assignment(cost: readonly (readonly number[])[]): number[] {
  const rows = cost.length;
  const columns = cost[0]?.length ?? 0;
  if (columns < rows)
    throw new RangeError(`${rows} rows and ${columns} columns: each row needs one`);
  if (cost.some((row) => row.length !== columns || row.some((x) => !Number.isFinite(x))))
    throw new RangeError(`a row of costs is not ${columns} numbers`);
  // Row and column 0 are none; rowOf: column → its row.
  const [u, v] = [new Float64Array(rows + 1), new Float64Array(columns + 1)];
  const rowOf = new Int32Array(columns + 1);
  for (let row = 1; row <= rows; row++) {
    const least = new Float64Array(columns + 1).fill(Infinity);
    const from = new Int32Array(columns + 1);
    const done = new Uint8Array(columns + 1);
    rowOf[0] = row;
    let at = 0;
    do {
      done[at] = 1;
      const own = rowOf[at];
      let next = 0;
      let step = Infinity;
      for (let c = 1; c <= columns; c++) {
        if (done[c]) continue;
        const reduced = (cost[own - 1]?.[c - 1] as number) - u[own] - v[c];
        if (reduced < least[c]) {
          least[c] = reduced;
          from[c] = at;
        }
        if (least[c] < step) {
          step = least[c];
          next = c;
        }
      }
      for (let c = 0; c <= columns; c++)
        if (done[c]) {
          u[rowOf[c]] += step;
          v[c] -= step;
        } else least[c] -= step;
      at = next;
    } while (rowOf[at] !== 0);
    while (at !== 0) {
      rowOf[at] = rowOf[from[at]];
      at = from[at];
    }
  }
  const found = new Array<number>(rows).fill(-1);
  for (let c = 1; c <= columns; c++) if (rowOf[c] > 0) found[rowOf[c] - 1] = c - 1;
  return found;
}
