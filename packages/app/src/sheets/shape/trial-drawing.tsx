// The trial on the grass: the star's panels laid flat, and the gap that the last seam should show.

import type { GrassTrial, Kind, Shape } from '@shellraise/core';
import { kindsOfShape } from '@shellraise/core';
import { useMemo } from 'react';
import { useLengths } from '../../ui/app-context.tsx';
import { inOwnLengths } from '../../ui/own-lengths.ts';
import { useWords } from '../../words/words.ts';
import { type LaidStar, layStar } from './star.ts';

/** The trial, in words and drawn. */
export function Trial({
  trial,
  shape,
  kinds,
}: {
  trial: GrassTrial;
  shape: Shape;
  kinds: readonly Kind[];
}) {
  const { hard, shape: shapeWords } = useWords();
  const words = hard.trial;
  const lengths = useLengths();
  const star = useMemo(
    () => layStar(trial, kindsOfShape(shape, kinds), shape.fittedSides),
    [trial, shape, kinds],
  );
  const gap = lengths.small(trial.gap);
  return (
    <section className="trial">
      <h2>{words.heading}</h2>
      <p>{words.intro(trial.around.map(({ kind }) => kind).join('\u00a0– '))}</p>
      {star ? (
        <StarDrawing star={star} gap={gap} label={words.label(trial.around.length, gap)} />
      ) : null}
      <p>
        {words.gap(gap, lengths.small(trial.gapSd))}{' '}
        {words.more(
          lengths.small(trial.most),
          trial.least === undefined ? null : lengths.small(trial.least),
        )}{' '}
        {(trial.rivals ?? [])
          .map((rival) => words.rival(rival.shape + 1, lengths.small(rival.gap)))
          .join(' ')}
      </p>
      {trial.words ? (
        <p className="quiet">{shapeWords.capital(inOwnLengths(trial.words, lengths))}.</p>
      ) : null}
      <p className="quiet">{words.care}</p>
    </section>
  );
}

const WIDE = 300;

function StarDrawing({ star, gap, label }: { star: LaidStar; gap: string; label: string }) {
  const all = star.panels.flatMap(({ corners }) => corners);
  const [xs, ys] = [all.map(([x]) => x), all.map(([, y]) => y)];
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const k = WIDE / Math.max(right - left, high - low);
  const at = ([x, y]: readonly [number, number]): readonly [number, number] => [k * x, -k * y];
  const path = (corners: readonly (readonly [number, number])[]): string =>
    `M${corners
      .map((one) =>
        at(one)
          .map((c) => c.toFixed(1))
          .join(' '),
      )
      .join('L')}Z`;
  const [from, to] = [at(star.gap[0]), at(star.gap[1])];
  const lift = Math.min(from[1], to[1]) - 16;
  return (
    <svg
      className="star-drawing"
      viewBox={`${k * left - 30} ${-k * high - 50} ${k * (right - left) + 60} ${k * (high - low) + 60}`}
      role="img"
      aria-label={label}
    >
      {star.panels.map(({ kind, corners, middle }) => (
        <g key={path(corners)}>
          <path className="panel" d={path(corners)} />
          <text x={at(middle)[0]} y={at(middle)[1] + 6} textAnchor="middle">
            {kind}
          </text>
        </g>
      ))}
      <path
        className="gap"
        d={`M${from[0]} ${from[1]}V${lift}M${to[0]} ${to[1]}V${lift}M${from[0]} ${lift + 4}H${to[0]}`}
      />
      <text className="gap-text" x={(from[0] + to[0]) / 2} y={lift - 6} textAnchor="middle">
        {gap}
      </text>
      <circle className="hub" r="4" />
    </svg>
  );
}
