// The yard from above: the base ring, the way kept clear, each stack with its number; those of the stage on
// show in the accent with the walks to their places, those before it used up.

import { type PlaceId, placeCentre, type Shell, type YardAnswer } from '@shellraise/core';
import { useMemo } from 'react';
import { useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { type At, barLength, basePoints, stackCorners, walkLine } from './yard-plan.ts';

const lineOf = (points: readonly At[], closed = false): string =>
  `M${points.map(([x, y]) => `${x.toFixed(3)} ${y.toFixed(3)}`).join('L')}${closed ? 'Z' : ''}`;

/** The drawing. */
export function YardDrawing({
  shell,
  yard,
  number,
  of,
}: {
  shell: Shell;
  yard: YardAnswer;
  /** Stage on show, and how many there are. */
  number: number;
  of: number;
}) {
  const words = useWords().yard;
  const lengths = useLengths();
  const base = useMemo(() => basePoints(shell), [shell]);
  const round = Math.max(0, ...base.map((at) => Math.hypot(...at)));
  const inner = Math.min(yard.reach, ...yard.stacks.map(({ out, size }) => out - size[1] / 2));
  const ring = (round + Math.max(round, inner)) / 2;
  const reach = yard.reach * 1.03;
  const type = reach * 0.052;
  const bar = barLength(2 * reach);
  const now = yard.stacks.filter(({ stage }) => stage === number);
  return (
    <section className="ground-drawing raising-drawing yard" aria-label={words.label(number, of)}>
      <div className="ground-drawing-head">
        <h2>{words.drawing(number, of)}</h2>
      </div>
      <div className="plan-room">
        <svg
          viewBox={[-reach, -reach, 2 * reach, 2 * reach].join(' ')}
          role="img"
          aria-label={words.label(number, of)}
          style={{ fontSize: type }}
        >
          <circle className="yard-clear" r={inner} />
          <path className="yard-base" d={lineOf(base, true)} />
          <path className="yard-datum" d={`M0 ${-round * 0.3}V${-round * 0.92}`} />
          <path
            className="yard-datum-head"
            d={`M0 ${-round}l${type * 0.3} ${type * 0.8}h${-type * 0.6}Z`}
          />
          <text className="yard-small" y={-round * 0.18} textAnchor="middle">
            {words.datum}
          </text>
          {now.map(({ number: own, at, pieces }) => (
            <g key={own} className="yard-walks">
              {pieces.map(({ places }) => {
                const place = places[0] as PlaceId;
                const [x, y] = placeCentre(shell, place);
                return <path key={place} d={lineOf(walkLine(at, [x, y], { base: round, ring }))} />;
              })}
            </g>
          ))}
          {yard.stacks.map((stack) => {
            const corners = stackCorners(stack);
            const state = stack.stage < number ? 'used' : stack.stage > number ? 'later' : 'now';
            const [x, y] = middle(corners);
            return (
              <g key={stack.number} className={`yard-stack ${state}`}>
                <title>{words.stackTold(stack.number, stack.stage, stack.panels)}</title>
                <path d={lineOf(corners, true)} />
                <text x={x} y={y + type * 0.35} textAnchor="middle">
                  {stack.number}
                </text>
              </g>
            );
          })}
          <g transform={`translate(${-reach * 0.97} ${reach * 0.97})`}>
            <path className="yard-bar" d={`M0 ${-type * 0.4}V0H${bar}V${-type * 0.4}`} />
            <text className="yard-small" x={bar / 2} y={-type * 0.35} textAnchor="middle">
              {lengths.system === 'metric' ? `${bar} m` : lengths.large(bar)}
            </text>
          </g>
        </svg>
      </div>
      <ul className="raising-legend" aria-label={words.legend}>
        {(['now', 'later', 'used'] as const).map((one) => (
          <li key={one}>
            <span className={`yard-sample ${one}`} aria-hidden="true" /> {words.state[one]}
          </li>
        ))}
        <li>
          <svg viewBox="0 0 18 8" aria-hidden="true">
            <path className="yard-walk-sample" d="M0 4H18" />
          </svg>{' '}
          {words.walks}
        </li>
      </ul>
    </section>
  );
}

/** The middle of a rectangle. */
const middle = ([a, , c]: readonly At[]): At =>
  a && c ? [(a[0] + c[0]) / 2, (a[1] + c[1]) / 2] : [0, 0];
