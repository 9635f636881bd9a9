// Kinds that somebody left out of the shape, to be taken back in; and any other kind to be left out.

import type { Kind, Pile, PileKinds } from '@shellraise/core';
import { useId, useState } from 'react';
import { useApp } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { leaveOut, leftOutOf, takeBack } from './overrule.ts';

/** Kinds left out; nothing where there are none. `worked` is null where the pile has changed since. */
export function LeftOut({ pile, worked }: { pile: Pile; worked: PileKinds | null }) {
  const { strangers: words } = useWords().hard;
  const app = useApp();
  const out = leftOutOf(pile);
  const back = (id: string, of: PileKinds): void =>
    app.change(
      (doc) => {
        takeBack(doc, id, of);
        return undefined;
      },
      { label: words.taking(id) },
    );
  if (out.length === 0) return null;
  return (
    <section className="findings-list plain-list">
      <h2>{words.leftOutHeading}</h2>
      <ul>
        {out.map((id) => (
          <li key={id}>
            <p>{words.leftOut(id)}</p>
            {worked ? (
              <button type="button" className="screen-only" onClick={() => back(id, worked)}>
                {words.takeBack(id)}
              </button>
            ) : null}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Any of these kinds to be left out; nothing where that would leave none. */
export function LeaveOut({ kinds }: { kinds: readonly Kind[] }) {
  const { strangers: words, kind: named } = useWords().hard;
  const app = useApp();
  const id = useId();
  const [chosen, setChosen] = useState('');
  const kind = kinds.find((one) => one.id === chosen);
  if (kinds.length < 2) return null;
  const leave = (one: Kind): void => {
    setChosen('');
    app.change(
      (doc) => {
        leaveOut(doc, one);
        return undefined;
      },
      { label: words.leaving(one.id) },
    );
  };
  return (
    <div className="presses left-out screen-only">
      <label htmlFor={id}>{words.which}</label>
      <select id={id} value={chosen} onChange={(event) => setChosen(event.target.value)}>
        <option value="">–</option>
        {kinds.map((one) => (
          <option key={one.id} value={one.id}>
            {named(one.id)}
          </option>
        ))}
      </select>
      <button type="button" disabled={!kind} onClick={() => kind && leave(kind)}>
        {words.choose}
      </button>
    </div>
  );
}
