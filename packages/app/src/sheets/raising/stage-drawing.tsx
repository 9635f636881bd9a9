// The shell at a stage: the flat plan that people point at, or the same in 3D, with what its lines mean.

import type { Fill, RaisingPlan } from '@shellraise/core';
import { hubPoint } from '@shellraise/core';
import { lazy, Suspense, useCallback, useMemo, useState } from 'react';
import { PlanView } from '../../drawing/plan-view/plan-view.tsx';
import { SvgItems } from '../../drawing/svg-items.tsx';
import { quickEngine } from '../../engine/bridge.ts';
import type { PlanPicture, PlanQuestion } from '../../engine/drawings.ts';
import { useWords } from '../../words/words.ts';
import { movable, movedPanels } from '../ground/moved-panels.ts';
import { type Stood, usePicked } from '../places/stood.ts';
import { useAnswer } from '../places/use-answer.ts';
import { propsAt } from './props-at.ts';
import { placeStates, propMark, seamStrokes, stageFills, stageItems } from './stage-items.ts';

const PanelsView = lazy(async () => ({
  default: (await import('../../drawing/shell-view/panels-view.tsx')).PanelsView,
}));

const askPlan = (question: PlanQuestion) => quickEngine.ask('planPicture', question);

/** The flat plan of the standing shell, of which stages are drawn; null until it is there. */
export function usePlanPicture({ standing, kinds }: Stood): PlanPicture | null {
  const { shell } = standing.standing;
  const question = useMemo(
    (): PlanQuestion => ({
      shell,
      numbers: standing.numbers,
      kinds,
      fromBelow: false,
      leftOut: standing.leftOut,
    }),
    [shell, standing, kinds],
  );
  const { last } = useAnswer(question, askPlan);
  return last?.question.shell === shell ? last.answer : null;
}

/** The drawing with its choices. */
export function StageDrawing({
  stood,
  plan,
  number,
  picture,
}: {
  stood: Stood;
  plan: RaisingPlan;
  number: number;
  picture: PlanPicture | null;
}) {
  const words = useWords().raising.drawing;
  const [view, setView] = useState<'plan' | 'solid'>('plan');
  const placed = plan.stages[number - 1]?.placed.length ?? 0;
  const of = plan.stages.length;
  return (
    <section
      className="ground-drawing raising-drawing"
      aria-label={words.label(number, of, placed)}
    >
      <div className="ground-drawing-head">
        <h2>{words.heading(number, of)}</h2>
        <fieldset className="legend-choices screen-only">
          <legend className="read-out">{words.choices}</legend>
          {(['plan', 'solid'] as const).map((one) => (
            <button
              key={one}
              type="button"
              aria-pressed={view === one}
              onClick={() => setView(one)}
            >
              {words[one]}
            </button>
          ))}
        </fieldset>
      </div>
      {view === 'solid' ? (
        <Suspense fallback={null}>
          <SolidStage stood={stood} plan={plan} number={number} />
        </Suspense>
      ) : picture ? (
        <FlatStage stood={stood} plan={plan} number={number} picture={picture} />
      ) : (
        <div />
      )}
      <Legend />
    </section>
  );
}

function FlatStage({
  stood,
  plan,
  number,
  picture,
}: {
  stood: Stood;
  plan: RaisingPlan;
  number: number;
  picture: PlanPicture;
}) {
  const words = useWords().raising.drawing;
  const { standing } = stood;
  const { shell } = standing.standing;
  const { picked, marked, pick } = usePicked(stood);
  const drawn = useMemo(
    () => ({
      ...picture,
      items: stageItems({ shell, plan, number, leftOut: standing.leftOut, picture }),
    }),
    [shell, plan, number, standing, picture],
  );
  const fills = useMemo(
    () => placeStates(plan, number, shell.kind.length).map((state) => stageFills[state]),
    [plan, number, shell],
  );
  const placed = plan.stages[number - 1]?.placed.length ?? 0;
  return (
    <div className="plan-room">
      <PlanView
        shell={shell}
        picture={drawn}
        fills={fills}
        picked={picked}
        marked={marked}
        onPick={pick}
        label={words.label(number, plan.stages.length, placed)}
        says={picked?.type === 'place' ? (standing.numbers[picked.place] ?? '') : ''}
        onZoom={ignore}
      />
    </div>
  );
}

const ignore = (): void => undefined;

function SolidStage({ stood, plan, number }: { stood: Stood; plan: RaisingPlan; number: number }) {
  const words = useWords().raising.drawing;
  const { shell } = stood.standing.standing;
  const stage = plan.stages[number - 1];
  const { picked, pick } = usePicked(stood);
  const panels = useMemo(() => {
    const ground = shell.hubs.reduce((low, z, i) => (i % 3 === 2 ? Math.min(low, z) : low), 0);
    const pointOf = (hub: number) => hubPoint(shell, hub as Parameters<typeof hubPoint>[1]);
    const held = propsAt(plan, number).map(({ prop }) => prop);
    const feet = held.filter(({ lines }) => lines.length === 0).map(({ hub }) => pointOf(hub));
    const lines = held.flatMap((one) => one.lines.map(({ hub, to }) => [...pointOf(hub), ...to]));
    const placed = movedPanels(movable(shell, stage?.placed ?? []), null, 0, feet, ground, lines);
    // What goes up now is shown up as one kind is, from outside and inside.
    const up = new Set(stage?.pieces.flat());
    return { ...placed, kind: placed.place.map((place) => (up.has(place) ? 1 : 0)) };
  }, [shell, plan, number, stage]);
  const fillOf = useCallback(
    (rank: number): Fill => (panels.kind[rank] === 1 ? stageFills.now : stageFills.later),
    [panels],
  );
  const rank = picked?.type === 'place' ? panels.place.indexOf(picked.place) : -1;
  return (
    <PanelsView
      panels={panels}
      fillOf={fillOf}
      label={words.solidLabel(number, plan.stages.length, panels.place.length)}
      selected={rank < 0 ? null : rank}
      kind={1}
      onPick={(at) =>
        pick(at === null ? null : { type: 'place', place: panels.place[at] as number })
      }
      steady
    />
  );
}

/** What fills, lines and marks mean. */
export function Legend() {
  const words = useWords().raising.drawing;
  return (
    <ul className="raising-legend" aria-label={words.legend}>
      {(['now', 'placed', 'later'] as const).map((one) => (
        <li key={one}>
          <span className={`raising-sample ${one}`} aria-hidden="true" /> {words[one]}
        </li>
      ))}
      {(['finger', 'snug', 'final'] as const).map((one) => (
        <li key={one}>
          <svg viewBox="0 0 9 4" aria-hidden="true">
            <SvgItems
              items={[
                {
                  type: 'path',
                  points: [
                    [0, 2],
                    [9, 2],
                  ],
                  closed: false,
                  stroke: seamStrokes[one],
                },
              ]}
            />
          </svg>{' '}
          {words[one]}
        </li>
      ))}
      {(
        [
          ['in', 'propIn'],
          ['stands', 'prop'],
          ['out', 'propOut'],
        ] as const
      ).map(([state, word]) => (
        <li key={word}>
          <svg viewBox="0 0 4 4" className="mark" aria-hidden="true">
            <SvgItems items={propMark([2, 2], 1.4, state)} />
          </svg>{' '}
          {words[word]}
        </li>
      ))}
      <li className="quiet">{words.changed}</li>
    </ul>
  );
}
