// Twelve hard piles, one for each thing that a real heap does. All names and places are invented.

import {
  ballOf,
  countsOf,
  meetings,
  readOnce,
  starAt,
  swayed,
  tenth,
  turned,
} from './hard-nets.mjs';
import { cutIcosahedron, distance } from './net.mjs';
import { normal, seeded, shuffled } from './random.mjs';
import { metres } from './tape.mjs';

const sd = 0.001;

const project = (title, notes, pile) => ({
  shellraise: 1,
  title,
  notes,
  pile: { measuredAlong: 'hubs', hubAllowance: 0, readingSd: sd, ...pile },
});

const row = (id, sides, good) => ({
  id,
  sides,
  seenFrom: 'outside',
  ...(good === undefined ? {} : { good, repair: 0, scrap: 0 }),
});

/** Rows of all kinds, read once; `counts` where given, kinds of count 0 left out. */
function rowsOf(ball, random, counts) {
  return ball.kinds.flatMap(({ sides }, k) =>
    counts?.[k] === 0 ? [] : [row(`${k + 1}`, readOnce(sides, sd, random), counts?.[k])],
  );
}

const wholeCounts = ({ kinds }) => kinds.map(({ count }) => count);

/** 1. Part of a sphere. */
export function part() {
  const random = seeded(101);
  const ball = ballOf(swayed(cutIcosahedron(2), 0.05), 3.2);
  const counts = countsOf(ball, ({ points }) => points.every(([, , z]) => z > -0.6));
  return project(
    'The bandstand at Ostermoor',
    'Hard: only the upper part of the ball came, cut along seams low down. The counts are those of ' +
      'the part, so they never add up to a ball, and the lowest kinds are not in the pile at all.',
    { kinds: rowsOf(ball, random, counts) },
  );
}

/** 2. Cut base. */
export function cutBase() {
  const random = seeded(102);
  const ball = ballOf(cutIcosahedron(3), 2.8);
  const level = -0.32;
  const heights = ({ points }) => points.map(([, , z]) => z - level);
  const counts = countsOf(ball, (place) => heights(place).every((h) => h > 0));
  const cut = new Map();
  for (const place of ball.places) {
    const above = heights(place).filter((h) => h > 0).length;
    if (above === 0 || above === 3) continue;
    const corners = aboveLevel(place.points, level);
    const sides = corners.map((p, i) =>
      tenth(2.8 * distance(p, corners[(i + 1) % corners.length])),
    );
    const first = turned(sides, sides.indexOf(Math.min(...sides)));
    const key = first.join();
    cut.set(key, { sides: first, count: (cut.get(key)?.count ?? 0) + 1 });
  }
  const cutRows = [...cut.values()].map(({ sides, count }, i) =>
    row(`base ${i + 1}`, readOnce(sides, sd, random), count),
  );
  return project(
    'The greenhouse on the slab',
    'Hard: the lowest panels were sawn off level where the shell stood on a slab. They have one side ' +
      'that meets no other panel, and they fit nowhere in a ball.',
    { kinds: [...rowsOf(ball, random, counts), ...cutRows] },
  );
}

/** Corners of the part of a flat panel above a level. */
const aboveLevel = (points, level) =>
  points.flatMap((p, i) => {
    const q = points[(i + 1) % points.length];
    const [a, b] = [p[2] - level, q[2] - level];
    const cross = p.map((x, m) => (x * b - q[m] * a) / (b - a));
    return [...(a > 0 ? [p] : []), ...(a > 0 !== b > 0 ? [cross] : [])];
  });

/** 3. Spares, losses, odd panels. */
export function strangers() {
  const random = seeded(103);
  const ball = ballOf(cutIcosahedron(4), 3.4);
  const share = [1.3, 0.9, 1.1, 0.87, 1, 1.4];
  const counts = ball.kinds.map(({ count }, k) => Math.round(count * share[k % share.length]));
  const other = ballOf(cutIcosahedron(3), 2.4);
  const odd = other.kinds.map(({ sides }, i) =>
    row(`odd ${i + 1}`, readOnce(sides, sd, random), 1),
  );
  return project(
    'Two yards cleared at once',
    'Hard: some kinds are over, others are up to a seventh short, and two panels of another shell ' +
      'were thrown on the heap.',
    { kinds: shuffled([...rowsOf(ball, random, counts), ...odd], random) },
  );
}

