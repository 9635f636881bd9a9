// The growth of a net before one's eyes, replayed in the order in which the engine laid its places:
// slow at first, when every panel is a step, then faster.

/** How long the growth of so many panels takes, milliseconds. */
export const growthTime = (panels: number): number =>
  Math.min(3000, Math.max(1500, 900 + 8 * panels));

/** Panels that lie after a time in milliseconds; all of them from `growthTime` on. */
export function grownAfter(elapsed: number, panels: number): number {
  const share = Math.min(1, Math.max(0, elapsed / growthTime(panels)));
  return share === 1 ? panels : Math.min(panels, Math.max(1, Math.ceil(panels * share ** 1.6)));
}
