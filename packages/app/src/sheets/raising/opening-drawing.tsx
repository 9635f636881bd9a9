// The drawing of a thing's way out: the opening from outside at the last stage at which it passes, the thing
// in it, and where it comes from and goes to as thin outlines.

import { type Shell, type ViewAt, wayView } from '@shellraise/core';
import { useMemo } from 'react';
import type { ThingTold } from '../../engine/raised.ts';
import { useWords } from '../../words/words.ts';

const lineOf = (points: readonly ViewAt[]): string =>
  `M${points.map(([x, y]) => `${x.toFixed(3)} ${y.toFixed(3)}`).join('L')}Z`;

/** The drawing. */
export function OpeningDrawing({
  shell,
  numbers,
  leftOut,
  placed,
  thing,
}: {
  shell: Shell;
  numbers: readonly string[];
  leftOut: readonly number[];
  /** Places with their panels at the last stage at which it passes. */
  placed: readonly number[];
  thing: ThingTold;
}) {
  const words = useWords().yard.gear;
  const view = useMemo(
    () => wayView(shell, placed, leftOut, thing.seen),
    [shell, placed, leftOut, thing],
  );
  const own = view.poses[view.through]?.flat() ?? [];
  const centre = own.reduce<ViewAt>(
    ([x, y], at) => [x + at[0] / own.length, y + at[1] / own.length],
    [0, 0],
  );
  // The opening with what is round it, not the whole shell.
  const half = Math.max(
    1.4,
    ...own.map(([x, y]) => Math.hypot(x - centre[0], y - centre[1]) * 1.8),
  );
  const type = half * 0.085;
  const label = words.opening(thing.name, thing.last, view.from);
  return (
    <section className="ground-drawing raising-drawing opening" aria-label={label}>
      <div className="ground-drawing-head">
        <h2>{label}</h2>
      </div>
      <div className="plan-room">
        <svg
          viewBox={[centre[0] - half, centre[1] - half, 2 * half, 2 * half].join(' ')}
          role="img"
          aria-label={label}
          style={{ fontSize: type }}
        >
          {view.panels.map(({ place, at, isIn }) => (
            <path key={place} className={isIn ? 'opening-panel' : 'opening-gap'} d={lineOf(at)} />
          ))}
          {view.from === 'outside' ? (
            <path
              className="opening-ground"
              d={`M${centre[0] - 4 * half} ${view.ground}h${8 * half}`}
            />
          ) : null}
          {view.poses.map((parts, pose) =>
            parts.map((part, i) => (
              <path
                // biome-ignore lint/suspicious/noArrayIndexKey: poses and parts have no other name
                key={`${pose} ${i}`}
                className={pose === view.through ? 'opening-thing' : 'opening-way'}
                d={lineOf(part)}
              />
            )),
          )}
          {view.panels.map(({ place, at, isIn }) => {
            const [x, y] = at.reduce<ViewAt>(
              (sum, one) => [sum[0] + one[0] / at.length, sum[1] + one[1] / at.length],
              [0, 0],
            );
            return isIn && Math.hypot(x - centre[0], y - centre[1]) < half ? (
              <text key={place} x={x} y={y + type * 0.35} textAnchor="middle">
                {numbers[place]}
              </text>
            ) : null;
          })}
        </svg>
      </div>
      <ul className="raising-legend">
        <li>
          <span className="opening-sample thing" aria-hidden="true" /> {words.legend.thing}
        </li>
        <li>
          <span className="opening-sample way" aria-hidden="true" /> {words.legend.way}
        </li>
        <li>
          <span className="opening-sample panel" aria-hidden="true" /> {words.legend.panel}
        </li>
        <li>
          <span className="opening-sample gap" aria-hidden="true" /> {words.legend.gap}
        </li>
      </ul>
    </section>
  );
}
