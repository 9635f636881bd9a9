// Readings into kinds: the pile worked up for every later step. Panels are compared by their whole
// outline, in any turn, each hand by itself; marks weigh little. Method: people's constant errors
// first (people.ts), then kinds as a mixture with blunders (cluster.ts, mixture.ts, ties.ts), then
// ids and hands (numbering.ts) and what follows from them. The order of the readings plays no part.

import { turned } from '../math/cyclic.ts';
import { compareText } from '../math/order.ts';
import { type AssignedReading, assignPanels, type PanelKind } from './assign.ts';
import { facesOf, facingOut, panelsOfKind } from './faces.ts';
import {
  type Compared,
  chiSquareDeviate,
  type MaybeOne,
  type MaybeTwo,
  type MixedMark,
  maybeOneOf,
  maybeTwoOf,
  type SuspectReading,
  type TooFew,
} from './findings.ts';
import type { FittedKind } from './fit-kinds.ts';
import { fitWithPeople } from './fit-people.ts';
import { resolveGroups, type UnsettledGroup } from './groups.ts';
import { dihedralsOf, joinedKinds, type KindJoints, type Unjoined } from './joints.ts';
import type { Hand, JoinedGroup, Kind } from './kind.ts';
import { markedKinds } from './marks.ts';
import type { ReadingNoise } from './noise.ts';
import { type Named, nameKinds } from './numbering.ts';
import { type Panel, panelsOf, type SharedTag, sharedTags } from './panels.ts';
import { biasesOf, type PersonBias } from './people.ts';
import { slipsOf } from './reading-slips.ts';
import type { Condition, Pile } from './schema.ts';
import type { ReadingSlip } from './slips.ts';
import { suspectsOf } from './suspects.ts';
import { ANGLE_SD, MAYBE_ONE_Z } from './tolerances.ts';

/** A kind of which more panels were tagged than the file counts. */
export interface Miscount {
  readonly kind: string;
  readonly counted: number;
  readonly found: number;
}

/** A pile worked up. Kinds of the file come first, in its order and with its ids; then those made
 * from readings alone, by number. */
export interface PileKinds {
  readonly kinds: readonly Kind[];
  readonly groups: readonly JoinedGroup[];
  readonly unsettledGroups: readonly UnsettledGroup[];
  /** One entry a reading, in the order of the file. */
  readonly assigned: readonly AssignedReading[];
  readonly suspects: readonly SuspectReading[];
  /** Readings that are explained by a slip: no kinds of their own, and they pull on none. */
  readonly slips: readonly ReadingSlip[];
  readonly maybeOne: readonly MaybeOne[];
  readonly maybeTwo: readonly MaybeTwo[];
  readonly mixedMarks: readonly MixedMark[];
  /** Tags that were put on several panels by mistake; each counts as a panel of its own. */
  readonly sharedTags: readonly SharedTag[];
  readonly tooFew: readonly TooFew[];
  readonly people: readonly PersonBias[];
  readonly noise: ReadingNoise;
  readonly miscounts: readonly Miscount[];
}

/** Kinds, groups and findings of a pile that passed `readPile`.
 *
 * A kind's sides are the mean of its readings (and of its row in the file, which weighs like one
 * reading) plus the hub allowance, 0 where that is unknown. `sideSds` is the noise of one reading
 * over the root of their number, at least 0.1 mm. A row without readings is taken as it stands.
 * Counts come from the row where it has any, else from the panels: one for each tag, `count` for a
 * row without a tag; a panel of which nobody says its condition is good. */
