// The drawing of the Shape sheet: the kinds before anything closed, the part that stands while the
// engine tries, the net as it is laid, the whole ball, or how far it got.

import {
  type Fill,
  type GrownPart,
  type Identification,
  type IdentifyProgress,
  type Kind,
  kindFills,
  type Shape,
} from '@shellraise/core';
import { useCallback, useMemo, useState } from 'react';
import { panelsOfPart } from '../../drawing/shell-view/panels.ts';
import { PanelsView } from '../../drawing/shell-view/panels-view.tsx';
import { firstView, type View } from '../../drawing/shell-view/pose.ts';
import { ShellView } from '../../drawing/shell-view/shell-view.tsx';
import { useApp, useAppState, useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { KindSwatch } from './kind-swatch.tsx';
import { KindsDrawing } from './kinds-drawing.tsx';
import { placesOfKinds } from './misfits.ts';
import { neighboursOf } from './neighbours.ts';
import type { Growth } from './use-growth.ts';

/** The heading of the drawing. */
function Heading({ what, more }: { what: string; more?: string }) {
  return (
    <h1 className="shape-heading">
      {what}
      {more ? <span className="quiet"> · {more}</span> : null}
    </h1>
  );
}

/** The kinds, before anything closed. */
export function KindsPane({ kinds }: { kinds: readonly Kind[] }) {
  const words = useWords().shape;
  const fills = useMemo(() => kindFills(kinds), [kinds]);
  return (
    <>
      <Heading what={words.start.heading} more={words.start.drawing} />
      <KindsDrawing kinds={kinds} fills={fills} label={words.start.label} />
      <ul className="kind-legend" aria-label={words.drawn.legend}>
        {kinds.map((kind, k) => (
          <li key={kind.id} className="legend-line">
            <KindSwatch kind={kind} fill={fills[k] as Fill} /> <strong>{kind.id}</strong>{' '}
            <span className="quiet">{kind.counted ? kind.good : ''}</span>
          </li>
        ))}
      </ul>
    </>
  );
}

/** The part that stands while the engine tries. */
export function TryingPane({
  progress,
  kinds,
}: {
  progress: IdentifyProgress | null;
  kinds: readonly Kind[];
}) {
  const words = useWords().shape;
  const part = progress?.part ?? null;
  return (
    <>
      <Heading what={words.drawn.running} more={words.drawn.standing(part?.kind.length ?? 0)} />
      {part ? (
        <PartView part={part} kinds={kinds} stuck={null} steady />
      ) : (
        <p className="shape-waiting quiet">{words.drawn.nothingYet}</p>
      )}
    </>
  );
}

/** How far it got where nothing closed. */
export function FurthestPane({ found, kinds }: { found: Identification; kinds: readonly Kind[] }) {
  const words = useWords().shape;
  const { furthest, stuck } = found;
  if (!furthest) return <KindsPane kinds={kinds} />;
  return (
    <>
      <Heading what={words.drawn.furthest} more={words.drawn.furthestCount(furthest.kind.length)} />
      <PartView part={furthest} kinds={kinds} stuck={stuck[0]?.panel ?? null} />
      <p className="shape-caption quiet">{stuck.length > 0 ? words.drawn.stuckHere : ''}</p>
    </>
  );
}

/** From above the cap's pole, a little aslant. */
const aboveView: View = { ...firstView, elevation: 0.9 };

function PartView({
  part,
  kinds,
  stuck,
  steady = false,
}: {
  part: GrownPart;
  kinds: readonly Kind[];
  stuck: number | null;
  steady?: boolean;
}) {
  const words = useWords().shape;
  const panels = useMemo(() => panelsOfPart(part), [part]);
  const fills = useMemo(() => kindFills(kinds), [kinds]);
  const fillOf = useCallback((rank: number) => fills[panels.kind[rank] as number], [fills, panels]);
  return (
    <PanelsView
      panels={panels}
      fillOf={fillOf}
      selected={stuck}
      startView={aboveView}
      label={words.drawn.partLabel(part.kind.length)}
      steady={steady}
    />
  );
}

/** The net that was found. */
export function FoundPane({
  shape,
  kinds,
  growth,
}: {
  shape: Shape;
  kinds: readonly Kind[];
  growth: Growth;
}) {
  const words = useWords().shape;
  const lengths = useLengths();
  const app = useApp();
  const fills = useMemo(() => kindFills(kinds), [kinds]);
  const [picked, setPicked] = useState<{ shape: Shape; place: number } | null>(null);
  const place = picked?.shape === shape ? picked.place : null;
  const selected = useAppState(({ selection }) =>
    selection?.type === 'kind' ? selection.id : null,
  );
  const counts = useMemo(() => placesOfKinds(shape, kinds.length), [shape, kinds]);
  const all = shape.shell.kind.length;
  const kindAt = selected === null ? -1 : kinds.findIndex(({ id }) => id === selected);
  const startView = useMemo(() => viewOfPlace(shape), [shape]);

  const pick = (next: number | null): void => {
    if (growth.growing) {
      growth.skip();
      return;
    }
    setPicked(next === null ? null : { shape, place: next });
    const kind = next === null ? undefined : kinds[shape.shell.kind[next] as number];
    app.select(kind ? { type: 'kind', id: kind.id } : null);
  };
  const list = kinds.map((kind, k) => words.drawn.kindCount(kind.id, counts[k] ?? 0)).join(', ');
  const description = words.drawn.kinds(list);

  return (
    <>
      <Heading
        what={words.drawn.whole}
        more={growth.growing ? words.drawn.growing(growth.shown, all) : words.drawn.notUpright}
      />
      <ShellView
        shell={shape.shell}
        fills={fills}
        selected={growth.growing ? null : place}
        kind={growth.growing || kindAt < 0 ? null : kindAt}
        shown={growth.shown}
        growing={growth.growing}
        onPick={pick}
        startView={startView}
        label={words.drawn.label(all, lengths.large(2 * shape.radius))}
        description={description}
      />
      <div className="shape-below">
        <p className="shape-caption" aria-live="polite">
          {place === null ? (
            <span className="quiet">{words.drawn.pickHint}</span>
          ) : (
            words.drawn.picked(
              kinds[shape.shell.kind[place] as number]?.id ?? '',
              neighboursOf(shape.shell, place)
                .map((kind) => (kind === null ? words.drawn.open : (kinds[kind]?.id ?? '')))
                .join(', '),
            )
          )}
        </p>
        <button
          type="button"
          className="screen-only"
          onClick={growth.growing ? growth.skip : growth.grow}
        >
          {growth.growing ? words.drawn.skip : words.drawn.again}
        </button>
      </div>
      <Legend kinds={kinds} fills={fills} counts={counts} selected={selected} />
    </>
  );
}

function Legend({
  kinds,
  fills,
  counts,
  selected,
}: {
  kinds: readonly Kind[];
  fills: readonly Fill[];
  counts: readonly number[];
  selected: string | null;
}) {
  const words = useWords().shape;
  const app = useApp();
  return (
    <ul className="kind-legend" aria-label={words.drawn.legend}>
      {kinds.map((kind, k) => (
        <li key={kind.id}>
          <button
            type="button"
            aria-pressed={kind.id === selected}
            onClick={() => app.select(kind.id === selected ? null : { type: 'kind', id: kind.id })}
          >
            <KindSwatch kind={kind} fill={fills[k] as Fill} />
            <span>{kind.id}</span>
            <span className="quiet">{counts[k]}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}

/** The eye a little aside of where the first panel lies, so that the growth begins in sight. */
function viewOfPlace({ shell }: Shape): View {
  const hub = 3 * (shell.sideHub[0] ?? 0);
  const [x, y, z] = [shell.hubs[hub] ?? 1, shell.hubs[hub + 1] ?? 0, shell.hubs[hub + 2] ?? 0];
  const elevation = Math.asin(Math.max(-1, Math.min(1, z / (Math.hypot(x, y, z) || 1))));
  return {
    azimuth: Math.atan2(y, x) + 0.35,
    elevation: Math.max(-0.9, Math.min(0.9, elevation - 0.25)),
    zoom: 1,
  };
}
