// In which of several shapes a standing shell is the same: then what tells them apart does not
// matter for it.

import type { Shape } from '../identify/shape.ts';
import { sameKinds } from '../identify/shape-kinds.ts';
import type { Kind } from '../pile/kind.ts';
import { occursIn } from '../shell/embed.ts';
import type { Shell } from '../shell/shell.ts';
import { familiesOf, labelsOf } from './families.ts';

/** Indices of the shapes that hold the standing shell, kind by kind and turn by turn; `of` is the
 * index of the one it was made from, whose interchangeable kinds count as one. A shape that goes by other
 * kinds does not hold it. */
export function shapesHolding(
  standing: Shell,
  shapes: readonly Pick<Shape, 'shell' | 'interchangeable' | 'added'>[],
  of: number,
  kinds: readonly Kind[],
): number[] {
  const from = shapes[of];
  if (from === undefined) return [];
  const families = familiesOf(kinds, from.interchangeable);
  const labelled = (shell: Shell): ArrayLike<number> => labelsOf(shell, kinds, families).labels;
  const own = labelled(standing);
  return shapes.flatMap((shape, i) =>
    sameKinds(from, shape) && occursIn(standing, own, shape.shell, labelled(shape.shell))
      ? [i]
      : [],
  );
}
