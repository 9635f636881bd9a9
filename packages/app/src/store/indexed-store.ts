// Projects in the browser's own database. What comes out passes a versioned parser, as anything
// from disk does; a record that a newer Shellraise wrote is left untouched.

import type { Project } from '@shellraise/core';
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { DraftRow, Step } from '../state/doc.ts';
import { entryOf } from './memory-store.ts';
import type {
  LoadOutcome,
  ProjectEntry,
  ProjectStore,
  SaveOutcome,
  StoredProject,
} from './project-store.ts';

/** The version of the record that this code writes. */
const RECORD = 1;

interface ProjectRecord {
  readonly record: number;
  readonly id: string;
  readonly entry: ProjectEntry;
  readonly stored: StoredProject;
}

interface Schema extends DBSchema {
  projects: { key: string; value: ProjectRecord };
}

/** Checks a project from storage: every fault in one text, or the project as this version reads it. */
export type CheckProject = (
  raw: unknown,
) => Promise<
  | { readonly ok: true; readonly project: Project }
  | { readonly ok: false; readonly newer: boolean; readonly detail: string }
>;

/** Opens the browser's store. Throws where the browser refuses a database. */
export async function indexedStore(check: CheckProject): Promise<ProjectStore> {
  const db = await openDB<Schema>('shellraise', 1, {
    upgrade: (fresh) => {
      fresh.createObjectStore('projects', { keyPath: 'id' });
    },
  });
  const channel = new BroadcastChannel('shellraise-projects');
  const told = (id: string): void => channel.postMessage(id);
  return {
    list: async () => {
      const all = await db.getAll('projects').catch(() => []);
      return all
        .filter(({ record }) => record === RECORD)
        .map(({ entry }) => entry)
        .sort((a, b) => b.savedAt - a.savedAt);
    },
    load: (id) => loaded(db, id, check),
    save: async (project) => {
      const outcome = await saved(db, project);
      if (outcome.status === 'saved') told(project.id);
      return outcome;
    },
    remove: async (id) => {
      await db.delete('projects', id).catch(() => undefined);
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
  const { stored } = record;
  const read = await check(stored?.doc?.project);
  if (!read.ok)
    return read.newer ? { status: 'newer' } : { status: 'damaged', detail: read.detail };
  return {
    status: 'loaded',
    stored: {
      id,
      revision: Number.isInteger(stored.revision) ? stored.revision : 0,
      savedAt: Number.isFinite(stored.savedAt) ? stored.savedAt : 0,
      doc: { project: read.project, drafts: stored.doc.drafts?.filter(isDraft) ?? [] },
      past: stored.past?.filter(isStep) ?? [],
      future: stored.future?.filter(isStep) ?? [],
    },
  };
}

async function saved(db: IDBPDatabase<Schema>, project: StoredProject): Promise<SaveOutcome> {
  try {
    const tx = db.transaction('projects', 'readwrite');
    const before = await tx.store.get(project.id);
    if (before && before.stored.revision !== project.revision) {
      await tx.done;
      return { status: 'conflict', stored: before.stored };
    }
    const stored = { ...project, revision: project.revision + 1 };
    await tx.store.put({ record: RECORD, id: project.id, entry: entryOf(stored), stored });
    await tx.done;
    return { status: 'saved', revision: stored.revision };
  } catch (error) {
    const full = error instanceof DOMException && error.name === 'QuotaExceededError';
    return { status: 'refused', why: full ? 'full' : 'fault', detail: messageOf(error) };
  }
}

const isDraft = (raw: unknown): raw is DraftRow =>
  isRecord(raw) && typeof raw.key === 'string' && Array.isArray(raw.sides);

const isStep = (raw: unknown): raw is Step =>
  isRecord(raw) &&
  typeof raw.label === 'string' &&
  Array.isArray(raw.patches) &&
  Array.isArray(raw.inverse);

const isRecord = (raw: unknown): raw is Record<string, unknown> =>
  typeof raw === 'object' && raw !== null;

const messageOf = (error: unknown): string =>
  error instanceof Error ? error.message : String(error);
