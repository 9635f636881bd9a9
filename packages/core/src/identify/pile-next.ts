// What to read, look at or count next at the pile, before any shape is known: from the first panels on,
// cheap enough for every keystroke. Each comes with an estimate of what it tells, bits:
//
//   another panel   P(new kind) × sides × ½ log₂(1 + spread² / noise²), the spread being that of all
//                   sides. P by I. J. Good, "The population frequencies of species" (1953): kinds of
//                   which one panel was read, over panels read. Where a side meets no other, or the
//                   search stuck at one, it is the panel beside that is wanted: P / (P + share of
//                   lone sides that meet their like).
//   same kind again what its sides gain as far as a seam's bolts do not take it up, and that a blunder
//                   in a single reading would be found: sides × H(chance of a blunder)
//   odd side        H(1 / readings): which of them is wrong; of a slip, whether it is one
//   one kind or two, either face, two kinds that fit: the entropy of which it is, or what a reading of
//                   the side that differs most tells of it
//   tapes           ½ log₂(1 + (a tape's error / noise of a panel's mean)²)
//
// Lengths in metres, as the tape shows them.

import type { Kind } from '../pile/kind.ts';
import type { PileKinds } from '../pile/kinds.ts';
import { nearestTurn } from '../pile/polygon.ts';
import { BLUNDER_CHANCE, SLIP_LOG_ODDS } from '../pile/tolerances.ts';
import { andList, lengthText, orList } from './find-words.ts';
import { entropy, readingBits, sharpeningBits, sum } from './information.ts';
import { lonelySides } from './lonely.ts';
import { SEAM_PLAY } from './play.ts';
import type { Stuck } from './shape.ts';

/** One thing to do at the pile. Rows are indices of readings, sides count from 0. */
export interface PileNext {
  readonly act: 'read' | 'look' | 'count';
  /** `new kind`: a panel that looks like none measured so far; `neighbour`: one that has a side as long
   * as one that meets nothing; `stuck`: as one at which the search stuck. */
  readonly why:
    | 'new kind'
    | 'neighbour'
    | 'stuck'
    | 'one reading'
    | 'loosest'
    | 'suspect'
    | 'slip'
    | 'maybe one'
    | 'maybe two'
    | 'face'
    | 'two fit'
    | 'tapes'
    | 'miscount'
    | 'uncounted';
  /** Ids of the kinds that it is about. */
  readonly kinds: readonly string[];
  readonly side: number | null;
  /** The reading that it is about. */
  readonly row: number | null;
  /** Lengths that the words name, in their order. */
  readonly lengths: readonly number[];
  readonly people: readonly string[];
  readonly words: string;
  readonly bits: number;
}

/** What of a worked-up pile is looked at. */
export type PileSoFar = Pick<
  PileKinds,
  | 'kinds'
  | 'assigned'
  | 'suspects'
  | 'slips'
  | 'maybeOne'
  | 'maybeTwo'
  | 'tooFew'
  | 'people'
  | 'miscounts'
> & {
  readonly noise: { readonly used: number };
};

/** What else is known. */
export interface PileNextOptions {
  /** Where the search for a shape stuck. */
  readonly stuck?: readonly Stuck[];
  /** Hub allowance that the kinds' sides have, metres. */
  readonly allowance?: number;
  /** Most things told. */
  readonly most?: number;
}

/** Spread of sides before there are any to tell it, share of a side. */
const FIRST_SPREAD = 0.05;
/** Lone sides that meet their like in another panel of their kind: our own judgement. */
const MEETS_ITS_LIKE = 0.3;
/** Where only kinds were written down and no readings, one may be missing as likely as not. */
const UNREAD = 0.5;
/** Kinds that are nearly equal are this share of a side apart. */
const NEAR = 0.003;
/** Error of a tape of which nothing is known, one standard deviation, metres. */
const TAPE_SD = 0.002;
/** Gains below this are not worth the walk, bits; a count is weighed less, it tells no shape. */
const LEAST = 0.1;
const COUNT_WEIGHT = 0.3;

/** What to do next, the most telling first; nothing where nobody has measured anything yet, and where
 * all that could be done tells little. */
