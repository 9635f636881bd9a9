// The selected thing read out, with what lies next to it.

import type { Picked } from '../../drawing/plan-view/pick.ts';
import type { Words } from '../../words/words.ts';
import { placesAround, type ShellPlaces, seamsOf } from './seams-of.ts';

/** What is selected, in one sentence; empty where nothing is. */
export function saysOf(
  content: ShellPlaces & { readonly course: ArrayLike<number> },
  picked: Picked | null,
  kind: { readonly id: string; readonly places: number } | null,
  words: Words['places']['details'],
): string {
  const { shell, kinds, numbers, course } = content;
  const numberAt = (side: number): string => numbers[shell.sidePlace[side] as number] ?? '';
  switch (picked?.type) {
    case 'place': {
      const { place } = picked;
      const sides = seamsOf(content, place).map(({ side, to }) =>
        words.saysSide(side, to?.number ?? null),
      );
      const id = kinds[shell.kind[place] as number]?.id ?? '';
      return words.says(numbers[place] ?? '', id, course[place] as number, sides);
    }
    case 'hub':
      return words.saysHub(placesAround(shell, picked.hub).length);
    case 'seam':
      return words.saysSeam(numberAt(picked.side), numberAt(shell.mate[picked.side] as number));
    case undefined:
      return kind ? words.saysKind(kind.id, kind.places) : '';
  }
}
