// One build site: its database and its two rooms.

import { HEARTBEAT, SESSION_AGE } from './limits.ts';
import { type OnFault, openRoom, type Room } from './room.ts';
import { DOCS, type DocName, openStorage, type Storage } from './storage.ts';

/** What a folder holds, opened. */
export interface Site {
  readonly storage: Storage;
  readonly rooms: { readonly [N in DocName]: Room };
  close(): Promise<void>;
}

/** Opens the folder. Throws as `openStorage` does. */
export async function openSite(
  folder: string,
  onFault: OnFault,
  mostPages?: number,
): Promise<Site> {
  const storage = await openStorage(folder, mostPages);
  storage.dropSessionsBefore(Date.now() - SESSION_AGE);
  const rooms = {
    project: openRoom(storage, 'project', onFault),
    record: openRoom(storage, 'record', onFault),
  };
  const beat = setInterval(() => {
    for (const name of DOCS) rooms[name].beat(performance.now());
  }, HEARTBEAT);
  beat.unref();
  return {
    storage,
    rooms,
    close: async () => {
      clearInterval(beat);
      for (const name of DOCS) rooms[name].flush();
      await storage.close();
    },
  };
}
