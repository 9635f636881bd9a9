// Keeps what part of the flat plan is on show. The drawing is laid out once, all of it fitting the
// window; moving and zooming are a transform of what holds it, so that nothing is laid out anew.

import { type RefObject, useCallback, useEffect, useLayoutEffect, useRef, useState } from 'react';
import { listenToPlan } from './gestures.ts';
import type { Spot } from './pick.ts';
import { fitted, inSight, isWhole, moved, showing, type Viewport, zoomed } from './viewport.ts';

/** What can be done with the view. */
export interface PlanControls {
  /** About a spot, or the middle; a spot out of sight counts as the middle. */
  readonly zoom: (factor: number, about?: Spot | null) => void;
  readonly reset: () => void;
  readonly show: (spot: Spot) => void;
}

/** What the view needs. */
export interface ViewportOptions {
  readonly host: RefObject<HTMLDivElement | null>;
  /** Holds the drawing; as large as the host. */
  readonly sheet: RefObject<HTMLDivElement | null>;
  /** All of the drawing; keep the same object as long as it is the same drawing. */
  readonly box: Viewport;
  /** Size of most of the type, millimetres: left away where it would be a blur. */
  readonly type: number;
  /** A spot that was pressed, and how many millimetres count as on it. */
  readonly onPick: (spot: Spot, reach: number) => void;
  /** The same for a long press; where left out a long press is a press. Whether there is one stays. */
  readonly onHold?: ((spot: Spot, reach: number) => void) | undefined;
  /** Pixels a millimetre, whenever that changed and came to rest. */
  readonly onZoom: (pixels: number) => void;
}

/** Type smaller than this can't be read, pixels. */
const READABLE = 5;
/** After the last move of a gesture everybody else is told, milliseconds. */
const REST = 160;
/** How near counts as on it, pixels. */
const REACH = { fine: 8, coarse: 14 };

/** The view of a plan in `host`; `whole` is true where all of it is on show. */
export function usePlanView(options: ViewportOptions) {
  const { host, sheet, box } = options;
  const latest = useRef(options);
  const view = useRef<Viewport | null>(null);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const [whole, setWhole] = useState(true);
  latest.current = options;
  const holds = options.onHold !== undefined;

  const all = useCallback((): Viewport | null => {
    const size = host.current;
    if (!size || size.clientWidth === 0 || size.clientHeight === 0) return null;
    return fitted(latest.current.box, size.clientWidth / size.clientHeight);
  }, [host]);

  const rest = useCallback((): void => {
    const [now, element, window, room] = [view.current, sheet.current, host.current, all()];
    if (!now || !element || !window || !room) return;
    const pixels = window.clientWidth / now.width;
    const { type, onZoom } = latest.current;
    // What is selected keeps its line weights. Set there alone: it would restyle the whole drawing.
    const over = element.lastElementChild;
    if (over instanceof SVGElement)
      over.style.setProperty('--nearer', String(room.width / now.width));
    const numbers = type * pixels < READABLE ? 'none' : 'shown';
    if (element.dataset.numbers !== numbers) element.dataset.numbers = numbers;
    setWhole(isWhole(now, room));
    onZoom(pixels);
  }, [host, sheet, all]);

  const put = useCallback(
    (next: Viewport | null): void => {
      const [element, window, room] = [sheet.current, host.current, all()];
      if (!next || !element || !window || !room) return;
      view.current = next;
      const nearer = room.width / next.width;
      const pixels = window.clientWidth / next.width;
      const [dx, dy] = [(room.x - next.x) * pixels, (room.y - next.y) * pixels];
      element.style.transform = nearer === 1 ? '' : `translate(${dx}px, ${dy}px) scale(${nearer})`;
      clearTimeout(timer.current);
    },
    [host, sheet, all],
  );

  const settle = useCallback(
    (next: Viewport | null): void => {
      if (next === view.current) return;
      put(next);
      rest();
    },
    [put, rest],
  );

  /** As part of a gesture. */
  const slide = useCallback(
    (next: Viewport | null): void => {
      put(next);
      timer.current = setTimeout(rest, REST);
    },
    [put, rest],
  );

  const controls = useRef<PlanControls>({
    zoom: (factor, about) => {
      const [now, room] = [view.current, all()];
      if (!now || !room) return;
      const middle: Spot = [now.x + now.width / 2, now.y + now.height / 2];
      settle(zoomed(now, factor, about && inSight(now, about) ? about : middle, room));
    },
    reset: () => settle(all()),
    show: (spot) => {
      const [now, room] = [view.current, all()];
      if (now && room) settle(showing(now, spot, room));
    },
  }).current;

  useLayoutEffect(() => {
    if (box) settle(all());
  }, [box, settle, all]);

  useEffect(() => {
    const element = host.current;
    if (!element) return;
    const watch = new ResizeObserver(() => settle(all()));
    watch.observe(element);
    const millimetres = (): number => (view.current?.width ?? 1) / (element.clientWidth || 1);
    const spotOf = ([x, y]: Spot): Spot => {
      const k = millimetres();
      return [(view.current?.x ?? 0) + x * k, (view.current?.y ?? 0) + y * k];
    };
    const stop = listenToPlan(element, {
      drag: (dx, dy) => {
        const [now, room, k] = [view.current, all(), millimetres()];
        if (now && room) slide(moved(now, -dx * k, -dy * k, room));
      },
      zoom: (factor, at) => {
        const [now, room] = [view.current, all()];
        if (now && room) slide(zoomed(now, factor, spotOf(at), room));
      },
      pick: (at, coarse) =>
        latest.current.onPick(spotOf(at), REACH[coarse ? 'coarse' : 'fine'] * millimetres()),
      hold: holds
        ? (at, coarse) =>
            latest.current.onHold?.(spotOf(at), REACH[coarse ? 'coarse' : 'fine'] * millimetres())
        : null,
      reset: controls.reset,
    });
    return () => {
      watch.disconnect();
      clearTimeout(timer.current);
      stop();
    };
  }, [host, settle, slide, all, controls, holds]);

  return { controls, whole };
}
