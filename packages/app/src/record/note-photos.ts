// Photos of notes: kept in this browser by their hash, brought to the laptop of a site, and got from it
// where another device took them.

import type { RecordLog } from '@shellraise/core';
import type { Photo } from '../store/photo-store.ts';
import type { SiteCalls } from '../sync/site-calls.ts';

/** Under which tag a photo of the record is kept. */
export const photoTag = (hash: string): string => `photo ${hash}`;

/** Where this browser keeps photos. */
export interface PhotosHere {
  photosOf(project: string, tag: string): Promise<readonly Pick<Photo, 'picture'>[]>;
  keepPhoto(photo: Omit<Photo, 'id'>): Promise<boolean>;
}

/** Hashes of the photos that notes speak of, each once, the newest first. */
export function notedPhotos(log: RecordLog): readonly string[] {
  const hashes = log.living('note').flatMap(({ what }) => (what.photo ? [what.photo.hash] : []));
  return [...new Set(hashes)].reverse();
}

/** Brings the photos of notes that are here to the laptop, save those in `brought`, to which what is there
 * is added. Ends at the first that cannot be brought now; true where none is left. */
export async function bringPhotos(
  hashes: readonly string[],
  brought: Set<string>,
  project: string,
  here: PhotosHere,
  calls: Pick<SiteCalls, 'bringPhoto'>,
): Promise<boolean> {
  for (const hash of hashes) {
    if (brought.has(hash)) continue;
    const [photo] = await here.photosOf(project, photoTag(hash));
    if (!photo) continue;
    const answer = await calls.bringPhoto(hash, photo.picture);
    if (!answer.ok) return false;
    brought.add(hash);
  }
  return true;
}

/** A note's photo: this browser's, or else the laptop's, which is kept here then; null where neither has
 * it. */
export async function photoOf(
  hash: string,
  project: string,
  here: PhotosHere,
  calls: Pick<SiteCalls, 'photo'> | null,
): Promise<Blob | null> {
  const [photo] = await here.photosOf(project, photoTag(hash));
  if (photo) return photo.picture;
  const answer = await calls?.photo(hash);
  if (!answer?.ok) return null;
  await here.keepPhoto({ project, tag: photoTag(hash), at: Date.now(), picture: answer.value });
  return answer.value;
}
