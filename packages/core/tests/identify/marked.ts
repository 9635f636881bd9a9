// Marked piles with the truth known: a net, a rule by which its panels were painted, then wrong,
// faded and missing marks, and joined groups noted by what is written on their panels.

import { liesOn } from '../../bench/heaps/same-net.ts';
import { alikeness, labelsOf } from '../../src/identify/alike.ts';
import { firstSides } from '../../src/identify/corner-model.ts';
import { identify } from '../../src/identify/identify.ts';
import { type MarkAccount, marksInNet } from '../../src/identify/marks-in-net.ts';
import { shapeQuestion } from '../../src/identify/question.ts';
import type { Shape } from '../../src/identify/shape.ts';
import { type Random, seededRandom } from '../../src/math/random.ts';
import { dot, normalize, type Vec3 } from '../../src/math/vector.ts';
import type { NetShell } from '../../src/nets/kinds.ts';
import { readPile } from '../../src/pile/check.ts';
import type { Kind } from '../../src/pile/kind.ts';
import { kindsOfPile } from '../../src/pile/kinds.ts';
import { hubPoint, placeCentre } from '../../src/shell/geometry.ts';
import type { HubId, PlaceId } from '../../src/shell/ids.ts';
import { cornerCount, placeCount, type Shell } from '../../src/shell/shell.ts';
import { starsOf } from '../../src/shell/stars.ts';
import { placeOrbits, symmetries } from '../../src/shell/symmetry.ts';
import { readKinds, truthOf } from './piles.ts';

/** Labels under which panels may be turned onto themselves. */
const labelsIn = (shell: Shell, sides: readonly (readonly number[])[]): Int32Array =>
  labelsOf(shell, alikeness(sides, firstSides(sides), 1e-6));

/** The marks around every hub, anticlockwise, as a text that no numbering changes. */
export function runsOfMarks(shell: Shell, marks: readonly (string | null)[]): string {
  const runs = starsOf(shell).map(({ corners }) => {
    const around = corners.map((side) => marks[shell.sidePlace[side] as number] ?? '-');
    return around.map((_, i) => [...around.slice(i), ...around.slice(0, i)].join()).sort()[0];
  });
  return runs.sort().join(';');
}

export type Painted = 'shape' | 'coarser' | 'neighbours' | 'level';

/** How worn the marks are, and how many groups were noted. */
export interface Wear {
  readonly wrong: number;
  readonly faded: number;
  readonly bare: number;
  readonly groups: number;
}

/** A panel as it lies in the heap. */
export interface Panel {
  readonly place: number;
  /** What it should bear, and what is written down; undefined: nothing. */
  readonly true: string;
  readonly written: string | undefined;
  readonly isWrong: boolean;
}

export interface Marked {
  readonly truth: NetShell;
  /** The kind whose panels bear several marks, or null. */
  readonly split: number | null;
  readonly panels: readonly Panel[];
  /** Of the account, and of all before it, milliseconds. */
  readonly ms: number;
  readonly shape: Shape;
  readonly account: MarkAccount;
  /** Reading → its panels. */
  readonly lots: readonly (readonly Panel[])[];
  /** The panels of each joined group. */
  readonly joined: readonly (readonly Panel[])[];
}

/** A mark for every place. */
function paint(
  truth: NetShell,
  painted: Painted,
  random: Random,
): { marks: string[]; split: number | null } {
  const { shell, kinds } = truth;
  const marks = Array.from(shell.kind, (k) => `${k + 1}`);
  if (painted === 'coarser') {
    const [a, b] = random.shuffle(kinds.map((_, k) => k)) as [number, number];
    return { marks: marks.map((mark) => (mark === `${a + 1}` ? `${b + 1}` : mark)), split: null };
  }
  if (painted === 'neighbours') {
    const orbits = placeOrbits(
      shell,
      symmetries(
        shell,
        labelsIn(
          shell,
          kinds.map((k) => k.sides),
        ),
      ),
    );
    const orbitsOf = (k: number): number[] => [
      ...new Set([...orbits].filter((_, p) => shell.kind[p] === k)),
    ];
    const split = random.shuffle(kinds.map((_, k) => k)).find((k) => orbitsOf(k).length > 1);
    if (split === undefined) throw new Error('no kind has places of several sorts');
    const one = random.shuffle(orbitsOf(split))[0];
    return {
      marks: marks.map((mark, p) =>
        shell.kind[p] !== split ? mark : `${mark}${orbits[p] === one ? 'a' : 'b'}`,
      ),
      split,
    };
  }
  if (painted === 'level') {
    const split = random.below(kinds.length);
    // A five-fold axis: a corner of the solid.
    const corner = starsOf(shell).find((star) => star.corners.length === 5);
    const up: Vec3 = normalize(hubPoint(shell, corner?.hub as HubId));
    const heights = Array.from({ length: placeCount(shell) }, (_, p) =>
      Number((dot(placeCentre(shell, p as PlaceId), up) / shell.radius).toFixed(6)),
    );
    const levels = [...new Set(heights.filter((_, p) => shell.kind[p] === split))].sort(
      (a, b) => a - b,
    );
    const cut = levels[1 + random.below(levels.length - 1)] as number;
    return {
      marks: marks.map((mark, p) =>
        shell.kind[p] !== split ? mark : `${mark}${(heights[p] as number) >= cut ? 'a' : 'b'}`,
      ),
      split,
    };
  }
  return { marks, split: null };
}

