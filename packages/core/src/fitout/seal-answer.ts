// What the fit-out answers of sealing: what to buy, in which order strips go on, which seams must be sealed
// before they close, hours in the weather, and seams behind the leaks told.

import { type ForecastHour, forecastTime } from '../crew/schema.ts';
import { type Read, refuse } from '../measure/fault.ts';
import { rimHubs } from '../takeoff/hubs.ts';
import type { FitoutBrief } from './brief.ts';
import { type ClosingSeams, sealedBeforeClosing } from './closing-seams.ts';
import type { FitoutSettings } from './schema.ts';
import { SEALANT_PACKS, type SealLine, sealantDepth, sealLine } from './sealant.ts';
import { lyingSeams, shingleOrder } from './seams.ts';
import { sealHours, sealWindows } from './weather.ts';

/** How the shell is sealed. */
export interface SealAnswer {
  readonly lines: readonly SealLine[];
  /** Seams in the order in which strips are laid. */
  readonly order: readonly number[];
  readonly closing: readonly ClosingSeams[];
  /** Hours from the first of the weather told, and its time; empty where none can be had. */
  readonly windows: readonly { readonly from: number; readonly to: number }[];
  readonly weatherFrom: string | null;
}

/** The answer of one shell. */
export function sealOf(
  { shell, order, forecast = [] }: FitoutBrief,
  settings: FitoutSettings,
  floor: number,
): SealAnswer {
  const { seal, seams } = settings;
  const weather = settings.weather.length > 0 ? settings.weather : wholeHours(forecast);
  const length = lyingSeams(shell).reduce((sum, one) => sum + one.length, 0);
  const rim = rimHubs(shell);
  const plates = [...rim.keys()].filter((hub) => rim[hub] === 0).length;
  const round = plates * Math.PI * seams.plateDiameter;
  const lines = [
    ...(seal.tapeRoll === null ? [] : [sealLine('tape', length, 1, seal.waste, seal.tapeRoll)]),
    ...(seal.foamRoll === null ? [] : [sealLine('foam', length, 1, seal.waste, seal.foamRoll)]),
    ...(seal.joint === null
      ? []
      : [
          sealLine(
            'sealant',
            length + round,
            seal.joint * sealantDepth(seal.joint),
            seal.waste,
            SEALANT_PACKS[seal.pack],
          ),
          sealLine('backer rod', length, 1, seal.waste, null),
        ]),
  ];
  const times = weather.map(({ at }) => forecastTime(at) as number);
  const first = Math.min(...times);
  const byHour = new Map(
    weather.map((one, i) => [Math.round((times[i] - first) / 3600), one] as const),
  );
  const hours = sealHours(
    [...byHour].map(([hour, { temperatureC, humidity, rainMm }]) => ({
      hour,
      temperatureC,
      humidity,
      rainMm,
    })),
    settings.sealRules,
  );
  return {
    lines,
    order: shingleOrder(shell),
    closing: sealedBeforeClosing(shell, order, seal.side, seal.reach, floor),
    windows: sealWindows(hours),
    weatherFrom: weather[times.indexOf(first)]?.at ?? null,
  };
}

/** Hours of a forecast that tell all that sealing asks. */
const wholeHours = (forecast: readonly ForecastHour[]): FitoutSettings['weather'] =>
  forecast.flatMap(({ at, temperatureC, humidity, rainMm }) =>
    temperatureC === null || humidity === undefined || rainMm === undefined
      ? []
      : [{ at, temperatureC, humidity, rainMm }],
  );

/** Seams of the leaks told, or the first that is none. */
export function leakSeams(
  { shell, numbers }: FitoutBrief,
  { leaks }: FitoutSettings,
): Read<number[]> {
  const seams = lyingSeams(shell);
  const found: number[] = [];
  for (const [i, { between }] of leaks.entries()) {
    const seam = seams.find(({ over, under }) => {
      const pair = [numbers[over], numbers[under]];
      return pair.includes(between[0]) && pair.includes(between[1]) && between[0] !== between[1];
    });
    if (seam === undefined)
      return refuse(
        `fitout.leaks[${i}].between`,
        between.join(' and '),
        'numbers of two places that share a seam',
      );
    found.push(seam.seam);
  }
  return { ok: true, value: found };
}
