// A section through the shell with what is owned to stand on, to scale: how high hands come from each, and
// how high they must come at the stage on show.

import { footholds, type Gear, type HeightsOfStage, type Shell } from '@shellraise/core';
import { useMemo } from 'react';
import { useWords } from '../../words/words.ts';
import { useCardWords } from './use-raising-words.ts';

/** The drawing. */
export function ReachDrawing({
  shell,
  gear,
  heights,
  number,
  numbers,
}: {
  shell: Shell;
  gear: Gear;
  heights: readonly HeightsOfStage[];
  number: number;
  numbers: readonly string[];
}) {
  const words = useWords().yard.gear;
  const write = useCardWords(numbers);
  const ground = useMemo(
    () => shell.hubs.reduce((low, z, i) => (i % 3 === 2 ? Math.min(low, z) : low), 0),
    [shell],
  );
  const { radius } = shell;
  const stands = footholds(gear).filter(({ kind }) => kind !== 'leaning ladder');
  const own = heights.find(({ stage }) => stage === number);
  const top = Math.max(radius - ground, ...stands.map(({ hands }) => hands)) + 0.3;
  const wide = radius * 1.12;
  const label = words.reach(number);
  const type = radius * 0.062;
  const arc = Array.from({ length: 91 }, (_, i) => {
    const low = Math.asin(Math.max(-1, Math.min(1, ground / radius)));
    const angle = low + ((Math.PI - 2 * low) * i) / 90;
    return `${(radius * Math.cos(angle)).toFixed(3)} ${(-(radius * Math.sin(angle) - ground)).toFixed(3)}`;
  });
  return (
    <section className="ground-drawing raising-drawing reach" aria-label={label}>
      <div className="ground-drawing-head">
        <h2>{label}</h2>
      </div>
      <div className="plan-room">
        <svg
          viewBox={[-wide, -top, 2 * wide, top + type * 2.6].join(' ')}
          role="img"
          aria-label={label}
          style={{ fontSize: type }}
        >
          <path className="reach-shell" d={`M${arc.join('L')}`} />
          <path className="opening-ground" d={`M${-wide} 0H${wide}`} />
          {stands.map((stand, i) => {
            const x = ((i + 0.5) / stands.length - 0.5) * 1.5 * radius;
            const half = radius * 0.06;
            return (
              <g key={stand.name} className="reach-stand">
                <path d={`M${x - half} 0V${-stand.feet}H${x + half}V0`} />
                <path className="reach-hands" d={`M${x} ${-stand.feet}V${-stand.hands}`} />
                <path d={`M${x - half} ${-stand.hands}h${2 * half}`} />
                <text x={x} y={-stand.hands - type * 0.35} textAnchor="middle">
                  {write.reach(stand.hands)}
                </text>
                <text
                  className="yard-small"
                  x={x}
                  y={type * (i % 2 === 0 ? 1.1 : 2.1)}
                  textAnchor="middle"
                >
                  {stand.name}
                </text>
              </g>
            );
          })}
          {own === undefined ? null : (
            <g className="reach-needed">
              <path d={`M${-wide} ${-own.hands}H${wide}`} />
              <text x={-wide * 0.99} y={-own.hands - type * 0.35}>
                {words.needed(number, write.reach(own.hands))}
              </text>
            </g>
          )}
        </svg>
      </div>
      <p className="ground-note quiet">{words.reachNote}</p>
    </section>
  );
}
