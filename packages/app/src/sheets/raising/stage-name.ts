// What a stage is called: its sort and course, and which part of it where there are several.

import type { RaisingStage } from '@shellraise/core';
import type { Words } from '../../words/words.ts';

/** The name. */
export function stageName(
  stages: readonly RaisingStage[],
  { number, sort, course }: Pick<RaisingStage, 'number' | 'sort' | 'course'>,
  words: Pick<Words['raising'], 'sort' | 'part'>,
): string {
  const alike = stages.filter((one) => one.sort === sort && one.course === course);
  const name = words.sort(sort, course);
  if (alike.length < 2) return name;
  return words.part(name, alike.findIndex((one) => one.number === number) + 1, alike.length);
}
