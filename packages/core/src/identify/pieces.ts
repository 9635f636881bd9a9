// The pieces of a folded net while it is glued: kinds laid down, sides joined in pairs, and the runs of
// corners that this makes around hubs. The last piece laid can be taken up again, a joint parted.

import type { CornerModel } from './corner-model.ts';
import type { FoldedNet } from './fold.ts';

/** Corner angles by kind-side and their standard deviations, radians. */
export interface CornerBelief {
  readonly angles: Float64Array;
  readonly sds: Float64Array;
}

/** The corners around one hub, as far as they are joined. */
export interface HubRun {
  readonly closed: boolean;
  readonly angle: number;
  /** Sum of the corners' standard deviations: a bound of the sum's own. */
  readonly sd: number;
  /** Open side at the clockwise end. */
  readonly from: number;
  /** Open side at the anticlockwise end. */
  readonly to: number;
}

/** Pieces and the sides they own, numbered through all of them. */
export class Pieces {
  readonly pieceKind: number[] = [];
  readonly pieceAxis: number[] = [];
  /** Side → kind-side of the corner model. */
  readonly kindSide: number[] = [];
  readonly piece: number[] = [];
  readonly next: number[] = [];
  readonly previous: number[] = [];
  /** Side → the side it is joined to, −1 where it is open. */
  readonly mate: number[] = [];
  /** Kind → pieces of it. */
  readonly used: number[];

  constructor(private readonly model: CornerModel) {
    this.used = new Array(model.first.length - 1).fill(0);
  }

  /** Adds a piece whose middle lies on an axis of the given order; returns its first side. */
  add(kind: number, axis: number): number {
    const first = this.mate.length;
    const start = this.model.first[kind] as number;
    const count = ((this.model.first[kind + 1] as number) - start) / axis;
    for (let i = 0; i < count; i++) {
      this.kindSide.push(start + i);
      this.piece.push(this.pieceKind.length);
      this.next.push(first + ((i + 1) % count));
      this.previous.push(first + ((i + count - 1) % count));
      this.mate.push(-1);
    }
    this.pieceKind.push(kind);
    this.pieceAxis.push(axis);
    this.used[kind] = (this.used[kind] as number) + 1;
    return first;
  }

  removeLast(): void {
    const kind = this.pieceKind.pop() as number;
    const axis = this.pieceAxis.pop() as number;
    const start = this.model.first[kind] as number;
    const count = ((this.model.first[kind + 1] as number) - start) / axis;
    for (const list of [this.kindSide, this.piece, this.next, this.previous, this.mate])
      list.length -= count;
    this.used[kind] = (this.used[kind] as number) - 1;
  }

  join(side: number, mate: number): void {
    this.mate[side] = mate;
    this.mate[mate] = side;
  }

  part(side: number, mate: number): void {
    this.mate[side] = -1;
    this.mate[mate] = -1;
  }

  /** The corners (sides) around the hub where a side starts, anticlockwise; a closed run only. */
  cornersAround(side: number): number[] {
    const corners: number[] = [];
    let corner = side;
    do {
      corners.push(corner);
      corner = this.mate[this.previous[corner] as number] as number;
    } while (corner !== side);
    return corners;
  }

  /** The run of corners around the hub where a side starts. */
  hubRun(side: number, corners: CornerBelief): HubRun {
    let corner = side;
    let angle = 0;
    let sd = 0;
    for (;;) {
      const own = this.kindSide[corner] as number;
      angle += corners.angles[own] as number;
      sd += corners.sds[own] as number;
      const edge = this.previous[corner] as number;
      const across = this.mate[edge] as number;
      if (across < 0) {
        return this.clockwise(side, { closed: false, angle, sd, from: side, to: edge }, corners);
      }
      corner = across;
      if (corner === side) return { closed: true, angle, sd, from: side, to: side };
    }
  }

  /** Completes an open run on its clockwise end, beyond the side it was started from. */
  private clockwise(side: number, run: HubRun, corners: CornerBelief): HubRun {
    let { angle, sd } = run;
    let edge = side;
    while ((this.mate[edge] as number) >= 0) {
      edge = this.next[this.mate[edge] as number] as number;
      const own = this.kindSide[edge] as number;
      angle += corners.angles[own] as number;
      sd += corners.sds[own] as number;
    }
    return { ...run, angle, sd, from: edge };
  }

  /** What a finished net keeps of the pieces. */
  copy(): Pick<FoldedNet, 'pieceKind' | 'pieceAxis' | 'kindSide' | 'piece' | 'next' | 'mate'> {
    return {
      pieceKind: [...this.pieceKind],
      pieceAxis: [...this.pieceAxis],
      kindSide: [...this.kindSide],
      piece: [...this.piece],
      next: [...this.next],
      mate: [...this.mate],
    };
  }
}
