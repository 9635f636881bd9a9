// What is selected, as the standing shell has it: the page's selection names things as people do,
// the drawings want indices.

import type { Shell } from '@shellraise/core';
import type { Picked } from '../../drawing/plan-view/pick.ts';
import type { Selection } from '../../state/selection.ts';

/** A shell's numbers, and the way back. */
export interface Numbered {
  readonly shell: Shell;
  readonly numbers: readonly string[];
}

/** The selected thing in the shell; null where it is not in it. */
export function pickedOf(selection: Selection | null, { shell, numbers }: Numbered): Picked | null {
  switch (selection?.type) {
    case 'place': {
      const place = numbers.indexOf(selection.number);
      return place < 0 ? null : { type: 'place', place };
    }
    case 'seam': {
      const [a, b] = selection.places.map((number) => numbers.indexOf(number));
      const side = a === undefined || b === undefined ? null : sideBetween(shell, a, b);
      return side === null ? null : { type: 'seam', side };
    }
    case 'hub':
      return 3 * selection.hub < shell.hubs.length ? { type: 'hub', hub: selection.hub } : null;
    default:
      return null;
  }
}

/** What the page selects when a thing of the shell is picked. */
export function selectionOf(picked: Picked | null, { shell, numbers }: Numbered): Selection | null {
  switch (picked?.type) {
    case 'place':
      return { type: 'place', number: numbers[picked.place] ?? '' };
    case 'hub':
      return { type: 'hub', hub: picked.hub };
    case 'seam': {
      const mate = shell.mate[picked.side] as number;
      if (mate < 0) return null;
      const number = (side: number): string => numbers[shell.sidePlace[side] as number] ?? '';
      return { type: 'seam', places: [number(picked.side), number(mate)] };
    }
    case undefined:
      return null;
  }
}

/** The lower side of the first seam between two places; null where they share none. */
function sideBetween(shell: Shell, a: number, b: number): number | null {
  for (let i = 0; i < shell.seams.length; i += 2) {
    const [side, mate] = [shell.seams[i] as number, shell.seams[i + 1] as number];
    const [p, q] = [shell.sidePlace[side], shell.sidePlace[mate]];
    if ((p === a && q === b) || (p === b && q === a)) return side;
  }
  return null;
}
