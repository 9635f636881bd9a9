// Place numbers that stay once they are painted. The decision whose numbers were painted is found
// again in the net; whatever stands now, a place that stood then keeps its number exactly. Places
// added since get a letter and a position, `A-07`: A for the ring that touches the painted ones,
// B for the next, and so on, the position clockwise seen from above from the datum as it is now.
//
// Where another way up was chosen since, the rotations of the net leave open which of its equal
// places is which: they are matched so that most painted panels stand. The crowns alone can't say,
// as the way the net happens to be numbered decides which of several equal ones bears the name.

import { cross, dot, type Vec3 } from '../math/vector.ts';
import type { Kind } from '../pile/kind.ts';
import { type Courses, clockwisePlaces, layersFrom, positionDigits } from '../shell/courses.ts';
import type { PlaceId, SideId } from '../shell/ids.ts';
import { type Crown, crownAxes } from '../shell/orient.ts';
import { baseRing } from '../shell/rims.ts';
import { hubsOf, placeCount, type Shell } from '../shell/shell.ts';
import { type Symmetry, symmetries } from '../shell/symmetry.ts';
import { type ArrangeOptions, type Standing, standingShell } from './arrangements.ts';
import { findDecided } from './decision.ts';
import { familiesOf, labelsOf } from './families.ts';
import type { FrozenDecision } from './schema.ts';
import { SAME_DIRECTION } from './tolerances.ts';
import type { WayUp } from './ways-up.ts';

/** Courses of a shell as it stands now, with the numbers that go on its panels. */
export interface PlaceNumbers extends Courses {
  /** `plain`: nothing is frozen. `frozen`: painted numbers are kept. `lost`: numbers are frozen, but
   * the decision is no longer in the net, so these are the plain ones. */
  readonly status: 'plain' | 'frozen' | 'lost';
  /** Why they are lost, in words; else empty. */
  readonly reason: string;
  /** Place → 1 where it bears a painted number. */
  readonly painted: Uint8Array;
  /** Painted numbers of places that do not stand now, in order of course and position. */
  readonly idle: readonly string[];
}

/** The number of every place of a standing shell. `shell` is the whole net, `way` and `standing`
 * what stands of it now, `frozen` the decision whose numbers were painted, if any; `options` as
 * when the decisions were made. Course and position are always those of now. */
export function numbersOf(
  shell: Shell,
  kinds: readonly Kind[],
  way: WayUp,
  standing: Standing,
  frozen: FrozenDecision | undefined,
  options: ArrangeOptions = {},
): PlaceNumbers {
  const { courses } = standing;
  const none = new Uint8Array(courses.course.length);
  const plain = { ...courses, reason: '', painted: none, idle: [] };
  if (!frozen) return { ...plain, status: 'plain' };
  const decided = findDecided(shell, kinds, { ...frozen, repaired: false }, options);
  if (!decided.found) return { ...plain, status: 'lost', reason: decided.reason };
  const then = standingShell(shell, decided.way, decided.arrangement.cut, frozen.datumTurn);
  const from = { crown: decided.way.crown, places: then.places };
  const to = { crown: way.crown, places: standing.places };
  const places = placesNow(shell, kinds, from, to, options);
  const bears = new Map(Array.from(places, (p, i) => [p, then.courses.numbers[i] as string]));
  const numbers = Array.from(standing.places, (p) => bears.get(p) ?? '');
  const stands = new Set(standing.places);
  return {
    ...plain,
    status: 'frozen',
    painted: Uint8Array.from(numbers, (number) => (number === '' ? 0 : 1)),
    numbers: withAdded(standing.shell, numbers),
    idle: orderOf(then.courses).flatMap((i) =>
      stands.has(places[i] as number) ? [] : [then.courses.numbers[i] as string],
    ),
  };
}

/** What to keep as `frozen` when the numbers of a decision are painted. */
export const frozenOf = ({ wayUp, cut, datumTurn }: FrozenDecision): FrozenDecision => ({
  wayUp,
  cut,
  datumTurn,
});

/** Places in order of course and position. */
const orderOf = ({ course, position }: Courses): number[] =>
  Array.from(course, (_, p) => p).sort(
    (p, q) =>
      (course[p] as number) - (course[q] as number) ||
      (position[p] as number) - (position[q] as number),
  );

// --- which place of the net is which ---

interface Stand {
  readonly crown: Crown;
  readonly places: Int32Array;
}

/** Where in the net the places of `from` are now: moved by that rotation of the net which lets most
 * of them stand in `to`, not at all where the way up is the same. Of several as good, the one that
 * keeps the former crown highest, then nearest to the datum, then the former datum likewise. */