export function nextAtPile(pile: PileSoFar, options: PileNextOptions = {}): PileNext[] {
  const { allowance = 0, most = 3, stuck = [] } = options;
  if (pile.kinds.length === 0) return [];
  const things = [
    ...suspects(pile),
    ...slips(pile),
    ...wantedPanels(pile, stuck, allowance),
    ...unsettled(pile),
    ...oneOrTwo(pile, allowance),
    ...tapes(pile),
    ...again(pile),
    ...counts(pile),
  ];
  const weight = ({ act, bits }: PileNext): number => (act === 'count' ? COUNT_WEIGHT : 1) * bits;
  return things
    .filter(({ bits }) => bits >= LEAST)
    .sort((a, b) => weight(b) - weight(a))
    .filter((one, i, all) => all.findIndex((other) => isSame(one, other)) === i)
    .slice(0, most);
}

/** Whether two things have one do the same. */
const isSame = (a: PileNext, b: PileNext): boolean =>
  a.row !== null && a.row === b.row
    ? a.act === b.act
    : a.act === b.act && isOther(a) === isOther(b) && a.kinds.join() === b.kinds.join();

/** Whether a panel is wanted that is of another kind. */
const isOther = ({ why }: PileNext): boolean =>
  why === 'new kind' || why === 'neighbour' || why === 'stuck';

const thing = (
  one: Pick<PileNext, 'act' | 'why' | 'kinds' | 'words' | 'bits'> & Partial<PileNext>,
): PileNext => ({ side: null, row: null, lengths: [], people: [], ...one });

/** Kind → panels read of it, one for each tag. */
function panelsRead({ kinds, assigned }: PileSoFar): Map<string, number> {
  const panels = new Map(kinds.map(({ id }) => [id, new Set<string>()]));
  for (const { kind, candidates, tag, reading } of assigned)
    panels.get(kind ?? candidates[0] ?? '')?.add(tag ?? `reading ${reading}`);
  return new Map([...panels].map(([id, own]) => [id, own.size]));
}

/** Panels that nobody measured yet. */
function wantedPanels(pile: PileSoFar, stuck: readonly Stuck[], allowance: number): PileNext[] {
  const { kinds, noise } = pile;
  const read = [...panelsRead(pile).values()];
  const all = sum(read);
  const isNew = all === 0 ? UNREAD : read.filter((panels) => panels === 1).length / all;
  const sides = kinds.flatMap((kind) => kind.sides);
  const mean = sum(sides) / sides.length;
  const found = Math.sqrt(sum(sides.map((x) => (x - mean) ** 2)) / sides.length);
  const spread = Math.max(found, FIRST_SPREAD * mean);
  const known = (sides.length / kinds.length) * (Math.log2(1 + (spread / noise.used) ** 2) / 2);
  const beside = isNew / (isNew + MEETS_ITS_LIKE);
  const at = stuck[0];
  const lone = lonelySides(kinds).map(({ kind, side }) => ({
    id: (kinds[kind] as Kind).id,
    side,
    length: ((kinds[kind] as Kind).sides[side] as number) - allowance,
  }));
  const out: PileNext[] = [];
  if (at) out.push(besidePanel('stuck', at.kind, at.side, at.length - allowance, beside * known));
  const [first] = lone.filter(({ id, side }) => id !== at?.kind || side !== at.side);
  if (first) out.push(besidePanel('neighbour', first.id, first.side, first.length, beside * known));
  if (!at && !first && all > 0)
    out.push(
      thing({
        act: 'read',
        why: 'new kind',
        kinds: [],
        words: `measure a panel that looks like none measured so far, or bears another mark: of ${all} panels read, ${read.filter((n) => n === 1).length} are the only ones of their kind`,
        bits: isNew * known,
      }),
    );
  return out;
}

const besidePanel = (
  why: 'stuck' | 'neighbour',
  id: string,
  side: number,
  length: number,
  bits: number,
): PileNext =>
  thing({
    act: 'read',
    why,
    kinds: [id],
    side,
    lengths: [length],
    bits,
    words:
      why === 'stuck'
        ? `look for a panel of another kind with a side of ${lengthText(length)} and measure it: nothing fitted at side ${side + 1} of kind ${id}`
        : `look for another panel with a side of ${lengthText(length)} and measure it: nothing measured so far meets side ${side + 1} of kind ${id}`,
  });

