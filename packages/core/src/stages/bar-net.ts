// The seams and open sides of a stage as bars that turn freely at their ends: what a stage of
// triangles with finger-tight seams is, where hubs move far. Each panel adds to its three bars what its
// skin resists in its plane.

import type { PreparedFrame } from '../frame/answer.ts';
import { bucklingFactors } from '../frame/buckling.ts';
import type { Bar } from '../frame/elements/element.ts';
import { type FrameLoad, nodeLoads } from '../frame/frame-loads.ts';
import { jointsOf } from '../frame/joints.ts';
import type { FrameModel } from '../frame/model.ts';
import type { FrameParts } from '../frame/parts.ts';
import { barPath } from '../frame/path.ts';
import { prepare, statics } from '../frame/statics.ts';
import type { Structure } from '../frame/structure.ts';
import { fromMemory, type Provenance } from '../loads/provenance.ts';
import { distance, pointAt, type Vec3 } from '../math/vector.ts';

/** How the skin is shared out to bars. */
export const SKIN_AS_BARS: Provenance = fromMemory(
  'A. Hrennikoff, J. Appl. Mech. 8 (1941) A169: a sheet as a net of equilateral triangles of bars, each triangle with (√3/4) t L at each of its sides',
);

/** Hub → movement of the joint that moves most, stride 3, the largest 1. */
export type HubMode = Float64Array;

/** How far the load can grow before hubs snap through, seams taken as bars. */
export type SnapThrough =
  | {
      readonly status: 'snaps' | 'sideways';
      /** Times the load: where it can grow no further, or where the net leaves its path sideways. */
      readonly factor: number;
      /** The hub that has moved most by then, and how all have moved. */
      readonly hub: number;
      readonly mode: HubMode;
    }
  | {
      /** None came up to `factor` times the load; null: however large, for the load pulls only. */
      readonly status: 'none';
      readonly factor: number | null;
    }
  | { readonly status: 'not reckoned'; readonly why: string };

/** Steps along a path, and how many of them lead to where small movements would buckle. */
const STEPS = { most: 96, toBuckling: 24 } as const;

/** How far the load can grow on a stage of triangles before hubs snap through, large movements and
 * all. Perfect parts, rigid ground. */
export function snapThrough(frame: PreparedFrame, load: FrameLoad): SnapThrough {
  const { model, parts } = frame;
  if (model.panels.some(({ hubs }) => hubs.length > 3))
    return notReckoned('a panel with more than three sides is no net of bars');
  const net = barNet(model, parts);
  const forces = jointLoads(frame, net, load);
  const prepared = prepare(net.structure);
  const rest = statics(prepared, forces);
  if (rest.status !== 'stands')
    return notReckoned('as bars alone it moves freely: it stands by how its panels bend');
  const first = bucklingFactors(prepared, rest, 1).values[0];
  if (first === undefined) return { status: 'none', factor: null };
  const length = Math.hypot(...rest.moved.filter((_, i) => i % 6 < 3));
  const path = barPath(net.structure, forces, {
    step: (first * length) / STEPS.toBuckling,
    steps: STEPS.most,
  });
  if (path.critical === null) {
    const reached = path.points.at(-1)?.factor ?? 0;
    return reached > 0
      ? { status: 'none', factor: reached }
      : notReckoned('the path found no balance under the first part of the load');
  }
  const { factor, moved } = path.critical;
  return {
    status: path.status === 'limit' ? 'snaps' : 'sideways',
    factor,
    ...largest(model, net, moved),
  };
}

const notReckoned = (why: string): SnapThrough => ({ status: 'not reckoned', why });

/** A stage as bars between its joints. */
interface BarNet {
  readonly structure: Structure;
  readonly joints: ReturnType<typeof jointsOf>;
}

function barNet(model: FrameModel, parts: FrameParts): BarNet {
  const joints = jointsOf(model);
  const { cornerStart, jointOfCorner, hub } = joints;
  const at = (joint: number): Vec3 => pointAt(model.hubs, hub[joint]);
  const flange = parts.flangeDepth * parts.flangeThickness;
  const bars = new Map<string, Bar>();
  model.panels.forEach(({ hubs }, p) => {
    hubs.forEach((_, i) => {
      const ends = [i, (i + 1) % hubs.length].map((k) => jointOfCorner[cornerStart[p] + k]);
      const [a, b] = ends.sort((x, y) => x - y) as [number, number];
      const skin = (Math.sqrt(3) / 4) * parts.thickness * distance(at(a), at(b));
      const area = flange + skin + (bars.get(`${a} ${b}`)?.area ?? 0);
      bars.set(`${a} ${b}`, { kind: 'bar', nodes: [a, b], area, young: parts.young });
    });
  });
  const held = new Set(model.supports.map((support) => support.hub));
  return {
    structure: {
      nodes: Float64Array.from([...hub.keys()].flatMap(at)),
      elements: [...bars.values()],
      held: [...hub.keys()]
        .filter((joint) => held.has(hub[joint]))
        .map((node) => ({ node, directions: null })),
    },
    joints,
  };
}

/** The load on each joint, stride 6, from that on the nodes of the frame's mesh. */
function jointLoads({ mesh, parts }: PreparedFrame, net: BarNet, load: FrameLoad): Float64Array {
  const onNodes = nodeLoads(mesh, parts, load);
  const forces = new Float64Array(6 * net.joints.hub.length);
  const done = new Set<number>();
  mesh.nodeOfCorner.forEach((node, corner) => {
    if (done.has(node)) return;
    done.add(node);
    const joint = net.joints.jointOfCorner[corner];
    for (let k = 0; k < 3; k++) forces[6 * joint + k] += onNodes[6 * node + k];
  });
  return forces;
}

function largest(
  { hubs }: FrameModel,
  { joints }: BarNet,
  moved: Float64Array,
): { readonly hub: number; readonly mode: HubMode } {
  const mode = new Float64Array(hubs.length);
  let [hub, most] = [0, 0];
  joints.hub.forEach((one, joint) => {
    const by = moved.subarray(6 * joint, 6 * joint + 3);
    const size = Math.hypot(...by);
    if (size > Math.hypot(...mode.subarray(3 * one, 3 * one + 3))) mode.set(by, 3 * one);
    if (size > most * (1 + 1e-9)) [hub, most] = [one, size];
  });
  return { hub, mode: most > 0 ? mode.map((x) => x / most) : mode };
}
