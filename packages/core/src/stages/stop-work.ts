// The wind at which work stops: a part of the gust at which something first reaches its limit, and
// never more than what people may handle panels in.

import { confirmed, type Provenance, type Sourced } from '../loads/provenance.ts';
import type { Limit } from './limits.ts';

/** A limit for work in wind, m/s. */
export interface HandlingLimit {
  readonly task: string;
  readonly mean: number;
  readonly gust: number;
  readonly source: Provenance;
}

const roofing = (text: string): Provenance =>
  confirmed(`NFRC, Roofing and cladding in windy conditions: ${text}; as quoted by trade press`);

/** Limits that guidance gives for people at work, lowest gust first. A panel is a sheet that the
 * wind takes hold of; a light one is no better: it goes further. */
export const HANDLING_LIMITS: readonly HandlingLimit[] = [
  {
    task: 'handling panels',
    mean: 7.6,
    gust: 11.6,
    source: roofing('large sheets, mean 17 mph gusting 26 mph'),
  },
  {
    task: 'work at height',
    mean: 10.3,
    gust: 15.6,
    source: roofing('mean 23 mph gusting 35 mph'),
  },
];

/** Work stops, and the shell is closed down, at so much of the load that is its limit; at the other
 * everybody leaves it.
 * Source: an event guide's wind plan, action at 60 % and at 80 % of the greatest wind load. */
export const ACTION_LOAD = { stop: 0.6, leave: 0.8 } as const;

const ACTION: Provenance = confirmed(
  'Bute Park event guide, wind: action at 60 % and 80 % of the greatest wind load',
);

/** What wind stops work. */
export interface StopWork {
  /** Gust at which work stops, m/s, with its sources. Never above the handling limit. */
  readonly gust: Sourced;
  /** The mean that goes with that gust as the handling limit's does, m/s: whichever is met first. */
  readonly mean: number;
  /** Gust at which everybody leaves the shell and its fall range, m/s; null where no limit of the
   * stage is known. */
  readonly leave: number | null;
  /** What sets it: handling, or the thing that reaches its limit first. */
  readonly setBy: 'handling panels' | 'hub not tied' | Limit['what'];
  /** Sorts of things whose limits are unknown: any of them may give way sooner. */
  readonly unknown: readonly Limit['what'][];
}

/** The stop-work wind from the limits of a stage. Where nobody knows what its anchors hold it counts as
 * not tied: the gust at which its first base hub would lift off (`untied`) is a limit too. A stage with
 * no known limit is held to the handling limit, and everything that is unknown is named. */
export function stopWork(limits: readonly Limit[], untied: Limit | null): StopWork {
  const handling = HANDLING_LIMITS[0] as HandlingLimit;
  const lowest = lowestLimit(withUntied(limits, untied));
  const own = lowest === null ? null : Math.sqrt(ACTION_LOAD.stop) * (lowest.gust as number);
  const byStage = own !== null && own < handling.gust;
  return {
    gust: {
      value: byStage ? own : handling.gust,
      sources: lowest === null ? [handling.source] : [handling.source, ACTION],
    },
    mean: handling.mean * ((byStage ? own : handling.gust) / handling.gust),
    leave: lowest === null ? null : Math.sqrt(ACTION_LOAD.leave) * (lowest.gust as number),
    setBy: byStage
      ? lowest === untied
        ? 'hub not tied'
        : (lowest as Limit).what
      : 'handling panels',
    unknown: limits.filter(({ status }) => status === 'unknown').map(({ what }) => what),
  };
}

/** The limits of a stage, with that of a base hub that is not tied for anchors that nobody knows. */
const withUntied = (limits: readonly Limit[], untied: Limit | null): Limit[] =>
  limits.map((one) =>
    untied !== null && one.what === 'anchor' && one.status === 'unknown' ? untied : one,
  );

/** The limit that is reached at the lowest gust; null where none is known to be reached. */
export function lowestLimit(limits: readonly Limit[]): Limit | null {
  return limits.reduce<Limit | null>(
    (low, one) =>
      one.gust !== null && (low === null || one.gust < (low.gust as number)) ? one : low,
    null,
  );
}

/** Whether a stage is left for the night as it is. */
export interface ClosedDown {
  /** `holds`: every limit is known and the gust reaches none; `gives way`: it reaches one;
   * `unknown`: it reaches none that is known, but some are not. */
  readonly verdict: 'holds' | 'gives way' | 'unknown';
  /** The limit that it reaches first. */
  readonly by: Limit | null;
  /** Greatest gust over tonight's expected one that known limits leave, 1: none; null: no known one. */
  readonly reserve: number | null;
}

/** A stage in the gust that is expected tonight (m/s), with no one at work: held to the same part of
 * its limits at which everybody would leave by day. RangeError for a gust that is none. */
export function closedDown(
  limits: readonly Limit[],
  untied: Limit | null,
  gust: number,
): ClosedDown {
  if (!(gust >= 0 && gust < 200))
    throw new RangeError(`tonight’s gust is ${gust} m/s, expected 0 to 200 m/s`);
  const lowest = lowestLimit(withUntied(limits, untied));
  const leave = lowest === null ? null : Math.sqrt(ACTION_LOAD.leave) * (lowest.gust as number);
  const reserve = leave === null || gust === 0 ? null : leave / gust;
  if (leave !== null && gust >= leave) return { verdict: 'gives way', by: lowest, reserve };
  const unknown = limits.some(({ status }) => status === 'unknown');
  return { verdict: unknown ? 'unknown' : 'holds', by: null, reserve };
}
