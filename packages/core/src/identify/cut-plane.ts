// The level plane that cuts a shell into panels of given sides. Ways up are the hubs, the middles of
// the seams and of the places, one of each orbit. Each way in which a stranger fits a kind gives, at
// each place of that kind, the height of its cut; heights at which many strangers agree are tried: the
// shell is cut there, the pieces are held against the strangers, and the height is fitted to them by
// least squares. Metres.

import {
  add,
  distance,
  dot,
  norm,
  normalize,
  pointAt,
  scale,
  subtract,
  type Vec3,
} from '../math/vector.ts';
import { placeNormal } from '../shell/geometry.ts';
import type { PlaceId, SideId } from '../shell/ids.ts';
import { hubCount, hubsOf, kindSide, placeCount, type Shell } from '../shell/shell.ts';
import { hubOrbits, placeOrbits, seamOrbits, symmetries } from '../shell/symmetry.ts';
import type { CutFit } from './cut-panels.ts';

/** A panel that may be a cut one. */
export interface CutPanel {
  readonly sides: readonly number[];
  /** Not 0. */
  readonly sds: readonly number[];
  /** How it fits the shell's kinds. */
  readonly fits: readonly CutFit[];
}

/** What a panel is under a plane. */
export interface Explained {
  readonly cutSide: number;
  readonly from: number;
  /** Root mean square of its sides, metres. */
  readonly misfit: number;
}

/** A plane and the panels that it explains. */
export interface PlaneFound {
  readonly up: Vec3;
  readonly height: number;
  readonly heightSd: number;
  readonly baseRadius: number;
  /** Panel → what it is, null where the plane does not explain it. */
  readonly explained: readonly (Explained | null)[];
  /** Sum of squares of standardised misfits of the sides that are explained. */
  readonly chi2: number;
  /** Sorts of panel that the plane cuts and that are none of the given. */
  readonly lacking: number;
}

/** A cut panel's sides agree with the shell's within this many deviations. */
const AGREE = 4.5;
/** Planes that are tried in full. */
const MOST_TRIED = 40;
/** Pieces with a shorter side are not asked for, in parts of the radius. */
const SLIVER = 0.03;

/** The plane that explains most of these panels with the least misfit; null where none explains any.
 * `label`: side → number that a rotation of the shell keeps. */
export function planeThrough(
  shell: Shell,
  label: ArrayLike<number>,
  panels: readonly CutPanel[],
): PlaneFound | null {
  const marks = panels.flatMap((panel, k) => marksOf(shell, panel, k));
  if (marks.length === 0) return null;
  const levels = waysUp(shell, label).flatMap((up) => levelsAt(up, marks));
  levels.sort((a, b) => b.agreed - a.agreed);
  let best: PlaneFound | null = null;
  for (const { up, height, agreed } of levels.slice(0, MOST_TRIED)) {
    if (best && agreed + 1 < countOf(best)) break;
    const found = settled(shell, up, height, panels);
    if (found && (!best || scoreOf(found) > scoreOf(best))) best = found;
  }
  return best;
}

/** Panels that a plane explains. */
export const countOf = ({ explained }: PlaneFound): number =>
  explained.filter((one) => one !== null).length;

const scoreOf = (found: PlaneFound): number =>
  countOf(found) - 0.3 * found.lacking - 0.005 * found.chi2;

/** Where a stranger's cut would lie at one place of the kind it fits. */
interface Mark {
  readonly panel: number;
  readonly a: Vec3;
  readonly b: Vec3;
  readonly sd: number;
}

function marksOf(shell: Shell, panel: CutPanel, k: number): Mark[] {
  const sd = Math.max(...panel.sds);
  return panel.fits.flatMap(({ from, first, last, before, after }) => {
    const marks: Mark[] = [];
    for (let p = 0; p < placeCount(shell); p++) {
      if (shell.kind[p] !== from) continue;
      const corners = hubsOf(shell, p as PlaceId).map((hub) => pointAt(shell.hubs, hub));
      const n = corners.length;
      const corner = (i: number): Vec3 =>
        corners[(((i - (shell.turn[p] as number)) % n) + n) % n] as Vec3;
      const a = towards(corner(first), corner(first - 1), before);
      const b = towards(corner(last), corner(last + 1), after);
      marks.push({ panel: k, a, b, sd });
    }
    return marks;
  });
}