/** 4. Mis-measured. */
export function culprits() {
  const random = seeded(104);
  const ball = ballOf(cutIcosahedron(5), 3);
  const kinds = rowsOf(ball, random);
  const [long, inches, face] = [kinds[0], kinds[4], kinds[6]];
  long.sides[1] = tenth(long.sides[1] + 0.021);
  inches.sides = inches.sides.map((x) => tenth(x / 2.54));
  face.sides = [...face.sides].reverse();
  return project(
    'Three slips of the pencil',
    `Hard: one side of kind ${long.id} was read 21 mm long, kind ${inches.id} was read in inches and ` +
      `written down as centimetres, kind ${face.id} was read from inside and noted as from outside.`,
    { kinds },
  );
}

/** 4, the other way: a broken hook. */
export function brokenHook() {
  const random = seeded(114);
  const ball = ballOf(swayed(cutIcosahedron(2), 0.05), 3.1);
  const people = ['Anouk', 'Bram', 'Cem'];
  const reading = (k, n, by) => ({
    tag: `${k + 1}-${n + 1}`,
    by,
    sides: readOnce(ball.kinds[k].sides, sd, random).map((x) =>
      metres(tenth(x + (by === 'Bram' ? 0.025 : 0))),
    ),
    seenFrom: 'outside',
  });
  // Two panels of each kind, by two people in turn; the first of six kinds by the third as well, so
  // that tapes can be compared.
  const readings = ball.kinds.flatMap((_, k) => [
    reading(k, 0, people[k % 3]),
    reading(k, 1, people[(k + 1) % 3]),
    ...(k < 6 ? [reading(k, 0, people[(k + 2) % 3])] : []),
  ]);
  return project(
    'Bram’s tape',
    'Hard: the hook of one person’s tape was broken off, so that all he measured reads 25 mm long.',
    { readings: shuffled(readings, random) },
  );
}

/** 5. Near-equal kinds. */
export function nearEqual() {
  const random = seeded(105);
  const ball = ballOf(twisted(cutIcosahedron(3), 0.0008), 3);
  return project(
    'All but the same',
    'Hard: the hubs are a hair off the rule, so that sides that should be one length come in several, ' +
      'two or three millimetres apart, each read once with a millimetre of noise.',
    { kinds: rowsOf(ball, random) },
  );
}

/** 6. Hands unknown. */
export function hands() {
  const random = seeded(106);
  const ball = ballOf(twisted(cutIcosahedron(3), 0.03), 2.9);
  const kinds = rowsOf(ball, random, wholeCounts(ball)).map((one, k) => ({
    ...one,
    sides: k % 2 === 0 ? one.sides : [...one.sides].reverse(),
    seenFrom: 'unknown',
  }));
  return project(
    'Nobody noted the face',
    'Hard: the panels have a left and a right, and nobody wrote down from which face they were read. ' +
      'The mirror image of the whole ball fits as well.',
    { kinds },
  );
}

/** A ball that turns one way: the points within each face of the icosahedron turned about its
 * middle. */
function twisted(net, by) {
  const middles = cutIcosahedron(1);
  const centres = middles.triangles.map((t) =>
    unit([0, 1, 2].map((m) => t.reduce((sum, a) => sum + middles.points[a][m], 0))),
  );
  const corners = new Set(middles.points.map((p) => p.map((x) => x.toFixed(6)).join()));
  const points = net.points.map((p) => {
    if (corners.has(p.map((x) => x.toFixed(6)).join())) return p;
    const near = centres.filter((c) => dot(c, p) > 0.85);
    return near.length === 1 ? p : turnedTowards(p, middles.points, by);
  });
  return { points, triangles: net.triangles };
}

/** A point of an edge moved across it, to the left seen from the nearer end. */
function turnedTowards(p, corners, by) {
  const end = corners.reduce((best, c) => (dot(c, p) > dot(best, p) ? c : best));
  const left = cross(p, cross(end, p));
  const across = unit(cross(p, left));
  return unit(p.map((x, m) => x + by * across[m]));
}

