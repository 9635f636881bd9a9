// On a new day: a file of what was noted before, offered without being asked.

import { useState } from 'react';
import { dayOf } from '../../clock.ts';
import { fileTold, isFileDue, keepFileTold } from '../../record/file-told.ts';
import { useWords } from '../../words/words.ts';
import { saveRecord } from './save-record.ts';
import type { Noted } from './use-noted.ts';

/** The offer; nothing where none is due. */
export function DailyFile({
  noted: { session, open },
  project,
  title,
}: {
  noted: Noted;
  project: string;
  title: string;
}) {
  const { record, recording } = useWords();
  const words = recording.daily;
  const [put, setPut] = useState(false);
  const today = dayOf(Date.now());
  const entries = session.log.entries();
  if (put || !open || !isFileDue(fileTold(project), entries, today)) return null;
  const answer = (saved: boolean): void => {
    if (saved) saveRecord(project, title, entries, record);
    else keepFileTold(project, { ...fileTold(project), day: today });
    setPut(true);
  };
  return (
    <section className="record-daily screen-only" aria-label={words.heading}>
      <p>{words.why}</p>
      <div className="record-big">
        <button type="button" onClick={() => answer(true)}>
          {words.save}
        </button>
        <button type="button" onClick={() => answer(false)}>
          {words.later}
        </button>
      </div>
    </section>
  );
}
