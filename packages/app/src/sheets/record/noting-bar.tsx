// Under the plan: what a tap means, what was said last with the way to take it back, and everything
// else that may be said of the thing that is chosen. Large enough for a glove.

import { choicesOf, type Noting, notings, type Thing } from '../../record/next-state.ts';
import { useWords } from '../../words/words.ts';
import { Joint } from '../places/joint.tsx';
import type { Stood } from '../places/stood.ts';
import { SampleForm } from './sample-form.tsx';
import { aboutOf, stepOf } from './step-words.ts';
import type { Noted } from './use-noted.ts';

/** What the bar is made of. */
export interface NotingBarProps {
  readonly noted: Noted;
  readonly stood: Stood;
  readonly noting: Noting;
  readonly onNoting: (noting: Noting) => void;
  readonly thing: Thing | null;
  readonly onThing: (thing: Thing) => void;
}

/** The bar. */
export function NotingBar({ noted, stood, noting, onNoting, thing, onThing }: NotingBarProps) {
  const words = useWords().record;
  const { plan, state, session, last, open, told, tell, nameOf, say } = noted;
  const name = noted.by.trim();
  const said = last ? words.said(aboutOf(last.what, words), stepOf(last.what, words)) : '';
  return (
    <div className="noting screen-only">
      <fieldset className="noting-what">
        <legend className="read-out">{words.noting}</legend>
        {notings.map((one) => (
          <button
            key={one}
            type="button"
            aria-pressed={noting === one}
            onClick={() => onNoting(one)}
          >
            {words.of[one]}
          </button>
        ))}
      </fieldset>
      <div className="noting-said">
        <p role="status">
          {told ||
            said ||
            (open ? (name === '' ? words.nameFirst : words.tap[noting]) : words.opening)}
        </p>
        {open && name === '' ? (
          <button type="button" onClick={toName}>
            {words.toName}
          </button>
        ) : null}
        {last && told !== '' ? <span className="quiet">{said}</span> : null}
        {last ? (
          <button
            type="button"
            disabled={!open}
            onClick={() => {
              session.takeBack(last, name || last.by);
              tell(words.takenBack);
            }}
          >
            {words.takeBack}
          </button>
        ) : null}
      </div>
      {thing ? (
        <fieldset className="noting-choices">
          <legend>
            {nameOf(thing)}
            {thing.sort === 'place' ? <Kind stood={stood} place={thing.index} /> : null}
          </legend>
          {choicesOf(plan, state, thing).map(({ what, is }) => (
            <button
              key={stepOf(what, words)}
              type="button"
              aria-pressed={is}
              disabled={!open || name === ''}
              onClick={() => {
                if (!is) say(what);
              }}
            >
              {stepOf(what, words)}
            </button>
          ))}
        </fieldset>
      ) : null}
      {thing?.sort === 'place' ? (
        <div className="noting-more">
          <details className="record-more">
            <summary>{words.wayIn}</summary>
            <Joint stood={stood} place={thing.index} />
          </details>
          <Around {...{ noted, onThing }} place={thing.index} />
        </div>
      ) : null}
      {thing?.sort === 'seam' ? (
        <details key={thing.index} className="record-more">
          <summary>{words.sample}</summary>
          <SampleForm noted={noted} seam={thing.index} />
        </details>
      ) : null}
    </div>
  );
}

/** To the field of the name: on a phone it is out of sight. */
const toName = (): void => document.querySelector<HTMLElement>('.record-name input')?.focus();

/** Which panel goes there. */
function Kind({ stood, place }: { stood: Stood; place: number }) {
  const words = useWords().places.details;
  const kind = stood.kinds[stood.standing.standing.shell.kind[place]!];
  if (!kind) return null;
  const says = [
    words.kind(kind.id),
    ...(kind.hand ? [words.hand[kind.hand]] : []),
    ...(kind.marks.length > 0 ? [words.marks(kind.marks)] : []),
  ];
  return <span className="noting-kind"> {says.join(', ')}</span>;
}

/** Seams and hubs of a panel: with keys alone one comes to them by its place. */
function Around({
  noted: { plan, nameOf },
  place,
  onThing,
}: {
  noted: Noted;
  place: number;
  onThing: (thing: Thing) => void;
}) {
  const words = useWords().record;
  const things: Thing[] = [
    ...plan.seamPlaces.flatMap((pair, index): Thing[] =>
      pair.includes(place) ? [{ sort: 'seam', index }] : [],
    ),
    ...plan.hubPlaces.flatMap((list, index): Thing[] =>
      list.includes(place) ? [{ sort: 'hub', index }] : [],
    ),
  ];
  return (
    <details key={place} className="record-more">
      <summary>{words.around}</summary>
      <div className="noting-choices">
        {things.map((thing) => (
          <button key={`${thing.sort} ${thing.index}`} type="button" onClick={() => onThing(thing)}>
            {nameOf(thing)}
          </button>
        ))}
      </div>
    </details>
  );
}
