// Strangers that are one more panel of a kind which has its place, with a slip in the reading. The pile
// alone takes a lone odd panel for a kind of its own; once the net closes without it, the slip is
// likelier. Metres.

import type { Kind } from '../pile/kind.ts';
import { type Remedy, remedied, remediesFor, sidesAtFault, sidesLaidOn } from '../pile/slips.ts';
import { raisedTo } from './raised.ts';
import type { Identification, Shape, ShapeQuestion, Stranger } from './shape.ts';
import { FINEST_SD } from './side-belief.ts';

/** Of answers whose strangers are all misread panels, so many are right. */
const TRUST = 0.96;
/** More panels than this are not misread alike. */
const MOST_PANELS = 2;
/** Two sides misread leave one to know a triangle by: they must be off by no more than this. */
const TWO_SIDES_REACH = 0.035;

/** The answer with its strangers explained as misread panels, where one kind alone explains them, with
 * no more than `most` sides (0 to 2) left to chance. */
export function withMisreadPanels(
  answer: Identification,
  question: ShapeQuestion,
  most: number,
): Identification {
  const shapes = answer.shapes.map((shape) => {
    const explained = shape.explained.map((one) =>
      one.as === 'nothing' ? (misreadOf(one.kind, shape, question, most) ?? one) : one,
    );
    return { ...shape, explained };
  });
  const all = shapes[0]?.explained.every(({ as }) => as === 'misread');
  const any = (shapes[0]?.explained.length ?? 0) > 0;
  return { ...answer, shapes: all && any ? raisedTo(shapes, TRUST) : shapes };
}

function misreadOf(
  id: string,
  shape: Shape,
  { kinds, readingSd }: ShapeQuestion,
  most: number,
): Stranger | null {
  const odd = kinds.find((kind) => kind.id === id) as Kind;
  if (!odd.counted || odd.good + odd.repair + odd.scrap > MOST_PANELS) return null;
  const sd = readingSd ?? Math.max(...odd.sideSds, FINEST_SD);
  const placed = new Set(shape.shell.kind);
  const found = kinds.flatMap((kind, of) => {
    if (!placed.has(of) || kind.sides.length !== odd.sides.length) return [];
    const target = { sides: shape.fittedSides[of] as readonly number[], sds: kind.sideSds };
    const remedies = remediesFor(odd.sides, !odd.faceUnknown, target, sd);
    return remedies
      .map((remedy) => ({
        of,
        remedy,
        expected: sidesLaidOn(remedied(odd.sides, remedy), target.sides).sides,
      }))
      .filter(({ remedy, expected }) => isNearEnough(remedy, odd.sides, expected))
      .slice(0, 1);
  });
  const least = Math.min(...found.map(({ remedy }) => weightOf(remedy)));
  const likeliest = found.filter(({ remedy }) => weightOf(remedy) === least);
  const [one] = likeliest;
  if (!one || likeliest.length > 1 || least > most) return null;
  const { of, remedy, expected } = one;
  const { slip } = remedy;
  return { kind: id, as: 'misread', of, slip, expected, sides: sidesAtFault(remedy) };
}

/** Slips by how much they leave to chance: all sides known, one unknown, two. */
const weightOf = ({ slip, factors }: Remedy): number =>
  slip === 'length' ? factors.filter(Number.isNaN).length : 0;

function isNearEnough(
  { slip, factors }: Remedy,
  read: readonly number[],
  expected: readonly number[],
): boolean {
  if (slip !== 'length' || factors.filter(Number.isNaN).length < 2) return true;
  return read.every((x, i) => Math.abs(x - (expected[i] as number)) < TWO_SIDES_REACH);
}
