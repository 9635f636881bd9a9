// What the readings settle and what they leave open: several nets of the same panels, kinds that stand
// for one another, panels that may be turned, the whole or its mirror image; and whether one has to
// care. A choice matters that moves a seam by more than its bolts give, that changes the radius, or
// that takes other panels. Metres.

import { turned } from '../math/cyclic.ts';
import { type Families, type FamilyRun, familiesOf, familyRuns } from './families.ts';
import { andList, lengthText } from './find-words.ts';
import { RADIUS_SHARE, SEAM_PLAY } from './play.ts';
import type { Free, Freedom, Shape, ShapeQuestion } from './shape.ts';

/** Shapes less probable than the best by more than this are no choice. */
const CHOICE = 20;
/** What is settled and what is free among the shapes of a question, best first; null where there are
 * none. `complete`: whether the search could end. */
export function freedomOf(
  shapes: readonly Shape[],
  question: ShapeQuestion,
  complete: boolean,
): Freedom | null {
  const [best] = shapes;
  if (!best) return null;
  const choices = shapes.flatMap(({ probability }, i) =>
    probability * CHOICE >= best.probability ? [i] : [],
  );
  const families = familiesOf(best, question);
  const others = choices
    .slice(1)
    .map((i) => compared(best, shapes[i] as Shape, question, families));
  const free: Free[] = [
    ...netsFree(best, choices, others, complete),
    ...best.interchangeable.map((kinds, i) => kindsFree(kinds, best.interchangeCosts[i] ?? 0)),
    ...turnsFree(best, question),
    ...(best.hands === 'mirrored' ? [MIRRORED] : []),
  ];
  return {
    settled: settledIn(best, others, question),
    free,
    matters: free.some((one) => one.matters),
  };
}

/** How another shape differs from the best. */
interface Compared {
  readonly radius: number;
  /** Furthest that a side of a kind that both use differs, metres. */
  readonly side: number;
  readonly samePanels: boolean;
  /** Hubs, of the best, around which other kinds lie. */
  readonly hubs: number;
}

function compared(
  best: Shape,
  other: Shape,
  question: ShapeQuestion,
  families: Families,
): Compared {
  const [own, its] = [families.of(best), families.of(other)];
  const [panels, itsPanels] = [panelsBy(best, own), panelsBy(other, its)];
  const sides = question.kinds.flatMap((_, k) => {
    const [a, b] = [best.fittedSides[k] ?? [], other.fittedSides[k] ?? []];
    return uses(best, k) && uses(other, k)
      ? a.map((side, i) => Math.abs(side - (b[i] ?? side)))
      : [];
  });
  return {
    radius: Math.abs(best.radius - other.radius),
    side: Math.max(0, ...sides),
    samePanels:
      panels.size === itsPanels.size &&
      [...panels].every(([id, count]) => itsPanels.get(id) === count),
    hubs: hubsApart(familyRuns(best, own), familyRuns(other, its)),
  };
}

const uses = ({ shell }: Shape, kind: number): boolean => shell.kind.includes(kind);

function panelsBy({ shell }: Shape, family: readonly string[]): Map<string, number> {
  const panels = new Map<string, number>();
  for (const k of shell.kind) {
    const own = family[k] as string;
    panels.set(own, (panels.get(own) ?? 0) + 1);
  }
  return panels;
}

function hubsApart(
  own: ReadonlyMap<string, FamilyRun>,
  other: ReadonlyMap<string, FamilyRun>,
): number {
  let apart = 0;
  for (const [key, { hubs }] of own) apart += Math.max(0, hubs - (other.get(key)?.hubs ?? 0));
  return apart;
}

