import { describe, expect, it } from 'vitest';
import { onlyFivefold } from '../../bench/heaps/bases.ts';
import { identify } from '../../src/identify/identify.ts';
import { seededRandom } from '../../src/math/random.ts';
import { type NetShell, shellOfNet } from '../../src/nets/kinds.ts';
import { namedNet } from '../../src/nets/named.ts';
import type { Kind } from '../../src/pile/kind.ts';
import { checkShell } from '../../src/shell/check.ts';
import type { PlaceId } from '../../src/shell/ids.ts';
import { hubsOf, placeCount } from '../../src/shell/shell.ts';
import { kindWith } from './piles.ts';

/** The kinds of a ball that turns onto itself about one axis alone, those that stand wholly above a
 * level, each read once with 0.5 mm. */
function upperKinds(seed: number, level: number): { net: NetShell; kinds: Kind[] } {
  const random = seededRandom(seed);
  const named = namedNet({ solid: 'icosahedron', b: 2, c: 1, division: 'equal chords' });
  const net = shellOfNet(onlyFivefold(named, 0.06, random), 3);
  const { shell } = net;
  // The axis runs through a hub of five.
  const up = axisOf(net);
  const stands = net.kinds.map((_, k) =>
    [...Array(placeCount(shell)).keys()].some(
      (p) =>
        shell.kind[p] === k &&
        hubsOf(shell, p as PlaceId).every((hub) => heightOf(net, hub, up) > level * 3),
    ),
  );
  const kinds = net.kinds.flatMap(({ sides }, k) =>
    stands[k]
      ? [
          kindWith(
            `k${k}`,
            sides.map((side) => side + 5e-4 * random.normal()),
            5e-4,
          ),
        ]
      : [],
  );
  return { net, kinds };
}

function heightOf({ shell }: NetShell, hub: number, up: readonly number[]): number {
  return [0, 1, 2].reduce(
    (sum, i) => sum + (shell.hubs[3 * hub + i] as number) * (up[i] as number),
    0,
  );
}

/** The hub around which five panels of one kind stand. */
function axisOf({ shell }: NetShell): number[] {
  for (let hub = 0; hub < shell.hubs.length / 3; hub++) {
    const around = [...Array(placeCount(shell)).keys()].filter((p) =>
      hubsOf(shell, p as PlaceId).includes(hub as never),
    );
    if (around.length === 5 && new Set(around.map((p) => shell.kind[p])).size === 1)
      return [0, 1, 2].map((i) => (shell.hubs[3 * hub + i] as number) / shell.radius);
  }
  throw new Error('no axis');
}

describe('kinds of which the lowest are not in the pile', () => {
  const answers = [1, 2, 3].map((seed) => {
    const pile = upperKinds(seed, -0.3);
    return { seed, ...pile, answer: identify({ kinds: pile.kinds, groups: [] }) };
  });
  const parts = answers.filter(({ answer }) => answer.shapes[0]?.closed === false);

  it('make a part with an open rim that closes around every hub inside it', () => {
    expect(parts.length).toBeGreaterThanOrEqual(2);
    for (const { answer, kinds } of parts) {
      const [part] = answer.shapes;
      if (!part) throw new Error('no part');
      expect(new Set(part.shell.kind).size).toBe(kinds.length);
      expect(checkShell(part.shell)).toMatchObject({ components: 1, insideOut: [] });
      expect(part.shell.mate.some((mate) => mate < 0)).toBe(true);
      expect(answer.settle.join()).toContain('open sides');
    }
  });

  it('of the true radius within four deviations, and never certain', () => {
    for (const { answer, net } of parts) {
      const [part] = answer.shapes;
      const off = Math.abs((part?.radius ?? 0) - net.shell.radius);
      expect(off).toBeLessThan(4 * (part?.radiusSd ?? 0));
      expect(part?.probability).toBeLessThan(0.9);
    }
  });
});
