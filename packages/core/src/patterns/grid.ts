// Exact plane geometry on a grid of whole micrometres: x right, y up. Up to 60 m across every product
// below is a whole number under 2^53, so that each verdict is exact, and what is judged is what is
// written: the files hold thousandths of a millimetre.

/** A point on the grid, whole micrometres. */
export type GridPoint = readonly [number, number];

/** Micrometres in a millimetre. */
export const MICRON = 1000;

/** The grid point nearest to one in micrometres. */
export const onGrid = (x: number, y: number): GridPoint => [Math.round(x) + 0, Math.round(y) + 0];

/** Twice the signed area of a triangle: above 0 where c lies left of the way from a to b. Exact. */
const orientation = (a: GridPoint, b: GridPoint, c: GridPoint): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

/** Whether two convex polygons, anticlockwise, share any area; a touch is none. Exact: two convex
 * polygons without common area are parted by the line of one of their edges. */
export const convexOverlap = (a: readonly GridPoint[], b: readonly GridPoint[]): boolean =>
  !parted(a, b) && !parted(b, a);

function parted(a: readonly GridPoint[], b: readonly GridPoint[]): boolean {
  let from = a[a.length - 1] as GridPoint;
  for (const to of a) {
    let outside = true;
    for (const point of b)
      if (orientation(from, to, point) > 0) {
        outside = false;
        break;
      }
    if (outside) return true;
    from = to;
  }
  return false;
}

/** Twice the area of a polygon, square micrometres, above 0 where it runs anticlockwise. */
export function doubleArea(points: readonly GridPoint[]): number {
  const [first] = points;
  let sum = 0;
  for (let i = 1; i + 1 < points.length; i++)
    sum += orientation(first as GridPoint, points[i] as GridPoint, points[i + 1] as GridPoint);
  return sum;
}

/** The least box around points: left, bottom, right, top. */
export function boundsOf(points: readonly GridPoint[]): [number, number, number, number] {
  const box: [number, number, number, number] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    if (x < box[0]) box[0] = x;
    if (y < box[1]) box[1] = y;
    if (x > box[2]) box[2] = x;
    if (y > box[3]) box[3] = y;
  }
  return box;
}
