// What was forgotten below the working course, by course or nearest to where somebody stands. Each
// pressed is chosen on the plan.

import { type Forgotten, nearestFirst } from '@shellraise/core';
import { useState } from 'react';
import type { Thing } from '../../record/next-state.ts';
import { useWords, type Words } from '../../words/words.ts';
import type { Noted } from './use-noted.ts';

/** How many are listed at once. */
const SHOWN = 12;

/** The list. `near`: the place where somebody stands; null: not said. */
export function ForgottenList({
  noted: { plan, due, nameOf },
  near,
  onThing,
}: {
  noted: Noted;
  near: number | null;
  onThing: (thing: Thing) => void;
}) {
  const { record: words, recording } = useWords();
  const [all, setAll] = useState(false);
  const [order, setOrder] = useState<'course' | 'near'>('course');
  const list = order === 'near' && near !== null ? nearestFirst(plan, due, near) : due;
  const shown = all ? list : list.slice(0, SHOWN);
  return (
    <section>
      <h2>
        {words.forgotten} {due.length > 0 ? <span className="quiet">{due.length}</span> : null}
      </h2>
      {due.length === 0 ? (
        <p className="quiet">{words.nothingForgotten}</p>
      ) : (
        <>
          <fieldset className="record-big screen-only">
            <legend className="read-out">{words.forgotten}</legend>
            {(['course', 'near'] as const).map((one) => (
              <button
                key={one}
                type="button"
                aria-pressed={order === one}
                onClick={() => setOrder(one)}
              >
                {recording.order[one]}
              </button>
            ))}
          </fieldset>
          {order === 'near' ? (
            <p className="quiet">
              {near === null ? recording.nearNeeds : recording.here(plan.places[near]!)}
            </p>
          ) : null}
          <ul className="record-due">
            {shown.map((one, i) => {
              const it: Thing = {
                sort: one.what === 'missing plate' ? 'hub' : 'seam',
                index: one.index,
              };
              const first = order === 'course' && one.course !== shown[i - 1]?.course;
              return (
                <li key={`${one.what} ${one.name}`}>
                  {first ? <strong>{words.course(one.course)}</strong> : null}
                  <button type="button" onClick={() => onThing(it)}>
                    <span>{nameOf(it)}</span> <span className="quiet">{lacks(one, words)}</span>
                  </button>
                </li>
              );
            })}
          </ul>
          {list.length > shown.length ? (
            <button type="button" onClick={() => setAll(true)}>
              {words.more(list.length - shown.length)}
            </button>
          ) : null}
        </>
      )}
      <p className="quiet">{words.practice}</p>
    </section>
  );
}

/** What is lacking, with how many bolts where that is known. */
function lacks({ what, bolts }: Forgotten, words: Words['record']): string {
  if (bolts === null || !Number.isFinite(bolts)) return words.forgottenOf[what];
  if (what === 'samples due') return words.samplesLeft(bolts);
  if (what === 'failed samples') return words.failedLeft(bolts);
  return words.forgottenOf[what];
}
