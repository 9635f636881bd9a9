// The nets of a pile as the shapes that are told: weighed by what else was read, the improbable left out,
// each with what tells it from the others and what would settle it.

import type { Kind } from '../pile/kind.ts';
import { placesByKind } from '../shell/shell.ts';
import type { Alikeness } from './alike.ts';
import { isTold } from './allowance.ts';
import { toSource, type WorkingKinds } from './canonical-kinds.ts';
import { firstSides } from './corner-model.ts';
import { type FactsNet, factsOf, hasFacts, platesWeight } from './facts-in-net.ts';
import { conditionsOf, fitNet, type NetFit, sideSd } from './fit.ts';
import { misfitGroups, misfitLoose } from './groups.ts';
import { placesTogether } from './hands.ts';
import { layShell } from './lay.ts';
import { nameNet } from './name-net.ts';
import { probabilities } from './odds.ts';
import { familiesTogether, type Placed } from './placed-net.ts';
import { type Identification, noAnswer, type Shape, type ShapeQuestion } from './shape.ts';
import { allowanceWords, sharperReadings } from './sharper.ts';
import type { SideBelief } from './side-belief.ts';
import { suspectsOf } from './suspects.ts';
import { againFirst, apartness, settling } from './telling.ts';

/** Shapes whose evidence (natural logarithm) differs by less can't be told apart by measuring. */
const LEVEL = 2;

/** Shapes less probable than this are not listed. */
const LEAST_PROBABILITY = 0.005;

/** The nets as shapes, the most probable first. `goOn`: whether there is time for one more. */
export function toldShapes(
  question: ShapeQuestion,
  working: WorkingKinds,
  stated: SideBelief,
  placed: readonly Placed[],
  alike: Alikeness,
  complete: boolean,
  goOn: () => boolean,
): Identification {
  const { kinds } = working;
  const family = familiesTogether(alike, stated);
  const familyOf = (id: string): number | undefined =>
    family[kinds.findIndex((kind) => kind.id === id)];
  const nets = hasFacts(question)
    ? placed.map((net) => sharpened(net, question, { kinds, family, familyOf }))
    : placed;
  const cases = nets.map((net) => {
    const { shell, candidate } = net;
    const misfits = misfitGroups(shell, family, familyOf, question.groups);
    const loose = misfitLoose(shell, family, familyOf, question.looseGroups ?? []);
    const misfitCount = [...misfits, ...loose].reduce((sum, group) => sum + group.count, 0);
    return {
      fit: candidate.fit,
      evidence: net.evidence,
      places: placesTogether(placesByKind(shell, kinds.length), stated.bothWays),
      misfits,
      misfitCount,
      unused: candidate.unused,
      doubted: candidate.readings !== stated,
    };
  });
  const odds = probabilities(cases, kinds);
  const sorted = nets
    .map((net, i) => ({ net, misfits: cases[i]?.misfits ?? [], probability: odds[i] as number }))
    .filter(({ probability }) => probability >= LEAST_PROBABILITY)
    .sort((a, b) => b.probability - a.probability);
  // Told to stop, the best are listed that there was time for.
  const told = sorted.flatMap(({ net }, i) =>
    i === 0 || goOn() ? plainShape(net, working, stated, alike) : [],
  );
  const listed = sorted.slice(0, told.length);
  const shells = listed.map(({ net }) => net.shell);
  const isLevel = listed.every(({ net }) => (listed[0]?.net.evidence ?? 0) - net.evidence < LEVEL);
  const nameOf = (family: number): string => namesOf(kinds, alike, family).join('/');
  const apart = apartness(shells, alike.group, nameOf);
  const plain = listed.map(
    ({ misfits, probability }, i): Shape => ({
      ...(told[i] as (typeof told)[number]),
      probability,
      misfitGroups: misfits,
      apart: apart[i] as string,
    }),
  );
  const { shapes, words } = withSharper(plain, listed[0]?.net ?? null);
  return {
    ...noAnswer,
    shapes,
    settle: [...againFirst(shapes[0]), ...settling(shells, alike.group, nameOf, isLevel), ...words],
    complete: complete && listed.length === sorted.length,
  };
}

