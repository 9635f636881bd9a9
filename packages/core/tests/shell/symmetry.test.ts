import { describe, expect, it } from 'vitest';
import { compareLists } from '../../src/math/order.ts';
import { seededRandom } from '../../src/math/random.ts';
import { codeFrom } from '../../src/shell/canonical.ts';
import type { SideId } from '../../src/shell/ids.ts';
import {
  hubCount,
  hubsOf,
  makeShell,
  placeCount,
  type Shell,
  sideCount,
} from '../../src/shell/shell.ts';
import {
  hubOrbits,
  placeOrbits,
  type Symmetry,
  seamOrbits,
  symmetries,
} from '../../src/shell/symmetry.ts';
import {
  crownUp,
  cube,
  cutNear,
  domeOf,
  dualOf,
  icosahedral,
  lengthLabels,
  octahedral,
} from './fixtures.ts';

const count = (orbit: Int32Array): number => new Set(orbit).size;
const rotations = (net: ReturnType<typeof cube>): Symmetry[] =>
  symmetries(net.shell, lengthLabels(net));

describe('symmetries', () => {
  it.each([
    ['icosahedron', icosahedral(1, 0), 60, 60],
    ['four-step ball', icosahedral(4, 0), 60, 60],
    ['(2, 2) ball', icosahedral(2, 2), 60, 60],
    ['(2, 1) ball, which has a hand', icosahedral(2, 1), 60, 0],
    ['octahedral three-step ball', octahedral(3, 0), 24, 24],
    ['cube', cube(), 24, 24],
    ['dodecahedron', dualOf(icosahedral(1, 0)), 60, 60],
  ])('of the %s are %i', (_, net, turns, mirrors) => {
    const labels = lengthLabels(net);
    const group = symmetries(net.shell, labels, { mirrored: labels });
    expect(group.filter((g) => !g.reflected)).toHaveLength(turns);
    expect(group.filter((g) => g.reflected)).toHaveLength(mirrors);
  });

  it('keep labels, mates, hubs and places', () => {
    const net = icosahedral(2, 0);
    const { shell } = net;
    const labels = lengthLabels(net);
    for (const g of symmetries(shell, labels, { mirrored: labels })) {
      expect(new Set(g.sides).size).toBe(sideCount(shell));
      expect(new Set(g.hubs).size).toBe(hubCount(shell));
      expect(new Set(g.places).size).toBe(placeCount(shell));
      for (let s = 0; s < sideCount(shell); s++) {
        const image = g.sides[s] as number;
        expect(labels[image]).toBe(labels[s]);
        expect(shell.mate[image]).toBe(g.sides[shell.mate[s] as number]);
      }
    }
  });

  it('keep distances between hubs, mirror images too', () => {
    const net = icosahedral(3, 0);
    const { shell } = net;
    const labels = lengthLabels(net);
    const apart = (a: number, b: number): number =>
      Math.hypot(
        ...[0, 1, 2].map((i) => (shell.hubs[3 * a + i] ?? 0) - (shell.hubs[3 * b + i] ?? 0)),
      );
    for (const g of symmetries(shell, labels, { mirrored: labels }))
      for (let h = 0; h < hubCount(shell); h += 5)
        expect(apart(g.hubs[h] as number, g.hubs[0] as number)).toBeCloseTo(apart(h, 0), 9);
  });

  it('have one orbit of hubs, seams and places on the icosahedron', () => {
    const net = icosahedral(1, 0);
    const group = rotations(net);
    expect(count(hubOrbits(net.shell, group))).toBe(1);
    expect(count(seamOrbits(net.shell, group))).toBe(1);
    expect(count(placeOrbits(net.shell, group))).toBe(1);
  });

  it('have four orbits of hubs, eight of seams and six of places on the four-step ball', () => {
    // 162 hubs = 12 + 30 + 60 + 60; 480 seams = 8 × 60; 320 places = 20 + 5 × 60.
    const net = icosahedral(4, 0);
    const group = rotations(net);
    expect(count(hubOrbits(net.shell, group))).toBe(4);
    expect(count(seamOrbits(net.shell, group))).toBe(8);
    expect(count(placeOrbits(net.shell, group))).toBe(6);
  });

  it('fall to five turns on a dome with a five-fold crown', () => {
    const net = icosahedral(4, 0);
    const whole = crownUp(net.shell);
    const dome = domeOf(whole, cutNear(whole, 0));
    const labels = lengthLabels({ shell: dome, kinds: net.kinds });
    expect(symmetries(dome, labels)).toHaveLength(5);
    expect(symmetries(dome, labels, { mirrored: labels })).toHaveLength(10);
  });

  it('fall to the identity when one side bears a label of its own', () => {
    const net = icosahedral(2, 0);
    const labels = lengthLabels(net);
    labels[7] = 99;
    expect(symmetries(net.shell, labels)).toHaveLength(1);
  });

  it('agree with codes: two sides have one code exactly where a rotation joins them', () => {
    const net = icosahedral(2, 1);
    const labels = lengthLabels(net);
    const group = rotations(net);
    const orbit = (s: number): number => Math.min(...group.map((g) => g.sides[s] as number));
    const first = codeFrom(net.shell, labels, 0 as SideId);
    for (let s = 0; s < sideCount(net.shell); s++) {
      const same = compareLists(codeFrom(net.shell, labels, s as SideId), first) === 0;
      expect(same).toBe(orbit(s) === orbit(0));
    }
  });

  it('and codes do not depend on how hubs and places are numbered (seed 5)', () => {
    const net = icosahedral(2, 1);
    const shuffled = renumbered(net.shell, 5);
    const codes = (shell: Shell): string[] => {
      const labels = lengthLabels({ shell, kinds: net.kinds });
      return [...Array(sideCount(shell)).keys()]
        .map((s) => codeFrom(shell, labels, s as SideId).join())
        .sort();
    };
    expect(codes(shuffled)).toEqual(codes(net.shell));
  });

  it('throw for a shell in two pieces', () => {
    const { shell } = cube();
    const two = makeShell({
      radius: 1,
      hubs: shell.hubs,
      places: [0, 1].map((p) => ({ hubs: hubsOf(shell, p as never), kind: 0, turn: 0 })),
    });
    expect(() => symmetries(two, new Int32Array(8))).toThrow('one piece');
  });

  it('of 1280 places are found in well under a second', () => {
    const net = icosahedral(8, 0);
    const labels = lengthLabels(net);
    symmetries(net.shell, labels);
    const start = performance.now();
    expect(symmetries(net.shell, labels)).toHaveLength(60);
    expect(performance.now() - start).toBeLessThan(500);
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
