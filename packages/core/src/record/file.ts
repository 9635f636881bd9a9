// A record as a file: a line that says what it is, then one entry a line, in their order. A file that
// was cut off, or spoilt in places, still gives every entry that can be read, and says which lines can
// not: what a phone could save before it died is worth having. Entries that are there already are known
// by their ids, so a file can be brought twice.

import { describeFault, type Fault } from '../measure/fault.ts';
import { compareEntries, type Entry, readEntry } from './entry.ts';

/** The version of the record's file that this code writes. */
export const RECORD_VERSION = 1;

/** Longest file that is read, characters: some million entries. */
export const MAX_RECORD_CHARACTERS = 300 * 1024 * 1024;

/** What a file of a record gives. */
export interface RecordFile {
  readonly entries: readonly Entry[];
  /** Lines that give no entry, by number from 1, and what is wrong there; a file that is no record, or
   * a newer one, gives one fault and no entries. */
  readonly faults: readonly Fault[];
}

/** The text of a record's file. Same entries, same text. */
export function writeRecordFile(entries: Iterable<Entry>): string {
  const lines = [...entries].sort(compareEntries).map((entry) => JSON.stringify(entry));
  return [JSON.stringify({ shellraiseRecord: RECORD_VERSION }), ...lines, ''].join('\n');
}

/** The entries of a record's file, and the lines that give none. */
export function readRecordFile(text: string): RecordFile {
  if (text.length > MAX_RECORD_CHARACTERS)
    return fault('file', `${text.length} characters`, `at most ${MAX_RECORD_CHARACTERS}`);
  const [first = '', ...lines] = text.replace(/^\ufeff/, '').split(/\r?\n/);
  const version = versionOf(first);
  if (version === null || version > RECORD_VERSION)
    return fault(
      'line 1',
      version === null ? first.slice(0, 40) || 'nothing' : `version ${version}`,
      `a record of version ${RECORD_VERSION}${version === null ? '' : ' or older'}`,
    );
  const entries: Entry[] = [];
  const faults: Fault[] = [];
  lines.forEach((line, i) => {
    if (line.trim() === '') return;
    const read = readEntry(parsed(line));
    if (read.ok) entries.push(read.value);
    else
      faults.push({
        path: `line ${i + 2}`,
        found: read.faults[0] ? describeFault(read.faults[0]) : 'nothing',
        expected: 'an entry',
      });
  });
  return { entries, faults };
}

const fault = (path: string, found: string, expected: string): RecordFile => ({
  entries: [],
  faults: [{ path, found, expected }],
});

function versionOf(line: string): number | null {
  const head = parsed(line);
  if (typeof head !== 'object' || head === null || !('shellraiseRecord' in head)) return null;
  const version = head.shellraiseRecord;
  return Number.isInteger(version) && (version as number) >= 1 ? (version as number) : null;
}

/** The line as JSON; undefined where it is none. */
function parsed(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    return undefined;
  }
}
