// The last sheets of the crew book: how a stage is left for the night, and whom to call.

import { closeDownCard } from '../../crew/close-down.ts';
import type { CrewSettings } from '../../crew/schema.ts';
import type { Drawing } from '../drawing.ts';
import type { SheetFacts } from '../flat-plan-sheet.ts';
import { flowSheets } from '../flow.ts';
import { type FlowBlock, heading, list, words } from '../flow-blocks.ts';
import { lengthsNote } from '../length-text.ts';
import { ARM_LENGTH_TYPE } from '../panel-labels.ts';
import { bookCaution, type CrewBookContent, gustWords, plural, stageTitle } from './content.ts';
import type { BookLook } from './stage-cards.ts';

/** One card for all stages that may be left: what is the same at each as steps, the rest stage by stage;
 * none where no stage may be left. */
export function closeDownSheets(
  content: CrewBookContent,
  facts: SheetFacts,
  look: BookLook,
): Drawing[] {
  const { plan, winds, crew } = content;
  const cards = plan.stages
    .filter(({ stopPoint }) => stopPoint)
    .map((stage) => {
      const leave =
        stage.overnight.leave ?? winds.find((one) => one.stage === stage.number)?.leave ?? null;
      return { stage, leave, card: closeDownCard(stage, leave, crew.closeDown) };
    });
  const first = cards[0];
  if (first === undefined) return [];
  const isShared = (step: string): boolean => cards.every(({ card }) => card.steps.includes(step));
  const shared = first.card.steps.filter(isShared);
  const { seconds, hands } = crew.closeDown;
  const blocks: FlowBlock[] = [
    words(
      `Begin ${Math.round(seconds / 60)} minutes before dark, with ${plural(hands, 'person').replace('persons', 'people')}.`,
      { bold: true },
    ),
    list('tick', shared),
    heading('And by the stage that is left'),
    {
      block: 'table',
      size: 3.8,
      columns: [
        { name: 'stage', share: 0.08, bold: true },
        { name: '', share: 0.32 },
        { name: 'besides', share: 0.38 },
        { name: 'nobody near it in gusts of', share: 0.22, bold: true },
      ],
      rows: cards.map(({ stage, leave, card }) => [
        String(stage.number),
        `${stageTitle(plan.stages, stage)}: ${plural(stage.placed.length, 'panel')} up`,
        card.steps.filter((step) => !isShared(step)).join(' '),
        leave === null ? 'not known: somebody watches' : gustWords(leave, look.lengths),
      ]),
    },
  ];
  return flowSheets(
    blocks,
    { ...facts, sheet: 'Close-down' },
    {
      paper: look.paper,
      heading: 'Close-down: before a stage is left for the night',
      remark: 'Stages that are not in the list are not left.',
      lengths: lengthsNote(look.lengths),
      caution: `${bookCaution} The steps are common practice.`,
      size: ARM_LENGTH_TYPE,
    },
  );
}

/** Where we are and whom to call; everything that only people on site know is left blank. */
export function emergencySheets(
  { crew }: CrewBookContent,
  facts: SheetFacts,
  look: BookLook,
): Drawing[] {
  const { site } = crew;
  return flowSheets(
    [
      ...whereBlocks(site),
      { block: 'blanks', names: ['address, gate, way in for an ambulance', 'meeting point'] },
      heading('Call'),
      {
        block: 'blanks',
        names: [
          'emergency number here',
          'hospital that takes accidents, and the way',
          'first aid on site: who, where is the box',
          'lead of the day',
          'owner of the ground',
          'power and water company',
        ],
      },
      heading('Then'),
      list('number', [
        'STOP. Nobody else gets hurt: what hangs or leans is held or let down first.',
        'Call. Say where (above), how many, what happened, who meets them at the gate.',
        'Somebody stays with the hurt, somebody stands at the gate, the lead counts everybody.',
        'Do not move anybody who fell, unless the shell may come down on them.',
      ]),
    ],
    { ...facts, sheet: 'Emergency' },
    {
      paper: look.paper,
      heading: 'Emergency: hang this where everybody sees it',
      lengths: lengthsNote(look.lengths),
      caution: 'Common practice and no first-aid course. Fill the blanks in before the first lift.',
      size: 4.9,
    },
  );
}

function whereBlocks(site: CrewSettings['site']): FlowBlock[] {
  if (site === null) return [{ block: 'blanks', names: ['coordinates: latitude', 'longitude'] }];
  const { latitudeDeg, longitudeDeg } = site;
  return [
    words(`${degrees(latitudeDeg, 'N', 'S')}   ${degrees(longitudeDeg, 'E', 'W')}`, {
      bold: true,
      size: 9,
    }),
    words(
      `${minutes(latitudeDeg, 'N', 'S')}   ${minutes(longitudeDeg, 'E', 'W')}   (WGS 84, as entered)`,
    ),
  ];
}

const degrees = (value: number, plus: string, minus: string): string =>
  `${Math.abs(value).toFixed(5)}° ${value < 0 ? minus : plus}`;

function minutes(value: number, plus: string, minus: string): string {
  const thousandths = Math.round(Math.abs(value) * 60_000);
  const whole = Math.floor(thousandths / 60_000);
  return `${whole}° ${((thousandths - whole * 60_000) / 1000).toFixed(3)}′ ${value < 0 ? minus : plus}`;
}
