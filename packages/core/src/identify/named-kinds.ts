// Kinds that the pile lacks, by name: where all its kinds are kinds of one named net at one radius, those
// that the net has besides are what lacks. No search: each named net of about so many kinds is laid
// beside the pile's, one kind for the radius, then every other to the nearest. It is believed only where
// many kinds meet theirs at once and no other net does, and what it wants is then closed with the rest.

import { turned } from '../math/cyclic.ts';
import { chiSquareTail } from '../math/statistics.ts';
import { divisions } from '../nets/division.ts';
import { kindsOfNet } from '../nets/kinds.ts';
import { type NetSpec, namedNet, placesPerFace } from '../nets/named.ts';
import type { Kind } from '../pile/kind.ts';
import { FINEST_SD } from './side-belief.ts';
import type { Wanted, WantedKind } from './wanted.ts';

/** So few kinds may be those of a net by chance; so large a share may lack. */
const LEAST_KINDS = 4;
const MOST_LACKING = 0.5;
/** A side is that of a named kind within this many deviations. */
const GATE = 4.5;
/** Misfits that true readings would exceed with less than this probability are none of the net's. */
const LEAST_TAIL = 1e-3;
/** What is told must be this probable against other nets that fit. */
const TOLD = 0.9;
/** Sides that differ by less than this share of the radius are one length in a named net. */
const SAME = 1e-9;
/** Most steps along a face's edge. */
const MOST_STEPS = 9;

/** A named net that has all kinds of the pile. */
interface NamedFit {
  readonly wanted: readonly WantedKind[];
  readonly chi2: number;
}

/** The kinds that these lack to be those of a named net; null where they are of none, of several that
 * lack other kinds, or too few to tell. `goOn`: asked before each net; false stops. */
export function namedKindsWanted(kinds: readonly Kind[], goOn: () => boolean): Wanted | null {
  if (kinds.length < LEAST_KINDS) return null;
  const fits: NamedFit[] = [];
  for (const spec of specsFor(kinds.length)) {
    if (!goOn()) return null;
    const fit = fitOf(kinds, spec);
    if (fit) fits.push(fit);
  }
  const [best, ...others] = fits.sort((a, b) => a.chi2 - b.chi2);
  if (!best || best.wanted.length === 0) return null;
  const rivals = others
    .filter((one) => !isLike(one.wanted, best.wanted))
    .reduce((sum, { chi2 }) => sum + Math.exp((best.chi2 - chi2) / 2), 0);
  const probability = 1 / (1 + rivals);
  return probability < TOLD ? null : { kinds: best.wanted, probability };
}

/** Names of nets with more kinds than these, but not far more: a third of the places of a face, with
 * those on axes a little more. */
function specsFor(count: number): NetSpec[] {
  const specs: NetSpec[] = [];
  for (const solid of ['icosahedron', 'octahedron', 'tetrahedron'] as const)
    for (let b = 1; b <= MOST_STEPS; b++)
      for (let c = 0; c <= MOST_STEPS; c++) {
        const about = placesPerFace(b, c) / 3;
        if (about < 0.7 * count || about > count / (1 - MOST_LACKING)) continue;
        const plain = b * c === 0 ? divisions : (['equal chords'] as const);
        specs.push(...plain.map((division): NetSpec => ({ solid, b, c, division })));
      }
  return specs;
}

/** The net at the radius at which it has all kinds; null where there is none. */
function fitOf(kinds: readonly Kind[], spec: NetSpec): NamedFit | null {
  const net = namedNet(spec);
  const named = kindsOfNet(net.hubs, net.places, SAME).kinds.map(({ sides }) => sides);
  if (named.length <= kinds.length) return null;
  const [first] = kinds as [Kind];
  let best: NamedFit | null = null;
  for (const own of named)
    for (let by = 0; by < own.length; by++) {
      const radius = radiusOf([{ kind: first, sides: turned(own, by) }]);
      if (radius === null) continue;
      const fit = fitAt(kinds, named, radius.value, radius.sd);
      if (fit && (!best || fit.chi2 < best.chi2)) best = fit;
    }
  return best;
}

/** A kind of the pile on one of the net's, whose sides are in its order, on the unit sphere. */
interface Met {
  readonly kind: Kind;
  readonly sides: readonly number[];
}

/** Each kind on the nearest of the net's that no other has; null where one has none. */
function fitAt(
  kinds: readonly Kind[],
  named: readonly (readonly number[])[],
  about: number,
  sd: number,
): NamedFit | null {
  const taken = new Set<number>();
  const met: Met[] = [];
  for (const kind of kinds) {
    const ways = named.flatMap((own, k) =>
      taken.has(k) || own.length !== kind.sides.length
        ? []
        : own.map((_, by) => ({ k, sides: turned(own, by) })),
    );
    const costs = ways.map(({ sides }) => costOf(kind, sides, about, sd));
    const at = costs.indexOf(Math.min(...costs));
    const way = ways[at];
    if (!way || !((costs[at] as number) < Number.POSITIVE_INFINITY)) return null;
    taken.add(way.k);
    met.push({ kind, sides: way.sides });
  }
  const radius = radiusOf(met);
  if (!radius) return null;
  const chi2 = met.reduce((sum, { kind, sides }) => sum + costOf(kind, sides, radius.value, 0), 0);
  const count = kinds.reduce((sum, { sides }) => sum + sides.length, 0) - 1;
  if (!(chiSquareTail(chi2, count) >= LEAST_TAIL)) return null;
  const wanted = named.flatMap((sides, k): WantedKind[] =>
    taken.has(k)
      ? []
      : [
          {
            sides: sides.map((x) => x * radius.value),
            sds: sides.map((x) => Math.max(x * radius.sd, FINEST_SD)),
          },
        ],
  );
  return { wanted, chi2 };
}

/** Sum of squared misfits of a kind's sides, in deviations; infinite where one is beyond the gate. */
function costOf({ sides, sideSds }: Kind, named: readonly number[], radius: number, sd: number) {
  let cost = 0;
  for (let i = 0; i < sides.length; i++) {
    const own = Math.hypot(Math.max(sideSds[i] as number, FINEST_SD), sd * (named[i] as number));
    const z = ((sides[i] as number) - radius * (named[i] as number)) / own;
    if (!(Math.abs(z) <= GATE)) return Number.POSITIVE_INFINITY;
    cost += z * z;
  }
  return cost;
}

/** The radius that fits best and its deviation; null where a kind has another number of sides. */
function radiusOf(met: readonly Met[]): { readonly value: number; readonly sd: number } | null {
  let both = 0;
  let own = 0;
  for (const { kind, sides } of met) {
    if (kind.sides.length !== sides.length) return null;
    sides.forEach((x, i) => {
      const weight = 1 / Math.max(kind.sideSds[i] as number, FINEST_SD) ** 2;
      both += weight * x * (kind.sides[i] as number);
      own += weight * x * x;
    });
  }
  return own > 0 ? { value: both / own, sd: 1 / Math.sqrt(own) } : null;
}

/** Whether two lists want the same panels within what readings tell. */
function isLike(a: readonly WantedKind[], b: readonly WantedKind[]): boolean {
  return (
    a.length === b.length &&
    a.every(({ sides, sds }) =>
      b.some((other) =>
        other.sides.some((_, by) =>
          turned(other.sides, by).every(
            (x, i) => Math.abs(x - (sides[i] as number)) <= NEAR + GATE * (sds[i] as number),
          ),
        ),
      ),
    )
  );
}

/** Panels whose sides differ by less than this may stand for each other, metres. */
const NEAR = 0.0015;
