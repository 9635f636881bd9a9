// Face, condition and mark of a row, as the phone's own choosers.

import { useState } from 'react';
import { useWords } from '../../words/words.ts';
import { LettersField } from './letters-field.tsx';
import { cellText, type TallyRow } from './rows.ts';
import type { Tally } from './use-tally.ts';

/** The choosers; `before` is called before each choice. */
export function RowChoices({
  tally,
  at,
  row,
  before,
}: {
  tally: Tally;
  at: number;
  row: TallyRow;
  before: () => unknown;
}) {
  const words = useWords().pile;
  const [other, setOther] = useState(false);
  const { actions, rows } = tally;
  const marks = [
    ...new Set(rows.flatMap(({ reading, draft }) => reading?.mark ?? (draft?.mark || []))),
  ].sort();
  const mark = cellText(row, 'mark', String);
  const choose = (cell: 'seenFrom' | 'condition' | 'mark', text: string): void => {
    before();
    actions.write(at, cell, text);
  };
  return (
    <div className="row-choices">
      <select
        aria-label={words.tally.columns.seenFrom}
        value={cellText(row, 'seenFrom', String)}
        onChange={(event) => choose('seenFrom', event.target.value)}
      >
        {Object.entries(words.tally.seenFrom).map(([value, name]) => (
          <option key={value} value={value}>
            {name}
          </option>
        ))}
      </select>
      <select
        aria-label={words.tally.columns.condition}
        value={cellText(row, 'condition', String)}
        onChange={(event) => choose('condition', event.target.value)}
      >
        {Object.entries(words.tally.condition).map(([value, name]) => (
          <option key={value} value={value}>
            {value === '' ? words.tally.columns.condition : name}
          </option>
        ))}
      </select>
      {other ? (
        <LettersField
          text={mark}
          label={words.keypad.newMark}
          put={(text) => actions.write(at, 'mark', text)}
          done={() => setOther(false)}
        />
      ) : (
        <select
          aria-label={words.tally.columns.mark}
          value={mark}
          onChange={(event) =>
            event.target.value === OTHER ? setOther(true) : choose('mark', event.target.value)
          }
        >
          <option value="">{words.keypad.noMark}</option>
          {marks.map((one) => (
            <option key={one} value={one}>
              {one}
            </option>
          ))}
          <option value={OTHER}>{words.keypad.otherMark}</option>
        </select>
      )}
    </div>
  );
}

/** No mark can be this: marks have no white space around them. */
const OTHER = ' other ';
