// An order of the stages that is tried, checked in the engine as soon as it is made.

import { type OrderBreak, type OrderedLift, type RaisingPlan, reordered } from '@shellraise/core';
import { useMemo, useState } from 'react';
import { quickEngine } from '../../engine/bridge.ts';
import type { RaisingCheckQuestion, RaisingQuestion } from '../../engine/raising.ts';
import { useWords } from '../../words/words.ts';
import { useAnswer } from '../places/use-answer.ts';
import { faultsInWords } from './fault-words.ts';
import { isPlanned } from './order-moves.ts';

/** What is being tried, with what it breaks. */
export interface Trial {
  /** Stages of the plan in the order that is tried; null: none is. */
  readonly order: readonly number[] | null;
  /** The stage that was moved last. */
  readonly moved: number;
  readonly lifts: readonly OrderedLift[];
  /** Null while it is asked. */
  readonly breaks: readonly OrderBreak[] | null;
  readonly fault: string | null;
}

/** Tries an order, a stage having been moved; null ends it. */
export type Try = (order: readonly number[] | null, moved?: number) => void;

const askCheck = (question: RaisingCheckQuestion) => quickEngine.ask('raisingCheck', question);

/** The trial with what changes it. */
export function useTrial(question: RaisingQuestion, plan: RaisingPlan): readonly [Trial, Try] {
  const words = useWords().raising;
  const [tried, setTried] = useState<{
    readonly plan: RaisingPlan;
    readonly order: readonly number[];
    readonly moved: number;
  } | null>(null);
  const order = tried?.plan === plan ? tried.order : null;
  const lifts = useMemo(() => (order === null ? [] : reordered(plan, order)), [plan, order]);
  const asked = useMemo(
    (): RaisingCheckQuestion | null => (order === null ? null : { ...question, lifts }),
    [question, order, lifts],
  );
  const { last, fault } = useAnswer(asked, askCheck);
  const read = asked !== null && last?.question === asked ? last.answer : null;
  const trial: Trial = {
    order,
    moved: tried?.moved ?? 0,
    lifts,
    breaks: read?.ok ? read.value : null,
    fault: fault ?? (read && !read.ok ? faultsInWords(read.faults, words) : null),
  };
  const onTry: Try = (next, moved = 0) =>
    setTried(next === null || isPlanned(next) ? null : { plan, order: next, moved });
  return [trial, onTry];
}
