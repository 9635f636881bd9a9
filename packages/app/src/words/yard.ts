// Words of what lies ready and is lifted: the yard, bags and tools, lift cards, gear, ways in and out, what
// may wait.

import { listed, plural } from './counted.ts';

/** Words of the yard, the kit, lifts, gear and what may wait. */
export const yardWords = {
  heading: 'The yard',
  working: 'Laying out the yard …',
  drawing: (number: number, of: number) => `The yard at stage ${number} of ${of}`,
  label: (number: number, of: number) => `The yard from above at stage ${number} of ${of}`,
  datum: 'datum',
  legend: 'What the stacks mean',
  state: { now: 'used in this stage', later: 'later', used: 'used up' },
  walks: 'walk to the place, by the numbers in the stack',
  stackTold: (stack: number, stage: number, panels: number) =>
    `Stack ${stack}: ${plural(panels, 'panel')} of stage ${stage}`,
  facts: (stacks: number, longest: string, reach: string) =>
    `${plural(stacks, 'stack')} in picking order, the first panel to go up on top. Longest walk ${longest}; the yard reaches ${reach} from the middle.`,
  weight: (gust: string, most: number) =>
    most === 0
      ? `In gusts of ${gust} every stack stays by its own weight.`
      : `Weight on top keeps them in gusts of ${gust}: up to ${most} kg a stack.`,
  none: (number: number) => `Stage ${number} takes nothing from the yard.`,
  stack: (panels: number, loose: number) =>
    `${plural(panels, 'panel')}, ${loose === 0 ? 'stays by its own weight' : `${Math.ceil(loose / 5) * 5} kg on top`}`,
  top: 'Top first:',
  walk: (walk: string) => `Walk of ${walk} at most.`,
  assumed: 'Taken for granted',
  wishes: 'Lay it out otherwise',
  clear: 'Clear of the base',
  clearNote: 'for guys, ladders, what may fall',
  most: 'Panels in a stack at most',
  gust: (unit: string) => `Gusts the stacks must bear, ${unit}`,
  gustNote: 'empty: the design wind',
  bags: 'Bags, one a stage',
  left: (left: number, lines: number) => `${left} of ${plural(lines, 'line')} still to go in`,
  packed: (bags: number) => `All ${bags} bags are packed.`,
  ticksKept: 'Tick off what is in its bag; the ticks are kept in this browser.',
  unknown: (what: readonly string[]) => `Not in any bag, for nobody knows them: ${listed(what)}.`,
  full: 'packed',
  bagLeft: (left: number) => `${left} to go in`,
  tools: (tools: readonly string[]) => `With it: ${tools.join(', ')}.`,
  bagOf: 'Its bag',
  noBag: 'This stage uses up nothing.',
  buy: 'To buy, and before which stage',
  buyNothing: 'Everything is in hand, spares and all.',
  buyHeads: { before: 'before', what: 'what, with spares', short: 'short without it' },
  before: (stage: number | null) => (stage === null ? 'spares' : `stage ${stage}`),
  short: (quantity: number, unit: 'piece' | 'm') =>
    quantity === 0 ? '–' : unit === 'm' ? `${quantity.toFixed(1)} m` : `${quantity}`,
  charge: 'Charge',
  chargeUnknown: (what: readonly string[]) => `Unknown: ${listed(what)}.`,
  lift: {
    summary: (pieces: number) => (pieces === 1 ? 'Lift card' : `Lift card, ${pieces} lifts`),
    stops: (gust: string) => `Nothing leaves the ground over gusts of ${gust}`,
    mass: (mass: string) => `${mass} at most`,
    unweighed: 'Nobody weighed it',
    size: (size: readonly string[]) => size.join(' × '),
    by: {
      hands: (people: number | null, name: string) =>
        `${people === null ? 'By hand' : `By ${plural(people, 'pair')} of hands`}, from ${name}.`,
      'gin pole': (_: number | null, name: string) => `By gin pole: ${name}.`,
      lift: (_: number | null, name: string) => `By lift: ${name}.`,
    },
    index: (index: string | null) =>
      index === null
        ? 'Lifting index: beyond what the equation allows.'
        : `Lifting index ${index} for each of them; over 1 is more than it recommends.`,
  },
  wait: {
    summary: (number: number) => `Going home after stage ${number}: what may wait`,
    days: 'Days until you are back',
    ask: 'What may wait?',
    working: 'Asking the frame with each thing missing',
    gust: (gust: string, days: number) =>
      `Reckoned for gusts of ${gust}, the worst of ${plural(days, 'day')} by the code chosen.`,
    heads: { what: 'what is left', may: 'may wait', why: 'why' },
    may: { yes: 'yes', 'as far as known': 'as far as known', no: 'no' },
    waits: 'Waits for the next trip',
    back: 'When you are back',
  },
};
