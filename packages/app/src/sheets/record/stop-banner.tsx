// A stop that is on, so large that nobody works on under it, with the way to lift it; and the way to
// call one.

import { useWords } from '../../words/words.ts';
import type { Noted } from './use-noted.ts';

/** The stops that are on; nothing where there are none. */
export function StopBanner({ noted }: { noted: Noted }) {
  const words = useWords().recording.stop;
  const { state, session, say } = noted;
  if (state.stops.length === 0) return null;
  return (
    <section className="record-stop" role="alert">
      {state.stops.map((why) => {
        const stands = session.log.stands(`stop ${why}`);
        const at = stands && new Date(stands.entry.at);
        return (
          <div key={why}>
            <p className="record-stop-name">{words.on[why]}</p>
            <p>{words.what[why]}</p>
            {stands && at ? (
              <p>
                {words.by(
                  stands.entry.by,
                  at.toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' }),
                )}{' '}
                {stands.question ? words.asked : ''}
              </p>
            ) : null}
            <button type="button" onClick={() => say({ kind: 'stop', why, on: false })}>
              {words.lift[why]}
            </button>
          </div>
        );
      })}
    </section>
  );
}

/** The two presses that call a stop. */
export function StopCalls({ noted: { state, say, open } }: { noted: Noted }) {
  const words = useWords().recording.stop;
  return (
    <fieldset className="record-big screen-only">
      <legend>{words.call}</legend>
      {(['lightning', 'wind'] as const).map((why) => (
        <button
          key={why}
          type="button"
          disabled={!open || state.stops.includes(why)}
          onClick={() => say({ kind: 'stop', why, on: true })}
        >
          {words[why]}
        </button>
      ))}
    </fieldset>
  );
}
