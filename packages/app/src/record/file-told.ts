// When the record was last saved as a file from this device: phones may wipe a page's storage after seven
// idle days, so each new day offers a file of what was noted before.

import { dayOf } from '../clock.ts';

/** The last file. */
export interface FileTold {
  /** Entries that were in it. */
  readonly size: number;
  /** Day on which it was saved, or put off, as 2026-06-12 by this device's clock. */
  readonly day: string;
}

const keyOf = (project: string): string => `shellraise-record-file ${project}`;

/** What was told last; nothing saved where nobody did. */
export function fileTold(project: string): FileTold {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(keyOf(project)) ?? 'null');
    if (typeof kept === 'object' && kept !== null && 'size' in kept && 'day' in kept)
      return { size: Number(kept.size) || 0, day: String(kept.day) };
  } catch {
    // As if nothing had been saved: it is offered once more.
  }
  return { size: 0, day: '' };
}

/** Keeps it. */
export function keepFileTold(project: string, told: FileTold): void {
  try {
    localStorage.setItem(keyOf(project), JSON.stringify(told));
  } catch {
    // It is offered again next time.
  }
}

/** Whether a file is to be offered: it is a new day, and something of an earlier day is in no file. */
export function isFileDue(
  { size, day }: FileTold,
  entries: readonly { readonly at: number }[],
  today: string,
): boolean {
  return day !== today && entries.length > size && entries.some(({ at }) => dayOf(at) < today);
}
