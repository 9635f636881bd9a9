// Which panel is of which kind, and how it lies on it. The tape decides; a mark may tip the scales
// by odds of 4 to 1 at most. A panel of which nobody knows the face fits both hands of a kind
// equally, and is then given to neither.

import type { TooFew } from './findings.ts';
import type { FittedKinds } from './fit-kinds.ts';
import { blunderCost, type Item, likeliest, normaliseInto, readingLikelihood } from './mixture.ts';
import type { Named } from './numbering.ts';
import type { Panel } from './panels.ts';
import type { ReadingRow } from './schema.ts';
import { MARK_LOG_ODDS, SETTLED_PROBABILITY } from './tolerances.ts';

/** What became of one reading. */
export interface AssignedReading {
  /** Index in the pile's list of readings. */
  readonly reading: number;
  readonly tag: string | null;
  /** Its kind; null where its face is unknown and both hands of a kind fit. */
  readonly kind: string | null;
  /** That the panel is of this kind (or of one of its two hands), 0 … 1. */
  readonly probability: number;
  /** Every kind that fits it with more than 1 in 20, likeliest first. */
  readonly candidates: readonly string[];
  /** The kind's side `turn` lies on the reading's first side, once its sides run anticlockwise seen
   * from outside (a reading from inside, or a mirrored one, read backwards). Of the first candidate. */
  readonly turn: number;
  /** True where the face was unknown and the reading fits the first candidate seen from inside. */
  readonly mirrored: boolean;
  /** Root mean square of its misfit on the first candidate, metres, people's biases taken off. */
  readonly misfit: number;
  /** For each side as written: which side of the first candidate it lies on. */
  readonly liesOn: readonly number[];
}

/** A panel with its kind. */
export interface PanelKind {
  readonly panel: Panel;
  readonly kind: string | null;
  readonly probability: number;
  readonly candidates: readonly string[];
}

/** All panels and readings with their kinds, and the panels that are not settled. */
export interface Assignment {
  readonly panels: readonly PanelKind[];
  readonly readings: readonly AssignedReading[];
  readonly tooFew: readonly TooFew[];
}

/** Panels to kinds; `names` runs over the kinds of all parts, one part after the other. */
export function assignPanels(
  parts: readonly FittedKinds[],
  names: readonly Named[],
  rows: readonly ReadingRow[],
  sd: number,
): Assignment {
  const panels: PanelKind[] = [];
  const readings: AssignedReading[] = [];
  const tooFew: TooFew[] = [];
  let offset = 0;
  for (const part of parts) {
    const own = names.slice(offset, offset + part.kinds.length);
    // A partner's index counts over all parts; within a part it is `offset` less.
    const partners = own.map((name) => (name.partner === null ? null : name.partner - offset));
    const chances = withMarks(part);
    part.items.forEach((item, p) => {
      const row = chances.subarray(p * own.length, (p + 1) * own.length);
      const verdict = verdictOf(item, row, own, partners);
      panels.push({ panel: item.panel, ...verdict.panel });
      if (verdict.why)
        tooFew.push({ path: pathOf(item), kinds: verdict.panel.candidates, why: verdict.why });
      item.readings.forEach((_, r) => {
        readings.push({
          ...readingOf(item, r, part, verdict.first, own, rows, sd),
          ...verdict.panel,
        });
      });
    });
    offset += part.kinds.length;
  }
  readings.sort((a, b) => a.reading - b.reading);
  tooFew.sort((a, b) => readingOfPath(a) - readingOfPath(b));
  return { panels, readings, tooFew };
}

const pathOf = (item: Item): string =>
  `pile.readings[${Math.min(...item.panel.readings.map((r) => r.index))}]`;

const readingOfPath = (entry: TooFew): number => Number(/\d+/.exec(entry.path)?.[0]);

/** Probabilities, item × kind, with what the marks of the other panels add. */
function withMarks(part: FittedKinds): Float64Array {
  const { items, mixture } = part;
  const kinds = mixture.means.length;
  const byMark = new Map<string, Float64Array>();
  items.forEach((item, p) => {
    for (const { mark, share } of weighedMarks(item.panel)) {
      const sums = byMark.get(mark) ?? new Float64Array(kinds);
      for (let k = 0; k < kinds; k++)
        sums[k] = (sums[k] as number) + share * (mixture.belongs[p * kinds + k] as number);
      byMark.set(mark, sums);
    }
  });
  const out = mixture.likelihood.slice();
  items.forEach((item, p) => {
    for (let k = 0; k < kinds; k++) {
      let log = Math.log(mixture.shares[k] as number);
      for (const { mark, share } of weighedMarks(item.panel))
        log +=
          share * markOdds(byMark.get(mark) as Float64Array, k, mixture, p, items.length, share);
      out[p * kinds + k] = (out[p * kinds + k] as number) + log;
    }
    normaliseInto(out, p * kinds, kinds);
  });
  return out;
}

