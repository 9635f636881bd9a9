// A stage with lines under a load: lines that would have to push hang slack, one after the other, those
// that would be stretched pull again, until all agree. Where what is left moves freely the stage
// falls; where lines go to and fro that counts as falling too, as does one that carries nothing though
// it is needed.

import { solveInto } from '../../math/sparse/solve.ts';
import { freeCount, holdingForces, type Standing, standing } from '../tied.ts';
import { NO_PULL } from '../tolerances.ts';
import { type Lined, withoutTies } from './lined.ts';

/** What lines, mast and held hubs carry. */
export interface LinedForces {
  /** Line → its pull, N; 0 where it hangs slack. */
  readonly pulls: Float64Array;
  /** Push on a mast that its chains hold, N; 0 where there is none. */
  readonly mast: number;
  /** Forces of what is held on the joints, stride 3, N. */
  readonly held: Float64Array;
}

/** Answers for one stage with lines, load by load; what it found of slack lines is kept. */
export class OneWayStage {
  private readonly lined: Lined;
  private readonly known = new Map<string, Standing | null>();

  constructor(lined: Lined) {
    this.lined = lined;
  }

  /** What carries a load on the joints (stride 3, N); null: the stage falls. */
  under(load: Float64Array): LinedForces | null {
    const { rowOfLine, mastRow } = this.lined;
    const oneWay = mastRow < 0 ? rowOfLine : [...rowOfLine, mastRow];
    const size = load.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
    const slack = new Set<number>();
    for (let turn = 0; turn <= 4 * oneWay.length; turn++) {
      const stage = this.with(slack);
      if (stage === null) return null;
      const stretch = stretches(this.lined, stage, load, oneWay);
      const pullOf = (k: number): number =>
        (oneWay[k] === mastRow ? -1 : 1) * (stretch[k] as number);
      const again = oneWay.findIndex((r, k) => slack.has(r) && pullOf(k) > NO_PULL * size);
      if (again >= 0) {
        slack.delete(oneWay[again] as number);
        continue;
      }
      let worst = -1;
      oneWay.forEach((r, k) => {
        if (slack.has(r) || pullOf(k) > NO_PULL * size) return;
        if (worst < 0 || pullOf(k) < pullOf(worst)) worst = k;
      });
      if (worst >= 0) {
        slack.add(oneWay[worst] as number);
        continue;
      }
      const carried = (k: number): number => (slack.has(oneWay[k] as number) ? 0 : pullOf(k));
      return {
        pulls: Float64Array.from(rowOfLine, (_, k) => carried(k)),
        mast: mastRow < 0 ? 0 : carried(rowOfLine.length),
        held: holdingForces(stage, load),
      };
    }
    return null;
  }

  private with(slack: ReadonlySet<number>): Standing | null {
    const resting = [...slack].sort((a, b) => a - b);
    const key = resting.join();
    const known = this.known.get(key);
    if (known !== undefined) return known;
    const tied = withoutTies(this.lined, resting);
    const found = freeCount(tied) > 0 ? null : standing(tied);
    this.known.set(key, found);
    return found;
  }
}

/** Stretch of rows under a load, in the whole's measure: what a tie at work carries. */
function stretches(
  { tied }: Lined,
  { factor }: Standing,
  load: Float64Array,
  of: readonly number[],
): number[] {
  const { unknown, matrix, rows } = tied;
  const moved = new Float64Array(matrix.n);
  for (let i = 0; i < load.length; i++) if (unknown[i] >= 0) moved[unknown[i]] += load[i];
  if (factor) solveInto(moved, factor, moved, new Float64Array(2 * matrix.n));
  return of.map((r) => {
    let sum = 0;
    for (let k = rows.start[r]; k < rows.start[r + 1]; k++)
      for (let x = 0; x < 3; x++) {
        const i = unknown[3 * rows.joint[k] + x];
        if (i >= 0) sum += rows.value[3 * k + x] * moved[i];
      }
    return sum;
  });
}
