// Words of the Shape sheet and of the 3D view.

import { plural } from './counted.ts';

const numerals = 'no one two three four five six seven eight nine ten eleven twelve'.split(' ');

/** A small number as a word. */
const inWords = (count: number): string => numerals[count] ?? String(count);
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Words of the Shape sheet. */
export const shapeWords = {
  view: {
    role: '3D drawing',
    keys: 'Arrow keys turn it, plus and minus bring it nearer, 0 puts it back, Enter selects the panel in the middle.',
    missing:
      'This browser draws without depth: the shell stands here as a plain drawing, and can still be turned. Everything else works.',
    lost: 'The graphics card stopped drawing: the shell stands here as a plain drawing until it comes back. Nothing of yours is lost.',
  },
  close: 'Close the shell',
  closeAgain: 'Close the shell again',
  closing: 'Closing the shell',
  readingPile: 'Working up the pile',
  start: {
    heading: 'The kinds of the pile',
    pile: (panels: number, kinds: number) =>
      panels > 0
        ? `${plural(panels, 'good panel')} of ${plural(kinds, 'kind')}`
        : `${plural(kinds, 'kind')}, not counted yet`,
    why: 'One press looks for every net that these kinds close into. No design is assumed: the sides alone decide, and how far they can be trusted is reckoned with.',
    drawing: 'to one scale, outside towards you',
    label: 'The kinds of the pile, drawn to one scale',
  },
  empty: {
    heading: 'Nothing has been measured yet',
    text: 'A shape is made from the sides of the panels. Measure one panel of each kind on the Pile sheet, then come back.',
    toPile: 'To the Pile sheet',
  },
  failed: {
    pile: 'The pile could not be worked up: a fault of ours. Nothing of yours is lost.',
    died: 'The reckoning stopped unexpectedly; on a small device it may have run out of memory. Nothing of yours is lost.',
    failed: 'That failed: a fault of ours. Nothing of yours is lost.',
    again: 'Try again',
  },
  cancelled: 'You stopped it. Nothing was found so far that could be kept; the search begins anew.',
  stale: 'The pile has changed since: this is what it closed into before.',
  drawn: {
    whole: 'The whole ball',
    notUpright: 'from outside; which way up is chosen on the Places sheet',
    growing: (shown: number, all: number) => `laid ${shown} of ${all}, as the engine laid them`,
    running: 'Trying nets',
    standing: (count: number) =>
      count === 0
        ? 'no panels stand together yet'
        : `${plural(count, 'panel')} ${count === 1 ? 'stands' : 'stand'} together so far`,
    nothingYet: 'Looking for a first hub that closes …',
    furthest: 'As far as it got',
    furthestCount: (count: number) => `${plural(count, 'panel')} stood together`,
    stuckHere: 'The panel in the accent is where nothing fitted.',
    skip: 'Show it whole',
    again: 'Grow again',
    label: (panels: number, across: string) => `Ball of ${panels} panels, ${across} across`,
    partLabel: (panels: number) => `Part of ${panels} panels`,
    kinds: (list: string) => `Kinds: ${list}.`,
    kindCount: (id: string, count: number) => `${count} of kind ${id}`,
    picked: (kind: string, neighbours: string) =>
      `A panel of kind ${kind}; beside it, anticlockwise: ${neighbours}.`,
    pickHint: 'Press a panel to see its kind.',
    open: 'an open side',
    legend: 'Kinds',
  },
  headline: {
    ball: (across: string, panels: number) =>
      `These kinds close into a ball ${across} across, ${panels} panels`,
    part: (across: string, panels: number) =>
      `These kinds make a part of a ball ${across} across, ${panels} panels; it does not close all round`,
    alone: 'no other net fits.',
    aloneSoFar: 'the search was cut short, so there may be others.',
    several: (count: number) => `${inWords(count)} nets fit`,
    more: 'the search was cut short, so there may be more.',
    halves: 'differing by a turn of one half',
    turns: 'differing only in how nearly equal panels are turned',
    sameForDecided: 'and your cut leaves no difference',
    sameForBest: (panels: number) =>
      `and the tallest shell that your stock can stand (${panels} panels) is the same in all of them`,
    differs: 'and what you build is not the same in each',
    sameInSome: (count: number, all: number) =>
      `and what you build is the same in ${inWords(count)} of the ${inWords(all)}`,
  },
  facts: {
    radius: 'radius',
    across: 'across',
    places: 'panels in the whole ball',
    hubs: 'hubs',
    misfit: 'misfit of the sides',
    misfitOf: (value: string) => `${value} root mean square`,
    rule: 'division',
    plusMinus: (value: string, sd: string) => `${value} ± ${sd}`,
    sure: 'how sure',
    deviation: '± is one standard deviation.',
    chance: (share: string) => `${share} for this net, by the readings`,
  },
  rule: {
    none: 'follows no rule that has a name; many shells follow none',
    of: (solid: string, steps: string, division: string) =>
      `${capital(solid)}, ${steps}, divided by ${division}`,
    straight: (b: number) => (b === 1 ? 'as it is' : `each edge in ${b} steps`),
    across: (b: number, c: number, star: string) =>
      `from one ${star} to the next ${plural(b, 'step')} along and ${c} across`,
    stars: { icosahedron: 'hub of five', octahedron: 'hub of four', tetrahedron: 'hub of three' },
  },
  misfits: {
    heading: 'Every side, measured and as the closed net has it',
    note: 'hub to hub',
    kind: 'kind',
    places: 'in ball',
    good: 'good',
    side: 'side',
    measured: (unit: string) => `measured, ${unit}`,
    fitted: (unit: string) => `in the net, ${unit}`,
    off: (unit: string) => `off, ${unit}`,
    uncounted: 'not counted',
    suspect: 'suspect',
  },
  others: {
    heading: (count: number) => `The ${inWords(count)} nets side by side`,
    one: (number: number) => `Shape ${number}`,
    chosen: 'shown',
    marked: 'Its star is drawn in the accent.',
  },
  settle: 'What would settle it',
  measure: 'What to measure next',
  why: 'Why nothing closed',
  nothing: {
    heading: 'These kinds close into no shell that was found',
    cut: 'The search was cut short before every possibility was tried: this is no proof.',
    proof:
      'Everything that it looks for was tried. One wrong length, or a kind that is missing, is enough for that.',
  },
  notes: {
    interchangeable: (kinds: string) =>
      `Kinds ${kinds} differ by less than the tape can tell: either may stand in the places of the other.`,
    freeTurns: (kinds: string) =>
      `Panels of ${kinds} look alike when turned, as far as the tape can tell: how they are turned is free.`,
    misfitGroup: (run: string) =>
      `The joined group ${run} occurs nowhere in it: was it noted the right way round?`,
    kind: (id: string) => `kind ${id}`,
    short: (panels: number, places: number) =>
      `The pile has ${panels} good panels for ${places} places: a whole ball is more than stands on the ground. The Places sheet says what can stand.`,
    enough: (panels: number, places: number) =>
      `The pile has ${panels} good panels for ${places} places.`,
    toPlaces: 'To the Places sheet',
  },
  suspects: {
    heading: 'Suspect',
    ofShape: (kind: string, side: number, measured: string, expected: string) =>
      `Side ${side} of kind ${kind} reads ${measured}; the net closes with ${expected}.`,
    ofReading: (panel: string, side: number, measured: string, expected: string) =>
      `${panel}, side ${side} reads ${measured}; the others of its kind say ${expected}.`,
    ofRow: (kind: string, side: number, measured: string, expected: string) =>
      `The row of kind ${kind}, side ${side} says ${measured}; its readings say ${expected}.`,
    behind: 'The readings behind it; measure again and correct what is wrong:',
    more: (count: number) =>
      count === 1
        ? 'One more reading is nearer to what fits.'
        : `${count} more readings are nearer to what fits.`,
    row: (kind: string) => `Row of kind ${kind}`,
    panel: (tag: string | null, row: number, by: string | null) =>
      `${tag === null ? `Reading ${row + 1}` : `Panel ${tag}`}${by === null ? '' : `, ${by}`}`,
    side: (side: number) => `side ${side}`,
    again: 'Measured again',
    field: (what: string, side: number) => `${what}, side ${side}, measured again`,
    correct: 'Correct',
    wrong: (found: string, expected: string) => `${found} cannot be read; ${expected}.`,
    range: (least: string, most: string) => `A side is ${least} to ${most} long.`,
    noMeet:
      'With this side the panel would not close: the longest side must be shorter than the others together.',
    label: (what: string, side: number) =>
      `correct ${what.charAt(0).toLowerCase()}${what.slice(1)}, side ${side}`,
  },
  tooFew: {
    'one reading': (kinds: string) =>
      `Kind ${kinds} rests on one reading: measure a second panel of it.`,
    'face unknown': (kinds: string) =>
      `Nobody says from which face a panel of ${kinds} was measured: look at it again.`,
    'two kinds fit': (kinds: string) => `One panel fits ${kinds} alike: measure it again.`,
    more: (count: number) => `… and ${count} more like these; the Pile sheet lists them.`,
    second:
      'Measure a second panel of each kind: one wrong length is enough to keep a net from closing.',
    missing:
      'Look for panels that nobody measured: a kind that is missing leaves a hole that nothing fills.',
    or: ' or ',
  },
  block: {
    assumes: {
      hubs: 'sides hub to hub',
      holes: 'sides hole to hole',
      skin: 'sides along the skin',
    },
    beyond: (length: string) => `hub to hub ${length} more`,
    unknown: 'hub to hub not known',
    none: 'not found yet',
  },
  capital,
} as const;
