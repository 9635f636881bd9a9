// The fit-out as text: a block for each thing asked.

import {
  type CarryAnswer,
  type DoorTold,
  EARTH_PROMPTS,
  type FitOut,
  type FitoutSettings,
  flagsOf,
  type LastPassing,
  SNOW_WORDS,
  TAKING_DOWN,
} from '@shellraise/core';
import { doorBlocks } from './fitout-report-door.ts';
import { signalBlocks, swingBlocks } from './fitout-report-signal.ts';
import { flagBlock } from './ground-loads.ts';
import type { Chosen } from './job.ts';
import { type Lengths, lengthsIn } from './lengths.ts';
import type { FitoutOptions } from './options.ts';
import { bullets, caution, count, heading, paint, right, table, wrap } from './terminal.ts';

const degrees = (radians: number): string => `${((radians * 180) / Math.PI).toFixed(0)}°`;

/** The door and what must pass it, as they were found. */
export interface Carried {
  readonly door: DoorTold | null;
  readonly carried: readonly CarryAnswer[];
  /** The latest moment of each while the shell is built, where that was asked. */
  readonly last: readonly LastPassing[];
}

/** All blocks of the report. */
export function fitoutReport(
  chosen: Chosen,
  settings: FitoutSettings,
  answer: FitOut,
  carried: Carried,
  options: FitoutOptions,
  words: string,
): readonly string[] {
  const lengths = lengthsIn(options.lengths);
  return [
    heading(`Fit-out of arrangement ${chosen.number}`),
    caution(words),
    ...doorBlocks(chosen, carried, lengths),
    ...swingBlocks(chosen, settings, answer, lengths),
    ...signalBlocks(settings, answer, lengths),
    ...sealBlocks(chosen, settings, answer, lengths),
    ...airBlocks(answer),
    ...upkeepBlocks(answer, lengths),
    ...useBlocks(settings, answer, lengths),
    heading('Lightning and earth'),
    bullets('For a specialist; nothing is designed here:', EARTH_PROMPTS),
    flagBlock('Not confirmed:', flagsOf(answer)),
  ];
}

function sealBlocks(
  { numbers }: Chosen,
  { seal }: FitoutSettings,
  { seal: answer, leaks }: FitOut,
  lengths: Lengths,
): string[] {
  const amount = (one: FitOut['seal']['lines'][number]): string =>
    one.unit === 'm' ? `${one.amount.toFixed(0)} m` : `${(1000 * one.amount).toFixed(2)} L`;
  const before = answer.closing.reduce((sum, { seams }) => sum + seams.length, 0);
  const first = answer.closing[0];
  return [
    heading('Seal'),
    answer.lines.length === 0
      ? 'No joint, tape or foam is entered, so there is nothing to buy ("fitout", "seal": joint, tapeRoll, foamRoll).'
      : table(
          [{ head: 'item' }, right('seam'), right('with waste'), right('packs')],
          answer.lines.map((one) => [
            one.item,
            `${one.length.toFixed(0)} m`,
            amount(one),
            one.packs === null ? '' : String(one.packs),
          ]),
        ),
    wrap(
      `Strips outside go on from the lowest seam up, so that the upper lap over the lower (${count(answer.order.length, 'seam')}; --json lists the order). Sealed ${seal.side === 'between' ? 'between the flanges' : seal.side}: ${before === 0 ? 'none must be sealed before it closes' : `${count(before, 'seam')} must be sealed as they close${first === undefined ? '' : `, the first at panel ${numbers.numbers[first.place]}`}${seal.side === 'outside' ? ` (higher than ${lengths.large(seal.reach)})` : ''}`}.`,
      '',
    ),
    answer.weatherFrom === null
      ? 'No weather is entered: nobody can say when it is dry enough.'
      : answer.windows.length === 0
        ? paint.yellow('In the weather entered there is no hour to seal in.')
        : bullets(
            `Hours to seal in, counted from ${answer.weatherFrom}:`,
            answer.windows.map(({ from, to }) => `hour ${from} to ${to}`),
          ),
    leaks.length === 0
      ? ''
      : wrap(
          `${count(leaks.length, 'seam')} may be behind the leaks seen: look first at ${leaks
            .slice(0, 5)
            .map(({ seam, along }) => `seam ${seam} (${lengths.large(along)} above)`)
            .join(', ')}.`,
          '',
        ),
  ];
}

function airBlocks({ air }: FitOut): string[] {
  return [
    heading('Air and wet'),
    bullets('', [
      air.ventArea === null
        ? 'vents: nothing drives the air (no warmth, or no height)'
        : `vents: ${(1e4 * air.ventArea).toFixed(0)} cm² low and as much high, ${air.between.toFixed(1)} m apart, without wind`,
      ...(air.drips === null
        ? []
        : [
            `the wall drips inside in ${air.drips.hours} of ${air.drips.of} hours told; at worst ${air.drips.worst.toFixed(1)} K against the dew point`,
          ]),
      ...(air.drain === null
        ? []
        : [
            `drain: ${air.drain.all.toFixed(2)} L/s come down at the ring, ${air.drain.perMetre.toFixed(3)} L/s a metre`,
          ]),
    ]),
  ];
}

function upkeepBlocks({ upkeep }: FitOut, lengths: Lengths): string[] {
  return [
    heading('Upkeep'),
    table(
      [{ head: 'snow' }, right('clear at'), right('nobody inside at')],
      upkeep.snow.map(({ snow, clear, leave }) => [snow, lengths.side(clear), lengths.side(leave)]),
    ),
    upkeep.snow.length === 0
      ? 'No snow load is entered ("loads", "groundSnow").'
      : wrap(SNOW_WORDS, ''),
    bullets(
      upkeep.calendar.length === 0 ? '' : 'Inspections:',
      upkeep.calendar.slice(0, 6).map(({ date, what }) => `${date}: ${what.join('; ')}`),
    ),
    upkeep.repaint.length === 0 ? '' : `Coats due: ${upkeep.repaint.join(', ')}.`,
    bullets('Taking down, in the order of numbers turned round:', TAKING_DOWN),
  ];
}

function useBlocks({ use }: FitoutSettings, { use: answer }: FitOut, lengths: Lengths): string[] {
  return [
    heading('What else it could be'),
    bullets('', [
      `floor ${answer.floorArea.toFixed(1)} m², of which ${answer.headroomArea.toFixed(1)} m² with ${lengths.large(use.headroom)} of headroom; room ${answer.volume.toFixed(0)} m³`,
      `sound lasts ${answer.echo.toFixed(1)} s bare and gathers at the sphere’s centre; ${answer.absorbing.toFixed(0)} m² of absorbing area bring it to 0.5 s, a cover on ${Number.isFinite(answer.cover) ? `${(100 * answer.cover).toFixed(0)} %` : 'more than all'} of the wall the echo at the centre down by 6 dB`,
      `sound of somebody ${lengths.large(use.soundOff)} off the sphere’s centre gathers ${lengths.large(answer.focus)} beyond it`,
      ...(answer.daylight > 0
        ? [`daylight ${(100 * answer.daylight).toFixed(1)} % of that outside`]
        : []),
      ...answer.boxes.map(({ name, room }) =>
        room === null
          ? `${name}: does not fit`
          : `${name}: fits, its middle up to ${lengths.large(Math.max(0, room.out))} from the axis, towards ${degrees(room.azimuth)}`,
      ),
    ]),
  ];
}
