// The whole order: its sums, and each stage as a line to be pressed.

import type { RaisingPlan } from '@shellraise/core';
import { useWords } from '../../words/words.ts';
import { stageName } from './stage-name.ts';
import { useCardWords } from './use-raising-words.ts';

/** The list. */
export function StageList({
  plan,
  numbers,
  number,
  onStage,
}: {
  plan: RaisingPlan;
  numbers: readonly string[];
  number: number;
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
      <ol className="raise-list">
        {plan.stages.map((stage) => (
          <li key={stage.number}>
            <button
              type="button"
              aria-current={stage.number === number ? 'step' : undefined}
              onClick={() => onStage(stage.number)}
            >
              <strong>{stage.number}</strong>
              <span>
                {stageName(plan.stages, stage, words)}
                <span className="quiet">
                  {' '}
                  {stage.pieces.map((places) => write.piece(places)).join(' · ')}
                </span>
              </span>
              <span className="raise-list-facts">
                {stage.stopPoint ? <b>{words.list.stop}</b> : words.list.props(stage.props.length)}
              </span>
              <span className="raise-list-time">
                {write.time(stage.time.up + stage.time.ground + stage.time.tighten)}
              </span>
            </button>
          </li>
        ))}
      </ol>
      <button type="button" className="screen-only" onClick={() => print()}>
        {words.list.print}
      </button>
    </div>
  );
}
