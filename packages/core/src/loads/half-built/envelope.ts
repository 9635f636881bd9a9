// The envelope for a half-built shell, no clause of any code: beside the laws for a dome with what
// pressure its opening lets in, four more are reckoned and the worst of all counts.
//   cup          all panels pushed outward where the mouth looks into the wind, else inward
//   curved wall  the same by half cylinders, on the upright part of each panel, more near free ends
//   ring wall    the near wall pushed in, the far wall pushed out, neither sheltering the other
//   open tank    pressure around a round tank, with the suction of its open top inside
// Wall values hold for upright walls; a panel takes the horizontal part of its normal of them.

import { acos } from '../../math/angle.ts';
import { norm, pointAt } from '../../math/vector.ts';
import type { Shell } from '../../shell/shell.ts';
import { wallPressure, wallZone } from '../en-1991-1-4/free-standing-wall.ts';
import { GB_CYLINDER, gbCylinder } from '../gb-50009/cylinder.ts';
import { gbWall } from '../gb-50009/wall.ts';
import { cupPressure, curvedWallPressure } from '../hoerner/open-cup.ts';
import { numberOf, type Override } from '../numbers.ts';
import type { PanelFaces } from '../panels.ts';
import { commonPractice, type Provenance, type Sourced, withSources } from '../provenance.ts';
import { looksAside, type Mouth } from './mouth.ts';

/** What the envelope is, said beside each of its results. */
export const HALF_BUILT: Provenance = commonPractice(
  'half-built shell: envelope of open cup, curved wall, unsheltered ring wall and open tank; no clause',
);

/** One law of the envelope: net coefficient of every place, positive inward. */
export interface HalfBuiltLaw {
  readonly name: string;
  readonly coefficient: Sourced<Float64Array>;
}

/** The laws for a wind from `windFrom`. Without a mouth to a side only the ring wall and the open
 * tank. `height` is that of the standing part, `width` the shell's, m.
 * Source: S. F. Hoerner, Fluid-Dynamic Drag; EN 1991-1-4:2005, 7.4.1; GB 50009-2012, items 34
 * and 37; the envelope is own. */
export function halfBuiltLaws(
  faces: PanelFaces,
  mouth: Mouth,
  fromEnd: Float64Array,
  { height, width }: { readonly height: number; readonly width: number },
  windFrom: number,
  overrides: readonly Override[] = [],
): HalfBuiltLaw[] {
  const [c, s] = [Math.cos(windFrom), Math.sin(windFrom)];
  const into = mouth.area[0] * c + mouth.area[1] * s > 0;
  const ring = gbWall(overrides);
  const zones = zoneValues(fromEnd, height, overrides);
  const walls = (value: (place: number) => number): Float64Array =>
    zones.value.map((zone, p) => {
      const [x, y, z] = pointAt(faces.area, p);
      const own = value(p);
      const upright = Math.hypot(x, y) / Math.hypot(x, y, z);
      return Math.sign(own) * Math.max(zone, Math.abs(own)) * upright;
    });
  const facing = (p: number): number =>
    (faces.area[3 * p] as number) * c + (faces.area[3 * p + 1] as number) * s;
  const ringLaw = told(
    'ring wall',
    walls((p) => (facing(p) >= 0 ? 1 : -1) * ring.value),
    [ring, zones],
  );
  const tank = tankLaw(faces, height / width, [c, s], overrides);
  if (!looksAside(faces, mouth)) return [ringLaw, tank];
  const cup = cupPressure(into, overrides);
  const curved = curvedWallPressure(into, overrides);
  const side = into ? 'mouth to the wind' : 'back to the wind';
  return [
    told(`open cup, ${side}`, new Float64Array(fromEnd.length).fill(cup.value), [cup]),
    told(
      `curved wall, ${side}`,
      walls(() => curved.value),
      [curved, zones],
    ),
    ringLaw,
    tank,
  ];
}

/** Tank values for upright walls on the horizontal part of each panel's normal, less the suction
 * inside, which acts on all of it. */
function tankLaw(
  faces: PanelFaces,
  heightOverWidth: number,
  [c, s]: readonly [number, number],
  overrides: readonly Override[],
): HalfBuiltLaw {
  const inside = numberOf('openTopInternal', overrides);
  const value = Float64Array.from({ length: faces.area.length / 3 }, (_, p) => {
    const [x, y, z] = pointAt(faces.area, p);
    const across = Math.hypot(x, y);
    const outside = across > 0 ? gbCylinder(acos((x * c + y * s) / across), heightOverWidth) : 0;
    return (outside * across) / Math.hypot(across, z) - inside.value;
  });
  return told('open tank', value, [{ value: 0, sources: [GB_CYLINDER] }, inside]);
}

const told = (
  name: string,
  value: Float64Array,
  parts: readonly Sourced<unknown>[],
): HalfBuiltLaw => ({
  name,
  coefficient: withSources(
    { value, sources: [HALF_BUILT] },
    ...parts.flatMap((part) => part.sources),
  ),
});

/** Value of the wall's zone at each place; 0 where it has no free end at its height. */
function zoneValues(
  fromEnd: Float64Array,
  height: number,
  overrides: readonly Override[],
): Sourced<Float64Array> {
  const values = {
    A: wallPressure('A', overrides),
    B: wallPressure('B', overrides),
    C: wallPressure('C', overrides),
    D: wallPressure('D', overrides),
  };
  return withSources(
    {
      value: fromEnd.map((d) => (d === Infinity ? 0 : values[wallZone(d, height)].value)),
      sources: [],
    },
    ...Object.values(values).flatMap((part) => part.sources),
  );
}

/** A quarter of the side of an equilateral panel over the root of its area: about where the side
 * shared with the next panel of a course lies from its centre. */
const QUARTER_SIDE = 0.38;

/** Place → distance along the wall, m, from its centre to the near side of the nearest missing place
 * whose centre stands within the heights of the panel's own hubs: its course ends there. Infinity
 * where none.
 * Source: geometry. */
export function distanceFromEnds(shell: Shell, faces: PanelFaces, mouth: Mouth): Float64Array {
  const count = faces.sampleStart.length - 1;
  const found = new Float64Array(count).fill(Infinity);
  for (let p = 0; p < count; p++) {
    const [low, high] = heightsOf(shell, p);
    const [x, y] = pointAt(faces.centre, p);
    const across = Math.hypot(x, y);
    for (const q of mouth.missing) {
      const [qx, qy, qz] = pointAt(faces.centre, q);
      if (qz < low || qz > high) continue;
      const turn = Math.abs(Math.atan2(x * qy - y * qx, x * qx + y * qy));
      const reach = QUARTER_SIDE * Math.sqrt(norm(pointAt(faces.area, q)));
      found[p] = Math.min(found[p] as number, Math.max(0, across * turn - reach));
    }
  }
  return found;
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
