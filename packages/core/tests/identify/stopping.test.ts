import { describe, expect, it } from 'vitest';
import { nearEqual } from '../../bench/heaps/near-equal.ts';
import { part } from '../../bench/heaps/part.ts';
import { heapOf } from '../../bench/heaps/run.ts';
import { identify } from '../../src/identify/identify.ts';
import { shapeQuestion } from '../../src/identify/question.ts';
import type { ShapeQuestion } from '../../src/identify/shape.ts';
import { kindsOfPile } from '../../src/pile/kinds.ts';

/** A pile with two dozen shapes, and one of a part with rivals. */
const piles = [heapOf(nearEqual, 3), heapOf(part, 13)].map(({ label, pile }) => ({
  label,
  question: shapeQuestion(pile, kindsOfPile(pile)),
}));

/** The answer when told to stop at an asking, and how often it asks, in all and after that. */
function stoppedAt(question: ShapeQuestion, at: number) {
  let asked = 0;
  const answer = identify(question, { shouldStop: () => ++asked > at });
  return { answer, asked, after: asked - at };
}

describe('a search that is told to stop', () => {
  it('leaves off wherever it is, without starting on anything else', () => {
    for (const { question } of piles) {
      const { asked } = stoppedAt(question, Number.POSITIVE_INFINITY);
      for (const share of [0, 0.5, 0.98]) {
        const { answer, after } = stoppedAt(question, Math.floor(share * asked));
        expect(after).toBeLessThan(60);
        expect(answer.complete).toBe(false);
      }
    }
  });

  it('still tells of the best shape that it has found by then', () => {
    const { question } = piles[0] as (typeof piles)[number];
    const all = stoppedAt(question, Number.POSITIVE_INFINITY);
    const late = stoppedAt(question, all.asked - 10);
    expect(all.answer.shapes.length).toBeGreaterThan(1);
    expect(late.answer.shapes.length).toBeGreaterThan(0);
    expect(late.answer.trial).toBeNull();
  });
});
