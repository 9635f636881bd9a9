// How the flat plan is looked at: the rectangle of the drawing that fills the window, in
// millimetres of the drawing, x right, y down. The window's shape is kept.

import type { Spot } from './pick.ts';

/** The part of the drawing on show. */
export interface Viewport {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Nearest: so many times as large as the whole. */
const NEAREST = 24;

/** All of a box, in the middle of a window of this shape (width over height). */
export function fitted(box: Viewport, aspect: number): Viewport {
  const width = Math.max(box.width, box.height * aspect);
  const height = width / aspect;
  return {
    x: box.x + box.width / 2 - width / 2,
    y: box.y + box.height / 2 - height / 2,
    width,
    height,
  };
}

/** Nearer by a factor, `at` staying where it is; never farther than `whole`, which is then shown. */
export function zoomed(view: Viewport, factor: number, at: Spot, whole: Viewport): Viewport {
  const width = Math.max(whole.width / NEAREST, view.width / factor);
  if (width >= whole.width * 0.999) return whole;
  const k = width / view.width;
  return kept(
    {
      x: at[0] - (at[0] - view.x) * k,
      y: at[1] - (at[1] - view.y) * k,
      width,
      height: view.height * k,
    },
    whole,
  );
}

/** Moved, so that the drawing never leaves the window. */
export const moved = (view: Viewport, dx: number, dy: number, whole: Viewport): Viewport =>
  kept({ ...view, x: view.x + dx, y: view.y + dy }, whole);

/** Moved, if need be, so that a spot is well in sight. */
export function showing(view: Viewport, [x, y]: Spot, whole: Viewport): Viewport {
  const [mx, my] = [0.12 * view.width, 0.12 * view.height];
  const dx = Math.min(0, x - (view.x + mx)) + Math.max(0, x - (view.x + view.width - mx));
  const dy = Math.min(0, y - (view.y + my)) + Math.max(0, y - (view.y + view.height - my));
  return dx === 0 && dy === 0 ? view : moved(view, dx, dy, whole);
}

/** Whether a spot is on show. */
export const inSight = ({ x, y, width, height }: Viewport, [px, py]: Spot): boolean =>
  px >= x && px <= x + width && py >= y && py <= y + height;

/** Whether all of it is on show. */
export const isWhole = (view: Viewport, whole: Viewport): boolean =>
  view.width >= whole.width * 0.999;

function kept(view: Viewport, whole: Viewport): Viewport {
  const within = (at: number, size: number, from: number, room: number): number =>
    Math.min(Math.max(at, from), from + Math.max(0, room - size));
  return {
    ...view,
    x: within(view.x, view.width, whole.x, whole.width),
    y: within(view.y, view.height, whole.y, whole.height),
  };
}
