// The Shape sheet: one press, and the net grows out of the pile; beside it what it is, how sure that
// is, and what can be put right.

import { type Kind, kindsOfShape } from '@shellraise/core';
import { useLayoutEffect, useMemo, useRef, useState } from 'react';
import { projectOf } from '../../state/app-state.ts';
import { useAppState, useDerived, useLengths } from '../../ui/app-context.tsx';
import { TitleBlock } from '../../ui/title-block.tsx';
import { useWords } from '../../words/words.ts';
import { DrawingPane } from './drawing-pane.tsx';
import { assumesOf } from './sentences.ts';
import { askedQuestion, isStale, stageOf } from './stage.ts';
import { useGrowth } from './use-growth.ts';
import { useRelation } from './use-relation.ts';
import { kindsBesides } from './wants.ts';
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
  const [secondOf, setSecondOf] = useState<unknown>(null);
  const besides = found?.besides?.shapes[0] ?? null;
  const second = found !== null && secondOf === found && besides !== null;
  const drawn = second ? besides : shape;
  const growth = useGrowth(drawn?.shell.kind.length ?? 0);
  const { grow, skip } = growth;

  // A net that has just been found is laid before one's eyes; one that was there is there.
  const before = useRef(stage);
  useLayoutEffect(() => {
    if (before.current === 'running' && stage === 'found') grow();
    before.current = stage;
  }, [stage, grow]);
  const shown = useRef(drawn);
  useLayoutEffect(() => {
    if (shown.current && drawn && shown.current !== drawn) skip();
    shown.current = drawn;
  }, [drawn, skip]);

  const kinds = asked ?? work.value?.question.kinds ?? none;
  const answered = stage === 'running' || stage === 'nothing' || stage === 'found';
  const kindsDrawn = useMemo(() => {
    if (!answered) return work.value?.question.kinds ?? none;
    if (second && shape && found?.besides && besides)
      return kindsOfShape(besides, kindsBesides(shape, found.besides, kinds));
    return shape ? kindsOfShape(shape, kinds) : kinds;
  }, [answered, work.value, second, shape, found, besides, kinds]);
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
          shape={drawn}
          second={second}
          kinds={kindsDrawn}
          growth={growth}
        />
      </section>
      <section className="shape-words">
        <WordsPane
          {...{ stage, stale, work, shapes, chosen, kinds, pile, relation, second }}
          onSecond={(wanted) => setSecondOf(wanted ? found : null)}
        />
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
