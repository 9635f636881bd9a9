// The outlines of a shell, each a way up with a cut, with what each could be at best by every objective:
// what the search of fit-stock.ts goes by. A bound never promises less than a filling can reach.

import type { Kind } from '../../pile/kind.ts';
import type { Shell } from '../../shell/shell.ts';
import type { Arrangement } from '../arrangements.ts';
import { type Family, familyIndex } from '../families.ts';
import { LOW_ENOUGH } from './exposure.ts';
import type { DoorToChoose, Filled } from './fill.ts';
import { isRanked, type Objective, type Wishes } from './wishes.ts';

/** Objective → what an outline or its filling comes to; all are made to be small. */
export type Values = Readonly<Record<Objective, number>>;

/** An outline with what it could be at best. */
export interface Outline {
  readonly arrangement: Arrangement;
  readonly least: Values;
  /** The doors that it can have; null where they have not been looked for, or none is asked. */
  readonly doors: readonly DoorToChoose[] | null;
}

/** What there is of each family. */
export interface FamilyStock {
  /** Net place → its family. */
  readonly family: Int32Array;
  /** Family → good panels; Infinity where one of its kinds was not counted. */
  readonly good: readonly number[];
  readonly repair: readonly number[];
}

/** The stock of the families of a net's kinds. */
export function familyStock(
  shell: Shell,
  kinds: readonly Kind[],
  families: readonly Family[],
): FamilyStock {
  const familyOf = familyIndex(kinds, families);
  const sum = (of: (kind: Kind) => number): number[] =>
    families.map((one) => one.kinds.reduce((total, k) => total + of(kinds[k] as Kind), 0));
  const counted = families.map((one) => one.kinds.every((k) => (kinds[k] as Kind).counted));
  return {
    family: Int32Array.from(shell.kind, (kind) => familyOf[kind] as number),
    good: sum((kind) => kind.good).map((n, f) => (counted[f] ? n : Number.POSITIVE_INFINITY)),
    repair: sum((kind) => kind.repair),
  };
}

/** Heights and floors are ranked in steps of this part of the radius. */
const SAME_RISE = 1e-3;
/** Exposure of mended panels is ranked in steps of this. */
const SAME_EXPOSURE = 1e-3;

/** Whether a cut is only level once its lowest panels are sawn off at its highest base hub. */
export const isSawn = ({ flat }: Arrangement['cut'], { mayCut }: Pick<Wishes, 'mayCut'>): boolean =>
  mayCut && !flat;

/** From the ground to the topmost hub, metres. */
export const heightOf = (cut: Arrangement['cut'], wishes: Pick<Wishes, 'mayCut'>): number =>
  isSawn(cut, wishes) ? cut.height - (cut.baseZ.max - cut.baseZ.min) : cut.height;

/** As `heightOf`, from the mean of the base hubs. */
const riseOf = (cut: Arrangement['cut'], wishes: Wishes): number =>
  isSawn(cut, wishes) ? heightOf(cut, wishes) : cut.rise;

/** An outline before its doors are looked for: as if one could be had and saved all that lacks. */
export function outlineOf(
  arrangement: Arrangement,
  stock: FamilyStock,
  wishes: Wishes,
  radius: number,
): Outline {
  const { cut } = arrangement;
  const need = needsOf(cut.places, stock.family);
  const lack = wishes.door ? { bought: 0, gaps: 0 } : lacking(need, stock, wishes);
  const spares = [...need.keys()].reduce(
    (sum, f) => sum + Math.max(0, wishes.spares - (stock.good[f] as number)),
    0,
  );
  const mends = [...need.keys()].reduce((sum, f) => sum + (stock.repair[f] as number), 0);
  return {
    arrangement,
    doors: null,
    least: {
      'fewest bought': lack.bought,
      tallest: -Math.round(riseOf(cut, wishes) / (SAME_RISE * radius)),
      'largest floor': -Math.round(cut.floor.inside / (SAME_RISE * radius)),
      'fewest mended': 0,
      'fewest gaps': lack.gaps,
      'spares kept': spares,
      door: 0,
      'level base': cut.flat || isSawn(cut, wishes) ? 0 : 1,
      'mended low': wishes.mended ? -LOW_ENOUGH * mends : 0,
      'groups joined': 0,
    },
  };
}

