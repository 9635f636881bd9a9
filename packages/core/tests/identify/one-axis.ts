// Balls that turn onto themselves about one axis alone, and their kinds as somebody read them.

import { onlyFivefold } from '../../bench/heaps/bases.ts';
import { type Random, seededRandom } from '../../src/math/random.ts';
import { type NetShell, shellOfNet } from '../../src/nets/kinds.ts';
import { namedNet } from '../../src/nets/named.ts';
import type { Kind } from '../../src/pile/kind.ts';
import type { PlaceId } from '../../src/shell/ids.ts';
import { hubsOf, placeCount } from '../../src/shell/shell.ts';
import { kindWith } from './piles.ts';

/** Deviation of one reading, metres. */
export const READ_SD = 5e-4;

/** A ball of 3 m radius, its hubs moved by up to 6 % of a side, alike about a fivefold axis; and what
 * else is at random. */
export function oneAxisBall(b: number, c: number, seed: number): { net: NetShell; random: Random } {
  const random = seededRandom(seed);
  const named = namedNet({ solid: 'icosahedron', b, c, division: 'equal chords' });
  return { net: shellOfNet(onlyFivefold(named, 0.06, random), 3), random };
}

/** These kinds of a net, each read once, named after their numbers. */
export const readKinds = (net: NetShell, kinds: readonly number[], random: Random): Kind[] =>
  kinds.map((k) => {
    const { sides } = net.kinds[k] as NetShell['kinds'][number];
    return kindWith(
      `k${k}`,
      sides.map((x) => x + READ_SD * random.normal()),
      READ_SD,
    );
  });

/** Up to `count` kinds at a pole: the one whose panels stand around it, then those beside them. */
export function kindsAtPole({ shell }: NetShell, count: number): Set<number> {
  const places = [...Array(placeCount(shell)).keys()];
  for (let hub = 0; hub < shell.hubs.length / 3; hub++) {
    const around = places.filter((p) => hubsOf(shell, p as PlaceId).includes(hub as never));
    const kinds = new Set(around.map((p) => shell.kind[p] as number));
    if (around.length !== 5 || kinds.size !== 1) continue;
    for (const kind of kinds)
      for (const p of places.filter((place) => shell.kind[place] === kind))
        for (let i = 0; i < 3; i++) {
          const mate = shell.mate[(shell.placeStart[p] as number) + i] as number;
          if (kinds.size < count) kinds.add(shell.kind[shell.sidePlace[mate] as number] as number);
        }
    return kinds;
  }
  throw new Error('no pole');
}
