// The yard of a raised shell: see `yardOf`.

import { type Read, refuse } from '../../measure/fault.ts';
import { type Yard, type YardQuestion, yardOf } from '../yard/yard.ts';
import { designGust, piecesOf, type RaisedShell } from './raised.ts';

/** What the lead says of the yard. */
export interface YardWishes extends Pick<YardQuestion, 'friction' | 'clear' | 'most' | 'avoid'> {
  /** Gust that the stacks must bear, m/s; null or left out: the design gust. */
  readonly gust?: number | null;
}

/** A yard, and the gust that it is for, m/s. */
export interface YardAnswer extends Yard {
  readonly gust: number;
}

/** Where the stacks lie; a fault where neither a gust nor a design wind is given, or where the sectors to
 * avoid leave no room. */
export function yardAnswer(raised: RaisedShell, wishes: YardWishes = {}): Read<YardAnswer> {
  const { gust: asked, ...others } = wishes;
  const gust = asked ?? designGust(raised)?.value ?? null;
  if (gust === null)
    return refuse(
      'loads.wind',
      'no design wind, and no gust for the stacks',
      'the gust that the stacks must bear, m/s',
    );
  const { plan, loads } = raised;
  try {
    const yard = yardOf({
      ...others,
      plan,
      model: piecesOf(raised),
      gust,
      overrides: loads.overrides,
    });
    return { ok: true, value: { ...yard, gust } };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return refuse('yard', error.message, 'a yard with room for every stack');
  }
}
