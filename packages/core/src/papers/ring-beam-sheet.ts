// The ring beam on paper: which pieces to cut, how the saw is set, and where each lies under the base.

import type { Base, BaseHub, PlanPoint } from '../ground/base.ts';
import {
  type BeamPiece,
  beamCuts,
  cutFromStock,
  type RingBeamOptions,
  ringBeam,
} from '../ground/ring-beam.ts';
import { writeAngle } from '../measure/units.ts';
import { type Drawing, type Item, line, text } from './drawing.ts';
import { cautionOf, type SheetFacts } from './flat-plan-sheet.ts';
import {
  baseItems,
  type GroundPlacing,
  groundSheets,
  hubNumbers,
  plainRow,
} from './ground-plan.ts';
import {
  type LengthsShown,
  largeFirst,
  lengthFirst,
  lengthSecond,
  lengthsNote,
} from './length-text.ts';
import { type Paper, pageOf } from './page.ts';

/** Options of `ringBeamSheets`. */
export interface RingBeamSheetOptions {
  readonly paper?: Paper;
  readonly lengths?: LengthsShown;
  /** Where the datum peg stands, metres from the centre; 1 m outside the ring unless told. */
  readonly datum?: number;
}

const caution =
  'Lengths in the plan, for a beam that lies level: cut one piece and try it between its stakes before the others. What the beam and its joints bear, and how it is held down, is not reckoned here.';

/** Two hubs closer than this to one number on the plan would run into each other, millimetres. */
const CLOSE = 7;

/** The cut list of a ring beam, one sheet at least; `stock`: length that the timber comes in, metres,
 * null where nobody said. RangeError where the beam can't be, as `ringBeam`. */
export function ringBeamSheets(
  base: Base,
  beam: RingBeamOptions & { readonly stock: number | null },
  facts: SheetFacts,
  options: RingBeamSheetOptions = {},
): Drawing[] {
  const shown = options.lengths ?? 'metric';
  const pieces = ringBeam(base, beam);
  const cuts = beamCuts(pieces);
  const sizeOf = new Map(cuts.flatMap(({ from }, i) => from.map((hub) => [hub, i + 1] as const)));
  const datum = options.datum ?? Math.max(...base.hubs.map((hub) => hub.radius)) + 1;
  const { width, outside = 0 } = beam;
  const faces = [outside + width / 2, outside - width / 2].map((off) => facePoints(base, off));
  const [outer, inner] = faces as [PlanPoint[], PlanPoint[]];
  const items = (placing: GroundPlacing): Item[] => [
    ...baseItems(base, datum, placing),
    ...faces.map(
      (points): Item => ({
        type: 'path',
        points: points.map(placing.at),
        closed: true,
        stroke: { weight: 'light' },
      }),
    ),
    ...outer.map((point, k) =>
      line(placing.at(inner[k] as PlanPoint), placing.at(point), { weight: 'light' }),
    ),
    ...hubNumbers(base, placing, 5 + (1000 * Math.max(0, outside + width / 2)) / placing.scale),
    ...(cuts.length > 1
      ? sizeNumbers(base, sizeOf, placing, Math.max(0, width / 2 - outside))
      : []),
  ];
  const rows = cuts.map(({ piece, from }, i) =>
    plainRow([
      String(i + 1),
      String(from.length),
      lengthFirst(piece.outer, shown),
      lengthSecond(piece.outer, shown),
      lengthFirst(piece.inner, shown),
      lengthSecond(piece.inner, shown),
      mitres(piece),
    ]),
  );
  return groundSheets(pageOf(options.paper ?? 'A4', 'across'), {
    heading: 'Ring beam',
    remark: `${pieces.length} pieces of ${cuts.length === 1 ? 'one size' : `${cuts.length} sizes`}, ${lengthFirst(width, shown)} wide${cuts.length > 1 ? '; the size stands inside each' : ''}`,
    facts,
    lengths: lengthsNote(shown),
    caution: cautionOf(facts, caution),
    notes: [
      `${placeWords(outside, shown)} Outer and inner: length of the two faces, from point to point. Mitre: how far the saw is turned from a square cut, at the first and the last end clockwise; half of what the ring turns at the hub.`,
      ...cuts.map(
        ({ from }, i) =>
          `Size ${i + 1} starts at ${from.length === 1 ? 'hub' : 'hubs'} ${runs(from)}.`,
      ),
      stockWords(pieces, beam.stock, shown),
    ].filter((words) => words !== ''),
    points: [...base.hubs.map((hub) => hub.at), ...outer, [datum, 0]],
    plan: items,
    columns: [
      { name: 'size', share: 0.08, align: 'start' },
      { name: 'pieces', share: 0.1, align: 'end' },
      { name: 'outer', share: 0.17, align: 'end' },
      { name: '', share: 0.17, align: 'end' },
      { name: 'inner', share: 0.17, align: 'end' },
      { name: '', share: 0.17, align: 'end' },
      { name: 'mitre', share: 0.14, align: 'end' },
    ],
    rows,
  });
}