/** The outline once its doors are known. */
export function withDoors(
  outline: Outline,
  doors: readonly DoorToChoose[],
  stock: FamilyStock,
  wishes: Wishes,
): Outline {
  const need = needsOf(outline.arrangement.cut.places, stock.family);
  const none = lacking(need, stock, wishes);
  const choices = doors.map(({ places }) => {
    const left = new Map(need);
    for (const p of places) {
      const f = stock.family[p] as number;
      left.set(f, (left.get(f) as number) - 1);
    }
    return lacking(left, stock, wishes);
  });
  const all = isRanked(wishes, 'door') ? [...choices, none] : choices;
  const least = {
    ...outline.least,
    'fewest bought': Math.min(...all.map(({ bought }) => bought)),
    'fewest gaps': Math.min(...all.map(({ gaps }) => gaps)),
    door: doors.length > 0 ? 0 : 1,
  };
  return { ...outline, doors, least };
}

/** What an outline comes to with a filling. */
export const valuesOf = ({ least }: Outline, filled: Filled, wishes: Wishes): Values => ({
  ...least,
  'fewest bought': filled.bought,
  'fewest mended': filled.mended,
  'fewest gaps': filled.gaps,
  'spares kept': filled.sparesLacking,
  door: wishes.door && filled.door === null ? 1 : 0,
  'mended low': Math.round(filled.mendedExposed / SAME_EXPOSURE) * SAME_EXPOSURE,
  'groups joined': filled.parted,
});

function needsOf(places: ArrayLike<number>, family: Int32Array): Map<number, number> {
  const need = new Map<number, number>();
  for (const p of Array.from(places)) {
    const f = family[p] as number;
    need.set(f, (need.get(f) ?? 0) + 1);
  }
  return need;
}

/** Panels to be bought and gaps to be left at least, for this need. */
function lacking(
  need: ReadonlyMap<number, number>,
  { good, repair }: FamilyStock,
  wishes: Wishes,
): { readonly bought: number; readonly gaps: number } {
  const kept = isRanked(wishes, 'spares kept') ? 0 : wishes.spares;
  let short = 0;
  for (const [f, n] of need) {
    const lacks = Math.max(0, n - Math.max(0, (good[f] as number) - kept));
    short += lacks - (wishes.mended ? Math.min(lacks, repair[f] as number) : 0);
  }
  return {
    bought: Math.max(0, short - wishes.mostGaps),
    gaps: Math.max(0, short - (wishes.mostBought ?? Number.POSITIVE_INFINITY)),
  };
}

/** The order asked for, then what it leaves out of what always counts. */
export const fullOrder = (order: readonly Objective[]): Objective[] => [
  ...new Set<Objective>([
    ...order,
    'fewest bought',
    'tallest',
    'fewest gaps',
    'fewest mended',
    'largest floor',
  ]),
];

/** Less than 0 where `a` comes first by the order. */
export function compareBy(order: readonly Objective[], a: Values, b: Values): number {
  for (const name of order) if (a[name] !== b[name]) return a[name] - b[name];
  return 0;
}

/** Whether `a` is at least as good as `b` in all. */
export const dominates = (order: readonly Objective[], a: Values, b: Values): boolean =>
  order.every((name) => a[name] <= b[name]);

/** Whether `a` is at least as good as `b` in all, and better in one. */
export const beats = (order: readonly Objective[], a: Values, b: Values): boolean =>
  dominates(order, a, b) && order.some((name) => a[name] < b[name]);
