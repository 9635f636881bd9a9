// How many bolts are wanted before a piece is let go, over its seams.

/** The least and the most of any seam, null where a seam's holes are unknown. */
export function boltRange(
  bolts: readonly (number | null)[],
): { readonly least: number; readonly most: number } | null {
  const known = bolts.filter((count) => count !== null);
  if (bolts.length === 0 || known.length < bolts.length) return null;
  return { least: Math.min(...known), most: Math.max(...known) };
}
