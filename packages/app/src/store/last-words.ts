// A page that is closed may have no time to reach its database. What it had not saved yet goes, in
// one go, into the browser's small storage, and into the database when the page comes again.

import type { ProjectStore, StoredProject } from './project-store.ts';
import { type CheckProject, readStored } from './stored.ts';

/** Where the last words stand. */
export const LAST_WORDS = 'shellraise-unsaved';

/** The small storage, as far as it is needed; its methods may throw. */
export type SmallStorage = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;

/** Keeps what was not saved; nothing where all was. */
export function keepLastWords(storage: () => SmallStorage, unsaved: StoredProject | null): void {
  try {
    if (unsaved) storage().setItem(LAST_WORDS, JSON.stringify(unsaved));
    else storage().removeItem(LAST_WORDS);
  } catch {
    // There is no room, or the browser keeps nothing: the page has said so when it could not save.
  }
}

/** Saves what a page before left unsaved. Where the project was changed elsewhere since, it is saved
 * beside it under a new id. Returns the id it has now; null where nothing was left or can be read. */
export async function takeLastWords(
  storage: () => SmallStorage,
  store: ProjectStore,
  check: CheckProject,
  newId: () => string,
): Promise<string | null> {
  const raw = read(storage);
  if (typeof raw?.id !== 'string') return null;
  const outcome = await readStored(raw.id, raw, check);
  if (outcome.status !== 'loaded') return null;
  const { stored } = outcome;
  let id = stored.id;
  let saved = await store.save(stored);
  if (saved.status === 'conflict') {
    id = newId();
    saved = await store.save({ ...stored, id, revision: 0 });
  }
  if (saved.status !== 'saved') return null;
  keepLastWords(storage, null);
  return id;
}

function read(storage: () => SmallStorage): Readonly<Record<string, unknown>> | null {
  try {
    const value: unknown = JSON.parse(storage().getItem(LAST_WORDS) ?? 'null');
    return typeof value === 'object' ? (value as Readonly<Record<string, unknown>> | null) : null;
  } catch {
    return null;
  }
}
