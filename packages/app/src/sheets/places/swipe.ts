// A finger drawn across goes to the tab beside. Not where a drawing takes the finger for its own: a
// plan that is zoomed is moved by it, a shell is turned.

import type { PointerEvent } from 'react';

/** Least way across, pixels, and how much more across than along. */
const WAY = 60;
const SLANT = 1.7;

/** What a finger began. */
export interface Stroke {
  readonly id: number;
  readonly x: number;
  readonly y: number;
}

/** What begins with this press; null where the drawing under it takes the finger. */
export function strokeFrom(event: PointerEvent<Element>): Stroke | null {
  const { target, pointerType, isPrimary, pointerId, clientX, clientY } = event;
  if (pointerType !== 'touch' || !isPrimary || !(target instanceof Element)) return null;
  if (target.closest('[data-takes-finger], input, select')) return null;
  return { id: pointerId, x: clientX, y: clientY };
}

/** The step that a stroke asks for: 1 to the next, a finger drawn to the left; −1 to the one before;
 * 0 where it was none. */
export function stepOf(
  stroke: Stroke,
  end: { readonly pointerId: number; readonly clientX: number; readonly clientY: number },
): -1 | 0 | 1 {
  const [across, along] = [end.clientX - stroke.x, end.clientY - stroke.y];
  if (end.pointerId !== stroke.id || Math.abs(across) < WAY) return 0;
  if (Math.abs(across) < SLANT * Math.abs(along)) return 0;
  return across < 0 ? 1 : -1;
}
