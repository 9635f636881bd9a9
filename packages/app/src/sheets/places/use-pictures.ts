// Small pictures of candidates, drawn by the engine as they come into sight, several at a time.

import type { Arrangements, Shell } from '@shellraise/core';
import { useCallback, useEffect, useRef, useState } from 'react';
import { quickEngine } from '../../engine/bridge.ts';
import type { CandidatePicture, CandidateQuestion } from '../../engine/drawings.ts';

type Pictures = ReadonlyMap<number, CandidatePicture>;

/** Candidates in sight at one time, about, milliseconds to gather them, and most asked at once. */
const GATHER = 40;
const AT_ONCE = 24;

/** Pictures of a list's candidates by index; `want` asks for one. */
export function useCandidatePictures(shell: Shell, list: Arrangements) {
  const [pictures, setPictures] = useState<Pictures>(nothing);
  const asked = useRef(new Set<number>());
  const waiting = useRef<number[]>([]);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const present = useRef(list);

  useEffect(() => {
    present.current = list;
    asked.current.clear();
    waiting.current = [];
    setPictures(nothing);
    return () => clearTimeout(timer.current);
  }, [list]);

  const want = useCallback(
    (index: number): void => {
      if (asked.current.has(index)) return;
      asked.current.add(index);
      waiting.current.push(index);
      const ask = async (): Promise<void> => {
        const batch = waiting.current.splice(0, AT_ONCE);
        if (batch.length === 0) return;
        const questions = batch.map((i) => questionOf(list, i));
        const drawn = await quickEngine
          .ask('candidatePictures', shell, questions)
          .answer.catch(() => null);
        if (present.current !== list) return;
        if (drawn) setPictures((before) => added(before, batch, drawn));
        else for (const i of batch) asked.current.delete(i);
        if (drawn) void ask();
      };
      clearTimeout(timer.current);
      timer.current = setTimeout(() => void ask(), GATHER);
    },
    [shell, list],
  );
  return { pictures, want };
}

const nothing: Pictures = new Map();

function questionOf(list: Arrangements, i: number): CandidateQuestion {
  const arrangement = list.arrangements[i];
  const way = arrangement && list.waysUp[arrangement.wayUp];
  if (!arrangement || !way) throw new Error(`there is no candidate ${i}`);
  return { crown: way.crown, places: arrangement.cut.places };
}

function added(
  before: Pictures,
  batch: readonly number[],
  drawn: readonly CandidatePicture[],
): Pictures {
  const after = new Map(before);
  batch.forEach((index, i) => {
    const picture = drawn[i];
    if (picture) after.set(index, picture);
  });
  return after;
}
