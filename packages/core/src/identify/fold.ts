// A net folded up by its rotations, as plain data: one piece for each orbit of places, sides glued in
// pairs. Where an axis of order m runs through a hub, the corners folded there sum to 2π / m; through
// the middle of a panel, only one m-th of the panel is left; through the middle of a seam (m = 2),
// the side is glued to itself. A whole 320-place icosahedral net folds up to six pieces.

/** The rotations that a net is folded by. */
export interface Fold {
  readonly name: string;
  /** Number of rotations. */
  readonly order: number;
  /** Orders of its axes, one for each orbit of poles, the highest first. */
  readonly axes: readonly number[];
}

/** A folded net, closed. Sides are numbered through all pieces. */
export interface FoldedNet {
  readonly fold: Fold;
  /** Piece → kind. */
  readonly pieceKind: readonly number[];
  /** Piece → order of the axis through its middle, 1 for none. */
  readonly pieceAxis: readonly number[];
  /** Side → kind-side of the corner model. */
  readonly kindSide: readonly number[];
  readonly piece: readonly number[];
  /** Side → the next side of its piece, anticlockwise. */
  readonly next: readonly number[];
  /** Side → the side it is glued to; itself where an axis runs through the seam. */
  readonly mate: readonly number[];
  /** Side → order of the axis through the hub where it starts, 1 for none. */
  readonly hubAxis: readonly number[];
  /** Misfit of all its seams and stars. */
  readonly chi2: number;
  /** Number of seams and stars that said something. */
  readonly equations: number;
}

/** Where the growth of a folded net starts: one piece with the highest axis on a corner of it or
 * through its middle, or just any piece where the fold has no rotation. */
export interface FoldSeed {
  /** Kind-side whose corner lies on the axis, or first side of the kind that the axis pierces, or of
   * any kind where there is no axis. */
  readonly kindSide: number;
  readonly through: 'hub' | 'panel' | 'nothing';
  /** Order of that axis; the fold's highest unless told. */
  readonly axis?: number;
}

/** The corners (sides) around each hub of a closed folded net, anticlockwise. */
export function foldedStars(previous: readonly number[], mate: readonly number[]): number[][] {
  const stars: number[][] = [];
  const seen = new Set<number>();
  for (let side = 0; side < mate.length; side++) {
    if (seen.has(side)) continue;
    const star: number[] = [];
    let corner = side;
    do {
      seen.add(corner);
      star.push(corner);
      corner = mate[previous[corner] as number] as number;
    } while (corner !== side);
    stars.push(star);
  }
  return stars;
}

/** Whether the pieces make one sphere when unfolded: Euler's formula, where hubs, seams and panels
 * count by the part of them that is left and together make 2 / (number of rotations). */
export function isFoldedSphere(
  order: number,
  previous: readonly number[],
  mate: readonly number[],
  hubAxis: readonly number[],
  pieceAxis: readonly number[],
): boolean {
  let sum = -mate.length / 2;
  for (const star of foldedStars(previous, mate)) sum += 1 / (hubAxis[star[0] as number] as number);
  for (const axis of pieceAxis) sum += 1 / axis;
  return Math.abs(sum - 2 / order) < 1e-9;
}
