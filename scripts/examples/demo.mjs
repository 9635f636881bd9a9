// The demo: the shell of a closed-down weather station, bought by the growers of an orchard. The
// ball is an icosahedron cut in four, 7.3 m across; what came on the lorry was meant to be 200
// panels of it. Seven never arrived, four are broken, others are over, and the marks are of little
// use. All names are invented; the numbers follow from the seed.

import { cutIcosahedron, distance } from './net.mjs';
import { seeded, shuffled } from './random.mjs';
import { metres, people, read, sixteenths } from './tape.mjs';

const radius = 3.65;
const allowance = 0.004;
const inch = 0.0254;

/** What lies in the yard, by kind of panel: painted mark, and panels good, to repair, and scrap.
 * Seven courses of the ball take 30, 35, 40 + 40, 40 and 15. */
const lots = [
  { spokes: 'AAC', mark: 'kestrel', good: 34, repair: 2, scrap: 1 },
  { spokes: 'BBC', mark: 'plover', good: 34, repair: 0, scrap: 0 },
  { spokes: 'BDE', mark: 'heron', good: 38, repair: 0, scrap: 1 },
  { spokes: 'BED', mark: 'heron', good: 38, repair: 0, scrap: 1 },
  { spokes: 'EEF', mark: 'lapwing', good: 43, repair: 1, scrap: 1 },
  { spokes: 'FFF', mark: 'owl', good: 11, repair: 0, scrap: 0 },
];

/** The demo project as plain data for its JSON file. */
export function demoProject() {
  const random = seeded(19);
  const panels = shuffled(allPanels(), random).map((panel, i) => ({
    ...panel,
    tag: String(i + 1).padStart(3, '0'),
    mark: painted(panel.mark, random),
  }));
  const readings = [
    ...panels.map((panel, i) => reading(panel, Object.keys(people)[i % 3], random)),
    // A second person measures every seventh panel again, so that tapes can be compared.
    ...panels
      .filter((_, i) => i % 7 === 3)
      .map((panel, i) => reading(panel, Object.keys(people)[(i + 1) % 3], random)),
  ];
  return {
    shellraise: 1,
    title: 'The orchard shell',
    notes,
    pile: {
      measuredAlong: 'holes',
      hubAllowance: allowance,
      readingSd: 0.001,
      readings: withSlips(readings),
      groups,
      hardware,
    },
    takeoff,
    parts,
    loads,
    ground,
    stages,
    gear,
    raising,
    crew,
    fitout,
  };
}

/** One person's readings as the rows of a spreadsheet, in the units of that person's tape. */
export function demoCsv(project, person) {
  const metric = person === 'Petra';
  const unit = metric ? 'mm' : 'in';
  const header = ['tag', 'by', 'mark', `side1 ${unit}`, `side2 ${unit}`, `side3 ${unit}`];
  const write = (side) => (metric ? String(Math.round(side * 1000)) : sixteenths(side));
  const rows = project.pile.readings
    .filter(({ by }) => by === person)
    .map(({ tag, by, mark, sides, seenFrom, condition }) =>
      [tag, by, mark ?? '', ...sides.map(write), seenFrom, condition].join(','),
    );
  return `${[[...header, 'seen from', 'condition'].join(','), ...rows].join('\n')}\n`;
}

const notes = [
  'Bought from the weather station on Gull Hill when it closed. No drawings. The painted bird names',
  'are from whoever took it down; some have weathered away and a few are plainly wrong. Six bunches',
  'are still bolted together. Idris and Wim measured in inches, Petra in millimetres; everyone wrote',
  'the sides anticlockwise as they saw the panel, from hole line to hole line.',
].join(' ');

/** Runs round a hub, anticlockwise seen from outside, by painted mark. */
const groups = [
  {
    around: ['kestrel', 'kestrel', 'kestrel', 'kestrel', 'kestrel'],
    count: 3,
    closed: true,
    note: 'three full rings of five',
  },
  { around: ['plover', 'kestrel', 'kestrel', 'plover'], count: 2, closed: false },
  { around: ['lapwing', 'owl', 'lapwing'], count: 1, closed: false },
];

const bolt = (thread, length, count, state, price, pack, more = {}) => ({
  item: 'bolt',
  thread,
  length: metres(length),
  count,
  state,
  price,
  pack,
  ...more,
});

