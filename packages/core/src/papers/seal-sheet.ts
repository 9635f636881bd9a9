// How the shell is sealed, on the flat plan: which seams must be sealed as they close, in which round each
// strip goes on (from the lowest up, so that the upper lap over the lower), which may be behind leaks; and
// what to buy.

import type { LeakPath } from '../fitout/leaks.ts';
import type { SealAnswer } from '../fitout/seal-answer.ts';
import { lyingSeams } from '../fitout/seams.ts';
import type { PlanPoint } from '../ground/base.ts';
import type { SideId } from '../shell/ids.ts';
import { placeAt, type Shell } from '../shell/shell.ts';
import { circle, type Drawing, type Item, type Point, text } from './drawing.ts';
import {
  datumItems,
  type FitoutSheetOptions,
  laidPlan,
  placeItems,
  placeWords,
  run,
} from './fitout-plan.ts';
import { cautionOf, type SheetFacts } from './flat-plan-sheet.ts';
import { type GroundPlacing, groundSheets, plainRow } from './ground-plan.ts';
import { pageOf } from './page.ts';
import { outlinesOverlap, textCorners } from './text-box.ts';

const caution =
  'Amounts are estimates for even joints: lay one seam, see what it takes, then buy. Sealing at a height is work at a height; nobody stands on panels.';

/** A round of strips: seams whose middles lie level. */
export interface SealRound {
  readonly seams: readonly number[];
  /** Metres. */
  readonly length: number;
}

/** Heights nearer than this share of the radius are one round. */
const LEVEL = 0.002;

/** Over this scale, 1 : so much, not every place is numbered. */
const CROWDED = 60;

/** The order of strips in rounds of level seams, from the lowest. */
export function sealRounds(shell: Shell, order: readonly number[]): SealRound[] {
  const lying = lyingSeams(shell);
  const rounds: { seams: number[]; length: number; from: number }[] = [];
  for (const seam of order) {
    const one = lying[seam];
    if (one === undefined) continue;
    const last = rounds.at(-1);
    if (last && one.middle - last.from <= LEVEL * shell.radius) {
      last.seams.push(seam);
      last.length += one.length;
    } else rounds.push({ seams: [seam], length: one.length, from: one.middle });
  }
  return rounds.map(({ seams, length }) => ({ seams, length }));
}

/** Size of the places' numbers, millimetres. */
const PLACE_TYPE = 1.8;

