// The filling of one outline as a program in whole numbers. Unknowns: which places are left open,
// which door is taken (its places are then out), where each joined group stands or whether it is set
// aside or taken apart, and for each family how many panels are mended and bought; the rest are good.
//
//   good used = places − out − open − bought − mended      for each family at play
//   good used ≤ good − spares, ≤ good − what lies in groups set aside, ≥ what stands in groups

import { ProgramDraft, type Terms } from '../program/integer-program.ts';
import { LOW_ENOUGH } from './exposure.ts';
import type { FillQuestion } from './fill.ts';
import { addGapLaws } from './gap-laws.ts';
import { isRanked, type Objective } from './wishes.ts';

/** The program and what its unknowns are; −1 and absent entries: no such unknown. */
export interface FillProgram {
  readonly draft: ProgramDraft;
  /** Place → left open. */
  readonly open: ReadonlyMap<number, number>;
  /** Place → gets a mended panel; only where the order asks for mended ones low. */
  readonly mendedAt: ReadonlyMap<number, number>;
  /** Family → panels mended, bought. */
  readonly mended: ReadonlyMap<number, number>;
  readonly bought: ReadonlyMap<number, number>;
  /** Door → taken. */
  readonly doors: readonly number[];
  /** Where groups may stand. */
  readonly runs: readonly {
    readonly group: number;
    readonly places: readonly number[];
    readonly variable: number;
  }[];
  /** Group → number taken apart. */
  readonly parted: readonly number[];
  /** What an objective adds up, made to be small. */
  readonly objectives: Readonly<Partial<Record<Objective, Terms>>>;
}

/** A family whose filling is not settled beforehand. */
export interface FamilyAtPlay {
  readonly family: number;
  /** Its places in the outline. */
  readonly places: readonly number[];
  readonly good: number;
  readonly repair: number;
}

/** Gaps are never so near the crown. */
const CROWN = 0.8;

/** Counted families whose good panels, less spares, may not do, or that mended panels or groups may go
 * into. */
export function familiesAtPlay(question: FillQuestion): FamilyAtPlay[] {
  const { places, family, good, repair, wishes, groups = [] } = question;
  const own = new Map<number, number[]>();
  for (const p of Array.from(places)) {
    const f = family[p] as number;
    own.set(f, [...(own.get(f) ?? []), p]);
  }
  const inGroups = new Set(groups.flatMap(({ around }) => around));
  return [...own].flatMap(([f, list]) => {
    const stock = good[f] as number;
    const mends = wishes.mended ? (repair[f] as number) : 0;
    const isShort = list.length + (wishes.spares ?? 0) > stock;
    const isAtPlay = isShort || (mends > 0 && isRanked(wishes, 'mended low')) || inGroups.has(f);
    return isAtPlay && Number.isFinite(stock)
      ? [{ family: f, places: list, good: stock, repair: mends }]
      : [];
  });
}

/** The program of an outline. */
export function fillProgram(question: FillQuestion, atPlay: readonly FamilyAtPlay[]): FillProgram {
  const draft = new ProgramDraft();
  const doors = addDoors(draft, question);
  const groups = addGroups(draft, question);
  const open = addOpen(draft, question, atPlay);
  const out = (p: number): Terms => ones(doors.at.get(p) ?? []);
  const held = (p: number): Terms => ones(groups.at.get(p) ?? []);
  const mendedAt = new Map<number, number>();
  const mended = new Map<number, number>();
  const bought = new Map<number, number>();
  const lacks: number[] = [];
  for (const own of atPlay) {
    const { family, places, good, repair } = own;
    const filling: (readonly [number, number])[] = [];
    if (question.wishes.mostBought !== 0) {
      const v = draft.count(places.length);
      bought.set(family, v);
      filling.push([v, 1]);
    }
    if (repair > 0) {
      if (isRanked(question.wishes, 'mended low')) {
        const at = places.map((p) => [p, draft.yesNo()] as const);
        for (const [p, v] of at) mendedAt.set(p, v);
        const terms = ones(at.map(([, v]) => v));
        draft.atMost('mended', terms, repair);
        filling.push(...terms);
      } else {
        const v = draft.count(repair);
        mended.set(family, v);
        filling.push([v, 1]);
      }
    }
    // Σ (out + open) + bought + mended: what is not filled with good panels.
    const others: Terms = [
      ...merged(places.flatMap(out)),
      ...ones(places.flatMap((p) => open.get(p) ?? [])),
      ...filling,
    ];
    const { spares = 0 } = question.wishes;
    const isSoft = isRanked(question.wishes, 'spares kept');
    const lack = isSoft && spares > 0 ? draft.count(spares) : null;
    if (lack !== null) lacks.push(lack);
    const spared: Terms = lack === null ? [] : [[lack, 1]];
    draft.atLeast('spares', [...others, ...spared], places.length - (good - spares));
    if (lack !== null) draft.atLeast('stock', others, places.length - good);
    const inGroup = (g: number): number =>
      (question.groups?.[g]?.around ?? []).filter((f) => f === family).length;
    const aside: Terms = groups.aside.flatMap((v, g) =>
      inGroup(g) > 0 ? [[v, -inGroup(g)] as const] : [],
    );
    if (aside.length > 0) draft.atLeast('aside', [...others, ...aside], places.length - good);
    const standing: Terms = merged(
      groups.runs.flatMap(({ variable, group }) =>
        inGroup(group) > 0 ? [[variable, inGroup(group)] as const] : [],
      ),
    );
    draft.atMost('stands', [...others, ...standing], places.length);
  }
  addOnce(draft, question.places, (p) => [
    ...out(p),
    ...held(p),
    ...ones([...of(open, p), ...of(mendedAt, p)]),
  ]);
  const { mostBought, mostParted } = question.wishes;
  if (mostBought !== undefined && bought.size > 0)
    draft.atMost('mostBought', ones([...bought.values()]), mostBought);
  if (mostParted !== undefined && groups.parted.length > 0)
    draft.atMost('mostParted', ones(groups.parted), mostParted);
  const exposure = question.exposure ?? question.rise;
  return {
    draft,
    open,
    mendedAt,
    mended,
    bought,
    doors: doors.variables,
    runs: groups.runs,
    parted: groups.parted,
    objectives: {
      'fewest bought': ones([...bought.values()]),
      'fewest mended': ones([...mended.values(), ...mendedAt.values()]),
      'fewest gaps': ones([...open.values()]),
      'spares kept': ones(lacks),
      door: doors.variables.map((v) => [v, -1] as const),
      'mended low': [...mendedAt].map(
        ([p, v]) => [v, (exposure[p] as number) - LOW_ENOUGH] as const,
      ),
      'groups joined': ones(groups.parted),
    },
  };
}

