// The plane that cut the lowest panels: found at its height whatever is up, its deviation as large as
// its errors are, and not found where a stranger only looks cut.

import { expect, test } from 'vitest';
import { identify } from '../../src/identify/identify.ts';
import type { Shape } from '../../src/identify/shape.ts';
import { seededRandom } from '../../src/math/random.ts';
import { distance } from '../../src/math/vector.ts';
import { shellOfNet } from '../../src/nets/kinds.ts';
import { namedNet } from '../../src/nets/named.ts';
import { placeCount } from '../../src/shell/shell.ts';
import { type Field, onTheGround, wayUp } from './on-the-ground.ts';
import { kindWith, readKinds, truthOf } from './piles.ts';

const nets = [
  [2, 1],
  [3, 0],
  [3, 1],
  [2, 2],
] as const;
const ways = ['hub', 'seam', 'place'] as const;

interface Heap extends Field {
  readonly radius: number;
  readonly height: number;
}

/** A ball of 2 to 6 m, what is up going through `way`, cut at any height that leaves no slivers and not
 * more than 22 sorts of cut panels; readings off by 0.5 or 1 mm. */
function heap(seed: number, way: (typeof ways)[number]): Heap {
  const random = seededRandom(seed);
  const sd = seed % 2 === 0 ? 0.001 : 0.0005;
  for (let tries = 0; tries < 500; tries++) {
    const [b, c] = nets[random.below(nets.length)] as (typeof nets)[number];
    const radius = 2 + 4 * random.uniform();
    const named = namedNet({ solid: 'icosahedron', b, c, division: 'equal chords' });
    const net = shellOfNet(named, radius);
    const up = wayUp(net.shell, way, random.below(placeCount(net.shell)));
    const height = radius * (0.3 - 0.9 * random.uniform());
    const field = onTheGround(net, up, height, sd, seed);
    if (field.shortest > 0.07 && field.cut.size <= 22) return { ...field, radius, height };
  }
  throw new Error('no plane without slivers');
}

function standing(kinds: Field['kinds']): Shape {
  const [best] = identify({ kinds, groups: [] }).shapes.filter(({ cut }) => cut);
  expect(best?.cut).toBeTruthy();
  return best as Shape;
}

test.each(ways.flatMap((way) => [1, 3, 4, 5].map((seed) => [way, seed] as const)))(
  'the plane is found and every cut kind named, up through a %s, seed %i',
  (way, seed) => {
    const { kinds, cut, height, baseRadius } = heap(seed, way);
    const shape = standing(kinds);
    const told = shape.explained.filter((one) => one.as === 'cut');
    expect(new Set(told.map(({ kind }) => kind))).toEqual(new Set(cut.keys()));
    const off = Math.abs((shape.cut?.height ?? 0) - height);
    expect(off).toBeLessThan(4 * (shape.cut?.heightSd ?? 0));
    expect(10 * 4 * (shape.cut?.heightSd ?? 1)).toBeLessThan(0.05);
    expect(Math.abs((shape.cut?.baseRadius ?? 0) - baseRadius)).toBeLessThan(0.004);
  },
);

test('the errors of its height are as large as its deviation says, seeds 21 to 50', () => {
  const z = Array.from({ length: 30 }, (_, i) => {
    const { kinds, height } = heap(21 + i, ways[i % 3] as (typeof ways)[number]);
    const { cut } = standing(kinds);
    return ((cut?.height ?? 0) - height) / (cut?.heightSd ?? 1);
  });
  const rms = Math.sqrt(z.reduce((sum, x) => sum + x * x, 0) / z.length);
  expect(rms).toBeGreaterThan(0.6);
  expect(rms).toBeLessThan(1.4);
});

/** One kind's corner cut off anywhere: it fits the ball, but no plane that cuts nothing else. */
test.each([1, 2, 3, 4, 5, 6])(
  'a lone panel that only looks cut is not called so, seed %i',
  (seed) => {
    const truth = truthOf(3, 1);
    const random = seededRandom(seed);
    const [a, b, c] = (truth.kinds[seed % 5]?.sides ?? []) as [number, number, number];
    const cosine = (a * a + c * c - b * b) / (2 * a * c);
    const [p, q] = [a * (0.2 + 0.6 * random.uniform()), c * (0.2 + 0.6 * random.uniform())];
    const opposite = distance([p, 0, 0], [q * cosine, q * Math.sqrt(1 - cosine ** 2), 0]);
    const kinds = [...readKinds(truth, 0.0007, seed), kindWith('odd', [p, opposite, q], 0.0007)];
    const { shapes } = identify({ kinds, groups: [] });
    expect(shapes[0]?.strangers).toEqual(['odd']);
    expect(shapes.map(({ cut }) => cut)).toEqual(shapes.map(() => null));
  },
);
