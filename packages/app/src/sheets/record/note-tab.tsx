// Everything else that can be noted, each in its form: people, weather, panels, a note with its photo,
// survey, anchors, bolts counted.

import { useState } from 'react';
import type { Thing } from '../../record/next-state.ts';
import { useWords } from '../../words/words.ts';
import { Tick } from '../ground/small.tsx';
import { EntryForm } from './entry-form.tsx';
import { type EntryFormKey, entryForms } from './entry-forms.ts';
import { NoteList } from './note-list.tsx';
import { type KeptPhoto, NotePhoto } from './note-photo.tsx';
import type { Noted } from './use-noted.ts';

/** The tab. `thing`: what is chosen on the plan, which a note may be about. */
export function NoteTab({
  noted,
  thing,
  project,
}: {
  noted: Noted;
  thing: Thing | null;
  project: string;
}) {
  const words = useWords().recording.forms;
  const [form, setForm] = useState<EntryFormKey>('person');
  return (
    <section className="screen-only">
      <fieldset className="record-big">
        <legend>{words.heading}</legend>
        {entryForms.map((one) => (
          <button key={one} type="button" aria-pressed={form === one} onClick={() => setForm(one)}>
            {words.of[one]}
          </button>
        ))}
      </fieldset>
      <h3>{words.of[form]}</h3>
      <p className="quiet">{words.why[form]}</p>
      {form === 'note' ? (
        <>
          <NoteForm {...{ noted, thing, project }} />
          <NoteList {...{ noted, project }} />
        </>
      ) : (
        <EntryForm
          key={form === 'person' ? `${form} ${noted.state.people.length}` : form}
          noted={noted}
          form={form}
          first={firstOf(form, noted)}
        />
      )}
      {form === 'person' ? <Here noted={noted} /> : null}
    </section>
  );
}

/** Who has a name here and is not signed in comes first. */
function firstOf(form: EntryFormKey, { by, state }: Noted): Readonly<Record<string, string>> {
  const name = by.trim();
  return form === 'person' && name !== '' && !state.people.includes(name) ? { person: name } : {};
}

/** Who is here, each with a press that signs them out. */
function Here({ noted: { state, say, open } }: { noted: Noted }) {
  const words = useWords().recording;
  if (state.people.length === 0) return <p className="quiet">{words.forms.nobody}</p>;
  return (
    <fieldset className="record-big">
      <legend>{words.next.here(state.people)}</legend>
      {state.people.map((person) => (
        <button
          key={person}
          type="button"
          disabled={!open}
          onClick={() => say({ kind: 'person', person, here: false })}
        >
          {words.forms.goes(person)}
        </button>
      ))}
    </fieldset>
  );
}

function NoteForm({
  noted,
  thing,
  project,
}: {
  noted: Noted;
  thing: Thing | null;
  project: string;
}) {
  const words = useWords().recording.forms;
  const [isAbout, setIsAbout] = useState(true);
  const [photo, setPhoto] = useState<KeptPhoto | null>(null);
  const { plan, nameOf } = noted;
  const names = { place: plan.places, seam: plan.seams, hub: plan.hubs };
  const about = thing &&
    isAbout && { what: thing.sort, name: names[thing.sort][thing.index] as string };
  return (
    <EntryForm
      noted={noted}
      form="note"
      more={{ ...(about && { about }), ...(photo && { photo }) }}
      onNoted={() => setPhoto(null)}
    >
      {thing ? (
        <Tick name={words.about(nameOf(thing))} checked={isAbout} onTick={setIsAbout} />
      ) : null}
      <NotePhoto {...{ project, photo }} onPhoto={setPhoto} />
    </EntryForm>
  );
}
