// The papers as they are made: those of the shell and its ground at once, those that go by the order of work
// once that rests.

import type { Paper, PaperQuestion } from '@shellraise/core';
import { useEffect, useMemo } from 'react';
import { useStore } from 'zustand';
import { orderedEngine, papersEngine } from '../../engine/bridge.ts';
import type { SetNamed, SetTold } from '../../engine/papers.ts';
import { createPapersRuns } from '../../engine/papers-runs.ts';
import { raisingKey } from '../../engine/raising-runs.ts';
import type { Stood } from '../places/stood.ts';
import { useAnswer } from '../places/use-answer.ts';
import { raisingRuns, useRaisingQuestion } from '../raising/raising-run.ts';
import { usePaperQuestion } from './use-paper-question.ts';

const now = (): number => performance.now();

/** Papers of the shell and its ground. */
export const plainRuns = createPapersRuns(papersEngine, now);
/** Papers that go by the order of work. */
export const orderedRuns = createPapersRuns(orderedEngine, now);

const list = {};
const askList = () => papersEngine.ask('paperList');

/** A set as the sheet lists it; `told` null until it is made. */
export interface SetRow extends SetNamed {
  readonly told: SetTold | null;
}

/** The sets with what came of them, the questions that they answer, and the order under them. */
export function usePapers(stood: Stood, paper: Paper) {
  const { last } = useAnswer(list, askList);
  const raising = useRaisingQuestion(stood);
  const order = useStore(raisingRuns.store);
  useEffect(() => raisingRuns.follow(raising), [raising]);
  const own = order.key === raisingKey(raising);
  const rests = own && order.status !== 'running' && order.status !== 'idle';
  const plan = rests ? order.value : null;
  const plain = usePaperQuestion(stood, paper);
  const ordered = useMemo((): PaperQuestion | null => plan && { ...plain, plan }, [plain, plan]);
  const named = last?.answer ?? none;
  useEffect(() => {
    if (named.length > 0) plainRuns.follow({ question: plain, names: namesOf(named, false) });
  }, [plain, named]);
  useEffect(() => {
    if (named.length > 0 && ordered !== null)
      orderedRuns.follow({ question: ordered, names: namesOf(named, true) });
  }, [ordered, named]);
  const runs = { plain: useStore(plainRuns.store), ordered: useStore(orderedRuns.store) };
  const rows = named.map((one): SetRow => {
    const [run, of] = one.ordered ? [runs.ordered, ordered] : [runs.plain, plain];
    const told = run.key === of ? run.value?.find(({ name }) => name === one.name) : undefined;
    return { ...one, told: told ?? null };
  });
  return { rows, plain, ordered, order, rests, runs };
}

const none: readonly SetNamed[] = [];

/** Names of the sets that go by the order of work, or of the others. */
const namesOf = (sets: readonly SetNamed[], ordered: boolean): string[] =>
  sets.filter((one) => one.ordered === ordered).map(({ name }) => name);

/** What is asked about a set, and whom. */
export interface PaperSource {
  readonly question: PaperQuestion;
  readonly engine: typeof papersEngine;
}

/** The source of some sets: the one with the order where any goes by it; null while there is none. */
export function sourceOf(
  sets: readonly SetNamed[],
  { plain, ordered }: { readonly plain: PaperQuestion; readonly ordered: PaperQuestion | null },
): PaperSource | null {
  if (sets.every((one) => !one.ordered)) return { question: plain, engine: papersEngine };
  return ordered && { question: ordered, engine: orderedEngine };
}
