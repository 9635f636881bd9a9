// Photos of the panel under the tape: damage, a mark, a bent flange. Optional, and kept in this
// browser alone.

import { useCallback, useEffect, useState } from 'react';
import { DEMO } from '../../state/app-state.ts';
import { keepPhoto, type Photo, photosOf, removePhoto } from '../../store/photo-store.ts';
import { useApp, useAppState } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { shrinkPicture } from './shrink-picture.ts';

/** The photos of the panel with this tag; undefined where it has none yet. */
export function Photos({ tag }: { tag: string | undefined }) {
  const words = useWords().pile.photos;
  const project = useAppState((state) => state.projectId);
  const why = project === DEMO ? words.demo : tag ? null : words.noTag;
  return (
    <section className="photos screen-only">
      <h2>{tag && why === null ? words.titleOf(tag) : words.title}</h2>
      {tag && why === null ? (
        <PanelPhotos key={`${project} ${tag}`} project={project} tag={tag} />
      ) : (
        <p className="quiet">{why}</p>
      )}
    </section>
  );
}

function PanelPhotos({ project, tag }: { project: string; tag: string }) {
  const words = useWords().pile.photos;
  const app = useApp();
  const [photos, setPhotos] = useState<readonly Photo[]>([]);
  const refresh = useCallback(async () => setPhotos(await photosOf(project, tag)), [project, tag]);
  useEffect(() => void refresh(), [refresh]);
  const add = async (files: FileList | null): Promise<void> => {
    for (const file of files ?? []) {
      const picture = await shrinkPicture(file).catch(() => null);
      if (!picture) app.tell('fault', words.noPicture(file.name));
      else if (!(await keepPhoto({ project, tag, at: Date.now(), picture })))
        app.tell('fault', words.refused);
    }
    await refresh();
  };
  const remove = async (photo: Photo): Promise<void> => {
    await removePhoto(photo.id);
    const { id: _, ...same } = photo;
    const back = (): void => void keepPhoto(same).then(refresh);
    app.tell('note', words.removed, [], [{ label: words.putBack, act: back }]);
    await refresh();
  };
  return (
    <>
      <ul className="photo-list">
        {photos.map((photo, i) => (
          <li key={photo.id}>
            <PhotoFigure photo={photo} name={words.nameOf(i + 1, tag)} />
            <button type="button" onClick={() => void remove(photo)}>
              {words.remove}
              <span className="read-out"> {words.nameOf(i + 1, tag)}</span>
            </button>
          </li>
        ))}
      </ul>
      <label className="button photo-add">
        {words.add}
        <input
          type="file"
          accept="image/*"
          multiple
          className="read-out"
          onChange={(event) => {
            void add(event.target.files).then(() => {
              event.target.value = '';
            });
          }}
        />
      </label>
      <p className="quiet">{words.where}</p>
    </>
  );
}

/** The picture; pressed, it is saved as a file. */
function PhotoFigure({ photo, name }: { photo: Photo; name: string }) {
  const [url, setUrl] = useState<string | null>(null);
  useEffect(() => {
    const made = URL.createObjectURL(photo.picture);
    setUrl(made);
    return () => URL.revokeObjectURL(made);
  }, [photo]);
  return url ? (
    <a href={url} download={`${name}.jpg`}>
      <img src={url} alt={name} />
    </a>
  ) : null;
}
