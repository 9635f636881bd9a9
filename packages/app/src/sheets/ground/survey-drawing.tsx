// The base as it was surveyed: the plan's ring, and what each hub stands off it, drawn far larger.

import type { Base, Drawing, SurveyAnswer } from '@shellraise/core';
import { useWords } from '../../words/words.ts';
import { SheetDrawing } from './sheet-drawing.tsx';

const SIZE = 240;

/** The drawing. */
export function SurveyDrawing({
  base,
  survey,
  sheets,
}: {
  base: Base;
  survey: SurveyAnswer | null;
  sheets: readonly Drawing[];
}) {
  const words = useWords().ground.survey;
  const most = Math.max(...base.hubs.map(({ radius }) => radius));
  const k = (SIZE / 2 - 28) / most;
  const offs = survey?.off.hubs ?? [];
  const largest = Math.max(1e-9, ...offs.map(({ radial, along }) => Math.hypot(radial, along)));
  const times = Math.max(1, Math.min(200, Math.floor(18 / k / largest)));
  const moved = new Set(survey?.moves.map(({ hub }) => hub));
  const at = ([x, y]: readonly [number, number]): [number, number] => [
    SIZE / 2 - y * k,
    SIZE / 2 - x * k,
  ];
  const stood = base.hubs.map(({ at: [x, y], radius }, i): [number, number] => {
    const off = offs[i];
    if (!off) return at([x, y]);
    const [ux, uy] = [x / radius, y / radius];
    const [out, along] = [off.radial * times, off.along * times];
    return at([x + out * ux + along * uy, y + out * uy - along * ux]);
  });
  const plan = base.hubs.map((hub) => at(hub.at));
  return (
    <SheetDrawing
      drawings={sheets}
      plan={{
        heading: words.drawing,
        note: offs.length > 0 && largest > 1e-6 ? words.scale(times) : '',
        picture: (
          <svg viewBox={`0 0 ${SIZE} ${SIZE}`} role="img" aria-label={words.drawing}>
            <path className="survey-plan" d={`M${plan.join('L')}Z`} />
            {offs.length > 0 ? <path className="survey-stood" d={`M${stood.join('L')}Z`} /> : null}
            {base.hubs.map(({ number, at: point, radius }, i) => {
              const [x, y] = plan[i] as [number, number];
              const [sx, sy] = stood[i] as [number, number];
              // Clear of the hub where it is drawn far out.
              const drawn = Math.max(0, (offs[i]?.radial ?? 0) * times * k);
              const out = 1 + Math.max(15, drawn + 9) / k / radius;
              const [tx, ty] = at([point[0] * out, point[1] * out]);
              return (
                <g key={number} className={moved.has(number) ? 'survey-hub moved' : 'survey-hub'}>
                  <path d={`M${x} ${y}L${sx} ${sy}`} />
                  <circle cx={sx} cy={sy} r={moved.has(number) ? 3.4 : 2} />
                  <text x={tx} y={ty + 2.6} textAnchor="middle">
                    {number}
                  </text>
                </g>
              );
            })}
          </svg>
        ),
      }}
    />
  );
}
