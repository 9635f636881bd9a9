// The 3D view on the graphics card: three draw calls (panels, lines, hubs), drawn only when asked.
// The one file that knows three.

import {
  BufferAttribute,
  BufferGeometry,
  InstancedBufferAttribute,
  InstancedBufferGeometry,
  Mesh,
  PerspectiveCamera,
  Points,
  Scene,
  ShaderMaterial,
  Vector2,
  Vector3,
  Vector4,
  WebGLRenderer,
} from 'three';
import { hatchOnPanels } from './hatching.ts';
import { meanEdgeOf, type Panels } from './panels.ts';
import type { Pose } from './pose.ts';
import type { Dress, Palette } from './scheme.ts';
import {
  hubFragment,
  hubVertex,
  lineFragment,
  lineVertex,
  panelFragment,
  panelVertex,
} from './shaders.ts';

/** What is told apart in the drawing. */
export interface Look {
  /** Only the first so many panels are there. */
  readonly shown: number;
  /** Rank of the selected panel, −1 for none. */
  readonly selected: number;
  /** Index of a kind to be shown up, −1 for none. */
  readonly kind: number;
  /** Panels laid just now stand out. */
  readonly growing: boolean;
}

/** A drawing under way. */
export interface Scene3d {
  readonly canvas: HTMLCanvasElement;
  /** Puts panels in; one dress a panel. */
  setPanels(panels: Panels, dresses: readonly Dress[]): void;
  setPalette(palette: Palette): void;
  setLook(look: Look): void;
  /** Size in pixels of the page. */
  setSize(width: number, height: number, ratio: number): void;
  draw(pose: Pose, inside: boolean): void;
  dispose(): void;
}

const uniform = <T>(value: T): { value: T } => ({ value });

