// Notes, the newest first, with their photos.

import { useEffect, useState } from 'react';
import { bringPhotos, notedPhotos, photoOf } from '../../record/note-photos.ts';
import { keepPhoto, photosOf } from '../../store/photo-store.ts';
import { useSite } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import type { Noted } from './use-noted.ts';

const here = { keepPhoto, photosOf };

/** Notes that are shown, at most. */
const SHOWN = 30;

/** The list; nothing where there are none. */
export function NoteList({ noted, project }: { noted: Noted; project: string }) {
  const words = useWords().recording.forms;
  const notes = noted.session.log.living('note').slice(-SHOWN).reverse();
  if (notes.length === 0) return null;
  return (
    <>
      <h3>{words.notes}</h3>
      <ul className="record-notes">
        {notes.map(({ writer, seq, by, at, what: { text, about, photo } }) => (
          <li key={`${writer}-${seq}`}>
            <p className="quiet">
              {by} ·{' '}
              {new Date(at).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' })}
              {about ? ` · ${about.name}` : ''}
            </p>
            <p>{text}</p>
            {photo ? <NotePicture hash={photo.hash} project={project} by={by} /> : null}
          </li>
        ))}
      </ul>
    </>
  );
}

function NotePicture({ hash, project, by }: { hash: string; project: string; by: string }) {
  const words = useWords().recording.forms.photo;
  const [site, session] = useSite();
  const [address, setAddress] = useState<string | null>(null);
  const joined = site.server === 'in';
  useEffect(() => {
    let url: string | null = null;
    let gone = false;
    void photoOf(hash, project, here, joined ? session.calls : null).then((picture) => {
      if (gone || !picture) return;
      url = URL.createObjectURL(picture);
      setAddress(url);
    });
    return () => {
      gone = true;
      if (url) URL.revokeObjectURL(url);
    };
  }, [hash, project, joined, session]);
  return address === null ? (
    <p className="quiet">{words.elsewhere}</p>
  ) : (
    <img src={address} alt={words.of(by)} />
  );
}

/** Brings this device's photos to the laptop while it has joined. */
export function useBringPhotos({ said }: Noted, project: string): void {
  const [site, { calls }] = useSite();
  const on = site.server === 'in' && site.link?.project === project && site.who?.role !== 'looker';
  useEffect(() => {
    if (!on) return;
    const name = site.link?.site ?? '';
    const brought = broughtTo.get(name) ?? new Set<string>();
    broughtTo.set(name, brought);
    void bringPhotos(notedPhotos(said.log), brought, project, here, calls);
  }, [on, said, project, calls, site.link?.site]);
}

/** Site → photos that this page knows to be there. */
const broughtTo = new Map<string, Set<string>>();
