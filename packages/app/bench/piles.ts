// The piles that the app is measured with, as project files. Seeded: the same bytes each time.

import { namedNet, shellOfNet } from '@shellraise/core';

const hubs = { measuredAlong: 'hubs', hubAllowance: 0, readingSd: 0.0005 } as const;

/** A ball of 20 `steps`² places, 6 m across, as kinds with counts. */
export function ballOf(steps: number): string {
  const { kinds } = ball(steps, 3);
  return JSON.stringify({
    shellraise: 1,
    title: `A ball of ${20 * steps ** 2} places`,
    pile: {
      ...hubs,
      kinds: kinds.map(({ sides, count }, i) => ({
        id: `${i + 1}`,
        sides: sides.map(tenths),
        good: count,
      })),
    },
  });
}

/** A pile of 700 panels, each measured with the tape. */
export function longTally(): string {
  const { kinds } = ball(6, 2.7);
  const random = seeded(700);
  const rows = kinds
    .flatMap(({ sides, count }) => Array.from({ length: count }, () => sides))
    .slice(0, 700);
  return JSON.stringify({
    shellraise: 1,
    title: 'A tally of 700 readings',
    pile: {
      ...hubs,
      readings: rows.map((sides, i) => ({
        tag: String(i + 1).padStart(3, '0'),
        by: i % 2 === 0 ? 'Petra' : 'Wim',
        sides: sides.map((side) => tenths(side + 0.0005 * (random() + random() + random() - 1.5))),
        seenFrom: 'outside',
        condition: 'good',
      })),
    },
  });
}

const ball = (b: number, radius: number) =>
  shellOfNet(namedNet({ solid: 'icosahedron', b, c: 0, division: 'equal chords' }), radius);

/** Metres in whole tenths of a millimetre. */
const tenths = (side: number): number => Math.round(side * 1e4) / 1e4;

/** Numbers from 0 to 1 (mulberry32, public domain). */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}
