// The record from screen to camera: the buttons, and what they open, loaded when it is first asked for.

import { lazy, Suspense, useState } from 'react';
import type { RecordSession } from '../../record/record-session.ts';
import { useWords } from '../../words/words.ts';

const Showing = lazy(async () => ({ default: (await import('./codes-shown.tsx')).CodesShown }));
const Reading = lazy(async () => ({ default: (await import('./codes-read.tsx')).CodesRead }));

/** The buttons. */
export function RecordCodes({ session }: { session: RecordSession }) {
  const words = useWords().codes;
  const [open, setOpen] = useState<'show' | 'read' | null>(null);
  const Dialog = open === 'read' ? Reading : Showing;
  return (
    <>
      <button type="button" onClick={() => setOpen('show')}>
        {words.show}
      </button>
      <button type="button" onClick={() => setOpen('read')}>
        {words.read}
      </button>
      {open === null ? null : (
        <Suspense>
          <Dialog session={session} close={() => setOpen(null)} />
        </Suspense>
      )}
    </>
  );
}
