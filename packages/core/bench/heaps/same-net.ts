// Whether a shape lies on the truth: its places are laid on the true ones, one first and the others
// over their seams, and every side must be as long as the true one there. A whole shape then is the
// truth where it has as many places; an open one is a part of it.

import { turned } from '../../src/math/cyclic.ts';
import type { NetShell } from '../../src/nets/kinds.ts';
import type { PlaceId } from '../../src/shell/ids.ts';
import { placeAt, placeCount, type Shell, sidesOf } from '../../src/shell/shell.ts';

/** What is known of a kind of the shape: the true lengths of its sides, and how near they must be. */
export interface KnownSides {
  readonly sides: readonly number[];
  readonly within: number;
}

/** Whether the shape lies on the true shell. Kind of the shape → its true sides; null: no kind of
 * the truth. */
export function liesOn(
  shape: Shell,
  known: readonly (KnownSides | null)[],
  truth: NetShell,
): boolean {
  const lengths = Array.from({ length: placeCount(truth.shell) }, (_, p) => {
    const kind = truth.kinds[truth.shell.kind[p] as number] as NetShell['kinds'][number];
    return turned(kind.sides, truth.shell.turn[p] as number);
  });
  const own = Array.from({ length: placeCount(shape) }, (_, p) => {
    const kind = known[shape.kind[p] as number];
    return kind ? turned(kind.sides, shape.turn[p] as number) : null;
  });
  if (own.includes(null)) return false;
  const within = Array.from(shape.kind, (k) => (known[k] as KnownSides).within);
  const fits = (place: number, on: number, by: number): boolean => {
    const [mine, theirs] = [own[place] as number[], lengths[on] as number[]];
    const near = within[place] as number;
    return (
      mine.length === theirs.length &&
      mine.every((x, i) => Math.abs(x - (theirs[(i + by) % mine.length] as number)) <= near)
    );
  };
  for (let on = 0; on < lengths.length; on++)
    for (let by = 0; by < (lengths[on] as number[]).length; by++)
      if (fits(0, on, by) && flood(shape, truth.shell, on, by, fits)) return true;
  return false;
}

function flood(
  shape: Shell,
  truth: Shell,
  on: number,
  by: number,
  fits: (place: number, on: number, by: number) => boolean,
): boolean {
  const image = new Int32Array(placeCount(shape)).fill(-1);
  const shift = new Int32Array(placeCount(shape));
  const used = new Set([on]);
  image[0] = on;
  shift[0] = by;
  const queue = [0];
  for (const place of queue) {
    const sides = sidesOf(shape, place as PlaceId);
    const theirs = sidesOf(truth, image[place] as PlaceId);
    for (let i = 0; i < sides.length; i++) {
      const mate = shape.mate[sides[i] as number] as number;
      if (mate < 0) continue;
      const there = truth.mate[
        theirs[(i + (shift[place] as number)) % sides.length] as number
      ] as number;
      if (there < 0) return false;
      const next = placeAt(shape, mate as never);
      const target = placeAt(truth, there as never);
      const size = sidesOf(truth, target).length;
      const turn =
        (there -
          (truth.placeStart[target] as number) -
          (mate - (shape.placeStart[next] as number)) +
          size) %
        size;
      if ((image[next] as number) < 0) {
        if (used.has(target) || !fits(next, target, turn)) return false;
        image[next] = target;
        shift[next] = turn;
        used.add(target);
        queue.push(next);
      } else if (image[next] !== target || shift[next] !== turn) return false;
    }
  }
  return queue.length === placeCount(shape);
}

/** The mirror image of a shell, with the mirror images of its kinds. */
export function mirrorOf({ shell, kinds }: NetShell): NetShell {
  const hubs = shell.hubs.map((x, i) => (i % 3 === 0 ? -x : x));
  const flipped = kinds.map((kind) => ({ ...kind, sides: [...kind.sides].reverse() }));
  return { shell: reversedShell({ ...shell, hubs }), kinds: flipped };
}

/** Each place run round the other way: its side i becomes side n − 1 − i, as in its kind. */
function reversedShell(shell: Shell): Shell {
  const count = placeCount(shell);
  const at = new Int32Array(shell.sideHub.length);
  const sideHub = new Int32Array(shell.sideHub.length);
  const turn = new Int32Array(count);
  for (let p = 0; p < count; p++) {
    const start = shell.placeStart[p] as number;
    const n = (shell.placeStart[p + 1] as number) - start;
    for (let i = 0; i < n; i++) at[start + i] = start + n - 1 - i;
    for (let i = 0; i < n; i++)
      sideHub[start + n - 1 - i] = shell.sideHub[start + ((i + 1) % n)] as number;
    turn[p] = (n - (shell.turn[p] as number)) % n;
  }
  const mate = new Int32Array(shell.mate.length).fill(-1);
  shell.mate.forEach((other, s) => {
    if (other >= 0) mate[at[s] as number] = at[other] as number;
  });
  const seams = [...mate.entries()].flatMap(([s, other]) => (other > s ? [s, other] : []));
  return { ...shell, sideHub, mate, seams: Int32Array.from(seams), turn };
}
