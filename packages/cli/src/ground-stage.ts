// One stage of the build as tables: does it stand, what to prop, what wind it bears.

import {
  ACTION_LOAD,
  HANDLING_LIMITS,
  type Limit,
  pressureOf,
  type StageAnswer,
  type StageStrength,
} from '@shellraise/core';
import type { AskedStage } from './commands/ground.ts';
import { CASE_WIDTH, flagBlock, force } from './ground-loads.ts';
import type { Chosen } from './job.ts';
import { bullets, count, heading, paint, right, table, wrap } from './terminal.ts';

/** A speed in both units. */
export const speed = (metresPerSecond: number): string =>
  `${metresPerSecond.toFixed(1)} m/s (${(metresPerSecond / 0.44704).toFixed(0)} mph)`;

/** The blocks of a stage, in air of a density, kg/m³. */
export function stageBlocks(stage: AskedStage, chosen: Chosen, airDensity: number): string[] {
  const { answer, number, of, last } = stage;
  return [
    heading(`Stage ${number} of ${of}`),
    `Panels placed in number order up to ${last}, every seam finger-tight.`,
    verdict(stage, chosen),
    ...(answer.bears === null ? [] : bearing(answer.bears, chosen, airDensity)),
    ...(answer.supports === null ? [] : supports(answer.supports, chosen)),
    night(stage),
    bullets('Assumed:', answer.assumed),
    flagBlock('Not confirmed, or entered:', answer.flags),
  ];
}

function verdict({ answer }: AskedStage, chosen: Chosen): string {
  if (answer.status === 'stands') return paint.bold('It stands: nothing in it moves freely.');
  const where = answer.at === null ? '' : `, most at the hub of ${hubWords(chosen, answer.at)}`;
  const moves = `It does NOT stand as it is: ${count(answer.movements, 'movement')} that nothing resists${where}; places ${listed(answer.moving)} move.`;
  const props =
    answer.status === 'cannot be propped'
      ? 'No props at hubs can hold it.'
      : `It stands with ${count(answer.props.length, 'prop')}${answer.fewest ? ', the fewest' : ' (fewer were not ruled out)'}: under the hub of ${answer.props.map((hub) => hubWords(chosen, hub)).join('; under the hub of ')}. Each is tied at head and foot.`;
  return `${paint.red(wrap(moves, ''))}\n${wrap(props, '')}`;
}

const listed = (numbers: readonly string[]): string =>
  numbers.length <= 8
    ? numbers.join(', ')
    : `${numbers.slice(0, 6).join(', ')} and ${numbers.length - 6} more`;

/** A hub by the places around it. */
export function hubWords({ standing, numbers }: Chosen, hub: number): string {
  const { sideHub, sidePlace } = standing.shell;
  const around = [...sideHub.keys()]
    .filter((side) => sideHub[side] === hub)
    .map((side) => numbers.numbers[sidePlace[side] as number] as string);
  return around.sort().join(' ');
}

function bearing(bears: StageStrength, chosen: Chosen, airDensity: number): string[] {
  const gust = bears.stopWork.gust.value;
  const pressure = pressureOf(gust, airDensity);
  const props = bears.held.filter(({ baseHub }) => baseHub === null);
  return [
    wrap(
      `${props.length > 0 ? 'With its props in place: ' : ''}${bears.exposedArea.toFixed(1)} m² to the wind (${bears.enclosure}); weight ${force(bears.weight)}${bears.unweighed.length > 0 ? `, ${count(bears.unweighed.length, 'panel')} of it not weighed` : ''}. In a gust of ${speed(gust)} lift up to ${force(bears.uplift.perPascal * pressure)}, drag up to ${force(bears.drag.perPascal * pressure)}.`,
      '',
    ),
    table(
      [{ head: 'limit of' }, right('gust'), { head: 'where' }, { head: 'wind' }],
      [...bears.limits, { ...bears.untied, untied: true }].map((limit) => [
        'untied' in limit ? 'hub not tied' : limit.what,
        limitWords(limit),
        wrap(placeWords(limit, chosen), '', 12),
        wrap(limit.from ?? limit.why, '', CASE_WIDTH),
      ]),
    ),
    stopWords(bears),
    props.length === 0 ? '' : `What props bear, and what a gust of ${speed(gust)} adds at most:`,
    table(
      [
        { head: 'prop under the hub of' },
        right('weight'),
        right('wind presses'),
        right('wind lifts'),
        right('sideways'),
      ],
      props.map((prop) => [
        wrap(hubWords(chosen, prop.hub), '', 18),
        force(prop.weight[2]),
        force(prop.press * pressure),
        force(prop.lift * pressure),
        force(Math.hypot(prop.weight[0], prop.weight[1]) + prop.shear * pressure),
      ]),
    ),
  ];
}

