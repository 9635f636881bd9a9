// The five smaller piles.

import { cutIcosahedron, distance } from './net.mjs';
import { normal, seeded, shuffled } from './random.mjs';
import { metres, people, read, sixteenths } from './tape.mjs';

const inch = 0.0254;

/** A shell of seven and nine kinds from a published table, as a maker would cut it: 10 m across,
 * lengths in whole half millimetres. */
export function fiveFrequency() {
  const radius = 5;
  const side = (letter) => metres(Math.round(chords5[letter] * radius * 2000) / 2000);
  const kinds = ['AAD', 'BBD', 'BCG', 'BGC', 'EEF', 'EGH', 'EHG', 'HHI', 'III'];
  return project('Cut from a table, five to a side', {
    notes:
      'Sides are the published chord factors times 5 m, to the half millimetre. ' +
      'Chords 1, 3 and 6 from S. Mather, mailing-list posting reproduced in "Chord Factors - the ' +
      'nitty gritty" (scribd.com/document/317039265): 0.198147431, 0.231597598, 0.245346417. The ' +
      'others as in H. Kenner, Geodesic Math and How to Use It (University of California Press, ' +
      '1976), five digits, from memory.',
    measuredAlong: 'hubs',
    hubAllowance: 0,
    readingSd: 0.0005,
    kinds: kinds.map((spokes, i) => ({
      id: ids5[i],
      sides: [...spokes].map(side),
    })),
  });
}

const ids5 = ['1', '2', '3R', '3L', '4', '5R', '5L', '6', '7'];

const chords5 = {
  A: 0.198147431,
  B: 0.22569,
  C: 0.231597598,
  D: 0.23179,
  E: 0.24509,
  F: 0.245346417,
  G: 0.24724,
  H: 0.25517,
  I: 0.2616,
};

/** Hexagons and pentagons: the truncated icosahedron, 5.2 m across, as a bus shelter once was. */
export function hexAndPent() {
  const random = seeded(7);
  // Side over radius of the truncated icosahedron, 1 / 2.47801866 (textbook).
  const side = () => metres(2.6 / 2.47801866 + 0.0007 * normal(random));
  const sides = (n) => Array.from({ length: n }, side);
  return project('Fives and sixes', {
    notes: 'Twelve sides were measured on two panels; the rest were counted only.',
    measuredAlong: 'hubs',
    hubAllowance: 0,
    readingSd: 0.001,
    kinds: [
      { id: 'five', sides: sides(5), good: 11, repair: 0, scrap: 1, mass: 24 },
      { id: 'six', sides: sides(6), good: 16, repair: 1, scrap: 0, mass: 37 },
    ],
  });
}

/** A ball that turns one way, {3,5+}3,1, 6.2 m across; chord factors computed by the plane rule. */
export function oneHanded() {
  const radius = 3.1;
  const random = seeded(31);
  const chord = {
    A: 0.2771447445,
    B: 0.322659939,
    C: 0.3324216699,
    D: 0.3372550741,
    E: 0.3429762765,
    F: 0.3590112237,
  };
  const kind = (id, spokes, good, marks) => ({
    id,
    marks,
    sides: [...spokes].map((letter) => metres(chord[letter] * radius + 0.0005 * normal(random))),
    good,
    repair: 0,
    scrap: 0,
  });
  return project('The one-handed ball', {
    measuredAlong: 'hubs',
    hubAllowance: 0,
    readingSd: 0.0007,
    kinds: [
      kind('1', 'AAB', 60, ['i']),
      kind('2', 'BCE', 58, ['ii']),
      kind('3', 'CED', 60, ['ii', 'iii']),
      kind('4', 'EEF', 60, ['iv']),
      kind('5', 'FFF', 20, ['v']),
    ],
  });
}

/** Panels of three kinds, {3,5+}2,2, 6 m across, one of them measured from the tape's one-inch
 * mark on one side. */
export function suspectReading() {
  const radius = 3;
  const random = seeded(5);
  const chord = { A: 0.2865052399, B: 1 / 3, C: 0.3568220898, D: 0.3628433299 };
  const panels = ['AAB', 'BCC', 'CDD'].flatMap((spokes) => Array(6).fill(spokes));
  const readings = shuffled(panels, random).map((spokes, i) => {
    const person = ['Petra', 'Wim'][i % 2];
    const sides = [...spokes].map((letter) => read(chord[letter] * radius, people[person], random));
    if (i === 10) sides[1] = metres(sides[1] + inch);
    return { tag: `p${i + 1}`, by: person, sides, seenFrom: 'outside', condition: 'good' };
  });
  return project('One tape held wrong', {
    measuredAlong: 'hubs',
    hubAllowance: 0,
    readingSd: 0.001,
    readings,
  });
}

/** A pile from a spreadsheet, in inches as people write them: two kinds, 18 ft across. */
export function inchesCsv() {
  const random = seeded(11);
  const net = cutIcosahedron(3);
  const lengths = [...new Set(net.triangles.flatMap((t) => sidesOf(net, t)))].sort((a, b) => a - b);
  const [a, b, c] = lengths.map((chord) => chord * 108 * inch);
  const rows = Array.from({ length: 18 }, (_, i) => {
    const sides = (i % 3 === 0 ? [a, a, b] : [b, c, c]).map((s) => read(s, people.Wim, random));
    const turn = Math.floor(random() * 3);
    const cells = [...sides.slice(turn), ...sides.slice(0, turn)].map((s) => cell(s, i));
    const lot = i % 3 === 0 ? 5 : 6;
    return ['', 'Wim', i % 3 === 0 ? 'small' : 'large', lot, ...cells, 'outside', 'good'].join(',');
  });
  const header = 'tag,by,mark,count,side1 in,side2 in,side3 in,seen from,condition';
  return `${[header, ...rows].join('\r\n')}\r\n`;
}

const sidesOf = ({ points }, [a, b, c]) =>
  [
    [a, b],
    [b, c],
    [c, a],
  ].map(([p, q]) => Number(distance(points[p], points[q]).toFixed(9)));

/** The same length in the ways that one column holds: `43 9/16`, `43-9/16"`, `3' 7 9/16"`. */
function cell(side, i) {
  const plain = sixteenths(side);
  if (i % 4 === 1) return `"${plain.replace(' ', '-')}"""`;
  if (i % 4 === 3) {
    const [whole, ...part] = plain.split(' ');
    const rest = [Number(whole) - 36, ...part].join(' ');
    return `"3' ${rest}"""`;
  }
  return plain;
}

function project(title, { notes, ...pile }) {
  return { shellraise: 1, title, ...(notes ? { notes } : {}), pile };
}
