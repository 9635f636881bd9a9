// Seeded piles with the truth known, and the judge of an answer. Shared by the benchmark and the
// tests of the identification.

import { type Alikeness, alikeness, labelsOf } from '../src/identify/alike.ts';
import { firstSides } from '../src/identify/corner-model.ts';
import { netCode } from '../src/identify/net-code.ts';
import type { Identification, Shape } from '../src/identify/shape.ts';
import { type Random, seededRandom } from '../src/math/random.ts';
import { type NetShell, shellOfNet } from '../src/nets/kinds.ts';
import { movedNet } from '../src/nets/moved.ts';
import { namedNet } from '../src/nets/named.ts';
import type { Kind } from '../src/pile/kind.ts';

/** A pile for a trial. Working order of kinds and sides is shuffled. */
export interface Trial {
  readonly name: string;
  readonly truth: NetShell;
  /** True where sides, counts and all leave several nets (twins). */
  readonly hasTwins: boolean;
  readonly kinds: readonly Kind[];
  /** Pile kind → kind of the truth, and the side of that which is side 0 here. */
  readonly source: readonly number[];
  readonly offset: readonly number[];
  /** Standard deviation of a reading, metres. */
  readonly sd: number;
  readonly counted: boolean;
}

/** How an answer did. */
export interface Verdict {
  readonly right: boolean;
  /** Alone in the list. */
  readonly alone: boolean;
  readonly wrongButCertain: boolean;
  /** Probability given to the right shape, 0 where it is not listed. */
  readonly probability: number;
  /** |radius − truth| in standard deviations of the best shape's radius. */
  readonly radiusOff: number;
}

/** Eleven icosahedral nets, (b, c), from 80 to 720 places. */
export const trialNets: readonly (readonly [number, number])[] = [
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
];

/** Nets of which half can be turned by a step. */
const twinned = new Set(['2,0', '4,0', '6,0', '3,3', '8,0']);

/** The net {3,5+}b,c by equal chords at a radius of 2.7 m, kinds shuffled, each side read once with
 * an error of `sd` metres. */
export function namedTrial(
  b: number,
  c: number,
  sd: number,
  counted: boolean,
  seed: number,
): Trial {
  const random = seededRandom(seed);
  const net = namedNet({ solid: 'icosahedron', b, c, division: 'equal chords' });
  const truth = shellOfNet(net, 2.7);
  return pileOf(
    { name: `(${b}, ${c})`, truth, hasTwins: twinned.has(`${b},${c}`), sd, counted },
    random,
  );
}

/** A random pile: any of the nets, half of those of class I and III moved off their rule by up to
 * 6 % of a side, radius 2 to 6 m, noise `sd` metres at 2.7 m and in proportion, half of them with
 * counts. */
export function randomTrial(sd: number, seed: number): Trial {
  const random = seededRandom(seed);
  const [b, c] = trialNets[random.below(trialNets.length)] as readonly [number, number];
  const radius = 2 + 4 * random.uniform();
  const counted = random.uniform() < 0.5;
  const moved = b !== c && `${b},${c}` !== '2,0' && random.uniform() < 0.5;
  const fraction = 0.06 * random.uniform();
  const named = namedNet({ solid: 'icosahedron', b, c, division: 'equal chords' });
  const net = moved ? movedNet(named, { solid: 'icosahedron', fraction, random }) : named;
  const name = `(${b}, ${c})${moved ? ` moved ${(100 * fraction).toFixed(1)} %` : ''} R ${radius.toFixed(2)} m`;
  const truth = shellOfNet(net, radius);
  const hasTwins = !moved && twinned.has(`${b},${c}`);
  return pileOf({ name, truth, hasTwins, sd: (sd * radius) / 2.7, counted }, random);
}

function pileOf(
  given: Pick<Trial, 'name' | 'truth' | 'hasTwins' | 'sd' | 'counted'>,
  random: Random,
): Trial {
  const { truth, sd, counted } = given;
  const source = random.shuffle(truth.kinds.map((_, k) => k));
  const offset: number[] = [];
  const kinds = source.map((k, i): Kind => {
    const { sides, count } = truth.kinds[k] as NetShell['kinds'][number];
    const from = random.below(sides.length);
    offset.push(from);
    return {
      id: `k${i + 1}`,
      marks: [],
      sides: sides.map(
        (_, j) => (sides[(j + from) % sides.length] as number) + sd * random.normal(),
      ),
      sideSds: sides.map(() => sd),
      hand: null,
      good: counted ? count : 0,
      repair: 0,
      scrap: 0,
      counted,
      mass: null,
    };
  });
  return { ...given, kinds, source, offset };
}

/** Sides nearer than this many standard deviations of a reading may stand for one another, if the
 * answer says so. */
const WITHIN_NOISE = 2.5;

/** Whether the truth is among the shapes: the same net, with the same kind turned the same way in
 * every place. Kinds that differ by less than the noise may be exchanged, and panels turned, where
 * the answer lists them as interchangeable or free to turn. */
export function judge(trial: Trial, answer: Identification): Verdict {
  const exact = codesUnder(trial, 1e-7 * trial.truth.shell.radius);
  const loose = codesUnder(trial, WITHIN_NOISE * trial.sd);
  const isRight = (shape: Shape): boolean =>
    exact(shape) || (shape.interchangeable.length + shape.freeTurns.length > 0 && loose(shape));
  const shape = answer.shapes.find(isRight);
  const best = answer.shapes[0];
  return {
    right: shape !== undefined,
    alone: shape !== undefined && answer.shapes.length === 1,
    wrongButCertain: shape === undefined && answer.shapes.length === 1,
    probability: shape?.probability ?? 0,
    radiusOff: best ? Math.abs(best.radius - trial.truth.shell.radius) / best.radiusSd : Infinity,
  };
}

function codesUnder(trial: Trial, gap: number): (shape: Shape) => boolean {
  const { truth, source, offset } = trial;
  const sides = source.map((k, i) => {
    const own = (truth.kinds[k] as NetShell['kinds'][number]).sides;
    return own.map((_, j) => own[(j + (offset[i] as number)) % own.length] as number);
  });
  const alike: Alikeness = alikeness(sides, firstSides(sides), gap);
  const back = truth.kinds.map((_, k) => source.indexOf(k));
  const shell = {
    ...truth.shell,
    kind: truth.shell.kind.map((k) => back[k] as number),
    turn: truth.shell.turn.map((turn, p) => {
      const k = truth.shell.kind[p] as number;
      const n = (truth.kinds[k] as NetShell['kinds'][number]).sides.length;
      return (turn - (offset[back[k] as number] as number) + n) % n;
    }),
  };
  const { code } = netCode(shell, labelsOf(shell, alike));
  return (shape) => netCode(shape.shell, labelsOf(shape.shell, alike)).code === code;
}
