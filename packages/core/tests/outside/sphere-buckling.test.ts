// Buckling of spheres under pressure. R. Zoelly, thesis, Zürich 1915 (classical pressure);
// NASA SP-8032, Buckling of Thin-Walled Doubly Curved Shells, 1969, eq. 4 (published knockdown for
// clamped caps; its worked figures as in the reference notes); D. T. Wright 1965 and K. P. Buchert
// 1965 (grids; factor from memory).

import { describe, expect, it } from 'vitest';
import { bucklingFactors } from '../../src/frame/buckling.ts';
import type { Beam, Element } from '../../src/frame/elements/element.ts';
import {
  capKnockdown,
  gridClassicalPressure,
  sphereClassicalPressure,
} from '../../src/frame/sphere-buckling.ts';
import { prepare, statics } from '../../src/frame/statics.ts';
import type { Structure } from '../../src/frame/structure.ts';
import { add, cross, normalize, pointAt } from '../../src/math/vector.ts';
import { vectorArea } from '../../src/shell/geometry.ts';
import type { PlaceId } from '../../src/shell/ids.ts';
import { placeCount } from '../../src/shell/shell.ts';
import { ballTruss } from '../frame/ball-truss.ts';
import { ball } from '../frame/fixtures.ts';

describe('the classical pressure of a sphere', () => {
  it('has the known coefficients', () => {
    expect(sphereClassicalPressure(1, 0.3, 1, 1)).toBeCloseTo(1.2104551, 6);
    expect(sphereClassicalPressure(1, 1 / 3, 1, 1)).toBeCloseTo(1.2247449, 7);
  });

  it('is cut down as the published example says', () => {
    const full = sphereClassicalPressure(68900e6, 0.33, 1, 40);
    expect(full / 1e6).toBeCloseTo(52.675102, 5);
    const part = capKnockdown(0.33, 1, 40, Math.PI / 2);
    expect(part).toBeCloseTo(0.15223224, 7);
    expect((full * part) / 1e6).toBeCloseTo(8.018849, 5);
    expect(() => capKnockdown(0.3, 1, 4, 0.1)).toThrow('the rule holds above 2');
  });
});

describe('a ball of stiff-jointed bars under pressure', () => {
  // Fine grid: tubes of radius of gyration L/20 between the hubs of a 4V ball.
  const shell = ball(4);
  const length = 0.3;
  const gyration = 0.015;
  const area = 1e-4;
  const inertia = area * gyration * gyration;
  const bars = ballTruss(shell, [...Array(placeCount(shell)).keys()], []);
  const beams: Element[] = bars.elements.map((element): Beam => {
    const [a, b] = element.nodes as readonly [number, number];
    const axisY = normalize(add(pointAt(shell.hubs, a), pointAt(shell.hubs, b)));
    const section = { area, iy: inertia, iz: inertia, torsion: 2 * inertia };
    return { kind: 'beam', nodes: [a, b], section, young: 2e11, shear: 7.7e10, axisY };
  });
  // Kept from turning by ties along the surface at the twelve hubs of five panels, which by symmetry move
  // only along the radius.
  const corners = new Int32Array(shell.hubs.length / 3);
  for (const hub of shell.sideHub) corners[hub]++;
  const fives = [...corners.keys()].filter((hub) => corners[hub] === 5);
  const anchors: number[] = [];
  const ties: Element[] = fives.flatMap((hub) => {
    const p = pointAt(shell.hubs, hub);
    const along = normalize(cross(p, [0.3, 0.5, -0.8]));
    return [along, cross(along, p)].map((direction): Element => {
      const far = corners.length + anchors.length / 3;
      anchors.push(...add(p, direction));
      return { kind: 'bar', nodes: [hub, far], area: 1, young: 1e8 };
    });
  });
  const structure: Structure = {
    nodes: Float64Array.of(...shell.hubs, ...anchors),
    elements: [...beams, ...ties],
    held: ties.map(({ nodes }) => ({ node: nodes[1] as number, directions: null })),
  };
  const load = new Float64Array(2 * structure.nodes.length);
  for (let p = 0; p < placeCount(shell); p++) {
    const face = vectorArea(shell, p as PlaceId);
    for (let s = 3 * p; s < 3 * p + 3; s++)
      for (let k = 0; k < 3; k++) load[6 * shell.sideHub[s] + k] -= face[k] / 3;
  }
  const prepared = prepare(structure);
  const found = statics(prepared, load);

  it('buckles within a fifth of the pressure of the equivalent sphere', () => {
    if (found.status !== 'stands') throw new Error(found.status);
    const { values, complete } = bucklingFactors(prepared, found, 3);
    expect(complete).toBe(true);
    const classical = gridClassicalPressure(2e11, area, gyration, length, 1);
    expect(values[0] / classical).toBeGreaterThan(0.8);
    expect(values[0] / classical).toBeLessThan(1.2);
  }, 120_000);
});