const towards = (from: Vec3, to: Vec3, by: number): Vec3 =>
  add(from, scale(normalize(subtract(to, from)), by));

/** Unit directions: one of each orbit of hubs, of seams, of places by their middle and their normal. */
function waysUp(shell: Shell, label: ArrayLike<number>): Vec3[] {
  const group = symmetries(shell, label);
  const hub = (h: number): Vec3 => pointAt(shell.hubs, h);
  const firsts = (orbit: Int32Array): number[] =>
    Array.from(orbit.keys()).filter((i) => orbit[i] === i);
  const sum = (points: readonly Vec3[]): Vec3 => points.reduce(add, [0, 0, 0]);
  const ends = (m: number): Vec3[] => [
    hub(shell.sideHub[shell.seams[2 * m] as number] as number),
    hub(shell.sideHub[shell.seams[2 * m + 1] as number] as number),
  ];
  const all = [
    ...firsts(hubOrbits(shell, group)).map(hub),
    ...firsts(seamOrbits(shell, group)).map((m) => sum(ends(m))),
    ...firsts(placeOrbits(shell, group)).flatMap((p) => [
      sum(hubsOf(shell, p as PlaceId).map(hub)),
      placeNormal(shell, p as PlaceId),
    ]),
  ];
  const ways: Vec3[] = [];
  for (const way of all) {
    if (norm(way) < 1e-9 * hubCount(shell)) continue;
    const up = normalize(way);
    if (!ways.some((other) => distance(up, other) < 1e-7)) ways.push(up);
  }
  return ways;
}

interface Level {
  readonly up: Vec3;
  readonly height: number;
  /** Panels whose cut may lie in it. */
  readonly agreed: number;
}

/** The heights at which most panels agree, a few for each way up. */
function levelsAt(up: Vec3, marks: readonly Mark[]): Level[] {
  const level = marks
    .flatMap(({ panel, a, b, sd }) => {
      const [x, y] = [dot(a, up), dot(b, up)];
      return Math.abs(x - y) <= AGREE * 1.5 * sd ? [{ panel, height: (x + y) / 2, sd }] : [];
    })
    .sort((a, b) => a.height - b.height);
  const found: Level[] = [];
  let end = 0;
  for (let i = 0; i < level.length; i++) {
    const { height, sd } = level[i] as (typeof level)[0];
    while (end < level.length && (level[end] as { height: number }).height <= height + 6 * sd)
      end++;
    const run = level.slice(i, end);
    const agreed = new Set(run.map(({ panel }) => panel)).size;
    const middle = (run[run.length >> 1] as { height: number }).height;
    const near = found.findIndex((one) => Math.abs(one.height - middle) <= 6 * sd);
    if (near < 0) found.push({ up, height: middle, agreed });
    else if (agreed > (found[near] as Level).agreed) found[near] = { up, height: middle, agreed };
  }
  return found.sort((a, b) => b.agreed - a.agreed).slice(0, 6);
}

/** What a plane leaves of a place that it crosses. */
interface Piece {
  readonly place: number;
  readonly from: number;
  /** Anticlockwise from the cut on. */
  readonly sides: readonly number[];
  readonly base: readonly Vec3[];
}

/** The pieces above a plane. */
function piecesAt(shell: Shell, up: Vec3, height: number): Piece[] {
  const pieces: Piece[] = [];
  for (let p = 0; p < placeCount(shell); p++) {
    const points = hubsOf(shell, p as PlaceId).map((hub) => pointAt(shell.hubs, hub));
    const heights = points.map((point) => dot(point, up) - height);
    if (!heights.some((h) => h > 0) || heights.every((h) => h > 0)) continue;
    const corners = above(points, heights);
    if (corners)
      pieces.push({
        place: p,
        from: shell.kind[p] as number,
        sides: corners.map((a, i) => distance(a, corners[(i + 1) % corners.length] as Vec3)),
        base: corners.slice(0, 2),
      });
  }
  return pieces;
}

