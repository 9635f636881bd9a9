// Where a net has the readings beside the sides: which side meets a side whose angle was read,
// around which hub a joined group with a distance across it lies, and how well its hubs suit the hub
// plates. What lies in several places is taken where it
// fits best: it was read in one of them.

import { turned } from '../math/cyclic.ts';
import type { HubPlate, JoinedGroup, Kind } from '../pile/kind.ts';
import type { SideId } from '../shell/ids.ts';
import { kindSide, mateOf, placeAt, previousSide, type Shell, sideCount } from '../shell/shell.ts';
import { type Star, starsOf } from '../shell/stars.ts';
import { cornerModel, firstSides } from './corner-model.ts';
import { type Fact, factAt, sharedShares } from './facts.ts';
import type { NetFit } from './fit.ts';
import type { ShapeQuestion } from './shape.ts';
import type { SideBelief } from './side-belief.ts';

/** A net, fitted, with its kinds; the shell's kinds are theirs. */
export interface FactsNet {
  readonly shell: Shell;
  readonly kinds: readonly Kind[];
  readonly readings: SideBelief;
  readonly fit: NetFit;
  /** Kind → what counts as the same kind; id → the same, undefined for an unknown one. */
  readonly family: readonly number[];
  readonly familyOf: (id: string) => number | undefined;
}

/** Readings besides sides and laps that a question has. */
export const hasFacts = ({ kinds, groups, hubPlates }: ShapeQuestion): boolean =>
  (hubPlates?.length ?? 0) > 0 ||
  kinds.some((kind) => kind.dihedrals) ||
  groups.some((group) => group.rim);

/** The facts that a net is to be fitted to. */
export function factsOf(net: FactsNet, question: ShapeQuestion): Fact[] {
  return [
    ...dihedralFacts(net),
    ...question.groups.flatMap((group) => rimFacts(net, group, question.allowance ?? 0)),
    ...plateRadii(net.readings, question),
  ];
}

function dihedralFacts({ shell, kinds, readings, fit }: FactsNet): Fact[] {
  const model = kinds.some((kind) => kind.dihedrals)
    ? cornerModel(fit.sides, 1 / fit.radius ** 2)
    : null;
  if (!model) return [];
  const first = firstSides(readings.sides);
  const mates = new Map<number, number[]>();
  for (let s = 0; s < sideCount(shell); s++) {
    const mate = mateOf(shell, s as SideId);
    const own = kindSideOf(shell, first, s as SideId);
    if (mate === null) continue;
    const list = mates.get(own) ?? [];
    list.push(kindSideOf(shell, first, mate));
    mates.set(own, list);
  }
  return kinds.flatMap((kind, k) =>
    (kind.dihedrals ?? []).flatMap((angle, i): Fact[] => {
      const side = (first[k] as number) + i;
      const met = mates.get(side);
      if (!angle || !met) return [];
      const facts = [...new Set(met)].map((mate): Fact & { what: 'dihedral' } => {
        const { value, sd } = angle;
        return { what: 'dihedral', value, sd, side, mate };
      });
      const off = (fact: Fact): number => Math.abs(factAt(model, fact, null) - angle.value);
      return [facts.reduce((best, fact) => (off(fact) < off(best) ? fact : best))];
    }),
  );
}

/** The kind-side that a side of the shell is. */
export const kindSideOf = (shell: Shell, first: ArrayLike<number>, side: SideId): number =>
  (first[shell.kind[placeAt(shell, side)] as number] as number) + kindSide(shell, side);

