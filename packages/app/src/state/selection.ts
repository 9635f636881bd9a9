// What is selected: one thing, shared by every drawing and list. Things are named as people name
// them, so that a selection outlives a new computation.

/** The selected thing. */
export type Selection =
  | { readonly type: 'place'; readonly number: string }
  | { readonly type: 'places'; readonly numbers: readonly string[] }
  | { readonly type: 'kind'; readonly id: string }
  | { readonly type: 'seam'; readonly places: readonly [string, string] }
  | { readonly type: 'hub'; readonly hub: number }
  | { readonly type: 'reading'; readonly row: number };

/** Whether two selections are the same thing. */
export function sameSelection(a: Selection | null, b: Selection | null): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
