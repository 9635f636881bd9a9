// Where a door, a round hatch or a thing's way through may be: its size, which way it is wanted, the candidates with what each costs,
// and the press that leaves its panels out.

import {
  familiesOf,
  familyIndex,
  frameParts,
  needOf,
  type OpeningRank,
  type PartsKnown,
  type Shell,
  STIFFNESS_ASKED,
  stockRows,
  unknownParts,
  type ViewPoint,
  withStiffness,
} from '@shellraise/core';
import { useMemo, useState } from 'react';
import { longEngine } from '../../../engine/bridge.ts';
import type { OpeningAsked } from '../../../engine/openings.ts';
import { projectOf } from '../../../state/app-state.ts';
import { useAppState, useLengths } from '../../../ui/app-context.tsx';
import type { Lengths } from '../../../ui/lengths.ts';
import { useWords } from '../../../words/words.ts';
import { AnswerFault } from '../answer-state.tsx';
import { USUAL_DOOR, wishesOf } from '../fit/wishes.ts';
import type { Stood } from '../stood.ts';
import { useAnswer } from '../use-answer.ts';
import { type AskedAs, spans } from './asked.ts';
import { DoorForm } from './door-form.tsx';
import { DoorRow } from './door-row.tsx';
import { type DoorContent, doorRanks, sortsOf } from './doors.ts';
import { OpeningsNow } from './openings-now.tsx';

interface DoorQuestion {
  readonly shell: Shell;
  readonly asked: OpeningAsked;
}

const askDoors = ({ shell, asked }: DoorQuestion) => longEngine.ask('doors', shell, asked);

interface StiffnessQuestion {
  readonly shell: Shell;
  readonly parts: PartsKnown | undefined;
  readonly openings: readonly (readonly number[])[];
}

const askStiffness = ({ shell, parts, openings }: StiffnessQuestion) =>
  longEngine.ask('openingsLeave', shell, parts, openings);

/** A thing as it comes, to be changed: a crate 1.2 m wide and 1 m high. */
const USUAL_THING: readonly ViewPoint[] = [
  [-0.6, 0],
  [0.6, 0],
  [0.6, 1],
  [-0.6, 1],
];

/** Candidates told at once. */
const SHOWN = 12;

/** The panel. */
export function DoorPanel({ stood }: { stood: Stood }) {
  const { fitting } = useWords();
  const words = fitting.door;
  const lengths = useLengths();
  const wishes = useAppState((state) => wishesOf(projectOf(state)));
  const { width, height } = wishes.door ?? USUAL_DOOR;
  const [as, setAs] = useState<AskedAs>('door');
  const [diameter, setDiameter] = useState(0.6);
  const [outline, setOutline] = useState<readonly ViewPoint[]>(USUAL_THING);
  const asked = useMemo(
    (): OpeningAsked =>
      as === 'door' ? { as, width, height } : as === 'hatch' ? { as, diameter } : { as, outline },
    [as, width, height, diameter, outline],
  );
  const [rank, setRank] = useState<OpeningRank>('fewest panels');
  const [towards, setTowards] = useState(0);
  const { shell } = stood.standing.standing;
  const question = useMemo(() => ({ shell, asked }), [shell, asked]);
  const { last, pending, fault, again } = useAnswer(question, askDoors);
  const { windFrom } = wishes;
  const content = useMemo(() => contentOf(stood, windFrom), [stood, windFrom]);
  const ranked = doorRanks(windFrom !== undefined).includes(rank) ? rank : 'fewest panels';
  const found = last?.question === question ? last.answer : null;
  const list = useMemo(
    () => (found ? sortsOf(found, content, ranked, (-towards * Math.PI) / 180) : []),
    [found, content, ranked, towards],
  );
  const parts = useAppState((state) => projectOf(state).parts);
  const weighing = useMemo(() => {
    const openings = list.slice(0, STIFFNESS_ASKED).map(({ opening }) => opening.places);
    return openings.length > 0 ? { shell, parts, openings } : null;
  }, [shell, parts, list]);
  const answer = useAnswer(weighing, askStiffness).last;
  const kept = answer?.question === weighing ? answer?.answer : undefined;
  const told = useMemo(() => withStiffness(list, kept ?? [], ranked), [list, kept, ranked]);
  const { supposed } = frameParts(parts ?? unknownParts);
  return (
    <div className="fit-panel" aria-busy={pending}>
      <OpeningsNow stood={stood} />
      <DoorForm
        {...{ wishes, towards, as, diameter, outline }}
        rank={ranked}
        door={{ width, height }}
        onAs={setAs}
        onDiameter={setDiameter}
        onOutline={setOutline}
        onRank={setRank}
        onTowards={setTowards}
      />
      <AnswerFault {...{ fault, again }} />
      <p role="status" className="fit-proof">
        {found === null
          ? words.looking
          : list.length === 0
            ? words.nowhere[as](askedWords(asked, lengths))
            : words.found(list.length, found.length)}
      </p>
      {list.length > 0 ? (
        <>
          <p className="facts-caution">
            {words.caution} {words.supposed(supposed)}
          </p>
          <ol className="ways-out" aria-label={words.tab}>
            {told.slice(0, SHOWN).map((one, i) => (
              <DoorRow
                key={one.opening.places.join()}
                {...{ stood, content, ...one }}
                stiffness={one.stiffness?.kept ?? null}
                number={i + 1}
              />
            ))}
          </ol>
        </>
      ) : null}
    </div>
  );
}

/** What is asked for, in words: its sizes. */
function askedWords(asked: OpeningAsked, { large }: Lengths): readonly [string, string] {
  if (asked.as === 'hatch') return [large(asked.diameter), ''];
  const { width, height } = asked.as === 'door' ? asked : spans(asked.outline);
  return [large(width), large(height)];
}

/** What the shell lacks is reckoned with nothing left out. */
function contentOf({ standing, kinds, shape }: Stood, windFrom: number | undefined): DoorContent {
  const { shell, courses } = standing.standing;
  const families = familiesOf(kinds, shape.interchangeable);
  const familyOf = familyIndex(kinds, families);
  const need = needOf(shell, shell.kind.keys(), kinds, families);
  return {
    shell,
    kinds,
    course: courses.course,
    family: Array.from(shell.kind, (kind) => familyOf[kind] as number),
    short: stockRows(kinds, families, need, standing.decision.repaired).map(({ short }) => short),
    ...(windFrom !== undefined && { windFrom }),
  };
}
