// The dish and what the wall costs its signal, as text.

import {
  type AngleLoss,
  beamWidthDeg,
  type FitOut,
  type FitoutSettings,
  type SignalAnswer,
  type SkyPoint,
  worseDb,
} from '@shellraise/core';
import type { Chosen } from './job.ts';
import type { Lengths } from './lengths.ts';
import { bullets, count, heading, paint, right, table, wrap } from './terminal.ts';

const degrees = (radians: number): string => `${((radians * 180) / Math.PI).toFixed(0)}°`;
const db = (value: number): string => `${value.toFixed(2)} dB`;

/** Whether the dish swings, and the horizon that it sees. */
export function swingBlocks(
  { numbers }: Chosen,
  { dish, mount, margin }: FitoutSettings,
  { swing, horizon }: FitOut,
  lengths: Lengths,
): string[] {
  if (dish === null || swing === null)
    return [heading('Dish'), 'No dish is entered ("fitout", "dish", or --dish "2.4 m").'];
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

/** What the wall takes, by angle and over the sky. */
export function signalBlocks(
  settings: FitoutSettings,
  { signal }: FitOut,
  lengths: Lengths,
): string[] {
  if (signal.length === 0)
    return [
      heading('Signal'),
      wrap(
        'Nothing is reckoned: enter the wall and the frequencies ("fitout", or --wall and --frequency).',
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
        right('square on'),
        right('measured'),
        right('wet, at most'),
        right('one more coat'),
        right('half waves'),
        right('beam'),
      ],
      signal.map((one) => [
        frequencyWords(one.frequency),
        db((one.angles[0] as AngleLoss).te),
        one.measured === null ? '' : db(one.measured),
        db(one.wetAtMost),
        one.repainted === null ? '' : db(one.repainted),
        one.halfWaves.map((d) => lengths.fine(d)).join('\n'),
        settings.dish === null
          ? ''
          : `${beamWidthDeg(settings.dish.diameter, one.frequency).toFixed(1)}°`,
      ]),
    ),
    signal.some((one) => one.measured !== null)
      ? wrap(
          'Where a loss was measured, square on through a dry panel, the sky counts it in the place of the reckoned one; by angle, wet and painted stay as reckoned.',
          '',
        )
      : '',
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
