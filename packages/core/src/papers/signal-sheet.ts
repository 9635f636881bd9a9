// What the shell costs the signal, drawn as a plan of the sky: zenith in the middle, horizon outside, datum
// up, azimuth anticlockwise as on the flat plan seen from above. Steps of loss are told by hatch, the
// denser the more; the horizon that the whole dish sees is a line.

import type { HorizonPoint } from '../fitout/horizon.ts';
import { type SkyMap, type SkyPoint, worseDb } from '../fitout/sky.ts';
import {
  circle,
  type Drawing,
  type Fill,
  type Item,
  line,
  type Point,
  polygon,
  rectangle,
  text,
} from './drawing.ts';
import { type FitoutSheetOptions, run } from './fitout-plan.ts';
import { cautionOf, type SheetFacts } from './flat-plan-sheet.ts';
import { type GroundPlacing, groundSheets } from './ground-plan.ts';
import { tints } from './hatch.ts';
import { pageOf } from './page.ts';

const caution =
  'An estimate for even, dry panels and an evenly lit dish: measure one panel before you trust it.';

/** One step of loss with how it is drawn and its share of the sky. */
export interface LossStep {
  /** Decibels. */
  readonly from: number;
  readonly to: number;
  readonly fill: Fill;
  readonly share: number;
}

/** Fills of the steps, the least loss first. */
const fills: readonly Fill[] = [
  { tint: null, hatch: null },
  { tint: tints.mint, hatch: 'dots' },
  { tint: tints.sand, hatch: 'level-dashed' },
  { tint: tints.peach, hatch: 'level' },
  { tint: tints.rose, hatch: 'grid' },
  { tint: tints.violet, hatch: 'lozenges' },
];

const ROUND = [0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20];

/** Steps of loss of a map: six at most, of one round size. */
export function lossSteps(sky: SkyMap): LossStep[] {
  const [low, high] = [worseDb(sky.best), worseDb(sky.worst)];
  const fits = (one: number): boolean =>
    Math.floor(high / one) - Math.floor(low / one) < fills.length;
  const size = ROUND.find(fits) ?? (ROUND.at(-1) as number);
  const first = Math.floor(low / size);
  const count = Math.min(fills.length, Math.floor(high / size) - first + 1);
  const weights = new Float64Array(count);
  for (const point of sky.points)
    weights[stepIn(worseDb(point), first * size, size, count)] += weightOf(point);
  const all = weights.reduce((sum, one) => sum + one, 0);
  return Array.from({ length: count }, (_, i) => ({
    from: (first + i) * size,
    to: (first + i + 1) * size,
    fill: fills[i] as Fill,
    share: (weights[i] as number) / all,
  }));
}

const stepIn = (db: number, from: number, size: number, count: number): number =>
  Math.max(0, Math.min(count - 1, Math.floor((db - from) / size + 1e-9)));

const weightOf = ({ elevationDeg }: SkyPoint): number =>
  Math.max(1e-6, Math.cos((elevationDeg * Math.PI) / 180));

/** Degrees of a cell of the drawing. */
const CELL = 5;

/** The sheet of one frequency, hertz; `stepDeg` between the map's pointings. */
export function signalSheets(
  sky: SkyMap,
  about: {
    readonly frequency: number;
    readonly stepDeg: number;
    readonly horizon: readonly HorizonPoint[];
  },
  facts: SheetFacts,
  options: FitoutSheetOptions = {},
): Drawing[] {
  const steps = lossSteps(sky);
  const name = frequencyName(about.frequency);
  const at = (point: SkyPoint): string =>
    `${worseDb(point).toFixed(2)} dB at azimuth ${point.azimuthDeg}°, elevation ${point.elevationDeg}°`;
  return groundSheets(pageOf(options.paper ?? 'A4', 'across'), {
    heading: `Loss over the sky, ${name}`,
    remark: `Best ${worseDb(sky.best).toFixed(2)} dB, worst ${worseDb(sky.worst).toFixed(2)} dB, mean ${sky.meanDb.toFixed(2)} dB`,
    facts,
    lengths: 'decibels, degrees',
    scale: 'none: a plan of the sky',
    caution: cautionOf(facts, caution),
    notes: [
      `Best: ${at(sky.best)}.`,
      `Worst: ${at(sky.worst)}; seams shadow ${(100 * sky.worst.blocked).toFixed(1)} % there, and noise grows by ${sky.worst.noiseLeast.toFixed(1)} to ${sky.worst.noiseMost.toFixed(0)} K.`,
      'Zenith in the middle, horizon outside, rings at 30° and 60°. Azimuth from the datum, anticlockwise, as on the flat plan seen from above.',
      about.horizon.length > 0
        ? 'Dashed: outside of it the dish looks in part through the ground, the ring or the door.'
        : '',
    ].filter((words) => words !== ''),
    points: [
      [-1, -1],
      [1, 1],
    ],
    plan: (placing) => skyItems(sky, about, steps, placing),
    columns: [
      { name: 'loss', share: 0.6, align: 'start' },
      { name: 'of the sky', share: 0.4, align: 'end' },
    ],
    rows: steps.map((step) => ({
      cells: [stepName(step), `${(100 * step.share).toFixed(0)} %`],
      accent: false,
      bold: [true, false],
      swatch: step.fill,
    })),
  });
}

/** `0.4 to 0.6 dB`. */
const stepName = ({ from, to }: LossStep): string => {
  const decimals = Math.max(0, Math.min(3, Math.ceil(-Math.log10(to - from) - 1e-9)));
  return `${from.toFixed(decimals)} to ${to.toFixed(decimals)} dB`;
};

