// How many people are at the work that is noted: with it the record tells how fast the crew is.

import { useWords } from '../../words/words.ts';
import type { Noted } from './use-noted.ts';

const MOST = 50;

/** The count with its two buttons. */
export function HandsChoice({ noted: { hands, setHands } }: { noted: Noted }) {
  const words = useWords().recording;
  return (
    <fieldset className="record-hands">
      <legend className="read-out">{words.hands}</legend>
      <span title={words.handsWhy}>{words.hands}</span>
      <button
        type="button"
        aria-label={words.fewer}
        disabled={hands === null}
        onClick={() => setHands(hands === null || hands <= 1 ? null : hands - 1)}
      >
        −
      </button>
      <output>{hands ?? words.noHands}</output>
      <button
        type="button"
        aria-label={words.more}
        disabled={hands === MOST}
        onClick={() => setHands((hands ?? 0) + 1)}
      >
        +
      </button>
    </fieldset>
  );
}
