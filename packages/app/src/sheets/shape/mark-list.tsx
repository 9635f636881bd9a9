// What the painted marks say in the shape: marks finer or coarser than sides, panels whose mark
// contradicts their sides, faded and missing marks with what they most likely were.

import type { Kind, MarkAccount, PanelMark, Pile, PileKinds, Shape } from '@shellraise/core';
import { useApp } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { markLines, type OpenMark, openMarks, writeMark } from './mark-lines.ts';
import { percentOf } from './sentences.ts';
import { useMarks } from './use-marks.ts';

/** Panels shown at once, at most. */
const MOST_PANELS = 6;

interface MarksOf {
  readonly shape: Shape;
  readonly kinds: readonly Kind[];
  readonly pile: Pile;
  readonly worked: PileKinds;
}

/** The list; nothing where nothing is marked, or all marks say what the sides say. */
export function MarkList({ shape, kinds, pile, worked }: MarksOf) {
  const account = useMarks(shape, kinds, pile, worked);
  return account ? <Account account={account} pile={pile} /> : null;
}

function Account({ account, pile }: { account: MarkAccount; pile: Pile }) {
  const { hard } = useWords();
  const words = hard.marks;
  const lines = markLines(account, pile, hard);
  const open = openMarks(account);
  if (lines.length + open.length === 0) return null;
  const rest = open.length - MOST_PANELS;
  return (
    <section className="findings-list">
      <h2>{words.heading}</h2>
      <ul className="dashed-list">
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <ul>
        {open.slice(0, MOST_PANELS).map((one) => (
          <li key={one.panel.readings.join()}>
            <Open one={one} />
          </li>
        ))}
      </ul>
      {rest > 0 ? <p className="quiet">{words.more(rest)}</p> : null}
    </section>
  );
}

function Open({ one: { panel, likely } }: { one: OpenMark }) {
  const { marks: words, listed } = useWords().hard;
  const app = useApp();
  const { readings, tag, kind, written } = panel;
  const row = readings[0] ?? 0;
  const name = words.panel(tag, row);
  const share = percentOf(likely?.probability ?? 0);
  const says = (as: PanelMark['as']): string => {
    if (as === 'unmarked') return words.unmarked(name, likely?.mark ?? '', share);
    const list = listed(written, 'or');
    if (as === 'faded') return words.faded(name, list, likely?.mark ?? '', share);
    return words.contradicts(name, list, kind ?? '', likely?.mark ?? null);
  };
  const write = (mark: string): void =>
    app.change(
      (doc) => {
        writeMark(doc, readings, mark);
        return undefined;
      },
      { label: words.writing(mark, name) },
    );
  return (
    <>
      <p>{says(panel.as)}</p>
      <div className="presses screen-only">
        {likely ? (
          <button type="button" onClick={() => write(likely.mark)}>
            {words.write(likely.mark)}
            <span className="read-out">, {name}</span>
          </button>
        ) : null}
        <button
          type="button"
          onClick={() => {
            app.select({ type: 'reading', row });
            app.goTo('pile');
          }}
        >
          {words.look}
          <span className="read-out">, {name}</span>
        </button>
      </div>
    </>
  );
}
