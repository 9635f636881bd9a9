// A drawing that is kept going in an element: what it shows follows the props, how it is looked at the
// gestures.

import {
  type RefObject,
  useEffect,
  useLayoutEffect,
  useMemo,
  useReducer,
  useRef,
  useState,
} from 'react';
import { flushSync } from 'react-dom';
import { moveArrows, seenArrow, withBearings } from './bearings.ts';
import { listenToGestures } from './gestures.ts';
import type { Panels } from './panels.ts';
import type { PanelsViewProps } from './panels-view.tsx';
import {
  ballRoom,
  dragged,
  firstView,
  firstViewInside,
  type Pose,
  pickedPanel,
  poseOf,
  rayThrough,
  roomOf,
  type View,
  zoomed,
} from './pose.ts';
import type { Scene3d } from './scene.ts';
import { type Palette, readPalette, watchScheme } from './scheme.ts';

/** Loads what draws, so that it is there when it is wanted. */
export const loadScene = (): Promise<typeof import('./scene.ts')> => import('./scene.ts');

type Engine = 'starting' | 'drawing' | 'missing' | 'lost';

/** Width over height of an element. */
export const shapeOf = (host: HTMLElement | null): number =>
  host && host.clientHeight > 0 ? host.clientWidth / host.clientHeight : 1;

const MOST_RATIO = 2;

/** The drawing in `host`. */
export function useDrawing(host: RefObject<HTMLDivElement | null>, props: PanelsViewProps) {
  const { panels, fillOf, inside = false } = props;
  const [engine, setEngine] = useState<Engine>('starting');
  const [printing, setPrinting] = useState(false);
  const [, redraw] = useReducer((count: number) => count + 1, 0);
  const scene = useRef<Scene3d | null>(null);
  const palette = useRef<Palette | null>(null);
  const frame = useRef(0);
  const { startView = firstView, steady = false, bearings } = props;
  const marked = (bearings?.length ?? 0) > 0;
  const room = useMemo(() => {
    const own = steady ? ballRoom(panels.radius) : roomOf(panels);
    return marked ? withBearings(own) : own;
  }, [panels, steady, marked]);
  const views = useRef({ outside: startView, inside: firstViewInside });
  const started = useRef(startView);
  if (started.current !== startView) {
    started.current = startView;
    views.current = { ...views.current, outside: startView };
  }
  const view = useRef<View>(firstView);
  view.current = views.current[inside ? 'inside' : 'outside'];
  const latest = useRef({ props, room, engine });
  latest.current = { props, room, engine };

  const acts = useRef(
    makeActs(() => ({
      ...latest.current,
      host: host.current,
      view,
      views,
      scene,
      palette,
      frame,
      redraw,
    })),
  ).current;

  useEffect(() => {
    let gone = false;
    void loadScene()
      .then(({ openScene }) => {
        if (gone || !host.current) return;
        const opened = openScene();
        scene.current = opened;
        host.current.append(opened.canvas);
        opened.canvas.addEventListener('webglcontextlost', (event) => {
          event.preventDefault();
          if (!gone) setEngine('lost');
        });
        opened.canvas.addEventListener('webglcontextrestored', () => {
          if (!gone) setEngine('drawing');
        });
        setEngine('drawing');
      })
      .catch(() => {
        if (!gone) setEngine('missing');
      });
    return () => {
      gone = true;
      cancelAnimationFrame(frame.current);
      scene.current?.dispose();
      scene.current = null;
    };
  }, [host]);

  useEffect(() => {
    const dress = (): void => {
      palette.current = readPalette();
      acts.dress();
    };
    dress();
    return watchScheme(dress);
  }, [acts]);

  // Paper has no graphics card.
  useEffect(() => {
    const before = (): void => flushSync(() => setPrinting(true));
    const after = (): void => setPrinting(false);
    addEventListener('beforeprint', before);
    addEventListener('afterprint', after);
    return () => {
      removeEventListener('beforeprint', before);
      removeEventListener('afterprint', after);
    };
  }, []);

  useEffect(() => {
    const element = host.current;
    if (!element) return;
    const observer = new ResizeObserver(() => acts.fit());
    observer.observe(element);
    const stop = listenToGestures(element, acts);
    return () => {
      observer.disconnect();
      stop();
    };
  }, [host, acts]);

  useLayoutEffect(() => {
    if (engine !== 'drawing') return;
    acts.fit();
    acts.load(panels, fillOf);
  }, [engine, panels, fillOf, acts]);

  useLayoutEffect(() => acts.look());

  const still = printing || engine === 'missing' || engine === 'lost' ? view.current : null;
  return { engine, still, view, turn: acts.turn, pickMiddle: () => acts.pick(0, 0) };
}

