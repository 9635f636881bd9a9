// What the record knows better than the project: one press takes it over, as a step that can be undone,
// and pile, Ground and buy list go by it. And how fast the crew is by the record.

import {
  defaultCrew,
  defaultGround,
  type ProjectNews,
  projectNews,
  recordedRates,
} from '@shellraise/core';
import { useMemo } from 'react';
import { recordOf } from '../../record/this-record.ts';
import { projectOf } from '../../state/app-state.ts';
import { useApp, useAppState } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import type { Noted } from './use-noted.ts';

/** The section. */
export function FeedBack({ noted, project }: { noted: Noted; project: string }) {
  const words = useWords().recording.back;
  const app = useApp();
  const { plan, bolts, patterns, state, said } = noted;
  const pile = useAppState((one) => projectOf(one).pile);
  const survey = useAppState((one) => projectOf(one).ground?.survey) ?? defaultGround.survey;
  const crew = useAppState((one) => projectOf(one).crew) ?? defaultCrew;
  const news = useMemo(
    () =>
      projectNews(said.log, {
        ...{ readings: pile.readings, hardware: pile.hardware, survey, patterns },
        passes: state.passes,
      }),
    [said, pile, survey, patterns, state],
  );
  const rates = useMemo(
    () => recordedRates(crew, said.log, plan, bolts),
    [crew, said, plan, bolts],
  );
  const take = (): void => {
    const entries = said.log.entries();
    app.change(
      ({ project: of }) => {
        putInto(of, news);
        return undefined;
      },
      { label: words.step },
    );
    // The demo becomes a project of its own with its first change: its record goes with it.
    const now = app.state.getState().projectId;
    if (now !== project) recordOf(now).bring(entries);
  };
  const found = [
    ...(news.tags.length > 0 ? [words.tags(news.tags)] : []),
    ...(news.surveyed > 0 ? [words.survey(news.surveyed)] : []),
    ...(news.sizes > 0 ? [words.sizes(news.sizes)] : []),
  ];
  return (
    <section>
      <h2>{words.heading}</h2>
      {found.length === 0 ? (
        <p className="quiet">{words.none}</p>
      ) : (
        <>
          <ul>
            {found.map((one) => (
              <li key={one}>{one}</li>
            ))}
          </ul>
          <button type="button" className="screen-only" onClick={take}>
            {words.take}
          </button>
        </>
      )}
      <h3>{words.speed}</h3>
      {rates.words.map((one) => (
        <p key={one}>{one}</p>
      ))}
      <p className="quiet">{words.used}</p>
    </section>
  );
}

function putInto(
  of: ReturnType<typeof projectOf> extends infer P ? { -readonly [K in keyof P]: P[K] } : never,
  news: ProjectNews,
): void {
  if (news.readings) of.pile = { ...of.pile, readings: [...news.readings] };
  if (news.hardware) of.pile = { ...of.pile, hardware: [...news.hardware] };
  if (news.survey) of.ground = { ...(of.ground ?? defaultGround), survey: [...news.survey] };
}
