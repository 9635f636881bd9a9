// Words of the record on paper.

import { plural } from './counted.ts';

/** Words of the paper twin. */
export const twinWords = {
  heading: 'The record on paper',
  why: 'For whoever has no phone, or a phone that gave up: a numbered line for every panel, seam and hub, with a box for each state. What was ticked is typed in here.',
  print: 'Print the sheets',
  check: 'The four characters at the head of the sheets',
  otherPlan: (check: string) =>
    `Sheets of this plan bear ${check}. Others were printed of another plan: their lines mean other panels.`,
  typed: 'Lines and boxes that are ticked',
  how: 'As on the sheets: 17a, several lines 20-24c, several boxes 31cd, and the tag of a panel behind it, 12a=0143.',
  found: (count: number, known: number) =>
    `${plural(count, 'tick')} to note${known === 0 ? '' : `, ${known} noted already`}.`,
  fault: (found: string, expected: string) => `${found}: expected ${expected}.`,
  note: (count: number) => `Note ${plural(count, 'tick')}`,
  noted: (count: number) => `${plural(count, 'tick')} noted.`,
  more: (count: number) => `and ${count} more`,
  sheet: {
    title: (project: string) => `${project} · record on paper`,
    check: (check: string) => `Sheets of plan ${check}`,
    blanks: ['Who', 'Day', 'From', 'To'],
    key: {
      place: 'a in place; write the tag that is on the panel',
      seam: 'a finger · b snug · c final · d sealed',
      hub: 'a plate on · b prop set · c prop gone',
    },
    of: { place: 'Panels', seam: 'Seams', hub: 'Hubs, by the panels around them' },
    course: (course: number) => `Course ${course}`,
    caution:
      'Tick what you have seen, not what should be so. A record of what people said, no proof: who stands under a seam looks at it first; local codes and a licensed engineer or rigger decide.',
  },
} as const;
