import { describe, expect, it } from 'vitest';
import { angularDefects, cornerAngles, dihedralAngles } from '../../src/shell/angles.ts';
import { crownUp, cube, cutNear, domeOf, dualOf, icosahedral } from './fixtures.ts';

const sum = (values: Float64Array): number => values.reduce((total, v) => total + v, 0);

describe('angles', () => {
  it('between faces of the cube, the icosahedron and the dodecahedron are those of the solids', () => {
    for (const angle of dihedralAngles(cube().shell)) expect(angle).toBeCloseTo(Math.PI / 2, 12);
    const ico = Math.acos(-Math.sqrt(5) / 3);
    for (const angle of dihedralAngles(icosahedral(1, 0).shell)) expect(angle).toBeCloseTo(ico, 12);
    const dodeca = Math.acos(-1 / Math.sqrt(5));
    for (const angle of dihedralAngles(dualOf(icosahedral(1, 0)).shell))
      expect(angle).toBeCloseTo(dodeca, 12);
  });

  it('at the corners of a flat panel sum to (n − 2) π', () => {
    expect(sum(cornerAngles(cube().shell))).toBeCloseTo(6 * 2 * Math.PI, 12);
    expect(sum(cornerAngles(icosahedral(3, 1).shell))).toBeCloseTo(260 * Math.PI, 9);
  });

  it('that are missing at the hubs sum to 4π over a ball (Descartes)', () => {
    expect(sum(angularDefects(icosahedral(2, 1).shell))).toBeCloseTo(4 * Math.PI, 11);
    for (const defect of angularDefects(cube().shell)) expect(defect).toBeCloseTo(Math.PI / 2, 12);
  });

  it('that are missing at the hubs sum to 2π over a dome with its rim (Gauss–Bonnet)', () => {
    const whole = crownUp(icosahedral(3, 0).shell);
    const dome = domeOf(whole, cutNear(whole, 0.18));
    expect(sum(angularDefects(dome))).toBeCloseTo(2 * Math.PI, 11);
  });
});
