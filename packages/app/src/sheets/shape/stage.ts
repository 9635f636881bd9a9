// Where the Shape sheet stands: what there is to show, and whether it is still of the present pile.

import type { Identification, ShapeQuestion } from '@shellraise/core';
import type { PileWork } from '../../engine/api.ts';
import type { Ask } from '../../engine/ask.ts';

/** What the sheet shows. `reading`: the pile is being worked up; `empty`: it has no kinds. */
export type Stage =
  | 'reading'
  | 'unreadable'
  | 'empty'
  | 'ready'
  | 'running'
  | 'cancelled'
  | 'failed'
  | 'found'
  | 'nothing';

type Work = Pick<Ask<PileWork>, 'status' | 'value' | 'fresh'>;
type Shapes = Pick<Ask<Identification>, 'status' | 'value' | 'fresh' | 'input'>;

/** What the sheet shows of these answers. */
export function stageOf(work: Work, shapes: Shapes): Stage {
  if (work.status === 'failed') return 'unreadable';
  if (!work.value) return 'reading';
  if (shapes.status === 'running') return 'running';
  if (isStale(work, shapes) && work.fresh && work.value.question.kinds.length === 0) return 'empty';
  if (shapes.status === 'done' && shapes.value)
    return shapes.value.shapes.length > 0 ? 'found' : 'nothing';
  if (work.value.question.kinds.length === 0) return 'empty';
  return shapes.status === 'cancelled' || shapes.status === 'failed' ? shapes.status : 'ready';
}

/** Whether the shapes are of a pile that has changed since. */
export function isStale(work: Work, shapes: Shapes): boolean {
  if (shapes.status !== 'done' || !shapes.value) return false;
  return !work.fresh || JSON.stringify(work.value?.question) !== shapes.input;
}

/** The question that the shapes answer, as it was asked. */
export const askedQuestion = (input: unknown): ShapeQuestion | null =>
  typeof input === 'string' ? (JSON.parse(input) as ShapeQuestion) : null;
