// What the painted marks mean in a shape that was found: which places each mark stands for, where
// marks are finer or coarser than shape, which panels and groups contradict, and what unmarked and
// faded panels were. Marks are claims: no place or kind is changed for them.

import type { Kind } from '../pile/kind.ts';
import type { PileKinds } from '../pile/kinds.ts';
import type { Pile } from '../pile/schema.ts';
import type { HubId, PlaceId } from '../shell/ids.ts';
import { alikeness, labelsOf } from './alike.ts';
import { firstSides } from './corner-model.ts';
import type { MarkRule } from './mark-divisions.ts';
import {
  ANY_OF_FAMILY,
  bestStand,
  NO_MARK,
  type StandingGroup,
  standingGroups,
} from './mark-groups.ts';
import { type MarkScheme, markSchemes, rotationsIn } from './mark-schemes.ts';
import { LEAST_PANELS, type MarkTally, markTally, type TalliedPanel } from './mark-tally.ts';
import { kindsOfShape, type Shape } from './shape.ts';

/** What one mark stands for. */
export interface MarkStanding {
  readonly mark: string;
  /** Kinds (ids; several where tape can't tell them apart) that truly carry it, with the panels that
   * do and the places it stands for; `places` empty where no rule says which. */
  readonly on: readonly {
    readonly kinds: readonly string[];
    readonly panels: number;
    readonly places: readonly PlaceId[];
  }[];
  /** `shape`: this kind and no other mark on it. `finer`: one of several marks of one kind. `coarser`:
   * on several kinds. `both`. `nothing`: no kind truly has it. */
  readonly as: 'shape' | 'finer' | 'coarser' | 'both' | 'nothing';
}

/** Marks that part panels of equal sides. */
export interface FinerMarks {
  /** Kinds (ids) that they are on; by tape all their panels are interchangeable. */
  readonly kinds: readonly string[];
  readonly marks: readonly string[];
  /** By what they differ, as the best scheme has it; marks are indices in {@link MarkAccount.names}. */
  readonly rule: MarkRule;
  /** Of this way to share out its places; of all those that were weighed. */
  readonly probability: number;
  /** Ways to share out the places at least a third as probable as the best, that one too. */
  readonly ways: number;
}

/** A mark that a panel may bear, with its probability. */
export interface LikelyMark {
  readonly mark: string;
  readonly probability: number;
}

/** One panel's mark against its sides. */
export interface PanelMark {
  /** Indices in the pile's list of readings. */
  readonly readings: readonly number[];
  readonly tag: string | null;
  readonly count: number;
  /** Its kind by tape, null where that is not settled. */
  readonly kind: string | null;
  /** What is written of its mark; several where one of them, none where it has none. */
  readonly written: readonly string[];
  /** `contradicts`: no panel with these sides should bear it. `unexplained`: it stands for nothing.
   * `no place`: the shape has no place for its kind. */
  readonly as: 'fits' | 'contradicts' | 'unexplained' | 'faded' | 'unmarked' | 'no place';
  /** What mark it should bear, likeliest first; its own alone where that fits; empty where its kind has
   * no marks or no place. */
  readonly likely: readonly LikelyMark[];
}

/** A joined group's marks against the scheme. */
export interface GroupMarks {
  /** Index in the pile's list of groups. */
  readonly group: number;
  /** Whether the scheme has a hub where its run occurs. */
  readonly held: boolean;
  /** A hub where it fits best, and how many other stands are as good; null where it is too long for any
   * hub. */
  readonly hub: HubId | null;
  readonly others: number;
  /** Its panels (from 0) that do not suit that hub, with the mark and kinds there; mark null where the
   * scheme has none or any. */
  readonly wrong: readonly {
    readonly at: number;
    readonly shouldBe: string | null;
    readonly kinds: readonly string[];
  }[];
}