/** Corners above the plane from the one where the boundary goes down through it. */
function above(points: readonly Vec3[], heights: readonly number[]): Vec3[] | null {
  const n = points.length;
  const down = points.findIndex(
    (_, i) => (heights[i] as number) > 0 && (heights[(i + 1) % n] as number) <= 0,
  );
  if (down < 0) return null;
  const through = (i: number, j: number): Vec3 => {
    const [a, b] = [heights[i] as number, heights[j] as number];
    return add(scale(points[i] as Vec3, b / (b - a)), scale(points[j] as Vec3, a / (a - b)));
  };
  const corners = [through(down, (down + 1) % n)];
  for (let step = 1; step < n; step++) {
    const [i, j] = [(down + step) % n, (down + step + 1) % n];
    const [a, b] = [(heights[i] as number) > 0, (heights[j] as number) > 0];
    if (!a && b) corners.push(through(i, j));
    if (b) corners.push(points[j] as Vec3);
  }
  return corners;
}

interface Match {
  readonly panel: number;
  readonly piece: Piece;
  /** The side of the panel that is the piece's first. */
  readonly turn: number;
  readonly chi2: number;
}

/** The pieces nearest the panels, each sort of piece to one panel where that can be; `within`:
 * deviations that a side may be off. */
function matchesOf(pieces: readonly Piece[], panels: readonly CutPanel[], within: number): Match[] {
  const sorts = sortsOf(pieces);
  const offered = panels.map((panel, k) =>
    sorts.flatMap((piece, sort): Offer[] => {
      if (piece.sides.length !== panel.sides.length) return [];
      const turns = piece.sides.map((_, turn) => chiOf(panel, piece, turn, within));
      const chi2 = Math.min(...turns);
      const match = { panel: k, piece, turn: turns.indexOf(chi2), chi2 };
      return chi2 < Infinity ? [{ sort, match }] : [];
    }),
  );
  return assigned(offered).map(({ match }) => match);
}

interface Offer {
  readonly sort: number;
  readonly match: Match;
}

/** One of each sort of piece: those with the same sides from the cut on. */
function sortsOf(pieces: readonly Piece[]): Piece[] {
  const sorts = new Map<string, Piece>();
  for (const piece of pieces) {
    const key = piece.sides.map((x) => x.toFixed(6)).join();
    if (!sorts.has(key)) sorts.set(key, piece);
  }
  return [...sorts.values()];
}

/** Sum of squares that it costs when two panels are the same sort of piece. */
const SHARED = 16;

/** One offer for each panel that has any: the nearest, moved on as long as that makes the sum of
 * squares less, with what sharing a sort costs. */
function assigned(offered: readonly (readonly Offer[])[]): Offer[] {
  const nearest = (offers: readonly Offer[]): Offer | null =>
    offers.reduce<Offer | null>((a, b) => (a && a.match.chi2 <= b.match.chi2 ? a : b), null);
  const chosen = offered.map(nearest);
  const users = new Map<number, number>();
  for (const one of chosen) if (one) users.set(one.sort, (users.get(one.sort) ?? 0) + 1);
  for (let more = true, round = 0; more && round < 20; round++) {
    more = false;
    for (const [k, own] of chosen.entries()) {
      if (!own) continue;
      const cost = ({ sort, match }: Offer): number =>
        match.chi2 + ((users.get(sort) ?? 0) > (sort === own.sort ? 1 : 0) ? SHARED : 0);
      const best = (offered[k] as readonly Offer[]).reduce(
        (a, b) => (cost(b) < cost(a) ? b : a),
        own,
      );
      if (best === own) continue;
      users.set(own.sort, (users.get(own.sort) as number) - 1);
      users.set(best.sort, (users.get(best.sort) ?? 0) + 1);
      chosen[k] = best;
      more = true;
    }
  }
  return chosen.filter((one) => one !== null);
}

function chiOf({ sides, sds }: CutPanel, piece: Piece, turn: number, within: number): number {
  let chi2 = 0;
  for (let i = 0; i < sides.length; i++) {
    const j = (i + turn) % sides.length;
    const off = ((piece.sides[i] as number) - (sides[j] as number)) / (sds[j] as number);
    if (Math.abs(off) > within) return Number.POSITIVE_INFINITY;
    chi2 += off * off;
  }
  return chi2;
}