export function kindsOfPile(pile: Pile): PileKinds {
  const panels = panelsOf(pile.readings, pile.readingSd);
  const rows = pile.kinds.map((row) => facingOut(row, panels, pile.readingSd));
  const { parts, noise, biases, people } = fitWithPeople(panels, rows, pile);
  const fitted = parts.flatMap((part) => part.kinds);
  const names = nameKinds(
    fitted.map((kind) => ({ ...kind, id: kind.row?.id ?? null })),
    (chiSquare, sides) => chiSquareDeviate(chiSquare, sides) < MAYBE_ONE_Z,
  );
  const order = orderOf(fitted, names, pile);
  const compared = order.map((k) => comparedOf(fitted[k] as FittedKind, names[k] as Named));
  const plain = assignPanels(parts, names, pile.readings, noise.used);
  const unjoined = order.map((k) => unjoinedOf(fitted[k] as FittedKind, names[k] as Named));
  const { assignment, parts: makes } = joinedKinds(unjoined, plain, pile.readings, noise.used);
  const marks = markedKinds(assignment.panels, pile.kinds);
  const kinds = order.flatMap((k, at) => {
    const own = makes.get((unjoined[at] as Unjoined).id) as readonly KindJoints[];
    return own.map((make, part) => {
      const named = names.map((name, j) => (j === k ? { ...name, id: make.id } : name));
      const kind = fitted[k] as FittedKind;
      const one = kindOf(
        part === 0 ? kind : { ...kind, row: null },
        named,
        k,
        assignment.panels,
        marks.ofKind,
        pile,
      );
      const angles = dihedralsOf(
        { ...(unjoined[at] as Unjoined), id: make.id, ...(part > 0 && { row: null }) },
        assignment.readings,
        pile.readings,
        pile.angleSd ?? ANGLE_SD,
      );
      return joined(one, make, own.length, angles);
    });
  });
  const remade = compared.flatMap((one) =>
    (makes.get(one.id) ?? [one]).map(({ id }) => ({ ...one, id })),
  );
  const firstMakes = compared.map((one) => ({ ...one, id: makes.get(one.id)?.[0]?.id ?? one.id }));
  const groups = resolveGroups(pile.groups, kinds, marks.kindsOf, pile.readingSd);
  return {
    kinds,
    groups: groups.groups,
    unsettledGroups: groups.unsettled,
    assigned: assignment.readings,
    suspects: suspectsOf(pile, rows, remade, assignment.readings, noise.used, biases),
    slips: slipsOf({
      rows: pile.readings,
      kinds: remade,
      assigned: assignment.readings,
      remedies: new Map(parts.flatMap((part) => [...part.remedies])),
      biases,
      sd: noise.used,
    }),
    maybeOne: maybeOneOf(firstMakes),
    maybeTwo: maybeTwoOf(firstMakes, noise.used),
    mixedMarks: marks.mixed,
    sharedTags: sharedTags(panels),
    tooFew: [...loneReadings(fitted, names, order), ...assignment.tooFew],
    people: withKinds(people, panels, assignment.panels, noise.used),
    noise,
    miscounts: miscountsOf(pile, assignment.panels),
  };
}

/** Kinds of the file in its order, then the rest by number, L before R. */
function orderOf(fitted: readonly FittedKind[], names: readonly Named[], pile: Pile): number[] {
  const inFile = new Map(pile.kinds.map((row, i) => [row.id, i]));
  const rank = (k: number): number =>
    fitted[k]?.row
      ? (inFile.get(fitted[k].row.id) as number)
      : pile.kinds.length + Number.parseInt(names[k]?.id as string, 10);
  return fitted
    .map((_, k) => k)
    .sort(
      (a, b) => rank(a) - rank(b) || compareText(names[a]?.id as string, names[b]?.id as string),
    );
}

function comparedOf(kind: FittedKind, name: Named): Compared {
  return {
    id: name.id,
    sides: turned(kind.sides, name.turn),
    sds: turned(kind.sds, name.turn),
    rivals: turned(kind.rivals, name.turn),
    stated: kind.row !== null,
    readings: kind.readings,
    scatter: kind.scatter,
  };
}

const unjoinedOf = (kind: FittedKind, name: Named): Unjoined => ({
  id: name.id,
  sides: turned(kind.sides, name.turn),
  row: kind.row,
});

/** The kind with its joints. Several makes of one shape share its readings: each is as sure of its
 * sides as its share of them. */
