// What is suspect, with the readings behind it as fields to be put right. A correction is a change
// of the project like any other: it can be taken back.

import { type Pile, type PileKinds, readLength, type Shape } from '@shellraise/core';
import { type FormEvent, useId, useMemo, useState } from 'react';
import { useApp, useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import {
  type Behind,
  correct,
  keyOf,
  type Suspicion,
  sideRange,
  stillMeets,
  suspicionsOf,
} from './suspects.ts';

/** Suspicions, worst first; nothing where there is none. */
export function SuspectList({
  shape,
  worked,
  pile,
}: {
  shape: Shape | null;
  worked: PileKinds;
  pile: Pile;
}) {
  const words = useWords().shape.suspects;
  const all = useMemo(() => suspicionsOf(shape, worked, pile), [shape, worked, pile]);
  if (all.length === 0) return null;
  return (
    <section className="suspects">
      <h2>{words.heading}</h2>
      <ul>
        {all.map((one) => (
          <li
            key={`${one.why} ${one.kind} ${one.side} ${one.behind.map(({ target }) => keyOf(target)).join()}`}
          >
            <One suspicion={one} pile={pile} />
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Readings shown behind a suspicion, at most: those furthest from what fits. */
const MOST_BEHIND = 6;

function One({ suspicion, pile }: { suspicion: Suspicion; pile: Pile }) {
  const words = useWords().shape.suspects;
  const lengths = useLengths();
  const { why, kind, side, behind } = suspicion;
  const [measured, expected] = [suspicion.measured, suspicion.expected].map(lengths.side) as [
    string,
    string,
  ];
  const first = behind[0];
  const says =
    why === 'net'
      ? words.ofShape(kind, side + 1, measured, expected)
      : first?.target.list === 'kinds'
        ? words.ofRow(kind, side + 1, measured, expected)
        : words.ofReading(
            words.panel(first?.tag ?? null, first?.target.row ?? 0, first?.by ?? null),
            side + 1,
            measured,
            expected,
          );
  const rest = behind.length - MOST_BEHIND;
  return (
    <>
      <p>{says}</p>
      {why === 'net' && behind.length > 0 ? <p className="quiet">{words.behind}</p> : null}
      {behind.slice(0, MOST_BEHIND).map((one) => (
        <Correction
          key={`${keyOf(one.target)} ${one.measured}`}
          {...{ one, pile, kind }}
          alone={why === 'pile'}
        />
      ))}
      {rest > 0 ? <p className="quiet">{words.more(rest)}</p> : null}
    </>
  );
}

/** One length with a field for the new one. */
function Correction({
  one,
  pile,
  kind,
  alone,
}: {
  one: Behind;
  pile: Pile;
  kind: string;
  /** The sentence above has said which length it is. */
  alone: boolean;
}) {
  const words = useWords().shape.suspects;
  const lengths = useLengths();
  const app = useApp();
  const id = useId();
  const [text, setText] = useState('');
  const [fault, setFault] = useState<string | null>(null);
  const { target, tag, by, measured } = one;
  const what = target.list === 'kinds' ? words.row(kind) : words.panel(tag, target.row, by);

  const submit = (event: FormEvent): void => {
    event.preventDefault();
    const read = readLength(text, { unit: lengths.bare });
    if (!read.ok) {
      const [first] = read.faults;
      setFault(words.wrong(first?.found ?? text, first?.expected ?? ''));
      return;
    }
    if (read.value < sideRange.least || read.value > sideRange.most) {
      setFault(words.range(lengths.side(sideRange.least), lengths.large(sideRange.most)));
      return;
    }
    if (!stillMeets(pile, target, read.value)) {
      setFault(words.noMeet);
      return;
    }
    setFault(null);
    app.change(
      (doc) => {
        correct(doc, target, read.value);
        return undefined;
      },
      { label: words.label(what, target.side + 1) },
    );
  };

  return (
    <form className="correction screen-only" onSubmit={submit}>
      <label htmlFor={id}>{alone ? words.again : `${what}, ${words.side(target.side + 1)}`}</label>
      <span className="correction-measured">{alone ? '' : lengths.side(measured)}</span>
      <input
        id={id}
        value={text}
        inputMode="decimal"
        autoComplete="off"
        placeholder={lengths.bare}
        aria-label={words.field(what, target.side + 1)}
        aria-invalid={fault !== null}
        aria-describedby={fault === null ? undefined : `${id}-fault`}
        onChange={(event) => {
          setText(event.target.value);
          setFault(null);
        }}
      />
      <button type="submit" disabled={text.trim() === ''}>
        {words.correct}
      </button>
      {fault === null ? null : (
        <p id={`${id}-fault`} className="correction-fault" role="alert">
          {fault}
        </p>
      )}
    </form>
  );
}
