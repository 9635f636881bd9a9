// The paper net of a shell: its pieces with their tabs and folds, laid on sheets. Everything here is
// geometry; the drawing is in net-sheets.ts. Whole micrometres on the sheet, x right, y up, seen from
// outside: the printed face is the outer one.

import { dihedralAngles } from '../shell/angles.ts';
import type { PlaceId, SideId } from '../shell/ids.ts';
import type { Shell } from '../shell/shell.ts';
import { seamOfSides } from '../shell/symmetry.ts';
import type { GridPoint } from './grid.ts';
import { boundsOf, MICRON } from './grid.ts';
import { fittingTurns, type Growing, netGround } from './grow.ts';
import { laidPoint, nest, type Part } from './nest.ts';
import { netPieces } from './pieces.ts';
import { type NetTab, netTabs } from './tabs.ts';

/** Which way a fold goes, seen from the printed face: a ridge, a valley, or none at all. */
export type FoldWay = 'mountain' | 'valley' | 'flat';

/** A panel of the net where it lies. */
export interface NetFace {
  readonly place: PlaceId;
  readonly corners: readonly GridPoint[];
}

/** A fold: between two panels of a piece, or at the root of a tab. */
export interface NetFold {
  readonly side: SideId;
  readonly ends: readonly [GridPoint, GridPoint];
  /** Between the two panels, inside the shell, radians. */
  readonly dihedral: number;
  readonly way: FoldWay;
  /** True where a tab is folded. */
  readonly atTab: boolean;
}

/** A cut side without a tab. */
export interface NetEdge {
  readonly side: SideId;
  readonly ends: readonly [GridPoint, GridPoint];
  /** What meets it: the tab of its neighbour, tape, or nothing (the ground, a door). */
  readonly meets: 'tab' | 'tape' | 'nothing';
}

/** One flat piece on its sheet. */
export interface NetPiece {
  readonly sheet: number;
  readonly faces: readonly NetFace[];
  readonly tabs: readonly NetTab[];
  readonly folds: readonly NetFold[];
  readonly edges: readonly NetEdge[];
}

/** A net, laid on its sheets. */
export interface PaperNet {
  readonly ok: true;
  /** 1 : scale. */
  readonly scale: number;
  readonly pieces: readonly NetPiece[];
  readonly sheets: number;
  /** No way to cut it up gives fewer pieces. */
  readonly leastPieces: number;
  /** Seams that are closed with tape, for want of room for a tab. */
  readonly taped: readonly SideId[];
}

/** Why there is no net at that scale. */
export interface NoNet {
  readonly ok: false;
  readonly reason: 'panel larger than the room' | 'no places';
  /** The place that does not fit, where it is one. */
  readonly place: PlaceId | null;
}

/** How the net is made. */
export interface PaperNetOptions {
  /** 1 : scale. */
  readonly scale: number;
  /** Width and height of what may be printed on, millimetres. */
  readonly room: readonly [number, number];
  /** Height of a tab, millimetres. */
  readonly tab: number;
  /** Places that are left out on purpose (a door), by index. */
  readonly leftOut?: readonly number[];
  /** Place → its course, where the net is to be cut into courses; absent: the fewest pieces. */
  readonly courses?: ArrayLike<number>;
  readonly tries?: number;
}

/** Between two pieces on one sheet, millimetres. */
const GAP = 2;

/** What a room leaves for a piece without its tabs, millimetres. */
export const roomWithin = (
  [width, height]: readonly [number, number],
  tab: number,
): readonly [number, number] => [width - 2 * tab - GAP - 1, height - 2 * tab - GAP - 1];

/** Folds flatter than this are no folds, radians: a twentieth of a degree. */
const FLAT_FOLD = 1e-3;

