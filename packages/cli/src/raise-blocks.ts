// A raising plan, its stages and what breaks an order, as tables and sentences.

import {
  type HeldHubs,
  heldAtLift,
  heldWords,
  holesOff,
  type OrderBreak,
  type RaisingPlan,
  type RaisingStage,
  type StageWinds,
  type SupportLine,
  tightestLift,
  WINDS_LEAVE_OUT,
} from '@shellraise/core';
import { flagBlock } from './ground-loads.ts';
import { hubWords } from './ground-stage.ts';
import type { Raised } from './raise-job.ts';
import { bullets, count, heading, paint, right, table, wrap } from './terminal.ts';

/** A gust as it is told. */
export const speed = (gust: number | null): string =>
  gust === null ? 'unknown' : `${gust.toFixed(1)} m/s`;

/** The stages of a plan. */
export function planBlocks({ plan, winds }: Raised): string[] {
  const windOf = new Map(winds.map((one) => [one.stage, one]));
  return [
    wrap(
      `${count(plan.stages.length, 'stage')}, each of which stands; ${heldWords(heldOver(plan)) || 'no prop'} put in, ${plan.cost.mostProps} hubs held at once at most; ${plan.tried} orders tried.`,
      '',
    ),
    riggedWords(plan),
    table(
      [
        right('stage'),
        { head: 'what' },
        right('lifts'),
        right('panels up'),
        { head: 'held by' },
        right('stop work'),
        right('left overnight'),
      ],
      plan.stages.map((stage) => stageRow(plan, stage, windOf.get(stage.number))),
    ),
    wrap(WINDS_LEAVE_OUT, ''),
  ];
}

function stageRow(plan: RaisingPlan, stage: RaisingStage, winds: StageWinds | undefined): string[] {
  const stays = stage.props.length === 0 || winds?.propsHold;
  return [
    String(stage.number),
    `${stage.sort}${stage.lifts.length > 0 ? `, course ${stage.course}` : ''}`,
    String(stage.lifts.length),
    String(stage.placed.length),
    heldWords(heldAtLift(plan, stage.number, null)),
    winds ? speed(winds.stopWork) : '',
    stays
      ? winds?.leave == null
        ? 'stands; wind unknown'
        : `to ${speed(winds.leave)}`
      : `no: on ${heldWords(heldAtLift(plan, stage.number, null))}`,
  ];
}

/** One stage as a card. */
export function stageBlocks(
  raised: Raised,
  number: number,
  winds: StageWinds | undefined,
): string[] {
  const { plan, chosen } = raised;
  const stage = plan.stages[number - 1] as RaisingStage;
  const { numbers } = chosen.numbers;
  const names = (places: readonly number[]): string => places.map((p) => numbers[p]).join(', ');
  return [
    heading(`Stage ${number} of ${plan.stages.length}: ${stage.sort}`),
    table(
      [
        right('lift'),
        { head: 'panels' },
        { head: 'made' },
        right('highest'),
        { head: 'goes in' },
        { head: 'may go' },
      ],
      stage.lifts.map((lift, i) => [
        `${number}.${i + 1}`,
        wrap(names(lift.places), '', 40),
        lift.made,
        `${lift.height.toFixed(1)} m`,
        heldWords(heldAtLift(plan, number, i, 'in')),
        heldWords(heldAtLift(plan, number, i, 'out')),
      ]),
    ),
    wrap(
      `Then ${count(stage.pass.snug.length, 'seam')} to snug, ${stage.pass.final.length} to final. ${stage.props.length === 0 ? 'It stands without a prop.' : `It stands on ${heldWords(heldAtLift(plan, number, null))}; props are tied at head and foot.`} Stop work at gusts of ${speed(winds?.stopWork ?? null)}; left overnight to ${speed(winds?.leave ?? null)}.`,
      '',
    ),
    ...heldTable(raised, stage),
    wrap(
      'Stop work and overnight here are by base hubs, anchors, props, seams and panels, as far as they are known.',
      '',
    ),
    winds && winds.unknown.length > 0
      ? `Unknown, and may give way sooner: ${winds.unknown.join(', ')}.`
      : '',
    ...holesOffBlocks(raised, stage),
  ];
}

