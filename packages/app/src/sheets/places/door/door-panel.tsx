// Where a door or hatch may be: its size, which way it is wanted, the candidates with what each costs,
// and the press that leaves its panels out.

import type { Opening, Shell } from '@shellraise/core';
import { useMemo, useState } from 'react';
import { longEngine } from '../../../engine/bridge.ts';
import { projectOf } from '../../../state/app-state.ts';
import { useAppState, useLengths } from '../../../ui/app-context.tsx';
import { useWords } from '../../../words/words.ts';
import { USUAL_DOOR, wishesOf } from '../fit/wishes.ts';
import type { Stood } from '../stood.ts';
import { useAnswer } from '../use-answer.ts';
import { DoorForm } from './door-form.tsx';
import { DoorRow } from './door-row.tsx';
import { type DoorContent, type DoorRank, sortsOf } from './doors.ts';
import { OpeningsNow } from './openings-now.tsx';

interface DoorQuestion {
  readonly shell: Shell;
  readonly width: number;
  readonly height: number;
}

const askDoors = ({ shell, width, height }: DoorQuestion) =>
  longEngine.ask('doors', shell, width, height);

/** Candidates told at once. */
const SHOWN = 12;

/** The panel. */
export function DoorPanel({ stood }: { stood: Stood }) {
  const { fitting, frame } = useWords();
  const words = fitting.door;
  const lengths = useLengths();
  const wishes = useAppState((state) => wishesOf(projectOf(state)));
  const { width, height } = wishes.door ?? USUAL_DOOR;
  const [rank, setRank] = useState<DoorRank>('places');
  const [towards, setTowards] = useState(0);
  const { shell } = stood.standing.standing;
  const question = useMemo(() => ({ shell, width, height }), [shell, width, height]);
  const { last, pending, fault, again } = useAnswer(question, askDoors);
  const content = useMemo(() => contentOf(stood), [stood]);
  const found = last?.question === question ? last.answer : null;
  const list = useMemo(
    () => (found ? sortsOf(found, content, rank, (-towards * Math.PI) / 180) : []),
    [found, content, rank, towards],
  );
  return (
    <div className="fit-panel" aria-busy={pending}>
      <OpeningsNow stood={stood} />
      <DoorForm
        {...{ wishes, rank, towards }}
        door={{ width, height }}
        onRank={setRank}
        onTowards={setTowards}
      />
      {fault === null ? null : (
        <p role="alert">
          {fitting.failed}{' '}
          <button type="button" onClick={again}>
            {frame.again}
          </button>
        </p>
      )}
      <p role="status" className="fit-proof">
        {found === null
          ? words.looking
          : list.length === 0
            ? words.none(lengths.large(width), lengths.large(height))
            : words.found(list.length, found.length)}
      </p>
      {list.length > 0 ? (
        <>
          <p className="facts-caution">{words.caution}</p>
          <ol className="ways-out" aria-label={words.tab}>
            {list.slice(0, SHOWN).map((one: Opening, i) => (
              <DoorRow
                key={one.places.join()}
                {...{ stood, content }}
                opening={one}
                number={i + 1}
              />
            ))}
          </ol>
        </>
      ) : null}
    </div>
  );
}

/** What the shell lacks is reckoned with nothing left out. */
function contentOf({ standing, kinds }: Stood): DoorContent {
  const { shell, courses } = standing.standing;
  const short = kinds.map((kind, k) => {
    const places = shell.kind.filter((own) => own === k).length;
    return kind.counted ? Math.max(0, places - kind.good) : 0;
  });
  return { shell, kinds, course: courses.course, short };
}
