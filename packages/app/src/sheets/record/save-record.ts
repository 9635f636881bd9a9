// The record written to a file of its day, and that it was.

import { type Entry, writeRecordFile } from '@shellraise/core';
import { dayOf } from '../../clock.ts';
import { download, fileName } from '../../files/save-file.ts';
import { keepFileTold } from '../../record/file-told.ts';
import type { Words } from '../../words/words.ts';

/** Hands the browser the file. */
export function saveRecord(
  project: string,
  title: string,
  entries: readonly Entry[],
  words: Words['record'],
): void {
  const day = dayOf(Date.now());
  const name = words.fileName(fileName(title), day);
  download(name, writeRecordFile(entries), 'application/jsonl');
  keepFileTold(project, { size: entries.length, day });
}
