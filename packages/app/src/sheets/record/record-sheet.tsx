// The Record sheet: what was done, noted tap by tap on the plan; beside it what was forgotten, what is
// to be asked, and how far it is.

import '../../styles/fitting.css';
import '../../styles/ground.css';
import '../../styles/raising.css';
import '../../styles/record.css';
import { forgotten as forgottenIn, recordPlan, recordState } from '@shellraise/core';
import { useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import type { Picked } from '../../drawing/plan-view/pick.ts';
import { PlanView } from '../../drawing/plan-view/plan-view.tsx';
import { type Noting, nextOf, type Thing } from '../../record/next-state.ts';
import { keepOwnName, ownName, recordOf } from '../../record/this-record.ts';
import { projectOf } from '../../state/app-state.ts';
import { useAppState } from '../../ui/app-context.tsx';
import { TitleBlock } from '../../ui/title-block.tsx';
import { useWords } from '../../words/words.ts';
import { NoShell, Steps } from '../places/sheet-states.tsx';
import type { Stood } from '../places/stood.ts';
import { useAssumes } from '../places/use-assumes.ts';
import { useStood } from '../places/use-stood.ts';
import { usePlanPicture } from '../raising/stage-drawing.tsx';
import { ForgottenList } from './forgotten-list.tsx';
import { NotingBar } from './noting-bar.tsx';
import { QuestionList } from './question-list.tsx';
import { recordFills, recordItems } from './record-items.ts';
import { SavedLine } from './saved-line.tsx';
import { Tally } from './tally.tsx';

/** The Record sheet. */
export function RecordSheet() {
  const words = useWords().record;
  const stood = useStood();
  const project = useAppState((state) => state.projectId);
  return (
    <div className="places-sheet raising-sheet record-sheet">
      <h1 className="read-out">{words.title}</h1>
      <Steps />
      {stood ? (
        <Noted key={project} stood={stood} project={project} />
      ) : (
        <div className="choosing">
          <NoShell onChoose={() => undefined} />
          <div className="choosing-foot">
            <TitleBlock />
          </div>
        </div>
      )}
    </div>
  );
}

/** Nobody knows yet how many bolts a seam has. */
const bolts = (): null => null;

function Noted({ stood, project }: { stood: Stood; project: string }) {
  const { record: words, frame } = useWords();
  const session = recordOf(project);
  const now = useStore(session.store);
  const { standing } = stood;
  const { shell, courses } = standing.standing;
  const { numbers, leftOut } = standing;
  const picture = usePlanPicture(stood);
  const assumes = useAssumes();
  const title = useAppState((state) => projectOf(state).title);
  const [noting, setNoting] = useState<Noting>('panels');
  const [thing, setThing] = useState<Thing | null>(null);
  const [by, setBy] = useState(ownName);
  const [told, setTold] = useState('');
  useEffect(() => keepOwnName(by), [by]);
  const plan = useMemo(
    () => recordPlan(shell, { numbers, course: courses.course }),
    [shell, numbers, courses],
  );
  // The log is one object that grows: its version says when to look again.
  // biome-ignore lint/correctness/useExhaustiveDependencies: see above
  const state = useMemo(() => recordState(session.log, plan), [session, plan, now.version]);
  const due = useMemo(
    () =>
      forgottenIn(session.log, plan, state, bolts).filter(
        ({ what, index }) => what === 'missing plate' || !isOut(plan.seamPlaces[index]!, leftOut),
      ),
    [session, plan, state, leftOut],
  );
  const drawn = useMemo(
    () =>
      picture && {
        ...picture,
        items: recordItems({ plan, state, forgotten: due, noting, leftOut, picture }),
      },
    [plan, state, due, noting, leftOut, picture],
  );
  const fills = useMemo(
    () => state.placed.map((panel) => (panel ? recordFills.placed : recordFills.empty)),
    [state],
  );
  const placed = state.placed.filter((panel) => panel !== null).length;
  const name = by.trim();

  const nameOf = (one: Thing): string => {
    if (one.sort === 'place') return words.place(plan.places[one.index]!);
    if (one.sort === 'seam') return words.seam(plan.seams[one.index]!);
    const around = plan.hubPlaces[one.index]!;
    return words.hubOf(plan.places[around[0]!] ?? '', around.length);
  };
  const tap = (picked: Picked | null): void => {
    const one = picked && thingOf(picked, shell.seams);
    setThing(one);
    if (!one || !now.open) return;
    if (name === '') {
      setTold(words.nameFirst);
      return;
    }
    const next = nextOf(plan, state, noting, one, leftOut);
    if (next === 'done') setTold(words.isDone(nameOf(one)));
    else if (next === 'left out') setTold(words.isLeftOut(nameOf(one)));
    else if (next === 'not yet') setTold(words.notYet(nameOf(one)));
    else {
      session.say(next, name);
      setTold('');
      navigator.vibrate?.(30);
    }
  };

  return (
    <div className="shell-sheet">
      <div className="drawings raising-left">
        <section className="record-drawing" aria-label={words.title}>
          <div className="plan-room">
            {drawn ? (
              <PlanView
                shell={shell}
                picture={drawn}
                fills={fills}
                picked={thing && pickedOf(thing, shell.seams)}
                marked={none}
                only={noting === 'panels' ? 'place' : noting === 'plates' ? 'hub' : 'seam'}
                onPick={tap}
                label={words.drawing(placed, numbers.length - leftOut.length)}
                says={thing ? nameOf(thing) : ''}
                onZoom={ignore}
              />
            ) : null}
          </div>
        </section>
        <NotingBar
          {...{ noting, plan, state, thing, told, nameOf, session, by }}
          last={now.last}
          open={now.open}
          onNoting={(next) => {
            setNoting(next);
            setThing(null);
            setTold('');
          }}
          onTold={setTold}
        />
      </div>
      <div className="beside">
        <div className="fit-panel record-panel">
          <label className="record-name screen-only">
            {words.name}
            <input value={by} maxLength={40} onChange={(event) => setBy(event.target.value)} />
            <span className="quiet">{words.nameWhy}</span>
          </label>
          <SavedLine session={session} title={title} />
          <QuestionList questions={state.questions} />
          <ForgottenList {...{ plan, due, thing, nameOf }} onThing={setThing} />
          <Tally state={state} plan={plan} leftOut={leftOut} />
          <p className="caution">{words.caution}</p>
        </div>
        <TitleBlock more={[{ name: frame.block.assumes, value: assumes }]} />
      </div>
    </div>
  );
}

const none: readonly number[] = [];
const ignore = (): void => undefined;

const isOut = ([p, q]: readonly [number, number], leftOut: readonly number[]): boolean =>
  leftOut.includes(p) || leftOut.includes(q);

/** A seam on the plan goes by one of its sides, in the record by its own index. */
function thingOf(picked: Picked, seams: ArrayLike<number>): Thing | null {
  if (picked.type === 'place') return { sort: 'place', index: picked.place };
  if (picked.type === 'hub') return { sort: 'hub', index: picked.hub };
  const at = Array.from(seams).indexOf(picked.side);
  return at < 0 ? null : { sort: 'seam', index: Math.floor(at / 2) };
}

function pickedOf({ sort, index }: Thing, seams: ArrayLike<number>): Picked {
  if (sort === 'place') return { type: 'place', place: index };
  if (sort === 'hub') return { type: 'hub', hub: index };
  return { type: 'seam', side: seams[2 * index] as number };
}