const dot = (a, b) => a.reduce((sum, x, m) => sum + x * b[m], 0);
const cross = ([a, b, c], [d, e, f]) => [b * f - c * e, c * d - a * f, a * e - b * d];
const unit = (v) => v.map((x) => x / Math.hypot(...v));

/** 7. Marks as evidence. */
export function marks() {
  const random = seeded(107);
  const ball = ballOf(cutIcosahedron(2), 2.6);
  const mean = ({ points }) => points.reduce((sum, p) => sum + p[2], 0) / 3;
  const markOf = (place) =>
    ball.kinds[place.kind].count === 20 ? (mean(place) > 0 ? '5' : '6') : '3';
  const lots = new Map();
  for (const place of ball.places) {
    const mark = markOf(place);
    const key = `${place.kind} ${mark}`;
    lots.set(key, { kind: place.kind, mark, count: (lots.get(key)?.count ?? 0) + 1 });
  }
  const readings = [...lots.values()].flatMap(({ kind, mark, count }) =>
    [0, 1].map((n) => ({
      ...(mark === '6' && n === 1 ? {} : { mark }),
      sides: readOnce(ball.kinds[kind].sides, sd, random),
      seenFrom: 'outside',
      count: n === 0 ? count - Math.floor(count / 2) : Math.floor(count / 2),
    })),
  );
  const hubs = ball.net.points.map((_, h) => starAt(ball, h)).filter((star) => star.length === 6);
  const groups = [hubs[0], hubs[hubs.length >> 1], hubs[hubs.length - 1]].map((star) => ({
    around: star.map(markOf),
    closed: true,
  }));
  return project(
    'Painted for its flanges',
    'Hard: panels of equal sides carry two marks, 5 and 6, because their flanges differ above and ' +
      'below the middle; half of the 6 lost their paint. Three stars were noted before they were ' +
      'unbolted.',
    { readings, groups },
  );
}

/** 8. Laps. */
export function laps() {
  const random = seeded(108);
  const ball = ballOf(swayed(cutIcosahedron(2), 0.05), 2.7);
  const lap = lapsOf(ball);
  const kinds = ball.kinds.map(({ sides, count }, k) => {
    const by = Math.floor(random() * 3);
    const at = turned([0, 1, 2], by);
    return {
      ...row(
        `${k + 1}`,
        at.map((i) => tenth(sides[i] + sd * normal(random))),
        count,
      ),
      laps: at.map((i) => lap.get(`${k}:${i}`)),
    };
  });
  return project(
    'Over and under',
    'Hard: each side laps over or under its neighbour, so that only some sides may meet.',
    { kinds },
  );
}

/** Sort of side → its lap: over and under where the sorts that meet take two colours, else flush. */
function lapsOf(ball) {
  const meets = new Map();
  for (const [a, b] of meetings(ball))
    for (const [own, other] of [
      [a, b],
      [b, a],
    ])
      meets.set(own, (meets.get(own) ?? new Set()).add(other));
  const lap = new Map();
  for (const start of meets.keys()) {
    if (lap.has(start)) continue;
    const over = new Map([[start, true]]);
    for (const [sort, colour] of over)
      for (const other of meets.get(sort)) if (!over.has(other)) over.set(other, !colour);
    const clash = [...over].some(([sort, colour]) =>
      [...meets.get(sort)].some((other) => over.get(other) === colour),
    );
    for (const [sort, colour] of over) lap.set(sort, clash ? 'flush' : colour ? 'over' : 'under');
  }
  return lap;
}

/** 8, and the scheme cannot close. */
export function lapsAmiss() {
  const good = laps();
  const [first] = good.pile.kinds;
  const wrong = first.laps.findIndex((lap) => lap !== 'flush');
  first.laps[wrong] = first.laps[wrong] === 'over' ? 'under' : 'over';
  return {
    ...good,
    title: 'Over and under, noted wrong',
    notes: `Hard: one lap of kind ${first.id} was noted the wrong way, and nothing in the pile answers it.`,
  };
}

