// What a further reading would tell.

import type { NextReading } from '@shellraise/core';

/** The likeliest of some shapes; the last index stands for none of them. */
export function likeliestOf(shapes: readonly number[]): { index: number; share: number } {
  const share = Math.max(...shapes);
  return { index: shapes.indexOf(share), share };
}

/** Whether it is the look that tells which of two mirror images a shape is. */
export const isLookAtHand = ({ act, about = 'hand' }: NextReading): boolean =>
  act === 'look' && about === 'hand';

/** Whether different finds point to different shapes. */
export const tellsApart = ({ outcomes }: Pick<NextReading, 'outcomes'>): boolean =>
  new Set(outcomes.map(({ shapes }) => likeliestOf(shapes).index)).size > 1;
