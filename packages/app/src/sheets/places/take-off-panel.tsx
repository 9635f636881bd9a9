// The take-off beside the plan: what is short on the day, what to buy with spares and in packs, and
// what could not be counted; copied or written as a spreadsheet.

import { type BuyLine, type TakeOff, takeOffNotes } from '@shellraise/core';
import { useRef, useState } from 'react';
import type { Quantities } from '../../engine/drawings.ts';
import { download, fileName } from '../../files/save-file.ts';
import { projectOf } from '../../state/app-state.ts';
import { useAppState } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { copyText } from './copy-text.ts';
import { CountProof } from './count-proof.tsx';
import { buyWords, nameOfLine, quantityWords, takeOffText } from './take-off-text.ts';
import type { Answering } from './use-answer.ts';

/** The take-off. */
export function TakeOffPanel({ counting }: { counting: Answering<object, Quantities> }) {
  const { places, frame } = useWords();
  const words = places.takeOff;
  const quantities = counting.last?.answer ?? null;
  if (counting.fault !== null)
    return (
      <div className="take-off" role="alert">
        <p>{words.failed}</p>
        <p className="quiet">{counting.fault}</p>
        <button type="button" onClick={counting.again}>
          {frame.again}
        </button>
      </div>
    );
  if (!quantities) return <p className="take-off quiet">{words.counting} …</p>;
  const { takeOff } = quantities;
  return (
    <div className="take-off">
      {takeOff.cautions.map((caution, i) => (
        <p key={caution} className="facts-caution">
          {i === 0 ? <strong>{words.caution} </strong> : null}
          {caution}
        </p>
      ))}
      <Actions quantities={quantities} />
      <Lists takeOff={takeOff} />
      <Notes takeOff={takeOff} />
      <CountProof rows={quantities.proof} />
    </div>
  );
}

function Lists({ takeOff }: { takeOff: TakeOff }) {
  const words = useWords().places.takeOff;
  const { lines } = takeOff;
  if (lines.length === 0) return <p>{words.nothingKnown}</p>;
  const short = lines.filter((line) => line.short > 0);
  return (
    <>
      <h3>{words.short}</h3>
      {short.length === 0 ? (
        <p>{words.nothingShort}</p>
      ) : (
        <ul className="short-list">
          {short.map((line) => (
            <li key={keyOf(line)}>
              <strong className="accent">{quantityWords(line.short, line)}</strong>{' '}
              {nameOfLine(line)}
            </li>
          ))}
        </ul>
      )}
      <h3>{words.buy}</h3>
      <BuyTable lines={lines} />
      <p className="quiet">{words.cost(takeOff.cost, takeOff.costComplete)}</p>
    </>
  );
}

function BuyTable({ lines }: { lines: readonly BuyLine[] }) {
  const words = useWords().places.takeOff;
  const { columns } = words;
  return (
    <table className="buy">
      <thead>
        <tr>
          <th scope="col">{columns.item}</th>
          <th scope="col" className="number">
            {columns.needed}
          </th>
          <th scope="col" className="number">
            {columns.inHand}
          </th>
          <th scope="col">{columns.buy}</th>
          <th scope="col" className="number">
            {columns.cost}
          </th>
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <tr key={keyOf(line)}>
            <th scope="row">{nameOfLine(line)}</th>
            <td className="number">{quantityWords(line.quantity, line)}</td>
            <td className="number">{quantityWords(line.inHand, line)}</td>
            <td>
              {buyWords(line, words) || '–'}
              {line.notes.map((note) => (
                <span key={note} className="stock-note">
                  {note}
                </span>
              ))}
            </td>
            <td className="number">{line.cost ? line.cost.toFixed(2) : ''}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const keyOf = (line: BuyLine): string => `${nameOfLine(line)} ${line.unit}`;

function Actions({ quantities: { takeOff, csv } }: { quantities: Quantities }) {
  const words = useWords().places.takeOff;
  const title = useAppState((state) => projectOf(state).title);
  const [copied, setCopied] = useState<'no' | 'yes' | 'by hand'>('no');
  const area = useRef<HTMLTextAreaElement>(null);
  const text = takeOffText(takeOff, title, words);
  const copy = async (): Promise<void> => {
    if (await copyText(text)) return setCopied('yes');
    setCopied('by hand');
    setTimeout(() => {
      area.current?.focus();
      area.current?.select();
    }, 0);
  };
  const write = (name: string, content: string): void =>
    download(`${fileName(title)}-${name}.csv`, content, 'text/csv');
  return (
    <>
      <div className="buttons screen-only">
        <button type="button" onClick={() => void copy()}>
          {words.copy}
        </button>
        <button type="button" onClick={() => write(words.fileBuy, csv.buy)}>
          {words.csv}
        </button>
        <button type="button" onClick={() => write(words.fileStock, csv.stock)}>
          {words.stockCsv}
        </button>
      </div>
      <p role="status" className={copied === 'no' ? 'read-out' : undefined}>
        {copied === 'yes' ? words.copied : copied === 'by hand' ? words.copyByHand : ''}
      </p>
      {copied === 'by hand' ? (
        <textarea ref={area} readOnly rows={8} aria-label={words.heading} value={text} />
      ) : null}
    </>
  );
}

function Notes({ takeOff }: { takeOff: TakeOff }) {
  const words = useWords().places.takeOff;
  const hardware = useAppState((state) => projectOf(state).pile.hardware);
  const notes = takeOffNotes(takeOff, hardware);
  if (notes.length === 0) return null;
  return (
    <>
      <h3>{words.notes}</h3>
      <ul className="notes">
        {notes.map((note) => (
          <li key={note}>{note}</li>
        ))}
      </ul>
    </>
  );
}
