// The envelope for a half-built shell, no clause of any code: beside the laws for a dome with what
// pressure its opening lets in, four more are reckoned and the worst of all counts.
//   open cup     all panels pushed outward where the mouth looks into the wind, else inward
//   curved wall  the same by half cylinders, on the upright part of each panel, more near free ends
//   ring wall    the near wall pushed in, the far wall pushed out; a closed ring shelters its far wall
//   open tank    pressure around a round tank, with the suction of its open top inside
// Wall values hold for upright walls; a panel takes the horizontal part of its normal of them.

import { acos } from '../../math/angle.ts';
import { pointAt } from '../../math/vector.ts';
import type { Shell } from '../../shell/shell.ts';
import { shelterFactor, wallPressure, wallZone } from '../en-1991-1-4/free-standing-wall.ts';
import { GB_CYLINDER, gbCylinder } from '../gb-50009/cylinder.ts';
import { gbWall } from '../gb-50009/wall.ts';
import { cupPressure, curvedWallPressure } from '../hoerner/open-cup.ts';
import { numberOf, type Override } from '../numbers.ts';
import type { PanelFaces } from '../panels.ts';
import { commonPractice, mergeSources, type Provenance, type Sourced } from '../provenance.ts';
import { looksAside, type Mouth } from './mouth.ts';

/** What the envelope is, said beside each of its results. */
const HALF_BUILT: Provenance = commonPractice(
  'half-built shell: envelope of open cup, curved wall, ring wall and open tank; no clause',
);

/** One law of the envelope, for a wind from `windFrom` (radians from the datum). */
export interface HalfBuiltLaw {
  readonly name: string;
  /** Net coefficient of every place, positive inward. */
  readonly coefficients: (windFrom: number) => Float64Array;
  readonly sources: readonly Provenance[];
}

/** What the laws are asked of. */
export interface HalfBuilt {
  readonly shell: Shell;
  readonly faces: PanelFaces;
  readonly mouth: Mouth;
  /** Of the standing part above the base, m. */
  readonly height: number;
  /** Of the shell, m. */
  readonly width: number;
}

/** The laws of the envelope. Without a mouth to a side only the ring wall and the open tank.
 * Source: S. F. Hoerner, Fluid-Dynamic Drag; EN 1991-1-4:2005, 7.4; GB 50009-2012, items 34 and 37;
 * the envelope is own. */
export function halfBuiltLaws(of: HalfBuilt, overrides: readonly Override[] = []): HalfBuiltLaw[] {
  const { faces, mouth } = of;
  const aside = looksAside(faces, mouth);
  const zones = aside ? zoneValues(of, overrides) : noEnds(of);
  const rest = [ringLaw(of, zones, aside, overrides), tankLaw(of, overrides)];
  return aside ? [cupLaw(of, overrides), curvedLaw(of, zones, overrides), ...rest] : rest;
}

/** A ring with no mouth to a side has no free ends. */
const noEnds = ({ faces }: HalfBuilt): Sourced<Float64Array> => ({
  value: new Float64Array(faces.size.length),
  sources: [],
});

/** Side-on to the wind within this part of its size a panel counts as near wall, a mouth as blown
 * into: both are the worse, and rounding must not choose. */
const SIDE_ON = 1e-9;

/** Whether a wind blows into the mouth rather than on its back. */
function blowsInto({ mouth }: HalfBuilt, windFrom: number): boolean {
  const [x, y] = mouth.area;
  const into = x * Math.cos(windFrom) + y * Math.sin(windFrom);
  return into >= -SIDE_ON * Math.hypot(x, y);
}

function cupLaw(of: HalfBuilt, overrides: readonly Override[]): HalfBuiltLaw {
  const [into, back] = [cupPressure(true, overrides), cupPressure(false, overrides)];
  const count = of.faces.size.length;
  return {
    name: 'open cup',
    coefficients: (windFrom) =>
      new Float64Array(count).fill((blowsInto(of, windFrom) ? into : back).value),
    sources: mergeSources([HALF_BUILT], into.sources, back.sources),
  };
}

function curvedLaw(
  of: HalfBuilt,
  zones: Sourced<Float64Array>,
  overrides: readonly Override[],
): HalfBuiltLaw {
  const [into, back] = [curvedWallPressure(true, overrides), curvedWallPressure(false, overrides)];
  return {
    name: 'curved wall',
    coefficients: (windFrom) => {
      const own = (blowsInto(of, windFrom) ? into : back).value;
      return zones.value.map(
        (zone, p) =>
          Math.sign(own) * Math.max(zone, Math.abs(own)) * (of.faces.upright[p] as number),
      );
    },
    sources: mergeSources([HALF_BUILT], into.sources, back.sources, zones.sources),
  };
}

