// The base as it stands on paper: what the plan has, what was measured and what is still to be written
// in by hand; how each hub is off, drawn larger, and whether course 2 may start.

import type { Base, BaseHub } from '../ground/base.ts';
import type { BaseTolerances } from '../ground/survey/out-of-true.ts';
import type { SurveyReading } from '../ground/survey/readings.ts';
import type { HubMove, SurveyAnswer } from '../ground/survey/verdict.ts';
import { circle, type Drawing, type Item, inked, line, onPaper, polygon } from './drawing.ts';
import { cautionOf, type SheetFacts } from './flat-plan-sheet.ts';
import {
  baseItems,
  type GroundPlacing,
  groundSheets,
  hubNumbers,
  plainRow,
  sourceNotes,
} from './ground-plan.ts';
import { type LengthsShown, largeFirst, lengthFirst } from './length-text.ts';
import { type Paper, pageOf } from './page.ts';

/** Options of `surveySheets`. */
export interface SurveySheetOptions {
  readonly paper?: Paper;
  readonly lengths?: LengthsShown;
  /** Where the datum peg stands, metres from the centre; 1 m outside the ring unless told. */
  readonly datum?: number;
}

/** What a survey sheet holds: the answer is null where the readings can't be. */
export interface SurveySheetContent {
  readonly base: Base;
  readonly readings: readonly SurveyReading[];
  readonly answer: SurveyAnswer | null;
  readonly tolerances: BaseTolerances;
}

const caution =
  'Go or no-go is an estimate from these readings and the tolerances below. Whoever leads the work looks at the base, and decides.';

/** Room to write a reading in by hand. */
const blank = '_______';

/** Off by less than this is told as nothing, metres. */
const NOTHING = 5e-4;

/** How far on paper the hub that is furthest off is drawn off, millimetres. */
const FURTHEST = 8;

/** The survey of a base; one sheet at least. Without readings it is a form to write them in. */
export function surveySheets(
  { base, readings, answer, tolerances }: SurveySheetContent,
  facts: SheetFacts,
  options: SurveySheetOptions = {},
): Drawing[] {
  const shown = options.lengths ?? 'metric';
  const datum = options.datum ?? Math.max(...base.hubs.map((hub) => hub.radius)) + 1;
  const off = readings.length > 0 ? (answer?.off.hubs ?? []) : [];
  const moves = new Map(answer?.moves.map((move) => [move.hub, move]));
  const furthest = Math.max(0, ...off.map(({ radial, along }) => Math.hypot(radial, along)));
  const times = (placing: GroundPlacing): number =>
    furthest < NOTHING ? 0 : (FURTHEST * placing.scale) / 1000 / furthest;
  const items = (placing: GroundPlacing): Item[] => {
    const k = times(placing);
    const stands = base.hubs.map((hub, i) => placing.at(standsAt(hub, off[i], k)));
    return [
      ...baseItems(base, datum, placing),
      ...(k > 0 ? [polygon(stands, { weight: 'light', ink: 'accent' })] : []),
      ...stands.flatMap((point, i): Item[] => {
        const hub = base.hubs[i] as BaseHub;
        const moved = moves.has(hub.number);
        return k > 0
          ? [
              line(placing.at(hub.at), point, { weight: 'thin', ink: moved ? 'accent' : 'ink' }),
              circle(point, moved ? 1.4 : 0.8, { weight: 'thin' }, moved ? inked : onPaper),
            ]
          : [];
      }),
      ...hubNumbers(base, placing, FURTHEST + 4),
    ];
  };
  const rows = base.hubs.map((hub, i) => {
    const own = off[i];
    return plainRow(
      [
        String(hub.number),
        bare(hub.radius, shown),
        readingOf(readings, 'radius', hub.number, shown),
        bare(hub.chord, shown),
        readingOf(readings, 'chord', hub.number, shown, base.hubs.length),
        readingOf(readings, 'level', hub.number, shown),
        own === undefined ? '' : signed(own.radial, shown),
        own === undefined ? '' : signed(own.up, shown),
      ],
      moves.has(hub.number),
    );
  });
  const written = base.hubs.length === 0 || off.length === 0;
  return groundSheets(pageOf(options.paper ?? 'A4', 'across'), {
    heading: 'Survey of the base',
    remark: remarkOf(readings, answer),
    facts,
    lengths: shown === 'metric' ? 'millimetres' : 'feet and inches',
    caution: cautionOf(facts, caution),
    notes: [
      ...(answer && readings.length > 0 ? verdictNotes(answer, shown) : []),
      ...(written
        ? [
            'Radius: level, from the centre peg. Chord: to the next hub clockwise. Level: above any one height that all share.',
          ]
        : [
            `Chord: to the next hub clockwise. Out and up: off the plan as it fits these hubs best, outwards and upwards.${furthest < NOTHING ? '' : ` The thin ring: where the hubs stand, off by ${lengthFirst(furthest, shown)} at most, drawn larger.`}`,
          ]),
      tolerancesNote(tolerances, shown),
      ...sourceNotes(answer?.sources ?? []),
    ],
    points: [...base.hubs.map((hub) => hub.at), [datum, 0]],
    plan: items,
    columns: [
      { name: 'hub', share: 0.07, align: 'start' },
      { name: 'radius', share: 0.135, align: 'end' },
      { name: 'read', share: 0.145, align: 'end' },
      { name: 'chord', share: 0.16, align: 'end' },
      { name: 'read', share: 0.145, align: 'end' },
      { name: 'level', share: 0.135, align: 'end' },
      { name: 'out', share: 0.105, align: 'end' },
      { name: 'up', share: 0.105, align: 'end' },
    ],
    rows,
  });
}

