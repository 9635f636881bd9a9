// Words of what is noted besides the taps on the plan: stops, stages, samples, people, weather.

import { plural } from './counted.ts';

/** Words of the Record sheet's tabs. */
export const recordingWords = {
  tabs: 'Parts of the record',
  tab: {
    next: 'Next',
    forgotten: 'Forgotten',
    tag: 'Tag',
    note: 'Note',
    day: 'Day',
    done: 'Done',
    laptop: 'Laptop',
  },
  hands: 'Hands at it',
  handsWhy: 'How many people work at what you note: it tells how fast the crew is.',
  noHands: 'not said',
  more: 'More hands',
  fewer: 'Fewer hands',
  held: (thing: string) => `${thing}: choose what is so.`,
  stop: {
    call: 'Stop work',
    lightning: 'Lightning: everybody down',
    wind: 'Wind: everybody down',
    on: { lightning: 'STOP: LIGHTNING', wind: 'STOP: WIND' },
    what: {
      lightning:
        'Everybody down and away from metal. No work until thirty minutes after the last thunder (common practice).',
      wind: 'Everybody down, nobody under the shell. Make fast what can be made fast from the ground.',
    },
    by: (name: string, time: string) => `Called by ${name} at ${time}.`,
    lift: { lightning: 'Lift the lightning stop', wind: 'Lift the wind stop' },
    asked: 'Somebody says that it is lifted, somebody that it is not: it holds until all agree.',
  },
  near: 'From where you stand',
  order: { course: 'By course', near: 'Nearest first' },
  nearNeeds: 'Choose a panel on the plan: that is where you stand.',
  here: (place: string) => `You stand at panel ${place}.`,
  sample: {
    heading: 'Bolts checked on this seam',
    of: (bolts: number) => `${plural(bolts, 'bolt')} in this seam.`,
    ofUnknown: 'How many bolts this seam has is not known: count the holes on the Pile sheet.',
    so: (bolts: number, failed: number, wanted: number | null) =>
      `${plural(bolts, 'bolt')} checked so far, ${failed} failed${
        wanted === null ? '' : `; ${wanted} wanted in all`
      }.`,
    bolts: 'Bolts checked',
    failed: 'of these failed',
    torque: (unit: string) => `Torque set, ${unit} (may stay empty)`,
    note: 'Note the check',
    fault: 'Whole bolts, no more failed than checked.',
    torqueFault: 'A torque up to 1000 N·m, or nothing.',
  },
} as const;
