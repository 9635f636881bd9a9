// The Record sheet: what was done, noted tap by tap on the plan; beside it what was forgotten, what is
// to be asked, and how far it is.

import '../../styles/fitting.css';
import '../../styles/ground.css';
import '../../styles/raising.css';
import '../../styles/record.css';
import '../../styles/sharing.css';
import { useMemo, useState } from 'react';
import type { Picked } from '../../drawing/plan-view/pick.ts';
import { PlanView } from '../../drawing/plan-view/plan-view.tsx';
import { turnedPicture } from '../../drawing/plan-view/turned.ts';
import { type Noting, nextOf, type Thing } from '../../record/next-state.ts';
import { projectOf } from '../../state/app-state.ts';
import { useAppState } from '../../ui/app-context.tsx';
import { TitleBlock } from '../../ui/title-block.tsx';
import { usePrintedAlone } from '../../ui/use-printed-alone.ts';
import { useWords } from '../../words/words.ts';
import { NoShell, Steps } from '../places/sheet-states.tsx';
import type { Stood } from '../places/stood.ts';
import { useAssumes } from '../places/use-assumes.ts';
import { useStood } from '../places/use-stood.ts';
import { usePlanPicture } from '../raising/stage-drawing.tsx';
import { DailyFile } from './daily-file.tsx';
import { HandsChoice } from './hands-choice.tsx';
import { useBringPhotos } from './note-list.tsx';
import { NotingBar } from './noting-bar.tsx';
import { PlanTurns, usePlanTurn } from './plan-turns.tsx';
import { PrintedRecord } from './printed-record.tsx';
import { QuestionList } from './question-list.tsx';
import { recordFills, recordItems } from './record-items.ts';
import { RecordTabs } from './record-tabs.tsx';
import { SavedLine } from './saved-line.tsx';
import { Sharing } from './sharing.tsx';
import { SiteLine, SiteStrip } from './site-line.tsx';
import { StopBanner } from './stop-banner.tsx';
import { useNextPlaces } from './use-next-places.ts';
import { useNoted } from './use-noted.ts';

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
        <Recorded key={project} stood={stood} project={project} />
      ) : (
        <div className="choosing">
          <NoShell onChoose={() => undefined} />
          <div className="record-panel">
            <SiteLine />
            <Sharing />
          </div>
          <div className="choosing-foot">
            <TitleBlock />
          </div>
        </div>
      )}
    </div>
  );
}

function Recorded({ stood, project }: { stood: Stood; project: string }) {
  const { record: words, recording, frame } = useWords();
  const noted = useNoted(stood, project);
  useBringPhotos(noted, project);
  const { plan, state, due, leftOut, session, open, tell, nameOf, say } = noted;
  const { shell } = plan;
  const next = useNextPlaces(stood, noted);
  const turns = usePlanTurn();
  const flat = usePlanPicture(stood);
  const { turn } = turns;
  const picture = useMemo(() => flat && turnedPicture(flat, turn), [flat, turn]);
  const assumes = useAssumes();
  const { untitled } = useWords().frame;
  const title = useAppState((app) => projectOf(app).title);
  const [noting, setNoting] = useState<Noting>('panels');
  const [thing, setThing] = useState<Thing | null>(null);
  // Where somebody stands: the panel that was chosen last.
  const [near, setNear] = useState<number | null>(null);
  // What goes on paper in place of the sheet.
  const [paper, printAlone] = usePrintedAlone<string>();
  const drawn = useMemo(
    () =>
      picture && {
        ...picture,
        items: recordItems({ plan, state, forgotten: due, noting, leftOut, next, picture }),
      },
    [plan, state, due, noting, leftOut, next, picture],
  );
  const fills = useMemo(
    () =>
      state.placed.map((panel, place) => {
        if (panel) return recordFills.placed;
        return next.includes(place) ? recordFills.next : recordFills.empty;
      }),
    [state, next],
  );
  const placed = state.placed.filter((panel) => panel !== null).length;

  const choose = (one: Thing | null): void => {
    setThing(one);
    if (one?.sort === 'place') setNear(one.index);
  };
  /** Chosen from a list: on a phone the plan comes into sight. */
  const look = (one: Thing): void => {
    setThing(one);
    setNoting(one.sort === 'place' ? 'panels' : one.sort === 'hub' ? 'plates' : 'seams');
    document.querySelector('.record-drawing')?.scrollIntoView({ block: 'nearest' });
  };
  const tap = (picked: Picked | null): void => {
    const one = picked && thingOf(picked, shell.seams);
    choose(one);
    if (!one || !open) return;
    const step = nextOf(plan, state, noting, one, leftOut);
    if (step === 'done') tell(words.isDone(nameOf(one)));
    else if (step === 'left out') tell(words.isLeftOut(nameOf(one)));
    else if (step === 'not yet') tell(words.notYet(nameOf(one)));
    else say(step);
  };
  const hold = (picked: Picked | null): void => {
    const one = picked && thingOf(picked, shell.seams);
    choose(one);
    if (!one) return;
    tell(recording.held(nameOf(one)));
    navigator.vibrate?.([20, 40, 20]);
  };

  return (
    <>
      <StopBanner noted={noted} />
      <DailyFile {...{ noted, project, title }} />
      {paper ? (
        <PrintedRecord what={paper} {...{ noted, stood }} title={title || untitled} />
      ) : null}
      <div className={paper ? 'shell-sheet screen-only' : 'shell-sheet'}>
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
                  onHold={hold}
                  onGo={(place) => choose({ sort: 'place', index: place })}
                  label={words.drawing(placed, plan.places.length - leftOut.length)}
                  says={thing ? nameOf(thing) : ''}
                  onZoom={ignore}
                  turned={turn.degrees}
                />
              ) : null}
            </div>
            <PlanTurns turns={turns} />
          </section>
          <SiteStrip />
          <NotingBar
            {...{ noted, stood, noting, thing }}
            onThing={choose}
            onNoting={(next) => {
              setNoting(next);
              setThing(null);
              tell('');
            }}
          />
        </div>
        <div className="beside">
          <div className="record-head">
            <label className="record-name screen-only">
              {words.name}
              <input
                value={noted.by}
                maxLength={40}
                onChange={(event) => noted.setBy(event.target.value)}
              />
              <span className="quiet">{words.nameWhy}</span>
            </label>
            <HandsChoice noted={noted} />
            <SavedLine {...{ session, title, project }} />
            <SiteLine />
          </div>
          <QuestionList questions={state.questions} />
          <RecordTabs
            {...{ noted, stood, project, thing, near }}
            onThing={look}
            onPrint={printAlone}
          />
          <TitleBlock more={[{ name: frame.block.assumes, value: assumes }]} />
        </div>
      </div>
    </>
  );
}

const none: readonly number[] = [];
const ignore = (): void => undefined;

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
