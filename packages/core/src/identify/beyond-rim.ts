// A part made whole by the net that it is a piece of (named-beyond.ts): the places beyond its rim are
// sorted into kinds by the turns that bring the part onto itself, their sides start where the named net
// has them and are then fitted with the part's own, so that the rim's hubs, the stars that close around
// the hole and the axis say what they can.

import { distance, pointAt } from '../math/vector.ts';
import type { SideId } from '../shell/ids.ts';
import {
  hubCount,
  kindSide,
  makeShell,
  nextSide,
  type PlaceDraft,
  placeAt,
  placeCount,
  type Shell,
} from '../shell/shell.ts';
import { fitsWell } from './candidates.ts';
import { firstSides } from './corner-model.ts';
import { conditionsOf, fitNet, type NetFit, sideSd } from './fit.ts';
import { layShell } from './lay.ts';
import { type NamedBeyond, namedBeyond, sideImage } from './named-beyond.ts';
import type { SideBelief } from './side-belief.ts';
import type { WantedKind } from './wanted.ts';

/** A part made whole. */
export interface WholeBeyond {
  /** Places of the wanted kinds bear numbers from that of the readings' kinds on. */
  readonly shell: Shell;
  readonly fit: NetFit;
  readonly wanted: readonly WantedKind[];
  readonly name: NamedBeyond;
}

/** Deviation of a side between hubs of the part before the whole is fitted, metres: they are known. */
const RIM_SD = 0.02;
/** Where a hub of which nothing is known lies: so many times as far from where the named net has it as
 * the part's hubs do. */
const LOOSE = 1.5;

/** The part made whole; null where no named net says how, or it does not fit. */
export function wholeBeyond(part: Shell, fit: NetFit, readings: SideBelief): WholeBeyond | null {
  const name = namedBeyond(part);
  const beyond = name && placesBeyond(part, name);
  if (!name || !beyond) return null;
  const { named, isKnown, hubs, orbits } = beyond;
  const kinds = readings.sides.length;
  const hubOf = (side: number): number => named.sideHub[side] as number;
  const own = Array.from({ length: placeCount(part) }, (_, p): PlaceDraft => {
    // A hub in which the part's rim touches itself is one again.
    const sides = sidesFrom(part, part.placeStart[p] as SideId);
    return {
      hubs: sides.map((side) => hubOf(name.image[side] as number)),
      kind: part.kind[p] as number,
      turn: part.turn[p] as number,
    };
  });
  const added = orbits.flatMap((orbit, w) =>
    orbit.map((side): PlaceDraft => {
      return {
        hubs: sidesFrom(named, side).map(hubOf),
        kind: kinds + w,
        turn: 0,
      };
    }),
  );
  const isRim = (hub: number): boolean => isKnown[hub] === 1;
  const loose = LOOSE * name.rms + sideSd(fit);
  const guesses = orbits.map((orbit, w) => {
    const drafts = added.filter(({ kind }) => kind === kinds + w);
    return [0, 1, 2].map((i) => {
      const ends = drafts.map(
        ({ hubs: round }) => [round[i], round[(i + 1) % 3]] as [number, number],
      );
      const lengths = ends.map(([a, b]) => distance(pointAt(hubs, a), pointAt(hubs, b)));
      const sd = (ends[0] as [number, number]).every(isRim) ? RIM_SD : loose;
      return { length: lengths.reduce((sum, x) => sum + x, 0) / orbit.length, sd };
    });
  });
  const extended: SideBelief = {
    ...readings,
    sides: [...readings.sides, ...guesses.map((sides) => sides.map(({ length }) => length))],
    variances: [...readings.variances, ...guesses.map((sides) => sides.map(({ sd }) => sd ** 2))],
  };
  const draft = makeShell({ radius: part.radius, hubs, places: [...own, ...added] });
  const first = firstSides(extended.sides);
  const whole = fitNet(extended, conditionsOf(draft, first), part.radius);
  const shell = whole && layShell(draft, whole.sides, whole.radius);
  if (!whole || !shell || !fitsWell({ shell, fit: whole })) return null;
  const wanted = guesses.map((sides, w): WantedKind => {
    const start = first[kinds + w] as number;
    return {
      sides: whole.sides[kinds + w] as readonly number[],
      sds: sides.map((_, i) => Math.sqrt(whole.variances[start + i] as number)),
    };
  });
  return { shell, fit: whole, wanted, name };
}

interface Beyond {
  readonly named: Shell;
  /** Hub of the named net, as which the whole's are numbered → whether a panel of the part has it. */
  readonly isKnown: Uint8Array;
  /** Stride 3, metres: the part's where it has them, else those of the named net. */
  readonly hubs: Float64Array;
  /** Wanted kind → the side of the named net on which its first side lies, for each of its places. */
  readonly orbits: readonly (readonly SideId[])[];
}

/** The places beyond the rim, by the turns that bring the part onto itself; null where those do not
 * bring the named net onto itself. */
function placesBeyond(part: Shell, { named, image }: NamedBeyond): Beyond | null {
  const isKnown = new Uint8Array(hubCount(named));
  const hubs = named.hubs.slice();
  image.forEach((to, side) => {
    const hub = named.sideHub[to] as number;
    isKnown[hub] = 1;
    hubs.set(pointAt(part.hubs, part.sideHub[side] as number), 3 * hub);
  });
  const turns = turnsOf(part, named, image);
  if (!turns) return null;
  const stands = new Uint8Array(placeCount(named));
  for (const to of image) stands[placeAt(named, to as SideId)] = 1;
  const orbits: SideId[][] = [];
  for (let p = 0; p < placeCount(named); p++) {
    if (stands[p]) continue;
    const side = named.placeStart[p] as SideId;
    const orbit: SideId[] = [];
    for (const turn of turns) {
      const to = turn[side] as SideId;
      if (stands[placeAt(named, to)]) continue;
      stands[placeAt(named, to)] = 1;
      orbit.push(to);
    }
    orbits.push(orbit);
  }
  return { named, isKnown, hubs, orbits };
}

/** The turns of the named net that bring the part onto itself, each as side → side: those that bring
 * a place to each other place of its kind. */
function turnsOf(part: Shell, named: Shell, image: Int32Array): Int32Array[] | null {
  const sideOf = (p: number): number =>
    sidesFrom(part, part.placeStart[p] as SideId).find((s) => kindSide(part, s) === 0) as number;
  const alike = [...part.kind.keys()].filter((p) => part.kind[p] === part.kind[0]);
  const from = image[sideOf(0)] as SideId;
  const turns = alike.map((p) => sideImage(named, from, named, image[sideOf(p)] as SideId));
  return turns.includes(null) ? null : (turns as Int32Array[]);
}

const sidesFrom = (shell: Shell, side: SideId): SideId[] => {
  const second = nextSide(shell, side);
  return [side, second, nextSide(shell, second)];
};