/** The readings across a group, where it lies best. */
function rimFacts(net: FactsNet, group: JoinedGroup, allowance: number): Fact[] {
  const { rim } = group;
  if (!rim || rim.length === 0) return [];
  const { shell, readings, fit } = net;
  const model = cornerModel(fit.sides, 1 / fit.radius ** 2);
  if (!model) return [];
  const shares = sharedShares(readings);
  const wanted = group.around.map((id) => net.familyOf(id) ?? -1);
  const seen = new Set<string>();
  let best: { facts: Fact[]; misfit: number } | null = null;
  for (const star of starsOf(shell)) {
    if (group.closed ? star.corners.length !== wanted.length : star.corners.length < wanted.length)
      continue;
    for (const corners of runsOf(star, wanted.length)) {
      const fits = corners.every(
        (side, i) => net.family[shell.kind[placeAt(shell, side)] as number] === wanted[i],
      );
      const own = corners.map((side) => kindSideOf(shell, model.first, side));
      if (!fits || seen.has(own.join())) continue;
      seen.add(own.join());
      const spokes = [
        ...own,
        kindSideOf(shell, model.first, previousSide(shell, corners.at(-1) as SideId)),
      ];
      const facts = rim.map(({ from, to, length, sd }): Fact => {
        const [a, b] = [Math.min(from, to), Math.max(from, to)];
        return {
          what: 'rim',
          value: length,
          sd,
          spokes: [spokes[a] as number, spokes[b] as number],
          corners: own.slice(a, b),
          allowance,
        };
      });
      const misfit = facts.reduce(
        (sum, fact) => sum + (factAt(model, fact, shares) - fact.value) ** 2,
        0,
      );
      if (!best || misfit < best.misfit) best = { facts, misfit };
    }
  }
  return best?.facts ?? [];
}

/** Every run of so many corners around a star, anticlockwise. */
function runsOf({ corners, closed }: Star, count: number): SideId[][] {
  if (!closed)
    return corners.slice(count - 1).map((_, start) => corners.slice(start, start + count));
  return corners.map((_, start) => turned(corners, start).slice(0, count));
}

/** A plate's arms are half the allowance, at either end of a side. */
function plateRadii({ sharedVariance }: SideBelief, question: ShapeQuestion): Fact[] {
  if (sharedVariance === 0) return [];
  return (question.hubPlates ?? []).flatMap(({ radius }): Fact[] =>
    radius
      ? [
          {
            what: 'allowance',
            value: 2 * radius.value - (question.allowance ?? 0),
            sd: 2 * radius.sd,
          },
        ]
      : [],
  );
}

/** A plate whose angles fit no hub says no more than this against a net: ln of a slip's chance. */
const PLATE_SLIP = Math.log(0.01);
/** Plates with fewer corners may be of a rim. */
const INNER_CORNERS = 5;

/** Log of what the plates' corners and arms say for a net. The angle between two arms is the corner
 * between two great circles, as a plate lies square to the hub's radius. */
export function platesWeight({ shell, fit }: FactsNet, plates: readonly HubPlate[]): number {
  if (plates.length === 0) return 0;
  const model = cornerModel(fit.sides, 1 / fit.radius ** 2);
  if (!model) return 0;
  const runs = new Map<string, number[]>();
  for (const { corners, closed } of starsOf(shell)) {
    if (!closed) continue;
    const own = corners.map((side) => kindSideOf(shell, model.first, side));
    runs.set(
      own.join(),
      own.map((corner) => model.angles[corner] as number),
    );
  }
  const stars = [...runs.values()];
  return plates.reduce((sum, plate) => sum + plateWeight(plate, stars), 0);
}

function plateWeight({ corners, arms }: HubPlate, stars: readonly (readonly number[])[]): number {
  const like = stars.filter((star) => star.length === corners);
  if (like.length === 0) return corners >= INNER_CORNERS ? PLATE_SLIP : 0;
  if (arms.length === 0) return 0;
  const costs = like.flatMap((star) =>
    star.map((_, start) => {
      const angles = turned(star, start);
      return arms.reduce(
        (sum, { value, sd }, i) => sum + ((value - (angles[i] as number)) / sd) ** 2,
        0,
      );
    }),
  );
  // An angle each is lost to going all the way round; what is left is expected of right plates.
  const beyond = Math.max(0, Math.min(...costs) - (corners - 1));
  return Math.max(PLATE_SLIP, -beyond / 2);
}
