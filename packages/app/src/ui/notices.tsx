// Messages to the person, newest last, until they are put away; a plain note goes when another sheet is
// turned to.

import { useEffect, useRef } from 'react';
import type { Sheet } from '../state/app-state.ts';
import { useWords } from '../words/words.ts';
import { useApp, useAppState } from './app-context.tsx';

/** The messages. */
export function Notices() {
  const words = useWords().frame;
  const app = useApp();
  const notices = useAppState((state) => state.notices);
  const sheet = useAppState((state) => state.sheet);
  const seenOn = useRef(new Map<number, Sheet>());
  useEffect(() => {
    for (const { id, kind, choices } of notices) {
      const first = seenOn.current.get(id) ?? sheet;
      seenOn.current.set(id, first);
      if (first !== sheet && kind === 'note' && choices.length === 0) app.putAway(id);
    }
  }, [app, notices, sheet]);
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
