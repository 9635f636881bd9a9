// The ties of a stage with lines among them. A line is one more row, its stretch; a mast that nothing
// but its chains holds has a head that moves, and one row down to its foot. What pulls on a hub holds
// its corners together (a shackle through its plate or bolts).

import { jointsOf } from '../../frame/joints.ts';
import { gram, unknownsOf } from '../../frame/mechanisms.ts';
import type { FrameModel } from '../../frame/model.ts';
import { type RigidityRows, rigidityRows } from '../../frame/rigidity.ts';
import { symbolicFactor } from '../../math/sparse/symbolic.ts';
import { normalize, pointAt, scale, subtract, type Vec3 } from '../../math/vector.ts';
import type { Tied } from '../tied.ts';
import type { Line, Mast } from './gear.ts';

/** The ties of a stage with lines. Rows of the lines come last but for that of the mast. */
export interface Lined {
  readonly tied: Tied;
  readonly lines: readonly Line[];
  /** Row of each line: positive pull. */
  readonly rowOfLine: readonly number[];
  /** Row of a mast that its chains hold: its stretch, so that a push is below 0; −1: none. */
  readonly mastRow: number;
}

/** The ties of a frame with lines. `mast` is that of the chains, null where there are none. */
export function linedFrame(model: FrameModel, lines: readonly Line[], mast: Mast | null): Lined {
  const plates = model.plates.slice();
  for (const { hub } of lines) plates[hub] = 1;
  const joined = { ...model, plates };
  const joints = jointsOf(joined);
  const own = rigidityRows(joined, joints);
  const hasHead = mast !== null && !mast.guyed && lines.some(({ kind }) => kind === 'chain');
  const head = own.joints;
  const rows: [joint: number, by: Vec3][][] = lines.map(({ kind, hub, to }) => {
    const joint = joints.hub.indexOf(hub);
    if (joint < 0) throw new Error(`a ${kind} at hub ${hub}, which no panel reaches`);
    const along = normalize(subtract(pointAt(model.hubs, hub), to));
    return kind === 'chain' && hasHead
      ? [
          [joint, along],
          [head, scale(along, -1)],
        ]
      : [[joint, along]];
  });
  if (hasHead) rows.push([[head, normalize(subtract(mast.head, mast.foot))]]);
  const all = withRows(own, rows, hasHead ? 1 : 0);
  const unknown = unknownsOf(joined, joints, all);
  const matrix = gram(all, unknown);
  const first = own.start.length - 1;
  return {
    tied: {
      model: joined,
      joints,
      rows: all,
      unknown,
      matrix,
      symbolic: matrix.n === 0 ? null : symbolicFactor(matrix),
    },
    lines,
    rowOfLine: lines.map((_, k) => first + k),
    mastRow: hasHead ? first + lines.length : -1,
  };
}

function withRows(
  own: RigidityRows,
  more: readonly (readonly (readonly [number, Vec3])[])[],
  joints: number,
): RigidityRows {
  const ends = [...own.start];
  for (const row of more) ends.push((ends.at(-1) as number) + row.length);
  return {
    joints: own.joints + joints,
    start: Int32Array.from(ends),
    joint: Int32Array.from([...own.joint, ...more.flatMap((row) => row.map(([joint]) => joint))]),
    value: Float64Array.from([...own.value, ...more.flatMap((row) => row.flatMap(([, by]) => by))]),
  };
}

/** The same with some rows at rest: they resist nothing. The order of elimination stays. */
export function withoutTies(lined: Lined, resting: readonly number[]): Tied {
  const { rows, unknown } = lined.tied;
  if (resting.length === 0) return lined.tied;
  const value = rows.value.slice();
  for (const r of resting) value.fill(0, 3 * rows.start[r], 3 * rows.start[r + 1]);
  const left = { ...rows, value };
  return { ...lined.tied, rows: left, matrix: gram(left, unknown) };
}