const of = (map: ReadonlyMap<number, number>, p: number): number[] => {
  const v = map.get(p);
  return v === undefined ? [] : [v];
};

const ones = (variables: readonly number[]): Terms => variables.map((v) => [v, 1] as const);

/** Terms with each variable once. */
function merged(terms: Terms): Terms {
  const sums = new Map<number, number>();
  for (const [v, coefficient] of terms) sums.set(v, (sums.get(v) ?? 0) + coefficient);
  return [...sums];
}

/** One thing at most at each place: a door, a gap, a group, a mended panel. */
function addOnce(
  draft: ProgramDraft,
  places: ArrayLike<number>,
  at: (place: number) => Terms,
): void {
  for (const p of Array.from(places)) {
    const terms = at(p);
    if (terms.length > 1) draft.atMost('one at a place', terms, 1);
  }
}

function addOpen(
  draft: ProgramDraft,
  question: FillQuestion,
  atPlay: readonly FamilyAtPlay[],
): Map<number, number> {
  const { shell, places, rise, wishes, doors = [] } = question;
  const open = new Map<number, number>();
  if (wishes.mostGaps === 0) return open;
  for (const own of atPlay) {
    if (own.places.length + (wishes.spares ?? 0) <= own.good) continue;
    for (const p of own.places) if ((rise[p] as number) < CROWN) open.set(p, draft.yesNo());
  }
  if (open.size === 0) return open;
  draft.atMost('most gaps', ones([...open.values()]), wishes.mostGaps);
  const inside = new Uint8Array(shell.placeStart.length - 1);
  for (const p of Array.from(places)) inside[p] = 1;
  addGapLaws(draft, shell, { inside, open });
  // Doors were written first: their unknowns are 0 … doors − 1.
  const touching = new Map<number, number[]>();
  doors.forEach(({ around }, d) => {
    for (const p of around) touching.set(p, [...(touching.get(p) ?? []), d]);
  });
  for (const [p, list] of touching) {
    const v = open.get(p);
    if (v !== undefined) draft.atMost('gap at a door', ones([v, ...list]), 1);
  }
  return open;
}

interface Doors {
  readonly variables: readonly number[];
  readonly at: ReadonlyMap<number, readonly number[]>;
}

function addDoors(draft: ProgramDraft, { doors, wishes }: FillQuestion): Doors {
  const at = new Map<number, number[]>();
  if (doors === undefined) return { variables: [], at };
  const variables = doors.map(({ places }) => {
    const v = draft.yesNo();
    for (const p of places) at.set(p, [...(at.get(p) ?? []), v]);
    return v;
  });
  if (isRanked(wishes, 'door')) draft.atMost('door', ones(variables), 1);
  else draft.equal('door', ones(variables), 1);
  return { variables, at };
}

interface Groups {
  readonly runs: FillProgram['runs'];
  readonly parted: readonly number[];
  readonly aside: readonly number[];
  readonly at: ReadonlyMap<number, readonly number[]>;
}

function addGroups(draft: ProgramDraft, { groups = [], places }: FillQuestion): Groups {
  const inside = new Set(Array.from(places));
  const at = new Map<number, number[]>();
  const parted: number[] = [];
  const aside: number[] = [];
  const runs = groups.flatMap((one, group) => {
    const own = one.runs
      .filter((run) => run.every((p) => inside.has(p)))
      .map((run) => {
        const variable = draft.yesNo();
        for (const p of run) at.set(p, [...(at.get(p) ?? []), variable]);
        return { group, places: run, variable };
      });
    const [apart, away] = [draft.count(one.count), draft.count(one.count)];
    parted.push(apart);
    aside.push(away);
    draft.equal('groups', ones([...own.map(({ variable }) => variable), apart, away]), one.count);
    return own;
  });
  return { runs, parted, aside, at };
}
