// Reads the rows of the tables of triangulated shells (their form stands at the head of each).

import type { Division } from '../../../src/nets/division.ts';
import type { NetSpec } from '../../../src/nets/named.ts';
import type { SolidName } from '../../../src/nets/solid.ts';

/** One net of a table. Angles in degrees. */
export interface TableNet {
  readonly name: string;
  readonly spec: NetSpec;
  /** Hubs, seams, panels; null where the table doesn't say. */
  readonly counts: readonly number[] | null;
  readonly sides: readonly { chord: number; central: number; axial: number; count: number }[];
  readonly panels: readonly {
    round: readonly number[];
    count: number;
    mirrored: number;
    opposite: readonly number[];
    area: number;
  }[];
  /** Kinds with both hands as one, and with hands apart. */
  readonly kinds: readonly [number, number];
  readonly folds: readonly { key: string; angle: number; count: number }[];
  readonly stars: readonly { key: string; count: number }[];
}

/** All nets of a table. */
export const readNets = (rows: string): TableNet[] => rows.trim().split('\n\n').map(readNet);

function readNet(block: string): TableNet {
  const lines = block.split('\n').map((line) => line.split(' '));
  const rows = (tag: string): string[][] =>
    lines.filter(([first]) => first === tag).map(([, ...rest]) => rest);
  const [solid, b, c, ...division] = rows('net')[0] as [string, string, string, ...string[]];
  return {
    name: [solid, b, c, ...division].join(' '),
    spec: {
      solid: solid as SolidName,
      b: Number(b),
      c: Number(c),
      division: division.join(' ') as Division,
    },
    counts: rows('counts')[0]?.map(Number) ?? null,
    sides: rows('side').map((row) => {
      const [chord, central, axial, count] = row.map(Number) as [number, number, number, number];
      return { chord, central, axial, count };
    }),
    panels: rows('panel').map(([round = '', ...rest]) => {
      const [count, mirrored, p, q, r, area] = rest.map(Number) as [
        number,
        number,
        number,
        number,
        number,
        number,
      ];
      return { round: [...round].map(Number), count, mirrored, opposite: [p, q, r], area };
    }),
    kinds: rows('kinds')[0]?.map(Number) as [number, number],
    folds: rows('fold').map(([side, p = '', q = '', angle, count]) => ({
      key: foldKey(Number(side), eitherHand([...p].map(Number)), eitherHand([...q].map(Number))),
      angle: Number(angle),
      count: Number(count),
    })),
    stars: rows('star').map(([count, ...corners]) => ({
      key: starKey(
        corners.map((corner) => {
          const [side, panel = ''] = corner.replace(')', '').split('(');
          return [Number(side), eitherHand([...panel].map(Number))] as const;
        }),
      ),
      count: Number(count),
    })),
  };
}

const turns = <T>(round: readonly T[]): T[][] =>
  round.map((_, start) => [...round.slice(start), ...round.slice(0, start)]);

/** Name of a round of side classes, wherever it starts. */
export const oneHand = (round: readonly number[]): string =>
  turns(round)
    .map((turn) => turn.join('.'))
    .sort()[0] as string;

/** Name of a round of side classes that it shares with its mirror image. */
export const eitherHand = (round: readonly number[]): string =>
  [oneHand(round), oneHand([...round].reverse())].sort()[0] as string;

/** Name of a seam by its side class and the two panels there, in either order. */
export const foldKey = (side: number, p: string, q: string): string =>
  `${side} ${[p, q].sort().join(' ')}`;

/** Name of a star: for each corner its first side and its panel; wherever it starts and whichever
 * way round it is read. */
export function starKey(corners: readonly (readonly [side: number, panel: string])[]): string {
  const back = corners.map((_, i) => {
    const at = corners.length - i;
    return [corners[at % corners.length]?.[0] as number, corners[at - 1]?.[1] as string] as const;
  });
  const names = [...turns(corners), ...turns(back)].map((turn) =>
    turn.map(([side, panel]) => `${side}(${panel})`).join(' '),
  );
  return names.sort()[0] as string;
}
