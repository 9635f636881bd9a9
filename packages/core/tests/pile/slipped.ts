// Seeded heaps of whole nets, read by four people, in which known readings slipped.

import { turned } from '../../src/math/cyclic.ts';
import { seededRandom } from '../../src/math/random.ts';
import { netShell } from '../../src/nets/kinds.ts';
import { fromOtherFace } from '../../src/pile/polygon.ts';
import type { Pile } from '../../src/pile/schema.ts';
import type { Slip } from '../../src/pile/slips.ts';
import { pileOf } from './heap.ts';

/** What may be done to one reading. */
export type Mischief = 'one side' | 'two sides' | 'inches' | 'one in inches' | 'feet' | 'face';

export interface SlippedOptions {
  readonly seed: number;
  /** Steps of the icosahedral net; drawn where absent. */
  readonly net?: readonly [number, number];
  /** Panels that are read; drawn from 60 to 700 where absent. */
  readonly panels?: number;
  readonly mischief?: readonly Mischief[];
  /** What Dee's tape adds, metres. */
  readonly dee?: number;
  /** Share of readings whose face nobody noted; 0.1 where absent. */
  readonly unknown?: number;
  /** More of the pile section. */
  readonly more?: object;
}

export interface SlippedHeap {
  readonly pile: Pile;
  readonly radius: number;
  readonly places: number;
  /** Kinds of the net that were met, a pair of hands as two. */
  readonly kinds: number;
  readonly culprits: readonly {
    readonly reading: number;
    readonly slip: Slip;
    readonly sides: readonly number[] | null;
    /** Whether the other hand of its kind exists, so that a turned reading looks like that. */
    readonly hasPair: boolean;
  }[];
}

const NETS = [
  [2, 0],
  [3, 0],
  [4, 0],
  [5, 0],
  [6, 0],
  [2, 2],
  [3, 3],
  [2, 1],
  [3, 1],
  [4, 1],
  [4, 2],
] as const;
const PEOPLE = ['Ada', 'Ben', 'Cas', 'Dee'];

interface Row {
  by: string;
  seenFrom: string;
  sides: number[];
}

/** The heap, with noise of 1 mm. */
export function slippedHeap(options: SlippedOptions): SlippedHeap {
  const random = seededRandom(options.seed);
  const [b, c] = options.net ?? (NETS[random.below(NETS.length)] as readonly [number, number]);
  const radius = 2 + 4 * random.uniform();
  const net = netShell({ solid: 'icosahedron', b, c, division: 'equal chords' }, radius);
  const all = net.kinds.flatMap((kind, k) => Array.from({ length: kind.count }, () => k));
  const panels = random.shuffle(all).slice(0, options.panels ?? 60 + random.below(640));
  const rows = panels.map((k): Row => {
    const sides = net.kinds[k]?.sides as readonly number[];
    const face = random.uniform();
    const unknown = options.unknown ?? 0.1;
    const seenFrom = face < unknown ? 'unknown' : face < 0.4 ? 'inside' : 'outside';
    const back = seenFrom === 'inside' || (seenFrom === 'unknown' && random.uniform() < 0.5);
    const by = PEOPLE[random.below(4)] as string;
    const own = turned(back ? fromOtherFace(sides) : sides, random.below(sides.length));
    const tape = by === 'Dee' ? (options.dee ?? 0) : 0;
    return { by, seenFrom, sides: own.map((x) => x + tape + 0.001 * random.normal()) };
  });
  const culprits = (options.mischief ?? []).map((mischief) => {
    let reading = random.below(rows.length);
    while (mischief === 'face' && rows[reading]?.seenFrom === 'unknown')
      reading = random.below(rows.length);
    const done = slipInto(rows[reading] as Row, mischief, random);
    const kind = net.kinds[panels[reading] as number];
    return { reading, ...done, hasPair: kind?.mirror !== null };
  });
  return {
    pile: pileOf({ readingSd: 0.001, readings: rows, ...options.more }),
    radius,
    places: net.shell.kind.length,
    kinds: new Set(panels).size,
    culprits,
  };
}

function slipInto(
  row: Row,
  mischief: Mischief,
  random: ReturnType<typeof seededRandom>,
): { slip: Slip; sides: readonly number[] | null } {
  const n = row.sides.length;
  const side = random.below(n);
  const change = (at: number, by: (x: number) => number): void => {
    row.sides[at] = by(row.sides[at] as number);
  };
  const misread = (x: number): number =>
    x + (0.008 + 0.022 * random.uniform()) * (random.uniform() < 0.5 ? -1 : 1);
  switch (mischief) {
    case 'one side':
      change(side, misread);
      return { slip: 'length', sides: [side] };
    case 'two sides':
      change(side, misread);
      change((side + 1) % n, misread);
      return { slip: 'length', sides: [side, (side + 1) % n].sort((a, b) => a - b) };
    case 'inches':
      row.sides = row.sides.map((x) => x / 2.54);
      return { slip: 'unit', sides: row.sides.map((_, i) => i) };
    case 'one in inches':
      change(side, (x) => x / 2.54);
      return { slip: 'unit', sides: [side] };
    case 'feet':
      row.sides = row.sides.map(inDecimalFeet);
      return { slip: 'unit', sides: null };
    case 'face':
      row.sides = fromOtherFace(row.sides);
      return { slip: 'face', sides: row.sides.map((_, i) => i) };
  }
}

/** 3 ft 7 in written down as 3.7 ft. */
function inDecimalFeet(length: number): number {
  const feet = Math.floor(length / 0.3048);
  const inches = 12 * (length / 0.3048 - feet);
  return 0.3048 * (feet + inches / (inches < 10 ? 10 : 100));
}
