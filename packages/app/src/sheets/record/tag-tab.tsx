// A panel's tag, read or typed: where it goes, which way round, and one press to say that it is there.

import { type Kind, whereTo } from '@shellraise/core';
import { useMemo, useState } from 'react';
import type { Thing } from '../../record/next-state.ts';
import { useDerived, useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { TagScan } from './tag-scan.tsx';
import type { Noted } from './use-noted.ts';
import { wayRound } from './way-round.ts';

/** Places shown at once. */
const SHOWN = 4;

/** The tab. `kinds`: those that the shell's places go by. */
export function TagTab({
  noted,
  kinds,
  onThing,
}: {
  noted: Noted;
  kinds: readonly Kind[];
  onThing: (thing: Thing) => void;
}) {
  const { recording, record } = useWords();
  const words = recording.tagged;
  const { session, plan, state, say, leftOut, open } = noted;
  const [typed, setTyped] = useState('');
  const known = useKindOfTag(kinds);
  // Openings take no panel.
  const free = useMemo(
    () => ({
      ...state,
      placed: state.placed.map((panel, p) =>
        leftOut.includes(p) ? { tag: null, turn: null } : panel,
      ),
    }),
    [state, leftOut],
  );
  const answer = typed.trim() === '' ? null : whereTo(session.log, plan, free, known, typed);
  return (
    <section className="record-form">
      <h2>{words.heading}</h2>
      <TagScan onFound={setTyped} />
      <label className="record-name">
        {words.tag}
        <input
          value={typed}
          maxLength={60}
          autoComplete="off"
          onChange={({ target }) => setTyped(target.value)}
        />
      </label>
      <div role="status">
        {answer === null ? (
          <p className="quiet">{words.type(known.size)}</p>
        ) : answer.status === 'unknown' ? (
          <p>{words.unknown(answer.typed)}</p>
        ) : answer.status === 'ambiguous' ? (
          <p>{words.ambiguous(answer.tags)}</p>
        ) : answer.status === 'no place' ? (
          <p className="accent">{words[answer.why](answer.tag)}</p>
        ) : answer.status === 'placed' ? (
          <p className="raise-verdict">
            {words.placed(
              answer.tag,
              answer.at.map(({ number }) => number),
            )}
          </p>
        ) : (
          <p className="raise-verdict">
            {words.goes(answer.tag, answer.to[0]!.number, answer.to.length)}
          </p>
        )}
      </div>
      {answer?.status === 'placed'
        ? answer.at.map(({ place, number }) => (
            <button
              key={number}
              type="button"
              onClick={() => onThing({ sort: 'place', index: place })}
            >
              {words.show(number)}
            </button>
          ))
        : null}
      {answer?.status === 'goes' ? (
        <ol className="record-goes">
          {answer.to.slice(0, SHOWN).map(({ place, number, turn }) => (
            <li key={number}>
              <h3>{record.place(number)}</h3>
              <WayRound {...{ noted, kinds, place }} />
              <div className="record-big">
                <button
                  type="button"
                  disabled={!open}
                  onClick={() => {
                    onThing({ sort: 'place', index: place });
                    say({ kind: 'panel placed', place: number, tag: answer.tag, turn });
                  }}
                >
                  {words.note(answer.tag, number)}
                </button>
                <button type="button" onClick={() => onThing({ sort: 'place', index: place })}>
                  {words.show(number)}
                </button>
              </div>
            </li>
          ))}
        </ol>
      ) : null}
    </section>
  );
}

function WayRound({
  noted: { plan },
  kinds,
  place,
}: {
  noted: Noted;
  kinds: readonly Kind[];
  place: number;
}) {
  const words = useWords().recording.tagged;
  const lengths = useLengths();
  return (
    <ul className="record-way">
      {wayRound(plan.shell, kinds, plan.places, place).map(({ length, towards }, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: sides have no other name
        <li key={i}>
          {words.side(length === null ? words.unknownSide : lengths.side(length), towards)}
        </li>
      ))}
    </ul>
  );
}

/** Tag → index of its kind among these, null where nobody could tell. */
function useKindOfTag(kinds: readonly Kind[]): ReadonlyMap<string, number | null> {
  const assigned = useDerived((derived) => derived.work.value?.worked.assigned);
  return useMemo(() => {
    const index = new Map(kinds.map(({ id }, k) => [id, k]));
    return new Map(
      (assigned ?? []).flatMap(({ tag, kind }) =>
        tag === null ? [] : [[tag, (kind === null ? null : index.get(kind)) ?? null] as const],
      ),
    );
  }, [assigned, kinds]);
}
