import { describe, expect, it } from 'vitest';
import { familiesOf } from '../../src/arrange/families.ts';
import { type WaysUp, waysUpOf } from '../../src/arrange/ways-up.ts';
import { seededRandom } from '../../src/math/random.ts';
import type { NetShell } from '../../src/nets/kinds.ts';
import {
  hubCount,
  hubsOf,
  makeShell,
  placeCount,
  type Shell,
  seamCount,
} from '../../src/shell/shell.ts';
import { cube, icosahedral, octahedral, pileKinds } from '../shell/fixtures.ts';

const ways = (net: NetShell, shell: Shell = net.shell): WaysUp => {
  const kinds = pileKinds(net);
  return waysUpOf(shell, kinds, familiesOf(kinds));
};
const count = ({ waysUp }: WaysUp): number[] =>
  (['hub', 'place', 'seam'] as const).map((at) => waysUp.filter((way) => way.at === at).length);

describe('ways up', () => {
  it.each([
    ['icosahedron', icosahedral(1, 0), [1, 1, 1]],
    ['two-step ball', icosahedral(2, 0), [2, 2, 2]],
    ['three-step ball', icosahedral(3, 0), [3, 3, 5]],
    ['four-step ball', icosahedral(4, 0), [4, 6, 8]],
    ['octahedron', octahedral(1, 0), [1, 1, 1]],
    ['cube', cube(), [1, 1, 1]],
  ])('of the %s are one for each orbit of hubs, places and seams', (_, net, expected) => {
    expect(count(ways(net))).toEqual(expected);
  });

  it('stand for every hub, place and seam together', () => {
    const net = icosahedral(2, 1);
    const { waysUp } = ways(net);
    const alike = (at: string): number =>
      waysUp.filter((way) => way.at === at).reduce((sum, way) => sum + way.alike, 0);
    expect(alike('hub')).toBe(hubCount(net.shell));
    expect(alike('place')).toBe(placeCount(net.shell));
    expect(alike('seam')).toBe(seamCount(net.shell));
  });

  it('are named by the kinds at the crown', () => {
    const { waysUp } = ways(icosahedral(2, 0));
    expect(waysUp[0]).toMatchObject({
      at: 'hub',
      kinds: ['1', '1', '1', '1', '1'],
      orbit: 0,
      alike: 12,
    });
    expect(waysUp.find((way) => way.at === 'place')).toMatchObject({ kinds: ['1'], alike: 60 });
    expect(waysUp.filter((way) => way.at === 'seam').map((way) => way.kinds)).toEqual([
      ['1', '1'],
      ['1', '2'],
    ]);
  });

  it('have a mirror image in the list where the net is its own mirror image', () => {
    const { waysUp, mirrored } = ways(icosahedral(4, 0));
    expect(mirrored).toBe(true);
    waysUp.forEach((way, i) => {
      expect(waysUp[way.mirror as number]?.mirror).toBe(i);
      expect(waysUp[way.mirror as number]?.alike).toBe(way.alike);
    });
    const left = waysUp.findIndex((way) => way.at === 'place' && way.kinds[0]?.endsWith('L'));
    expect(waysUp[waysUp[left]?.mirror as number]?.kinds[0]).toMatch(/R$/);
    const handed = ways(icosahedral(2, 1));
    expect(handed.mirrored).toBe(false);
    expect(handed.waysUp.every((way) => way.mirror === null)).toBe(true);
  });

  it('keep names, order and sizes when hubs and places are numbered anew (seeds 1 to 3)', () => {
    for (const net of [icosahedral(2, 1), icosahedral(4, 0), octahedral(3, 0)])
      for (const seed of [1, 2, 3]) {
        const told = (w: WaysUp): unknown =>
          w.waysUp.map(({ at, kinds, orbit, alike, mirror }) => ({
            at,
            kinds,
            orbit,
            alike,
            mirror,
          }));
        expect(told(ways(net, renumbered(net.shell, seed)))).toEqual(told(ways(net)));
      }
  });
});

function renumbered(shell: Shell, seed: number): Shell {
  const random = seededRandom(seed);
  const hubs = random.shuffle([...Array(hubCount(shell)).keys()]);
  const places = random.shuffle([...Array(placeCount(shell)).keys()]);
  const newHub = new Map(hubs.map((old, i) => [old, i]));
  return makeShell({
    radius: shell.radius,
    hubs: Float64Array.from(hubs.flatMap((h) => [...shell.hubs.subarray(3 * h, 3 * h + 3)])),
    places: places.map((p) => ({
      hubs: hubsOf(shell, p as never).map((h) => newHub.get(h) as number),
      kind: shell.kind[p] as number,
      turn: shell.turn[p] as number,
    })),
  });
}