/** The sheet of a shell; one at least. `leftOut`: places left open on purpose. */
export function sealSheets(
  drawn: {
    readonly shell: Shell;
    readonly numbers: readonly string[];
    readonly leftOut: readonly number[];
    readonly seal: SealAnswer;
    readonly leaks: readonly LeakPath[];
  },
  facts: SheetFacts,
  options: FitoutSheetOptions = {},
): Drawing[] {
  const { shell, numbers, seal, leaks } = drawn;
  const out = new Set(drawn.leftOut);
  const isOut = (seam: number): boolean =>
    [0, 1].some((end) => out.has(placeAt(shell, shell.seams[2 * seam + end] as SideId)));
  const order = seal.order.filter((seam) => !isOut(seam));
  const rounds = sealRounds(shell, order);
  const before = new Set(seal.closing.flatMap(({ seams }) => seams).filter((seam) => !isOut(seam)));
  const plan = laidPlan(shell);
  const suspects = leaks.slice(0, 5);
  // Where the plan is small only some numbers find room beside those of the rounds.
  const named = (place: number, scale: number): string | null => {
    const number = numbers[place] ?? '';
    const at = Number(number.split('-').at(-1));
    return scale <= CROWDED || at === 1 || at % 5 === 0 ? number : null;
  };
  const items = (placing: GroundPlacing): Item[] => {
    const path = (seam: number): Point[] =>
      (plan.sides[shell.seams[2 * seam] as number] ?? []).map(placing.at);
    const roundWords = rounds.flatMap(({ seams }, i) =>
      seams.map((seam) =>
        text(middle(path(seam)), String(i + 1), 2, { bold: true, anchor: 'middle', halo: 0.6 }),
      ),
    );
    const taken = roundWords.map((item) => ({ at: item.at, corners: textCorners(item) }));
    // The round is what the sheet is for: a place's number that would lie on one is left out.
    const isFree = (place: number, number: string): boolean => {
      const at = placing.at(plan.labels[place] as PlanPoint);
      const corners = textCorners(text(at, number, PLACE_TYPE, { anchor: 'middle' }));
      return taken.every(
        (one) =>
          Math.hypot(one.at[0] - at[0], one.at[1] - at[1]) > 12 ||
          !outlinesOverlap(one.corners, corners),
      );
    };
    return [
      ...placeItems(shell, plan, placing, (place) =>
        out.has(place) ? { tint: null, hatch: 'slant-left' } : null,
      ),
      ...order.map((seam) =>
        run(
          path(seam),
          before.has(seam)
            ? { weight: 'heavy', ink: 'accent' }
            : { weight: 'medium', dash: 'dashed' },
        ),
      ),
      ...suspects.map(({ seam }) => circle(middle(path(seam)), 3, { weight: 'bold' })),
      ...roundWords,
      ...placeWords(
        plan,
        placing,
        (place) => {
          const said = out.has(place) ? 'open' : named(place, placing.scale);
          return said !== null && isFree(place, said) ? said : null;
        },
        PLACE_TYPE,
      ),
      ...datumItems(plan, placing),
    ];
  };
  const amount = ({ unit, amount: all }: SealAnswer['lines'][number]): string =>
    unit === 'm' ? `${all.toFixed(0)} m` : `${(1000 * all).toFixed(2)} L`;
  return groundSheets(pageOf(options.paper ?? 'A3', 'across'), {
    heading: 'Seal plan',
    remark: `${order.length} seams in ${rounds.length} rounds; ${before.size} sealed as they close`,
    facts,
    lengths: 'metres, litres',
    caution: cautionOf(facts, caution),
    notes: [
      'The number on a seam is the round in which its strip goes on: from the lowest up, upper strips lap over lower ones.',
      'Heavy: sealed as the seam closes, with the panel that closes it. Dashed: sealed any time after.',
      suspects.length > 0
        ? `Ringed: may be behind the leaks seen, nearest first: ${suspects.map(({ along }) => `${along.toFixed(1)} m above`).join(', ')}.`
        : '',
      ...hoursTold(seal),
    ].filter((words) => words !== ''),
    points: plan.box,
    plan: items,
    columns: [
      { name: 'buy, and rounds', share: 0.34, align: 'start' },
      { name: 'seam', share: 0.2, align: 'end' },
      { name: 'with waste', share: 0.24, align: 'end' },
      { name: 'packs', share: 0.22, align: 'end' },
    ],
    rows: [
      ...seal.lines.map((one) =>
        plainRow([
          one.item,
          `${one.length.toFixed(0)} m`,
          amount(one),
          one.packs === null ? '' : String(one.packs),
        ]),
      ),
      ...rounds.map(({ seams, length }, i) =>
        plainRow([`round ${i + 1}`, `${length.toFixed(1)} m`, `${seams.length} seams`, '']),
      ),
    ],
  });
}

function hoursTold({ windows, weatherFrom }: SealAnswer): string[] {
  if (weatherFrom === null) return ['No weather is entered: nobody can say when it is dry enough.'];
  if (windows.length === 0)
    return [`In the weather entered from ${weatherFrom} there is no hour to seal in.`];
  return [
    `Hours to seal in, counted from ${weatherFrom}: ${windows.map(({ from, to }) => `${from} to ${to}`).join(', ')}.`,
  ];
}

function middle(points: readonly Point[]): Point {
  const i = (points.length - 1) / 2;
  const [a, b] = [points[Math.floor(i)], points[Math.ceil(i)]];
  return a && b ? [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] : [0, 0];
}