/** What to do where the holes of the piece that closes the stage, or its last one, will not meet. */
function holesOffBlocks({ plan, question, threadOf }: Raised, stage: RaisingStage): string[] {
  const lift = tightestLift(stage);
  if (lift < 0) return [];
  const { steps, flags } = holesOff({ ...question, plan, threadOf }, stage.number, lift);
  return [
    bullets(`When the holes of lift ${stage.number}.${lift + 1} will not meet:`, steps),
    flagBlock('Not confirmed:', flags),
  ];
}

/** Everything that goes in to hold hubs over the whole build. */
const heldOver = ({ props }: RaisingPlan): HeldHubs => ({
  props: props.filter(({ lines }) => lines.length === 0).length,
  lines: props.flatMap(({ lines }) => lines),
});

/** What guys and chains are good for; nothing where none hold. */
function riggedWords({ rigging }: RaisingPlan): string {
  if (rigging === null) return '';
  const { gust, mast } = rigging;
  const onMast =
    mast === null
      ? ''
      : ` The mast bears up to ${force(mast.push)} down and ${force(mast.sideways)} sideways at its head.`;
  return wrap(
    `Guys and chains take the place of props where they hold every state by weight and in gusts up to ${speed(gust)}; in more wind nobody goes near, and no stage is left for the night on them.${onMast}`,
    '',
  );
}

const force = (newtons: number): string => `${(newtons / 1000).toFixed(2)} kN`;

/** Which hubs are held in a stage, by what, and from when until when. */
function heldTable({ plan, chosen }: Raised, stage: RaisingStage): string[] {
  const here = plan.props.filter(
    ({ from, until }) =>
      from.stage <= stage.number && (until === null || until.stage >= stage.number),
  );
  if (here.length === 0) return [];
  return [
    table(
      [
        { head: 'hub of' },
        right('high'),
        { head: 'held by' },
        right('pull'),
        right('from'),
        { head: 'may go after' },
      ],
      here.map(({ hub, height, lines, from, until }) => [
        wrap(hubWords(chosen, hub), '', 24),
        `${height.toFixed(1)} m`,
        lines.length === 0 ? 'prop' : lines.map(lineWords).join(', '),
        lines.length === 0 ? '' : force(Math.max(...lines.map(({ most }) => most))),
        `${from.stage}.${from.lift + 1}`,
        until === null ? 'stays' : `${until.stage}.${until.lift + 1}`,
      ]),
    ),
  ];
}

const lineWords = ({ kind, anchor, length }: SupportLine): string =>
  kind === 'chain'
    ? `chain of ${length.toFixed(1)} m`
    : `guy of ${length.toFixed(1)} m to anchor ${anchor}`;

/** Why an order changed by hand is refused, and how what falls would move. */
export function breakBlocks({ chosen }: Raised, found: readonly OrderBreak[]): string[] {
  const { numbers } = chosen.numbers;
  const { placeStart } = chosen.standing.shell;
  return found.map((one) => {
    if (one.what !== 'falls') return paint.red(wrap(`Refused: ${one.words}.`, ''));
    let corner = 0;
    const moved = one.way.places
      .map((place) => {
        const corners = (placeStart[place + 1] as number) - (placeStart[place] as number);
        const by = movedBy(one.way.corners, corner, corners);
        corner += corners;
        return { place, by };
      })
      .sort((a, b) => b.by - a.by || a.place - b.place)
      .slice(0, 5);
    return [
      paint.red(wrap(`Refused: ${one.words}`, '')),
      wrap(
        `The mechanism, largest first: ${moved.map(({ place, by }) => `${numbers[place]} ${by.toFixed(2)}`).join(', ')} (parts of its greatest movement). ${one.needs === null ? 'No props hold it.' : `It would stand with ${count(one.needs.length, 'prop')} more.`}`,
        '',
      ),
    ].join('\n');
  });
}

/** The most that a panel's corners move: so many from one on. */
function movedBy(corners: Float64Array, from: number, many: number): number {
  let most = 0;
  for (let c = from; c < from + many; c++)
    most = Math.max(
      most,
      Math.hypot(
        corners[3 * c] as number,
        corners[3 * c + 1] as number,
        corners[3 * c + 2] as number,
      ),
    );
  return most;
}