/** Sides that stand off from the other readings of their kind. */
function suspects(pile: PileSoFar): PileNext[] {
  return pile.suspects.map(({ reading, kind, side, measured, expected }) => {
    const readings = pile.assigned.filter((one) => one.kind === kind).length;
    const where = reading === null ? `kind ${kind}` : `the same panel (kind ${kind})`;
    return thing({
      act: 'read',
      why: 'suspect',
      kinds: [kind],
      side,
      row: reading,
      lengths: [measured, expected],
      words: `measure side ${side + 1} of ${where} again: ${lengthText(measured)} was read, the others say ${lengthText(expected)}`,
      bits: entropy([1, Math.max(1, readings - 1)]),
    });
  });
}

/** Readings that a slip explains. */
function slips(pile: PileSoFar): PileNext[] {
  const odds = Math.exp(SLIP_LOG_ODDS);
  return pile.slips.map(({ reading, kind, sides, measured, expected }) => {
    const [side = 0] = sides;
    const lengths = [measured[side] as number, expected[side] as number];
    const [was, should] = lengths.map(lengthText);
    const one = sides.length === 1;
    return thing({
      act: 'read',
      why: 'slip',
      kinds: [kind],
      side: one ? side : null,
      row: reading,
      lengths,
      words: `measure ${one ? `side ${side + 1} of ` : ''}the panel of reading ${reading + 1} (kind ${kind}) again: ${one ? `${was} was read, it should be ${should}` : 'its sides are not what that kind has, as if it was read or written down wrong'}`,
      bits: entropy([odds, 1]),
    });
  });
}

/** Readings of which the face or the kind is open. */
function unsettled({ tooFew, assigned }: PileSoFar): PileNext[] {
  return tooFew.flatMap(({ path, kinds, why }): PileNext[] => {
    const row = rowIn(path);
    if (row === null || why === 'one reading') return [];
    if (why === 'face unknown')
      return [
        thing({
          act: 'look',
          why: 'face',
          kinds,
          row,
          words: `look from which face the panel of reading ${row + 1} was measured: it is ${kinds.length > 1 ? `kind ${orList(kinds)}` : 'of one hand or the other'}`,
          bits: 1,
        }),
      ];
    const { probability = 0.5 } = assigned.find((one) => one.reading === row) ?? {};
    return [
      thing({
        act: 'read',
        why: 'two fit',
        kinds,
        row,
        words: `measure the panel of reading ${row + 1} again: it may be kind ${orList(kinds)}`,
        bits: entropy([probability, 1 - probability]),
      }),
    ];
  });
}

/** Kinds that may be one, and kinds that may be two. */
function oneOrTwo({ kinds, maybeOne, maybeTwo, noise }: PileSoFar, allowance: number): PileNext[] {
  const byId = new Map(kinds.map((kind) => [kind.id, kind]));
  const pairs = maybeOne.flatMap((pair): PileNext[] => {
    const [a, b] = pair.kinds.map((id) => byId.get(id));
    if (!a || !b || a.sides.length !== b.sides.length) return [];
    const { turn } = nearestTurn(b.sides, a.sides);
    const n = a.sides.length;
    const rows = a.sides.map((x, side) => {
      const j = (side + turn) % n;
      const other = b.sides[j] as number;
      const variance = (a.sideSds[side] as number) ** 2 + (b.sideSds[j] as number) ** 2;
      return { side, other, off: x - other, variance };
    });
    const spread = (NEAR * (sum(a.sides) / n)) ** 2;
    // Of one length, or apart as nearly equal kinds are: as likely beforehand.
    const log = sum(
      rows.map(
        ({ off, variance: v }) =>
          (off ** 2 / 2) * (1 / v - 1 / (v + spread)) - Math.log((v + spread) / v) / 2,
      ),
    );
    const two = 1 / (1 + Math.exp(-log));
    const most = rows.reduce((x, y) => (Math.abs(y.off) > Math.abs(x.off) ? y : x));
    const variance = noise.used ** 2 + most.variance;
    const bits = readingBits(
      [1 - two, two],
      [
        { mean: 0, variance },
        { mean: most.off, variance },
      ],
    );
    const lengths = [most.other + most.off - allowance, most.other - allowance];
    return [
      thing({
        act: 'read',
        why: 'maybe one',
        kinds: pair.kinds,
        side: most.side,
        lengths,
        bits,
        words: `measure side ${most.side + 1} of another panel of kind ${a.id} and the side like it of kind ${b.id}: ${lengths.map((x) => `${(1000 * x).toFixed(1)} mm`).join(' against ')}, they may be one kind`,
      }),
    ];
  });
  const spreads = maybeTwo.map(({ kind, spread }) =>
    thing({
      act: 'read',
      why: 'maybe two',
      kinds: [kind],
      lengths: [spread],
      words: `measure the panels of kind ${kind} again, marking each: they differ by ${lengthText(spread)}, more than a tape does, and may be two kinds`,
      bits: 1,
    }),
  );
  return [...pairs, ...spreads];
}

