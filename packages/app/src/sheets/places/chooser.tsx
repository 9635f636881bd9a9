// Way up and cut chosen by looking: every shell that could stand as a small drawing, with its height,
// its floor, and what it would lack or leave over.

import type { PlacesDecision, Shape } from '@shellraise/core';
import { useEffect, useMemo, useRef, useState } from 'react';
import type { ArrangeAnswer } from '../../engine/api.ts';
import { projectOf } from '../../state/app-state.ts';
import { useApp, useAppState, useLengths } from '../../ui/app-context.tsx';
import { TitleBlock } from '../../ui/title-block.tsx';
import { useWords } from '../../words/words.ts';
import { Candidate } from './candidate.tsx';
import {
  type CandidateFilter,
  decidedCandidate,
  firstFilter,
  shownCandidates,
} from './candidates.ts';
import { chosen } from './decide.ts';
import { useCandidatePictures } from './use-pictures.ts';

/** The candidates of a shape. */
export function Chooser({
  answer,
  shape,
  current,
  onDone,
}: {
  answer: ArrangeAnswer;
  shape: Shape;
  /** What stands now. */
  current: PlacesDecision | null;
  /** Called when one was chosen, and to go back; null where there is nothing to go back to. */
  onDone: (() => void) | null;
}) {
  const words = useWords().places;
  const lengths = useLengths();
  const app = useApp();
  const decided = useAppState((state) => projectOf(state).places !== undefined);
  const [filter, setFilter] = useState<CandidateFilter>(() => firstFilter(answer.list));
  const { list, decisions } = answer;
  const shown = useMemo(() => shownCandidates(list, filter), [list, filter]);
  const at = useMemo(() => (current ? decidedCandidate(list, current) : null), [list, current]);
  const { pictures, want } = useCandidatePictures(shape.shell, list);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    heading.current?.focus();
    scrollTo(0, 0);
  }, []);
  const tallness = useMemo(() => {
    const heights = shown.map((i) => list.arrangements[i]?.cut.height ?? 0);
    return Math.max(0.2, ...heights) / (2 * shape.shell.radius) + 0.04;
  }, [list, shape, shown]);
  const choose = (i: number): void => {
    const decision = decisions[i];
    const height = list.arrangements[i]?.cut.height;
    if (!decision || height === undefined) return;
    app.change(
      ({ project }) => {
        project.places = chosen(decision, project.places);
        return undefined;
      },
      { label: words.chooser.choosing(lengths.large(height)) },
    );
    onDone?.();
  };
  return (
    <section className="chooser" aria-label={words.chooser.heading}>
      <div className="chooser-head">
        <h2 ref={heading} tabIndex={-1}>
          {words.chooser.heading} <span className="quiet">{words.chooser.remark}</span>
        </h2>
        {onDone ? (
          <button type="button" onClick={onDone}>
            {words.chooser.back}
          </button>
        ) : null}
      </div>
      <Filters
        filter={filter}
        onFilter={setFilter}
        shown={shown.length}
        all={list.arrangements.length}
      />
      <ul className="candidates">
        {shown.map((i) => {
          const arrangement = list.arrangements[i];
          const way = arrangement && list.waysUp[arrangement.wayUp];
          return arrangement && way ? (
            <Candidate
              key={i}
              index={i}
              arrangement={arrangement}
              way={way}
              picture={pictures.get(i) ?? null}
              tallness={tallness}
              chosen={decided && i === at}
              onSight={want}
              onChoose={choose}
            />
          ) : null;
        })}
      </ul>
      {shown.length === 0 ? <p className="chooser-note">{words.chooser.none}</p> : null}
      <div className="choosing-foot">
        <p className="chooser-note quiet">
          {list.complete ? '' : words.chooser.incomplete}{' '}
          {list.uncounted.length > 0 ? words.chooser.uncounted(list.uncounted) : ''}
        </p>
        <TitleBlock />
      </div>
    </section>
  );
}

function Filters({
  filter,
  onFilter,
  shown,
  all,
}: {
  filter: CandidateFilter;
  onFilter: (filter: CandidateFilter) => void;
  shown: number;
  all: number;
}) {
  const words = useWords().places.chooser;
  return (
    <fieldset className="choices chooser-filter">
      <legend className="read-out">{words.filter}</legend>
      {(['any', 'nothing', 'few'] as const).map((short) => (
        <label key={short}>
          <input
            type="radio"
            name="short"
            checked={filter.short === short}
            onChange={() => onFilter({ ...filter, short })}
          />
          {words[short]}
        </label>
      ))}
      <label>
        <input
          type="checkbox"
          checked={filter.flat}
          onChange={({ target }) => onFilter({ ...filter, flat: target.checked })}
        />
        {words.flat}
      </label>
      <span className="quiet chooser-count" role="status">
        {words.count(shown, all)}
      </span>
    </fieldset>
  );
}
