// The shells of the hard piles, worked out without the engine: their kinds, and where each kind's
// sides meet which. Lengths in metres.

import { distance, starsOf } from './net.mjs';
import { normal } from './random.mjs';
import { metres } from './tape.mjs';

/** The net pushed about a little, alike in each of its five sectors about the crown: no mirror is
 * left in it, and a crown's kinds differ from those below. */
export function swayed({ points, triangles }, by) {
  const moved = points.map(([x, y, z]) => {
    const across = Math.hypot(x, y);
    if (across < 1e-6) return [x, y, z];
    const round = Math.atan2(y, x);
    const turn = round + by * Math.sin(5 * round + 1 + 2 * z);
    const height = z + by * across * Math.cos(5 * round + 3 * z);
    const out = Math.hypot(across, height);
    return [(Math.cos(turn) * across) / out, (Math.sin(turn) * across) / out, height / out];
  });
  return { points: moved, triangles };
}

/** A ball of radius metres with its kinds: `kinds` of sides anticlockwise from outside, `places` with
 * their kind and its side that is first there. Mirror images are two kinds. */
export function ballOf(net, radius) {
  const kinds = [];
  const byKey = new Map();
  const places = net.triangles.map((triangle) => {
    const sides = triangle.map(
      (a, i) => radius * distance(net.points[a], net.points[triangle[(i + 1) % 3]]),
    );
    const turns = [0, 1, 2].map((by) => ({ by, key: keyOf(turned(sides, by)) }));
    const { by, key } = turns.reduce((least, one) => (one.key < least.key ? one : least));
    if (!byKey.has(key)) byKey.set(key, kinds.push({ sides: turned(sides, by), count: 0 }) - 1);
    const kind = byKey.get(key);
    kinds[kind].count++;
    return { kind, turn: (3 - by) % 3, points: triangle.map((a) => net.points[a]) };
  });
  return { kinds, places, net, radius };
}

/** The list from its item `by` on. */
export const turned = (list, by) => list.map((_, i) => list[(i + by) % list.length]);

const keyOf = (sides) => sides.map((x) => String(Math.round(x * 1e6)).padStart(9, '0')).join();

/** Panels of each kind among the places that pass. */
export const countsOf = ({ kinds, places }, passes) =>
  kinds.map((_, k) => places.filter((place) => place.kind === k && passes(place)).length);

/** Kind and side of a place's side, as 'kind:side'. */
export const sortOf = ({ kind, turn }, side) => `${kind}:${(side + turn) % 3}`;

/** Every pair of sides that meet, as sorts. */
export function meetings({ net, places }) {
  const bySeam = new Map();
  return net.triangles.flatMap((triangle, t) =>
    triangle.flatMap((a, i) => {
      const b = triangle[(i + 1) % 3];
      const own = sortOf(places[t], i);
      const other = bySeam.get(`${b} ${a}`);
      bySeam.set(`${a} ${b}`, own);
      return other ? [[own, other]] : [];
    }),
  );
}

/** Panels around a point of the net as places, anticlockwise. */
export const starAt = ({ net, places }, point) => starsOf(net)[point].map((t) => places[t]);

/** A kind's sides as somebody read them once, from any side on. */
export function readOnce(sides, sd, random) {
  const by = Math.floor(random() * sides.length);
  return turned(sides, by).map((x) => metres(tenth(x + sd * normal(random))));
}

/** To the tenth of a millimetre. */
export const tenth = (length) => Math.round(length * 10000) / 10000;