const hardware = [
  bolt('5/16-18', 1.25 * inch, 620, 'used', 0.24, 50, {
    grade: 'SAE J429 Gr 5',
    note: 'two buckets, oily',
  }),
  bolt('5/16-18', 1.25 * inch, 250, 'new', 0.24, 50, { grade: 'SAE J429 Gr 5' }),
  bolt('M8', 0.03, 180, 'used', 0.19, 50, { grade: '8.8', note: 'mixed in with the 5/16' }),
  bolt('1/4-20', 1 * inch, 300, 'used', 0.15, 100, { grade: 'SAE J429 Gr 5' }),
  bolt('M6', 0.025, 60, 'unknown', 0.11, 100),
  {
    item: 'lock nut',
    thread: '5/16-18',
    count: 400,
    state: 'used',
    note: 'nylon insert, run before',
  },
  { item: 'lock nut', thread: '5/16-18', count: 300, state: 'new', price: 0.09, pack: 100 },
  { item: 'nut', thread: 'M8', count: 150, state: 'used', price: 0.07, pack: 100 },
  { item: 'lock nut', thread: '1/4-20', count: 200, state: 'new', price: 0.06, pack: 100 },
  { item: 'washer', thread: '5/16-18', count: 1400, state: 'used', price: 0.04, pack: 100 },
  { item: 'washer', thread: '1/4-20', count: 500, state: 'used', price: 0.03, pack: 100 },
  { item: 'plate', corners: 6, count: 70, state: 'used', price: 6.5 },
  { item: 'plate', corners: 5, count: 7, state: 'used', price: 6.5 },
  { item: 'plate', corners: 3, rim: true, count: 12, state: 'used', price: 6.5 },
];

const through = { thread: '5/16-18', length: metres(1.25 * inch) };

/** Holes along each side, counted on one panel of each heap; hub plates on 1/4-20. */
const takeoff = {
  sides: [
    { sideLength: 0.9241, within: 0.008, holes: 4, ...through },
    { sideLength: 1.0763, within: 0.006, holes: 5, ...through },
    { sideLength: 1.0898, within: 0.006, holes: 5, ...through },
    { sideLength: 1.142, within: 0.008, holes: 5, ...through },
    { sideLength: 1.186, within: 0.008, holes: 6, ...through },
  ],
  plates: { bolt: { thread: '1/4-20', length: metres(1 * inch) } },
};

/** What the growers know of the parts: skin and flange by the vernier, heads of the bolts read. */
const parts = {
  panel: { material: 'fibreglass', thickness: 0.003, strength: 50e6 },
  flange: { depth: 0.05, thickness: 0.005 },
  bolt: { thread: '5/16-18', grade: 'SAE J429 Gr 5' },
};

/** The wind that the shell must bear in the two months that it is to stand, and what a panel weighs. */
const loads = {
  wind: { as: 'gust', speed: 24 },
  terrain: 'open',
  daysStanding: 60,
  panelMass: 9,
};

/** An orchard on loam over clay; screw anchors of the trellis are at hand. */
const ground = {
  site: { name: 'Lower orchard' },
  soil: { kind: 'clay', firm: true, wet: false },
  anchor: { type: 'helical', torque: 260, plate: 0.1 },
};

/** Timber props, and what the growers would lean on one hub. */
const stages = { propBears: 4000, hubBears: 5000 };

/** Two frames of the tower as they are carried, flat on each other. */
const towerFrames = {
  form: 'parts',
  parts: [
    { shape: { form: 'box', size: [0.06, 0.75, 1.8] }, at: [0, 0, 0] },
    { shape: { form: 'box', size: [0.06, 0.75, 1.8] }, at: [0.12, 0, 0] },
  ],
};

/** What the growers own or may borrow to reach the upper courses, to light and to turn bolts, and what
 * stands inside meanwhile: the tower and the ladders must come out again, the dish and its mast must be
 * in before the door is the only way. */
