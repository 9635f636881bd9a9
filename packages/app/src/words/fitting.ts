// Words of what the stock can stand: wishes, fits with their proof, conflicts.

import { listed, plural } from './counted.ts';

/** Names of what counts; one that is not named here shows as the file has it. */
const counts: Readonly<Record<string, string>> = {
  'fewest bought': 'fewest panels bought or made',
  tallest: 'tallest',
  'largest floor': 'largest floor',
  'fewest mended': 'fewest panels mended',
  'fewest gaps': 'fewest places left open',
  'spares kept': 'spares kept',
  door: 'the door',
  'level base': 'a level base ring',
  'mended low': 'mended panels low and to the lee',
  'groups joined': 'groups kept joined',
};

const demands: Readonly<Record<string, string>> = {
  flatBase: 'the level base ring',
  leastHeight: 'the least height',
  leastFloor: 'the least floor',
  mostFloor: 'the most floor',
  mostBought: 'the most panels bought',
  door: 'the door',
  spares: 'the spares kept aside',
  mostParted: 'the most groups taken apart',
};

/** Words of the fits. */
export const fittingWords = {
  tab: 'Fit',
  heading: 'What this stock can stand',
  counts: (what: string): string => counts[what] ?? what,
  wishes: {
    heading: 'Wishes',
    change: 'Change the wishes',
    order: 'What counts, the first beyond all others',
    up: (what: string) => `${what}: count earlier`,
    down: (what: string) => `${what}: count later`,
    leave: (what: string) => `${what}: no longer count`,
    asWell: 'Count as well',
    choose: 'choose …',
    asWellNote: 'A demand in this order may be missed for what stands before it.',
    door: (width: string, height: string) =>
      `A door, ${width} wide and ${height} high (its size: Door)`,
    doorOf: (width: string, height: string) => `a door ${width} by ${height}`,
    parted: (count: number) => `at most ${plural(count, 'group')} taken apart`,
    mostParted: 'Groups taken apart, at most',
    limits: 'Limits',
    spares: 'Spares kept of each kind',
    mostGaps: 'Places left open, at most',
    mostBought: 'Panels bought, at most',
    leastHeight: 'Height, at least',
    leastFloor: 'Clear floor across, at least',
    mostFloor: 'Floor across, at most',
    noLimit: 'empty: no limit',
    mended: 'Panels to be mended may be used',
    flatBase: 'The base ring must be level',
    wholeFault: (most: number) => `Expected a whole number from 0 to ${most}.`,
    lengthFault: (most: string, such: string) =>
      `Expected a length of more than 0, at most ${most}, such as ${such}.`,
    reset: 'Back to the usual wishes',
    first: (what: string) => `First ${what}`,
    next: (what: string) => `then ${what}`,
    goodOnly: 'good panels only',
    keep: (count: number) => `${plural(count, 'spare')} of each kind kept aside`,
    gaps: (count: number) => `up to ${plural(count, 'place')} left open`,
    noGaps: 'no place left open',
    bought: (count: number) => `at most ${plural(count, 'panel')} bought`,
    flat: 'a level base ring',
    tall: (height: string) => `${height} tall or more`,
    floor: (across: string) => `floor of ${across} or more`,
    within: (across: string) => `within ${across} across`,
  },
  find: 'Find the best',
  findAgain: 'Find the best again',
  finding: 'Looking for the best',
  stale: 'These are for other wishes, or for the pile as it was.',
  soFar: (count: number) =>
    count === 0 ? 'Nothing found yet.' : `${plural(count, 'fit')} found so far, the best first.`,
  stopped: 'You stopped it: the best is not proved.',
  failed: 'That failed: a fault of ours. Nothing of yours is lost.',
  died: 'The reckoning stopped unexpectedly. Nothing of yours is lost.',
  proved: (outlines: number, seconds: string) =>
    `Proved best: none of the ${outlines} ways up and cuts does better by these wishes. ${seconds} s.`,
  notProved: (tried: number, outlines: number, seconds: string) =>
    `Best found in ${seconds} s, not proved: ${tried} of ${outlines} ways up and cuts were filled.`,
  badgeProved: 'proved best',
  badgeBest: 'best so far',
  stands: 'stands now',
  choose: 'Stand it so',
  chooseThis: (height: string, number: number) => `Stand it so: fit ${number}, ${height} tall`,
  choosing: (height: string) => `stand the fit ${height} tall`,
  nothingToGet: 'every place gets a good panel',
  buy: (count: number) => `${count} to buy`,
  mend: (count: number) => `${count} to mend`,
  open: (count: number) => `${count} left open`,
  why: 'Where from, and why there',
  whyOf: (number: number) => `Where from, and why there: fit ${number}`,
  kindLine: (kind: string, places: number, good: number) =>
    `Kind ${kind}: ${plural(places, 'place')}, ${plural(good, 'good panel')} to use.`,
  mendedAt: (places: readonly string[]) =>
    `Mended ${places.length === 1 ? 'panel' : 'panels'} into ${listed(places)}: the lowest of this kind, in reach from the ground.`,
  boughtAt: (places: readonly string[]) =>
    `Bought or made ${places.length === 1 ? 'panel' : 'panels'} for ${listed(places)}: the lowest of this kind, in reach from the ground.`,
  openAt: (places: readonly string[]) =>
    `Left open: ${listed(places)}. There it does least harm: low; no two side by side; each panel round it held by two seams or more, each inner hub by three. Rules of thumb, no source.`,
  infill: (count: number) => `The base ring is ragged. Infill closes it: ${plural(count, 'panel')}`,
  infillLine: (count: number, sides: string) => `${count} × ${sides}, the first side on the ground`,
  level: 'The base ring is level: no infill.',
  conflict: 'These wishes stand against each other',
  conflictOf: (wishes: readonly string[]) =>
    `${listed(wishes)} cannot be kept together. Give up or ease one of them: with any one gone the others can be kept.`,
  conflictOne: (wish: string) => `${wish} alone cannot be kept by any way up and cut of this net.`,
  conflictUnknown: 'Which of the wishes are to blame could not be settled.',
  ease: (wish: string) => `Give up ${wish}`,
  nearest: 'The nearest that works with the others kept:',
  take: (wish: string, value: string) =>
    `${wish.charAt(0).toUpperCase()}${wish.slice(1)}: ${value}`,
  unevenBy: (by: string) => `uneven by ${by}`,
  size: (width: string, height: string) => `${width} by ${height}`,
  doorAt: (places: readonly string[]) => `The door leaves out ${listed(places)}.`,
  joinedAt: (kinds: readonly string[], places: readonly string[]) =>
    `The group of ${kinds.join(' ')} stays joined: ${places.join(' ')}, anticlockwise seen from outside.`,
  parted: (count: number) => `${plural(count, 'group')} taken apart`,
  sparesLacking: (count: number) => `${plural(count, 'spare')} not kept`,
  demand: (what: string): string => demands[what] ?? what,
  none: (reason: string) => `Nothing can be fitted: ${reason}.`,
  broken: {
    tab: 'Broken',
    hint: 'Pick the place whose panel broke, on the plan or by its number.',
    heading: (number: string, kind: string) => `Panel ${number}, kind ${kind}, is broken: what now`,
    upTo: 'Up so far',
    courses: (course: number, count: number) =>
      course === 0
        ? 'nothing yet'
        : course === count
          ? 'all courses'
          : course === 1
            ? 'course 1'
            : `courses 1 to ${course}`,
    panelsUp: (count: number) => `${plural(count, 'panel')} taken to be up`,
    looking: 'Looking for answers',
    found: (count: number) => plural(count, 'answer'),
    ways: 'Answers, the least undoing first',
    way: (number: number) => `answer ${number}`,
    step: (kind: string, from: string | null, to: string) =>
      from === null ? `A spare of kind ${kind} into ${to}` : `The ${kind} of ${from} into ${to}`,
    offBy: (misfit: string) => `sides off by up to ${misfit}`,
    nothingUndone: 'Nothing is undone.',
    undone: (seams: number) => `${plural(seams, 'seam')} undone.`,
    leaves: (place: string, kind: string) =>
      `Then ${place} lacks its panel: get one of kind ${kind}.`,
    holesTake: 'The holes take it where bolts have 1 mm of room (common practice, no source).',
    holesDont: 'The holes do NOT take it without reaming.',
    make: (kind: string) => `Buy or make one of kind ${kind}`,
    makeNote: 'Nothing is undone; its card is below.',
    decide: 'Do this',
    deciding: (place: string) => `answer the break at ${place}`,
    show: 'Show',
    soFar: 'Broken so far',
    toGet: (kind: string) => `one of kind ${kind} to be got`,
    takeBack: 'Take back',
    takingBack: (place: string) => `take back the break at ${place}`,
    noCut: (kind: string) => `No panel left over is large enough to cut one of kind ${kind} from.`,
    cuts: (kind: string, count: number) =>
      `Cut one of kind ${kind} from a panel left over: ${plural(count, 'way')}`,
    cutNote:
      'One flange with its holes is kept, drawn in the accent; 10 mm of room or more at the others (our own judgement).',
    cutFrom: (kind: string, spare: number) => `from kind ${kind}, ${spare} left over`,
    cutHow: (kept: number, becomes: number, from: string, room: string) =>
      `Its side ${kept} becomes side ${becomes}, from ${from} on; ${room} of room at the sides that are cut.`,
    cutDrawing: (kind: string) => `The new panel laid on one of kind ${kind}`,
    card: (kind: string) => `Card of one of kind ${kind} to make`,
    drawing: (kind: string) => `True shape of kind ${kind}, seen from outside`,
    columns: {
      side: 'side',
      length: 'length',
      holes: 'holes',
      angle: 'corner at its start',
      bevel: 'edge leans',
    },
    unknown: 'not known',
    cardNote: (along: string) =>
      `Seen from outside, sides anticlockwise. Sides ${along}. An edge leans off square, inwards, so that its flange points at the middle of the ball. Holes are drawn evenly spaced (common practice, no source): take them off a good panel of this kind.`,
    along: { holes: 'along the hole lines', skin: 'of the skin', hubs: 'from hub to hub' },
    caution:
      'Taking a panel out of a shell that stands can let it move: prop the hubs around it first, and leave any place that bears a tower, a prop or people alone. A licensed rigger or engineer decides.',
  },
  tags: {
    tab: 'Tags',
    looking: 'Laying out panels by their tags …',
    none: 'No panel has both a tag and a settled kind.',
    placed: (tagged: number, any: number) =>
      any === 0
        ? `${plural(tagged, 'tagged panel')} placed, one in each place.`
        : `${plural(tagged, 'tagged panel')} placed; ${plural(any, 'place')} ${any === 1 ? 'takes' : 'take'} any panel of the kind.`,
    even: (after: string, before: string, course: string) =>
      `Seams between tagged panels are off by ${after} (root mean square) instead of ${before} as they come; no course is more than ${course} too long or too short. Mended panels go low where they can. The best of many exchanges, not proved.`,
    csv: 'List (CSV)',
    file: 'tags',
    columns: { place: 'place', kind: 'kind', tag: 'tag' },
    any: 'any',
    mended: '(to mend)',
  },
  door: {
    tab: 'Door',
    as: 'What for',
    askedAs: {
      door: 'a door',
      hatch: 'a round hatch',
      thing: 'a thing with this section',
    },
    width: 'Clear width',
    height: 'Clear height',
    diameter: 'Clear diameter',
    section: 'Corners of its section',
    sectionNote: (such: string) => `across, up from the floor; such as ${such}`,
    sectionFault:
      'Expected three to 24 corners "across, up" with semicolons between, none below the floor, in an outline that does not cross itself.',
    sectionDrawn: (width: string, height: string) => `${width} × ${height}`,
    resizing: 'change the size of the door',
    rankBy: 'Best first by',
    ranks: {
      'stock saved': 'stock saved',
      'least harm': 'least harm: most stiffness left',
      'away from wind': 'away from the wind',
      'in reach': 'lowest, within reach',
      'shortest edge': 'shortest edge to frame',
      'fewest panels': 'fewest panels out',
    },
    towards: 'Towards, °',
    towardsNote: 'clockwise from the datum',
    wind: 'Wind from, °',
    windNote: 'clockwise from the datum; empty: not known',
    turningWind: 'change where the wind comes from',
    looking: 'Looking where it may be …',
    found: (sorts: number, all: number) =>
      `${plural(sorts, 'sort')} of opening, at ${plural(all, 'spot')}; of each sort the one nearest to where it is wanted.`,
    nowhere: {
      door: ([width, height]: readonly [string, string]) =>
        `No door ${width} wide and ${height} high can be had here: the wall leans in too soon, or the rest would not hold together. Try a lower or narrower one.`,
      hatch: ([diameter]: readonly [string, string]) =>
        `No hatch ${diameter} across can be had here: the rest would not hold together. Try a smaller one.`,
      thing: ([width, height]: readonly [string, string]) =>
        `Nothing ${width} wide and ${height} high goes through here, straight ahead on the level: the wall leans in too soon, or the rest would not hold together.`,
    },
    out: (panels: number, degrees: number) =>
      `${plural(panels, 'panel')} out, ${degrees}° clockwise from the datum`,
    costs: (seams: number, hubs: number, frame: string) =>
      `${plural(seams, 'seam')} cut, ${hubs === 0 ? 'no hub' : plural(hubs, 'hub')} gone, ${frame} of edge to frame.`,
    reach: (sill: string, top: string) => `From ${sill} to ${top} above the lowest base hub.`,
    offWind: (degrees: number) => `${degrees}° off where the wind comes from.`,
    stiffness: (percent: number) => `About ${percent} % of the stiffness is left.`,
    supposed: (names: readonly string[]) =>
      names.length === 0
        ? ''
        : `Supposed for it, as nobody entered it: ${listed(names)} (common practice, no source).`,
    saves: (panels: number) => `Saves ${plural(panels, 'panel')} that would have to be got.`,
    candidate: (number: number) => `opening ${number}`,
    show: 'Show',
    adopt: 'Leave out',
    adopting: { door: 'make a door', hatch: 'make a hatch' },
    reveal: 'The edge to frame',
    places: (names: readonly string[]) => `Left out: ${listed(names)}.`,
    side: (number: string) => `at ${number}:`,
    now: 'Openings',
    use: { door: 'Door', hatch: 'Hatch', gap: 'Gap' },
    close: 'Close it',
    closing: 'close an opening',
    caution:
      'An opening weakens a shell more than its number of panels shows: it wants a frame around it. What stiffness is left is an estimate, without that frame and with every seam snug; what the shell still bears is not reckoned here. Local codes and a licensed engineer decide.',
  },
  leftOver: {
    tab: 'Left over',
    looking: 'Looking what the rest can stand …',
    left: (panels: number, list: readonly string[]) =>
      panels === 0
        ? 'No good panel is left over.'
        : `${plural(panels, 'good panel')} left over: ${list.join(', ')}.`,
    now: 'What they stand as they are',
    more: 'With one or two panels more',
    nothing: 'Nothing stands of them as they are.',
    what: { cap: 'cap', ring: 'ring, open above' },
    usualName: { cap: 'Small shell', ring: 'Low ring' },
    with: (lacking: readonly string[]) => `with ${listed(lacking)} more`,
    ofKind: (count: number, kind: string) => `${count} of kind ${kind}`,
    name: 'Name this shell',
    called: 'It is called',
    keep: 'Keep panels for it',
    naming: (name: string) => `keep panels for ${name}`,
    named: 'Decided on',
    isA: (what: string, height: string, panels: string, list: readonly string[]) =>
      `${what}, ${height} tall, ${panels}: ${list.join(', ')}`,
    giveUp: 'Give it up',
    givingUp: (name: string) => `give up ${name}`,
    half: (height: string, floor: string, panels: number) =>
      `${height} tall on a floor of ${floor} (${plural(panels, 'panel')})`,
    split: (a: string, b: string) =>
      `Two shells at once out of all good panels instead, the lower as tall as can be: ${a} and ${b}.`,
  },
  caution:
    'Counted, not reckoned: that there is a panel for every place does not say that the shell bears wind, snow or people, or stands half-built. Local codes and a licensed engineer decide.',
  changes: {
    order: 'change what counts first',
    limit: 'change a limit of the wishes',
    usual: 'go back to the usual wishes',
    ease: (wish: string) => `ease ${wish}`,
  },
} as const;
