// A sheet of the ground on the screen, the same items that are printed: its plan alone, as large as
// there is room, or the whole sheet.

import type { Drawing, Item } from '@shellraise/core';
import { type ReactNode, useMemo, useState } from 'react';
import { SvgItems } from '../../drawing/svg-items.tsx';
import { Pager } from '../../ui/pager.tsx';
import { useWords } from '../../words/words.ts';

/** The drawing with its choices. */
export function SheetDrawing({
  drawings,
  plan: own,
}: {
  drawings: readonly Drawing[];
  /** What is shown in the place of the sheet's plan, with its heading and a note. */
  plan?: { readonly heading: string; readonly note: string; readonly picture: ReactNode };
}) {
  const words = useWords().ground.sheet;
  const [view, setView] = useState<'plan' | 'whole'>('plan');
  const [at, setAt] = useState(0);
  const page = Math.min(at, drawings.length - 1);
  const drawing = drawings[view === 'plan' ? 0 : page];
  const plan = useMemo(() => (drawing ? planOf(drawing) : null), [drawing]);
  if (!drawing) return null;
  const box = view === 'plan' && plan ? plan.box : [0, 0, drawing.width, drawing.height];
  return (
    <section className="ground-drawing" aria-label={drawing.title}>
      <div className="ground-drawing-head screen-only">
        <h2>{own && view === 'plan' ? own.heading : drawing.title.replace(/^.*: /, '')}</h2>
        <fieldset className="legend-choices">
          <legend className="read-out">{words.choices}</legend>
          {(['plan', 'whole'] as const).map((one) => (
            <button
              key={one}
              type="button"
              aria-pressed={view === one}
              onClick={() => setView(one)}
            >
              {words[one]}
            </button>
          ))}
        </fieldset>
        {view === 'whole' && drawings.length > 1 ? (
          <Pager words={words} page={page} count={drawings.length} onPage={setAt} />
        ) : null}
      </div>
      <div className={view === 'whole' ? 'ground-paper whole' : 'ground-paper'} {...reachable}>
        {own && view === 'plan' ? (
          own.picture
        ) : (
          <svg viewBox={box.join(' ')} role="img" aria-label={drawing.description}>
            <SvgItems items={view === 'plan' && plan ? plan.items : drawing.items} />
          </svg>
        )}
      </div>
      {own && view === 'plan' && own.note !== '' ? (
        <p className="ground-note quiet">{own.note}</p>
      ) : null}
    </section>
  );
}

/** A box that scrolls must be reachable by keyboard. */
const reachable = { tabIndex: 0 };

/** The plan of a sheet with the box round it; null where the sheet has none. */
function planOf(drawing: Drawing): {
  readonly items: readonly Item[];
  readonly box: readonly number[];
} | null {
  const plan = drawing.items.find(
    (item) => item.type === 'group' && item.data?.part === 'ground-plan',
  );
  if (plan?.type !== 'group') return null;
  const points = plan.items.flatMap(pointsOf);
  const [x, y] = [points.map((p) => p[0]), points.map((p) => p[1])];
  const [left, top] = [Math.min(...x) - ROUND, Math.min(...y) - ROUND];
  return {
    items: plan.items,
    box: [left, top, Math.max(...x) + ROUND - left, Math.max(...y) + ROUND - top],
  };
}

/** Kept free round the plan, millimetres. */
const ROUND = 6;

function pointsOf(item: Item): (readonly [number, number])[] {
  switch (item.type) {
    case 'group':
      return item.items.flatMap(pointsOf);
    case 'text':
      return [item.at];
    case 'circle':
      return [item.centre];
    case 'path':
      return [...item.points];
  }
}