/** What the marks of a pile say in a shape. */
export interface MarkAccount {
  /** All marks of the pile. */
  readonly names: readonly string[];
  /** Place → its mark in the best scheme, null where no scheme says. */
  readonly markOf: readonly (string | null)[];
  /** `none`: nothing is marked. `settled`: the scheme is all but sure. `open`: several explain the
   * marks about as well, no rule does, or some mark stands for nothing. */
  readonly state: 'none' | 'settled' | 'open';
  /** Of the best scheme. */
  readonly probability: number;
  /** Schemes at least a third as probable as the best, that one too. */
  readonly schemes: number;
  /** Chance that a mark of this pile is wrong. */
  readonly wrongShare: number;
  readonly marks: readonly MarkStanding[];
  readonly finer: readonly FinerMarks[];
  readonly panels: readonly PanelMark[];
  readonly groups: readonly GroupMarks[];
}

/** From this probability a scheme is settled. */
const SETTLED = 0.9;
/** Schemes this share as probable as the best are as good. */
const AS_GOOD = 1 / 3;
/** Sides nearer than this many deviations are alike, as in the identification. */
const ALIKE = 2;
/** Least probability of a listed mark. */
const LISTED = 0.02;

/** The account of a pile's marks in a shape found from it. `kinds` are the question's. Nothing is
 * stored: a person who overrules it edits the mark of a reading or a row. */
export function marksInNet(
  shape: Shape,
  kinds: readonly Kind[],
  pile: Pile,
  worked: PileKinds,
): MarkAccount {
  const net = familiesIn(shape, kinds);
  const tally = markTally(pile, worked, net.ids.length, net.familyOf);
  const groups = standingGroups(shape.shell, pile.groups, tally, net.familyOf);
  const hasSplit = tally.real.some((own) => own.length > 1);
  const rotations = hasSplit ? rotationsIn(shape.shell, net.labels) : [];
  const schemes = markSchemes(shape.shell, net.family, rotations, tally, groups);
  const [best] = schemes as [MarkScheme];
  const name = (mark: number): string | null => (mark < 0 ? null : (tally.marks[mark] as string));
  const isMarked = tally.carried.some((row) => total(row) > 0);
  const isSettled =
    best.probability >= SETTLED &&
    [...best.divisions.values()].every(({ rule }) => rule.by !== 'none') &&
    tally.carried.every((row, m) => isReal(tally, m) || total(row) < LEAST_PANELS);
  return {
    names: tally.marks,
    markOf: Array.from(best.marks, name),
    state: !isMarked ? 'none' : isSettled ? 'settled' : 'open',
    probability: best.probability,
    schemes: schemes.filter((one) => one.probability >= AS_GOOD * best.probability).length,
    wrongShare: tally.wrong,
    marks: tally.marks.map((_, m) => standing(m, tally, net, best)),
    finer: [...best.divisions.keys()].map((f) => finerMarks(f, tally, net, schemes)),
    panels: panelMarks(tally, net, schemes),
    groups: groups.map((group, g) => groupMarks(group, g, tally, net, best)),
  };
}

const total = (row: readonly number[]): number => row.reduce((sum, n) => sum + n, 0);

const isReal = ({ real }: MarkTally, mark: number): boolean =>
  real.some((own) => own.includes(mark));

/** The families of kinds in a shape. */
interface Families {
  /** Place → family. */
  readonly family: Int32Array;
  /** Side → label, for the rotations. */
  readonly labels: Int32Array;
  /** Family → ids of its kinds. */
  readonly ids: readonly (readonly string[])[];
  /** Family → number of places. */
  readonly places: readonly number[];
  /** Undefined for kinds without a place. */
  readonly familyOf: (id: string) => number | undefined;
}

