// The shapes that fit, side by side: each as a drawing turned to the hub that tells it, with how
// likely it is and what tells it. Pressing one shows it.

import {
  type Identification,
  type Kind,
  kindFills,
  kindsOfShape,
  type Shape,
} from '@shellraise/core';
import { useCallback, useMemo } from 'react';
import { panelsOfShell } from '../../drawing/shell-view/panels.ts';
import { firstView, type View } from '../../drawing/shell-view/pose.ts';
import { StillView } from '../../drawing/shell-view/still-view.tsx';
import { useEngine } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { percentOf } from './sentences.ts';
import { type Sign, signsOf } from './sign.ts';

/** The shapes. */
export function Others({
  found,
  kinds,
  chosen,
}: {
  found: Identification;
  kinds: readonly Kind[];
  chosen: number;
}) {
  const words = useWords().shape.others;
  const signs = useMemo(() => signsOf(found.shapes, kinds), [found, kinds]);
  return (
    <section className="others">
      <h2>{words.heading(found.shapes.length)}</h2>
      <ul>
        {found.shapes.map((shape, i) => (
          <li key={shape.apart || i}>
            <Other shape={shape} index={i} sign={signs[i] ?? null} kinds={kinds} chosen={chosen} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function Other({
  shape,
  index,
  sign,
  kinds,
  chosen,
}: {
  shape: Shape;
  index: number;
  sign: Sign | null;
  kinds: readonly Kind[];
  chosen: number;
}) {
  const { others: words, capital } = useWords().shape;
  const engine = useEngine();
  const fills = useMemo(() => kindFills(kindsOfShape(shape, kinds)), [shape, kinds]);
  const panels = useMemo(() => panelsOfShell(shape.shell), [shape]);
  const fillOf = useCallback(
    (rank: number) => fills[panels.kind[rank] as number] ?? { tint: null, hatch: null },
    [fills, panels],
  );
  const view = useMemo(() => (sign ? viewOfHub(shape, sign.hub) : firstView), [shape, sign]);
  const more = useMemo(() => {
    const star = new Set(sign?.places);
    return { marked: (rank: number) => star.has(rank), seam: 'hair' } as const;
  }, [sign]);
  const shown = index === chosen;
  return (
    <button
      type="button"
      className="other"
      aria-pressed={shown}
      onClick={() => engine.chooseShape(index)}
    >
      <StillView panels={panels} view={view} fillOf={fillOf} width={60} height={60} more={more} />
      <span className="other-name">
        {words.one(index + 1)} <span className="quiet">{percentOf(shape.probability)}</span>
        {shown ? <span className="accent"> {words.chosen}</span> : null}
      </span>
      <span className="other-apart">
        {shape.apart ? `${capital(shape.apart)}.` : ''}
        {sign ? <span className="quiet"> {words.marked}</span> : null}
      </span>
    </button>
  );
}

/** The eye straight above a hub. */
function viewOfHub({ shell: { hubs } }: Shape, hub: number): View {
  const [x, y, z] = [hubs[3 * hub] ?? 0, hubs[3 * hub + 1] ?? 0, hubs[3 * hub + 2] ?? 1];
  const elevation = Math.asin(z / (Math.hypot(x, y, z) || 1));
  const most = 1.5;
  return {
    azimuth: Math.atan2(y, x),
    elevation: Math.max(-most, Math.min(most, elevation)),
    zoom: 1.9,
  };
}
