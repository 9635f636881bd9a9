// What a stage of the raising is called on sheets.

import type { RaisingStage } from '../raise/plan.ts';

/** `course 3`, `closing the course`, … */
export const stageWords = ({ sort, course }: Pick<RaisingStage, 'sort' | 'course'>): string =>
  sort === 'course'
    ? `course ${course}`
    : sort === 'closing'
      ? `closes course ${course}`
      : sort === 'base'
        ? 'base ring'
        : sort;