const gear = {
  ladders: [
    { name: 'stepladder', form: 'self-standing', length: 2.4, bears: 150, count: 3 },
    { name: 'tall stepladder', form: 'self-standing', length: 3.6, bears: 150, count: 2 },
  ],
  platforms: [{ name: 'picking trestle', height: 0.8, bears: 200, count: 4 }],
  towers: [{ name: 'borrowed tower', height: 3.9, base: [1.8, 1.4], bears: 250, count: 2 }],
  inside: [
    { name: 'borrowed tower', shape: towerFrames, mass: 32, must: 'come out' },
    {
      name: 'stepladder',
      shape: { form: 'box', size: [0.5, 0.15, 2.4] },
      mass: 9,
      must: 'come out',
    },
    {
      name: 'antenna mast',
      shape: { form: 'cylinder', diameter: 0.12, length: 2.4 },
      mass: 22,
      must: 'go in',
    },
    {
      name: 'dish',
      shape: { form: 'dish', diameter: 1.8, depth: 0.3 },
      mass: 35,
      must: 'go in',
    },
  ],
  powerTools: [{ name: 'cordless driver', wattHoursPerBolt: 0.3 }],
  lights: [{ name: 'work lamp', watts: 40, count: 3 }],
  batteries: [{ name: 'tool battery', wattHours: 90, count: 4 }],
};

/** What Petra has fixed: the panel beside the hedge is the way out, and one six is made up on the
 * trestles, however the search would have it. */
const raising = {
  wayOut: ['1-04'],
  groups: [['1-01', '1-02', '1-03', '2-01', '2-02', '2-03']],
};

const days = ['2026-05-01', '2026-05-02', '2026-05-03'];
const shifts = (which, from, to) => which.map((k) => ({ date: days[k], from, to }));

/** Gusts of a mild weekend, m/s, every three hours from Friday at six to Monday at nine. */
const gusts = [
  [2, 3, 3, 4, 4, 3, 2, 2],
  [2, 3, 4, 5, 4, 3, 3, 3],
  [3, 4, 6, 9, 8, 6, 5, 5],
  [6, 9],
].flat();

const forecast = gusts.map((gust, i) => {
  const hour = 6 + 3 * i;
  const day = `2026-05-0${1 + Math.floor(hour / 24)}`;
  const at = `${day}T${String(hour % 24).padStart(2, '0')}:00`;
  return {
    at,
    mean: Number((0.6 * gust).toFixed(1)),
    gust,
    temperatureC: 9 + (hour % 24 > 9 && hour % 24 < 19 ? 6 : 0),
  };
});

/** Who said they would come on the first weekend of May. */
const crew = {
  site: { latitudeDeg: 52.1, longitudeDeg: -2.3, utcOffsetHours: 1 },
  dates: days,
  people: [
    {
      name: 'Petra',
      leads: true,
      climbs: true,
      sure: true,
      shifts: shifts([0, 1, 2], '08:00', '19:00'),
    },
    { name: 'Idris', leads: true, sure: true, shifts: shifts([0, 1, 2], '08:00', '19:00') },
    { name: 'Wim', climbs: true, sure: true, shifts: shifts([0, 1, 2], '08:00', '18:00') },
    { name: 'Odalys', climbs: true, sure: true, shifts: shifts([0, 1, 2], '08:30', '18:30') },
    { name: 'Jarek', climbs: true, shifts: shifts([0, 1, 2], '08:30', '18:00') },
    { name: 'Nadezhda', climbs: true, sure: true, shifts: shifts([0, 1, 2], '08:00', '18:00') },
    { name: 'Bao', sure: true, shifts: shifts([0, 1, 2], '08:00', '18:00') },
    { name: 'Mireille', sure: true, shifts: shifts([0, 1, 2], '09:00', '18:00') },
    { name: 'Tovah', shifts: shifts([0, 1, 2], '09:00', '18:00') },
    { name: 'Sunil', climbs: true, shifts: shifts([1, 2], '09:00', '18:00') },
    { name: 'Greet', shifts: shifts([1, 2], '09:00', '18:00') },
    { name: 'Abiola', shifts: shifts([1, 2], '09:00', '17:00') },
    { name: 'Linnea', shifts: shifts([1], '10:00', '18:00') },
    { name: 'Kofi', climbs: true, leads: true, shifts: shifts([1, 2], '09:00', '18:00') },
  ],
  forecast,
};

/** What the growers want it for: a weather dish, a bench, dry seed. The wall is what Petra measured at a
 * broken panel; the hours are what the valley's forecast had for the Monday after. */
