// The permit and insurance pack: dimensions, elevations and plan, loads and what they assume, a method
// statement and a list of risks drafted from the raising plan, blanks where only people can answer. A
// draft for whoever decides; it is no engineer's approval and says so on every sheet.

import type { Provenance } from '../loads/provenance.ts';
import type { RaisingStage } from '../raise/plan.ts';
import type { Drawing } from './drawing.ts';
import { elevationItems } from './elevation.ts';
import type { SheetFacts } from './flat-plan-sheet.ts';
import { flowSheets } from './flow.ts';
import { type FlowBlock, heading, list, words } from './flow-blocks.ts';
import { baseItems, hubNumbers, placeGround } from './ground-plan.ts';
import { type LengthsShown, largeFirst, largeSecond, lengthsNote } from './length-text.ts';
import { windWords } from './lift-card-sheets.ts';
import type { Paper } from './page.ts';
import { blankBlocks, methodBlocks, riskBlocks } from './permit-method.ts';
import type { PermitQuestion } from './permit-question.ts';
import { shellMeasures } from './shell-measures.ts';
import { stageWords } from './stage-words.ts';

/** Options of `permitSheets`. */
export interface PermitOptions {
  readonly paper?: Paper;
  readonly lengths?: LengthsShown;
}

/** The line that stands on every sheet of the pack. */
const PERMIT_CAUTION =
  'A draft made from a plan of work by a program, for people to check, complete and sign. It is no engineer’s approval and no proof of safety: figures are estimates; local codes, the authority and a licensed engineer or rigger decide.';

/** The pack. */
export function permitSheets(
  question: PermitQuestion,
  facts: SheetFacts,
  options: PermitOptions = {},
): Drawing[] {
  const shown = options.lengths ?? 'metric';
  return flowSheets(
    [
      ...aboutBlocks(question, shown),
      { block: 'sheet' },
      ...loadBlocks(question),
      ...stageBlocks(question),
      { block: 'sheet' },
      ...methodBlocks(question),
      { block: 'sheet' },
      ...riskBlocks(question),
      { block: 'sheet' },
      ...blankBlocks,
    ],
    facts,
    {
      ...(options.paper && { paper: options.paper }),
      heading: 'Permit and insurance pack',
      remark: 'draft: dimensions, loads, method, risks, and what people have to fill in',
      lengths: lengthsNote(shown),
      scale: 'none: measures as written',
      caution: PERMIT_CAUTION,
    },
  );
}

function aboutBlocks(question: PermitQuestion, shown: LengthsShown): FlowBlock[] {
  const { shell, base, leftOut } = question;
  const of = shellMeasures(question);
  const both = (metres: number): string =>
    `${largeFirst(metres, shown)} (${largeSecond(metres, shown)})`;
  const area = (squareMetres: number): string =>
    `${squareMetres.toFixed(1)} m² (${(squareMetres / 0.3048 ** 2).toFixed(0)} ft²)`;
  const out = new Set(leftOut);
  const turned = { ...shell, hubs: quarterTurn(shell.hubs) };
  return [
    heading('The structure'),
    words(
      'A temporary shell of flat flanged panels, bolted edge to edge, with hub plates over the points where corners meet, tied to the ground at its base ring. It is put up by volunteers by hand and comes down the same way.',
    ),
    pairs([
      ['greatest width', both(of.width)],
      ['height over the lowest base hub', both(of.height)],
      ['across the base ring', both(of.base)],
      ['radius of the sphere', both(shell.radius)],
      ['floor within the base ring', area(of.floor)],
      ['skin', area(of.skin)],
      ['panels, seams, base hubs', `${of.panels}, ${of.seams}, ${base.hubs.length}`],
      [
        'mass of the panels',
        of.unweighed === 0
          ? `${of.mass.toFixed(0)} kg`
          : of.unweighed === of.panels
            ? 'UNKNOWN: nobody weighed one'
            : `${of.mass.toFixed(0)} kg without ${of.unweighed} panels that nobody weighed`,
      ],
    ]),
    {
      block: 'figure',
      height: 74,
      draw: (box) => [
        ...elevationItems(shell, out, { ...box, width: box.width / 2 - 3 }, shown),
        ...elevationItems(
          turned,
          out,
          { ...box, x: box.x + box.width / 2 + 3, width: box.width / 2 - 3 },
          shown,
          'A quarter turn on, from the left',
        ),
      ],
    },
    heading('Plan of the base ring, datum up'),
    {
      block: 'figure',
      height: 150,
      draw: (box) => {
        // Far enough out that its name stands clear of the hubs' numbers.
        const datum = 1.3 * Math.max(...base.hubs.map(({ radius }) => radius));
        const placing = placeGround([...base.hubs.map(({ at }) => at), [datum, 0]], box);
        return [...baseItems(base, datum, placing), ...hubNumbers(base, placing, 5)];
      },
    },
  ];
}

