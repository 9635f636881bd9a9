// What a panel says while an answer is waited for, and where there is none.

import { useWords } from '../../words/words.ts';
import type { Answering } from './use-answer.ts';

/** That it failed, with the press that asks again; nothing where it did not. */
export function AnswerFault({ fault, again }: Pick<Answering<object, unknown>, 'fault' | 'again'>) {
  const { fitting, frame } = useWords();
  if (fault === null) return null;
  return (
    <p role="alert">
      {fitting.failed}{' '}
      <button type="button" onClick={again}>
        {frame.again}
      </button>
    </p>
  );
}

/** What is being looked for; empty, and ready to be read out, where nothing is. */
export function AnswerPending({ pending, what }: { pending: boolean; what: string }) {
  return (
    <p role="status" className={pending ? 'quiet' : 'read-out'}>
      {pending ? what : ''}
    </p>
  );
}
