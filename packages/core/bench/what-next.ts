// Whether what is advised to read next is good advice. `npm run bench -- what-next [piles [piles]]` (`all`: many) prints three things:
// how many readings settle a pile of several shapes, as advised and at random; how often enough is said
// to be measured and the first shape is not the truth; how long it takes. Seeds are fixed.

import type { Line } from '../../../scripts/bench-line.d.ts';
import { firstSides } from '../src/identify/corner-model.ts';
import { conditionsOf, fitNet, type NetFit } from '../src/identify/fit.ts';
import { identify } from '../src/identify/identify.ts';
import { inProportion } from '../src/identify/information.ts';
import { netBelief } from '../src/identify/net-belief.ts';
import { MOST_TOLD, readingsBetween } from '../src/identify/next-between.ts';
import type { Identification, Shape, ShapeQuestion } from '../src/identify/shape.ts';
import { sideBelief } from '../src/identify/side-belief.ts';
import { withWhatNext } from '../src/identify/what-next.ts';
import { type Random, seededRandom } from '../src/math/random.ts';
import { type NetShell, shellOfNet } from '../src/nets/kinds.ts';
import { movedNet } from '../src/nets/moved.ts';
import { namedNet } from '../src/nets/named.ts';
import type { Kind } from '../src/pile/kind.ts';
import { cpuMs } from './clock.ts';
import { judge, namedTrial, randomTrial } from './trials.ts';

/** Runs all three. */
export function main(args: readonly string[]): readonly Line[] {
  const [settling, enough] = args[0] === 'all' ? [12, 120] : args.map(Number);
  return [...settled(settling ?? 3), ...enoughSaid(enough ?? 60), ...timed()];
}

const SD = 1e-3;
/** A pile is settled when one shape has this share of what the listed ones have. */
const SETTLED = 0.95;
const MOST_READINGS = 60;
/** Runs of a pile, each with other noise, and the most shapes of one: more take long. */
const RUNS = 8;
const MOST_SHAPES = 6;

/** A pile that leaves several shapes, whose sides differ so that readings tell them apart. */
export interface OpenPile {
  readonly label: string;
  readonly truth: NetShell;
  readonly question: ShapeQuestion;
  readonly shapes: readonly Shape[];
}

/** A pile of near-equal kinds; null where it is settled at once, or twins stay level for good. */
export function openPile(seed: number): OpenPile | null {
  const random = seededRandom(seed);
  const [b, c] = (
    [
      [3, 0],
      [2, 2],
      [2, 1],
    ] as const
  )[random.below(3)] as readonly [number, number];
  const fraction = 0.0008 + 0.0015 * random.uniform();
  const named = namedNet({ solid: 'icosahedron', b, c, division: 'equal chords' });
  const truth = shellOfNet(movedNet(named, { solid: 'icosahedron', fraction, random }), 2.7);
  const kinds = truth.kinds.map(
    ({ sides, count }, k): Kind => ({
      id: `${k + 1}`,
      marks: [],
      sides: sides.map((x) => x + SD * random.normal()),
      sideSds: sides.map(() => SD),
      hand: null,
      good: count,
      repair: 0,
      scrap: 0,
      counted: true,
      mass: null,
    }),
  );
  const question: ShapeQuestion = { kinds, groups: [], readingSd: SD };
  const { shapes, next } = identify(question);
  const isOpen = (shapes[0]?.probability ?? 1) < SETTLED * 0.9;
  const isReadable = next.some(({ act, about }) => act === 'read' && about === 'shape');
  const label = `(${b}, ${c}) moved ${(100 * fraction).toFixed(2)} %, ${shapes.length} shapes`;
  return shapes.length > 1 && isOpen && isReadable ? { label, truth, question, shapes } : null;
}

/** The shapes under the readings so far, best first, and what is advised. */
type Weighed = Pick<Identification, 'shapes' | 'next'>;

/** Side to be read next, and on how many panels. */
type Choice = (found: Weighed) => { kind: number; side: number; panels: number };

/** Readings until one shape is settled, read where `choose` says. */
export function readingsToSettle(pile: OpenPile, choose: Choice, random: Random): number {
  const { truth, shapes } = pile;
  let { question } = pile;
  const first = shapes.map((shape) => fitOf(shape, question));
  let found = weighed(question, shapes, first);
  let readings = 0;
  while (readings < MOST_READINGS && (found.shapes[0] as Shape).probability < SETTLED) {
    const { kind, side, panels } = choose(found);
    const true_ = (truth.kinds[kind] as NetShell['kinds'][number]).sides[side] as number;
    const mean = true_ + (SD / Math.sqrt(panels)) * random.normal();
    question = {
      ...question,
      kinds: question.kinds.map((one, k) => (k === kind ? read(one, side, mean, panels) : one)),
    };
    readings += panels;
    found = weighed(question, shapes, first);
  }
  return readings;
}

/** A kind with the mean of further readings of a side. */
function read(kind: Kind, side: number, mean: number, panels: number): Kind {
  const before = 1 / (kind.sideSds[side] as number) ** 2;
  const added = panels / SD ** 2;
  const sides = kind.sides.map((x, i) =>
    i === side ? (before * x + added * mean) / (before + added) : x,
  );
  const sideSds = kind.sideSds.map((sd, i) => (i === side ? 1 / Math.sqrt(before + added) : sd));
  return { ...kind, sides, sideSds };
}

