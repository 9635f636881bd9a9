// Joined groups against marks on places: how likely a group's run of marks is under a scheme, wherever
// in the net it may have stood, and where it fits best.

import type { GroupRow } from '../pile/schema.ts';
import { readMark } from '../pile/written-mark.ts';
import type { HubId } from '../shell/ids.ts';
import { placeCount, type Shell } from '../shell/shell.ts';
import { fansOf } from '../shell/stars.ts';
import type { MarkTally } from './mark-tally.ts';

/** What a place bears: a mark (index); none known; or any of its family's by their shares. */
export const NO_MARK = -1;
/** See {@link NO_MARK}. */
export const ANY_OF_FAMILY = -2;

/** Where a group might have stood: the places under its panels, anticlockwise around a hub. */
export interface Stand {
  readonly hub: HubId;
  readonly places: readonly number[];
}

/** A group with all its stands. */
export interface StandingGroup {
  readonly row: GroupRow;
  readonly names: readonly Name[];
  readonly stands: readonly Stand[];
}

/** What a name in a group says. */
interface Name {
  /** Families that it names as a kind; null where it is a mark. */
  readonly families: ReadonlySet<number> | null;
  /** Chance of the name by the mark that the place bears (by its number), by its family where it may
   * bear any, and where it bears none. */
  readonly byMark: readonly number[];
  readonly byFamily: readonly number[];
  readonly unmarked: number;
  /** Marks that it may be without being wrong; and whether it may be any. */
  readonly means: ReadonlySet<number>;
  readonly open: boolean;
}

/** Chance of a kind named in a group that is not the kind there. */
const WRONG_KIND = 0.02;

/** Groups with their stands. `family`: place → its family. */
export function standingGroups(
  shell: Shell,
  groups: readonly GroupRow[],
  tally: MarkTally,
  familyOf: (id: string) => number | undefined,
): StandingGroup[] {
  const stars = fansOf(shell)
    .flat()
    .map(({ hub, corners, closed }) => ({
      hub,
      closed,
      places: corners.map((side) => shell.sidePlace[side] as number),
    }));
  return groups.map((row) => {
    const n = row.around.length;
    const stands = stars.flatMap(({ hub, closed, places }): Stand[] => {
      if (row.closed ? !closed || places.length !== n : places.length < n) return [];
      const starts = closed ? places.length : places.length - n + 1;
      return Array.from({ length: starts }, (_, start) => ({
        hub,
        places: Array.from({ length: n }, (_, i) => places[(start + i) % places.length] as number),
      }));
    });
    return { row, names: row.around.map((name) => nameOf(name, tally, familyOf)), stands };
  });
}

function nameOf(
  text: string,
  tally: MarkTally,
  familyOf: (id: string) => number | undefined,
): Name {
  const { marks, wrong } = tally;
  const kind = familyOf(text);
  const none = { byMark: [], byFamily: [], unmarked: 1, means: new Set<number>(), open: false };
  if (kind !== undefined && !marks.includes(text)) return { families: new Set([kind]), ...none };
  const written = readMark(text);
  const slip = wrong / Math.max(1, marks.length - 1);
  const open = written.marks.length === 0 ? 1 : written.open ? 0.1 : 0;
  const byMark = marks.map((mark) =>
    Math.max(open, written.marks.includes(mark) ? 1 - wrong : slip),
  );
  const byFamily = tally.real.map((own, f) => {
    const all = own.reduce((sum, m) => sum + ((tally.carried[m] as number[])[f] as number), 0);
    return own.reduce((sum, m) => {
      const share = all > 0 ? ((tally.carried[m] as number[])[f] as number) / all : 1 / own.length;
      return sum + share * (byMark[m] as number);
    }, 0);
  });
  return {
    families: null,
    byMark,
    byFamily,
    unmarked: Math.max(open, 1 / (1 + marks.length)),
    means: new Set(written.marks.map((mark) => marks.indexOf(mark))),
    open: written.open,
  };
}

/** Chance of a name where a place bears `mark` and is of `family`. */
function chance(name: Name, mark: number, family: number): number {
  if (name.families) return name.families.has(family) ? 1 : WRONG_KIND;
  if (mark === NO_MARK) return name.unmarked;
  return mark === ANY_OF_FAMILY ? (name.byFamily[family] as number) : (name.byMark[mark] as number);
}

/** Natural logarithm of the chance of a group's run, its stand unknown; 0 where it has none. */
export function groupWeight(
  group: StandingGroup,
  marks: ArrayLike<number>,
  family: ArrayLike<number>,
): number {
  if (group.stands.length === 0) return 0;
  let sum = 0;
  for (const { places } of group.stands) {
    let product = 1;
    for (let i = 0; i < places.length && product > 1e-12; i++) {
      const p = places[i] as number;
      product *= chance(group.names[i] as Name, marks[p] as number, family[p] as number);
    }
    sum += product;
  }
  return group.row.count * Math.log(Math.max(sum / group.stands.length, 1e-12));
}

/** The stands of a group that matter whatever the marks of the families in `split` are: those on which
 * it is not a thousand times less likely than on the best. */
export function likelyStands(
  group: StandingGroup,
  marks: ArrayLike<number>,
  family: ArrayLike<number>,
  split: ReadonlySet<number>,
  real: readonly (readonly number[])[],
): StandingGroup {
  const bounds = group.stands.map(({ places }) =>
    places.reduce((product, p, i) => {
      const name = group.names[i] as Name;
      const f = family[p] as number;
      const options = split.has(f) ? (real[f] as readonly number[]) : [marks[p] as number];
      return product * Math.max(...options.map((mark) => chance(name, mark, f)));
    }, 1),
  );
  const best = Math.max(...bounds);
  return { ...group, stands: group.stands.filter((_, i) => (bounds[i] as number) >= best / 1000) };
}

/** Where a group stands best, how many stands are as good, and which of its panels do not suit it. */
export function bestStand(
  group: StandingGroup,
  marks: ArrayLike<number>,
  family: ArrayLike<number>,
  real: readonly (readonly number[])[],
): { readonly stand: Stand; readonly alike: number; readonly wrong: readonly number[] } | null {
  let best: { stand: Stand; alike: number; wrong: number[] } | null = null;
  for (const stand of group.stands) {
    const wrong = stand.places.flatMap((p, i) =>
      suits(group.names[i] as Name, marks[p] as number, family[p] as number, real) ? [] : [i],
    );
    if (!best || wrong.length < best.wrong.length) best = { stand, alike: 1, wrong };
    else if (wrong.length === best.wrong.length) best.alike++;
  }
  return best;
}

/** Whether a name may stand there without being wrong. */
function suits(
  { families, means, open }: Name,
  mark: number,
  family: number,
  real: readonly (readonly number[])[],
): boolean {
  if (families) return families.has(family);
  if (open) return true;
  return mark === ANY_OF_FAMILY
    ? (real[family] as readonly number[]).some((m) => means.has(m))
    : means.has(mark);
}

/** Marks of all places as an array, before a scheme splits any family. */
export function plainMarks(
  shell: Shell,
  family: ArrayLike<number>,
  real: readonly (readonly number[])[],
): Int32Array {
  return Int32Array.from({ length: placeCount(shell) }, (_, p) => {
    const own = real[family[p] as number] ?? [];
    return own.length === 0 ? NO_MARK : own.length === 1 ? (own[0] as number) : ANY_OF_FAMILY;
  });
}
