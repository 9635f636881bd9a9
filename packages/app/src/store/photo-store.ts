// Photos of panels, in this browser alone: too large for a project file that is mailed and printed.
// A photo belongs to the panel with a tag in a project.

import { type DBSchema, type IDBPDatabase, openDB } from 'idb';

/** A photo of one panel. */
export interface Photo {
  readonly id: number;
  readonly project: string;
  readonly tag: string;
  /** Milliseconds since 1970. */
  readonly at: number;
  readonly picture: Blob;
}

interface Schema extends DBSchema {
  photos: {
    key: number;
    value: Omit<Photo, 'id'> & { id?: number };
    indexes: { panel: [string, string] };
  };
}

let opening: Promise<IDBPDatabase<Schema>> | null = null;

function opened(): Promise<IDBPDatabase<Schema>> {
  opening ??= openDB<Schema>('shellraise-photos', 1, {
    upgrade: (fresh) => {
      const photos = fresh.createObjectStore('photos', { keyPath: 'id', autoIncrement: true });
      photos.createIndex('panel', ['project', 'tag']);
    },
  }).catch((error: unknown) => {
    opening = null;
    throw error;
  });
  return opening;
}

/** The photos of a panel, oldest first; none where the browser keeps nothing. */
export async function photosOf(project: string, tag: string): Promise<readonly Photo[]> {
  try {
    return (await (await opened()).getAllFromIndex('photos', 'panel', [project, tag])) as Photo[];
  } catch {
    return [];
  }
}

/** Keeps a photo; false where there is no room or the browser keeps nothing. */
export async function keepPhoto(photo: Omit<Photo, 'id'>): Promise<boolean> {
  try {
    await (await opened()).add('photos', photo);
    return true;
  } catch {
    return false;
  }
}

/** Removes a photo. */
export async function removePhoto(id: number): Promise<void> {
  await (await opened()).delete('photos', id);
}

/** Removes the photos of projects that are no longer on this device. */
export async function keepPhotosOf(projects: readonly string[]): Promise<void> {
  const kept = new Set(projects);
  const photos = await (await opened()).getAll('photos');
  for (const { id, project } of photos)
    if (id !== undefined && !kept.has(project)) await removePhoto(id);
}
