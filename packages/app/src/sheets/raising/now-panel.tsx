// What to do now, by who is here and what stands; and before a storm. One press with what is known.

import type { Here, StormAnswer } from '@shellraise/core';
import { type FormEvent, useEffect, useEffectEvent, useMemo, useRef, useState } from 'react';
import { dayOf, timeOf } from '../../clock.ts';
import { weekendEngine } from '../../engine/bridge.ts';
import type { NowAsked, StormAsked, WeekendAsked } from '../../engine/weekend.ts';
import { Field } from '../../ui/field.tsx';
import { useWords } from '../../words/words.ts';
import { within } from '../ground/edits.ts';
import { Faults } from '../ground/small.tsx';
import { useQuantities } from '../ground/use-ground.ts';
import { useAnswer } from '../places/use-answer.ts';
import { oddsText } from './day-words.ts';
import { type HereKey, type HereTyped, hereFirst, hereTyped } from './here-typed.ts';
import { roundedHours } from './hours.ts';
import { NowCards } from './now-cards.tsx';

const askNow = (question: NowAsked) => weekendEngine.ask('now', question);
const askStorm = (question: StormAsked) => weekendEngine.ask('storm', question);

/** The panel. `done`: stages that are done as the sheet is looked at; `atOnce`: asked with what is filled
 * in, without another press. */
export function NowPanel({
  question,
  done,
  atOnce = false,
}: {
  question: WeekendAsked | null;
  done: number;
  atOnce?: boolean;
}) {
  const { weekend, raising } = useWords();
  const words = weekend.now;
  // What nobody typed follows the crew and the stage on show, which may be known only later.
  const [typed, setTyped] = useState<Partial<HereTyped>>({});
  const filled = { ...hereFirst(question?.crew, done, moment(Date.now())), ...typed };
  const [asked, setAsked] = useState<{ readonly here: Here; readonly storm: Storm | null } | null>(
    null,
  );
  const answers = useRef<HTMLDivElement>(null);
  const [faulty, setFaulty] = useState(false);
  const [storm, setStorm] = useState({ hours: '2', gust: '' });
  const ask = (withStorm: boolean): void => {
    const here = hereTyped(filled, moment(Date.now()));
    const coming = withStorm ? stormTyped(storm) : null;
    setFaulty(here === null || (withStorm && coming === null));
    if (here === null || (withStorm && coming === null)) return;
    // What was asked with stays in the fields beside its answer.
    setTyped(filled);
    setAsked({ here, storm: coming });
  };
  const askAtOnce = useEffectEvent(() => {
    ask(false);
    answers.current?.scrollIntoView({ block: 'start' });
  });
  const known = question !== null;
  useEffect(() => {
    if (atOnce && known) askAtOnce();
  }, [atOnce, known]);
  const field = (key: HereKey) => (
    <Field
      key={key}
      name={words[key]}
      fault={null}
      note={
        key === 'light' || key === 'gust' || key === 'stage'
          ? words[`${key}Note` as 'lightNote' | 'gustNote' | 'stageNote']
          : ''
      }
    >
      {(props) => (
        <input
          {...props}
          inputMode="decimal"
          value={filled[key]}
          onChange={({ target }) => setTyped({ ...typed, [key]: target.value })}
        />
      )}
    </Field>
  );
  return (
    <div className="fit-panel">
      <h3>{words.heading}</h3>
      {question === null ? <p className="quiet">{weekend.plan.waiting}</p> : null}
      <form
        className="now-form"
        onSubmit={(event: FormEvent) => {
          event.preventDefault();
          ask(false);
        }}
      >
        <button type="submit" className="go" disabled={question === null}>
          {words.go}
        </button>
        {(['people', 'climb', 'lead', 'stage', 'lifts', 'light', 'gust'] as const).map(field)}
      </form>
      {faulty ? (
        <p className="accent" role="alert">
          {words.fault}
        </p>
      ) : null}
      <h3>{words.storm}</h3>
      <form
        className="now-form"
        onSubmit={(event: FormEvent) => {
          event.preventDefault();
          ask(true);
        }}
      >
        <Field name={words.stormHours} fault={null}>
          {(props) => (
            <input
              {...props}
              inputMode="decimal"
              value={storm.hours}
              onChange={({ target }) => setStorm({ ...storm, hours: target.value })}
            />
          )}
        </Field>
        <Field name={words.stormGust} fault={null} note={words.gustNote}>
          {(props) => (
            <input
              {...props}
              inputMode="decimal"
              value={storm.gust}
              onChange={({ target }) => setStorm({ ...storm, gust: target.value })}
            />
          )}
        </Field>
        <button type="submit" disabled={question === null}>
          {words.stormGo}
        </button>
      </form>
      <div ref={answers} aria-live="polite" className="now-answer">
        {question !== null && asked !== null ? (
          asked.storm === null ? (
            <Now question={question} here={asked.here} />
          ) : (
            <StormSteps question={question} here={asked.here} storm={asked.storm} />
          )
        ) : null}
      </div>
      <p className="facts-caution">{raising.caution}</p>
    </div>
  );
}

