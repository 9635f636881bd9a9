// The account of a pile's marks as lines and as panels to be looked at.

import type { LikelyMark, MarkAccount, PanelMark, Pile } from '@shellraise/core';
import type { Draft } from 'immer';
import type { Doc } from '../../state/doc.ts';
import type { Words } from '../../words/words.ts';
import { percentOf } from './sentences.ts';

/** A panel whose mark is wrong, faded or missing, with what it most likely was. */
export interface OpenMark {
  readonly panel: PanelMark;
  readonly likely: LikelyMark | null;
}

/** A likely mark that is less sure than this is not offered. */
const OFFERED = 0.5;

/** Panels that somebody should look at: contradicting marks first, then faded, then missing ones that
 * something is known of. */
export function openMarks({ panels }: Pick<MarkAccount, 'panels'>): OpenMark[] {
  const order: readonly PanelMark['as'][] = ['contradicts', 'unexplained', 'faded', 'unmarked'];
  return order.flatMap((as) =>
    panels
      .filter((panel) => panel.as === as)
      .map((panel): OpenMark => {
        const [first] = panel.likely;
        return { panel, likely: first && first.probability >= OFFERED ? first : null };
      })
      .filter(({ likely }) => likely !== null || as === 'contradicts' || as === 'unexplained'),
  );
}

/** What marks are finer or coarser than sides, stand for nothing, or fit no hub. */
export function markLines(
  { marks, finer, groups }: Pick<MarkAccount, 'marks' | 'finer' | 'groups'>,
  pile: Pick<Pile, 'groups'>,
  { marks: words, listed }: Words['hard'],
): string[] {
  return [
    ...marks.flatMap(({ mark, as, on }) => {
      if (as === 'nothing') return [words.nothing(mark)];
      if (as !== 'coarser' && as !== 'both') return [];
      return [words.coarser(mark, listed(on.flatMap(({ kinds }) => kinds)))];
    }),
    ...finer.map((one) =>
      words.finer(
        listed(one.kinds, 'or'),
        listed(one.marks),
        words.rules[one.rule.by],
        percentOf(one.probability),
      ),
    ),
    ...groups.flatMap(({ group, held, wrong }) => {
      const run = pile.groups[group]?.around.join(' ') ?? '';
      const should = wrong.flatMap(({ at, shouldBe }) =>
        shouldBe === null ? [] : [words.wrong(at + 1, shouldBe)],
      );
      return held ? [] : [words.group(run, listed(should))];
    }),
  ];
}

/** Writes a mark on all readings of a panel. */
export function writeMark(doc: Draft<Doc>, readings: readonly number[], mark: string): void {
  for (const row of readings) {
    const reading = doc.project.pile.readings[row];
    if (reading) reading.mark = mark;
  }
}
