// Which corners move together. Corners that a seam joins are one joint of the frame; corners that
// only touch at a hub are not, unless a hub plate joins them or the hub is held at the ground.
//
//     ╲ A ╱ ╲ B ╱        A and B meet only at the hub: two joints, each moves by itself. With
//      ╲ ╱   ╲ ╱         a plate over the hub, or panels bolted all the way between them: one.
//       ●     ●

import { joinInto, rootInto, singletons } from '../math/sets.ts';
import type { FrameModel } from './model.ts';

/** The joints of a frame. Corners run through the panels in order: panel p has those from
 * cornerStart[p], one for each of its hubs. */
export interface Joints {
  readonly cornerStart: Int32Array;
  /** Corner → joint. */
  readonly jointOfCorner: Int32Array;
  /** Joint → hub at which it stands. */
  readonly hub: Int32Array;
}

/** Which corners move together, and which of those turn together too: corner → the first corner of
 * its set. Those turn together that snug seams join. */
export interface JoinedCorners {
  readonly cornerStart: Int32Array;
  readonly moves: Int32Array;
  readonly turns: Int32Array;
}

/** Which corners of a frame move together and turn together. */
export function joinedCorners(model: FrameModel): JoinedCorners {
  const cornerStart = new Int32Array(model.panels.length + 1);
  model.panels.forEach((panel, p) => {
    cornerStart[p + 1] = cornerStart[p] + panel.hubs.length;
  });
  const each = singletons(cornerStart[model.panels.length]);
  const moves = each.slice();
  joinAtSeams(model, cornerStart, moves, false);
  joinAtHubs(model, cornerStart, moves);
  const turns = each;
  joinAtSeams(model, cornerStart, turns, true);
  for (const leader of [moves, turns])
    for (let corner = 0; corner < leader.length; corner++)
      leader[corner] = rootInto(leader, corner);
  return { cornerStart, moves, turns };
}

/** The joints of a frame, numbered in the order of the first corner of each. */
export function jointsOf(model: FrameModel): Joints {
  const { cornerStart, moves } = joinedCorners(model);
  const jointOfCorner = new Int32Array(moves.length);
  const hubs: number[] = [];
  model.panels.forEach((panel, p) => {
    panel.hubs.forEach((hub, i) => {
      const corner = cornerStart[p] + i;
      const first = moves[corner];
      jointOfCorner[corner] = first === corner ? hubs.push(hub) - 1 : jointOfCorner[first];
    });
  });
  return { cornerStart, jointOfCorner, hub: Int32Array.from(hubs) };
}

/** Corner of a panel at a hub. Throws where the panel has none there. */
export function cornerAt(
  model: FrameModel,
  cornerStart: Int32Array,
  panel: number,
  hub: number,
): number {
  const at = model.panels[panel].hubs.indexOf(hub);
  if (at < 0) throw new Error(`panel ${panel} has no corner at hub ${hub}`);
  return cornerStart[panel] + at;
}

function joinAtSeams(
  model: FrameModel,
  cornerStart: Int32Array,
  leader: Int32Array,
  onlySnug: boolean,
): void {
  for (const seam of model.seams) {
    if (onlySnug && seam.pass === 'finger') continue;
    for (const hub of seam.hubs)
      joinInto(
        leader,
        cornerAt(model, cornerStart, seam.panels[0], hub),
        cornerAt(model, cornerStart, seam.panels[1], hub),
      );
  }
}

function joinAtHubs(model: FrameModel, cornerStart: Int32Array, leader: Int32Array): void {
  const joined = model.plates.slice();
  for (const support of model.supports) joined[support.hub] = 1;
  const first = new Int32Array(joined.length).fill(-1);
  model.panels.forEach((panel, p) => {
    panel.hubs.forEach((hub, i) => {
      if (!joined[hub]) return;
      const corner = cornerStart[p] + i;
      if (first[hub] < 0) first[hub] = corner;
      else joinInto(leader, first[hub], corner);
    });
  });
}
