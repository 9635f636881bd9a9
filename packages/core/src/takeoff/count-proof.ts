// The proof of count: panels, seams, hubs and bolts, each once by a formula with its numbers put in and
// once by adding up a list, so that any helper can check it with a pencil. The formulas are those of
// count-account.ts; for bolts: the holes of all panels less those on open sides, two holes to a bolt.

import type { Kind } from '../pile/kind.ts';
import { coursesOf } from '../shell/courses.ts';
import type { SideId } from '../shell/ids.ts';
import { kindSide, placesByKind, type Shell, sideCount } from '../shell/shell.ts';
import type { TakeoffSettings } from './schema.ts';
import { type HoleCounts, sidePatterns } from './seam-bolts.ts';
import type { TakeOff } from './take-off.ts';

/** One line of a list. */
export interface ProofItem {
  /** `kind 3L`, `1103.2 mm`, `6 corners`. */
  readonly of: string;
  readonly count: number;
}

/** One thing counted twice. */
export interface ProofRow {
  readonly what: 'panels' | 'seams' | 'hubs' | 'bolts';
  /** With its numbers put in: `(3 × 160 − 20) / 2`. Empty where it can't be told; `why` then says so. */
  readonly formula: string;
  readonly byFormula: number | null;
  readonly list: readonly ProofItem[];
  readonly byList: number;
  /** Null where there is no formula to hold the list against. */
  readonly agrees: boolean | null;
  /** What keeps it from being told; empty where nothing does. */
  readonly why: string;
}

/** The four rows, in the order of their names in `ProofRow`. `takeOff` is that of the same shell, kinds,
 * settings and counts. */
export function countProof(
  shell: Shell,
  kinds: readonly Kind[],
  takeOff: TakeOff,
  settings: TakeoffSettings,
  counts: HoleCounts = [],
): readonly ProofRow[] {
  return [
    panelsRow(shell, kinds),
    seamsRow(shell, takeOff),
    hubsRow(takeOff),
    boltsRow(shell, kinds, takeOff, settings, counts),
  ];
}

const total = (list: readonly ProofItem[]): number =>
  list.reduce((sum, { count }) => sum + count, 0);

function rowOf(
  what: ProofRow['what'],
  formula: string,
  byFormula: number,
  list: readonly ProofItem[],
): ProofRow {
  const byList = total(list);
  return { what, formula, byFormula, list, byList, agrees: byFormula === byList, why: '' };
}

function panelsRow(shell: Shell, kinds: readonly Kind[]): ProofRow {
  const courses = coursesOf(shell).counts;
  const places = placesByKind(shell, kinds.length);
  const list = kinds.flatMap(({ id }, k) =>
    (places[k] as number) > 0 ? [{ of: `kind ${id}`, count: places[k] as number }] : [],
  );
  const sum = courses.reduce((all, n) => all + n, 0);
  return rowOf('panels', `${courses.join(' + ')}, course by course`, sum, list);
}

function seamsRow(shell: Shell, { account, seams }: TakeOff): ProofRow {
  const { places, openSides, allTriangles } = account;
  const sides = allTriangles ? `3 × ${places}` : `${sideCount(shell)} sides`;
  return rowOf(
    'seams',
    `(${sides} − ${openSides} open sides) / 2`,
    account.seams.byFormula,
    seams.map((size) => ({ of: `${(size.length * 1000).toFixed(1)} mm`, count: size.seams })),
  );
}

function hubsRow({ account, hubs }: TakeOff): ProofRow {
  const { places, openSides, pieces, rims, allTriangles } = account;
  const { byFormula } = account.hubs;
  // With triangles, one piece and one rim: 2 − 1 + (3F − B)/2 + B − F = 1 + (F + B)/2.
  const isDome = allTriangles && pieces === 1 && rims === 1;
  const dome = 1 + (places + openSides) / 2;
  const general = 2 * pieces - rims + account.seams.byFormula + openSides - places;
  const touches = general - byFormula;
  const formula =
    isDome && dome === byFormula
      ? `1 + (${places} + ${openSides}) / 2`
      : `2 × ${pieces} − ${rims} + ${account.seams.byFormula} + ${openSides} − ${places}${touches === 0 ? '' : ` − ${touches}`}`;
  return rowOf(
    'hubs',
    formula,
    byFormula,
    hubs.map((size) => ({
      of: `${size.corners} corners${size.rim ? ', at the rim' : ''}`,
      count: size.hubs,
    })),
  );
}

function boltsRow(
  shell: Shell,
  kinds: readonly Kind[],
  takeOff: TakeOff,
  settings: TakeoffSettings,
  counts: HoleCounts,
): ProofRow {
  const list = takeOff.seams.flatMap(({ length, bolts, known }) =>
    known > 0 ? [{ of: `${(length * 1000).toFixed(1)} mm`, count: bolts }] : [],
  );
  const byList = total(list);
  const { seamsUnknown, disagreements, seamsFromOneSide } = takeOff;
  const differ = disagreements.reduce((sum, { seams }) => sum + seams, 0);
  const why = [
    seamsUnknown > 0 ? `holes of ${seamsUnknown} seams are not known` : '',
    differ > 0 ? `the two sides of ${differ} seams are said to differ` : '',
    seamsFromOneSide > 0 ? `${seamsFromOneSide} seams are known from one side alone` : '',
  ].filter((words) => words !== '');
  if (why.length > 0)
    return {
      what: 'bolts',
      formula: '',
      byFormula: null,
      list,
      byList,
      agrees: null,
      why: why.join('; '),
    };
  const patterns = sidePatterns(kinds, settings, counts);
  const places = placesByKind(shell, kinds.length);
  let open = 0;
  for (let s = 0; s < sideCount(shell); s++) {
    const kind = shell.kind[shell.sidePlace[s] as number] as number;
    if ((shell.mate[s] as number) < 0)
      open += patterns[kind]?.[kindSide(shell, s as SideId)]?.holes ?? 0;
  }
  const each = kinds.flatMap((_, k) => {
    const holes = (patterns[k] ?? []).reduce((sum, one) => sum + (one?.holes ?? 0), 0);
    return (places[k] as number) > 0 ? [{ places: places[k] as number, holes }] : [];
  });
  const holes = each.reduce((sum, one) => sum + one.places * one.holes, 0);
  const words = each.map((one) => `${one.places} × ${one.holes}`).join(' + ');
  return rowOf('bolts', `(${words} holes − ${open} on open sides) / 2`, (holes - open) / 2, list);
}
