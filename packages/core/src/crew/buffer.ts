// Jobs for spare hands: what can be done on the ground, low down, in any order, while others lift.
// Times and cautions are common practice unless told otherwise.

import { commonPractice, confirmed, type Provenance } from '../loads/provenance.ts';

/** A job for spare hands. */
export interface BufferJob {
  readonly what: string;
  /** The fewest and the most people that it has a use for. */
  readonly people: readonly [number, number];
  /** Person-minutes for one, and how many there are; null: as many as there are. */
  readonly minutesEach: number;
  readonly count: number | null;
  /** Hours that it must cure before it is lifted or got wet; null: none. */
  readonly cureHours: number | null;
  readonly cautions: readonly string[];
}

/** What spare hands can be put to. */
export interface BufferFacts {
  readonly hubPlates: number;
  /** Bags of bolts, one for each stage that is left. */
  readonly bags: number;
  /** Panels of each kind that wait for mending. */
  readonly repairs: readonly { readonly kind: string; readonly count: number }[];
  /** Lifts on the next cards, whose panels can be laid out. */
  readonly liftsAhead: number;
  /** °C; null: not known. */
  readonly temperatureC: number | null;
}

/** Hours to cure at 20 °C; about twice as long for every ten degrees less. */
const CURE = { hours: 12, at: 20 } as const;
/** Colder than this nothing cures that is mixed on site. */
const TOO_COLD = 8;

/** Where these come from. */
export const BUFFER_SOURCES: readonly Provenance[] = [
  commonPractice(
    'jobs for spare hands, their times, and curing: 12 h at 20 °C, twice as long for every 10 °C less',
  ),
  confirmed(
    'US EPA renovation rule, 40 CFR 745: test paint of before 1978 for lead, no dry sanding of it without capture',
  ),
];

/** Jobs in the order in which they help most. */
export function bufferJobs(facts: BufferFacts): BufferJob[] {
  const repairs = facts.repairs.reduce((sum, { count }) => sum + count, 0);
  const job = (
    what: string,
    people: readonly [number, number],
    minutesEach: number,
    count: number | null,
    more: Partial<BufferJob> = {},
  ): BufferJob => ({ what, people, minutesEach, count, cureHours: null, cautions: [], ...more });
  const cold = facts.temperatureC !== null && facts.temperatureC < TOO_COLD;
  return [
    ...(facts.liftsAhead > 0
      ? [
          job(
            'Lay out the next lifts in order, face up, flat and weighted',
            [2, 4],
            4,
            facts.liftsAhead,
            {
              cautions: ['A panel on edge is a sail: carry it low, two people where it is gusty.'],
            },
          ),
        ]
      : []),
    ...(facts.bags > 0
      ? [
          job(
            'Bag bolts, nuts and washers by stage, with the label in the bag',
            [1, 3],
            10,
            facts.bags,
          ),
        ]
      : []),
    ...(repairs > 0
      ? [
          job(
            `Mend panels: ${facts.repairs.map(({ kind, count }) => `${count} of kind ${kind}`).join(', ')}`,
            [1, 3],
            45,
            repairs,
            {
              cureHours: cureHours(facts.temperatureC),
              cautions: [
                'Dust of glass fibre and filler: mask (P3 or N100), goggles, gloves, downwind of everybody.',
                'Old paint may hold lead: test it first; never sand it dry, never burn it off, gather every scrap.',
                ...(cold
                  ? [
                      `Under ${TOO_COLD} °C nothing mixed on site cures: warm the place or leave it.`,
                    ]
                  : []),
              ],
            },
          ),
        ]
      : []),
    ...(facts.hubPlates > 0
      ? [
          job('Clean hub plates and put on new seals', [1, 4], 6, facts.hubPlates, {
            cautions: ['Wet the rust and old paint before brushing: dust of lead paint is poison.'],
          }),
        ]
      : []),
    job(
      'Chase threads, oil bolts, throw out the bent ones and count what is left',
      [1, 2],
      30,
      null,
    ),
    job(
      'Water, food, sun and rain cover; a tidy site; a word with everybody who came late',
      [1, 2],
      20,
      null,
    ),
  ];
}

/** Hours to cure at a temperature, °C; as at 20 °C where it is not known. */
export const cureHours = (temperatureC: number | null): number =>
  Math.round(CURE.hours * 2 ** ((CURE.at - (temperatureC ?? CURE.at)) / 10));
