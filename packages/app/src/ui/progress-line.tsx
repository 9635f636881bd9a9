// Progress of anything that takes over a second: what is going on, how far, how long still, and a
// way to stop it.

import { useEffect, useState } from 'react';
import type { Ask } from '../engine/ask.ts';
import { useWords } from '../words/words.ts';

/** A line for a question under way; nothing before it took most of a second. */
export function ProgressLine({
  ask,
  what,
  onCancel,
}: {
  ask: Ask<unknown>;
  what: string;
  onCancel?: () => void;
}) {
  const words = useWords().frame;
  const elapsed = useElapsed(ask);
  if (ask.status !== 'running' || elapsed < 700) return null;
  const done = ask.progress?.done ?? 0;
  const left = done > 0.05 ? (elapsed * (1 - done)) / done : null;
  return (
    <div className="progress" role="status">
      <span className="progress-what">{what}</span>
      <progress max={1} value={done > 0 ? done : undefined} aria-label={what} />
      <span className="progress-left">{left === null ? '' : secondsLeft(left)}</span>
      {onCancel ? (
        <button type="button" onClick={onCancel}>
          {words.cancel}
        </button>
      ) : null}
    </div>
  );
}

const secondsLeft = (ms: number): string => `${Math.max(1, Math.ceil(ms / 1000))} s`;

function useElapsed(ask: Ask<unknown>): number {
  const [now, setNow] = useState(0);
  const running = ask.status === 'running';
  useEffect(() => {
    if (!running) return;
    setNow(performance.now());
    const timer = setInterval(() => setNow(performance.now()), 250);
    return () => clearInterval(timer);
  }, [running]);
  return now - ask.since;
}