/** The shapes of a pile under more readings, with what is next. `first`: as they were fitted before. */
function weighed(
  question: ShapeQuestion,
  shapes: readonly Shape[],
  first: readonly (NetFit | null)[],
): Weighed {
  const fits = shapes.map((shape) => fitOf(shape, question));
  const logs = fits.map((now, i) => {
    const before = first[i];
    return before && now
      ? Math.log((shapes[i] as Shape).probability) + now.evidence - before.evidence
      : Number.NEGATIVE_INFINITY;
  });
  const most = Math.max(...logs);
  const odds = inProportion(logs.map((log) => Math.exp(log - most)));
  const moved = shapes.map((shape, i) => {
    const fit = fits[i];
    const probability = 0.999 * (odds[i] as number);
    return fit
      ? {
          ...shape,
          probability,
          fittedSides: fit.sides,
          radius: fit.radius,
          radiusSd: fit.radiusSd,
        }
      : { ...shape, probability };
  });
  moved.sort((a, b) => b.probability - a.probability);
  const nets = moved.slice(0, MOST_TOLD).map((shape) => netBelief(shape, question));
  return { shapes: moved, next: readingsBetween(moved, nets, question) };
}

function fitOf({ shell, radius }: Shape, { kinds }: ShapeQuestion): NetFit | null {
  const belief = sideBelief(kinds, 0);
  return fitNet(belief, conditionsOf(shell, firstSides(belief.sides)), radius);
}

/** As advised; at random where no side is. */
export const asAdvised =
  (question: ShapeQuestion, random: Random): Choice =>
  ({ next }) => {
    const [best] = next;
    const kind = question.kinds.findIndex(({ id }) => id === best?.kind);
    return best && best.side !== null
      ? { kind, side: best.side, panels: best.panels ?? 1 }
      : atRandom(question, random)();
  };

/** Any side of any kind. */
export const atRandom =
  ({ kinds }: ShapeQuestion, random: Random) =>
  (): { kind: number; side: number; panels: number } => {
    const kind = random.below(kinds.length);
    return { kind, side: random.below((kinds[kind] as Kind).sides.length), panels: 1 };
  };

function settled(piles: number): readonly Line[] {
  const rows: { advised: number; random: number }[] = [];
  for (let seed = 1; rows.length < piles && seed < 40 * piles; seed++) {
    const pile = openPile(seed);
    if (!pile || pile.shapes.length > MOST_SHAPES) continue;
    const runs = Array.from({ length: RUNS }, (_, run) => {
      const own = seededRandom(1000 * seed + run);
      const other = seededRandom(1000 * seed + run);
      return {
        advised: readingsToSettle(pile, asAdvised(pile.question, own), own),
        random: readingsToSettle(pile, atRandom(pile.question, other), other),
      };
    });
    const mean = (of: 'advised' | 'random') =>
      runs.reduce((sum, run) => sum + run[of], 0) / runs.length;
    rows.push({ advised: mean('advised'), random: mean('random') });
    console.log(
      `  ${seed} ${pile.label}: ${mean('advised').toFixed(1)} readings as advised, ${mean('random').toFixed(1)} at random`,
    );
  }
  const all = (of: 'advised' | 'random') =>
    rows.reduce((sum, row) => sum + row[of], 0) / rows.length;
  console.log(
    `${rows.length} piles of several shapes: settled after ${all('advised').toFixed(1)} readings as advised, ${all('random').toFixed(1)} at random; ratio ${(all('advised') / all('random')).toFixed(2)} (wanted: 1 or less)`,
  );
  const found = all('advised') / all('random');
  return [
    {
      what: 'readings until a shape is settled, as advised to at random',
      found,
      unit: '×',
      wanted: 1,
    },
  ];
}

function enoughSaid(piles: number): readonly Line[] {
  let [said, wrong, right] = [0, 0, 0];
  for (let seed = 1; seed <= piles; seed++) {
    const trial = randomTrial(seed % 2 === 0 ? 5e-4 : SD, seed);
    const answer = identify({ kinds: trial.kinds, groups: [] });
    const first = judge(trial, { ...answer, shapes: answer.shapes.slice(0, 1) }).right;
    const same = answer.freedom?.free.find(({ what }) => what === 'net');
    const any = same && !same.matters && judge(trial, answer).right;
    if (first || any) right++;
    if (!answer.enough) continue;
    said++;
    if (!first && !any) wrong++;
  }
  console.log(
    `${piles} piles, ${right} of them right: enough was said of ${said}, of ${wrong} wrongly (wanted: none)`,
  );
  return [
    {
      what: `enough is measured, of ${piles}: said wrongly`,
      found: wrong,
      unit: 'piles',
      wanted: 0,
    },
  ];
}

function timed(): readonly Line[] {
  return (
    [
      [4, 0],
      [4, 2],
    ] as const
  ).map(([b, c]) => {
    const { kinds } = namedTrial(b, c, SD, true, 1);
    const answer = identify({ kinds, groups: [] });
    const times = Array.from({ length: 9 }, () => {
      const start = cpuMs();
      withWhatNext({ kinds, groups: [] }, { ...answer, next: [] });
      return cpuMs() - start;
    }).sort((x, y) => x - y);
    console.log(
      `(${b}, ${c}), ${answer.shapes[0]?.shell.kind.length} places, ${answer.shapes.length} shapes: ${(times[4] as number).toFixed(0)} ms, worst ${(times[8] as number).toFixed(0)} ms (wanted: 150 ms)`,
    );
    const places = answer.shapes[0]?.shell.kind.length;
    return {
      what: `next reading, ${places} places`,
      found: times[4] as number,
      unit: 'ms',
      wanted: 150,
    };
  });
}
