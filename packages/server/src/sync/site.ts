// One build site: what keeps it, its two rooms, and the news from other servers of the same site.

import { type Bell, type News, noBell } from './bell.ts';
import { HEARTBEAT, LOOK, SESSION_AGE } from './limits.ts';
import { type OnFault, openRoom, type Room } from './room.ts';
import { openStorage } from './sqlite.ts';
import { DOCS, type DocName, type Storage } from './storage.ts';

/** Where a site is kept: in a folder, by one server; or in a database, by several, with Redis to carry
 * news between them if there is one. */
export type Where =
  | { readonly folder: string }
  | { readonly postgres: string; readonly redis: string | null };

/** A site, opened. */
export interface Site {
  readonly storage: Storage;
  readonly rooms: { readonly [N in DocName]: Room };
  /** Tells other servers that codes changed. */
  readonly ring: Bell['ring'];
  close(): Promise<void>;
}

/** Opens a site. `onCodes` is called when another server may have revoked a code. Throws as the
 * storage does. */
export async function openSite(
  where: Where,
  onFault: OnFault,
  onCodes: () => void = () => undefined,
): Promise<Site> {
  let rooms: Site['rooms'] | null = null;
  const onNews = (news: News | null): void => {
    for (const name of DOCS) if (news === null || news === name) rooms?.[name].look();
    if (news === null || news === 'codes') onCodes();
  };
  const { storage, bell } = await openWhere(where, onNews, onFault);
  try {
    await storage.dropSessionsBefore(Date.now() - SESSION_AGE);
    rooms = {
      project: await openRoom(storage, 'project', onFault, bell),
      record: await openRoom(storage, 'record', onFault, bell),
    };
  } catch (error) {
    await bell.close();
    await storage.close();
    throw error;
  }
  const opened = rooms;
  const beat = setInterval(() => {
    for (const name of DOCS) opened[name].beat(performance.now());
    // News that got lost on the way is found at the latest now.
    if (storage.isShared) onNews(null);
  }, HEARTBEAT);
  const looking = setInterval(() => {
    if (storage.isShared && !bell.isLive()) onNews(null);
  }, LOOK);
  for (const timer of [beat, looking]) timer.unref();
  return {
    storage,
    rooms,
    ring: bell.ring,
    close: async () => {
      for (const timer of [beat, looking]) clearInterval(timer);
      for (const name of DOCS) await opened[name].close();
      await bell.close();
      await storage.close();
    },
  };
}

async function openWhere(
  where: Where,
  onNews: (news: News | null) => void,
  onFault: OnFault,
): Promise<{ readonly storage: Storage; readonly bell: Bell }> {
  if ('folder' in where) return { storage: await openStorage(where.folder), bell: noBell };
  // Loaded only where they are asked for.
  const { openPostgres } = await import('./postgres.ts');
  const storage = await openPostgres(where.postgres, onFault);
  if (where.redis === null) return { storage, bell: noBell };
  const { redisBell } = await import('./redis.ts');
  return { storage, bell: redisBell(where.redis, storage.site, onNews, onFault) };
}