/** The marks of a panel, each with its share of the panel; a faded one counts for all that it may be. */
function weighedMarks({
  marks,
  faded,
}: Panel): { readonly mark: string; readonly share: number }[] {
  const all = marks.length > 0 ? marks : faded.flatMap((one) => one.marks);
  const open = marks.length === 0 && faded.some((one) => one.open) ? 1 : 0;
  return all.map((mark) => ({ mark, share: 1 / (all.length + open) }));
}

/** Log of how much more often kind `k` carries the mark than kinds do at large, the panel itself (`own` of it)
 * left out, within ± half of the most that marks may weigh. */
function markOdds(
  sums: Float64Array,
  k: number,
  mixture: FittedKinds['mixture'],
  p: number,
  items: number,
  own: number,
): number {
  const kinds = mixture.means.length;
  const marked = Math.max(0, sums.reduce((sum, x) => sum + x, 0) - own);
  const here = Math.max(0, (sums[k] as number) - own * (mixture.belongs[p * kinds + k] as number));
  const share = mixture.shares[k] as number;
  const odds = Math.log((here + share * 2) / (marked + 2) / share);
  const most = items > 1 ? MARK_LOG_ODDS / 2 : 0;
  return Math.max(-most, Math.min(most, odds));
}

interface Verdict {
  readonly panel: Pick<PanelKind, 'kind' | 'probability' | 'candidates'>;
  /** Index of the likeliest kind within the part. */
  readonly first: number;
  readonly why: TooFew['why'] | null;
}

function verdictOf(
  item: Item,
  chances: Float64Array,
  names: readonly Named[],
  partners: readonly (number | null)[],
): Verdict {
  const first = likeliest(chances, chances.length);
  const name = names[first] as Named;
  const faceUnknown = item.panel.readings.every((r) => !r.faceKnown);
  const partner = partners[first] ?? null;
  const bothHands = faceUnknown && partner !== null;
  const probability = (chances[first] as number) + (bothHands ? (chances[partner] as number) : 0);
  const candidates = names
    .map((n, k) => ({ id: n.id, chance: chances[k] as number, k }))
    .filter(({ chance, k }) => chance > 0.05 || k === first || (bothHands && k === partner))
    .sort((a, b) => b.chance - a.chance || a.k - b.k)
    .map(({ id }) => id);
  const why =
    faceUnknown && name.hand !== null
      ? 'face unknown'
      : probability < SETTLED_PROBABILITY
        ? 'two kinds fit'
        : null;
  return { panel: { kind: bothHands ? null : name.id, probability, candidates }, first, why };
}

/** How a reading lies on a kind. */
function readingOf(
  item: Item,
  r: number,
  part: FittedKinds,
  k: number,
  names: readonly Named[],
  rows: readonly ReadingRow[],
  sd: number,
): Omit<AssignedReading, 'kind' | 'probability' | 'candidates'> {
  const mean = part.mixture.means[k] as readonly number[];
  const n = mean.length;
  const reading = item.readings[r] as Item['readings'][number];
  const index = (item.panel.readings[r] as { index: number }).index;
  const chance = new Float64Array(64);
  readingLikelihood(reading, mean, sd, blunderCost(sd), chance);
  const way = likeliest(chance, reading.ways);
  const mirrored = way >= n;
  const turn = (2 * n - (way % n) - (names[k] as Named).turn) % n;
  const squares = mean.map((x, i) => ((reading.sides[way * n + i] as number) - x) ** 2);
  const inside = rows[index]?.seenFrom === 'inside';
  const remedy = part.remedies.get(index);
  const liesOn = mean.map((_, i) => {
    const seen = inside ? n - 1 - i : i;
    const right = remedy ? remedy.order.indexOf(seen) : seen;
    return (turn + (mirrored ? n - 1 - right : right)) % n;
  });
  return {
    reading: index,
    tag: item.panel.tag,
    turn,
    mirrored,
    misfit: Math.sqrt(squares.reduce((sum, x) => sum + x, 0) / n),
    liesOn,
  };
}