const fitout = {
  door: ['2-08', '2-09', '2-10', '1-08', '1-09', '1-10'],
  wall: [{ material: 'glass polyester', thickness: 0.003 }],
  frequencies: [1_420_405_750, 1_694_500_000],
  paint: { coats: 1, dryFilm: 0.0001, year: 2026 },
  seams: { width: 0.012, depth: 0.05, plateDiameter: 0.16 },
  dish: {
    diameter: 1.8,
    focalRatio: 0.375,
    vertexAhead: 0.15,
    feed: { beyond: 0.1, diameter: 0.2 },
    back: { behind: 0.4, diameter: 0.5 },
  },
  mount: { height: 1.7 },
  systemK: 90,
  seal: { side: 'outside', joint: 0.01, tapeRoll: 15 },
  weather: Array.from({ length: 14 }, (_, i) => ({
    at: `2026-05-04T${String(6 + i).padStart(2, '0')}:00`,
    temperatureC: 9 + Math.min(i, 6),
    humidity: Number((0.85 - 0.04 * Math.min(i, 6)).toFixed(2)),
    rainMm: i < 13 ? 0 : 0.6,
  })),
  air: { readings: [{ outsideC: 4, insideC: 9, insideHumidity: 0.8, hours: 8 }] },
  carry: [
    { name: 'dish', shape: { form: 'dish', diameter: 1.8, depth: 0.3, thickness: 0.05 } },
    { name: 'seed cabinet', shape: { form: 'box', size: [0.9, 0.5, 1.9] } },
  ],
  standsFrom: '2026-05-04',
  use: { boxes: [{ name: 'potting bench', length: 1.6, depth: 0.6, height: 0.9 }] },
};

/** Panels of every kind, each with its sides as they lie, anticlockwise from outside. */
function allPanels() {
  const bySpokes = sidesByKind();
  return lots.flatMap(({ spokes, mark, good, repair, scrap }) =>
    Object.entries({ good, repair, scrap }).flatMap(([condition, n]) =>
      Array.from({ length: n }, () => ({ mark, condition, sides: bySpokes.get(spokes) })),
    ),
  );
}

/** `AAC` and so on → true hub-to-hub sides, metres: letters from the shortest chord of the net. */
function sidesByKind() {
  const { points, triangles } = cutIcosahedron(4);
  const sidesOf = ([a, b, c]) =>
    [
      [a, b],
      [b, c],
      [c, a],
    ].map(([p, q]) => Number(distance(points[p], points[q]).toFixed(9)));
  const chords = [...new Set(triangles.flatMap(sidesOf))].sort((p, q) => p - q);
  const letter = (side) => 'ABCDEF'[chords.indexOf(side)];
  return new Map(
    triangles.map((triangle) => {
      const sides = fromSmallest(sidesOf(triangle));
      return [sides.map(letter).join(''), sides.map((side) => side * radius)];
    }),
  );
}

function fromSmallest(sides) {
  const turns = sides.map((_, i) => [...sides.slice(i), ...sides.slice(0, i)]);
  return turns.sort((a, b) => a[0] - b[0] || a[1] - b[1] || a[2] - b[2])[0];
}

/** The mark as it can still be read: one in seven is gone. */
const painted = (mark, random) => (random() < 0.14 ? null : mark);

function reading(panel, by, random) {
  const inside = random() < 0.2;
  const faceDown = panel.condition === 'scrap' && random() < 0.5;
  const measured = panel.sides.map((side) => read(side - allowance, people[by], random));
  const turn = Math.floor(random() * 3);
  const turned = [...measured.slice(turn), ...measured.slice(0, turn)];
  return {
    tag: panel.tag,
    by,
    ...(panel.mark === null ? {} : { mark: panel.mark }),
    sides: inside ? turned.reverse() : turned,
    seenFrom: faceDown ? 'unknown' : inside ? 'inside' : 'outside',
    condition: panel.condition,
  };
}

/** What goes wrong with pencil and paint: a tape held at its one-inch mark, and three marks that
 * stand on the wrong panels. */
function withSlips(readings) {
  const wrong = new Map([
    [40, 'owl'],
    [91, 'plover'],
    [150, 'lapwing'],
  ]);
  return readings.map((row, i) => {
    if (i === 120) return { ...row, sides: row.sides.with(1, metres(row.sides[1] + inch)) };
    return wrong.has(i) ? { ...row, mark: wrong.get(i) } : row;
  });
}
