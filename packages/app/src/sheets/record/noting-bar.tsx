// Under the plan: what a tap means, what was said last with the way to take it back, and everything
// else that may be said of the thing that is chosen. Large enough for a glove.

import type { Entry, RecordPlan, RecordState } from '@shellraise/core';
import { choicesOf, type Noting, notings, type Thing } from '../../record/next-state.ts';
import type { RecordSession } from '../../record/record-session.ts';
import { useWords } from '../../words/words.ts';
import { aboutOf, stepOf } from './step-words.ts';

/** What the bar is made of. */
export interface NotingBarProps {
  readonly noting: Noting;
  readonly onNoting: (noting: Noting) => void;
  readonly plan: RecordPlan;
  readonly state: RecordState;
  readonly thing: Thing | null;
  readonly nameOf: (thing: Thing) => string;
  readonly session: RecordSession;
  /** Who says it. */
  readonly by: string;
  readonly last: Entry | null;
  /** Whether the record has been opened. */
  readonly open: boolean;
  /** What was told last; empty: what was said last is told. */
  readonly told: string;
  readonly onTold: (told: string) => void;
}

/** The bar. */
export function NotingBar(props: NotingBarProps) {
  const { noting, onNoting, plan, state, thing, nameOf, session, by, last, open, told, onTold } =
    props;
  const words = useWords().record;
  const name = by.trim();
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
        {last && told !== '' ? <span className="quiet">{said}</span> : null}
        {last ? (
          <button
            type="button"
            onClick={() => {
              session.takeBack(last, name || last.by);
              onTold(words.takenBack);
            }}
          >
            {words.takeBack}
          </button>
        ) : null}
      </div>
      {thing ? (
        <fieldset className="noting-choices">
          <legend>{nameOf(thing)}</legend>
          {choicesOf(plan, state, thing).map(({ what, is }) => (
            <button
              key={stepOf(what, words)}
              type="button"
              aria-pressed={is}
              disabled={!open || name === ''}
              onClick={() => {
                if (is) return;
                session.say(what, name);
                onTold('');
              }}
            >
              {stepOf(what, words)}
            </button>
          ))}
        </fieldset>
      ) : null}
    </div>
  );
}
