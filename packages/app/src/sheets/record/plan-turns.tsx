// How the plan lies: turned over for whoever stands inside, turned by hand, or following the one who
// holds the device, where the browser tells which way it looks.

import { useEffect, useRef, useState } from 'react';
import { notTurned, type PlanTurn } from '../../drawing/plan-view/turned.ts';
import { type CompassState, followCompass, turnFrom } from '../../record/compass.ts';
import { useWords } from '../../words/words.ts';

/** By hand it turns so far at a press, degrees; following, by whole steps of so many. */
const STEP = 30;
const FINE = 5;

/** How the plan lies, with the ways to turn it. */
export function usePlanTurn() {
  const [turn, setTurn] = useState<PlanTurn>(notTurned);
  const [compass, setCompass] = useState<CompassState>('off');
  const stop = useRef<(() => void) | null>(null);
  const from = useRef<number | null>(null);
  const end = (): void => {
    stop.current?.();
    stop.current = null;
    from.current = null;
  };
  useEffect(() => () => stop.current?.(), []);
  const hear = (heading: number): void => {
    from.current ??= heading;
    const gone = FINE * Math.round(turnFrom(from.current, heading) / FINE);
    // What lies ahead is up: seen from above the plan turns against the person, seen from inside with.
    setTurn(({ mirrored, degrees }) => {
      const next = mirrored ? gone : -gone;
      return next === degrees ? { mirrored, degrees } : { mirrored, degrees: next };
    });
  };
  return {
    turn,
    compass,
    by: (degrees: number): void => {
      end();
      setCompass('off');
      setTurn((now) => ({ ...now, degrees: (now.degrees + degrees) % 360 }));
    },
    over: (): void =>
      setTurn(({ mirrored, degrees }) => ({ mirrored: !mirrored, degrees: -degrees || 0 })),
    follow: (): void => {
      end();
      if (compass === 'on') {
        setCompass('off');
        return;
      }
      // Whoever presses faces the datum.
      setTurn((now) => ({ ...now, degrees: 0 }));
      stop.current = followCompass(hear, setCompass);
    },
  };
}

/** The buttons, and what they mean in words. */
export function PlanTurns({ turns }: { turns: ReturnType<typeof usePlanTurn> }) {
  const words = useWords().recording.turns;
  const { turn, compass, by, over, follow } = turns;
  return (
    <div className="record-turns screen-only">
      <button type="button" aria-pressed={turn.mirrored} onClick={over}>
        {words.inside}
      </button>
      <button type="button" aria-label={words.left} onClick={() => by(-STEP)}>
        ↺
      </button>
      <button type="button" aria-label={words.right} onClick={() => by(STEP)}>
        ↻
      </button>
      <button type="button" aria-pressed={compass === 'on'} onClick={follow}>
        {words.follow}
      </button>
      <p role="status">
        {[
          ...(turn.mirrored ? [words.mirrored] : []),
          ...(compass === 'off' ? [] : [words.compass[compass]]),
        ].join(' ')}
      </p>
    </div>
  );
}