/** Starts drawing on a new canvas. Throws where the browser has no WebGL. */
export function openScene(): Scene3d {
  const canvas = document.createElement('canvas');
  const context = canvas.getContext('webgl2', { antialias: true, alpha: true, stencil: false });
  if (!context) throw new Error('this browser has no WebGL');
  const renderer = new WebGLRenderer({ canvas, context, antialias: true, alpha: true });
  const uniforms = {
    shown: uniform(0),
    selected: uniform(-1),
    kindMark: uniform(-1),
    growing: uniform(0),
    inside: uniform(0),
    shade: uniform(0),
    nearest: uniform(0.01),
    size: uniform(0),
    ring: uniform(1),
    accent: uniform(new Vector3()),
    ink: uniform(new Vector3()),
    hatch: uniform(new Vector3()),
    grey: uniform(new Vector3()),
    paper: uniform(new Vector3()),
    back: uniform(new Vector3()),
    eye: uniform(new Vector3()),
    halfSize: uniform(new Vector2(1, 1)),
    widths: uniform(new Vector4(1, 1, 1, 1)),
  };
  const material = (vertexShader: string, fragmentShader: string, more = {}): ShaderMaterial =>
    new ShaderMaterial({ uniforms, vertexShader, fragmentShader, side: 2, ...more });
  const offset = { polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1 };
  const faces = new Mesh(new BufferGeometry(), material(panelVertex, panelFragment, offset));
  const lines = new Mesh(new InstancedBufferGeometry(), material(lineVertex, lineFragment));
  const hubs = new Points(
    new BufferGeometry(),
    material(hubVertex, hubFragment, { transparent: true }),
  );
  const scene = new Scene();
  for (const object of [faces, lines, hubs]) {
    object.frustumCulled = false;
    object.matrixAutoUpdate = false;
    scene.add(object);
  }
  const camera = new PerspectiveCamera();
  camera.matrixAutoUpdate = false;
  let panels: Panels | null = null;
  let size = { width: 1, height: 1, ratio: 1 };
  let pens: Palette | null = null;
  let meanEdge = 0;

  function setShown(shown: number): void {
    if (!panels) return;
    const { start, edges, hubs: points } = panels;
    const count = Math.max(0, Math.min(panels.kind.length, shown));
    uniforms.shown.value = count;
    faces.geometry.setDrawRange(0, cornersOfTriangles(start, count));
    (lines.geometry as InstancedBufferGeometry).instanceCount = countBefore(edges.since, count);
    hubs.geometry.setDrawRange(0, countBefore(points.since, count));
  }

  return {
    canvas,
    setPanels(next, dresses) {
      panels = next;
      replace(faces, faceGeometry(next, dresses));
      replace(lines, lineGeometry(next));
      replace(hubs, hubGeometry(next));
      meanEdge = meanEdgeOf(next.edges);
      setShown(next.kind.length);
    },
    setPalette(palette) {
      pens = palette;
      uniforms.accent.value.set(...palette.accent);
      uniforms.ink.value.set(...palette.ink);
      uniforms.hatch.value.set(...palette.hatch);
      uniforms.grey.value.set(...palette.grey);
      uniforms.paper.value.set(...palette.paper);
      uniforms.back.value.set(...palette.ground);
      uniforms.shade.value = palette.shade;
    },
    setLook(look) {
      setShown(look.shown);
      uniforms.selected.value = look.selected;
      uniforms.kindMark.value = look.kind;
      uniforms.growing.value = look.growing ? 1 : 0;
    },
    setSize(width, height, ratio) {
      size = { width, height, ratio };
      renderer.setPixelRatio(ratio);
      renderer.setSize(width, height, false);
      uniforms.halfSize.value.set((width * ratio) / 2, (height * ratio) / 2);
    },
    draw(pose, inside) {
      const { thin, light, bold, heavy } = pens ?? { thin: 1, light: 1, bold: 2, heavy: 3 };
      const pixels = size.height / 2 / pose.tangent / distance(pose);
      const fine = Math.min(1, Math.max(0.45, (meanEdge * pixels) / 40));
      const outline = bold * 0.8 * Math.max(0.7, fine);
      const widths = [Math.max(thin, light * fine), outline, bold, heavy] as const;
      const [a, b, c, d] = widths.map((width) => Math.max(1, width * size.ratio));
      uniforms.widths.value.set(a ?? 1, b ?? 1, c ?? 1, d ?? 1);
      const ring = Math.min(7, meanEdge * pixels * 0.11) * size.ratio;
      hubs.visible = !inside && ring > 2.6 * size.ratio;
      uniforms.size.value = ring;
      uniforms.ring.value = Math.max(1, light * size.ratio);
      uniforms.inside.value = inside ? 1 : 0;
      uniforms.eye.value.set(...pose.eye);
      uniforms.nearest.value = pose.near;
      placeCamera(camera, pose, size.width / size.height);
      renderer.render(scene, camera);
    },
    dispose() {
      for (const object of [faces, lines, hubs]) {
        object.geometry.dispose();
        (object.material as ShaderMaterial).dispose();
      }
      renderer.dispose();
      renderer.forceContextLoss();
      canvas.remove();
    },
  };
}

/** From the eye to the middle of what it sees. */
const distance = ({ near, far }: Pose): number => (near + far) / 2;

function placeCamera(camera: PerspectiveCamera, pose: Pose, aspect: number): void {
  const { right, up, forward, eye, near, far, tangent } = pose;
  camera.fov = (2 * Math.atan(tangent) * 180) / Math.PI;
  camera.aspect = aspect;
  camera.near = near;
  camera.far = far;
  camera.updateProjectionMatrix();
  const [x, y, z] = eye;
  const [across, upward] = [new Vector3(...right), new Vector3(...up)];
  camera.matrix.makeBasis(across, upward, new Vector3(...forward).negate()).setPosition(x, y, z);
  camera.updateMatrixWorld(true);
}

function replace(object: Mesh | Points, geometry: BufferGeometry): void {
  object.geometry.dispose();
  object.geometry = geometry;
}

/** Corners of the triangles of the first `count` panels: a panel of n corners is n − 2 triangles. */
const cornersOfTriangles = (start: Int32Array, count: number): number =>
  3 * ((start[count] ?? 0) - 2 * count);