/** The net of a shell on sheets of paper, or why there is none. */
export function paperNet(shell: Shell, options: PaperNetOptions): PaperNet | NoNet {
  const { scale, room, tab, leftOut = [], courses } = options;
  const inner = roomWithin(room, tab);
  const out = new Set(leftOut);
  const places = Array.from(shell.kind.keys()).filter((p) => !out.has(p));
  if (places.length === 0) return { ok: false, reason: 'no places', place: null };
  const ground = netGround(shell, scale, inner);
  const cut = netPieces(ground, {
    places,
    ...(courses && { groups: courses }),
    ...(options.tries !== undefined && { tries: options.tries }),
  });
  if (cut === null)
    return {
      ok: false,
      reason: 'panel larger than the room',
      place: largest(ground.panels, places),
    };
  const { pieces, least } = cut;
  const { tabs, taped } = netTabs(shell, pieces, tab * MICRON);
  const parts = pieces.map((piece, i): Part => {
    const turns = fittingTurns(piece.least, piece.most, ground.room).map((turn) => -turn);
    return {
      shapes: [...piece.laid.map((one) => one.corners), ...(tabs[i] ?? []).map((t) => t.corners)],
      turns: piece.laid.length > 40 ? turns : [...turns, ...turns.map((turn) => turn + 180)],
    };
  });
  const nested = nest(parts, {
    width: room[0] * MICRON,
    height: room[1] * MICRON,
    gap: GAP * MICRON,
    cell: MICRON,
  });
  if (nested === null) throw new Error('a piece that fits its room fits no sheet');
  const context = {
    shell,
    dihedrals: dihedralAngles(shell),
    seams: seamOfSides(shell),
    taped: new Set<number>(taped),
    inNet: new Set(places),
  };
  return {
    ok: true,
    scale,
    pieces: pieces.map((piece, i) => {
      const laid = nested.laid[i] as (typeof nested.laid)[number];
      const move = (point: GridPoint): GridPoint => laidPoint(point, laid);
      return { sheet: laid.sheet, ...pieceOf(context, piece, tabs[i] ?? [], move) };
    }),
    sheets: nested.sheets,
    leastPieces: least,
    taped,
  };
}

interface Context {
  readonly shell: Shell;
  readonly dihedrals: Float64Array;
  readonly seams: Int32Array;
  readonly taped: ReadonlySet<number>;
  readonly inNet: ReadonlySet<number>;
}

function pieceOf(
  { shell, dihedrals, seams, taped, inNet }: Context,
  { laid }: Growing,
  tabs: readonly NetTab[],
  move: (point: GridPoint) => GridPoint,
): Omit<NetPiece, 'sheet'> {
  const folded = new Set(laid.flatMap((one) => (one.against === null ? [] : [one.against])));
  const tabbed = new Set(tabs.map(({ side }) => side));
  const folds: NetFold[] = [];
  const edges: NetEdge[] = [];
  const here = new Map(laid.map((one) => [one.place, one]));
  for (const { place, corners } of laid)
    corners.forEach((corner, i) => {
      const side = ((shell.placeStart[place] as number) + i) as SideId;
      const mate = shell.mate[side] as SideId;
      const ends = [move(corner), move(corners[(i + 1) % corners.length] as GridPoint)] as const;
      const seam = seams[side] as number;
      const dihedral = seam < 0 ? Math.PI : (dihedrals[seam] as number);
      const way = wayOf(dihedral);
      if (folded.has(side)) folds.push({ side, ends, dihedral, way, atTab: false });
      else if (tabbed.has(side)) folds.push({ side, ends, dihedral, way, atTab: true });
      else if (mate < 0 || !folded.has(mate)) {
        // A neighbour that is left out has no tab and no tape: a door stays open.
        const alone = mate < 0 || !inNet.has(shell.sidePlace[mate] as number);
        const byTape = taped.has(side) || taped.has(mate);
        edges.push({ side, ends, meets: alone ? 'nothing' : byTape ? 'tape' : 'tab' });
      }
    });
  return {
    faces: [...here.values()].map(({ place, corners }) => ({ place, corners: corners.map(move) })),
    tabs: tabs.map((one) => ({ ...one, corners: one.corners.map(move) })),
    folds,
    edges,
  };
}

const wayOf = (dihedral: number): FoldWay =>
  Math.abs(dihedral - Math.PI) < FLAT_FOLD ? 'flat' : dihedral < Math.PI ? 'mountain' : 'valley';

function largest(
  panels: readonly (readonly (readonly [number, number])[])[],
  places: number[],
): PlaceId {
  const size = (p: number): number => {
    const [left, bottom, right, top] = boundsOf(panels[p] as GridPoint[]);
    return Math.hypot(right - left, top - bottom);
  };
  return places.reduce((best, p) => (size(p) > size(best) ? p : best)) as PlaceId;
}
