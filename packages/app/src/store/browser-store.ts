// The store of this browser, there at once: calls wait until the database is open, and where the
// browser refuses one every save is refused with the reason.

import type { FileRead } from '../engine/api.ts';
import { keptAnswers, quickEngine } from '../engine/bridge.ts';
import type { ProjectStore } from './project-store.ts';
import { refusingStore } from './refusing-store.ts';
import type { CheckProject } from './stored.ts';

/** Opens the browser's store in the background. */
export function browserStore(): { readonly store: ProjectStore; readonly ready: Promise<unknown> } {
  const opening: Promise<ProjectStore> = import('./indexed-store.ts')
    .then(({ indexedStore }) => indexedStore(checkProject))
    .catch((error: unknown) =>
      refusingStore(error instanceof Error ? error.message : String(error)),
    );
  const store: ProjectStore = {
    list: async () => (await opening).list(),
    load: async (id) => (await opening).load(id),
    save: async (project) => (await opening).save(project),
    remove: async (id) => {
      await (await opening).remove(id);
      await keptAnswers?.clear();
    },
    watch: (changed) => {
      let stop: (() => void) | null = null;
      let stopped = false;
      void opening.then((open) => {
        if (!stopped) stop = open.watch(changed);
      });
      return () => {
        stopped = true;
        stop?.();
      };
    },
  };
  return { store, ready: opening };
}

/** A project from storage through the engine's parser. */
export const checkProject: CheckProject = async (raw) => {
  const read = await quickEngine.ask('checkProject', raw).answer.catch((error: unknown) => error);
  if (!isRead(read))
    return { ok: false, newer: false, detail: `it could not be checked (${read})` };
  if (read.ok) return { ok: true, project: read.project };
  const detail = read.faults
    .slice(0, 3)
    .map(({ path, found, expected }) => `${path}: found ${found}, expected ${expected}`)
    .join('; ');
  return { ok: false, newer: read.newer, detail };
};

const isRead = (answer: unknown): answer is FileRead =>
  typeof answer === 'object' && answer !== null && 'ok' in answer;
