// Messages to the person, newest last, until they are put away.

import { useWords } from '../words/words.ts';
import { useApp, useAppState } from './app-context.tsx';

/** The messages. */
export function Notices() {
  const words = useWords().frame;
  const app = useApp();
  const notices = useAppState((state) => state.notices);
  return (
    <div className="notices" aria-live="polite">
      {notices.map(({ id, kind, text, lines, choices }) => (
        <div key={id} className={`notice ${kind}`} role={kind === 'fault' ? 'alert' : undefined}>
          <p>{text}</p>
          {lines.length > 0 ? (
            <ul>
              {lines.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          ) : null}
          <div className="notice-actions">
            {choices.map(({ label, act }) => (
              <button
                key={label}
                type="button"
                onClick={() => {
                  app.putAway(id);
                  act();
                }}
              >
                {label}
              </button>
            ))}
            <button type="button" onClick={() => app.putAway(id)}>
              {words.close}
            </button>
          </div>
        </div>
      ))}
    </div>
  );
}
