// Words of the Model tab: sorts of model, their settings, what came of them.

import type { ModelSettings, ModelSort } from '@shellraise/core';

const sorts: Readonly<Record<ModelSort, string>> = {
  net: 'Paper net',
  strips: 'Course strips',
  cut: 'Cut files',
  print: '3D print, whole',
  snap: '3D print, in parts',
  'full-size': 'Full size',
};

const about: Readonly<Record<ModelSort, string>> = {
  net: 'Flat pieces of paper with tabs, as few as fit, numbered by place.',
  strips: 'The same course by course: it teaches the order of work.',
  cut: 'Panels as flat parts for a laser or a knife.',
  print: 'The shell as one solid with a wall, and a person beside it.',
  snap: 'A panel of each kind and a hub of each sort, flat on the bed, to push together.',
  'full-size': 'Panels and hub plates in their true size, to make those that are missing.',
};

const settings: Readonly<Record<keyof ModelSettings, string>> = {
  scale: 'Scale, 1 :',
  paper: 'Paper',
  sheet: 'Sheet, mm',
  thickness: 'Thickness of the sheet, mm',
  kerf: 'Width of the cut (kerf), mm',
  joint: 'Edges',
  snap: 'Score outlines to snap, for thin plastic',
  wall: 'Thickness of the wall, mm',
  bed: 'Bed of the printer, mm',
  clearance: 'Room round pegs and between panels, mm',
  peg: 'Diameter of a peg, mm',
  flange: 'Depth of a flange, mm (0: none)',
  plate: 'Diameter of a hub plate, mm',
  hole: 'Diameter of a hole, mm',
  floor: 'Floor over the lowest hub, mm',
};

/** Words of the Model tab. */
export const patternWords = {
  tab: 'Model',
  sort: 'Sort of model',
  sorts,
  about,
  settings,
  joints: { butt: 'square', bevel: 'to bevel', slot: 'slots and clips' },
  expected: 'a number of 0 or more',
  expectedSizes: (count: number) =>
    count === 2 ? 'two sizes: 600 x 400' : 'three sizes: 220 x 220 x 250',
  make: 'Make the files',
  working: 'Making the model …',
  failed: 'The model could not be made.',
  refused: (setting: string, found: string, expected: string) =>
    `${setting}: ${found}, ${expected}.`,
  open: 'Places that stay open',
  made: 'What came of it',
  files: (count: number) => (count === 1 ? '1 file' : `${count} files`),
  saveAll: 'Save all as one zip',
  save: (name: string) => `Save ${name}`,
  picture: 'Picture of the model',
  none: 'Press “Make the files” to see the model.',
  older: 'Settings were changed since: make the files again.',
  page: (at: number, count: number) => `${at} of ${count}`,
  before: 'The one before',
  after: 'The next one',
  caution: 'A model shows the shape. It proves nothing about strength.',
};
