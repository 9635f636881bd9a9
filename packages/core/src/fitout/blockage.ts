// What seams and hub plates shadow of a dish's opening: each as the area of its body seen along the
// pointing, as far as it lies before the opening. A seam is a straight prism, `width` across the wall and
// `depth` inward (its two flanges); a plate is a flat disc square to the radius. Areas that overlap count
// twice but for the ends of seams under plates, which are left out.

import { assertBetween } from '../loads/doors.ts';
import { add, cross, distance, normalize, scale, subtract } from '../math/vector.ts';
import { endHubAt, hubPoint } from '../shell/geometry.ts';
import type { HubId, SideId } from '../shell/ids.ts';
import { hubAt, hubCount, type Shell, seamCount } from '../shell/shell.ts';
import { cornersAtHubs } from '../takeoff/hubs.ts';

/** What stands in the way of the wave at seams and hubs, metres. */
export interface SeamBody {
  readonly seamWidth: number;
  /** Inward from the wall. */
  readonly seamDepth: number;
  /** 0: no plates. */
  readonly plateDiameter: number;
  /** Share of the wave that they stop: 1 for metal, less for plastic; a wave longer than a seam is wide
   * is stopped by more or less than the shadow, by polarisation. */
  readonly opacity: number;
}

/** Seams and hubs made ready to be looked at along many pointings. */
export interface Shadows {
  readonly body: SeamBody;
  readonly hubs: Float64Array;
  /** Hub → 1 where a plate is. */
  readonly plate: Uint8Array;
  /** Hub → unit vector outward, stride 3. */
  readonly out: Float64Array;
  /** Seam → its two hubs, stride 2. */
  readonly ends: Int32Array;
  readonly length: Float64Array;
  /** Seam → unit vector outward at its middle, and the one across it along the wall, stride 6. */
  readonly frame: Float64Array;
}

/** A shell's seams and plates. RangeError for a body that is none. */
export function shadowsOf(shell: Shell, body: SeamBody): Shadows {
  assertBetween('seam width', body.seamWidth, 0, 1, 'm');
  assertBetween('seam depth', body.seamDepth, 0, 1, 'm');
  assertBetween('plate diameter', body.plateDiameter, 0, 2, 'm');
  assertBetween('opacity', body.opacity, 0, 1);
  const [seams, hubs] = [seamCount(shell), hubCount(shell)];
  const ends = new Int32Array(2 * seams);
  const length = new Float64Array(seams);
  const frame = new Float64Array(6 * seams);
  for (let i = 0; i < seams; i++) {
    const side = shell.seams[2 * i] as SideId;
    const [from, to] = [hubAt(shell, side), endHubAt(shell, side)];
    const [a, b] = [hubPoint(shell, from), hubPoint(shell, to)];
    const outward = normalize(scale(add(a, b), 0.5));
    ends.set([from, to], 2 * i);
    length[i] = distance(a, b);
    frame.set([...outward, ...cross(normalize(subtract(b, a)), outward)], 6 * i);
  }
  const corners = cornersAtHubs(shell);
  const out = new Float64Array(3 * hubs);
  for (let h = 0; h < hubs; h++) out.set(normalize(hubPoint(shell, h as HubId)), 3 * h);
  const plate = Uint8Array.from(corners, (n) => (n > 0 ? 1 : 0));
  return { body, hubs: shell.hubs, plate, out, ends, length, frame };
}

/** An opening looked along: its middle, radius, and the axes of the look: along, across, up. */
export interface Look {
  readonly middle: Float64Array;
  readonly radius: number;
  /** Along, across, up: three unit vectors, stride 3. */
  readonly axes: Float64Array;
}

/** The share of an opening that seams and plates shadow, times their opacity, at most 1. `seen` is room
 * for three numbers a hub. */
