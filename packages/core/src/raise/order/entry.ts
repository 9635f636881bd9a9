// Whether a piece can go in at its turn: something must carry it, and the way to its place must not
// be closed. Common practice, no source: a panel between others is slipped in while they are
// finger-tight; once the course above has closed, they are not any more; several panels at once go
// into a gap closed all round only from above.

import type { Piece } from './pieces.ts';
import type { OrderSite } from './site.ts';

/** Why a piece can't go in. */
export type Barred = 'floats' | 'closed in' | 'ring open';

/** The same in words. */
export const BARRED: Readonly<Record<Barred, string>> = {
  floats: 'nothing carries it yet: no seam to a placed panel, and no hub on the ground',
  'closed in': 'it does not go in any more: the panels all round it and the course above are in',
  'ring open': 'the ring that the cap is to stand on is not closed',
};

/** What keeps a piece from going in when some places have their panels; null: it can. */
export function barredBy(
  site: OrderSite,
  piece: Piece,
  isPlaced: (place: number) => boolean,
): Barred | null {
  if (!piece.grounded && !piece.outer.some(({ place }) => isPlaced(place))) return 'floats';
  if (piece.made === 'cap')
    return site.ofCourse
      .slice(0, piece.course - 1)
      .flat()
      .every(isPlaced)
      ? null
      : 'ring open';
  if (piece.wayOut) return null;
  if (!isEnclosed(site, piece, isPlaced)) return null;
  if (piece.course === site.courses) return null;
  const top = Math.max(...piece.places.map((p) => site.course[p] as number));
  if (piece.places.length > 1 && top < site.courses) return 'closed in';
  return courseClosed(site, top + 1, isPlaced) ? 'closed in' : null;
}

/** Whether every side of a piece meets a placed panel. A side on the ground or at an opening is free. */
function isEnclosed(site: OrderSite, piece: Piece, isPlaced: (place: number) => boolean): boolean {
  const sides = piece.places.reduce((sum, p) => sum + (site.hubs[p]?.length ?? 0), 0);
  const met = piece.outer.filter(({ place }) => isPlaced(place)).length;
  return met === sides - 2 * piece.inner.length;
}

const courseClosed = (
  { ofCourse }: OrderSite,
  course: number,
  isPlaced: (place: number) => boolean,
): boolean => (ofCourse[course - 1] ?? []).every(isPlaced);
