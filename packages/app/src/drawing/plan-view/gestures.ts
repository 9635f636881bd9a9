// Moving, zooming and pointing on a flat drawing by mouse, pen, fingers and wheel, as plain events of
// one element. A drag moves, two fingers or the wheel zoom about where they are, a press without a
// drag picks, a long one holds. Pixels from the element's top left corner.

import type { Spot } from './pick.ts';

/** What the gestures do. */
export interface PlanActs {
  readonly drag: (dx: number, dy: number) => void;
  readonly zoom: (factor: number, at: Spot) => void;
  /** `coarse` for a finger, which hides what it points at. */
  readonly pick: (at: Spot, coarse: boolean) => void;
  /** A long press, as soon as it is one; null: a long press is a press like any other. */
  readonly hold: ((at: Spot, coarse: boolean) => void) | null;
  readonly reset: () => void;
}

/** A press that moved less than this many pixels is no drag. */
const STILL = 6;
/** A press is a long one from here on, milliseconds. */
const LONG = 550;

/** Listens; returns the way to stop. */
export function listenToPlan(element: HTMLElement, acts: PlanActs): () => void {
  const fingers = new Map<number, Spot>();
  let travelled = 0;
  let most = 0;
  let long: ReturnType<typeof setTimeout> | undefined;
  let held = false;
  const stop = new AbortController();
  const { signal } = stop;

  const spotOf = (event: MouseEvent): Spot => {
    const box = element.getBoundingClientRect();
    return [event.clientX - box.left, event.clientY - box.top];
  };
  const two = (): { wide: number; middle: Spot } | null => {
    const [a, b] = [...fingers.values()];
    if (!a || !b) return null;
    const middle: Spot = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    return { wide: Math.hypot(a[0] - b[0], a[1] - b[1]), middle };
  };

  element.addEventListener(
    'pointerdown',
    (event) => {
      if (event.pointerType === 'mouse' && event.button !== 0) return;
      if (fingers.size === 0) [travelled, most] = [0, 0];
      fingers.set(event.pointerId, spotOf(event));
      most = Math.max(most, fingers.size);
      element.setPointerCapture(event.pointerId);
      held = false;
      clearTimeout(long);
      const { hold } = acts;
      const [at, coarse] = [spotOf(event), event.pointerType === 'touch'];
      if (hold && most === 1)
        long = setTimeout(() => {
          if (fingers.size !== 1 || most !== 1 || travelled >= STILL) return;
          held = true;
          hold(at, coarse);
        }, LONG);
    },
    { signal },
  );
  element.addEventListener(
    'pointermove',
    (event) => {
      const before = fingers.get(event.pointerId);
      if (!before) return;
      const wide = two()?.wide ?? 0;
      const now = spotOf(event);
      fingers.set(event.pointerId, now);
      const [dx, dy] = [now[0] - before[0], now[1] - before[1]];
      travelled += Math.hypot(dx, dy);
      if (travelled < STILL) return;
      acts.drag(dx / fingers.size, dy / fingers.size);
      const pair = two();
      if (pair && wide > 0) acts.zoom(pair.wide / wide, pair.middle);
    },
    { signal },
  );
  element.addEventListener(
    'pointerup',
    (event) => {
      if (!fingers.delete(event.pointerId)) return;
      clearTimeout(long);
      if (fingers.size === 0 && most === 1 && travelled < STILL && !held)
        acts.pick(spotOf(event), event.pointerType === 'touch');
    },
    { signal },
  );
  element.addEventListener(
    'pointercancel',
    (event) => {
      fingers.delete(event.pointerId);
      clearTimeout(long);
      most = 2;
    },
    { signal },
  );
  // A long press must not open the browser's own menu over the drawing.
  element.addEventListener(
    'contextmenu',
    (event) => {
      if (acts.hold) event.preventDefault();
    },
    { signal },
  );
  element.addEventListener('dblclick', acts.reset, { signal });
  element.addEventListener(
    'wheel',
    (event) => {
      event.preventDefault();
      const pixels = event.deltaMode === 1 ? 30 * event.deltaY : event.deltaY;
      const bound = Math.max(-200, Math.min(200, pixels));
      acts.zoom(Math.exp(-bound / (event.ctrlKey ? 120 : 500)), spotOf(event));
    },
    { signal, passive: false },
  );
  return () => {
    clearTimeout(long);
    stop.abort();
  };
}