/** The plane near a height that fits the panels best; null where it explains none. */
function settled(
  shell: Shell,
  up: Vec3,
  near: number,
  panels: readonly CutPanel[],
): PlaneFound | null {
  let height = near;
  let slope = 0;
  for (const within of [12, 8, AGREE, AGREE]) {
    const matches = matchesOf(piecesAt(shell, up, height), panels, within);
    if (matches.length === 0) return null;
    const step = stepOf(shell, up, height, panels, matches);
    if (!step || !(Math.abs(step.by) < 0.05 * shell.radius)) return null;
    height += step.by;
    slope = step.slope;
  }
  const pieces = piecesAt(shell, up, height);
  const matches = matchesOf(pieces, panels, AGREE);
  if (matches.length === 0) return null;
  const chi2 = matches.reduce((sum, match) => sum + match.chi2, 0);
  const sides = matches.reduce((sum, { piece }) => sum + piece.sides.length, 0);
  const explained = panels.map((panel, k): Explained | null => {
    const match = matches.find((one) => one.panel === k);
    return match
      ? { cutSide: match.turn, from: match.piece.from, misfit: misfitOf(panel, match) }
      : null;
  });
  const radii = pieces.flatMap(({ base }) =>
    base.map((point) => distance(point, scale(up, dot(point, up)))),
  );
  return {
    up,
    height,
    heightSd: Math.max(1, Math.sqrt(chi2 / sides)) / Math.sqrt(slope),
    baseRadius: radii.reduce((sum, r) => sum + r, 0) / radii.length,
    explained,
    chi2,
    lacking: lackingOf(shell, pieces, panels),
  };
}

const misfitOf = ({ sides }: CutPanel, { piece, turn }: Match): number =>
  Math.sqrt(
    piece.sides.reduce(
      (sum, x, i) => sum + (x - (sides[(i + turn) % sides.length] as number)) ** 2,
      0,
    ) / sides.length,
  );

/** One step of least squares of the height, and the information on it, per m². */
function stepOf(
  shell: Shell,
  up: Vec3,
  height: number,
  panels: readonly CutPanel[],
  matches: readonly Match[],
): { readonly by: number; readonly slope: number } | null {
  const small = 1e-6 * shell.radius;
  const moved = new Map(piecesAt(shell, up, height + small).map((one) => [one.place, one]));
  let [top, slope] = [0, 0];
  for (const { panel, piece, turn } of matches) {
    const after = moved.get(piece.place);
    if (after?.sides.length !== piece.sides.length) continue;
    const { sides, sds } = panels[panel] as CutPanel;
    piece.sides.forEach((x, i) => {
      const j = (i + turn) % sides.length;
      const rate = ((after.sides[i] as number) - x) / small;
      const weight = 1 / (sds[j] as number) ** 2;
      top += weight * rate * ((sides[j] as number) - x);
      slope += weight * rate * rate;
    });
  }
  return slope > 0 ? { by: top / slope, slope } : null;
}

/** Sorts of pieces, no slivers, that are none of the panels. */
function lackingOf(shell: Shell, pieces: readonly Piece[], panels: readonly CutPanel[]): number {
  const lacking = new Set<string>();
  for (const piece of pieces) {
    if (Math.min(...piece.sides) < SLIVER * shell.radius) continue;
    const known = panels.some(
      (panel) =>
        panel.sides.length === piece.sides.length &&
        piece.sides.some((_, turn) => chiOf(panel, piece, turn, AGREE) < Infinity),
    );
    if (!known) lacking.add(piece.sides.map((x) => Math.round((200 * x) / shell.radius)).join());
  }
  return lacking.size;
}

/** Side → number that is the same for sides of one kind and length, where a rotation may keep it. */
export function lengthLabels(shell: Shell, sides: readonly (readonly number[])[]): number[] {
  const known = new Map<string, number>();
  return Array.from(shell.sidePlace, (place, s) => {
    const kind = shell.kind[place] as number;
    const length = sides[kind]?.[kindSide(shell, s as SideId)] ?? 0;
    const key = `${kind} ${length.toFixed(6)}`;
    const label = known.get(key) ?? known.size;
    known.set(key, label);
    return label;
  });
}