/** How many of these ascending ranks are below `count`. */
function countBefore(ranks: Int32Array, count: number): number {
  let [low, high] = [0, ranks.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((ranks[middle] as number) < count) low = middle + 1;
    else high = middle;
  }
  return low;
}

function faceGeometry(panels: Panels, dresses: readonly Dress[]): BufferGeometry {
  const { corners, start, kind, normals } = panels;
  const count = cornersOfTriangles(start, kind.length);
  const position = new Float32Array(3 * count);
  const tint = new Float32Array(3 * count);
  const outward = new Float32Array(3 * count);
  const ranks = new Float32Array(count);
  const kinds = new Float32Array(count);
  const source = new Int32Array(count);
  let at = 0;
  for (let rank = 0; rank < kind.length; rank++) {
    const first = start[rank] as number;
    for (let c = first + 1; c + 1 < (start[rank + 1] as number); c++)
      for (const corner of [first, c, c + 1]) {
        position.set(corners.subarray(3 * corner, 3 * corner + 3), 3 * at);
        tint.set(dresses[rank]?.tint ?? [1, 1, 1], 3 * at);
        source[at] = corner;
        outward.set(normals.subarray(3 * rank, 3 * rank + 3), 3 * at);
        ranks[at] = rank;
        kinds[at] = kind[rank] as number;
        at += 1;
      }
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(position, 3));
  geometry.setAttribute('tint', new BufferAttribute(tint, 3));
  geometry.setAttribute('outward', new BufferAttribute(outward, 3));
  geometry.setAttribute('rank', new BufferAttribute(ranks, 1));
  geometry.setAttribute('kind', new BufferAttribute(kinds, 1));
  const { spot, ruling, dots } = hatchOnPanels(
    panels,
    dresses.map(({ hatch }) => hatch),
    source,
    ranks,
  );
  geometry.setAttribute('spot', new BufferAttribute(spot, 2));
  geometry.setAttribute('ruling', new BufferAttribute(ruling, 4));
  geometry.setAttribute('dots', new BufferAttribute(dots, 3));
  return geometry;
}

function lineGeometry({ edges, normals, kind }: Panels): InstancedBufferGeometry {
  const { ends, since, joined } = edges;
  const count = since.length;
  const from = new Float32Array(3 * count);
  const to = new Float32Array(3 * count);
  const normalA = new Float32Array(3 * count);
  const normalB = new Float32Array(3 * count);
  const ranks = new Float32Array(2 * count);
  const kinds = new Float32Array(2 * count);
  for (let e = 0; e < count; e++) {
    const [a, b] = [since[e] as number, joined[e] as number];
    from.set(ends.subarray(6 * e, 6 * e + 3), 3 * e);
    to.set(ends.subarray(6 * e + 3, 6 * e + 6), 3 * e);
    normalA.set(normals.subarray(3 * a, 3 * a + 3), 3 * e);
    if (b >= 0) normalB.set(normals.subarray(3 * b, 3 * b + 3), 3 * e);
    ranks.set([a, b], 2 * e);
    kinds.set([kind[a] as number, b < 0 ? -2 : (kind[b] as number)], 2 * e);
  }
  const geometry = new InstancedBufferGeometry();
  const quad = new Float32Array([0, -1, 0, 1, -1, 0, 1, 1, 0, 0, 1, 0]);
  geometry.setAttribute('position', new BufferAttribute(quad, 3));
  geometry.setIndex([0, 1, 2, 0, 2, 3]);
  const each = (name: string, values: Float32Array, stride: number): void => {
    geometry.setAttribute(name, new InstancedBufferAttribute(values, stride));
  };
  each('from', from, 3);
  each('to', to, 3);
  each('normalA', normalA, 3);
  each('normalB', normalB, 3);
  each('ranks', ranks, 2);
  each('kinds', kinds, 2);
  geometry.instanceCount = count;
  return geometry;
}

function hubGeometry({ hubs }: Panels): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(Float32Array.from(hubs.points), 3));
  return geometry;
}