/** Guys and chains in the place of props, each with its pull. */
function supports(
  { gust, lines, props, mast }: NonNullable<StageAnswer['supports']>,
  chosen: Chosen,
): string[] {
  if (lines.length === 0)
    return ['No guy or chain of the file can hold it in the place of a prop.'];
  const stay =
    props.length === 0
      ? 'no prop has to stay'
      : `${count(props.length, 'prop')} must stay, under the hub of ${props.map(({ hub }) => hubWords(chosen, hub)).join('; under the hub of ')}`;
  const onMast =
    mast === null
      ? ''
      : ` The mast bears ${force(mast.push)} down and ${force(mast.sideways)} sideways at its head.`;
  return [
    wrap(
      `Guys and chains in the place of props, to gusts of ${speed(gust)}: ${stay}.${onMast}`,
      '',
    ),
    table(
      [
        { head: 'from the hub of' },
        { head: 'to' },
        right('length'),
        right('slope'),
        right('weight'),
        right('most'),
      ],
      lines.map((line) => [
        wrap(hubWords(chosen, line.hub), '', 18),
        line.kind === 'chain' ? 'the mast' : `anchor ${line.anchor}`,
        `${line.length.toFixed(2)} m`,
        `${((line.slope * 180) / Math.PI).toFixed(0)}°`,
        force(line.weight),
        force(line.most),
      ]),
    ),
  ];
}

const limitWords = ({ status, gust }: Limit): string =>
  status === 'known' ? (gust === null ? 'beyond 60 m/s' : speed(gust)) : status;

function placeWords({ what, at }: Limit, chosen: Chosen): string {
  if (at === null) return '';
  if (what === 'panel') return chosen.numbers.numbers[at] as string;
  if (what !== 'seam') return hubWords(chosen, at);
  const { seams, sidePlace } = chosen.standing.shell;
  return [0, 1]
    .map((k) => chosen.numbers.numbers[sidePlace[seams[2 * at + k] as number] as number])
    .join(' | ');
}

function stopWords({ stopWork }: StageStrength): string {
  const { gust, mean, leave, setBy, unknown } = stopWork;
  const handling = HANDLING_LIMITS[0];
  const thing = setBy === 'hub not tied' ? 'first base hub, not tied to anything known,' : setBy;
  const why =
    setBy === 'handling panels'
      ? `the limit for handling panels (${handling?.source.text})`
      : `${Math.round(100 * ACTION_LOAD.stop)} % of the load at which the ${thing} ${setBy === 'hub not tied' ? 'lifts off' : 'reaches its limit'}`;
  const leaving =
    leave === null
      ? 'No limit of the stage itself is known: this does not say that it bears that wind.'
      : `Everybody leaves the shell and its fall range at a gust of ${speed(leave)}.`;
  const blind =
    unknown.length === 0 ? '' : ` Unknown, and may give way sooner: ${unknown.join(', ')}.`;
  return `${paint.bold(`Stop work at a gust of ${speed(gust.value)}, or a mean of ${speed(mean)}.`)}\n${wrap(`Set by ${why}. ${leaving}${blind}`, '')}`;
}

function night({ night: closed, answer }: AskedStage): string {
  if (closed === null) return '';
  const first = closed.by === answer.bears?.untied ? 'hub that is not tied' : closed.by?.what;
  const words = {
    holds: 'Left for the night in that gust, it holds by all that is known.',
    unknown:
      'Left for the night in that gust: UNKNOWN. No known limit is reached, but some are not known.',
    'gives way': `Left for the night in that gust, it may GIVE WAY: first the ${first}.`,
  }[closed.verdict];
  return paint.bold(wrap(words, ''));
}
