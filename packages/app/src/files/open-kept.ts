// Opens a project kept in this browser; where it can't be, the person is told why.

import type { App } from '../state/app-state.ts';
import type { Words } from '../words/words.ts';

/** Opens the project; whether it is open. Nothing is told of one that is no longer there where
 * `quiet`: it was removed in another tab. */
export async function openKept(
  app: App,
  words: Words['frame'],
  id: string,
  quiet = false,
): Promise<boolean> {
  const outcome = await app.open(id);
  if (outcome.status === 'newer') app.tell('fault', words.storedNewer);
  if (outcome.status === 'damaged') app.tell('fault', words.storedDamaged(outcome.detail));
  if (outcome.status === 'missing' && !quiet) app.tell('fault', words.storedMissing);
  return outcome.status === 'loaded';
}
