// A photo for a note: made smaller, which also leaves behind where it was taken, named by the SHA-256 of
// its bytes, kept in this browser.

import { photoHash, strippedPhoto } from '@shellraise/sync';
import { useState } from 'react';
import { photoTag } from '../../record/note-photos.ts';
import { keepPhoto } from '../../store/photo-store.ts';
import { useWords } from '../../words/words.ts';
import { shrinkPicture } from '../pile/shrink-picture.ts';

/** A photo as an entry speaks of it. */
export interface KeptPhoto {
  readonly hash: string;
  readonly type: 'image/jpeg';
  readonly bytes: number;
}

/** The field. */
export function NotePhoto({
  project,
  photo,
  onPhoto,
}: {
  project: string;
  photo: KeptPhoto | null;
  onPhoto: (photo: KeptPhoto | null) => void;
}) {
  const { recording, pile } = useWords();
  const words = recording.forms.photo;
  const [fault, setFault] = useState<string | null>(null);
  const take = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    const smaller = await shrinkPicture(file).catch(() => null);
    const bytes = smaller && strippedPhoto(new Uint8Array(await smaller.arrayBuffer()));
    if (!bytes) return setFault(pile.photos.noPicture(file.name));
    const picture = new Blob([bytes as BlobPart], { type: 'image/jpeg' });
    const hash = photoHash(bytes);
    if (!(await keepPhoto({ project, tag: photoTag(hash), at: Date.now(), picture })))
      return setFault(pile.photos.refused);
    setFault(null);
    onPhoto({ hash, type: 'image/jpeg', bytes: picture.size });
  };
  return (
    <>
      <label className="button photo-add">
        {photo ? words.another : words.add}
        <input
          type="file"
          accept="image/*"
          capture="environment"
          className="read-out"
          onChange={({ target }) => void take(target.files?.[0])}
        />
      </label>
      <p role="status" className={fault === null ? 'quiet' : 'accent'}>
        {fault ?? (photo ? words.has(photo.hash.slice(0, 8)) : '')}
      </p>
    </>
  );
}