function wornMark(mark: string, all: readonly string[], wear: Wear, random: Random) {
  const others = all.filter((one) => one !== mark);
  const x = random.uniform();
  const other = others[random.below(others.length)];
  if (other !== undefined && x < wear.wrong) return { written: other, isWrong: true };
  if (other !== undefined && x < wear.wrong + wear.faded)
    return {
      written: random.uniform() < 0.3 ? `${mark}?` : random.shuffle([mark, other]).join('|'),
      isWrong: false,
    };
  if (x < wear.wrong + wear.faded + wear.bare) return { written: undefined, isWrong: false };
  return { written: mark, isWrong: false };
}

const found = new Map<string, Shape>();

/** The true shape as identified from good readings, in the numbering of the truth's kinds; of twins
 * the true one. Found once for each net. */
function trueShape(net: readonly [number, number], truth: NetShell): Shape {
  const known = found.get(net.join());
  if (known) return known;
  const shape = identify({ kinds: readKinds(truth, 0.0003, 1), groups: [] }).shapes.find(
    ({ shell, fittedSides }) =>
      liesOn(
        shell,
        fittedSides.map((sides) => ({ sides, within: 0.003 })),
        truth,
      ),
  );
  if (!shape) throw new Error(`the net ${net} is not found`);
  found.set(net.join(), shape);
  return shape;
}

/** The shape in the numbering of a pile's kinds, whose sides may start elsewhere. */
function inKinds(shape: Shape, truth: NetShell, kinds: readonly Kind[]): Shape {
  const off = (a: readonly number[], b: readonly number[], by: number): number =>
    Math.max(...a.map((x, i) => Math.abs(x - (b[(i + by) % b.length] as number))));
  const to = truth.kinds.map(({ sides }) => {
    const ways = kinds.flatMap((kind, k) => sides.map((_, by) => ({ k, by, kind })));
    return ways.reduce((best, way) =>
      off(sides, way.kind.sides, way.by) < off(sides, best.kind.sides, best.by) ? way : best,
    );
  });
  const { shell } = shape;
  const fittedSides: number[][] = kinds.map(({ sides }) => [...sides]);
  to.forEach(({ k, by }, from) => {
    const own = shape.fittedSides[from] as readonly number[];
    fittedSides[k] = own.map((_, i) => own[(i - by + own.length) % own.length] as number);
  });
  const by = (k: number): { readonly k: number; readonly by: number } =>
    to[k] as { readonly k: number; readonly by: number };
  return {
    ...shape,
    fittedSides,
    shell: {
      ...shell,
      kind: shell.kind.map((k) => by(k).k),
      turn: shell.turn.map(
        (turn, p) => (turn + by(shell.kind[p] as number).by) % cornerCount(shell, p as PlaceId),
      ),
    },
  };
}

/** A marked pile and its account. */
export function markedPile(
  net: readonly [number, number],
  painted: Painted,
  wear: Wear,
  seed: number,
): Marked {
  const random = seededRandom(seed);
  const truth = truthOf(net[0], net[1]);
  const { marks, split } = paint(truth, painted, random);
  const all = [...new Set(marks)];
  const panels = marks.map(
    (mark, place): Panel => ({
      place,
      true: mark,
      ...wornMark(mark, all, wear, random),
    }),
  );
  const lots = new Map<string, Panel[]>();
  for (const panel of panels) {
    const key = `${truth.shell.kind[panel.place]} ${panel.written ?? ''}`;
    lots.set(key, [...(lots.get(key) ?? []), panel]);
  }
  const list = random.shuffle([...lots.values()]);
  const readings = list.map((lot) => {
    const { place, written } = lot[0] as Panel;
    const kind = truth.kinds[truth.shell.kind[place] as number] as NetShell['kinds'][number];
    return {
      sides: kind.sides.map((side) => Number((side + 0.0005 * random.normal()).toFixed(4))),
      seenFrom: 'outside',
      count: lot.length,
      ...(written !== undefined && { mark: written }),
    };
  });
  const joined = random
    .shuffle(starsOf(truth.shell))
    .slice(0, wear.groups)
    .map(({ corners }) =>
      corners.map((side) => panels[truth.shell.sidePlace[side] as number] as Panel),
    );
  const groups = joined.map((own) => ({
    around: own.map(({ written }) => written ?? '?'),
    closed: true,
  }));
  const read = readPile({ hubAllowance: 0, readingSd: 0.0005, readings, groups });
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  const worked = kindsOfPile(read.value);
  const question = shapeQuestion(read.value, worked);
  const shape = inKinds(trueShape(net, truth), truth, question.kinds);
  const before = performance.now();
  const account = marksInNet(shape, question.kinds, read.value, worked);
  const ms = performance.now() - before;
  return { truth, split, panels, ms, shape, account, lots: list, joined };
}