/** People of whose tape nothing is known, while others measured too. */
function tapes({ people, noise, kinds }: PileSoFar): PileNext[] {
  const unknown = people.filter(({ basis }) => basis === 'nothing').map(({ by }) => by);
  if (unknown.length === 0 || people.length < 2) return [];
  const others = people.map(({ by }) => by).filter((by) => !unknown.includes(by));
  const both = [...unknown, ...others].slice(0, 3);
  const sides = Math.min(...kinds.map((kind) => kind.sides.length));
  return [
    thing({
      act: 'read',
      why: 'tapes',
      kinds: [],
      people: both,
      words: `let ${andList(both)} measure one and the same panel: nothing tells whether their tapes agree`,
      bits: Math.log2(1 + (TAPE_SD ** 2 * sides) / (2 * noise.used ** 2)) / 2,
    }),
  ];
}

/** Kinds that another panel would make surer. */
function again(pile: PileSoFar): PileNext[] {
  const read = panelsRead(pile);
  const noise = pile.noise.used ** 2;
  return pile.kinds.map((kind) => {
    const panels = read.get(kind.id) ?? 0;
    const gains = kind.sideSds.map((sd) =>
      sharpeningBits(sd ** 2, (sd ** 2 * noise) / (sd ** 2 + noise), SEAM_PLAY),
    );
    const rough = Math.max(...kind.sideSds) >= 0.9 * pile.noise.used;
    const single = panels === 1 || (panels === 0 && rough);
    const found = single ? kind.sides.length * entropy([BLUNDER_CHANCE, 1 - BLUNDER_CHANCE]) : 0;
    const sd = Math.max(...kind.sideSds);
    const own = pile.assigned.find((one) => (one.kind ?? one.candidates[0]) === kind.id);
    return thing({
      act: 'read',
      why: single ? 'one reading' : 'loosest',
      kinds: [kind.id],
      row: single ? (own?.reading ?? null) : null,
      lengths: [sd],
      words: single
        ? `measure another panel of kind ${kind.id}: it rests on one reading`
        : `measure another panel of kind ${kind.id}: its sides are known to ${lengthText(sd)}`,
      bits: sum(gains) + found,
    });
  });
}

/** Kinds that nobody counted, and such of which more were tagged than counted. */
function counts({ kinds, miscounts }: PileSoFar): PileNext[] {
  const uncounted = kinds.filter(({ counted }) => !counted).map(({ id }) => id);
  const wrong = miscounts.map(({ kind, counted, found }) =>
    thing({
      act: 'count',
      why: 'miscount',
      kinds: [kind],
      words: `count the panels of kind ${kind} again: ${counted} were counted, ${found} measured`,
      bits: 1,
    }),
  );
  if (uncounted.length === 0) return wrong;
  const words = `count the panels of kind${uncounted.length > 1 ? 's' : ''} ${andList(uncounted)}: how many of each tell which shape it can be`;
  return [...wrong, thing({ act: 'count', why: 'uncounted', kinds: uncounted, words, bits: 1 })];
}

const rowIn = (path: string): number | null => {
  const match = /^pile\.readings\[(\d+)\]/.exec(path);
  return match ? Number(match[1]) : null;
};
