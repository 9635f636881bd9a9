// Words of the raising plan: stages, cards, props, passes, what an order breaks.

import { listed, plural } from './counted.ts';

/** A guy or chain in the words of a card: its anchor point (null: the mast) and its length. */
export interface HoldingLine {
  readonly kind: 'guy' | 'chain';
  readonly anchor: number | null;
  readonly length: string;
}

const holdingLine = ({ kind, anchor, length }: HoldingLine): string =>
  kind === 'guy' ? `a guy of ${length} to anchor ${anchor}` : `a chain of ${length} to the mast`;

/** Words of the Raising sheet. */
export const raisingWords = {
  title: 'Raising',
  caution:
    'An estimate to plan by, no design approval: local codes and a licensed engineer or rigger decide.',
  planning: 'Looking for the order of work',
  better: 'A first order stands. Looking for a better one',
  stopped: 'Stopped: the best order so far is shown.',
  stoppedEarly: 'Stopped before any order was found.',
  failed: 'No order could be worked out.',
  anew: 'Work it out anew',
  working: 'Looking for an order in which every stage stands …',
  noPlan: 'This shell cannot be raised so',
  drawing: {
    choices: 'Drawing',
    plan: 'Flat plan',
    solid: '3D',
    heading: (number: number, of: number) => `Stage ${number} of ${of}`,
    label: (number: number, of: number, placed: number) =>
      `Flat plan of stage ${number} of ${of}, ${plural(placed, 'panel')} placed`,
    solidLabel: (number: number, of: number, placed: number) =>
      `Stage ${number} of ${of} in 3D, ${plural(placed, 'panel')} placed`,
    legend: 'What the lines mean',
    now: 'goes up now',
    placed: 'stands',
    later: 'later',
    finger: 'finger',
    snug: 'snug',
    final: 'final',
    propIn: 'prop goes in',
    prop: 'prop stands',
    propOut: 'prop goes out',
    changed: 'accent: changes in this stage',
  },
  slider: {
    label: 'Stage of the build',
    before: 'Stage before',
    after: 'Next stage',
    chart: (stages: number, most: number, stops: number) =>
      `${plural(stages, 'stage')}: panels placed by each, at most ${plural(most, 'prop')} at once, ${plural(stops, 'stop point')}`,
    panels: 'panels placed',
    props: 'props',
    stop: 'stop point: stands without props',
  },
  holesOff: (lift: string) => `When the holes of lift ${lift} will not meet`,
  tabs: 'What the raising needs',
  tab: {
    stage: 'Stage',
    order: 'Order',
    yard: 'Yard',
    gear: 'Gear',
    now: 'Now',
    days: 'Days',
    people: 'People',
    assumed: 'Assumed',
  },
  sort: (sort: string, course: number): string =>
    (
      ({
        base: 'Base course',
        course: `Course ${course}`,
        closing: `Course ${course} closes`,
        cap: 'The cap, lifted whole',
        'way out': 'The way out is closed',
        'final pass': 'Final pass',
      }) as Readonly<Record<string, string>>
    )[sort] ?? sort,
  part: (name: string, part: number, of: number) => `${name}, part ${part} of ${of}`,
  card: {
    of: (of: number) => `of ${of}`,
    goesUp: (lifts: number, panels: number) =>
      lifts === panels
        ? plural(panels, 'panel')
        : `${plural(panels, 'panel')} in ${plural(lifts, 'lift')}`,
    nothing: 'Nothing goes up',
    standing: (placed: number, of: number) => `${placed} of ${of} stand after it`,
    lifts: 'In this order',
    heads: {
      lift: 'lift',
      piece: 'panel',
      bolts: 'bolts before letting go',
      in: 'goes in',
      out: 'may go',
    },
    made: {
      panel: '',
      group: 'a group, still joined',
      'made up': 'made up on the ground',
      cap: 'made up on the ground, lifted whole',
    },
    bolts: (each: number, seams: number) =>
      seams === 1 ? `${each} in the seam` : `${each} in each of ${seams} seams`,
    boltsBetween: (least: number, most: number, seams: number) =>
      `${least} to ${most} in each of ${seams} seams`,
    boltsUnknown: (seams: number) =>
      `2 or more in ${seams === 1 ? 'the seam' : `each of ${seams} seams`}`,
    boltsNone: 'on the ground alone',
    closes: 'closes the course',
    props: 'Held by',
    propsNone: 'No prop stands when it is done.',
    propsStanding: (names: readonly string[], fewest: boolean) =>
      `${listed(names)} ${names.length === 1 ? 'stands' : 'stand'} when it is done${fewest ? ', the fewest that do' : '; fewer were not ruled out'}.`,
    propAt: (
      name: string,
      places: readonly string[],
      height: string,
      lines: readonly HoldingLine[],
    ) =>
      `${name}: ${height} up, ${lines.length === 0 ? 'under' : 'at'} ${
        places.length > 1
          ? `the hub where ${listed(places)} meet`
          : `the free corner of ${places.join('')}`
      }${lines.length === 0 ? '' : `, by ${listed(lines.map(holdingLine))}`}.`,
    propUntil: (stage: number, lift: number) => `May go after lift ${lift} of stage ${stage}.`,
    propStays: 'Stays to the end.',
    rigged: (gust: string) =>
      `Guys and chains are reckoned for gusts up to ${gust}: in more nobody goes near, and it is not left for the night on them.`,
    pass: 'Bolts',
    finger: (seams: number) => `${plural(seams, 'seam')} finger-tight.`,
    snug: (seams: number) => `${plural(seams, 'seam')} snug, from the rim inward.`,
    final: (seams: number) => `${plural(seams, 'seam')} to the final pass.`,
    passNone: 'No bolt is tightened further.',
    overnight: 'Overnight',
    night: {
      stands: 'Stands without props: ask its wind before a night',
      holds: 'May stay overnight, closed down',
      'gives way': 'Not to be left overnight',
      unknown: 'Not known whether it may stay overnight',
      no: 'Not to be left overnight',
    },
    nightWind: (gust: string) => `Not for a night with gusts of ${gust} or more.`,
    nightUntied: (gust: string) =>
      `Tie it down before you leave it: held by nothing but its weight it lifts off at ${gust}.`,
    wind: 'Wind',
    windWorking: 'Reckoning its wind …',
    windNone: (why: string) => `No wind limit can be told: ${why}`,
    stopWork: (gust: string) => `Stop work at gusts of ${gust}`,
    stopBy: (what: string) => `Set by ${what}.`,
    leave: (gust: string) => `Leave the shell and its fall range at ${gust}.`,
    untied: (gust: string) => `Held by nothing but its weight it lifts off at ${gust}.`,
    untiedNever: 'Its weight alone does not hold it, even without wind.',
    unknown: (what: string) => `Unknown, and may give way sooner: ${what}.`,
    liftHead: 'Lifting',
    heaviest: (numbers: string, mass: string) => `Heaviest: ${numbers}, ${mass}.`,
    unweighed: (numbers: readonly string[]) =>
      numbers.length > 4
        ? `Nobody knows the mass of ${numbers.length} of its pieces: weigh one of each kind.`
        : `Nobody knows the mass of ${listed(numbers)}: weigh ${numbers.length === 1 ? 'it' : 'them'}.`,
    by: {
      hands: (people: number | null, name: string) =>
        `${people === null ? 'By hand' : `By ${plural(people, 'pair')} of hands`}, from ${name}.`,
      'gin pole': (_: number | null, name: string) => `By gin pole: ${name}.`,
      lift: (_: number | null, name: string) => `By lift: ${name}.`,
    },
    liftGust: (gust: string) => `Lifting stops at gusts of ${gust}.`,
    hands: (height: string) => `Hands must come to ${height}.`,
    time: 'Time',
    timeOf: (up: string, ground: string | null, tighten: string | null) =>
      [
        `${up} up there`,
        ground === null ? '' : `${ground} on the ground`,
        tighten === null ? '' : `${tighten} tightening`,
      ]
        .filter(Boolean)
        .join(', '),
    timeNote: 'of the whole crew, by common practice',
    hours: (hours: number, minutes: number) =>
      hours === 0 ? `${minutes} min` : minutes === 0 ? `${hours} h` : `${hours} h ${minutes} min`,
  },
  list: {
    heading: 'The whole order',
    facts: (stages: number, hours: string, most: number, moved: number) =>
      `${plural(stages, 'stage')}, ${hours} of work; at most ${plural(most, 'prop')} at once, ${moved} put in over the build.`,
    tried: (tried: number) =>
      tried === 0 ? 'The first order that stands.' : `The best of ${tried} orders tried.`,
    wayOut: (numbers: readonly string[]) =>
      numbers.length === 0
        ? 'People leave through the opening.'
        : `The way out is ${listed(numbers)}: it goes in last, from outside.`,
    props: (count: number) => (count === 0 ? 'no prop' : plural(count, 'prop')),
    stop: 'stop point, no prop',
    print: 'Print the cards, one a stage',
  },
  changes: {
    intro:
      'Draw a stage by its handle to another place, or move it with the arrow keys. What that breaks is told at once.',
    handle: (number: number, at: number) =>
      `Move stage ${number}, now the ${ordinal(at)}: up and down keys`,
    here: 'refused here',
    movedTo: (number: number, to: number) => `Stage ${number} would be the ${ordinal(to)}.`,
    checking: 'Asking every state …',
    fine: 'Every state stands in that order with the props as planned.',
    asItStands: 'Fix the order as it stands',
    take: 'Take this order',
    takeProps: 'Take it with the props it needs',
    drop: 'Leave it as it was',
    broken: 'Refused: this does not stand',
    falls: (lift: string, movements: number, places: readonly string[], more: number) =>
      `When ${lift} is let go, ${plural(movements, 'movement')} of ${listed(places)}${more > 0 ? ` and ${more} more` : ''} ${movements === 1 ? 'is' : 'are'} resisted by nothing. The drawing shows it.`,
    needs: (places: readonly string[]) =>
      `It would stand with ${plural(places.length, 'prop')} more: ${places.join('; ')}.`,
    needsNone: 'No props make it stand.',
    hub: (places: readonly string[]) =>
      places.length > 1
        ? `where ${listed(places)} meet`
        : `at the free corner of ${places.join('')}`,
    floats: (lift: string) =>
      `Nothing carries ${lift}: no seam to a panel that stands, and no hub on the ground.`,
    'closed in': (lift: string) =>
      `${lift} does not go in any more: the panels all round it and the course above are in.`,
    pin: (place: string, than: string) => `${place} is to go up before ${than}.`,
    other: (words: string) => `${words}.`,
    fixed: 'What you have fixed',
    pins: 'What goes up before what',
    pinFirst: 'Panel',
    pinThan: 'goes up before',
    pinNote: 'such as 2-03',
    pinFault: 'Expected the number of a place that stands.',
    pinAdd: 'Fix this order',
    pinRemove: (place: string, than: string) => `No longer ${place} before ${than}`,
    pinRemoveShort: 'Remove',
    pinNone: 'Nothing is fixed.',
    groups: 'Panels that go up in one piece',
    group: 'Still joined, or made up on the ground',
    groupAdd: 'Fix the group',
    groupNote: 'such as 2-03, 2-04 or 3-01 to 3-06',
    groupRemove: (name: string) => `No longer ${name} in one piece`,
    wayOut: 'Way out',
    wayOutLast: 'Panels that go in last, from outside',
    wayOutAdd: 'Fix the way out',
    wayOutNote: 'empty: found by the program',
    wayOutRemove: 'Let the way out be found',
    keptProps: 'Hubs that stay propped to the end',
    keptHub: 'All the panels that meet at the hub',
    keptAdd: 'Keep it propped',
    keptNote: 'such as 2-03, 2-04, 2-05, 3-03, 3-04, 3-05',
    keptAt: (places: readonly string[]) => `where ${listed(places)} meet`,
    keptRemove: (places: readonly string[]) => `No longer propped where ${listed(places)} meet`,
    numbersFault: (least: number) =>
      `Expected ${least === 1 ? 'numbers' : `${least} numbers or more`} of places that stand, each once.`,
    notSo: (found: string, expected: string) => `${found}: expected ${expected}.`,
    own: 'The order is your own.',
    free: 'Look for the order anew',
    freeAll: 'Free all of it',
    step: 'change the order of work',
    freeStep: 'look for the order anew',
  },
  assumed: {
    heading: 'What is assumed',
    sources: 'Not confirmed',
  },
  print: {
    card: (number: number, of: number) => `Stage ${number} of ${of}`,
  },
  fault: (path: string, found: string, expected: string) =>
    `${path}: ${found}; expected ${expected}.`,
};

function ordinal(n: number): string {
  const last = n % 100 > 10 && n % 100 < 14 ? 0 : n % 10;
  return `${n}${['th', 'st', 'nd', 'rd'][last] ?? 'th'}`;
}