/** Tells of the first shape what would sharpen its allowance, where that is not known well. */
function withSharper(
  shapes: readonly Shape[],
  net: Placed | null,
): { readonly shapes: readonly Shape[]; readonly words: readonly string[] } {
  const [first, ...rest] = shapes;
  if (!first?.allowance || !net) return { shapes, words: [] };
  const { shell, readings, fit } = net.candidate;
  const sharper = sharperReadings(shell, readings, fit);
  if (sharper.length === 0) return { shapes, words: [] };
  const allowance = { ...first.allowance, sharper };
  return {
    shapes: [{ ...first, allowance }, ...rest],
    words: allowanceWords(allowance, sharper),
  };
}

function plainShape(
  { shell, candidate, hands }: Placed,
  working: WorkingKinds,
  stated: SideBelief,
  alike: Alikeness,
): Omit<Shape, 'probability' | 'misfitGroups' | 'apart'> {
  const { kinds, source, offset } = working;
  const { fit, readings } = candidate;
  const idOf = (kind: number): string => (kinds[kind] as Kind).id;
  const fittedSides: number[][] = [];
  fit.sides.forEach((own, k) => {
    fittedSides[source[k] as number] = own.map(
      (_, i) => own[(i - (offset[k] as number) + own.length) % own.length] as number,
    );
  });
  const misfits = fit.sides.flatMap((own, k) =>
    own.map((length, i) => length - ((kinds[k] as Kind).sides[i] as number)),
  );
  const used = new Set(shell.kind);
  return {
    shell: toSource(shell, working),
    radius: fit.radius,
    radiusSd: fit.radiusSd,
    closed: true,
    fittedSides,
    residual: Math.sqrt(misfits.reduce((sum, x) => sum + x * x, 0) / misfits.length),
    subdivision: nameNet(shell, sideSd(fit))?.subdivision ?? null,
    suspects: suspectsOf(readings, stated, fit).map(({ kind, side, measured, expected }) => ({
      kind: idOf(kind),
      side: (side + (offset[kind] as number)) % (kinds[kind] as Kind).sides.length,
      measured,
      expected,
    })),
    interchangeable: [...new Set(alike.group)]
      .map((family) => namesOf(kinds, alike, family))
      .filter((ids) => ids.length > 1),
    freeTurns: kinds
      .filter((kind, k) => alike.turns[k] && !isRegular(fit, k, kind))
      .map((k) => k.id),
    interchangeCosts: [],
    strangers: kinds.filter((_, k) => !used.has(k)).map((kind) => kind.id),
    explained: kinds
      .filter((_, k) => !used.has(k))
      .map((kind) => ({ kind: kind.id, as: 'nothing' as const })),
    added: [],
    mends: [],
    cut: null,
    course: null,
    allowance: fit.shared
      ? {
          ...fit.shared,
          tellable: isTold(fit.shared, Math.sqrt(readings.sharedVariance)),
        }
      : null,
    hands: hands ?? 'known',
  };
}

const namesOf = (kinds: readonly Kind[], alike: Alikeness, family: number): string[] =>
  kinds.flatMap((kind, k) => (alike.group[k] === family ? [kind.id] : []));

/** Whether the net itself makes all sides of a kind one length. */
const isRegular = (fit: NetFit, k: number, kind: Kind): boolean => {
  const own = fit.sides[k] as readonly number[];
  return own.every((length) => Math.abs(length - (own[0] as number)) < 1e-9 * kind.sides.length);
};

/** The net fitted to what was read besides the sides as well, and weighed by it. */
function sharpened(
  net: Placed,
  question: ShapeQuestion,
  by: Pick<FactsNet, 'kinds' | 'family' | 'familyOf'>,
): Placed {
  const { shell, candidate } = net;
  const { readings, fit: near } = candidate;
  const known = { ...by, shell, readings, fit: near };
  const facts = factsOf(known, question);
  const conditions = conditionsOf(shell, firstSides(readings.sides));
  const fit = fitNet(readings, conditions, near.radius, facts) ?? near;
  const laid = layShell(shell, fit.sides, fit.radius);
  const weight = (fit.factsWeight ?? 0) + platesWeight({ ...known, fit }, question.hubPlates ?? []);
  if (!laid) return net;
  return {
    shell: laid,
    candidate: { ...candidate, shell: laid, fit },
    evidence: net.evidence + weight,
  };
}
