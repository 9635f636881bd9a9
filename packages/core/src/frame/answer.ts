// What a frame does under a load: hub movements, reactions, props, guys, forces across seams and in
// their bolts, stress in panels, and how much of what is known to be borne that is. A stage that
// moves without resistance has its place and its movement for an answer, and no number.

import type { Provenance } from '../loads/provenance.ts';
import { distance, pointAt, type Vec3 } from '../math/vector.ts';
import { SEAM_BOLTS, SHEAR_PART } from './bolts.ts';
import type { Facet } from './elements/element.ts';
import { nodeForces } from './elements/element.ts';
import { type FrameLoad, nodeLoads } from './frame-loads.ts';
import { type Mechanism, mechanisms } from './mechanisms.ts';
import { type FrameMesh, meshOf } from './mesh.ts';
import type { FrameModel } from './model.ts';
import { facetForces, largestStress, sideForces } from './panel-stress.ts';
import type { FrameParts } from './parts.ts';
import { type AtRest, type Prepared, prepare, statics, type Unstable } from './statics.ts';

/** A part of what is known to be borne (1: all of it); unknown where that is. */
export type Utilisation = number | 'unknown';

/** Forces across a seam. */
export interface SeamForces {
  /** Largest pull across it, newtons per metre; 0 where it is pressed together throughout. */
  readonly pull: number;
  /** Largest force along it, newtons per metre. */
  readonly along: number;
  /** Largest moment about it, newton metres per metre; 0 where it is finger-tight. */
  readonly moment: number;
  /** Largest force on one bolt with the bolts spread evenly, newtons: pull, of which what prising
   * open by the moment adds, and shear. Null where the number of bolts is unknown. */
  readonly bolt: { readonly pull: number; readonly shear: number } | null;
  readonly utilisation: Utilisation;
}

/** A frame that stands under a load. */
export interface FrameStands {
  readonly status: 'stands';
  /** Hub → movement, stride 3, metres; that of the joint that moves most, 0 where nothing is. */
  readonly moved: Float64Array;
  /** Support → force of the ground on the hub, newtons. */
  readonly reactions: readonly Vec3[];
  /** Prop → its push, newtons; 0 where it hangs loose. */
  readonly props: readonly number[];
  /** Guy → its pull, newtons; 0 where it is slack. */
  readonly guys: readonly number[];
  readonly seams: readonly SeamForces[];
  /** Panel → largest equivalent stress, pascals, and part of its strength. */
  readonly panels: readonly { readonly stress: number; readonly utilisation: Utilisation }[];
  /** Largest imbalance at a node, part of the largest load on one: rounding. */
  readonly leftOver: number;
  /** What was supposed because it is unknown, and where numbers come from. */
  readonly supposed: readonly string[];
  readonly sources: readonly Provenance[];
}

/** A frame that moves without resistance. */
export interface FrameUnstable {
  readonly status: 'unstable';
  /** The hub that moves most. */
  readonly hub: number;
  readonly mode: Mechanism;
}

/** A frame whose guys and props found no state. */
export interface FrameUnsettled {
  readonly status: 'unsettled';
  /** Indices of the guys and props that went between slack and taut. */
  readonly guys: readonly number[];
  readonly props: readonly number[];
}

/** What a frame does under a load. */
export type FrameAnswer = FrameStands | FrameUnstable | FrameUnsettled;

/** A frame worked out once for every load. */
export interface PreparedFrame {
  readonly model: FrameModel;
  readonly parts: FrameParts;
  readonly mesh: FrameMesh;
  readonly prepared: Prepared;
  /** The first way in which it moves however taut the guys are; null where there is none. */
  readonly mechanism: Mechanism | null;
}

/** Works a frame out: its mesh, with each side in `pieces`, and its factor. */
export function prepareFrame(model: FrameModel, parts: FrameParts, pieces = 1): PreparedFrame {
  const mesh = meshOf(model, parts, pieces);
  const ties = parts.hubPlate === null ? model : foldsHeld(model);
  const found = mechanisms(ties, { guysTaut: true, softest: false, modes: 1 });
  return {
    model,
    parts,
    mesh,
    prepared: prepare(mesh.structure),
    mechanism: found.modes[0] ?? null,
  };
}

