// What holds a stage besides props, and whether it may be left so for the night.

import { closedDown, readSpeed, type StageAnswer, writeSpeed } from '@shellraise/core';
import { useState } from 'react';
import { useLengths } from '../../ui/app-context.tsx';
import { LimitField } from '../../ui/limit-field.tsx';
import type { Typed } from '../../ui/use-typed.ts';
import { useWords } from '../../words/words.ts';
import { WINDS } from './site-panel.tsx';
import { useQuantities } from './use-ground.ts';

/** Whether the stage may be left in a gust that is typed. */
export function Tonight({ bears }: { bears: NonNullable<StageAnswer['bears']> }) {
  const { stages: words, site } = useWords().ground;
  const { speed, speedUnit } = useQuantities();
  const [gust, setGust] = useState<number | null>(null);
  const read = (text: string): Typed => {
    if (text.trim() === '') return { ok: true, value: undefined };
    const found = readSpeed(text, { unit: speedUnit });
    return found.ok && found.value >= WINDS.least && found.value <= WINDS.most
      ? found
      : { ok: false };
  };
  const night = gust === null ? null : closedDown(bears.limits, bears.untied, gust);
  const first = night?.by === bears.untied ? words.legend.untied : night?.by?.what;
  return (
    <>
      <LimitField
        name={words.tonight}
        shown={gust === null ? '' : speed(gust)}
        note={words.tonightNote(writeSpeed(15, speedUnit, 0))}
        fault={site.windFault(speed(WINDS.least), speed(WINDS.most))}
        read={read}
        onValue={(value) => setGust(value ?? null)}
      />
      {night ? (
        <p role="status" className={night.verdict === 'holds' ? '' : 'accent'}>
          {words.night[night.verdict]} {first ? words.nightFirst(first) : ''}
        </p>
      ) : null}
    </>
  );
}

/** Guys and chains that can hold it in the place of props. */
export function Supports({
  plan,
  around,
}: {
  plan: NonNullable<StageAnswer['supports']>;
  around: (hub: number) => readonly string[];
}) {
  const words = useWords().ground.stages;
  const lengths = useLengths();
  const { force, speed } = useQuantities();
  const { lineHeads: heads } = words;
  if (plan.lines.length === 0) return null;
  return (
    <>
      <p>
        {words.supports(speed(plan.gust))}: {words.propsStay(plan.props.length)}{' '}
        {plan.mast ? words.mast(force(plan.mast.push), force(plan.mast.sideways)) : ''}
      </p>
      <table className="ground-table">
        <thead>
          <tr>
            <th scope="col">{heads.from}</th>
            <th scope="col">{heads.what}</th>
            <th scope="col" className="number">
              {heads.weight}
            </th>
            <th scope="col" className="number">
              {heads.most}
            </th>
          </tr>
        </thead>
        <tbody>
          {plan.lines.map((line) => (
            <tr key={`${line.hub} ${line.kind} ${line.anchor}`}>
              <th scope="row">{around(line.hub).join(' ')}</th>
              <td>
                {words.line(
                  line,
                  ((line.slope * 180) / Math.PI).toFixed(0),
                  lengths.large(line.length),
                )}
              </td>
              <td className="number">{force(line.weight)}</td>
              <td className={line.use !== null && line.use > 1 ? 'number accent' : 'number'}>
                {force(line.most)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}