function netsFree(
  best: Shape,
  choices: readonly number[],
  others: readonly Compared[],
  complete: boolean,
): Free[] {
  if (others.length === 0) return [];
  const most = (of: (one: Compared) => number): number => Math.max(...others.map(of));
  const [radius, side, hubs] = [most((o) => o.radius), most((o) => o.side), most((o) => o.hubs)];
  const differs = [
    ...(others.every((one) => one.samePanels) ? [] : ['they take different panels']),
    ...(radius > RADIUS_SHARE * best.radius
      ? [`their radii differ by up to ${lengthText(radius)}`]
      : []),
    ...(side > SEAM_PLAY ? [`a side differs by up to ${lengthText(side)}`] : []),
  ];
  const count = `${complete ? '' : 'at least '}${choices.length} nets`;
  const where =
    hubs > 0
      ? `they differ around ${hubs} of ${best.shell.hubs.length / 3} hubs at most`
      : 'the same kinds lie around their hubs; they differ in how these follow one another';
  return [
    {
      what: 'net',
      shapes: choices,
      hubs,
      atLeast: !complete,
      matters: differs.length > 0,
      words:
        differs.length > 0
          ? `${count} fit: ${where}; it matters which, for ${differs.join(', ')}`
          : `${count} of the same panels fit: ${where}; all stand equally well, so any of them may be built, but only one throughout`,
    },
  ];
}

function kindsFree(kinds: readonly string[], cost: number): Free {
  const names = `kinds ${andList(kinds)} may stand for one another`;
  const matters = cost > SEAM_PLAY;
  return {
    what: 'kinds',
    kinds,
    cost,
    matters,
    words: matters
      ? `${names} as far as the readings tell, but a side is then off by ${lengthText(cost)}: keep them apart by their marks, or measure them again`
      : `${names}: a side is then off by ${lengthText(cost)}, less than its bolts give`,
  };
}

function turnsFree({ freeTurns, fittedSides }: Shape, { kinds }: ShapeQuestion): Free[] {
  return freeTurns.flatMap((id): Free[] => {
    const sides = fittedSides[kinds.findIndex((kind) => kind.id === id)];
    if (!sides) return [];
    const cost = turnCost(sides);
    const matters = cost > SEAM_PLAY;
    const words = `panels of kind ${id} may be turned in their places: a side is then off by ${lengthText(cost)}, ${matters ? 'more' : 'less'} than its bolts give`;
    return [{ what: 'turn', kinds: [id], cost, matters, words }];
  });
}

/** Root mean square of what a panel's sides are off when it is turned, in the turn where that is
 * least, metres. */
const turnCost = (sides: readonly number[]): number =>
  Math.min(
    ...sides.slice(1).map((_, i) => {
      const other = turned(sides, i + 1);
      return Math.sqrt(
        sides.reduce((sum, side, s) => sum + (side - (other[s] as number)) ** 2, 0) / sides.length,
      );
    }),
  );

const MIRRORED: Free = {
  what: 'hand',
  matters: true,
  words: 'nobody noted a face: the whole may as well be its mirror image',
};

function settledIn(best: Shape, others: readonly Compared[], { kinds }: ShapeQuestion): string[] {
  const each = others.length > 0 ? ', in each of them' : '';
  const panels = best.shell.kind.length;
  const sameRadius = others.every(({ radius }) => radius <= RADIUS_SHARE * best.radius);
  const samePanels = others.every((one) => one.samePanels);
  const hubs = best.shell.hubs.length / 3;
  const apart = Math.max(0, ...others.map((one) => one.hubs));
  return [
    ...(sameRadius
      ? [
          `the radius is ${lengthText(best.radius)}, give or take ${lengthText(best.radiusSd)}${each}`,
        ]
      : []),
    ...(samePanels
      ? [`it takes ${panels} panels of ${new Set(best.shell.kind).size} kinds${each}`]
      : []),
    ...(apart < hubs && others.length > 0
      ? [`around ${hubs - apart} of ${hubs} hubs at least the same kinds lie${each}`]
      : []),
    ...(others.length === 0 ? ['which kinds meet at every side and around every hub'] : []),
    ...(best.hands === 'known' && kinds.some(({ hand }) => hand !== null)
      ? ['which way round the whole runs']
      : []),
  ];
}
