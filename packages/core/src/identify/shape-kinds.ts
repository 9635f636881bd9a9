// The kinds that a shape's places go by, as stock: the question's, then those that the shape needs
// besides, each panel counted once.

import type { Kind } from '../pile/kind.ts';
import { kindsOfShape, type Shape } from './shape.ts';

/** Question's kinds and added ones, as the shape's shell is numbered by. A kind that stands both ways
 * round shares its panels with its other hand, which counts them among its own as well. */
export function stockOfShape(shape: Pick<Shape, 'added'>, kinds: readonly Kind[]): readonly Kind[] {
  const { added } = shape;
  if (added.length === 0) return kinds;
  return kindsOfShape(shape, kinds).map((kind, k) => {
    const other = added.find(({ why, of }) => why === 'other hand' && of === k)?.kind;
    if (!other) return kind;
    const left = (own: number, away: number): number => Math.max(0, own - away);
    return {
      ...kind,
      good: left(kind.good, other.good),
      repair: left(kind.repair, other.repair),
      scrap: left(kind.scrap, other.scrap),
    };
  });
}

/** Whether two shapes number their places by the same kinds. */
export const sameKinds = (a: Pick<Shape, 'added'>, b: Pick<Shape, 'added'>): boolean =>
  a.added.length === b.added.length &&
  a.added.every((one, i) => {
    const other = b.added[i];
    return other?.why === one.why && other.of === one.of && other.kind.id === one.kind.id;
  });
