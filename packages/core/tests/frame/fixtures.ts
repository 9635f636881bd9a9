// Frames to try things on: class I icosahedral nets with a corner of the solid at the top, and the
// stages that tables speak of. Rows of hubs are counted from the top.

import { type FrameStage, frameOf } from '../../src/frame/from-shell.ts';
import type { FrameModel, FrameSupport } from '../../src/frame/model.ts';
import { rotateAbout, type Vec3 } from '../../src/math/vector.ts';
import type { HubId, PlaceId } from '../../src/shell/ids.ts';
import { crownAtHub, orientShell } from '../../src/shell/orient.ts';
import { hubCount, hubsOf, placeCount, type Shell } from '../../src/shell/shell.ts';
import { icosahedral } from '../shell/fixtures.ts';

/** A whole ball of radius 1, a hub of five panels on top. */
export function ball(b: number): Shell {
  const { shell } = icosahedral(b, 0);
  return orientShell(shell, crownAtHub(shell, fiveHub(shell)));
}

function fiveHub(shell: Shell): HubId {
  const corners = new Int32Array(hubCount(shell));
  for (const hub of shell.sideHub) corners[hub]++;
  return corners.indexOf(5) as HubId;
}

/** Hub → its row: steps along seams from the topmost hub. */
export function rowsOf(shell: Shell): Int32Array {
  const row = new Int32Array(hubCount(shell)).fill(-1);
  let top = 0;
  for (let hub = 0; hub < row.length; hub++)
    if (shell.hubs[3 * hub + 2] > shell.hubs[3 * top + 2]) top = hub;
  row[top] = 0;
  for (let now = 0, changed = true; changed; now++) {
    changed = false;
    for (let p = 0; p < placeCount(shell); p++) {
      const hubs = hubsOf(shell, p as PlaceId);
      if (!hubs.some((hub) => row[hub] === now)) continue;
      for (const hub of hubs)
        if (row[hub] < 0) {
          row[hub] = now + 1;
          changed = true;
        }
    }
  }
  return row;
}

/** Places whose hubs all lie in rows `from` to `to`. */
export function tiers(shell: Shell, from: number, to: number): number[] {
  const row = rowsOf(shell);
  return [...Array(placeCount(shell)).keys()].filter((p) =>
    hubsOf(shell, p as PlaceId).every((hub) => row[hub] >= from && row[hub] <= to),
  );
}

/** Hubs of one row, held. */
export function heldRow(shell: Shell, row: number): FrameSupport[] {
  const held: FrameSupport[] = [];
  rowsOf(shell).forEach((one, hub) => {
    if (one === row) held.push({ hub, stiffness: null });
  });
  return held;
}

/** A stage with every seam finger-tight. */
export const hinged = (shell: Shell, stage: FrameStage = {}): FrameModel =>
  frameOf(shell, { pass: () => 'finger', supports: [], ...stage });

/** A frame moved as a whole. */
export function movedFrame(model: FrameModel, axis: Vec3, angle: number, by: Vec3): FrameModel {
  const hubs = new Float64Array(model.hubs.length);
  for (let h = 0; h < hubs.length; h += 3) {
    const turned = rotateAbout([model.hubs[h], model.hubs[h + 1], model.hubs[h + 2]], axis, angle);
    for (let k = 0; k < 3; k++) hubs[h + k] = turned[k] + by[k];
  }
  return { ...model, hubs };
}
