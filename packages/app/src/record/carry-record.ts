// What was noted on the demo goes with it when its first change makes it a project of one's own: the
// entries are brought into the new project's record, and the demo's is empty again.

import { opened, openRecord, type RecordOutside, type RecordSession } from './record-session.ts';

/** Brings what a record holds, stored or only said on this page, into another; the first is emptied once
 * all of it is on the disk there. `there` is the record's session where it is open on this page. Returns
 * how many entries came along. Fails where the browser keeps nothing: then nothing is taken away. */
export async function carryRecord(
  from: string,
  to: string,
  there: RecordSession | null,
  outside: (record: string) => RecordOutside,
): Promise<number> {
  const source = there ?? openRecord(from, { ...outside(from), channel: null });
  const target = openRecord(to, outside(to));
  try {
    await opened(source);
    await opened(target);
    const entries = source.log.entries();
    if (entries.length === 0) return 0;
    const brought = target.bring(entries);
    await saved(target);
    // What is still on its way to the disk must not come after it is emptied.
    await saved(source).catch(() => undefined);
    const store = await outside(from).updates;
    await store.drop(from);
    return brought;
  } finally {
    target.close();
    if (!there) source.close();
  }
}

/** Waits until all is on the disk; fails where it cannot be put there. */
function saved({ store }: RecordSession): Promise<void> {
  return new Promise((resolve, reject) => {
    const look = (): void => {
      const { unsaved, fault } = store.getState();
      if (fault !== null) reject(new Error(fault));
      else if (unsaved === 0) resolve();
      else return;
      stop();
    };
    const stop = store.subscribe(look);
    queueMicrotask(look);
  });
}
