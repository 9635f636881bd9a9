import { describe, expect, it } from 'vitest';
import { hubPoint, placeNormal } from '../../src/shell/geometry.ts';
import type { HubId, PlaceId, SeamId } from '../../src/shell/ids.ts';
import { crownAtHub, crownAtPlace, crownAtSeam, orientShell } from '../../src/shell/orient.ts';
import { hubCount, type Shell } from '../../src/shell/shell.ts';
import { icosahedral } from './fixtures.ts';

const { shell } = icosahedral(2, 1);
const apart = (s: Shell, a: number, b: number): number =>
  Math.hypot(...hubPoint(s, a as HubId).map((x, i) => x - (hubPoint(s, b as HubId)[i] as number)));

describe('orientShell', () => {
  it('puts a hub at the crown and the side that names it towards the datum', () => {
    const up = orientShell(shell, crownAtHub(shell, 17 as HubId));
    expect(hubPoint(up, 17 as HubId)[2]).toBeCloseTo(1, 12);
    const side = shell.sideHub.indexOf(17);
    const end = shell.sideHub[side % 3 === 2 ? side - 2 : side + 1] as HubId;
    expect(hubPoint(up, end)[1]).toBeCloseTo(0, 12);
    expect(hubPoint(up, end)[0]).toBeGreaterThan(0);
  });

  it('puts the middle of a seam at the crown, the seam along the datum', () => {
    const up = orientShell(shell, crownAtSeam(shell, 30 as SeamId));
    const side = shell.seams[60] as number;
    const from = hubPoint(up, shell.sideHub[side] as HubId);
    const to = hubPoint(up, shell.sideHub[side % 3 === 2 ? side - 2 : side + 1] as HubId);
    expect(from[0]).toBeCloseTo(-to[0], 12);
    expect(to[0]).toBeGreaterThan(0);
    expect(from[1]).toBeCloseTo(0, 12);
    expect(to[2]).toBeCloseTo(from[2], 12);
  });

  it('lays a place level at the crown', () => {
    const up = orientShell(shell, crownAtPlace(shell, 55 as PlaceId));
    expect(placeNormal(up, 55 as PlaceId)[2]).toBeCloseTo(1, 12);
  });

  it('moves the datum anticlockwise seen from above by datumTurn', () => {
    const plain = orientShell(shell, crownAtHub(shell, 3 as HubId));
    const turned = orientShell(shell, crownAtHub(shell, 3 as HubId), 0.3);
    const azimuth = (s: Shell): number => Math.atan2(s.hubs[31] as number, s.hubs[30] as number);
    const step = azimuth(plain) - azimuth(turned);
    expect(Math.cos(step)).toBeCloseTo(Math.cos(0.3), 12);
    expect(Math.sin(step)).toBeCloseTo(Math.sin(0.3), 12);
  });

  it('keeps every distance and the hand of the shell', () => {
    const up = orientShell(shell, crownAtPlace(shell, 9 as PlaceId), 1);
    for (let h = 1; h < hubCount(shell); h++)
      expect(apart(up, h, 0)).toBeCloseTo(apart(shell, h, 0), 12);
    for (const [p] of [[0], [40]])
      expect(
        placeNormal(up, p as PlaceId).reduce(
          (sum, x, i) =>
            sum + x * (hubPoint(up, up.sideHub[3 * (p as number)] as HubId)[i] as number),
          0,
        ),
      ).toBeGreaterThan(0);
  });

  it('throws for a hub without a place', () => {
    const loose = { ...shell, hubs: Float64Array.from([...shell.hubs, 0, 0, 1]) };
    expect(() => crownAtHub(loose, hubCount(shell) as HubId)).toThrow('no place');
  });
});

it('a datum turn that is no number is refused', () => {
  const { shell } = icosahedral(1, 0);
  expect(() => orientShell(shell, crownAtHub(shell, 0 as HubId), Number.NaN)).toThrow(
    'datumTurn is NaN, expected a finite number',
  );
});
