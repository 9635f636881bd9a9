// The shells that hard piles come from: named nets of the three solids, nets moved off every rule,
// nets of a single axis, and flat panels of many sides; radius 2 to 6 m.

import type { Random } from '../../src/math/random.ts';
import { distance, pointAt, rotateAbout, type Vec3 } from '../../src/math/vector.ts';
import { type NetShell, shellOfNet } from '../../src/nets/kinds.ts';
import { type MixedNetName, mixedNet } from '../../src/nets/mixed.ts';
import { movedNet } from '../../src/nets/moved.ts';
import { namedNet, placesPerFace } from '../../src/nets/named.ts';
import type { Net } from '../../src/nets/net.ts';
import type { SolidName } from '../../src/nets/solid.ts';

/** A shell with what it is called. */
export interface Base {
  readonly name: string;
  readonly net: NetShell;
  readonly radius: number;
  /** Deviation of one reading, metres: 0.5 to 1.5 mm at a radius of 2.7 m, in proportion. */
  readonly sd: number;
}

/** Which bases a case takes. */
export interface BaseWish {
  readonly solids?: readonly SolidName[];
  readonly least?: number;
  readonly most: number;
  /** Share of them moved off every rule; 0.3 unless told. */
  readonly moved?: number;
  /** Only nets that can't be turned by a half: no twins. */
  readonly plain?: boolean;
  /** False where a net must stand as its name says. */
  readonly turned?: boolean;
}

const faces: Record<SolidName, number> = { icosahedron: 20, octahedron: 8, tetrahedron: 4 };

/** Nets whose halves can be turned against each other by a step, or that have other twins. */
const twinned = new Set(['2,0', '4,0', '6,0', '8,0', '3,3']);

/** A base at random. */
export function randomBase(random: Random, wish: BaseWish): Base {
  const choices = namesOf(wish);
  const [solid, b, c] = choices[random.below(choices.length)] as (typeof choices)[number];
  const named = namedNet({ solid, b, c, division: 'equal chords' });
  const moved = random.uniform() < (wish.moved ?? 0.3) && b + c > 2;
  const fraction = 0.01 + 0.05 * random.uniform();
  const net = moved ? movedNet(named, { solid, fraction, random }) : named;
  const name = `${solid} (${b}, ${c})${moved ? ` moved ${(100 * fraction).toFixed(1)} %` : ''}`;
  if (moved || wish.turned === false || !twinned.has(`${b},${c}`)) return baseOf(name, net, random);
  return twinBase(name, net, random);
}

/** A net that sides can't tell from its twin: one of the two, by chance. */
export function twinBase(name: string, net: Net, random: Random): Base {
  const twin = random.uniform() < 0.5 ? halfTurned(net) : null;
  return baseOf(twin ? `${name}, half turned` : name, twin ?? net, random);
}

/** The net with all below the equator turned by a step of 36° or 45°; null where the equator is no
 * run of sides that comes onto itself so. */
export function halfTurned({ hubs, places }: Net): Net | null {
  const count = hubs.length / 3;
  const all = Array.from({ length: count }, (_, h) => pointAt(hubs, h));
  const onEquator = all.map((p) => Math.abs(p[2]) < 1e-9);
  if (places.some((place) => crosses(place.map((h) => (onEquator[h] ? 0 : (all[h] as Vec3)[2])))))
    return null;
  for (const step of [Math.PI / 5, Math.PI / 4]) {
    const image = all.map((p) => rotateAbout(p, [0, 0, 1], step));
    const onto = image.map((p, h) => (onEquator[h] ? nearest(hubs, p) : h));
    const fits = image.every(
      (p, h) => !onEquator[h] || distance(p, all[onto[h] as number] as Vec3) < 1e-9,
    );
    if (!fits || !onEquator.includes(true)) continue;
    const turned = image.flatMap((p, h) =>
      (all[h] as Vec3)[2] < -1e-9 ? [...p] : [...(all[h] as Vec3)],
    );
    const below = (place: readonly number[]): boolean =>
      place.some((h) => (all[h] as Vec3)[2] < -1e-9);
    return {
      hubs: Float64Array.from(turned),
      places: places.map((place) => (below(place) ? place.map((h) => onto[h] as number) : place)),
    };
  }
  return null;
}

const crosses = (heights: readonly number[]): boolean =>
  heights.some((z) => z > 0) && heights.some((z) => z < 0);

/** A mixed net at random. */
export function mixedBase(random: Random, names: readonly MixedNetName[]): Base {
  const name = names[random.below(names.length)] as MixedNetName;
  return baseOf(name, mixedNet(name), random);
}

/** A net as a base: its radius and the noise of its readings at random. */
export function baseOf(name: string, net: Net, random: Random): Base {
  const radius = 2 + 4 * random.uniform();
  const noise = 0.0005 + 0.001 * random.uniform();
  return { name, net: shellOfNet(net, radius), radius, sd: (noise * radius) / 2.7 };
}

/** (b, c) of every solid asked for, within the number of places. */
function namesOf({ solids = ['icosahedron'], least = 20, most, plain = false }: BaseWish) {
  const found: [SolidName, number, number][] = [];
  for (const solid of solids)
    for (let b = 1; b <= 9; b++)
      for (let c = 0; c <= b; c++) {
        const places = faces[solid] * placesPerFace(b, c);
        if (places < least || places > most) continue;
        if (plain && twinned.has(`${b},${c}`)) continue;
        found.push([solid, b, c]);
      }
  return found;
}

/** The net with its hubs moved by up to `fraction` of a side, alike under the five turns about the
 * zenith alone; `net` has a fivefold axis there. */
export function onlyFivefold(net: Net, fraction: number, random: Random): Net {
  const side = distance(
    pointAt(net.hubs, net.places[0]?.[0] as number),
    pointAt(net.hubs, net.places[0]?.[1] as number),
  );
  const hubs = Float64Array.from(net.hubs);
  const done = new Set<number>();
  for (let h = 0; h < hubs.length / 3; h++) {
    const home = pointAt(net.hubs, h);
    if (done.has(h) || Math.hypot(home[0], home[1]) < 1e-9) continue;
    const axis: Vec3 = [random.normal(), random.normal(), random.normal()];
    const length = Math.hypot(...axis);
    const by = fraction * side * random.uniform();
    const moved = rotateAbout(home, axis.map((x) => x / length) as unknown as Vec3, by);
    for (let k = 0; k < 5; k++) {
      const turn = (point: Vec3): Vec3 => rotateAbout(point, [0, 0, 1], (2 * Math.PI * k) / 5);
      const hub = nearest(net.hubs, turn(home));
      hubs.set(turn(moved), 3 * hub);
      done.add(hub);
    }
  }
  return { hubs, places: net.places };
}

function nearest(hubs: Float64Array, point: Vec3): number {
  let best = 0;
  for (let h = 1; h < hubs.length / 3; h++)
    if (distance(pointAt(hubs, h), point) < distance(pointAt(hubs, best), point)) best = h;
  return best;
}