function ringLaw(
  { faces, width, height }: HalfBuilt,
  zones: Sourced<Float64Array>,
  aside: boolean,
  overrides: readonly Override[],
): HalfBuiltLaw {
  const wall = gbWall(overrides);
  const far: Sourced = aside
    ? { value: 1, sources: [] }
    : shelterFactor(Math.min(1e5, width / height), overrides);
  return {
    name: 'ring wall',
    coefficients: (windFrom) => {
      const [c, s] = [Math.cos(windFrom), Math.sin(windFrom)];
      return zones.value.map((zone, p) => {
        const towards = (faces.area[3 * p] as number) * c + (faces.area[3 * p + 1] as number) * s;
        const own = Math.max(zone, wall.value) * (faces.upright[p] as number);
        return towards >= -SIDE_ON * (faces.size[p] as number) ? own : -own * far.value;
      });
    },
    sources: mergeSources([HALF_BUILT], wall.sources, far.sources, zones.sources),
  };
}

/** Tank values for upright walls on the horizontal part of each panel's normal, less the suction
 * inside, which acts on all of it. */
function tankLaw(
  { faces, width, height }: HalfBuilt,
  overrides: readonly Override[],
): HalfBuiltLaw {
  const inside = numberOf('openTopInternal', overrides);
  return {
    name: 'open tank',
    coefficients: (windFrom) => {
      const [c, s] = [Math.cos(windFrom), Math.sin(windFrom)];
      return faces.upright.map((upright, p) => {
        const across = upright * (faces.size[p] as number);
        if (!(across > 0)) return -inside.value;
        const towards = (faces.area[3 * p] as number) * c + (faces.area[3 * p + 1] as number) * s;
        return gbCylinder(acos(towards / across), height / width) * upright - inside.value;
      });
    },
    sources: mergeSources([HALF_BUILT, GB_CYLINDER], inside.sources),
  };
}

/** Value of the wall's zone at each place; 0 where it has no free end at its height. */
function zoneValues(of: HalfBuilt, overrides: readonly Override[]): Sourced<Float64Array> {
  const values = {
    A: wallPressure('A', overrides),
    B: wallPressure('B', overrides),
    C: wallPressure('C', overrides),
    D: wallPressure('D', overrides),
  };
  const fromEnd = distanceFromEnds(of);
  return {
    value: fromEnd.map((d) => (d === Infinity ? 0 : values[wallZone(d, of.height)].value)),
    sources: mergeSources(...Object.values(values).map((part) => part.sources)),
  };
}

/** A quarter of the side of an equilateral panel over the root of its area: about where the side
 * shared with the next panel of a course lies from its centre. */
const QUARTER_SIDE = 0.38;

/** Place → distance along the wall, m, from its centre to the near side of the nearest missing place
 * whose centre stands within the middle half of the panel's own height: its course ends there.
 * Infinity where none.
 * Source: geometry. */
export function distanceFromEnds({
  shell,
  faces,
  mouth,
}: Pick<HalfBuilt, 'shell' | 'faces' | 'mouth'>): Float64Array {
  const { centre } = faces;
  const azimuth = faces.size.map((_, p) =>
    Math.atan2(centre[3 * p + 1] as number, centre[3 * p] as number),
  );
  const reach = faces.size.map((size) => QUARTER_SIDE * Math.sqrt(size));
  return faces.size.map((_, p) => {
    const [bottom, top] = heightsOf(shell, p);
    const [low, high] = [0.75 * bottom + 0.25 * top, 0.25 * bottom + 0.75 * top];
    const [x, y] = pointAt(centre, p);
    const across = Math.sqrt(x * x + y * y);
    let nearest = Infinity;
    for (const q of mouth.missing) {
      const z = centre[3 * q + 2] as number;
      if (z < low || z > high) continue;
      const apart = Math.abs((azimuth[p] as number) - (azimuth[q] as number));
      const turn = Math.min(apart, 2 * Math.PI - apart);
      nearest = Math.min(nearest, Math.max(0, across * turn - (reach[q] as number)));
    }
    return nearest;
  });
}

function heightsOf(shell: Shell, place: number): [number, number] {
  let [low, high] = [Infinity, -Infinity];
  for (
    let i = shell.placeStart[place] as number;
    i < (shell.placeStart[place + 1] as number);
    i++
  ) {
    const z = shell.hubs[3 * (shell.sideHub[i] as number) + 2] as number;
    low = Math.min(low, z);
    high = Math.max(high, z);
  }
  return [low, high];
}
