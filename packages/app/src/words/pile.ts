// Words of the Pile sheet. Lengths come already written.

import { listed, plural } from './counted.ts';

/** Words of the Pile sheet. */
export const pileWords = {
  heading: 'Pile',
  summary: (readings: number, panels: number, kinds: number | null) =>
    `${plural(readings, 'reading', 'readings')} of ${plural(panels, 'panel', 'panels')}${kinds === null ? '' : `, ${plural(kinds, 'kind', 'kinds')}`}`,
  emptySummary: 'nothing measured yet',
  views: { measure: 'Measure', tally: 'Tally', findings: 'Findings' },
  viewsName: 'What to show',

  empty: {
    title: 'Begin with any panel',
    steps: [
      'Lay a panel flat, its outside up if you can tell it. Measure its sides one after the other, anticlockwise, always along the same line: hole to hole is best.',
      'Type each side as your tape says it: 1103 mm, 43 7/16", 3\' 7 7/16". Enter goes on.',
      'Or drop a spreadsheet (CSV) on this page, or paste one into the tally. Its first row names the columns, as in: tag, mark, side1 cm, side2 cm, side3 cm. Only the sides must be there.',
    ],
    start: 'Type the first panel',
    open: 'Open a spreadsheet',
  },

  tally: {
    name: 'The tally: one row a reading',
    row: 'row',
    columns: {
      tag: 'tag',
      mark: 'mark',
      by: 'by',
      seenFrom: 'seen from',
      condition: 'condition',
      count: 'count',
      kind: 'kind',
    },
    side: (side: number) => `side ${side + 1}`,
    seenFrom: { outside: 'outside', inside: 'inside', unknown: 'not known' },
    condition: { '': '–', good: 'good', repair: 'to mend', scrap: 'scrap' },
    conditionNone: 'not said: good',
    cell: (cell: string, row: string) => `${cell}, ${row}`,
    rowOf: (tag: string, row: number) => (tag === '' ? `row ${row}` : `panel ${tag}`),
    freshRow: 'new row',
    plusOne: '+1',
    plusOneOf: (row: string) => `One more panel like ${row}`,
    kindsOr: (kinds: readonly string[]) => listed(kinds, 'or'),
    expected: (length: string) => `${length}?`,
    unread: 'not read',
    incomplete: 'not whole yet',
    newRow: 'Next panel',
    same: 'Same as the last one',
    sameCount: (count: number) => `Same as the last one (${count} now)`,
    remove: 'Delete row',
    moreSides: 'More sides',
    hint: 'Enter: on to the next cell and the next panel. Ctrl+Enter: same as the last one. Ctrl+Delete: delete the row. A block from a spreadsheet can be pasted anywhere.',
    pickHint: 'Tap a cell to measure it again.',
    echo: (first: string, second: string) => `${first}  =  ${second}`,
    drafts: (count: number) => `${plural(count, 'row', 'rows')} unfinished`,
  },

  faults: {
    unread: (text: string, expected: string) =>
      `“${text}” is kept here but cannot be read: expected ${expected}.`,
    range: (length: string) =>
      `${length} is no side of a panel: expected 50 mm to 12 m. Is the unit right?`,
    open: (over: string) =>
      `These sides do not meet: this one is longer than the others together by ${over}.`,
    openExact: 'These sides do not meet: this one is as long as the others together.',
    count: (text: string) =>
      `“${text}” is kept here but is no count: expected a whole number, 1 or more.`,
    taggedCount:
      'A tag names one single panel, so its row stands for one. Take the tag away, or give each panel a row.',
    otherSides: (tag: string, sides: number) =>
      `Another row says that panel ${tag} has ${sides} sides. One of the two has a wrong tag.`,
  },

  changes: {
    cell: (cell: string, row: string) => `${cell} of ${row}`,
    paste: (rows: number) => `paste ${plural(rows, 'row', 'rows')}`,
    same: 'one more like the last',
    count: (row: string) => `count of ${row}`,
    remove: (row: string) => `delete ${row}`,
    unread: 'put back the reading',
    title: 'name of the project',
    along: 'where sides are measured',
    allowance: 'hub allowance',
    readingSd: 'noise of a reading',
    lot: 'a hardware lot',
    newLot: 'a new hardware lot',
    removeLot: 'remove a hardware lot',
  },
  pasted: (rows: number, unread: number) =>
    unread === 0
      ? `${plural(rows, 'row', 'rows')} pasted.`
      : `${plural(rows, 'row', 'rows')} pasted; ${unread === 1 ? 'one of them holds' : `${unread} of them hold`} something that could not be read. It is kept in the tally, marked.`,
  pasteFault: (count: number) =>
    `The pasted table was not taken: ${count === 1 ? 'it has a fault' : `it has ${count} faults`}. Nothing was changed.`,
  groupsAside: (count: number) =>
    `${count === 1 ? 'A joined group was' : `${count} joined groups were`} set aside, because no panel carries a mark named in ${count === 1 ? 'it' : 'them'} any more.`,

  drawing: {
    seenFrom: {
      outside: 'outside towards you, flanges away',
      inside: 'inside towards you, flanges up',
      unknown: 'which face is up is not known',
    },
    face: {
      outside: 'outside towards you',
      inside: 'inside towards you',
      unknown: 'face not known',
    },
    asked: (side: number) => `side ${side + 1}`,
    read: (text: string) =>
      `Drawing of the panel as measured. ${text}. Sides run anticlockwise, side 1 begins at the dot.`,
    sideAs: (side: number, length: string) => `side ${side + 1} ${length}`,
    sideNone: (side: number) => `side ${side + 1} not measured`,
    sideAsked: (side: number) => `side ${side + 1} is asked for`,
    noShape: 'these sides do not meet',
  },

  hands: {
    title: 'Left or right?',
    left: 'left hand',
    right: 'right hand',
    test: 'Outside towards you, stand it on its longest side: where the shortest lies (heavy), that hand it is.',
    this: (hand: string) => `this one: ${hand}`,
    flipped: (hand: string) => `this one, turned outside up: ${hand}`,
    unknown: 'this one: the face decides',
    none: 'this one: no hand, left and right are the same',
  },

  keypad: {
    asking: (side: number) => `side ${side + 1}`,
    of: (row: string) => `of ${row}`,
    freshPanel: 'the next panel',
    next: 'next',
    delete: 'delete',
    backspace: 'delete the last sign',
    space: 'space',
    foot: 'feet',
    inch: 'inches',
    point: 'point',
    slash: 'fraction bar',
    keys: 'Keypad',
    same: 'same as last',
    cells: 'What is asked',
    tag: 'tag',
    count: 'count',
    letters: 'abc',
    lettersName: 'Type with letters',
    noMark: 'no mark',
    otherMark: 'another mark …',
    newMark: 'New mark',
    done: 'done',
    taken: (row: string, kind: string | null) =>
      kind === null ? `${row} is taken.` : `${row} is taken: kind ${kind}.`,
  },

  next: {
    title: 'Measure these next',
    nothing: 'Nothing stands out. Every kind rests on readings that agree.',
    waiting: 'This fills as panels are measured.',
    again: 'Measure again',
    look: 'Look again',
    show: 'Show',
    suspect: (
      row: string,
      side: number,
      measured: string,
      expected: string,
      off: string,
      kind: string,
    ) =>
      `${row}, side ${side + 1}: reads ${measured}, others of kind ${kind} say ${expected} (${off}). Hold the tape to it once more.`,
    suspectKind: (kind: string, side: number, measured: string, expected: string) =>
      `The list says ${measured} for side ${side + 1} of kind ${kind}, its panels say ${expected}. Measure one more panel of it.`,
    face: (row: string, kinds: string) =>
      `${row}: look which face was up. It is kind ${kinds}, and the face decides.`,
    twoFit: (row: string, kinds: string) =>
      `${row} fits kind ${kinds}. Measure all its sides once more.`,
    oneReading: (kind: string, row: string | null) =>
      row === null
        ? `Kind ${kind} rests on one reading. Measure one more panel of it.`
        : `Kind ${kind} rests on ${row} alone. Measure another panel like it, or this one again.`,
    maybeOne: (kinds: string, side: number, difference: string) =>
      `Kinds ${kinds} differ by ${difference} at most, which may be the tape. Measure side ${side + 1} of three panels of each, by one person.`,
    maybeTwo: (kind: string, spread: string) =>
      `Panels of kind ${kind} differ by ${spread}, more than tapes do: they may be two kinds. Measure five of them again, by one person.`,
    miscount: (kind: string, counted: number, found: number) =>
      `Kind ${kind}: the list counts ${counted}, but ${found} panels have tags. Count them again.`,
    tapes: (people: string) =>
      `Let ${people} measure the same three panels: then their tapes can be compared.`,
    newKind: (readings: number) =>
      `Measure a panel that looks like none of the ${readings} read so far, or bears another mark: a kind that is missing leaves a hole.`,
    neighbour: (kind: string, side: number, length: string) =>
      `Look for a panel with a side of ${length} and measure it: nothing so far meets side ${side + 1} of kind ${kind}.`,
    stuck: (kind: string, side: number, length: string) =>
      `Look for a panel with a side of ${length}: the shell stuck at side ${side + 1} of kind ${kind}.`,
    uncounted: (kinds: string | null, count: number) =>
      kinds === null
        ? `Count the panels of ${count} kinds: how many there are tells which shells can stand.`
        : `Count the panels of kind ${kinds}: how many there are tells which shells can stand.`,
    loosest: (kind: string, sd: string) =>
      `Kind ${kind} is known to ± ${sd} only. Two more readings help most here.`,
  },

  kinds: {
    title: 'Kinds forming',
    units: { metric: 'mm', inch: 'inches' },
    columns: { kind: 'kind, ±', good: 'good', repair: 'mend', scrap: 'scrap' },
    sides: {
      holes: (unit: string) => `sides hole to hole, ${unit}`,
      skin: (unit: string) => `sides along the skin, ${unit}`,
      hubs: (unit: string) => `sides hub to hub, ${unit}`,
    },
    none: 'The first three sides make the first kind.',
    working: 'Working up the pile',
    failed: 'The pile could not be worked up: a fault of ours. Nothing of yours is lost.',
    notCounted: 'not counted',
    noneCounted: 'Not counted yet.',
    marks: (marks: readonly string[]) => `marked ${marks.join(', ')}`,
    totalName: 'together',
    toShape: 'What do they close into?',
  },

  sharedTags: {
    title: 'One tag on two panels',
    says: (tag: string) =>
      `The tag ${tag} is on rows that cannot be one panel. Look at both panels, and give one of them its own tag.`,
    row: (row: number, kind: string | null) => `Row ${row}${kind === null ? '' : `, kind ${kind}`}`,
  },
  marks: {
    title: 'Marks on more than one kind',
    kind: (kind: string, panels: number) => `${panels} of kind ${kind}`,
    stray: (kind: string, panels: number) =>
      `${panels} of kind ${kind} (likely painted by mistake)`,
  },
  people: {
    title: 'Whose tape reads long',
    columns: { by: 'by', readings: 'readings', off: 'tape', note: 'what is done' },
    applied: 'taken off',
    stated: 'taken off, as you say',
    statedNone: 'left, as you say',
    leave: 'Leave it',
    takeOff: 'Take it off',
    reckon: 'Reckon it again',
    stating: (by: string) => `the tape of ${by}`,
    small: 'left as it is',
    kindsOnly: 'seen on kinds only: left',
    nothing: 'not known',
    noise: (used: string, stated: string, found: string | null) =>
      found === null
        ? `One reading is good to ± ${used} (as stated).`
        : `One reading is good to ± ${used}; panels measured twice show ± ${found}, stated is ± ${stated}.`,
  },
  slips: {
    title: 'Readings that went wrong',
    sides: (list: string, count: number) =>
      count === 1 ? `side ${list} reads` : `sides ${list} read`,
    who: (name: string, by: string | null) =>
      `${name.charAt(0).toUpperCase()}${name.slice(1)}${by === null ? '' : `, read by ${by}`}`,
    says: {
      length: (who: string, sides: string, read: string, should: string, kind: string) =>
        `${who}: ${sides} ${read}, kind ${kind} has ${should} there. Misread.`,
      swapped: (who: string, _sides: string, read: string, should: string, kind: string) =>
        `${who}: ${read} should be ${should}, as kind ${kind} has them: written down in each other’s place.`,
      unit: (who: string, sides: string, read: string, should: string, kind: string) =>
        `${who}: ${sides} ${read}, kind ${kind} has ${should}. Read in one unit and written down in another.`,
      face: (who: string, _sides: string, read: string, should: string, kind: string) =>
        `${who}: its sides run ${read}; kind ${kind} has ${should}. Read from the other face than was noted.`,
      shift: (who: string, _sides: string, read: string, should: string, kind: string) =>
        `${who}: reads ${read}, kind ${kind} has ${should}. Every side off by one length.`,
    },
    alike: 'Two sides in each other\u2019s place would look the same.',
    mend: {
      length: 'Put it right',
      swapped: 'Swap the sides',
      unit: 'Put the unit right',
      face: 'It was the other face',
      shift: 'Put it right',
    },
    stands: 'It stands as read',
    standsLine: (who: string) => `You say that ${who} stands as it was read.`,
    doubt: 'Doubt it again',
    note: (read: string) => `Read ${read} before it was put right by the others of its kind.`,
    mending: (name: string) => `the slip of ${name}`,
    standing: (name: string) => `${name} stands as read`,
    doubting: (name: string) => `${name} doubted again`,
  },
  faces: {
    title: 'Faces that nobody noted',
    note: 'The pile closes all the same; one look at a panel tells which of two mirror images it is.',
    all: (kind: string) => `Kind ${kind}: nobody noted from which face any panel was read.`,
    some: (kind: string) => `Kind ${kind}: of some panels nobody noted the face.`,
  },
  groups: {
    title: 'Still bolted together',
    line: (count: number, around: string, closed: boolean) =>
      `${plural(count, 'group', 'groups')} of ${around}${closed ? ', all the way round a hub' : ''}`,
    unsettled: (ways: number) =>
      ways === 0
        ? 'Neighbours in it have no side in common: look at it again.'
        : `Could be read in ${ways} ways: look at the kinds in it.`,
  },

  hardware: {
    title: 'Hardware in hand',
    none: 'No lots yet: count what is in the buckets.',
    add: 'Add a lot',
    done: 'Done',
    remove: 'Remove this lot',
    items: {
      bolt: 'bolt',
      nut: 'nut',
      'lock nut': 'lock nut',
      washer: 'washer',
      plate: 'hub plate',
      tape: 'tape',
      sealant: 'sealant',
      anchor: 'anchor',
      other: 'other',
    },
    states: { new: 'new', used: 'used', rusted: 'rusted', unknown: 'state not known' },
    fields: {
      item: 'item',
      thread: 'thread',
      length: 'length',
      count: 'count',
      state: 'state',
      corners: 'corners',
    },
    corners: (corners: number) => `${corners}-corner`,
    rim: 'rim',
    lengthFault: (text: string, expected: string) =>
      `“${text}” cannot be read as a length: expected ${expected}.`,
    lengthRange: 'Expected a length of more than 0 and up to 200 m.',
    countFault: (text: string) =>
      `“${text}” is no count: expected a whole number from 0 to 100 000.`,
  },

  settings: {
    title: 'How it was measured',
    project: 'name of the project',
    along: 'sides are measured',
    alongs: {
      holes: 'hole to hole, along the flange',
      skin: 'along the edge of the skin',
      hubs: 'hub to hub',
    },
    allowance: 'hub allowance',
    allowanceNote:
      'how much longer hub to hub is than the measured side; leave it empty where nobody knows',
    readingSd: 'one reading is good to ±',
    allowanceFault: 'Expected a length from −200 to 500 mm, or nothing.',
    readingSdFault: 'Expected a length from 0.05 to 50 mm.',
    unread: (text: string, expected: string) => `“${text}” cannot be read: expected ${expected}.`,
  },

  block: { readings: 'readings', noise: 'one reading' },
  print: {
    kinds: 'Kinds',
    readings: 'Readings',
    side: (side: number) => `side ${side + 1}`,
  },
  joined: (kinds: readonly string[]) => kinds.join(' – '),
  and: (names: readonly string[]) => listed(names, 'and'),
  or: (names: readonly string[]) => listed(names, 'or'),
  photos: {
    title: 'Photos',
    titleOf: (tag: string) => `Photos of panel ${tag}`,
    add: 'Add a photo',
    remove: 'Remove',
    removed: 'The photo was removed.',
    putBack: 'Put the photo back',
    nameOf: (number: number, tag: string) => `photo ${number} of panel ${tag}`,
    where: 'Kept in this browser alone, not in the project file. Press a photo to save it.',
    noTag: 'Photos go by the tag: pick a panel that has one.',
    demo: 'Photos are kept with projects of your own.',
    refused: 'The photo could not be kept: this browser has no room, or keeps nothing.',
    noPicture: (name: string) => `${name} is no picture that this browser can read.`,
  },
};
