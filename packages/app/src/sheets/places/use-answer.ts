// A question to the engine as part of a screen: asked when the question changes, the last answer
// staying in sight, with the question that it belongs to, until the next one is there.

import { useCallback, useEffect, useRef, useState } from 'react';
import { type Asked, Unanswered } from '../../engine/bridge.ts';

/** An answer with its question. */
export interface Answered<Q, A> {
  readonly question: Q;
  readonly answer: A;
}

/** Where a question stands. */
export interface Answering<Q, A> {
  readonly last: Answered<Q, A> | null;
  /** True where `last` is no answer to the present question. */
  readonly pending: boolean;
  readonly fault: string | null;
  readonly again: () => void;
}

/** Asks; null asks nothing. Keep the same question object as long as it is the same question, and
 * the same function. */
export function useAnswer<Q extends object, A>(
  question: Q | null,
  ask: (question: Q) => Asked<A>,
): Answering<Q, A> {
  const [last, setLast] = useState<Answered<Q, A> | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const [tries, setTries] = useState(0);
  const current = useRef<Q | null>(null);
  useEffect(() => {
    current.current = question;
    setFault(null);
    if (!question) return;
    const run = tries;
    ask(question).answer.then(
      (answer) => {
        if (current.current === question) setLast({ question, answer });
      },
      (error: unknown) => {
        if (current.current !== question) return;
        // Somebody else's question ended the worker: ours is asked once more.
        if (error instanceof Unanswered && error.why === 'cancelled' && run < MOST_TRIES)
          setTries(run + 1);
        else setFault(error instanceof Error ? error.message : String(error));
      },
    );
  }, [question, ask, tries]);
  useEffect(
    () => () => {
      current.current = null;
    },
    [],
  );
  const again = useCallback(() => setTries((count) => count + 1), []);
  return { last, pending: question !== null && last?.question !== question, fault, again };
}

const MOST_TRIES = 3;
