// Words of what a real heap does to a shape: mends, strangers, kinds that are wanted, hands, the hub
// gap, the ground's cut, what to read next, the trial on the grass. Lengths come already written.

import { listed, plural } from './counted.ts';

const sidesOf = (sides: readonly number[]): string =>
  `${sides.length === 1 ? 'side' : 'sides'} ${listed(sides.map((side) => String(side + 1)))}`;

/** Words of hard piles. */
export const hardWords = {
  listed,
  kind: (id: string) => `kind ${id}`,
  show: (id: string) => `Show kind ${id}`,
  take: 'Take the mend',
  toPile: 'To the readings',
  part: 'The part that closes',
  partMore: 'from outside, its rim open',

  mends: {
    heading: 'Read or written down wrong',
    intro: 'The net closes with these. Take a mend, or measure again: either can be undone.',
    slips: {
      length: (kind: string, sides: readonly number[], reads: string, net: string) =>
        `Kind ${kind}, ${sidesOf(sides)}: reads ${reads}, the net says ${net}. Measured wrong.`,
      swapped: (kind: string, sides: readonly number[], reads: string, net: string) =>
        `Kind ${kind}, ${sidesOf(sides)}: read ${reads}, the net says ${net}. Written down in each other’s place.`,
      unit: (kind: string, sides: readonly number[], reads: string, net: string) =>
        `Kind ${kind}, ${sidesOf(sides)}: reads ${reads}, the net says ${net}. Read in one unit, written down in another.`,
      face: (kind: string, _sides: readonly number[], reads: string, net: string) =>
        `Kind ${kind} was read from the other face: its sides run ${reads}, the net has them ${net}.`,
      shift: (kind: string, _sides: readonly number[], reads: string, net: string) =>
        `Kind ${kind}, every side: reads ${reads}, the net says ${net}. All off by one length, as with a broken hook.`,
    },
    takeOf: (kind: string) => `Take the mend of kind ${kind}`,
    taken: (kind: string) => `the mend of kind ${kind}`,
    note: (read: string) => `Read ${read} before it was put right by the closed net.`,
    none: 'Nothing to change in the pile: it rests on no row that still reads this.',
  },

  strangers: {
    heading: 'Kinds without a place in this shell',
    cut: (kind: string, from: string, side: number, misfit: string) =>
      `Kind ${kind} is kind ${from}, cut by the ground along its side ${side + 1} (fits to ${misfit}).`,
    course: (kind: string, height: string, sides: readonly number[]) =>
      `Kind ${kind} belongs to a straight course ${height} high; ${sidesOf(sides)} ${sides.length === 1 ? 'lies' : 'lie'} on the halves.`,
    misread: (kind: string, of: string, sides: string) =>
      `Kind ${kind} is one more panel of kind ${of}, misread: it should read ${sides}.`,
    'other shell': (kind: string) => `Kind ${kind} is part of another shell.`,
    nothing: (kind: string) =>
      `Kind ${kind} fits nowhere: it belongs to something else, or a side is wrong.`,
    leaveOut: (kind: string) => `Leave kind ${kind} out`,
    leftOutHeading: 'Left out by you',
    leftOut: (kind: string) => `Kind ${kind} is left out: the shape is looked for without it.`,
    takeBack: (kind: string) => `Take kind ${kind} back in`,
    leaving: (kind: string) => `kind ${kind} left out`,
    taking: (kind: string) => `kind ${kind} taken back in`,
    choose: 'Leave a kind out',
    which: 'Kind to leave out',
  },

  wanted: {
    heading: 'Kinds that are wanted',
    intro: 'The shell needs them and the pile has none. Sides hub to hub.',
    one: (kind: string, places: number, sides: string) =>
      `${kind}: ${plural(places, 'place')}, sides ${sides}`,
    side: (length: string, sd: string) => `${length} ±\u00a0${sd}`,
  },

  hands: {
    mirrored: 'Nobody noted a face, so the mirror image of the whole is the other answer.',
    settle: 'One look settles it:',
    asShown: 'It runs the first way',
    mirror: 'Seen from outside it runs the other way',
    symmetric:
      'No single panel tells which of the two it is; note the faces of a few panels on the Pile sheet.',
    several:
      'This kind lies both ways round in the shell: note the face of each panel you look at.',
    telling: (kind: string) => `the faces of kind ${kind}`,
  },

  allowance: {
    value: (value: string, sd: string) => `${value} ±\u00a0${sd}`,
    found: (value: string, sd: string) =>
      `Hubs lie ${value} ±\u00a0${sd} further apart than the sides were measured: the net says so.`,
    untold: (sd: string) =>
      `How far hub to hub is longer than the measured sides cannot be told from the radius here (±\u00a0${sd}).`,
    takeLabel: 'Take it as the hub allowance',
    taking: 'the hub allowance of the net',
    sharper: {
      plate: (sd: string) =>
        `measure a hub plate from its middle to where the tape was held: to ±\u00a0${sd}`,
      rim: (sd: string) => `measure across all panels joined around one hub: to ±\u00a0${sd}`,
      angle: (sd: string) => `measure an angle between two joined panels: to ±\u00a0${sd}`,
    },
    what: 'What separates them, the sharpest first:',
  },

  section: {
    cut: (height: string, sd: string, below: boolean, floor: string) =>
      `The ground cut the lowest panels: the plane lies ${height} ±\u00a0${sd} ${below ? 'below' : 'above'} the middle of the ball; its circle is ${floor} across.`,
    course: (height: string, panels: number) =>
      `A straight course ${height} high stands between two halves: ${plural(panels, 'panel')} around.`,
    label: 'Section through the middle',
    middle: 'middle',
  },

  next: {
    heading: 'What to measure next',
    enough: 'Enough is measured: further readings would change nothing that matters.',
    surer: 'To be surer still',
    acts: { read: 'Measure it', look: 'Look', count: 'Count them' },
    find: (find: string, shape: string) => `${find}: ${shape}`,
    shape: (number: number, share: string) => `shape ${number} (${share})`,
    shapeSure: (number: number) => `shape ${number}`,
    none: 'none of these',
    finds: 'What you would find',
  },

  trial: {
    heading: 'The trial on the grass',
    intro: (kinds: string) =>
      `Before anyone commits: lay these panels smooth side up around one hub, ${kinds} anticlockwise, and bolt all seams but the last.`,
    gap: (gap: string, sd: string) =>
      `At the far end the last seam should gape ${gap} ±\u00a0${sd}.`,
    more: (most: string, least: string | null) =>
      least === null
        ? `More than ${most} means that something is wrong.`
        : `Less than ${least} or more than ${most} means that something is wrong.`,
    rival: (shape: number, gap: string) => `As shape ${shape} it would gape ${gap}.`,
    care: 'Panels are heavy and catch the wind: two people to each, on level ground.',
    label: (panels: number, gap: string) => `Star of ${panels} panels laid flat, gap ${gap}`,
  },

  besides: {
    heading: 'A second shell in the heap',
    found: (across: string, panels: number) =>
      `What is left over closes into a ball ${across} across, ${panels} panels.`,
    part: (across: string, panels: number) =>
      `What is left over makes a part of a ball ${across} across, ${panels} panels.`,
    show: 'Show the second shell',
    back: 'Show the first shell',
    drawn: 'The second shell in the heap',
  },

  freedom: {
    heading: 'What is settled, and what is free',
    matters: 'Which of them it is makes a difference for what you build.',
    equal: 'All choices stand equally: build any of them.',
    free: 'Free: ',
  },

  openPart: {
    places: 'panels in the part',
    stock: (good: number, places: number) =>
      `The part has ${plural(places, 'place')}; the pile has ${plural(good, 'good panel')}.`,
  },

  marks: {
    heading: 'What the marks say',
    coarser: (mark: string, kinds: string) =>
      `Mark ${mark} is on kinds ${kinds}: it says less than the sides do.`,
    finer: (kinds: string, marks: string, rule: string, share: string) =>
      `Kind ${kinds} bears the marks ${marks}: they tell apart what sides do not, ${rule} (${share}).`,
    rules: {
      neighbours: 'by what stands beside a place',
      level: 'by how high a place stands',
      none: 'by no rule that shows',
    },
    nothing: (mark: string) => `Mark ${mark} stands for nothing: no kind truly has it.`,
    contradicts: (panel: string, mark: string, kind: string, likely: string | null) =>
      `${panel} is marked ${mark}, but its sides are kind ${kind}${likely === null ? '' : `, which bears ${likely}`}.`,
    faded: (panel: string, marks: string, likely: string, share: string) =>
      `${panel} is marked ${marks}: most likely ${likely} (${share}).`,
    unmarked: (panel: string, likely: string, share: string) =>
      `${panel} has no mark: most likely ${likely} (${share}).`,
    group: (run: string, wrong: string) =>
      `The joined group ${run} occurs nowhere as it is marked${wrong === '' ? '' : `; ${wrong}`}.`,
    wrong: (at: number, mark: string) => `panel ${at} of it should bear ${mark}`,
    panel: (tag: string | null, row: number) =>
      tag === null ? `Reading ${row + 1}` : `Panel ${tag}`,
    write: (mark: string) => `Write mark ${mark}`,
    writing: (mark: string, panel: string) => `mark ${mark} of ${panel}`,
    look: 'Look again',
    more: (count: number) => `… and ${count} more like these.`,
    working: 'Looking at the marks',
  },

  conflicts: {
    heading: 'Laps and holes that nothing answers',
    which: (list: string) => `It is about ${list}.`,
    side: (kind: string, side: number) => `kind ${kind} side ${side + 1}`,
  },

  interchangeCost: (cost: string) =>
    `Taken as one kind, their sides are off by ${cost} (root mean square).`,
  rowWanted: 'wanted',
  rowOtherHand: (of: string) => `other hand of ${of}`,
};