/** Hubs turned so that what was at −y faces the viewer of an elevation. */
function quarterTurn(hubs: Float64Array): Float64Array {
  const turned = Float64Array.from(hubs);
  for (let i = 0; i < hubs.length; i += 3) {
    turned[i] = -(hubs[i + 1] as number);
    turned[i + 1] = hubs[i] as number;
  }
  return turned;
}

const pairs = (rows: readonly (readonly [string, string])[]): FlowBlock => ({
  block: 'table',
  columns: [
    { name: '', share: 0.42 },
    { name: '', share: 0.58, bold: true },
  ],
  rows,
});

const kilonewtons = (newtons: number): string =>
  `${(newtons / 1000).toFixed(2)} kN (${(newtons / 9.80665).toFixed(0)} kgf)`;

function loadBlocks({ loads, anchors }: PermitQuestion): FlowBlock[] {
  const { wind, drag, lift, weight, unweighed, snow, assumed, flags } = loads;
  return [
    heading('Loads on the whole shell'),
    pairs([
      [
        'wind',
        wind === null
          ? 'NOT ENTERED: no design wind, so no wind load and no anchors are reckoned'
          : `velocity pressure at the crown ${wind.value.toFixed(0)} Pa, by ${wind.code.toUpperCase()}`,
      ],
      ...(drag === null
        ? []
        : [
            [
              'drag, the most of all wind cases',
              `${kilonewtons(drag.force)}, ${drag.from}`,
            ] as const,
          ]),
      ...(lift === null
        ? []
        : [['lift, likewise', `${kilonewtons(lift.force)}, ${lift.from}`] as const]),
      [
        'weight',
        `${kilonewtons(weight)}${unweighed.length === 0 ? '' : `, without ${unweighed.length} panels that nobody weighed`}`,
      ],
      ...(snow.length === 0
        ? [['snow', 'not entered'] as const]
        : snow.map(({ name, force }) => ['snow', `${kilonewtons(force)}, ${name}`] as const)),
      [
        'anchors',
        anchors === null
          ? 'no anchor plan yet'
          : `${anchors.count} anchors of ${anchors.pieces} pieces, each pulled ${kilonewtons(anchors.allowed)} at most by ${anchors.practice}; ${anchors.tooNear.length === 0 ? 'spacing holds' : 'they stand TOO NEAR each other as drawn'}`,
      ],
    ]),
    heading('What the loads assume'),
    list('dash', assumed.length === 0 ? ['Nothing besides what is named above.'] : assumed),
    ...unsure([...flags, ...(anchors?.sources ?? [])]),
  ];
}

/** Sources that are not confirmed, each once. */
function unsure(flags: readonly Provenance[]): FlowBlock[] {
  const said = [
    ...new Set(
      flags
        .filter(({ confirmation }) => confirmation !== 'confirmed')
        .map(({ text, confirmation }) => `${text} (${confirmation})`),
    ),
  ];
  return said.length === 0 ? [] : [heading('Not confirmed'), list('dash', said, 2.9)];
}

function stageBlocks({ plan, winds }: PermitQuestion): FlowBlock[] {
  const windOf = new Map(winds.map((one) => [one.stage, one]));
  return [
    heading('Wind in which work stops, stage by stage'),
    words('Gusts of three seconds at the shell. What seams and panels bear is in none of these.', {
      quiet: true,
      keep: true,
    }),
    {
      block: 'table',
      columns: [
        { name: 'stage', share: 0.08, bold: true },
        { name: 'what', share: 0.2 },
        { name: 'panels standing', share: 0.11, align: 'end' },
        { name: 'work stops over', share: 0.34 },
        { name: 'may be left overnight', share: 0.27 },
      ],
      rows: plan.stages.map((stage) => {
        const wind = windOf.get(stage.number);
        return [
          String(stage.number),
          stageWords(stage),
          String(stage.placed.length),
          wind === undefined ? 'not known' : windWords(wind.stopWork),
          overnightWords(stage),
        ];
      }),
    },
  ];
}

const overnightWords = ({ overnight: { verdict, gust } }: RaisingStage): string =>
  verdict === 'stands'
    ? 'yes, wind not asked'
    : verdict === 'holds'
      ? `closed down, up to ${gust === null ? 'the gust asked for' : `${gust.toFixed(0)} m/s`}`
      : verdict === 'no'
        ? 'no: on props that move'
        : verdict === 'unknown'
          ? 'not known: no'
          : 'no: gives way';
