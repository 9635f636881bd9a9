// The whole order as a list: its sums, each stage to be pressed, and by its handle to be drawn or moved
// with the arrow keys to another place. What that breaks is told at once; the drawing beside shows how it
// would fall.

import { type RaisingPlan, reordered, type Shell } from '@shellraise/core';
import { type KeyboardEvent, type PointerEvent, useRef, useState } from 'react';
import { useWords } from '../../words/words.ts';
import { Fixed } from './fixed-form.tsx';
import { useLead } from './lead.ts';
import { isPlanned, movableStages, movedTo, rowAt, stageOfLift } from './order-moves.ts';
import { Outcome } from './order-outcome.tsx';
import { stageName } from './stage-name.ts';
import type { Trial, Try } from './trial.ts';
import { useCardWords } from './use-raising-words.ts';

/** The panel. */
export function OrderPanel({
  shell,
  numbers,
  leftOut,
  plan,
  number,
  trial,
  onTry,
  onStage,
}: {
  shell: Shell;
  numbers: readonly string[];
  leftOut: readonly number[];
  plan: RaisingPlan;
  number: number;
  trial: Trial;
  onTry: Try;
  onStage: (number: number) => void;
}) {
  const words = useWords().raising;
  const write = useCardWords(numbers);
  const seconds = plan.stages.reduce(
    (sum, { time }) => sum + time.up + time.ground + time.tighten,
    0,
  );
  return (
    <div className="fit-panel">
      <h3>{words.list.heading}</h3>
      <p>
        {words.list.facts(
          plan.stages.length,
          write.time(seconds),
          plan.cost.mostProps,
          plan.cost.propsMoved,
        )}{' '}
        {words.list.tried(plan.tried)} {words.list.wayOut(plan.wayOut.map((p) => numbers[p] ?? ''))}
      </p>
      <p className="facts-caution">{words.caution}</p>
      <p className="quiet screen-only">{words.changes.intro}</p>
      {trial.order === null ? (
        <AsItStands {...{ numbers, plan }} />
      ) : (
        <Outcome {...{ shell, numbers, plan, trial, onTry }} />
      )}
      <Stages {...{ plan, numbers, number, trial, onTry, onStage }} />
      <button type="button" className="screen-only" onClick={() => print()}>
        {words.list.print}
      </button>
      <Fixed shell={shell} numbers={numbers} leftOut={leftOut} />
    </div>
  );
}

/** Fixes the order that was found, so that every device has it. */
function AsItStands({ numbers, plan }: { numbers: readonly string[]; plan: RaisingPlan }) {
  const words = useWords().raising.changes;
  const { lead, fix } = useLead();
  if (lead.order !== null) return null;
  const lifts = reordered(
    plan,
    plan.stages.map((one) => one.number),
  );
  const take = (): void =>
    fix({ order: lifts.map(({ places }) => places.map((place) => numbers[place] ?? '')) });
  return (
    <button type="button" className="screen-only" onClick={take}>
      {words.asItStands}
    </button>
  );
}

function Stages({
  plan,
  numbers,
  number,
  trial,
  onTry,
  onStage,
}: {
  plan: RaisingPlan;
  numbers: readonly string[];
  number: number;
  trial: Trial;
  onTry: Try;
  onStage: (number: number) => void;
}) {
  const words = useWords().raising;
  const write = useCardWords(numbers);
  const order = trial.order ?? plan.stages.map((one) => one.number);
  const { list, drag, handle } = useDrag(plan, order, onTry);
  const shown = drag === null ? order : movedTo(order, drag.stage, drag.to);
  const broken = new Set(
    trial.breaks?.flatMap((one) => {
      const at = 'lift' in one ? stageOfLift(plan, order, one.lift) : null;
      return at === null ? [] : [at];
    }),
  );
  return (
    <ol className="raise-list" ref={list}>
      {shown.map((own, i) => {
        const stage = plan.stages[own - 1];
        if (!stage) return null;
        const row = [
          drag?.stage === own ? 'drawn' : '',
          broken.has(own) ? 'broken' : '',
          trial.order !== null && own === trial.moved ? 'moved' : '',
        ];
        return (
          <li key={own} className={row.filter(Boolean).join(' ')}>
            <button
              type="button"
              className="raise-list-go"
              aria-current={own === number ? 'step' : undefined}
              onClick={() => onStage(own)}
            >
              <strong>{own}</strong>
              <span>
                {stageName(plan.stages, stage, words)}
                <span className="quiet">
                  {' '}
                  {stage.pieces.map((places) => write.piece(places)).join(' · ')}
                </span>
              </span>
              <span className="raise-list-facts">
                {broken.has(own) ? (
                  <b className="accent">{words.changes.here}</b>
                ) : stage.stopPoint ? (
                  <b>{words.list.stop}</b>
                ) : (
                  words.list.props(stage.props.length)
                )}
              </span>
              <span className="raise-list-time">
                {write.time(stage.time.up + stage.time.ground + stage.time.tighten)}
              </span>
            </button>
            {stage.lifts.length > 0 ? (
              <button
                type="button"
                className="raise-handle screen-only"
                aria-label={words.changes.handle(own, i + 1)}
                {...handle(own)}
              >
                <svg viewBox="0 0 12 16" aria-hidden="true">
                  <path d="M6 1v14M2.5 4.5 6 1l3.5 3.5M2.5 11.5 6 15l3.5-3.5" />
                </svg>
              </button>
            ) : (
              <span />
            )}
          </li>
        );
      })}
    </ol>
  );
}

/** A stage being drawn by its handle: where it would go. */
interface Drag {
  readonly stage: number;
  readonly to: number;
}

function useDrag(plan: RaisingPlan, order: readonly number[], onTry: Try) {
  const list = useRef<HTMLOListElement>(null);
  const [drag, setDrag] = useState<Drag | null>(null);
  const last = movableStages(plan) - 1;
  const put = (stage: number, to: number): void => {
    const next = movedTo(order, stage, Math.max(0, Math.min(last, to)));
    onTry(isPlanned(next) ? null : next, stage);
  };
  const over = (y: number): number => {
    const rows = [...(list.current?.children ?? [])].slice(0, last + 1);
    return rowAt(
      rows.map((row) => {
        const { top, bottom } = row.getBoundingClientRect();
        return (top + bottom) / 2;
      }),
      y,
    );
  };
  const handle = (stage: number) => ({
    onPointerDown: (event: PointerEvent<HTMLButtonElement>): void => {
      event.currentTarget.setPointerCapture(event.pointerId);
      setDrag({ stage, to: order.indexOf(stage) });
    },
    onPointerMove: ({ clientY }: PointerEvent): void => {
      if (drag?.stage === stage) setDrag({ stage, to: over(clientY) });
    },
    onPointerUp: (): void => {
      if (drag !== null && drag.to !== order.indexOf(stage)) put(stage, drag.to);
      setDrag(null);
    },
    onPointerCancel: (): void => setDrag(null),
    onKeyDown: (event: KeyboardEvent<HTMLButtonElement>): void => {
      const step = event.key === 'ArrowUp' ? -1 : event.key === 'ArrowDown' ? 1 : 0;
      if (step === 0) return;
      event.preventDefault();
      put(stage, order.indexOf(stage) + step);
      const { currentTarget } = event;
      requestAnimationFrame(() => currentTarget.scrollIntoView({ block: 'nearest' }));
    },
  });
  return { list, drag, handle };
}
