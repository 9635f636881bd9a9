// The ball that the demo's panels came from, made here without the engine: an icosahedron, each
// face cut by lines parallel to its sides into n² triangles, all points pushed out to the sphere.
// Crown on a corner of the icosahedron, z up, radius 1.

/** `{ points, triangles }`: unit vectors, and corner indices anticlockwise seen from outside. */
export function cutIcosahedron(n) {
  const { corners, faces } = icosahedron();
  const points = [];
  const byKey = new Map();
  const at = (vector) => {
    const key = vector.map((v) => Math.round(v * 1e6)).join();
    if (!byKey.has(key)) byKey.set(key, points.push(unit(vector)) - 1);
    return byKey.get(key);
  };
  const triangles = [];
  for (const face of faces) {
    const [a, b, c] = face.map((corner) => corners[corner]);
    const grid = (i, j) => at(unit(mix(a, n - i - j, b, i, c, j)));
    for (let i = 0; i < n; i++) {
      for (let j = 0; i + j < n; j++) {
        triangles.push([grid(i, j), grid(i + 1, j), grid(i, j + 1)]);
        if (i + j < n - 1) triangles.push([grid(i + 1, j), grid(i + 1, j + 1), grid(i, j + 1)]);
      }
    }
  }
  return { points, triangles };
}

/** Distance between two points of the net. */
export const distance = (p, q) => Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);

/** Triangles around each hub that has all of them, anticlockwise seen from outside. */
export function starsOf({ points, triangles }) {
  return points.map((_, hub) => {
    const byNext = new Map();
    triangles.forEach((triangle, t) => {
      const at = triangle.indexOf(hub);
      if (at >= 0) byNext.set(triangle[(at + 1) % 3], { t, last: triangle[(at + 2) % 3] });
    });
    const star = [];
    let spoke = [...byNext.keys()][0];
    for (let i = 0; i < byNext.size; i++) {
      const { t, last } = byNext.get(spoke);
      star.push(t);
      spoke = last;
    }
    return star;
  });
}

function icosahedron() {
  const z = 1 / Math.sqrt(5);
  const ring = (height, offset) =>
    [0, 1, 2, 3, 4].map((i) => {
      const angle = ((2 * i + offset) * Math.PI) / 5;
      return [2 * z * Math.cos(angle), 2 * z * Math.sin(angle), height];
    });
  const corners = [[0, 0, 1], ...ring(z, 0), ...ring(-z, 1), [0, 0, -1]];
  const faces = [0, 1, 2, 3, 4].flatMap((i) => {
    const j = (i + 1) % 5;
    return [
      [0, 1 + i, 1 + j],
      [1 + i, 6 + i, 1 + j],
      [1 + j, 6 + i, 6 + j],
      [11, 6 + j, 6 + i],
    ];
  });
  return { corners, faces };
}

const mix = (a, p, b, q, c, r) => a.map((_, k) => a[k] * p + b[k] * q + c[k] * r);

function unit(v) {
  const length = Math.hypot(...v);
  return v.map((x) => x / length);
}