const moment = (at: number) => ({ date: dayOf(at), time: timeOf(at) });

interface Storm {
  readonly hours: number;
  readonly stormGust: number | null;
}

function stormTyped({ hours, gust }: { readonly hours: string; readonly gust: string }) {
  const [time, wind] = [within(hours, 0.1, 72), within(gust, 0, 100)];
  if (!time.ok || time.value === undefined || !wind.ok) return null;
  return { hours: time.value, stormGust: wind.value ?? null };
}

function Now({ question, here }: { question: WeekendAsked; here: Here }) {
  const words = useWords().weekend.now;
  const asked = useMemo((): NowAsked => ({ ...question, here }), [question, here]);
  const { last, fault } = useAnswer(asked, askNow);
  if (fault !== null) return <p role="alert">{fault}</p>;
  if (last?.question !== asked) return <p className="quiet">{words.working}</p>;
  return last.answer.ok ? (
    <NowCards answer={last.answer.value} />
  ) : (
    <Faults faults={last.answer.faults} />
  );
}

function StormSteps({
  question,
  here,
  storm,
}: {
  question: WeekendAsked;
  here: Here;
  storm: Storm;
}) {
  const words = useWords().weekend.now;
  const asked = useMemo(
    (): StormAsked => ({ ...question, here, ...storm }),
    [question, here, storm],
  );
  const { last, fault } = useAnswer(asked, askStorm);
  if (fault !== null) return <p role="alert">{fault}</p>;
  if (last?.question !== asked) return <p className="quiet">{words.working}</p>;
  return last.answer.ok ? (
    <Stormed answer={last.answer.value} />
  ) : (
    <Faults faults={last.answer.faults} />
  );
}

function Stormed({ answer }: { answer: StormAnswer }) {
  const { weekend, raising } = useWords();
  const words = weekend.now;
  const { speed } = useQuantities();
  const time = (seconds: number): string => {
    const { hours, minutes } = roundedHours(seconds);
    return raising.card.hours(hours, minutes);
  };
  return (
    <section>
      <h3>{words.stormTold(speed(answer.gust), answer.chosen && oddsText(answer.chosen.odds))}</h3>
      <p className={answer.verdict === 'holds' ? 'raise-verdict' : 'raise-verdict accent'}>
        {answer.words}
      </p>
      <ol className="now-steps">
        {answer.steps.map((step) => (
          <li key={`${step.what} ${step.words}`}>
            <strong>{step.words}</strong>{' '}
            <span className="quiet">{words.stormBy(step.hands, step.climbers, time(step.by))}</span>
          </li>
        ))}
      </ol>
      {answer.cautions.map((one) => (
        <p key={one} className="facts-caution">
          {one}
        </p>
      ))}
    </section>
  );
}
