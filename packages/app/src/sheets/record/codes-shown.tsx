// The record as codes on this screen, one after the other, round and round.

import '../../styles/codes.css';
import { entryIdOf, readRecordFile, recordSeries } from '@shellraise/core';
import { useEffect, useMemo, useState } from 'react';
import { carriedHere } from '../../files/carried.ts';
import type { RecordSession } from '../../record/record-session.ts';
import { OverSheet } from '../../ui/over-sheet.tsx';
import { useWords } from '../../words/words.ts';
import { CodeDrawing } from './code-drawing.tsx';

/** How long one code stands, milliseconds: a camera's reader sees a few a second. */
const STANDS = 1500;

/** The codes. A pocket copy leaves out what it came with. */
export function CodesShown({ session, close }: { session: RecordSession; close: () => void }) {
  const words = useWords().codes;
  const codes = useMemo(() => seriesOf(session), [session]);
  const [at, setAt] = useState(0);
  const [going, setGoing] = useState(true);
  const count = codes?.length ?? 0;
  useEffect(() => {
    if (!going || count < 2) return;
    const timer = setInterval(() => setAt((now) => (now + 1) % count), STANDS);
    return () => clearInterval(timer);
  }, [going, count]);
  const turn = (by: number) => () => {
    setGoing(false);
    setAt((now) => (now + by + count) % count);
  };
  const code = codes?.[at];
  return (
    <OverSheet className="codes" title={words.title} close={close}>
      {codes === null ? <p>{words.tooMany}</p> : null}
      {codes?.length === 0 ? <p>{words.none}</p> : null}
      {code === undefined ? null : (
        <>
          <CodeDrawing text={code} label={words.picture(at + 1, count)} />
          <p className="codes-part" role="status">
            {words.part(at + 1, count)}
          </p>
          {count < 2 ? null : (
            <p className="buttons">
              <button type="button" onClick={turn(-1)}>
                {words.back}
              </button>
              <button type="button" onClick={() => setGoing(!going)}>
                {going ? words.pause : words.go}
              </button>
              <button type="button" onClick={turn(1)}>
                {words.next}
              </button>
            </p>
          )}
          <p className="quiet">{words.how}</p>
        </>
      )}
    </OverSheet>
  );
}

/** Null where they are too many; empty where there is nothing to show. */
function seriesOf({ log }: RecordSession): readonly string[] | null {
  const carried = readRecordFile(carriedHere()?.record ?? '').entries;
  const came = new Set(carried.map(entryIdOf));
  const entries = log.entries().filter((entry) => !came.has(entryIdOf(entry)));
  if (entries.length === 0) return [];
  try {
    return recordSeries(entries);
  } catch {
    return null;
  }
}
