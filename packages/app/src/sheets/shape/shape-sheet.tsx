// The Shape sheet: one press, and the net grows out of the pile; beside it what it is, how sure that
// is, and what can be put right.

import type { Kind } from '@shellraise/core';
import { useLayoutEffect, useMemo, useRef } from 'react';
import { projectOf } from '../../state/app-state.ts';
import { useAppState, useDerived, useLengths } from '../../ui/app-context.tsx';
import { TitleBlock } from '../../ui/title-block.tsx';
import { useWords } from '../../words/words.ts';
import { DrawingPane } from './drawing-pane.tsx';
import { assumesOf } from './sentences.ts';
import { askedQuestion, isStale, stageOf } from './stage.ts';
import { useGrowth } from './use-growth.ts';
import { useRelation } from './use-relation.ts';
import { WordsPane } from './words-pane.tsx';

/** The Shape sheet. */
export function ShapeSheet() {
  const { shape: words, frame } = useWords();
  const lengths = useLengths();
  const work = useDerived((derived) => derived.work);
  const shapes = useDerived((derived) => derived.shapes);
  const chosen = useDerived((derived) => derived.shape);
  const pile = useAppState((state) => projectOf(state).pile);
  const decision = useAppState((state) => projectOf(state).places ?? null);
  const stage = stageOf(work, shapes);
  const stale = isStale(work, shapes);
  const asked = useMemo(() => askedQuestion(shapes.input)?.kinds ?? null, [shapes.input]);
  const found = stage === 'found' ? shapes.value : null;
  const shape = found?.shapes[chosen] ?? null;
  const relation = useRelation(stale ? null : found, chosen, asked, decision);
  const growth = useGrowth(shape?.shell.kind.length ?? 0);
  const { grow, skip } = growth;

  // A net that has just been found is laid before one's eyes; one that was there is there.
  const before = useRef(stage);
  useLayoutEffect(() => {
    if (before.current === 'running' && stage === 'found') grow();
    before.current = stage;
  }, [stage, grow]);
  const shown = useRef(shape);
  useLayoutEffect(() => {
    if (shown.current && shape && shown.current !== shape) skip();
    shown.current = shape;
  }, [shape, skip]);

  const kinds = asked ?? work.value?.question.kinds ?? none;
  const answered = stage === 'running' || stage === 'nothing' || stage === 'found';
  const kindsDrawn = answered ? kinds : (work.value?.question.kinds ?? none);
  const radius = shape
    ? words.facts.plusMinus(lengths.large(shape.radius), lengths.small(shape.radiusSd))
    : words.block.none;
  return (
    <div className="shape-sheet" data-stage={stage}>
      <section className={stale ? 'shape-drawing stale' : 'shape-drawing'}>
        <DrawingPane
          stage={stage}
          progress={shapes.progress}
          found={shapes.value}
          shape={shape}
          kinds={kindsDrawn}
          growth={growth}
        />
      </section>
      <section className="shape-words">
        <WordsPane {...{ stage, stale, work, shapes, chosen, kinds, pile, relation }} />
      </section>
      <TitleBlock
        more={[
          { name: frame.block.assumes, value: assumesOf(pile, words, lengths), wide: true },
          { name: frame.block.radius, value: radius },
        ]}
      />
    </div>
  );
}

const none: readonly Kind[] = [];
