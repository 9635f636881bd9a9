// The frame of a shell at a stage: which places have their panels, how far each seam is.

import type { PlaceId } from '../shell/ids.ts';
import { baseRing } from '../shell/rims.ts';
import { hubCount, hubsOf, placeCount, type Shell } from '../shell/shell.ts';
import type {
  FrameGuy,
  FrameModel,
  FrameProp,
  FrameSeam,
  FrameSupport,
  SeamPass,
} from './model.ts';

/** What stands, and how. */
export interface FrameStage {
  /** Places that have their panels; all where left out. */
  readonly placed?: Iterable<number>;
  /** How far a seam is (its index in the shell); null: not bolted yet. Snug where left out. */
  readonly pass?: (seam: number) => SeamPass | null;
  /** Hubs with a hub plate; none where left out. */
  readonly plates?: Iterable<number>;
  /** Held hubs; those of the shell's base ring where left out. */
  readonly supports?: readonly FrameSupport[];
  readonly props?: readonly FrameProp[];
  readonly guys?: readonly FrameGuy[];
}

/** The frame of a shell at a stage. Panels come in ascending order of place. Throws RangeError where
 * a place or a hub is none of the shell's, and where a value is no number. */
export function frameOf(shell: Shell, stage: FrameStage = {}): FrameModel {
  const places = placeCount(shell);
  const placed = [...new Set(stage.placed ?? [...Array(places).keys()])].sort((a, b) => a - b);
  const index = new Int32Array(places).fill(-1);
  placed.forEach((place, p) => {
    if (!(place >= 0 && place < places)) throw new RangeError(`place ${place} of ${places}`);
    index[place] = p;
  });
  const model: FrameModel = {
    hubs: shell.hubs,
    panels: placed.map((place) => ({ place, hubs: hubsOf(shell, place as PlaceId) })),
    seams: seamsOf(shell, index, stage.pass ?? (() => 'snug')),
    plates: flags(hubCount(shell), stage.plates ?? []),
    supports: stage.supports ?? baseSupports(shell),
    props: stage.props ?? [],
    guys: stage.guys ?? [],
  };
  assertFrame(model);
  return model;
}

/** All hubs of a shell's base ring, held; none where the shell is closed. */
export const baseSupports = (shell: Shell): FrameSupport[] =>
  Array.from(baseRing(shell)?.hubs ?? [], (hub) => ({ hub, stiffness: null }));

function seamsOf(
  shell: Shell,
  index: Int32Array,
  passOf: (seam: number) => SeamPass | null,
): FrameSeam[] {
  const seams: FrameSeam[] = [];
  for (let seam = 0; 2 * seam < shell.seams.length; seam++) {
    const [side, other] = [shell.seams[2 * seam], shell.seams[2 * seam + 1]];
    const panels = [index[shell.sidePlace[side]], index[shell.sidePlace[other]]] as const;
    if (panels[0] < 0 || panels[1] < 0) continue;
    const pass = passOf(seam);
    if (pass === null) continue;
    seams.push({ panels, hubs: [shell.sideHub[side], shell.sideHub[other]], pass });
  }
  return seams;
}

function flags(count: number, set: Iterable<number>): Uint8Array {
  const all = new Uint8Array(count);
  for (const one of set) {
    if (!(one >= 0 && one < count)) throw new RangeError(`hub ${one} of ${count}`);
    all[one] = 1;
  }
  return all;
}

function assertFrame(model: FrameModel): void {
  const count = model.hubs.length / 3;
  const hub = (what: string, one: number): void => {
    if (!(Number.isInteger(one) && one >= 0 && one < count))
      throw new RangeError(`${what} stands at hub ${one} of ${count}`);
  };
  const number = (what: string, value: number, least: number): void => {
    if (!(Number.isFinite(value) && value >= least))
      throw new RangeError(`${what} is ${value}, expected a number of at least ${least}`);
  };
  for (const { hub: one, stiffness } of model.supports) {
    hub('a support', one);
    for (const k of stiffness ?? []) number('the stiffness of a support', k, 0);
  }
  for (const { hub: one, along, stiffness } of model.props) {
    hub('a prop', one);
    if (!(Math.hypot(...along) > 0)) throw new RangeError(`a prop pushes along ${along}`);
    if (stiffness !== null) number('the stiffness of a prop', stiffness, 0);
  }
  for (const { hub: one, anchor, axialStiffness, pretension } of model.guys) {
    hub('a guy', one);
    for (const x of anchor) number('a coordinate of an anchor', x, Number.NEGATIVE_INFINITY);
    number('the axial stiffness of a guy', axialStiffness, 0);
    number('the pretension of a guy', pretension, 0);
  }
}
