// For a shell that still stands somewhere else: how to number, photograph and measure it before the first
// bolt comes out, so that it can stand again. Common practice, no source.

import type { Drawing } from './drawing.ts';
import type { SheetFacts } from './flat-plan-sheet.ts';
import { flowSheets } from './flow.ts';
import { type FlowBlock, heading, list, TICK, words } from './flow-blocks.ts';
import type { Paper } from './page.ts';

const CAUTION =
  'A shell that is opened is not self-supporting any more. How it is taken down without harm is for a licensed engineer or rigger who has seen it; these sheets say only what to write down before.';

const NUMBERING: readonly string[] = [
  'Choose a datum: a fixed thing that all can see, best the door. Mark it on the ground and on the base ring.',
  'Course 1 is the ring of panels at the ground. In each course begin at the datum and go round clockwise as seen from above: 1-01, 1-02, 1-03, and so on; then course 2 above it.',
  'A panel belongs to the course of its lowest side or corner. In doubt choose one way, write it down, and keep to it all round.',
  'Write the number on the panel twice, outside and inside, with an arrow up, where rain and hands do not wipe it: a label and a marker.',
  'Write the number of the neighbour at each side of one panel in every course: three numbers at three sides.',
  'A door, a hatch or a hole has its place number too: write what is there.',
];

const PHOTOS: readonly string[] = [
  'The whole from four sides and from above or below, the datum in each picture.',
  'Each course all round, outside and inside, each picture with two numbers in it that the picture before has.',
  'Every hub from inside where a plate or bolts differ; the crown; the base ring with what holds it down.',
  'One seam of each sort from the side: which flange laps over which, tape, sealant, washers.',
  'Every damage with its number; every mark or stamp that can still be read.',
  'A tape or a rule in each picture of a detail.',
];

const MEASURES: readonly string[] = [
  'Across the base ring hub to hub in three directions, and from a middle peg to every base hub.',
  'Chord of each side of the base ring; height of each base hub by level or water hose.',
  'Height of the crown over the base ring.',
  'Each sort of panel three times: all sides in turn, from outside, anticlockwise, with the tally sheets.',
  'Holes along a side: how many, how far apart, how wide; bolts: thread, length, grade.',
  'Weight of one panel of each sort, on a bathroom scale with and without.',
  'Angle between two panels over a seam of each sort, if anybody has a bevel.',
];

/** The sheets. `courses`: rows of the list of courses to fill in; RangeError where it is not 1 to 40. */
export function elsewhereSheets(
  facts: SheetFacts,
  options: { readonly paper?: Paper; readonly courses?: number } = {},
): Drawing[] {
  const { courses = 12 } = options;
  if (!(Number.isInteger(courses) && courses >= 1 && courses <= 40))
    throw new RangeError(`${courses} courses: expected 1 to 40`);
  const blocks: FlowBlock[] = [
    heading('Number it'),
    list('number', NUMBERING),
    heading('Photograph it'),
    list('tick', PHOTOS),
    heading('Measure it'),
    list('tick', MEASURES),
    heading('Ask whoever owns it'),
    {
      block: 'blanks',
      names: [
        'Maker, year, papers that are left',
        'Where and since when it stands',
        'What was mended or changed',
        'Leaks, and where',
        'How it was put up, with what',
        'Spare parts, and where they lie',
        'Owner, telephone',
      ],
    },
    { block: 'sheet' },
    heading('Courses'),
    words('A row a course: how many panels, which sorts by mark, what differs.', { quiet: true }),
    {
      block: 'table',
      grid: true,
      rowHeight: 12,
      columns: [
        { name: 'course', share: 0.1, bold: true },
        { name: 'panels', share: 0.12 },
        { name: 'marks or sorts, in turn from the datum', share: 0.44 },
        { name: 'what differs', share: 0.24 },
        { name: 'photos', share: 0.1, align: 'end' },
      ],
      rows: Array.from({ length: courses }, (_, i) => [String(i + 1), '', '', '', TICK]),
    },
    heading('Base ring'),
    {
      block: 'table',
      grid: true,
      rowHeight: 8,
      columns: [
        { name: 'hub', share: 0.1, bold: true },
        { name: 'from the peg', share: 0.2 },
        { name: 'chord to the next', share: 0.2 },
        { name: 'height', share: 0.2 },
        { name: 'what holds it down', share: 0.3 },
      ],
      rows: Array.from({ length: 30 }, (_, i) => [String(i + 1), '', '', '', '']),
    },
    { block: 'blanks', names: ['Written down by', 'Day'] },
  ];
  return flowSheets(blocks, facts, {
    ...(options.paper && { paper: options.paper }),
    heading: 'Standing elsewhere',
    remark: 'what to write down before the first bolt comes out; common practice, no source',
    lengths: 'write the unit',
    caution: CAUTION,
  });
}
