// Tightening, once round the ring from where somebody stands: the seam to go to, one press to say that
// it is done, and those after it.

import { tighteningWalk, workingCourse } from '@shellraise/core';
import { useState } from 'react';
import type { Thing } from '../../record/next-state.ts';
import { useWords } from '../../words/words.ts';
import { Choice } from '../ground/small.tsx';
import type { Noted } from './use-noted.ts';

/** Seams after the next that are listed. */
const AFTER = 6;

/** The tab. `near`: the place where somebody stands. */
export function WalkTab({
  noted,
  near,
  onThing,
}: {
  noted: Noted;
  near: number | null;
  onThing: (thing: Thing) => void;
}) {
  const { recording, record } = useWords();
  const words = recording.walk;
  const { plan, state, say, bolts, leftOut, open } = noted;
  const courses = [...new Set(Array.from(plan.course))].sort((a, b) => a - b);
  const working = workingCourse(plan, state) || 1;
  const [to, setTo] = useState<'finger' | 'snug' | 'final'>('snug');
  const [picked, setPicked] = useState<number | null>(null);
  const course = picked ?? working;
  const walk = tighteningWalk(plan, state, { course, to, from: near }).filter(
    (seam) => !plan.seamPlaces[seam]!.some((place) => leftOut.includes(place)),
  );
  const [next, ...after] = walk;
  const show = (seam: number): void => onThing({ sort: 'seam', index: seam });
  return (
    <section className="record-form">
      <h2>{words.heading}</h2>
      <p className="quiet">
        {near === null ? words.fromDatum : recording.here(plan.places[near]!)} {words.how}
      </p>
      <div className="record-fields">
        <Choice
          name={words.course}
          value={String(course)}
          of={courses.map((one) => [String(one), record.course(one)] as const)}
          onChoose={(one) => setPicked(Number(one))}
        />
        <Choice
          name={words.to}
          value={to}
          of={(['finger', 'snug', 'final'] as const).map((one) => [one, record.step[one]] as const)}
          onChoose={setTo}
        />
      </div>
      {next === undefined ? (
        <p role="status">{words.none(record.course(course), record.step[to])}</p>
      ) : (
        <>
          <p className="raise-verdict" role="status">
            {words.next(plan.seams[next]!, bolts(next))}
          </p>
          <div className="record-big">
            <button
              type="button"
              disabled={!open}
              onClick={() => {
                if (say({ kind: 'seam pass', seam: plan.seams[next]!, pass: to }) && after[0])
                  show(after[0]);
              }}
            >
              {words.done(record.step[to])}
            </button>
            <button type="button" onClick={() => show(next)}>
              {words.show}
            </button>
          </div>
          <p className="quiet">{words.left(walk.length)}</p>
          <ol className="record-walk">
            {after.slice(0, AFTER).map((seam) => (
              <li key={seam}>
                <button type="button" className="plain" onClick={() => show(seam)}>
                  {record.seam(plan.seams[seam]!)}
                </button>
              </li>
            ))}
          </ol>
        </>
      )}
    </section>
  );
}
