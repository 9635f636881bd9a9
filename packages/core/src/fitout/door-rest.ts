// A shell with some of its panels at rest under their weight and, where told, snow: every seam snug, a
// plate on every hub, the base ring held. Each panel's load is put on its hubs in equal parts.

import type { Beam } from '../frame/elements/element.ts';
import { GRAVITY } from '../frame/frame-loads.ts';
import { frameOf } from '../frame/from-shell.ts';
import { type FrameMesh, meshOf } from '../frame/mesh.ts';
import type { FrameProp } from '../frame/model.ts';
import type { FrameParts } from '../frame/parts.ts';
import { type AtRest, type Prepared, prepare, statics } from '../frame/statics.ts';
import { vectorArea } from '../shell/geometry.ts';
import type { PlaceId } from '../shell/ids.ts';
import { hubCount, hubsOf, type Shell } from '../shell/shell.ts';

/** What stands, and under what. */
export interface RestQuestion {
  readonly shell: Shell;
  readonly parts: FrameParts;
  /** Places with their panels. */
  readonly placed: readonly number[];
  /** Kilograms of a place's panel. */
  readonly massOf: (place: number) => number;
  /** Snow, pascals on the plan of panels that look upwards; none where left out. */
  readonly snow?: number;
  readonly props?: readonly FrameProp[];
  /** Beams that are added to the frame, from its mesh; none where left out. */
  readonly beams?: (mesh: FrameMesh) => readonly Beam[];
}

/** A frame that is factored, for any load. */
export interface Standing {
  readonly question: RestQuestion;
  readonly mesh: FrameMesh;
  readonly prepared: Prepared;
  /** How many elements the frame has of its own: added beams come after them. */
  readonly own: number;
}

/** A frame at rest. */
export interface Rested extends Standing {
  readonly at: AtRest;
}

/** The frame, factored. */
export function standingOf(question: Omit<RestQuestion, 'snow'>): Standing {
  const { shell, parts, placed, props = [], beams } = question;
  const plates = [...Array(hubCount(shell)).keys()];
  const plain = meshOf(frameOf(shell, { placed, plates, pass: () => 'snug', props }), parts);
  const { structure } = plain;
  const elements = [...structure.elements, ...(beams?.(plain) ?? [])];
  const mesh = { ...plain, structure: { ...structure, elements } };
  return { question, mesh, prepared: prepare(mesh.structure), own: structure.elements.length };
}

/** The frame under its weight and so much snow; null where it does not stand. */
export function underLoad(standing: Standing, snow = 0): Rested | null {
  const { question, mesh, prepared } = standing;
  const { shell, placed, massOf } = question;
  const load = new Float64Array(2 * mesh.structure.nodes.length);
  for (const place of placed) {
    const hubs = hubsOf(shell, place as PlaceId);
    const plan = Math.max(0, vectorArea(shell, place as PlaceId)[2]);
    const down = massOf(place) * GRAVITY + snow * plan;
    for (const hub of hubs) {
      const node = mesh.hubOfNode.indexOf(hub);
      if (node >= 0) load[6 * node + 2] -= down / hubs.length;
    }
  }
  const at = statics(prepared, load);
  return at.status === 'stands' ? { ...standing, at } : null;
}

/** The frame at rest; null where it does not stand. */
export const restOf = ({ snow = 0, ...question }: RestQuestion): Rested | null =>
  underLoad(standingOf(question), snow);

/** The greatest fall among hubs, metres; 0 where none falls. */
export function fallOf({ mesh, at }: Rested, hubs: ReadonlySet<number>): number {
  let most = 0;
  mesh.hubOfNode.forEach((hub, node) => {
    if (hubs.has(hub)) most = Math.max(most, -(at.moved[6 * node + 2] as number));
  });
  return most;
}