function familiesIn(shape: Shape, asked: readonly Kind[]): Families {
  const kinds = kindsOfShape(shape, asked);
  const sds = asked.flatMap((kind) => kind.sideSds);
  const noise = ALIKE * Math.sqrt(sds.reduce((sum, sd) => sum + sd * sd, 0) / sds.length);
  const alike = alikeness(shape.fittedSides, firstSides(shape.fittedSides), noise);
  // A kind whose face was not noted and its other hand hold the same panels.
  const own = kinds.map((_, k) => {
    const base = shape.added[k - asked.length]?.of ?? k;
    return alike.group[base] as number;
  });
  const numbers = [...new Set(own)];
  const ids: string[][] = numbers.map(() => []);
  kinds.forEach((kind, k) => {
    ids[numbers.indexOf(own[k] as number)]?.push(kind.id);
  });
  const family = Int32Array.from(shape.shell.kind, (k) => numbers.indexOf(own[k] as number));
  const places = numbers.map(() => 0);
  for (const f of family) places[f] = (places[f] as number) + 1;
  const byId = new Map(ids.flatMap((list, f) => list.map((id) => [id, f] as const)));
  return {
    family,
    labels: labelsOf(shape.shell, alike),
    ids,
    places,
    familyOf: (id) => {
      const f = byId.get(id);
      return f !== undefined && (places[f] as number) > 0 ? f : undefined;
    },
  };
}

function standing(
  mark: number,
  { marks, real, carried }: MarkTally,
  { ids, family }: Families,
  { marks: onPlace }: MarkScheme,
): MarkStanding {
  const families = real.flatMap((own, f) => (own.includes(mark) ? [f] : []));
  const isShared = families.some((f) => (real[f] as readonly number[]).length > 1);
  const as =
    families.length === 0
      ? 'nothing'
      : families.length > 1
        ? isShared
          ? 'both'
          : 'coarser'
        : isShared
          ? 'finer'
          : 'shape';
  return {
    mark: marks[mark] as string,
    on: families.map((f) => ({
      kinds: ids[f] as readonly string[],
      panels: Math.round((carried[mark] as readonly number[])[f] as number),
      places: [...family.keys()].filter((p) => family[p] === f && onPlace[p] === mark) as PlaceId[],
    })),
    as,
  };
}

function finerMarks(
  f: number,
  { marks, real }: MarkTally,
  { ids, family }: Families,
  schemes: readonly MarkScheme[],
): FinerMarks {
  // Two schemes share out this family alike where each mark has as many places by one sort of rule.
  const keyOf = ({ divisions }: MarkScheme): string => {
    const { rule, marks: own } = divisions.get(f) ?? { rule: { by: 'none' }, marks: [] };
    return `${rule.by} ${rule.by === 'level' ? rule.axis.fold : ''} ${own.join()}`;
  };
  const chances = new Map<string, number>();
  for (const scheme of schemes) {
    const key = keyOf(scheme);
    chances.set(key, (chances.get(key) ?? 0) + scheme.probability);
  }
  const [best] = schemes as [MarkScheme];
  const probability = chances.get(keyOf(best)) ?? 0;
  const most = Math.max(...chances.values());
  return {
    kinds: ids[f] as readonly string[],
    marks: (real[f] as readonly number[]).map((m) => marks[m] as string),
    rule: best.divisions.get(f)?.rule ?? { by: 'none' },
    probability: family.length > 0 ? probability : 0,
    ways: [...chances.values()].filter((p) => p >= AS_GOOD * most).length,
  };
}

/** Family → mark → how many panels of it are still to be found among those without a sure mark. */
function stillFree(tally: MarkTally, net: Families, schemes: readonly MarkScheme[]): number[][] {
  return tally.real.map((own, f) => {
    const carried = own.map((m) => (tally.carried[m] as readonly number[])[f] as number);
    const sure = carried.reduce((sum, n) => sum + n, 0);
    const places = net.places[f] as number;
    const share = Math.max(places, tally.panelsOf[f] as number) / Math.max(1, places);
    return own.map((m, i) =>
      schemes.reduce((sum, scheme) => {
        const need = share * placesWith(scheme, m, f, net, carried[i] as number, sure);
        return sum + scheme.probability * Math.max(need - (carried[i] as number), 0.02 * need, 0.1);
      }, 0),
    );
  });
}