/** The same with the seams that end at a hub plate as snug ones: a stiff plate holds their angle. */
const foldsHeld = (model: FrameModel): FrameModel => ({
  ...model,
  seams: model.seams.map((seam) =>
    seam.pass === 'finger' && seam.hubs.some((hub) => model.plates[hub])
      ? { ...seam, pass: 'snug' }
      : seam,
  ),
});

/** What a frame does under a load. Bolts on each seam: their number, null where unknown. */
export function frameAnswer(
  frame: PreparedFrame,
  load: FrameLoad,
  bolts: (seam: number) => number | null = () => null,
): FrameAnswer {
  const { mesh, parts } = frame;
  const { rest: found, not } = atRest(frame, load);
  if (not) return not;
  const seams = seamForces(frame, found, bolts);
  return {
    status: 'stands',
    moved: hubMovements(frame, found.moved),
    reactions: reactionsOf(frame, found),
    props: mesh.props.map((list) => list.reduce((sum, e) => sum - found.forces[e][0], 0)),
    guys: mesh.guys.map((list) => list.reduce((sum, e) => sum + found.forces[e][0], 0)),
    seams,
    panels: panelStresses(frame, found),
    leftOver: found.leftOver,
    supposed: parts.supposed,
    sources: seams.some(({ bolt }) => bolt !== null)
      ? [...parts.sources, SEAM_BOLTS]
      : parts.sources,
  };
}

/** The state at rest of a frame under a load, or what it does instead. */
export function atRest(
  frame: PreparedFrame,
  load: FrameLoad,
):
  | { readonly rest: AtRest; readonly not: null }
  | { readonly rest: null; readonly not: FrameUnstable | FrameUnsettled } {
  const { mesh, parts, mechanism } = frame;
  const onNodes = nodeLoads(mesh, parts, load);
  if (mechanism)
    return { rest: null, not: { status: 'unstable', hub: mechanism.hub, mode: mechanism } };
  const found = statics(frame.prepared, onNodes);
  if (found.status === 'stands') return { rest: found, not: null };
  if (found.status === 'unstable') return { rest: null, not: unstable(frame, found) };
  const among = (lists: readonly (readonly number[])[]): number[] =>
    [...lists.keys()].filter((k) => lists[k].some((e) => found.elements.includes(e)));
  return {
    rest: null,
    not: { status: 'unsettled', guys: among(mesh.guys), props: among(mesh.props) },
  };
}

function unstable({ model, mesh }: PreparedFrame, found: Unstable): FrameUnstable {
  const corners = new Float64Array(3 * mesh.nodeOfCorner.length);
  mesh.nodeOfCorner.forEach((node, corner) => {
    for (let k = 0; k < 3; k++) corners[3 * corner + k] = found.mode[6 * node + k];
  });
  const most = corners.reduce((m, x) => Math.max(m, Math.abs(x)), 0);
  const scaled = most > 0 ? corners.map((x) => x / most) : corners;
  const size = (corner: number): number => Math.hypot(...scaled.slice(3 * corner, 3 * corner + 3));
  let best = 0;
  for (let corner = 1; 3 * corner < scaled.length; corner++)
    if (size(corner) > size(best) * (1 + 1e-9)) best = corner;
  const panels = [...model.panels.keys()].filter((p) => {
    for (let c = mesh.cornerStart[p]; c < mesh.cornerStart[p + 1]; c++)
      if (size(c) > 1e-6) return true;
    return false;
  });
  const hub = mesh.hubOfNode[mesh.nodeOfCorner[best]];
  return { status: 'unstable', hub, mode: { hub, corners: scaled, panels } };
}

/** Movement of each hub of a model, stride 3, from that of the nodes: of the joint that moves most. */
export function hubMovements({ model, mesh }: PreparedFrame, moved: Float64Array): Float64Array {
  const hubs = new Float64Array(model.hubs.length);
  const size = new Float64Array(model.hubs.length / 3);
  mesh.hubOfNode.forEach((hub, node) => {
    if (hub < 0) return;
    const by = moved.slice(6 * node, 6 * node + 3);
    const one = Math.hypot(...by);
    if (one <= size[hub]) return;
    size[hub] = one;
    hubs.set(by, 3 * hub);
  });
  return hubs;
}

