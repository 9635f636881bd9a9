// What else the pile shows as it grows: readings that went wrong, faces nobody noted, marks, tapes,
// groups.

import { memo } from 'react';
import { useWords } from '../../words/words.ts';
import { FacesUnknown } from './faces-unknown.tsx';
import type { GoTo } from './next-things.tsx';
import { People } from './people.tsx';
import type { Worked } from './worked.ts';

/** Marks on several kinds, tapes, faces, groups still joined. */
export const OtherFindings = memo(function OtherFindings({
  worked,
  goTo,
}: {
  worked: Worked | null;
  goTo: GoTo;
}) {
  return worked ? (
    <>
      <FacesUnknown worked={worked} goTo={goTo} />
      <Marks worked={worked} />
      <People worked={worked} />
      <Groups worked={worked} />
    </>
  ) : null;
});

function Marks({ worked }: { worked: Worked }) {
  const words = useWords().pile;
  const { mixedMarks } = worked.kinds;
  if (mixedMarks.length === 0) return null;
  return (
    <section aria-labelledby="pile-marks-title">
      <h2 id="pile-marks-title">{words.marks.title}</h2>
      <ul className="lines">
        {mixedMarks.map(({ mark, kinds }) => (
          <li key={mark}>
            <strong>{mark}</strong>{' '}
            {words.and(
              kinds.map(({ kind, panels, stray }) =>
                stray ? words.marks.stray(kind, panels) : words.marks.kind(kind, panels),
              ),
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

function Groups({ worked }: { worked: Worked }) {
  const words = useWords().pile;
  const { groups } = worked.pile;
  const { unsettledGroups } = worked.kinds;
  if (groups.length === 0) return null;
  const unsettled = new Map(unsettledGroups.map((one) => [one.group, one.readings.length]));
  const lines = groups.map(({ around, count, closed }, i) => ({
    id: `${i} ${around.join(' ')}`,
    line: words.groups.line(count, words.joined(around), closed === true),
    ways: unsettled.get(i),
  }));
  return (
    <section aria-labelledby="pile-groups-title">
      <h2 id="pile-groups-title">{words.groups.title}</h2>
      <ul className="lines">
        {lines.map(({ id, line, ways }) => (
          <li key={id}>
            {line}
            {ways === undefined ? null : (
              <span className="accent"> {words.groups.unsettled(ways)}</span>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
