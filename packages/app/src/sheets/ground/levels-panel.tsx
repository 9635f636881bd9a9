// Levels of the ground at each base hub as they are read, and the shims that they ask for.

import type { LevelMethod } from '@shellraise/core';
import { useState } from 'react';
import type { GroundAnswer } from '../../engine/ground.ts';
import { useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { ShimsAllowed } from './allowed-forms.tsx';
import { firstSetUp, lengthWithin, withLevel, withMethod } from './edits.ts';
import { ReadingCell } from './reading-cell.tsx';
import { Choice, Faults, optionsOf } from './small.tsx';
import { useGround } from './use-ground.ts';

/** The panel. */
export function LevelsPanel({ answer }: { answer: GroundAnswer | null }) {
  const { levels: words, anchors, changes } = useWords().ground;
  const { ground, setGround } = useGround();
  const lengths = useLengths();
  const [fault, setFault] = useState<string | null>(null);
  const [method, setMethod] = useState<LevelMethod>('laser');
  if (answer === null) return null;
  const { base, shims } = answer;
  const first = firstSetUp(ground.levels, method);
  const readAt = (hub: number) => first.readings.findLast(({ at }) => at === hub)?.reading;
  const left = base.hubs.filter(({ number }) => readAt(number) === undefined).length;
  const shimAt = new Map(shims.ok ? shims.value.plan.shims.map((one) => [one.hub, one]) : []);
  return (
    <div className="fit-panel">
      <h3>{words.heading}</h3>
      <div className="ground-form">
        <Choice
          name={words.method}
          value={first.method}
          of={optionsOf(words.methods)}
          onChoose={(other) => {
            setMethod(other);
            if (ground.levels.length > 0)
              setGround({ levels: withMethod(ground.levels, other) }, changes.levels);
          }}
        />
        <Choice
          name={words.aim}
          value={ground.shims.aim}
          of={optionsOf(words.aims)}
          onChoose={(aim) => setGround({ shims: { ...ground.shims, aim } }, changes.levels)}
        />
      </div>
      <ShimsAllowed />
      <p className="quiet">
        {words.methodNote} {ground.levels.length > 1 ? words.more(ground.levels.length - 1) : ''}
      </p>
      {shims.ok ? (
        <p className="facts-size">
          {words.shims}:{' '}
          {words.total(lengths.large(shims.value.plan.total), lengths.small(shims.value.plan.max))}
        </p>
      ) : left > 0 ? (
        <p>{words.left(left)}</p>
      ) : (
        <Faults faults={shims.faults} />
      )}
      {shims.ok
        ? shims.value.suspects.map(({ at, off }) => (
            <p key={String(at)} className="accent">
              {words.suspect(typeof at === 'number' ? words.hub(at) : at, lengths.small(off))}
            </p>
          ))
        : null}
      <p role="alert" className="accent">
        {fault === null ? '' : words.fault}
      </p>
      <table className="ground-table readings">
        <thead>
          <tr>
            <th scope="col">{anchors.table.hub}</th>
            <th scope="col">{words.reading}</th>
            <th scope="col" className="number">
              {words.ground}
            </th>
            <th scope="col" className="number">
              {words.shim}
            </th>
          </tr>
        </thead>
        <tbody>
          {base.hubs.map(({ number }) => {
            const own = readAt(number);
            const shim = shimAt.get(number);
            return (
              <tr key={number}>
                <th scope="row">{number}</th>
                <td>
                  <ReadingCell
                    label={`${words.hub(number)}, ${words.reading}`}
                    shown={own === undefined ? '' : lengths.side(own)}
                    read={(text) => lengthWithin(text, lengths.bare as 'mm' | 'in', -20, 20)}
                    onValue={(value) =>
                      setGround(
                        { levels: withLevel(ground.levels, number, value, first.method) },
                        changes.levels,
                      )
                    }
                    onFault={setFault}
                  />
                </td>
                <td className="number">{shim ? lengths.small(shim.ground) : ''}</td>
                <td className="number">
                  {shim ? (shim.thickness < 5e-4 ? words.no : lengths.small(shim.thickness)) : ''}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