/** A frequency in words: `1.420 GHz`, `432.0 MHz`. */
export const frequencyName = (hertz: number): string =>
  hertz >= 1e9 ? `${(hertz / 1e9).toFixed(3)} GHz` : `${(hertz / 1e6).toFixed(1)} MHz`;

function skyItems(
  sky: SkyMap,
  { stepDeg, horizon }: { readonly stepDeg: number; readonly horizon: readonly HorizonPoint[] },
  steps: readonly LossStep[],
  placing: GroundPlacing,
): Item[] {
  const spot = (azimuthDeg: number, elevationDeg: number): Point => {
    const [r, a] = [(90 - elevationDeg) / 90, (azimuthDeg * Math.PI) / 180];
    return placing.at([r * Math.cos(a), r * Math.sin(a)]);
  };
  const ring = (elevationDeg: number): Point[] =>
    Array.from({ length: 72 }, (_, i) => spot(5 * i, elevationDeg));
  return [
    ...cellsOf(sky, stepDeg, steps).map(({ from, to, low, high, step }) =>
      polygon(sector(spot, from, to, low, high), null, (steps[step] as LossStep).fill),
    ),
    ...[30, 60].map((one) => polygon(ring(one), { weight: 'hair', ink: 'grey' })),
    polygon(ring(0), { weight: 'bold' }),
    ...Array.from({ length: 12 }, (_, i) => 30 * i).flatMap((one) => [
      line(spot(one, 0), spot(one, -3), { weight: 'thin' }),
      text(spot(one, -9), one === 0 ? 'datum' : `${one}°`, 3, {
        anchor: 'middle',
        bold: one === 0,
        ink: one === 0 ? 'accent' : 'grey',
      }),
    ]),
    ...[30, 60].map((one) =>
      text(spot(-4, one), `${one}°`, 2.4, { ink: 'grey', halo: 0.7, anchor: 'start' }),
    ),
    ...(horizon.length === 0
      ? []
      : [
          polygon(
            horizon.map(({ azimuth, elevation }) =>
              spot((azimuth * 180) / Math.PI, Math.max(0, (elevation * 180) / Math.PI)),
            ),
            { weight: 'medium', dash: 'dashed', ink: 'accent' },
          ),
        ]),
    ...legend(steps, placing),
    ...mark(spot(sky.best.azimuthDeg, sky.best.elevationDeg), 'best'),
    ...mark(spot(sky.worst.azimuthDeg, sky.worst.elevationDeg), 'worst'),
  ];
}

/** The steps as samples in the free corner below on the left. */
function legend(steps: readonly LossStep[], placing: GroundPlacing): Item[] {
  const [x, y] = placing.at([-1, 1]);
  return steps.flatMap((step, i): Item[] => {
    const top = y + 6 * (i - steps.length) + 9;
    return [
      rectangle({ x: x - 8, y: top, width: 7, height: 4.4 }, { weight: 'thin' }, step.fill),
      text([x + 1, top + 2.2], stepName(step), 2.8),
    ];
  });
}

function mark([x, y]: Point, words: string): Item[] {
  return [
    circle([x, y], 1.4, { weight: 'medium' }, { tint: '#ffffff', hatch: null }),
    run(
      [
        [x - 0.7, y],
        [x + 0.7, y],
      ],
      { weight: 'light' },
    ),
    text([x + 2.4, y], words, 3, { bold: true, halo: 0.8 }),
  ];
}

interface Cell {
  readonly from: number;
  readonly to: number;
  readonly low: number;
  readonly high: number;
  readonly step: number;
}

/** Cells of the map by the worst pointing in each, those beside each other of one step made one. */
function cellsOf(sky: SkyMap, stepDeg: number, steps: readonly LossStep[]): Cell[] {
  const cell = Math.max(CELL, stepDeg);
  const across = Math.round(360 / cell);
  const [{ from, to }] = steps as [LossStep];
  const worst = new Map<number, number>();
  for (const point of sky.points) {
    const key =
      Math.floor(point.elevationDeg / cell + 1e-9) * across +
      Math.floor(point.azimuthDeg / cell + 1e-9);
    worst.set(key, Math.max(worst.get(key) ?? 0, worseDb(point)));
  }
  const cells: Cell[] = [];
  for (let row = 0; row <= 90 / cell; row++)
    for (let column = 0; column < across; column++) {
      const db = worst.get(row * across + column);
      if (db === undefined) continue;
      const step = stepIn(db, from, to - from, steps.length);
      const low = Math.max(0, row * cell - stepDeg / 2);
      const high = Math.min(90, (row + 1) * cell - stepDeg / 2);
      const start = column * cell - stepDeg / 2;
      const last = cells.at(-1);
      if (high <= low) continue;
      if (
        last &&
        last.low === low &&
        last.step === step &&
        last.to === start &&
        start + cell - last.from <= 180
      )
        cells[cells.length - 1] = { ...last, to: start + cell };
      else cells.push({ from: start, to: start + cell, low, high, step });
    }
  return cells;
}

function sector(
  spot: (azimuth: number, elevation: number) => Point,
  from: number,
  to: number,
  low: number,
  high: number,
): Point[] {
  const count = Math.max(1, Math.ceil((to - from) / 5));
  const arc = Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);
  return [...arc.map((a) => spot(a, low)), ...arc.reverse().map((a) => spot(a, high))];
}
