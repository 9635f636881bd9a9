// Kinds that somebody left out of the shape, to be taken back in; and any other kind to be left out.

import type { Kind, Pile, PileKinds } from '@shellraise/core';
import { useId, useState } from 'react';
import { useApp } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { leaveOut, leftOutOf, takeBack } from './overrule.ts';

/** Kinds left out. `kinds`: those that may be left out now; `worked` is null where the pile has
 * changed since. */
export function LeftOut({
  pile,
  worked,
  kinds,
}: {
  pile: Pile;
  worked: PileKinds | null;
  kinds: readonly Kind[];
}) {
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
  const left = kinds.filter(({ id }) => !out.includes(id));
  if (out.length === 0 && left.length < 2) return null;
  return (
    <section className="findings-list plain-list left-out">
      {out.length > 0 ? <h2>{words.leftOutHeading}</h2> : null}
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
      {left.length > 1 ? <Chooser kinds={left} /> : null}
    </section>
  );
}

function Chooser({ kinds }: { kinds: readonly Kind[] }) {
  const { strangers: words, kind: named } = useWords().hard;
  const app = useApp();
  const id = useId();
  const [chosen, setChosen] = useState('');
  const kind = kinds.find((one) => one.id === chosen);
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
    <div className="presses screen-only">
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