function placesNow(
  shell: Shell,
  kinds: readonly Kind[],
  from: Stand,
  to: Stand,
  { interchangeable }: ArrangeOptions,
): Int32Array {
  if (isSameCrown(from.crown, to.crown)) return from.places;
  const { labels } = labelsOf(shell, kinds, familiesOf(kinds, interchangeable));
  const stands = new Uint8Array(placeCount(shell));
  for (const p of to.places) stands[p] = 1;
  const kept = ({ places }: Symmetry): number =>
    from.places.reduce((sum, p) => sum + (stands[places[p] as number] as number), 0);
  const group = symmetries(shell, labels);
  const counts = group.map(kept);
  const most = Math.max(...counts);
  const now = axesOf(shell, to.crown);
  let best = group
    .filter((_, i) => counts[i] === most)
    .map((rotation) => {
      const side = rotation.sides[from.crown.side] as SideId;
      const [up, datum] = axesOf(shell, { ...from.crown, side });
      return { rotation, merits: [up, datum].flatMap((axis) => now.map((a) => dot(axis, a))) };
    });
  for (let i = 0; i < 2 * now.length; i++) {
    const top = Math.max(...best.map(({ merits }) => merits[i] as number));
    best = best.filter(({ merits }) => (merits[i] as number) > top - SAME_DIRECTION);
  }
  const { places } = (best[0] as { rotation: Symmetry }).rotation;
  return from.places.map((p) => places[p] as number);
}

/** Up, the datum, and left of it seen from above: unit vectors. */
const isSameCrown = (a: Crown, b: Crown): boolean =>
  a.at === b.at &&
  a.side === b.side &&
  a.lean?.by === b.lean?.by &&
  a.lean?.towards === b.lean?.towards;

function axesOf(shell: Shell, crown: Crown): readonly [Vec3, Vec3, Vec3] {
  const { up, datum } = crownAxes(shell, crown);
  return [up, datum, cross(up, datum)];
}

// --- the places added since ---

/** The numbers with those that are missing (empty) filled in: ring by ring from the others. */
function withAdded(shell: Shell, numbers: readonly string[]): string[] {
  const ring = ringsAround(shell, numbers);
  const counts: number[] = [];
  const position = new Int32Array(ring.length);
  for (const p of clockwisePlaces(shell)) {
    const r = ring[p] as number;
    if (r < 0) continue;
    while (counts.length <= r) counts.push(0);
    counts[r] = (counts[r] as number) + 1;
    position[p] = counts[r] as number;
  }
  const digits = positionDigits(counts);
  return numbers.map((number, p) =>
    number === ''
      ? `${ringLetters(ring[p] as number)}-${String(position[p]).padStart(digits, '0')}`
      : number,
  );
}

/** Place → its ring around those that have a number, from 0; −1 for these themselves. Where none
 * has one, or a piece does not hang together with them, from the base ring or the lowest hub. */
function ringsAround(shell: Shell, numbers: readonly string[]): Int32Array {
  const ring = new Int32Array(numbers.length).fill(-1);
  const added = Uint8Array.from(numbers, (number) => (number === '' ? 1 : 0));
  const hubsWhere = (wanted: (p: number) => boolean): number[] =>
    numbers.flatMap((_, p) => (wanted(p) ? hubsOf(shell, p as PlaceId) : []));
  let start = hubsWhere((p) => added[p] === 0);
  if (start.length === 0) start = [...(baseRing(shell)?.hubs ?? [])];
  for (let first = 0; added.includes(1); ) {
    if (start.length === 0)
      start = lowestOf(
        shell,
        hubsWhere((p) => added[p] === 1),
      );
    const { places } = layersFrom(shell, start, added);
    const reached = places.map((layer, p) => (added[p] === 1 ? layer : -1));
    reached.forEach((layer, p) => {
      if (layer < 1) return;
      ring[p] = first + layer - 1;
      added[p] = 0;
    });
    first += Math.max(0, ...reached);
    start = [];
  }
  return ring;
}

function lowestOf(shell: Shell, hubs: readonly number[]): number[] {
  const z = (hub: number): number => shell.hubs[3 * hub + 2] as number;
  return [hubs.reduce((low, hub) => (z(hub) < z(low) ? hub : low), hubs[0] as number)];
}

/** I and O look like 1 and 0, so drawing grids leave them out, and so do we. */
const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ';

/** `A` for ring 0, `Z` for the last of the letters, then `AA`, `AB`, … */
function ringLetters(ring: number): string {
  const letter = LETTERS.charAt(ring % LETTERS.length);
  return ring < LETTERS.length
    ? letter
    : ringLetters(Math.floor(ring / LETTERS.length) - 1) + letter;
}
