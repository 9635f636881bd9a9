// Keeps what part of the flat plan is on show. Moving and zooming change the SVG's view box
// directly, without drawing anything anew.

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
  readonly svg: RefObject<SVGSVGElement | null>;
  /** All of the drawing; keep the same object as long as it is the same drawing. */
  readonly box: Viewport;
  /** Size of most of the type, millimetres: left away where it would be a blur. */
  readonly type: number;
  /** A spot that was pressed, and how many millimetres count as on it. */
  readonly onPick: (spot: Spot, reach: number) => void;
  /** Pixels a millimetre, whenever that changed. */
  readonly onZoom: (pixels: number) => void;
}

/** Type smaller than this can't be read, pixels. */
const READABLE = 5;
/** How near counts as on it, pixels. */
const REACH = { fine: 8, coarse: 14 };

/** The view of a plan in `host`; `whole` is true where all of it is on show. */
export function usePlanView(options: ViewportOptions) {
  const { host, svg, box } = options;
  const latest = useRef(options);
  const view = useRef<Viewport | null>(null);
  const [whole, setWhole] = useState(true);
  latest.current = options;

  const all = useCallback((): Viewport | null => {
    const size = host.current;
    if (!size || size.clientWidth === 0 || size.clientHeight === 0) return null;
    return fitted(latest.current.box, size.clientWidth / size.clientHeight);
  }, [host]);

  const put = useCallback(
    (next: Viewport | null): void => {
      const [element, room] = [svg.current, all()];
      if (!next || !element || !host.current || !room) return;
      view.current = next;
      const { x, y, width, height } = next;
      element.setAttribute('viewBox', `${x} ${y} ${width} ${height}`);
      const pixels = host.current.clientWidth / width;
      const { type, onZoom } = latest.current;
      element.dataset.numbers = type * pixels < READABLE ? 'none' : 'shown';
      setWhole(isWhole(next, room));
      onZoom(pixels);
    },
    [svg, host, all],
  );

  const controls = useRef<PlanControls>({
    zoom: (factor, about) => {
      const [now, room] = [view.current, all()];
      if (!now || !room) return;
      const middle: Spot = [now.x + now.width / 2, now.y + now.height / 2];
      put(zoomed(now, factor, about && inSight(now, about) ? about : middle, room));
    },
    reset: () => put(all()),
    show: (spot) => {
      const [now, room] = [view.current, all()];
      if (now && room) put(showing(now, spot, room));
    },
  }).current;

  useLayoutEffect(() => {
    if (box) put(all());
  }, [box, put, all]);

  useEffect(() => {
    const element = host.current;
    if (!element) return;
    const watch = new ResizeObserver(() => put(all()));
    watch.observe(element);
    const millimetres = (): number => (view.current?.width ?? 1) / (element.clientWidth || 1);
    const spotOf = ([x, y]: Spot): Spot => {
      const k = millimetres();
      return [(view.current?.x ?? 0) + x * k, (view.current?.y ?? 0) + y * k];
    };
    const stop = listenToPlan(element, {
      drag: (dx, dy) => {
        const [now, room, k] = [view.current, all(), millimetres()];
        if (now && room) put(moved(now, -dx * k, -dy * k, room));
      },
      zoom: (factor, at) => {
        const [now, room] = [view.current, all()];
        if (now && room) put(zoomed(now, factor, spotOf(at), room));
      },
      pick: (at, coarse) =>
        latest.current.onPick(spotOf(at), REACH[coarse ? 'coarse' : 'fine'] * millimetres()),
      reset: controls.reset,
    });
    return () => {
      watch.disconnect();
      stop();
    };
  }, [host, put, all, controls]);

  return { controls, whole };
}