/** Where a hub stands, `times` as far off its plan as it is. */
function standsAt(
  { at: [x, y], radius }: BaseHub,
  off: { readonly radial: number; readonly along: number } | undefined,
  times: number,
): readonly [number, number] {
  if (off === undefined) return [x, y];
  const [ux, uy] = [x / radius, y / radius];
  const [out, along] = [off.radial * times, off.along * times];
  return [x + out * ux + along * uy, y + out * uy - along * ux];
}

/** The last reading of a hub, or room to write one in. */
function readingOf(
  readings: readonly SurveyReading[],
  what: 'radius' | 'chord' | 'level',
  hub: number,
  shown: LengthsShown,
  hubs = 0,
): string {
  const next = hubs > 0 ? (hub % hubs) + 1 : 0;
  const found = readings.findLast((one) =>
    one.what === 'chord'
      ? what === 'chord' &&
        ((one.from === hub && one.to === next) || (one.from === next && one.to === hub))
      : one.what === what && 'hub' in one && one.hub === hub,
  );
  if (found === undefined) return blank;
  return 'length' in found
    ? bare(found.length, shown)
    : `${found.height < 0 ? '−' : ''}${bare(Math.abs(found.height), shown)}`;
}

/** A length of the table: millimetres without their unit, which the column's note tells, or feet. */
const bare = (metres: number, shown: LengthsShown): string =>
  shown === 'metric' ? lengthFirst(metres, shown).replace(' mm', '') : largeFirst(metres, shown);

const signed = (metres: number, shown: LengthsShown): string =>
  Math.abs(metres) < NOTHING
    ? '–'
    : `${metres < 0 ? '−' : '+'}${lengthFirst(Math.abs(metres), shown).replace(' mm', '')}`;

const verdicts: Readonly<Record<SurveyAnswer['verdict'], string>> = {
  measure: 'measure on',
  go: 'go: course 2 may start',
  'go, keep slack': 'go, but keep seams slack',
  'no go': 'no go: move hubs first',
};

const remarkOf = (readings: readonly SurveyReading[], answer: SurveyAnswer | null): string =>
  readings.length === 0
    ? 'to be written in as it is measured'
    : answer === null
      ? 'these readings cannot be: read again'
      : verdicts[answer.verdict];

function verdictNotes(
  { verdict, reasons, moves, slack, byCourse }: SurveyAnswer,
  shown: LengthsShown,
): string[] {
  const worst = Math.max(0, ...byCourse);
  return [
    `${verdicts[verdict].replace(/^./, (first) => first.toUpperCase())}.`,
    ...reasons,
    ...(moves.length > 0
      ? [`Move, in this order: ${moves.map((move) => moveWords(move, shown)).join('; ')}.`]
      : []),
    ...(slack.length > 0
      ? [
          `Keep ${slack.length} ${slack.length === 1 ? 'seam' : 'seams'} finger-tight until the course above is closed.`,
        ]
      : []),
    ...(worst > 0
      ? [
          `Seams part most at course ${byCourse.indexOf(worst) + 1}: by ${lengthFirst(worst, shown)} before their bolts’ play.`,
        ]
      : []),
  ];
}

function moveWords({ hub, out, along, up }: HubMove, shown: LengthsShown): string {
  const way = (by: number, one: string, other: string): string[] =>
    Math.abs(by) < NOTHING ? [] : [`${lengthFirst(Math.abs(by), shown)} ${by > 0 ? one : other}`];
  return `hub ${hub} ${[
    ...way(out, 'outwards', 'inwards'),
    ...way(along, 'clockwise', 'anticlockwise'),
    ...way(up, 'up', 'down'),
  ].join(', ')}`;
}

const tolerancesNote = (
  { radiusGood, radiusStop, neighbour, overall, hubHeight }: BaseTolerances,
  shown: LengthsShown,
): string =>
  `Tolerances: radius ${lengthFirst(radiusGood, shown)} good, ${lengthFirst(radiusStop, shown)} stops; level ${lengthFirst(neighbour, shown)} to a neighbour, ${lengthFirst(overall, shown)} off the plane; upper hubs ${lengthFirst(hubHeight, shown)}.`;
