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
import { type Noting, nextOf, type Thing } from '../../record/next-state.ts';
import { projectOf } from '../../state/app-state.ts';
import type { SiteNow } from '../../sync/site.ts';
import { useAppState, useSite } from '../../ui/app-context.tsx';
import { TitleBlock } from '../../ui/title-block.tsx';
import { useWords } from '../../words/words.ts';
import { NoShell, Steps } from '../places/sheet-states.tsx';
import type { Stood } from '../places/stood.ts';
import { Tabs } from '../places/tabs.tsx';
import { useAssumes } from '../places/use-assumes.ts';
import { useStood } from '../places/use-stood.ts';
import { usePlanPicture } from '../raising/stage-drawing.tsx';
import { ForgottenList } from './forgotten-list.tsx';
import { HandsChoice } from './hands-choice.tsx';
import { NotingBar } from './noting-bar.tsx';
import { QuestionList } from './question-list.tsx';
import { recordFills, recordItems } from './record-items.ts';
import { SavedLine } from './saved-line.tsx';
import { Sharing } from './sharing.tsx';
import { SiteLine, SiteStrip } from './site-line.tsx';
import { StopBanner, StopCalls } from './stop-banner.tsx';
import { Tally } from './tally.tsx';
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

const tabs = ['next', 'forgotten', 'done', 'laptop'] as const;
type RecordTab = (typeof tabs)[number];

function Recorded({ stood, project }: { stood: Stood; project: string }) {
  const { record: words, recording, frame } = useWords();
  const noted = useNoted(stood, project);
  const { plan, state, due, leftOut, session, open, tell, nameOf, say } = noted;
  const { shell } = plan;
  const picture = usePlanPicture(stood);
  const assumes = useAssumes();
  const title = useAppState((app) => projectOf(app).title);
  const [noting, setNoting] = useState<Noting>('panels');
  const [thing, setThing] = useState<Thing | null>(null);
  // Where somebody stands: the panel that was chosen last.
  const [near, setNear] = useState<number | null>(null);
  const [chosen, setTab] = useState<RecordTab | null>(null);
  const [site] = useSite();
  // Something of the laptop's is to be settled first.
  const toSettle = site.other !== null || joinFailed(site.joining);
  const tab = chosen ?? (toSettle ? 'laptop' : 'forgotten');
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

  const choose = (one: Thing | null): void => {
    setThing(one);
    if (one?.sort === 'place') setNear(one.index);
  };
  const tap = (picked: Picked | null): void => {
    const one = picked && thingOf(picked, shell.seams);
    choose(one);
    if (!one || !open) return;
    const next = nextOf(plan, state, noting, one, leftOut);
    if (next === 'done') tell(words.isDone(nameOf(one)));
    else if (next === 'left out') tell(words.isLeftOut(nameOf(one)));
    else if (next === 'not yet') tell(words.notYet(nameOf(one)));
    else say(next);
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
                  onHold={hold}
                  onGo={(place) => choose({ sort: 'place', index: place })}
                  label={words.drawing(placed, plan.places.length - leftOut.length)}
                  says={thing ? nameOf(thing) : ''}
                  onZoom={ignore}
                />
              ) : null}
            </div>
          </section>
          <SiteStrip />
          <NotingBar
            {...{ noted, noting, thing }}
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
            <SavedLine session={session} title={title} />
            <SiteLine />
          </div>
          <QuestionList questions={state.questions} />
          <Tabs
            className="beside-tabs record-tabs"
            label={recording.tabs}
            tabs={tabs.map((key) => ({ key, label: recording.tab[key] }))}
            chosen={tab}
            onChoose={setTab}
          >
            <div className="fit-panel record-panel">
              {tab === 'next' ? (
                <StopCalls noted={noted} />
              ) : tab === 'forgotten' ? (
                <ForgottenList noted={noted} near={near} onThing={choose} />
              ) : tab === 'laptop' ? (
                <Sharing />
              ) : (
                <Tally state={state} plan={plan} leftOut={leftOut} />
              )}
              <p className="caution">{words.caution}</p>
            </div>
          </Tabs>
          <TitleBlock more={[{ name: frame.block.assumes, value: assumes }]} />
        </div>
      </div>
    </>
  );
}

const joinFailed = (joining: SiteNow['joining']): boolean => joining !== 'no' && joining !== 'now';

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