/** Places of a family that bear a mark; where no rule says, by the share of those that carry it. */
function placesWith(
  { marks }: MarkScheme,
  mark: number,
  f: number,
  { family, places }: Families,
  carried: number,
  sure: number,
): number {
  let count = 0;
  let isOpen = false;
  for (let p = 0; p < family.length; p++) {
    if (family[p] !== f) continue;
    if (marks[p] === mark) count++;
    isOpen ||= marks[p] === ANY_OF_FAMILY;
  }
  return isOpen ? ((places[f] as number) * carried) / Math.max(1, sure) : count;
}

function panelMarks(tally: MarkTally, net: Families, schemes: readonly MarkScheme[]): PanelMark[] {
  const free = stillFree(tally, net, schemes);
  return tally.panels
    .map((panel): PanelMark => {
      const { readings, tag, count, kind, written } = panel;
      const about = { readings, tag, count, kind, written: written.marks };
      if (panel.families.length === 0) return { ...about, as: 'no place', likely: [] };
      const sure = written.marks.length === 1 && !written.open;
      const likely = likelyMarks(panel, tally, free, sure);
      if (!sure) return { ...about, as: written.marks.length > 0 ? 'faded' : 'unmarked', likely };
      const mark = tally.marks.indexOf(written.marks[0] as string);
      if (panel.families.some((f) => (tally.real[f] as readonly number[]).includes(mark)))
        return {
          ...about,
          as: 'fits',
          likely: [{ mark: written.marks[0] as string, probability: 1 }],
        };
      return { ...about, as: isReal(tally, mark) ? 'contradicts' : 'unexplained', likely };
    })
    .sort((a, b) => (a.readings[0] as number) - (b.readings[0] as number));
}

/** What mark a panel without a sure and fitting one should bear. */
function likelyMarks(
  { families, written }: TalliedPanel,
  { real, marks, wrong }: MarkTally,
  free: readonly (readonly number[])[],
  isWrong: boolean,
): LikelyMark[] {
  const chances = new Map<string, number>();
  for (const f of families)
    (real[f] as readonly number[]).forEach((m, i) => {
      const mark = marks[m] as string;
      const asWritten =
        isWrong || written.marks.length === 0 || written.marks.includes(mark)
          ? 1
          : written.open
            ? 0.1
            : wrong / Math.max(1, marks.length - 1);
      const weight = (free[f]?.[i] ?? 0) * asWritten;
      chances.set(mark, (chances.get(mark) ?? 0) + weight);
    });
  const all = [...chances.values()].reduce((sum, p) => sum + p, 0);
  return [...chances]
    .map(([mark, weight]) => ({ mark, probability: weight / all }))
    .filter((one) => one.probability >= LISTED)
    .sort((a, b) => b.probability - a.probability);
}

function groupMarks(
  group: StandingGroup,
  index: number,
  { marks, real }: MarkTally,
  { family, ids }: Families,
  scheme: MarkScheme,
): GroupMarks {
  const best = bestStand(group, scheme.marks, family, real);
  if (!best) return { group: index, held: false, hub: null, others: 0, wrong: [] };
  const { stand, alike, wrong } = best;
  return {
    group: index,
    held: wrong.length === 0,
    hub: stand.hub,
    others: alike - 1,
    wrong: wrong.map((at) => {
      const p = stand.places[at] as number;
      const mark = scheme.marks[p] as number;
      return {
        at,
        shouldBe: mark === NO_MARK || mark === ANY_OF_FAMILY ? null : (marks[mark] as string),
        kinds: ids[family[p] as number] as readonly string[],
      };
    }),
  };
}
