// How hard the wind tips the shell, by the side it comes from: spokes round the base, datum up, the
// worst in the accent.

import type { WholeWind } from '../../engine/ground.ts';
import { useWords } from '../../words/words.ts';

const SIZE = 200;
const FULL = 72;

/** The rose. */
export function WindRose({ wind: { from, worst } }: { wind: WholeWind }) {
  const words = useWords().ground.wind;
  const most = Math.max(1e-9, ...from.map((one) => one.overturning));
  const at = (angle: number, r: number): string => {
    // From the datum, which is up; anticlockwise is to the left.
    const [x, y] = [SIZE / 2 - r * Math.sin(angle), SIZE / 2 - r * Math.cos(angle)];
    return `${x.toFixed(1)} ${y.toFixed(1)}`;
  };
  const ring = from.map((one) => at(one.from, 12 + (FULL - 12) * (one.overturning / most)));
  return (
    <svg className="wind-rose" viewBox={`0 0 ${SIZE} ${SIZE}`} role="img" aria-label={words.rose}>
      <circle cx={SIZE / 2} cy={SIZE / 2} r={FULL} className="rose-full" />
      <circle cx={SIZE / 2} cy={SIZE / 2} r={12} className="rose-full" />
      <path d={`M${ring.join('L')}Z`} className="rose-area" />
      {from.map((one, i) => (
        <path
          key={one.from}
          d={`M${at(one.from, FULL + 14)}L${at(one.from, 12)}`}
          className={i === worst ? 'rose-spoke worst' : 'rose-spoke'}
        />
      ))}
      {from[worst] ? (
        <path
          className="rose-head"
          transform={`translate(${at(from[worst].from, 14)}) rotate(${(-from[worst].from * 180) / Math.PI})`}
          d="M0 6L-5 -7H5Z"
        />
      ) : null}
      <text x={SIZE / 2} y={14} textAnchor="middle">
        0°
      </text>
    </svg>
  );
}