/** 9. The hub gap unknown. */
export function gap() {
  const random = seeded(109);
  const ball = ballOf(cutIcosahedron(4), 3.3);
  const short = 0.008;
  const kinds = rowsOf(ball, random).map((one) => ({
    ...one,
    sides: one.sides.map((x) => tenth(x - short)),
  }));
  return project(
    'From hole to hole',
    'Hard: the sides were read between corner holes, and nobody knows how far the hubs lie beyond ' +
      '(8 mm in truth). The plates that join the panels were measured as well.',
    {
      measuredAlong: 'holes',
      hubAllowance: null,
      kinds,
      hubPlates: [
        { corners: 6, radius: 0.0041 },
        { corners: 5, radius: 0.0039 },
      ],
    },
  );
}

/** 10. A straight course between two half balls. */
export function elongated() {
  const random = seeded(110);
  const ball = ballOf(cutIcosahedron(4), 3);
  const height = 1.1;
  const lengths = new Map();
  ball.net.triangles.forEach((triangle) => {
    const low = triangle.map((a) => ball.net.points[a]).filter(([, , z]) => Math.abs(z) < 1e-9);
    if (low.length !== 2) return;
    const length = tenth(3 * distance(low[0], low[1]));
    lengths.set(length, (lengths.get(length) ?? 0) + 1);
  });
  const course = [...lengths].map(([length, twice], i) =>
    row(
      `wall ${i + 1}`,
      [length, height, length, height].map((x) => tenth(x + sd * normal(random))),
      twice / 2,
    ),
  );
  return project(
    'The long pavilion',
    'Hard: two half balls stood on either side of a straight course of rectangles, 1.1 m high.',
    { kinds: [...rowsOf(ball, random, wholeCounts(ball)), ...course] },
  );
}

/** 10, and two shells in one heap. */
export function twoShells() {
  const random = seeded(120);
  const large = ballOf(cutIcosahedron(4), 3.6);
  const small = ballOf(cutIcosahedron(3), 2.2);
  const named = (ball, letter) =>
    rowsOf(ball, random, wholeCounts(ball)).map((one) => ({ ...one, id: `${letter}${one.id}` }));
  return project(
    'One lorry, two shells',
    'Hard: the panels of two balls lie in one heap. Kinds a1 and on are of the larger, b1 and on of ' +
      'the smaller.',
    { kinds: shuffled([...named(large, 'a'), ...named(small, 'b')], random) },
  );
}

/** 11. Nothing closes. */
export function nothing() {
  const random = seeded(111);
  const kinds = Array.from({ length: 6 }, (_, i) => {
    const [a, b] = [0.7 + 0.8 * random(), 0.7 + 0.8 * random()];
    const angle = 1.8 + 0.7 * random();
    const c = Math.sqrt(a * a + b * b - 2 * a * b * Math.cos(angle));
    return row(`${i + 1}`, [a, b, c].map(tenth), 5 + Math.floor(30 * random()));
  });
  return project(
    'Offcuts',
    'Hard: these are offcuts of a roof. They never were a ball, and the honest answer is no.',
    { kinds },
  );
}

/** 12. Ambiguity. */
export function ambiguity() {
  const random = seeded(112);
  const ball = ballOf(cutIcosahedron(2), 2.3);
  return project(
    'Two ways to close',
    'Hard: a ball of two kinds whose upper half can be turned against the lower by a step. Sides and ' +
      'counts are the same either way.',
    { kinds: rowsOf(ball, random, wholeCounts(ball)) },
  );
}

/** File name in examples/hard/ → project. */
export const hardPiles = () => ({
  'part.json': part(),
  'cut-base.json': cutBase(),
  'strangers.json': strangers(),
  'culprits.json': culprits(),
  'broken-hook.json': brokenHook(),
  'near-equal.json': nearEqual(),
  'hands.json': hands(),
  'marks.json': marks(),
  'laps.json': laps(),
  'laps-amiss.json': lapsAmiss(),
  'gap.json': gap(),
  'elongated.json': elongated(),
  'two-shells.json': twoShells(),
  'nothing.json': nothing(),
  'ambiguity.json': ambiguity(),
});
