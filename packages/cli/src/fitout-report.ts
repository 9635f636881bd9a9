// The fit-out as text: a block for each thing asked.

import {
  beamWidthDeg,
  type CarryAnswer,
  EARTH_PROMPTS,
  type FitOut,
  type FitoutSettings,
  flagsOf,
  type SignalAnswer,
  type SkyPoint,
  SNOW_WORDS,
  TAKING_DOWN,
  worseDb,
} from '@shellraise/core';
import type { ChosenDoor } from './fitout-job.ts';
import { flagBlock } from './ground-loads.ts';
import type { Chosen } from './job.ts';
import { type Lengths, lengthsIn } from './lengths.ts';
import type { FitoutOptions } from './options.ts';
import { bullets, caution, count, heading, paint, table, wrap } from './terminal.ts';

const right = (head: string) => ({ head, align: 'right' as const });
const degrees = (radians: number): string => `${((radians * 180) / Math.PI).toFixed(0)}°`;
const db = (value: number): string => `${value.toFixed(2)} dB`;

/** The door and what must pass it, as they were found. */
export interface Carried {
  readonly door: ChosenDoor | null;
  readonly carried: readonly CarryAnswer[];
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

function doorBlocks({ numbers }: Chosen, { door, carried }: Carried, lengths: Lengths): string[] {
  const named = (place: number): string => numbers.numbers[place] ?? '';
  const passes = carried.map(({ name, answer, roughly }) =>
    answer.status === 'passes'
      ? `${name} passes: a way of ${count(answer.motion.length, 'pose')} was found, ${lengths.side(answer.clearance)} clear${roughly ? ' (a body that holds it)' : ''}`
      : answer.status === 'cannot pass'
        ? paint.red(`${name} cannot pass: ${answer.why}`)
        : paint.yellow(`${name}: no way was found: ${answer.why}`),
  );
  const through = bullets(passes.length === 0 ? '' : 'What must pass:', passes);
  if (door === null)
    return [
      heading('Door'),
      'No panel is left out ("fitout", "door", or --door "1-08, 1-09, 1-10").',
      through,
    ];
  const { advice, frame, windFrom } = door;
  const lengthsTold = (['header', 'jamb', 'sill'] as const)
    .filter((part) => advice.lengths[part] > 0)
    .map((part) => `${part === 'jamb' ? 'jambs' : part} ${lengths.large(advice.lengths[part])}`);
  return [
    heading('Door'),
    bullets('', [
      `frame: ${lengthsTold.join(', ')}; its sections are for an engineer`,
      `props under ${count(advice.props.length, 'hub')} of its edge first, until the frame is in`,
      `then panels come out in this order, spares from then on: ${advice.cutOrder.map(named).join(', ')}`,
      ...(advice.held.length > 0
        ? [
            `after ${advice.held.map((step) => named(advice.cutOrder[step] ?? -1)).join(', ')} another panel hangs by one seam or none: hold it by hand`,
          ]
        : []),
      ...(windFrom === null || advice.offWind === null
        ? ['where the wind comes from is not told ("wishes", "windFrom"): put it on the side away']
        : [
            `it looks ${degrees(advice.offWind)} away from where the wind comes from; 180° is best`,
          ]),
      ...(frame === null
        ? []
        : [
            `without a frame the shell keeps ${(100 * frame.stiffness.kept).toFixed(0)} % of its stiffness`,
            ...(frame.sag === null
              ? []
              : [
                  `its edge sags by ${(1000 * frame.sag.open).toFixed(1)} mm under the own weight (${(1000 * frame.sag.whole).toFixed(1)} mm whole)`,
                ]),
            ...(frame.buckling === null
              ? []
              : [
                  `${(100 * Math.min(1, frame.buckling.open / frame.buckling.whole)).toFixed(0)} % is left of the load at which a perfect shell buckles; a real one does at a third or a fifth of it`,
                ]),
            ...(frame.supposed.length > 0
              ? [`supposed, nobody said: ${frame.supposed.join(', ')}`]
              : []),
          ]),
    ]),
    through,
  ];
}

function swingBlocks(
  { numbers }: Chosen,
  { dish, mount, margin }: FitoutSettings,
  { swing, horizon }: FitOut,
  lengths: Lengths,
): string[] {
  if (dish === null || swing === null)
    return [heading('Dish'), 'No dish is told ("fitout", "dish", or --dish "2.4 m").'];
  const { nearest, best, largest } = swing;
  const where = nearest.place < 0 ? 'the floor' : `panel ${numbers.numbers[nearest.place]}`;
  const says = swing.swings
    ? `swings: nowhere nearer than ${lengths.side(nearest.clearance)}`
    : `does NOT swing with ${lengths.side(margin)} to spare: ${nearest.clearance < 0 ? `it would go ${lengths.side(-nearest.clearance)} through` : `it comes within ${lengths.side(nearest.clearance)} of`} ${where}`;
  const lowest = [...horizon].sort((a, b) => b.elevation - a.elevation)[0];
  return [
    heading('Dish'),
    (swing.swings ? (text: string) => text : paint.red)(
      wrap(
        `A dish of ${lengths.large(dish.diameter)} on ${mount.kind}, ${lengths.large(mount.height)} above the floor, ${says} (azimuth ${degrees(nearest.azimuth)}, elevation ${degrees(nearest.elevation)}, ${where}, its ${nearest.part}).`,
        '',
      ),
    ),
    wrap(
      largest > 0
        ? `The largest of its focal ratio that swings on this mount: ${lengths.large(largest)}. Best height of the mount: ${lengths.large(best.height)}, for ${lengths.large(best.largest)}.`
        : 'No dish at all swings on this mount: what is behind the pivot or the feed does not fit.',
      '',
    ),
    lowest === undefined
      ? ''
      : lowest.elevation === 0
        ? 'Horizon: over the ring the whole dish looks clear down to level, all round.'
        : wrap(
            `Horizon: the whole dish looks clear from ${degrees(Math.min(...horizon.map((one) => one.elevation)))} up at best; worst ${degrees(lowest.elevation)} at azimuth ${degrees(lowest.azimuth)}, by the ${lowest.by}. Below that it looks through the ground or ring.`,
            '',
          ),
  ];
}

const frequencyWords = (hertz: number): string =>
  hertz >= 1e9 ? `${(hertz / 1e9).toFixed(3)} GHz` : `${(hertz / 1e6).toFixed(1)} MHz`;

function signalBlocks(settings: FitoutSettings, { signal }: FitOut, lengths: Lengths): string[] {
  if (signal.length === 0)
    return [
      heading('Signal'),
      wrap(
        'Nothing is reckoned: tell the wall and the frequencies ("fitout", or --wall and --frequency).',
        '',
      ),
    ];
  const rows = signal.flatMap((one) =>
    one.angles.map(({ incidence, te, tm }, i) => [
      i === 0 ? frequencyWords(one.frequency) : '',
      degrees(incidence),
      db(te),
      db(tm),
    ]),
  );
  return [
    heading('Signal'),
    'Loss of a dry panel without seams, by angle from square on and by which field lies along it:',
    table([{ head: 'frequency' }, right('angle'), right('electric'), right('magnetic')], rows),
    table(
      [
        { head: 'frequency' },
        right('wet, at most'),
        right('one more coat'),
        right('half waves'),
        right('beam'),
      ],
      signal.map((one) => [
        frequencyWords(one.frequency),
        db(one.wetAtMost),
        one.repainted === null ? '' : db(one.repainted),
        one.halfWaves.map((d) => lengths.fine(d)).join('\n'),
        settings.dish === null
          ? ''
          : `${beamWidthDeg(settings.dish.diameter, one.frequency).toFixed(1)}°`,
      ]),
    ),
    ...signal.map((one) => skyBlock(one)),
  ];
}

function skyBlock({ frequency, sky, best, worst }: SignalAnswer): string {
  if (sky === null) return '';
  const at = (point: SkyPoint): string =>
    `${db(worseDb(point))} at azimuth ${point.azimuthDeg}°, elevation ${point.elevationDeg}° (seams shadow ${(100 * point.blocked).toFixed(1)} %, noise ${point.noiseLeast.toFixed(1)} to ${point.noiseMost.toFixed(0)} K)`;
  return bullets(`Sky at ${frequencyWords(frequency)}, ${count(sky.points.length, 'pointing')}:`, [
    `best ${at(sky.best)}`,
    `worst ${at(sky.worst)}`,
    `mean ${db(sky.meanDb)}`,
    ...(best && worst
      ? [
          `gain over temperature ${best.db.toFixed(2)} dB at best; ${worst.least.db.toFixed(2)} to ${worst.most.db.toFixed(2)} dB at worst`,
        ]
      : []),
  ]);
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
      ? 'Nothing to buy is told ("fitout", "seal": joint, tapeRoll, foamRoll).'
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
      ? 'No weather is told: nobody can say when it is dry enough.'
      : answer.windows.length === 0
        ? paint.yellow('In the weather told there is no hour to seal in.')
        : bullets(
            `Hours to seal in, counted from ${answer.weatherFrom}:`,
            answer.windows.map(({ from, to }) => `hour ${from} to ${to}`),
          ),
    leaks.length === 0
      ? ''
      : wrap(
          `${count(leaks.length, 'seam')} may be behind the leaks told: look first at ${leaks
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
    heading('Keeping it'),
    table(
      [{ head: 'snow' }, right('clear at'), right('nobody inside at')],
      upkeep.snow.map(({ snow, clear, leave }) => [snow, lengths.side(clear), lengths.side(leave)]),
    ),
    upkeep.snow.length === 0
      ? 'No snow load is told ("loads", "groundSnow").'
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
      `sound lasts ${answer.echo.toFixed(1)} s bare and gathers at the sphere's centre; ${answer.absorbing.toFixed(0)} m² of absorbing area bring it to 0.5 s, a cover on ${Number.isFinite(answer.cover) ? `${(100 * answer.cover).toFixed(0)} %` : 'more than all'} of the wall the echo at the centre down by 6 dB`,
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
