// Turning and picking by mouse, pen, fingers and wheel, as plain events of one element. One finger
// turns, two come nearer or go farther, a press without a drag picks.

/** What the gestures do. Positions and ways are in parts of the element's height. */
export interface GestureActs {
  readonly drag: (dx: number, dy: number) => void;
  readonly zoom: (factor: number) => void;
  /** Right and up, −1 … 1 over the element. */
  readonly pick: (x: number, y: number) => void;
}

/** A press that moved less than this many pixels is no drag. */
const STILL = 5;

/** Listens; returns the way to stop. */
export function listenToGestures(element: HTMLElement, acts: GestureActs): () => void {
  const fingers = new Map<number, { x: number; y: number }>();
  let travelled = 0;
  let most = 0;

  const spread = (): number => {
    const [a, b] = [...fingers.values()];
    return a && b ? Math.hypot(a.x - b.x, a.y - b.y) : 0;
  };

  const down = (event: PointerEvent): void => {
    if (event.pointerType === 'mouse' && event.button !== 0) return;
    if (fingers.size === 0) [travelled, most] = [0, 0];
    fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
    most = Math.max(most, fingers.size);
    element.setPointerCapture(event.pointerId);
  };

  const move = (event: PointerEvent): void => {
    const before = fingers.get(event.pointerId);
    if (!before) return;
    const wide = spread();
    const [dx, dy] = [event.clientX - before.x, event.clientY - before.y];
    fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
    travelled += Math.hypot(dx, dy);
    if (travelled < STILL) return;
    const { height } = element.getBoundingClientRect();
    acts.drag(dx / fingers.size / height, dy / fingers.size / height);
    if (wide > 0) acts.zoom(spread() / wide);
  };

  const up = (event: PointerEvent): void => {
    if (!fingers.delete(event.pointerId)) return;
    if (fingers.size > 0 || most > 1 || travelled >= STILL) return;
    const box = element.getBoundingClientRect();
    const x = (2 * (event.clientX - box.left)) / box.width - 1;
    acts.pick(x, 1 - (2 * (event.clientY - box.top)) / box.height);
  };

  const away = (event: PointerEvent): void => {
    fingers.delete(event.pointerId);
    most = 2;
  };

  const wheel = (event: WheelEvent): void => {
    event.preventDefault();
    const pixels = event.deltaMode === 1 ? 30 * event.deltaY : event.deltaY;
    acts.zoom(Math.exp(-Math.max(-200, Math.min(200, pixels)) / (event.ctrlKey ? 120 : 500)));
  };

  element.addEventListener('pointerdown', down);
  element.addEventListener('pointermove', move);
  element.addEventListener('pointerup', up);
  element.addEventListener('pointercancel', away);
  element.addEventListener('wheel', wheel, { passive: false });
  return () => {
    element.removeEventListener('pointerdown', down);
    element.removeEventListener('pointermove', move);
    element.removeEventListener('pointerup', up);
    element.removeEventListener('pointercancel', away);
    element.removeEventListener('wheel', wheel);
  };
}
