// What a pocket copy carries, opened: the project under its own id, the record's entries added to those
// that this browser has. What was changed here since is never written over.

import { readRecordFile } from '@shellraise/core';
import { quickEngine } from '../engine/bridge.ts';
import type { App } from '../state/app-state.ts';
import { freshHistory } from '../state/doc.ts';
import type { ProjectStore } from '../store/project-store.ts';
import type { Words } from '../words/words.ts';
import type { Carried } from './carried.ts';
import { openKept } from './open-kept.ts';

/** Opens it. Whether it could be; every other end is told. */
export async function openCarried(
  app: App,
  store: ProjectStore,
  words: Words['frame'],
  carried: Carried,
): Promise<boolean> {
  const { id, at } = carried;
  const kept = await store.load(id);
  const changed = kept.status === 'loaded' && kept.stored.past.length > 0;
  if (changed && kept.stored.savedAt < at) app.tell('note', words.pocketChanged);
  if (!changed && (kept.status !== 'loaded' || kept.stored.savedAt < at)) {
    const read = await quickEngine
      .ask('readFile', 'pocket.json', carried.project)
      .answer.catch(() => null);
    if (!read?.ok) {
      app.tell('fault', words.pocketUnread);
      return false;
    }
    const revision = kept.status === 'loaded' ? kept.stored.revision : 0;
    const outcome = await store.save({ id, revision, savedAt: at, ...freshHistory(read.project) });
    if (outcome.status === 'refused') {
      // A browser that keeps nothing for a file still shows it.
      await app.openNew(read.project);
      return true;
    }
  }
  const { recordOf } = await import('../record/this-record.ts');
  const { opened } = await import('../record/record-session.ts');
  const session = recordOf(id);
  await opened(session);
  session.bring(readRecordFile(carried.record).entries);
  await app.listProjects();
  return openKept(app, words, id);
}
