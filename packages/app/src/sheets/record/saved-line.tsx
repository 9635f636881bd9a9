// Whether what was noted is safe, and the record as a file, out and in.

import { readRecordFile } from '@shellraise/core';
import { useState } from 'react';
import { useStore } from 'zustand';
import { chooseFiles } from '../../files/choose-file.ts';
import type { RecordSession } from '../../record/record-session.ts';
import { useWords } from '../../words/words.ts';
import { RecordCodes } from './record-codes.tsx';
import { saveRecord } from './save-record.ts';

/** The line with its buttons. */
export function SavedLine({
  session,
  title,
  project,
}: {
  session: RecordSession;
  title: string;
  project: string;
}) {
  const words = useWords().record;
  const { open, unsaved, fault, mayNote } = useStore(session.store);
  const [told, setTold] = useState('');
  const save = (): void => saveRecord(project, title, session.log.entries(), words);
  const bring = async (): Promise<void> => {
    for (const file of await chooseFiles('.jsonl,.json,.txt,application/jsonl')) {
      const { entries, faults } = readRecordFile(await file.text());
      if (entries.length === 0 && faults[0]?.path === 'line 1') setTold(words.noRecord);
      else {
        const bad = faults.length > 0 ? ` ${words.badLines(faults.length)}` : '';
        setTold(`${words.brought(session.bring(entries))}${bad}`);
      }
    }
  };
  return (
    <section className="record-saved">
      <p role="status" className={fault === null ? undefined : 'accent'}>
        {!open
          ? words.opening
          : fault !== null
            ? words.saved.refused(unsaved, fault)
            : unsaved > 0
              ? words.saved.saving(unsaved)
              : words.saved.here}{' '}
        <span className="quiet">{words.saved.count(session.log.size)}</span>
      </p>
      <p className="buttons screen-only">
        {fault === null ? null : (
          <button type="button" onClick={() => void session.again()}>
            {words.again}
          </button>
        )}
        <button type="button" onClick={save}>
          {words.toFile}
        </button>
        <button type="button" disabled={!open || !mayNote} onClick={() => void bring()}>
          {words.fromFile}
        </button>
        <RecordCodes session={session} />
      </p>
      {told === '' ? null : <p role="status">{told}</p>}
    </section>
  );
}
