// Which single panel goes where among places of its kind: long sides against long ones, so that the
// misfit of the seams, and its sum round each course, is least; mended and doubtful panels low.
//
// Method: from the panels in the order given, swaps and moves from the pile of spares while they
// lessen the cost: a local search, so a good answer and no proof.

import type { SideId } from '../../shell/ids.ts';
import { kindSide, placeCount, type Shell, sideCount } from '../../shell/shell.ts';

/** One panel with a tag. */
export interface SinglePanel {
  readonly tag: string;
  /** Its family. */
  readonly family: number;
  /** For each side of its kind, from side 0: measured less fitted, metres. */
  readonly off: readonly number[];
  /** Mended or doubtful: put low. */
  readonly weak: boolean;
}

/** The shell that the panels go into. */
export interface SinglesQuestion {
  readonly shell: Shell;
  /** Place → family of the panel that it takes; −1 where none of the singles goes. */
  readonly family: ArrayLike<number>;
  /** Place → course, from 1. */
  readonly course: ArrayLike<number>;
  readonly panels: readonly SinglePanel[];
}

/** Who goes where. */
export interface SinglesAnswer {
  /** Place → index of its panel, −1 where there is none left of its kind. */
  readonly panelAt: Int32Array;
  /** Root mean square misfit of a seam between two singles, metres: as they come, and as told here. */
  readonly before: number;
  readonly after: number;
  /** Largest sum of misfits round a course, metres. */
  readonly worstCourse: number;
}

/** A weak panel costs, for each course above the first, as much as a seam off by this, metres. */
const WEAK = 0.001;
/** A course that is fat or thin by the root of its number of panels times this is even, metres. */
const COURSE_WEIGHT = 0.25;
const ROUNDS = 40;

/** Every place with a panel, as even as the search gets. Deterministic. */
export function placeSingles(question: SinglesQuestion): SinglesAnswer {
  const fitting = new Fitting(question);
  const before = fitting.seamMisfit();
  const slots = slotsOf(question, fitting.panelAt);
  for (let round = 0; round < ROUNDS; round++) {
    let moved = false;
    for (const { places, spare } of slots)
      for (const p of places) {
        for (const q of places) if (q > p && fitting.swapIfBetter(p, q)) moved = true;
        for (let s = 0; s < spare.length; s++) if (fitting.takeIfBetter(p, spare, s)) moved = true;
      }
    if (!moved) break;
  }
  const after = fitting.seamMisfit();
  return { panelAt: fitting.panelAt, before, after, worstCourse: fitting.worstCourse() };
}

/** Panels to places of their family in the order of both. */
function firstCome({ family, panels, shell }: SinglesQuestion): Int32Array {
  const left = new Map<number, number[]>();
  panels.forEach((panel, i) => {
    left.set(panel.family, [...(left.get(panel.family) ?? []), i]);
  });
  return Int32Array.from(
    { length: placeCount(shell) },
    (_, p) => left.get(family[p] as number)?.shift() ?? -1,
  );
}

interface Slots {
  readonly places: readonly number[];
  /** Panels of the family that have no place; changed in place. */
  readonly spare: number[];
}

function slotsOf({ family, panels }: SinglesQuestion, panelAt: Int32Array): Slots[] {
  const used = new Set(panelAt);
  const families = [...new Set(panels.map((panel) => panel.family))];
  return families.map((own) => ({
    places: [...panelAt.keys()].filter((p) => family[p] === own && (panelAt[p] as number) >= 0),
    spare: [...panels.keys()].filter((i) => panels[i]?.family === own && !used.has(i)),
  }));
}

/** A change is one that lessens the cost by more than rounding, square metres. */
const LESS = 1e-15;

/** Panels in places, with what their sides are off by kept at hand; changed in place. */
class Fitting {
  readonly panelAt: Int32Array;
  /** Side → measured less fitted, metres; NaN where there is no panel. */
  private readonly off: Float64Array;
  /** Course → how much further round it comes than fitted, metres: half the sides that its panels
   * turn to the courses above and below and to the ground. */
  private readonly further: Float64Array;
  private readonly panelsOfCourse: Float64Array;
  private readonly isOuter: Uint8Array;

