// What was forgotten below the working course, by course or nearest to what is chosen.

import { type Forgotten, nearestFirst, type RecordPlan } from '@shellraise/core';
import { useState } from 'react';
import type { Thing } from '../../record/next-state.ts';
import { useWords } from '../../words/words.ts';

/** How many are listed at once. */
const SHOWN = 12;

/** The list. */
export function ForgottenList({
  plan,
  due,
  thing,
  nameOf,
  onThing,
}: {
  plan: RecordPlan;
  due: readonly Forgotten[];
  thing: Thing | null;
  nameOf: (thing: Thing) => string;
  onThing: (thing: Thing) => void;
}) {
  const words = useWords().record;
  const [all, setAll] = useState(false);
  const near = thing?.sort === 'place' ? thing.index : null;
  const list = near === null ? due : nearestFirst(plan, due, near);
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
          <p className="quiet">{near === null ? words.byCourse : words.nearest}</p>
          <ul className="record-due">
            {shown.map((one) => {
              const it: Thing = {
                sort: one.what === 'missing plate' ? 'hub' : 'seam',
                index: one.index,
              };
              return (
                <li key={`${one.what} ${one.name}`}>
                  <button type="button" className="plain" onClick={() => onThing(it)}>
                    {nameOf(it)}
                  </button>
                  <span>{words.forgottenOf[one.what]}</span>
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