interface Parts {
  readonly props: PanelsViewProps;
  readonly room: ReturnType<typeof roomOf>;
  readonly engine: Engine;
  readonly host: HTMLDivElement | null;
  readonly view: RefObject<View>;
  readonly views: RefObject<{ outside: View; inside: View }>;
  readonly scene: RefObject<Scene3d | null>;
  readonly palette: RefObject<Palette | null>;
  readonly frame: RefObject<number>;
  readonly redraw: () => void;
}

/** What can be done to a drawing; `parts` gives its present state. */
function makeActs(parts: () => Parts) {
  const aspect = (): number => shapeOf(parts().host);
  const pose = (): Pose => {
    const { view, room, props } = parts();
    return poseOf(view.current, room, aspect(), props.inside ?? false);
  };

  /** Draws before the next picture of the screen, once however often it is asked. */
  function soon(): void {
    const { frame } = parts();
    if (frame.current !== 0) return;
    frame.current = requestAnimationFrame(() => {
      frame.current = 0;
      draw();
    });
  }

  function draw(): void {
    const { scene, engine, props, host, room } = parts();
    const inside = props.inside ?? false;
    const eye = pose();
    if (scene.current && engine === 'drawing') scene.current.draw(eye, inside);
    const svg = host?.parentElement?.querySelector<SVGSVGElement>('svg.bearings');
    if (!host || !svg || !props.bearings) return;
    const size = { width: host.clientWidth, height: host.clientHeight };
    const { radius } = props.panels;
    moveArrows(
      svg,
      props.bearings.map((one) => seenArrow(one, room, radius, eye, size, inside)),
    );
  }

  function turn(next: View): void {
    const { view, views, props, engine, redraw } = parts();
    view.current = next;
    views.current = { ...views.current, [props.inside ? 'inside' : 'outside']: next };
    if (engine === 'missing' || engine === 'lost') redraw();
    soon();
  }

  /** The panels or their fills changed. */
  function load(panels: Panels, fillOf: PanelsViewProps['fillOf']): void {
    const { scene, palette } = parts();
    const pens = palette.current;
    if (!scene.current || !pens) return;
    scene.current.setPalette(pens);
    scene.current.setPanels(
      panels,
      Array.from(panels.kind, (_, rank) => pens.dressOf(fillOf(rank))),
    );
    look();
  }

  /** The scheme changed. */
  function dress(): void {
    const { props } = parts();
    load(props.panels, props.fillOf);
  }

  /** What is selected or shown changed. */
  function look(): void {
    const { props, scene } = parts();
    scene.current?.setLook({
      shown: props.shown ?? Infinity,
      selected: props.selected ?? -1,
      kind: props.kind ?? -1,
      growing: props.growing ?? false,
    });
    soon();
  }

  const inside = (): boolean => parts().props.inside ?? false;

  return {
    turn,
    drag: (dx: number, dy: number): void => turn(dragged(parts().view.current, dx, dy, inside())),
    zoom: (factor: number): void => turn(zoomed(parts().view.current, factor, inside())),
    pick(x: number, y: number): void {
      const { props } = parts();
      const eye = pose();
      const ray = rayThrough(eye, aspect(), x, y);
      props.onPick?.(pickedPanel(props.panels, props.shown ?? Infinity, eye.eye, ray));
    },
    /** The size of the element changed. */
    fit(): void {
      const { host, scene } = parts();
      if (!host || host.clientWidth === 0 || host.clientHeight === 0) return;
      const ratio = Math.min(MOST_RATIO, devicePixelRatio || 1);
      scene.current?.setSize(host.clientWidth, host.clientHeight, ratio);
      // At once: a canvas that was given a new size is empty.
      draw();
    },
    /** The panels or their fills changed. */
    load,
    dress,
    look,
  };
}