function reactionsOf({ model, mesh, prepared }: PreparedFrame, rest: AtRest): Vec3[] {
  return model.supports.map(({ hub }, s) => {
    const spring = mesh.springs[s];
    if (spring >= 0) {
      const pushed = nodeForces(prepared.naturals[spring], rest.forces[spring]);
      return [-pushed[0], -pushed[1], -pushed[2]];
    }
    let sum: Vec3 = [0, 0, 0];
    mesh.hubOfNode.forEach((one, node) => {
      if (one !== hub) return;
      const r = rest.reactions.slice(6 * node, 6 * node + 3);
      sum = [sum[0] + r[0], sum[1] + r[1], sum[2] + r[2]];
    });
    return sum;
  });
}

function panelStresses(frame: PreparedFrame, rest: AtRest): FrameStands['panels'] {
  const { mesh, parts } = frame;
  return mesh.facets.map((facets) => {
    const stress = facets.reduce((most, e) => {
      const facet = mesh.structure.elements[e] as Facet;
      return Math.max(most, largestStress(facet, facetForces(mesh.structure, rest, e)));
    }, 0);
    return { stress, utilisation: parts.strength === null ? 'unknown' : stress / parts.strength };
  });
}

function seamForces(
  frame: PreparedFrame,
  rest: AtRest,
  bolts: (seam: number) => number | null,
): SeamForces[] {
  const { model, mesh, parts } = frame;
  return model.seams.map((seam, s) => {
    let [pull, along, moment] = [0, 0, 0];
    for (const panel of seam.panels)
      for (const { facet, e, side } of facetsAlong(frame, panel, seam.hubs)) {
        const forces = sideForces(
          mesh.structure,
          facet,
          facetForces(mesh.structure, rest, e),
          side,
        );
        pull = Math.max(pull, forces.pull);
        along = Math.max(along, Math.abs(forces.along));
        if (seam.pass !== 'finger') moment = Math.max(moment, Math.abs(forces.moment));
      }
    const count = bolts(s);
    const length = seamLength(model, seam.hubs);
    // The flanges prise about one of their edges: the bolts stand half way down.
    const lever = parts.flangeDepth / 2;
    const share = count === null || count <= 0 ? null : length / count;
    const bolt =
      share === null ? null : { pull: (pull + moment / lever) * share, shear: along * share };
    return { pull, along, moment, bolt, utilisation: boltUtilisation(bolt, parts.boltProof) };
  });
}

/** Pull and shear together, by an ellipse (common practice). */
function boltUtilisation(bolt: SeamForces['bolt'], proof: number | null): Utilisation {
  if (bolt === null || proof === null) return 'unknown';
  return Math.hypot(bolt.pull / proof, bolt.shear / (SHEAR_PART * proof));
}

const seamLength = (model: FrameModel, [a, b]: readonly [number, number]): number =>
  distance(pointAt(model.hubs, a), pointAt(model.hubs, b));

/** The facets of a panel that have a side on the line between two hubs. */
function facetsAlong(
  { model, mesh }: PreparedFrame,
  panel: number,
  [from, to]: readonly [number, number],
): { readonly facet: Facet; readonly e: number; readonly side: number }[] {
  const a = pointAt(model.hubs, from);
  const b = pointAt(model.hubs, to);
  const length = Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
  const onLine = (node: number): boolean => {
    const p = pointAt(mesh.structure.nodes, node);
    const t = [0, 1, 2].reduce((sum, k) => sum + (p[k] - a[k]) * (b[k] - a[k]), 0) / length ** 2;
    return Math.hypot(...[0, 1, 2].map((k) => p[k] - a[k] - t * (b[k] - a[k]))) < 1e-6 * length;
  };
  return mesh.facets[panel].flatMap((e) => {
    const facet = mesh.structure.elements[e] as Facet;
    const side = [0, 1, 2].find((k) => onLine(facet.nodes[k]) && onLine(facet.nodes[(k + 1) % 3]));
    return side === undefined ? [] : [{ facet, e, side }];
  });
}