function joined(
  kind: Kind,
  { laps, holes }: KindJoints,
  makes: number,
  dihedrals: Kind['dihedrals'] | null,
): Kind {
  return {
    ...kind,
    sideSds: kind.sideSds.map((sd) => sd * Math.sqrt(makes)),
    ...(laps.some((lap) => lap !== null) && { laps }),
    ...(holes.some((count) => count !== null) && { holes }),
    ...(dihedrals && { dihedrals }),
  };
}

function kindOf(
  kind: FittedKind,
  names: readonly Named[],
  k: number,
  panels: readonly PanelKind[],
  marksOf: ReadonlyMap<string, readonly string[]>,
  pile: Pile,
): Kind {
  const name = names[k] as Named;
  const partner = name.partner === null ? null : (names[name.partner] as Named).id;
  const own = panels.filter((p) => p.kind === name.id);
  const { row } = kind;
  const stated = row && (row.good ?? row.repair ?? row.scrap) !== undefined ? row : null;
  const found = (condition: Condition): number => panelsOfKind(name.id, partner, condition, panels);
  const masses = own.flatMap(({ panel }) =>
    panel.readings.map((r) => pile.readings[r.index]?.mass).filter((m) => typeof m === 'number'),
  );
  return {
    id: name.id,
    marks: marksOf.get(name.id) ?? [],
    sides: turned(kind.sides, name.turn).map((x) => x + (pile.hubAllowance ?? 0)),
    sideSds: turned(kind.sds, name.turn),
    hand: name.hand as Hand,
    good: stated ? (stated.good ?? 0) : found('good'),
    repair: stated ? (stated.repair ?? 0) : found('repair'),
    scrap: stated ? (stated.scrap ?? 0) : found('scrap'),
    counted: stated !== null || own.length > 0,
    mass:
      row?.mass ?? (masses.length > 0 ? masses.reduce((a, b) => a + b, 0) / masses.length : null),
    ...facesOf({ id: name.id, hand: name.hand }, row, partner !== null, panels),
  };
}

function sharedReadings(
  panels: readonly Panel[],
  thing: (panel: Panel, p: number) => string | null,
) {
  return panels.flatMap((panel, p) => {
    const key = thing(panel, p);
    return panel.readings.flatMap((reading) =>
      reading.by === null || key === null
        ? []
        : [
            {
              by: reading.by,
              panel: key,
              meanSide: reading.sides.reduce((sum, x) => sum + x, 0) / reading.sides.length,
              sideCount: reading.sides.length,
            },
          ],
    );
  });
}

/** People who share no panel with anyone are compared over kinds: told, never applied. */
function withKinds(
  direct: readonly PersonBias[],
  panels: readonly Panel[],
  assigned: readonly PanelKind[],
  sd: number,
): PersonBias[] {
  if (direct.every((b) => b.basis !== 'nothing' || b.stated)) return [...direct];
  const kindOf = new Map(assigned.map((a) => [a.panel, a.kind]));
  const weak = biasesOf(
    sharedReadings(panels, (panel) => kindOf.get(panel) ?? null),
    sd,
    'kinds',
  );
  return direct.map((b) =>
    b.basis !== 'nothing' || b.stated ? b : (weak.find((w) => w.by === b.by) ?? b),
  );
}

function loneReadings(
  fitted: readonly FittedKind[],
  names: readonly Named[],
  order: readonly number[],
): TooFew[] {
  return order.flatMap((k) => {
    const kind = fitted[k] as FittedKind;
    const id = (names[k] as Named).id;
    return kind.row === null && kind.readings < 1.5
      ? [{ path: `kind ${id}`, kinds: [id], why: 'one reading' as const }]
      : [];
  });
}

function miscountsOf(pile: Pile, panels: readonly PanelKind[]): Miscount[] {
  return pile.kinds.flatMap((row) => {
    if ((row.good ?? row.repair ?? row.scrap) === undefined) return [];
    const counted = (row.good ?? 0) + (row.repair ?? 0) + (row.scrap ?? 0);
    const found = panels
      .filter((p) => p.kind === row.id)
      .reduce((sum, p) => sum + p.panel.count, 0);
    return found > counted ? [{ kind: row.id, counted, found }] : [];
  });
}
