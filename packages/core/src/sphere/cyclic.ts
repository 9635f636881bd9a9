// The plane polygon with given sides whose corners lie on one circle. Sides in any one unit,
// angles in radians. With θᵢ the half angle of side i seen from the circle's centre,
// sin θᵢ = aᵢ / 2ρ and Σ θᵢ = π; the longest side's θ exceeds π/2 when the centre lies beyond it.
// Triangles in closed form (area after W. Kahan, "Miscalculating area and angles of a needle-like
// triangle", from memory); others by Newton from the side on which it cannot overshoot.

import { asin } from '../math/angle.ts';

/** Why sides make no polygon with its corners on a sphere. Sides count from 0. */
export type PolygonFault =
  | { readonly reason: 'too few sides'; readonly found: number }
  | { readonly reason: 'no length'; readonly side: number; readonly found: number }
  /** `by`: how much the side exceeds all others together; 0 where they just lie flat along it. */
  | { readonly reason: 'side too long'; readonly side: number; readonly by: number }
  | { readonly reason: 'no radius'; readonly found: number }
  /** `by`: circumradius less the sphere's radius; `side` is the longest. */
  | { readonly reason: 'larger than the sphere'; readonly side: number; readonly by: number };

/** A polygon in its circle. */
export interface CyclicPolygon {
  readonly ok: true;
  readonly circumradius: number;
  /** Half the angle of each side seen from the circle's centre; together π. */
  readonly halfAngles: readonly number[];
  /** Index of the longest side, the first of equals. */
  readonly longest: number;
  /** True where the circle's centre lies inside or on the polygon. */
  readonly centreInside: boolean;
}

/** A polygon that can't be made, with the reason. */
export interface NoPolygon {
  readonly ok: false;
  readonly why: PolygonFault;
}

/**
 * The polygon with these sides and all corners on one circle. It exists and is unique when the
 * longest side is shorter than the others together; radius and area don't depend on the order.
 */
export function cyclicPolygon(sides: readonly number[]): CyclicPolygon | NoPolygon {
  const why = faultOfSides(sides);
  if (why) return { ok: false, why };
  const longest = longestSide(sides);
  const long = sides[longest] as number;
  const psi = sides.length === 3 ? oppositeAngle(sides, longest) : longestHalfAngle(sides, longest);
  const circumradius = long / (2 * Math.sin(psi));
  const halfAngles = sides.map((side) => asin(side / (2 * circumradius)));
  halfAngles[longest] = psi;
  return { ok: true, circumradius, halfAngles, longest, centreInside: psi <= Math.PI / 2 };
}

/** Radius of the circle through all corners of the polygon with these sides, in their unit, or
 * null where there is no such polygon. */
export function circumradius(sides: readonly number[]): number | null {
  const polygon = cyclicPolygon(sides);
  return polygon.ok ? polygon.circumradius : null;
}

/** A fault of a polygon as a sentence; lengths in metres, sides named from 1. */
export function describePolygonFault(why: PolygonFault): string {
  switch (why.reason) {
    case 'too few sides':
      return `${why.found} sides, expected at least 3`;
    case 'no length':
      return `side ${why.side + 1} is ${why.found}, expected a positive length`;
    case 'side too long':
      return `side ${why.side + 1} is ${why.by.toPrecision(3)} m longer than all others together`;
    case 'no radius':
      return `the sphere’s radius is ${why.found}, expected a positive length`;
    case 'larger than the sphere':
      return `its circle is ${why.by.toPrecision(3)} m wider in radius than the sphere (longest is side ${why.side + 1})`;
  }
}

function faultOfSides(sides: readonly number[]): PolygonFault | null {
  if (sides.length < 3) return { reason: 'too few sides', found: sides.length };
  const bad = sides.findIndex((side) => !(side > 0 && side < Infinity));
  if (bad >= 0) return { reason: 'no length', side: bad, found: sides[bad] as number };
  const side = longestSide(sides);
  const others = sides.reduce((sum, a, i) => (i === side ? sum : sum + a), 0);
  const by = (sides[side] as number) - others;
  return by >= 0 ? { reason: 'side too long', side, by } : null;
}

function longestSide(sides: readonly number[]): number {
  let longest = 0;
  for (let i = 1; i < sides.length; i++)
    if ((sides[i] as number) > (sides[longest] as number)) longest = i;
  return longest;
}

/** Angle of a triangle opposite its longest side, which is that side's half central angle. */
function oppositeAngle(sides: readonly number[], longest: number): number {
  const a = sides[longest] as number;
  const p = sides[(longest + 1) % 3] as number;
  const q = sides[(longest + 2) % 3] as number;
  const b = Math.max(p, q);
  const c = Math.min(p, q);
  const fourAreas = Math.sqrt(
    (a + (b + c)) * Math.max(0, c - (a - b)) * (c + (a - b)) * (a + (b - c)),
  );
  return Math.atan2(fourAreas, c * c - (a - b) * (a + b));
}

/**
 * Half angle ψ of the longest side, the zero of ψ + Σ asin(rᵢ sin ψ) − π over the other sides,
 * rᵢ = aᵢ / longest. That function is concave on 0 … π, so Newton started below its zero climbs to
 * it without overshooting. Beyond π/2 it is solved for π − ψ, which keeps its digits near π.
 */
function longestHalfAngle(sides: readonly number[], longest: number): number {
  const long = sides[longest] as number;
  const ratios = sides.filter((_, i) => i !== longest).map((side) => side / long);
  const inside = ratios.reduce((sum, r) => sum + asin(r), 0) >= Math.PI / 2;
  const sum = ratios.reduce((s, r) => s + r, 0);
  if (inside) return newton(ratios, Math.PI / (1 + sum), (x, arcs) => x + arcs - Math.PI, 1);
  return Math.PI - newton(ratios, Math.PI / 2, (x, arcs) => x - arcs, -1);
}

function newton(
  ratios: readonly number[],
  start: number,
  misfit: (x: number, arcs: number) => number,
  sign: 1 | -1,
): number {
  let x = start;
  for (let step = 0; step < 100; step++) {
    let arcs = 0;
    let slope = 0;
    for (const r of ratios) {
      const s = Math.min(1, r * Math.sin(x));
      arcs += Math.asin(s);
      slope += (r * Math.cos(x)) / Math.sqrt((1 - s) * (1 + s));
    }
    const move = misfit(x, arcs) / (1 + sign * slope);
    x -= move;
    if (!(Math.abs(move) > 4e-16 * Math.abs(x))) break;
  }
  return x;
}
