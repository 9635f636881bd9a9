// The look at one panel that settles which of two mirror images a shape is: laid with its flanges
// down, smooth face up, it is seen from outside, and its sides run one way round or the other.

import { lowestTurn, turned } from '../math/cyclic.ts';
import type { Kind } from '../pile/kind.ts';
import { kindsOfShape, type NextReading, type Shape } from './shape.ts';

/** One look at one panel, and what it settles. */
export interface HandTest {
  /** Id of the kind to look at; any panel of it. */
  readonly kind: string;
  /** Its sides as read (from 0), from the shortest on, anticlockwise seen from outside, if the shape
   * stands as it is listed; the other way round if it is its mirror image. */
  readonly order: readonly number[];
  /** How sure one panel makes it: 1 where the shape has places for this kind one way round only; else
   * the share of its places that are that way round. */
  readonly sure: number;
  /** The same as something to do next. Both finds leave the shape; they settle its hand. */
  readonly next: NextReading;
}

/** The look that settles the hand of a shape that may as well be its mirror image; null where the
 * hands are known, and where every kind has as many places one way round as the other. `kinds` are
 * those of the question. */
export function handTest(shape: Shape, kinds: readonly Kind[]): HandTest | null {
  if (shape.hands !== 'mirrored') return null;
  const all = kindsOfShape(shape, kinds);
  const places = all.map(() => 0);
  for (const k of shape.shell.kind) places[k] = (places[k] as number) + 1;
  const looks = kinds.flatMap((kind, k) => {
    if (kind.faceUnknown !== true) return [];
    const other = shape.added.findIndex((one) => one.why === 'other hand' && one.of === k);
    const asRead = places[k] as number;
    const turnedOver = other < 0 ? 0 : (places[kinds.length + other] as number);
    if (asRead === turnedOver || clearness(kind) === 0) return [];
    const sure = Math.max(asRead, turnedOver) / (asRead + turnedOver);
    return [{ kind, sure, isAsRead: asRead > turnedOver, clear: clearness(kind) }];
  });
  looks.sort((a, b) => b.sure - a.sure || b.clear - a.clear);
  const [best] = looks;
  if (!best) return null;
  const { kind, sure } = best;
  const order = orderFrom(kind, best.isAsRead);
  return { kind: kind.id, order, sure, next: asNext(kind, order, sure) };
}

/** How plainly one sees which way round a panel is: the least change of a side, metres, that would
 * make it its own mirror image. 0 where it is. */
function clearness({ sides }: Kind): number {
  const n = sides.length;
  let least = Number.POSITIVE_INFINITY;
  for (let turn = 0; turn < n; turn++) {
    const off = sides.map((x, i) => Math.abs(x - (sides[(turn + 2 * n - i) % n] as number)));
    least = Math.min(least, Math.max(...off));
  }
  return least;
}

/** Sides from the shortest on, in the order in which they run as read, or the other way round. */
function orderFrom({ sides }: Kind, isAsRead: boolean): number[] {
  const order = sides.map((_, i) => (isAsRead ? i : sides.length - 1 - i));
  return turned(order, lowestTurn(order.map((side) => sides[side] as number)));
}

function asNext(kind: Kind, order: readonly number[], sure: number): NextReading {
  const first = order[0] as number;
  const other = [first, ...order.slice(1).reverse()];
  const run = (sides: readonly number[]): string => runOf(kind, sides);
  const only =
    sure === 1
      ? ''
      : ` (look at several: ${Math.round(100 * sure)} in 100 panels run the first way)`;
  const spread = -sure * Math.log2(sure) - (sure === 1 ? 0 : (1 - sure) * Math.log2(1 - sure));
  return {
    act: 'look',
    kind: kind.id,
    side: first,
    words: `lay any panel of kind ${kind.id} flanges down, its smooth face up, and go round it to the left (anticlockwise) from its shortest side: if the sides run ${run(order)}, the shape is as shown; if they run ${run(other)}, it is its mirror image${only}`,
    bits: 1 - spread,
    outcomes: [order, other].map((sides) => ({ find: run(sides), shapes: [1, 0] })),
  };
}

const RANKS = ['short', 'middle', 'long'];

/** The sides of a triangle by rank, those of others by length. */
function runOf({ sides }: Kind, order: readonly number[]): string {
  const ranked = [...order].sort((a, b) => (sides[a] as number) - (sides[b] as number));
  return order
    .map((side) =>
      order.length === 3
        ? (RANKS[ranked.indexOf(side)] as string)
        : `${(1000 * (sides[side] as number)).toFixed(0)} mm`,
    )
    .join(', ');
}