  constructor(private readonly question: SinglesQuestion) {
    const { shell, course } = question;
    this.panelAt = firstCome(question);
    this.off = new Float64Array(sideCount(shell)).fill(Number.NaN);
    this.isOuter = Uint8Array.from(shell.mate, (mate, s) => {
      const own = course[shell.sidePlace[s] as number];
      return mate >= 0 && course[shell.sidePlace[mate] as number] === own ? 0 : 1;
    });
    const most = Math.max(
      0,
      ...Array.from({ length: placeCount(shell) }, (_, p) => course[p] as number),
    );
    this.further = new Float64Array(most + 1);
    this.panelsOfCourse = new Float64Array(most + 1);
    this.panelAt.forEach((panel, p) => {
      this.panelsOfCourse[course[p] as number] =
        (this.panelsOfCourse[course[p] as number] as number) + 1;
      this.lay(p, panel);
    });
  }

  /** Exchanges the panels of two places where that lessens the cost. */
  swapIfBetter(p: number, q: number): boolean {
    const [a, b] = [this.panelAt[p] as number, this.panelAt[q] as number];
    const was = this.costAt(p, q);
    this.lay(p, b);
    this.lay(q, a);
    if (this.costAt(p, q) < was - LESS) return true;
    this.lay(p, a);
    this.lay(q, b);
    return false;
  }

  /** Exchanges the panel of a place for a spare one where that lessens the cost. */
  takeIfBetter(p: number, spare: number[], s: number): boolean {
    const kept = this.panelAt[p] as number;
    const was = this.costAt(p, p);
    this.lay(p, spare[s] as number);
    if (this.costAt(p, p) < was - LESS) {
      spare[s] = kept;
      return true;
    }
    this.lay(p, kept);
    return false;
  }

  /** Root mean square misfit of the seams between two panels, metres. */
  seamMisfit(): number {
    const { seams } = this.question.shell;
    let [sum, count] = [0, 0];
    for (let i = 0; i < seams.length; i += 2) {
      const off =
        (this.off[seams[i] as number] as number) - (this.off[seams[i + 1] as number] as number);
      if (Number.isNaN(off)) continue;
      sum += off ** 2;
      count++;
    }
    return count === 0 ? 0 : Math.sqrt(sum / count);
  }

  worstCourse(): number {
    return this.further.reduce((most, own) => Math.max(most, Math.abs(own)), 0);
  }

  private lay(p: number, panel: number): void {
    const { shell, course, panels } = this.question;
    const c = course[p] as number;
    this.panelAt[p] = panel;
    const own = panels[panel]?.off;
    for (let s = shell.placeStart[p] as number; s < (shell.placeStart[p + 1] as number); s++) {
      const was = this.off[s] as number;
      const now = own?.[kindSide(shell, s as SideId)] ?? Number.NaN;
      this.off[s] = now;
      if (this.isOuter[s])
        this.further[c] = (this.further[c] as number) + ((now || 0) - (was || 0)) / 2;
    }
  }

  /** Squares of misfits of the seams at two places (or one), of the sums round their courses, and what
   * weak panels cost there. */
  private costAt(p: number, q: number): number {
    const { course } = this.question;
    const [c, d] = [course[p] as number, course[q] as number];
    const courses = this.courseCost(c) + (c === d ? 0 : this.courseCost(d));
    return courses + this.placeCost(p, -1) + (p === q ? 0 : this.placeCost(q, p));
  }

  private courseCost(c: number): number {
    return (COURSE_WEIGHT * (this.further[c] as number)) ** 2 / (this.panelsOfCourse[c] as number);
  }

  /** The seams of a place but those to `without`. */
  private placeCost(p: number, without: number): number {
    const { shell, course, panels } = this.question;
    let cost = panels[this.panelAt[p] as number]?.weak
      ? ((course[p] as number) - 1) * WEAK ** 2
      : 0;
    for (let s = shell.placeStart[p] as number; s < (shell.placeStart[p + 1] as number); s++) {
      const mate = shell.mate[s] as number;
      if (mate < 0 || shell.sidePlace[mate] === without) continue;
      const off = (this.off[s] as number) - (this.off[mate] as number);
      if (!Number.isNaN(off)) cost += off ** 2;
    }
    return cost;
  }
}
