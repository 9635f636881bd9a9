// Words of the Papers sheet.

import { plural } from './counted.ts';

/** Words of the Papers sheet. */
export const papersWords = {
  title: 'Papers',
  tabs: 'What is made on paper',
  tab: { papers: 'Papers', model: 'Model' },
  caution:
    'Estimates from what was entered, no design approval: local codes and a licensed engineer or rigger decide.',
  paper: 'Paper',
  sets: 'Sets of papers',
  head: { set: 'Set', pages: 'Pages' },
  pick: (set: string) => `${set}: print and save it`,
  show: (set: string) => `Show ${set}`,
  all: 'All',
  none: 'None',
  making: 'Making the papers',
  seeking: 'Looking for a better order of work: the papers that go by it are made after that',
  takeNow: 'Take the best so far',
  stopped: 'Stopped: what was made stays.',
  failed: 'The papers could not be made.',
  goOn: 'Make the rest',
  waits: 'waits for the order of work',
  noOrder: 'no order of work was found; the Raising sheet says why',
  next: 'being made',
  nothing: 'nothing in the project for it',
  notMade: 'not made:',
  larger: (paper: string) => `on ${paper}`,
  preview: (set: string, page: number, of: number) => `${set}, page ${page} of ${of}`,
  page: (page: number, of: number) => `page ${page} of ${of}`,
  before: 'Page before',
  after: 'Next page',
  choose: 'Choose a set to see its pages.',
  drawing: 'Drawing the pages …',
  chosen: (sets: number, pages: number) =>
    `${plural(sets, 'set')} chosen, ${plural(pages, 'page')}.`,
  print: 'Print them',
  pdf: 'Save them as PDF',
  svg: 'Save them as SVG',
  writing: 'Writing the PDF',
  written: (name: string, pages: number) => `${name}: ${plural(pages, 'page')}.`,
  missing: (letters: string) =>
    `The PDF’s typefaces lack ${letters}: its pages have their numbers instead. Printing from here shows them.`,
  noPdf: (why: string) => `No PDF was written: ${why}`,
  pocket: 'A pocket copy writes no PDF: print, and choose “save as PDF” there.',
  trueSize: 'Print at 100 %, not fitted to the page: labels and scales are to size.',
};