/** Where the joints of a face come to lie that is `off` metres outside the line of the hubs. */
function facePoints(base: Base, off: number): PlanPoint[] {
  const n = base.hubs.length;
  const at = (k: number): PlanPoint => (base.hubs[(k + n) % n] as BaseHub).at;
  return base.hubs.map((hub, k) => {
    const [before, here, after] = [at(k - 1), hub.at, at(k + 1)];
    const [a, b] = [outwards(before, here), outwards(here, after)];
    const by = off / (1 + a[0] * b[0] + a[1] * b[1]);
    return [here[0] + (a[0] + b[0]) * by, here[1] + (a[1] + b[1]) * by];
  });
}

/** Unit normal of a side of the ring, to the left of who walks it clockwise: outwards. */
function outwards(from: PlanPoint, to: PlanPoint): PlanPoint {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy);
  return [-dy / length, dx / length];
}

/** The size of each piece at its middle, inside the beam; none where the ring is drawn too small. */
function sizeNumbers(
  base: Base,
  sizeOf: ReadonlyMap<number, number>,
  placing: GroundPlacing,
  inside: number,
): Item[] {
  const k = 1000 / placing.scale;
  return base.hubs.flatMap((hub, i) => {
    const next = base.hubs[(i + 1) % base.hubs.length] as BaseHub;
    if (hub.levelChord * k < CLOSE) return [];
    const [nx, ny] = outwards(hub.at, next.at);
    const off = -(inside + 4 / k);
    const middle: PlanPoint = [
      (hub.at[0] + next.at[0]) / 2 + nx * off,
      (hub.at[1] + next.at[1]) / 2 + ny * off,
    ];
    return [
      text(placing.at(middle), String(sizeOf.get(hub.number) ?? ''), 2.8, {
        anchor: 'middle',
        halo: 0.8,
        ink: 'accent',
      }),
    ];
  });
}

const degrees = (angle: number): string => writeAngle(angle, 'deg', 1);

const mitres = ({ mitreFrom, mitreTo }: BeamPiece): string =>
  degrees(mitreFrom) === degrees(mitreTo)
    ? degrees(mitreFrom)
    : `${degrees(mitreFrom)}, ${degrees(mitreTo)}`;

const placeWords = (outside: number, shown: LengthsShown): string =>
  Math.abs(outside) < 5e-4
    ? 'The beam’s middle lies under the line of the hubs.'
    : `The beam’s middle lies ${lengthFirst(Math.abs(outside), shown)} ${outside > 0 ? 'outside' : 'inside'} the line of the hubs.`;

/** Numbers with runs drawn together: `1–4, 7`. */
function runs(numbers: readonly number[]): string {
  const found: [number, number][] = [];
  for (const n of numbers) {
    const last = found.at(-1);
    if (last && n === last[1] + 1) last[1] = n;
    else found.push([n, n]);
  }
  return found
    .map(([from, to]) =>
      from === to ? `${from}` : to === from + 1 ? `${from}, ${to}` : `${from}–${to}`,
    )
    .join(', ');
}

function stockWords(
  pieces: readonly BeamPiece[],
  stock: number | null,
  shown: LengthsShown,
): string {
  const longest = pieces.map(({ outer, inner }) => Math.max(outer, inner));
  if (stock === null) {
    const sum = longest.reduce((all, one) => all + one, 0);
    return `${largeFirst(sum, shown)} of timber in all, without waste.`;
  }
  const plan = cutFromStock(longest, stock);
  const cut = `${plan.lengths.length} lengths of ${largeFirst(stock, shown)}, saw cut of ${lengthFirst(0.004, shown)} reckoned in${plan.lengths.length > plan.least ? `; ${plan.least} at least` : ''}.`;
  return plan.tooLong.length === 0
    ? cut
    : `${cut} ${plan.tooLong.length} pieces are longer than that: splice them between hubs, and have the splice looked at.`;
}
