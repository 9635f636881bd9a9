// How many drawings go side by side.

/** Rows for so many cells, about half as many again across as down. */
export function rowsFor(cells: number): { readonly across: number; readonly down: number } {
  const across = Math.max(1, Math.min(cells, Math.ceil(Math.sqrt(1.5 * cells))));
  return { across, down: Math.max(1, Math.ceil(cells / across)) };
}
