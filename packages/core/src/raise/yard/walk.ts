// The shortest walk between two points round a round shell: straight where it does not cut the circle,
// else along two tangents and the arc between. Metres.

/** A point on the ground, x and y from the shell's axis. */
export type Ground = readonly [x: number, y: number];

/** Length of the walk. Points within the circle count as on it. RangeError for a radius below 0. */
export function walkRound(a: Ground, b: Ground, radius: number): number {
  if (!(radius >= 0 && radius < Infinity))
    throw new RangeError(`radius is ${radius} m, expected 0 or more`);
  const [p, q] = [outTo(a, radius), outTo(b, radius)];
  const [dp, dq] = [Math.hypot(...p), Math.hypot(...q)];
  const between = Math.abs(angleOf(p, q));
  const reach = (d: number): number => (d > 0 ? Math.acos(Math.min(1, radius / d)) : Math.PI / 2);
  const arc = between - reach(dp) - reach(dq);
  if (arc <= 0) return Math.hypot(p[0] - q[0], p[1] - q[1]);
  const tangent = (d: number): number => Math.sqrt(Math.max(0, d * d - radius * radius));
  return tangent(dp) + tangent(dq) + radius * arc;
}

function outTo([x, y]: Ground, radius: number): Ground {
  const d = Math.hypot(x, y);
  if (d >= radius) return [x, y];
  return d > 0 ? [(x * radius) / d, (y * radius) / d] : [radius, 0];
}

const angleOf = (a: Ground, b: Ground): number =>
  Math.atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1]);
