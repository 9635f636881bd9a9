// The drawing of the Shape sheet: the kinds before anything closed, the part that stands while the
// engine tries, the net as it is laid, the whole ball, or how far it got. One 3D view shows all but
// the kinds, so that one follows from the other.

import {
  type Fill,
  type Identification,
  type IdentifyProgress,
  type Kind,
  kindFills,
  type Shape,
} from '@shellraise/core';
import { useCallback, useEffect, useMemo, useState } from 'react';
import { panelsOfPart, panelsOfShell } from '../../drawing/shell-view/panels.ts';
import { PanelsView } from '../../drawing/shell-view/panels-view.tsx';
import { firstView, type View } from '../../drawing/shell-view/pose.ts';
import { loadScene } from '../../drawing/shell-view/use-drawing.ts';
import { useApp, useAppState, useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { KindLegend, KindList } from './kind-legend.tsx';
import { KindsDrawing } from './kinds-drawing.tsx';
import { placesOfKinds } from './misfits.ts';
import { neighboursOf } from './neighbours.ts';
import type { Stage } from './stage.ts';
import type { Growth } from './use-growth.ts';

/** What the drawing shows. */
export interface DrawingPaneProps {
  readonly stage: Stage;
  readonly progress: IdentifyProgress | null;
  readonly found: Identification | null;
  /** The shape that is shown, where one was found. */
  readonly shape: Shape | null;
  /** Whether that is the second shell of the heap. */
  readonly second: boolean;
  /** Kinds that its places go by; those of the question where there is none. */
  readonly kinds: readonly Kind[];
  readonly growth: Growth;
}

/** The drawing. */
export function DrawingPane(props: DrawingPaneProps) {
  const { stage, progress, found, shape, kinds } = props;
  const words = useWords().shape;
  const fills = useMemo(() => kindFills(kinds), [kinds]);
  const furthest = stage === 'nothing' ? (found?.furthest ?? null) : null;
  const part = stage === 'running' ? (progress?.part ?? null) : furthest;
  const panels = useMemo(
    () => (shape ? panelsOfShell(shape.shell) : part ? panelsOfPart(part) : null),
    [shape, part],
  );
  useEffect(() => {
    // A browser that can't load it says so where it is shown.
    loadScene().catch(() => undefined);
  }, []);
  if (panels) return <PanelsPane {...props} panels={panels} fills={fills} />;
  if (stage === 'running')
    return (
      <>
        <Heading what={words.drawn.running} />
        <p className="shape-waiting quiet">{words.drawn.nothingYet}</p>
      </>
    );
  return (
    <>
      <Heading what={words.start.heading} more={words.start.drawing} />
      <KindsDrawing kinds={kinds} fills={fills} label={words.start.label} />
      <KindList kinds={kinds} fills={fills} />
    </>
  );
}

function Heading({ what, more }: { what: string; more?: string }) {
  return (
    <h1 className="shape-heading">
      {what}
      {more ? <span className="quiet"> · {more}</span> : null}
    </h1>
  );
}

/** From above the cap's pole, a little aslant. */
const aboveView: View = { ...firstView, elevation: 0.9 };

interface PanelsPaneProps extends DrawingPaneProps {
  readonly panels: ReturnType<typeof panelsOfShell>;
  readonly fills: readonly Fill[];
}

function PanelsPane(props: PanelsPaneProps) {
  const { stage, found, shape, second, kinds, growth, panels, fills } = props;
  const { shape: shapeWords, hard } = useWords();
  const { drawn } = shapeWords;
  const lengths = useLengths();
  const picking = usePicking(shape, kinds, growth);
  const fillOf = useCallback((rank: number) => fills[panels.kind[rank] as number], [fills, panels]);
  const counts = useMemo(() => (shape ? placesOfKinds(shape, kinds.length) : []), [shape, kinds]);
  const startView = useMemo(() => (shape ? viewOfFirst(shape) : aboveView), [shape]);
  const all = panels.kind.length;
  const stuck = stage === 'nothing' ? (found?.stuck[0]?.panel ?? null) : null;
  const { growing, shown } = growth;
  const headOf = (own: Shape, other: boolean): string =>
    other ? hard.besides.drawn : own.closed ? drawn.whole : hard.part;
  const moreOf = ({ closed }: Shape): string => (closed ? drawn.notUpright : hard.partMore);
  const [what, more] = shape
    ? [headOf(shape, second), growing ? drawn.growing(shown, all) : moreOf(shape)]
    : stage === 'running'
      ? [drawn.running, drawn.standing(all)]
      : [drawn.furthest, drawn.furthestCount(all)];
  const acrossAll = shape ? lengths.large(2 * shape.radius) : '';
  const list = kinds.map((kind, k) => drawn.kindCount(kind.id, counts[k] ?? 0)).join(', ');
  return (
    <>
      <Heading what={what} more={more} />
      <PanelsView
        panels={panels}
        fillOf={fillOf}
        selected={shape ? picking.place : stuck}
        kind={picking.kind}
        shown={shape ? shown : Infinity}
        growing={growing}
        onPick={shape ? picking.pick : undefined}
        startView={startView}
        steady={stage === 'running'}
        label={shape?.closed ? drawn.label(all, acrossAll) : drawn.partLabel(all)}
        description={shape ? drawn.kinds(list) : undefined}
      />
      {shape ? (
        <>
          <Below shape={shape} kinds={kinds} growth={growth} place={picking.place} />
          <KindLegend kinds={kinds} fills={fills} counts={counts} />
        </>
      ) : stage === 'nothing' ? (
        <p className="shape-caption quiet">{stuck === null ? '' : drawn.stuckHere}</p>
      ) : null}
    </>
  );
}

/** The panel that was pressed; its kind is selected everywhere. */
function usePicking(shape: Shape | null, kinds: readonly Kind[], growth: Growth) {
  const app = useApp();
  const [picked, setPicked] = useState<{ shape: Shape; place: number } | null>(null);
  const selected = useAppState(({ selection }) =>
    selection?.type === 'kind' ? selection.id : null,
  );
  const pick = (place: number | null): void => {
    if (!shape) return;
    if (growth.growing) {
      growth.skip();
      return;
    }
    setPicked(place === null ? null : { shape, place });
    const kind = place === null ? undefined : kinds[shape.shell.kind[place] as number];
    app.select(kind ? { type: 'kind', id: kind.id } : null);
  };
  const at = selected === null ? -1 : kinds.findIndex(({ id }) => id === selected);
  const place = shape && picked?.shape === shape ? picked.place : null;
  if (!shape || growth.growing) return { pick, place: null, kind: null };
  // Another kind was chosen since.
  const own = place !== null && shape.shell.kind[place] === at;
  return { pick, place: own ? place : null, kind: at < 0 ? null : at };
}

function Below({
  shape: { shell },
  kinds,
  growth,
  place,
}: {
  shape: Shape;
  kinds: readonly Kind[];
  growth: Growth;
  place: number | null;
}) {
  const { drawn } = useWords().shape;
  const idOf = (kind: number | null): string =>
    kind === null ? drawn.open : (kinds[kind]?.id ?? '');
  return (
    <div className="shape-below">
      <p className="shape-caption" aria-live="polite">
        {place === null ? (
          <span className="quiet screen-only">{drawn.pickHint}</span>
        ) : (
          drawn.picked(
            idOf(shell.kind[place] ?? null),
            neighboursOf(shell, place).map(idOf).join(', '),
          )
        )}
      </p>
      <button
        type="button"
        className="screen-only"
        onClick={growth.growing ? growth.skip : growth.grow}
      >
        {growth.growing ? drawn.skip : drawn.again}
      </button>
    </div>
  );
}

/** The eye a little aside of where the first panel lies, so that the growth begins in sight. */
function viewOfFirst({ shell }: Shape): View {
  const hub = 3 * (shell.sideHub[0] ?? 0);
  const [x, y, z] = [shell.hubs[hub] ?? 1, shell.hubs[hub + 1] ?? 0, shell.hubs[hub + 2] ?? 0];
  const elevation = Math.asin(Math.max(-1, Math.min(1, z / (Math.hypot(x, y, z) || 1))));
  return {
    azimuth: Math.atan2(y, x) + 0.35,
    elevation: Math.max(-0.9, Math.min(0.9, elevation - 0.25)),
    zoom: 1,
  };
}
