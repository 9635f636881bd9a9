// Projects in the browser's own database. What comes out passes a versioned parser, as anything
// from disk does; a record that a newer Shellraise wrote is left untouched.

import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import { entryOf } from './memory-store.ts';
import type {
  LoadOutcome,
  ProjectEntry,
  ProjectStore,
  SaveOutcome,
  StoredProject,
} from './project-store.ts';
import { type CheckProject, readStored } from './stored.ts';

/** The version of the record that this code writes. */
const RECORD = 1;

interface ProjectRecord {
  readonly record: number;
  readonly id: string;
  readonly stored: StoredProject;
}

interface Schema extends DBSchema {
  projects: { key: string; value: ProjectRecord };
  /** The lines of the list beside them: it is made without reading a project. */
  entries: { key: string; value: ProjectEntry };
}

/** Opens the browser's store. Throws where the browser refuses a database. */
export async function indexedStore(check: CheckProject): Promise<ProjectStore> {
  const db = await openDB<Schema>('shellraise', 1, {
    upgrade: (fresh) => {
      fresh.createObjectStore('projects', { keyPath: 'id' });
      fresh.createObjectStore('entries', { keyPath: 'id' });
    },
  });
  const channel = new BroadcastChannel('shellraise-projects');
  const told = (id: string): void => channel.postMessage(id);
  return {
    list: async () => {
      const all = await db.getAll('entries').catch(() => []);
      return all.sort((one, other) => other.savedAt - one.savedAt);
    },
    load: (id) => loaded(db, id, check),
    save: async (project) => {
      const outcome = await saved(db, project);
      if (outcome.status === 'saved') told(project.id);
      return outcome;
    },
    remove: async (id) => {
      await removed(db, id).catch(() => undefined);
      told(id);
    },
    watch: (changed) => {
      const listen = (event: MessageEvent<unknown>): void => {
        if (typeof event.data === 'string') changed(event.data);
      };
      channel.addEventListener('message', listen);
      return () => channel.removeEventListener('message', listen);
    },
  };
}

async function loaded(
  db: IDBPDatabase<Schema>,
  id: string,
  check: CheckProject,
): Promise<LoadOutcome> {
  let record: ProjectRecord | undefined;
  try {
    record = await db.get('projects', id);
  } catch (error) {
    return { status: 'damaged', detail: messageOf(error) };
  }
  if (!record) return { status: 'missing' };
  if (record.record > RECORD) return { status: 'newer' };
  return readStored(id, record.stored, check);
}

async function saved(db: IDBPDatabase<Schema>, project: StoredProject): Promise<SaveOutcome> {
  try {
    const tx = db.transaction(['projects', 'entries'], 'readwrite');
    const projects = tx.objectStore('projects');
    const before = await projects.get(project.id);
    if (before && before.record > RECORD) {
      await tx.done;
      return { status: 'refused', why: 'fault', detail: 'a newer Shellraise keeps this project' };
    }
    if (before && before.stored.revision !== project.revision) {
      await tx.done;
      return { status: 'conflict', stored: before.stored };
    }
    const stored = { ...project, revision: project.revision + 1 };
    await projects.put({ record: RECORD, id: project.id, stored });
    await tx.objectStore('entries').put(entryOf(stored));
    await tx.done;
    return { status: 'saved', revision: stored.revision };
  } catch (error) {
    const full = error instanceof DOMException && error.name === 'QuotaExceededError';
    return { status: 'refused', why: full ? 'full' : 'fault', detail: messageOf(error) };
  }
}

async function removed(db: IDBPDatabase<Schema>, id: string): Promise<void> {
  const tx = db.transaction(['projects', 'entries'], 'readwrite');
  await tx.objectStore('projects').delete(id);
  await tx.objectStore('entries').delete(id);
  await tx.done;
}

const messageOf = (error: unknown): string =>
  error instanceof Error ? error.message : String(error);