export function shadowShare(shadows: Shadows, look: Look, seen: Float64Array): number {
  const { body } = shadows;
  seeHubsInto(shadows, look, seen);
  const area =
    seamShadow(shadows, look, seen) +
    (body.plateDiameter > 0 ? plateShadow(shadows, look, seen) : 0);
  return Math.min(1, (body.opacity * area) / (Math.PI * look.radius ** 2));
}

function seeHubsInto({ hubs }: Shadows, { middle, axes }: Look, seen: Float64Array): void {
  for (let h = 0; h < hubs.length; h += 3) {
    const [x, y, z] = [hubs[h] - middle[0], hubs[h + 1] - middle[1], hubs[h + 2] - middle[2]];
    seen[h] = axes[0] * x + axes[1] * y + axes[2] * z;
    seen[h + 1] = axes[3] * x + axes[4] * y + axes[5] * z;
    seen[h + 2] = axes[6] * x + axes[7] * y + axes[8] * z;
  }
}

function seamShadow(
  { body, ends, length, frame }: Shadows,
  look: Look,
  seen: Float64Array,
): number {
  const { radius, axes } = look;
  const [u, v, w] = [axes[0], axes[1], axes[2]];
  let area = 0;
  for (let i = 0; i < length.length; i++) {
    const [a, b] = [3 * ends[2 * i], 3 * ends[2 * i + 1]];
    if (seen[a] + seen[b] <= 0) continue;
    const trim = body.plateDiameter / (2 * length[i]);
    const inside = partInside(seen[a + 1], seen[a + 2], seen[b + 1], seen[b + 2], radius, trim);
    if (inside === 0) continue;
    const f = 6 * i;
    const facing = Math.abs(frame[f] * u + frame[f + 1] * v + frame[f + 2] * w);
    const aside = Math.abs(frame[f + 3] * u + frame[f + 4] * v + frame[f + 5] * w);
    area += inside * length[i] * (body.seamWidth * facing + body.seamDepth * aside);
  }
  return area;
}

/** The part of a line from (x, y) to (p, q), less `trim` of it at each end, that lies within a circle
 * about 0. */
function partInside(
  x: number,
  y: number,
  p: number,
  q: number,
  radius: number,
  trim: number,
): number {
  const [dx, dy] = [p - x, q - y];
  const a = dx * dx + dy * dy;
  const c = x * x + y * y - radius * radius;
  if (a < 1e-18) return c < 0 ? Math.max(0, 1 - 2 * trim) : 0;
  const b = x * dx + y * dy;
  const root = b * b - a * c;
  if (root <= 0) return 0;
  const half = Math.sqrt(root);
  return Math.max(0, Math.min(1 - trim, (half - b) / a) - Math.max(trim, (-b - half) / a));
}

/** A plate seen aslant is an ellipse; at the rim of the opening it counts as the circle of its area. */
function plateShadow({ body, plate, out }: Shadows, look: Look, seen: Float64Array): number {
  const { radius, axes } = look;
  const flat = body.plateDiameter / 2;
  let area = 0;
  for (let h = 0; h < plate.length; h++) {
    if (!plate[h] || seen[3 * h] <= 0) continue;
    const away = Math.hypot(seen[3 * h + 1], seen[3 * h + 2]);
    if (away > radius + flat) continue;
    const facing = Math.abs(
      out[3 * h] * axes[0] + out[3 * h + 1] * axes[1] + out[3 * h + 2] * axes[2],
    );
    area += circlesShare(radius, flat * Math.sqrt(facing), away);
  }
  return area;
}

/** The area that two circles of radii `r` and `s` share whose middles are `d` apart. */
export function circlesShare(r: number, s: number, d: number): number {
  if (s === 0 || d >= r + s) return 0;
  if (d <= Math.abs(r - s)) return Math.PI * Math.min(r, s) ** 2;
  const a = Math.acos((d * d + r * r - s * s) / (2 * d * r));
  const b = Math.acos((d * d + s * s - r * r) / (2 * d * s));
  return r * r * (a - Math.sin(2 * a) / 2) + s * s * (b - Math.sin(2 * b) / 2);
}
