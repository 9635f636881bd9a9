// One panel of a snap model as a solid, laid on its outer face: edges bevelled to the planes through the
// sphere's centre, a blind round socket behind each corner. Millimetres; x to the right, y down seen from
// outside, z up from the bed.

import { offsetPolygon } from './cut-parts.ts';
import type { FramedPanel } from './flat-panel.ts';
import type { Mesh } from './mesh.ts';
import { AROUND_SOCKET, type SnapFit, waysFrom } from './snap-fit.ts';
import { solidBuilder } from './solid-builder.ts';
import { betweenRings, type FacePoint, holdsCircle, roundRing } from './solid-faces.ts';

/** The faces of a panel, and where its sockets are, in the panel's own axes. */
export interface SnapFaces {
  readonly outer: readonly FacePoint[];
  readonly inner: readonly FacePoint[];
  /** Corner → middle of its socket. */
  readonly sockets: readonly FacePoint[];
}

/** The faces of a panel; null where a socket has no room in its corner, or no face is left. */
export function snapFaces({ corners, foot, height }: FramedPanel, fit: SnapFit): SnapFaces | null {
  const share = 1 - fit.wall / height;
  const shrunk = corners.map(
    ([x, y]): FacePoint => [foot[0] + (x - foot[0]) * share, foot[1] + (y - foot[1]) * share],
  );
  // Half a clearance square to a plane tilted by its bevel is a little more along the face.
  const inset = corners.map((p, i) => {
    const q = corners[(i + 1) % corners.length] as FacePoint;
    const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
    const from = ((q[0] - p[0]) * (foot[1] - p[1]) - (q[1] - p[1]) * (foot[0] - p[0])) / length;
    return (-fit.clearance / 2) * (Math.hypot(from, height) / height);
  });
  const [outer, inner] = [offsetPolygon(corners, inset), offsetPolygon(shrunk, inset)];
  const sockets = corners.map((corner, i): FacePoint => {
    const [to, back] = waysFrom(corners, i);
    const size = Math.hypot(to[0] + back[0], to[1] + back[1]);
    const [dx, dy] = [corner[0] - foot[0], corner[1] - foot[1]];
    const sunk = fit.sink / Math.hypot(dx, dy, height);
    return [
      corner[0] - sunk * dx + (fit.reach * (to[0] + back[0])) / size,
      corner[1] - sunk * dy + (fit.reach * (to[1] + back[1])) / size,
    ];
  });
  const room = fit.pegRadius + fit.clearance + AROUND_SOCKET / 2;
  const quads = cornerQuads(inner);
  return sockets.every((socket, i) => holdsCircle(quads[i] as FacePoint[], socket, room))
    ? { outer, inner, sockets }
    : null;
}

/** A face cut from its middle to the middle of each side: corner i, middle of side i, middle of the face,
 * middle of the side before. */
function cornerQuads(face: readonly FacePoint[]): FacePoint[][] {
  const n = face.length;
  const centre = mean(face);
  const middles = face.map((p, i) => mean([p, face[(i + 1) % n] as FacePoint]));
  return face.map((p, i) => [
    p,
    middles[i] as FacePoint,
    centre,
    middles[(i + n - 1) % n] as FacePoint,
  ]);
}

const mean = (points: readonly FacePoint[]): FacePoint => [
  points.reduce((sum, [x]) => sum + x, 0) / points.length,
  points.reduce((sum, [, y]) => sum + y, 0) / points.length,
];

/** The solid of a panel. */
export function snapPanel({ outer, inner, sockets }: SnapFaces, fit: SnapFit): Mesh {
  const n = outer.length;
  const { point, triangle, mesh } = solidBuilder();
  // In the panel's axes the outer face is at z = 0; turned half about x it lies on the bed.
  const at = ([x, y]: FacePoint, down: number): number => point([x, -y, down]);
  const top = outer.map((p) => at(p, 0));
  const low = inner.map((p) => at(p, fit.wall));
  const quads = cornerQuads(inner);
  const middles = quads.map((quad) => at(quad[1] as FacePoint, fit.wall));
  const centre = at((quads[0] as FacePoint[])[2] as FacePoint, fit.wall);
  for (let i = 1; i + 1 < n; i++)
    triangle(top[0] as number, top[i] as number, top[i + 1] as number);
  for (let i = 0; i < n; i++) {
    const j = (i + 1) % n;
    const [p, q, mid] = [top[i], top[j], middles[i]] as [number, number, number];
    triangle(mid, low[j] as number, q);
    triangle(mid, q, p);
    triangle(mid, p, low[i] as number);
    const ring = roundRing(sockets[i] as FacePoint, fit.pegRadius + fit.clearance);
    const mouth = ring.map((r) => at(r, fit.wall));
    const end = ring.map((r) => at(r, fit.wall - fit.depth));
    const before = middles[(i + n - 1) % n] as number;
    const named = [low[i] as number, mid, centre, before, ...mouth];
    for (const [a, b, c] of betweenRings(quads[i] as FacePoint[], ring))
      triangle(named[a] as number, named[c] as number, named[b] as number);
    const last = ring.length;
    for (let k = 0; k < last; k++) {
      const next = (k + 1) % last;
      const [m, w, d, e] = [mouth[k], mouth[next], end[k], end[next]] as number[] as [
        number,
        number,
        number,
        number,
      ];
      triangle(w, m, d);
      triangle(w, d, e);
      if (k > 0 && next > 0) triangle(end[0] as number, e, d);
    }
  }
  return mesh();
}
