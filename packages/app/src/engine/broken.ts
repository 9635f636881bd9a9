// What to do for a panel that broke: others moved into its place, one cut down, one made.

import {
  type Besides,
  cutDown,
  defaultTakeoff,
  type HoleCounts,
  type Kind,
  leftAfter,
  leftOutOf,
  openingsIn,
  type PanelToMake,
  panelShape,
  panelToMake,
  type Replacement,
  replacementsFor,
  type Shell,
  sidePatterns,
  type TakeoffSettings,
  type Trim,
} from '@shellraise/core';

/** A panel of a standing shell is broken. */
export interface BrokenQuestion {
  readonly shell: Shell;
  /** Kinds with their sides as fitted. */
  readonly kinds: readonly Kind[];
  readonly interchangeable: readonly (readonly string[])[];
  /** Place → its number with the datum not turned on, and what was decided so far. */
  readonly plain: readonly string[];
  readonly besides: Besides;
  readonly place: number;
  /** Place → 1 where its panel is up. */
  readonly built: Uint8Array;
  /** Hub-to-hub length less the measured side, metres; null: unknown. */
  readonly allowance: number | null;
  readonly holes: HoleCounts;
  readonly settings: TakeoffSettings | undefined;
}

/** The answers, and what one could be cut from. */
export interface BrokenAnswer {
  readonly ways: readonly Replacement[];
  readonly cuts: readonly ShownCut[];
  readonly card: MakeCard;
}

/** A surplus panel that could be cut down to the one wanted. */
export interface ShownCut {
  readonly kind: string;
  readonly spare: number;
  readonly trim: Trim;
  /** Its corners in the axes of the side that is kept, metres. */
  readonly outer: readonly (readonly [number, number])[];
}

/** What one needs to make a panel. */
export interface MakeCard {
  readonly kind: string;
  /** Null where its sides are no panel on the sphere. */
  readonly panel: PanelToMake | null;
}

/** What to do for a broken panel. */
export function waysOut(question: BrokenQuestion): BrokenAnswer {
  const { shell, kinds, plain, besides, place, built, interchangeable } = question;
  const spares = leftAfter(shell, kinds, plain, besides);
  const wanted = shell.kind[place] as number;
  const own = kinds[wanted] as Kind;
  const cuts = cutDown(kinds, wanted, spares).map((cut): ShownCut => {
    const kind = kinds[cut.kind] as Kind;
    return { ...cut, kind: kind.id, outer: outerOf(kind, cut.trim) };
  });
  const fixed = new Set(leftOutOf(openingsIn(plain, besides)));
  const ways = replacementsFor(shell, kinds, place, { built, spares, fixed }, { interchangeable });
  const { allowance, holes, settings } = question;
  const along = sidePatterns(kinds, settings ?? defaultTakeoff, holes)[wanted];
  const counts = along?.map((pattern) => pattern?.holes ?? null) ?? null;
  const panel = panelToMake(own, shell.radius, { allowance, holes: counts });
  return { ways, cuts, card: { kind: own.id, panel } };
}

function outerOf({ sides }: Kind, { keptSide }: Trim): ShownCut['outer'] {
  const corners = panelShape(sides, keptSide)?.corners ?? [];
  const [x, y] = corners[keptSide] ?? [0, 0];
  return corners.map(([u, v]) => [u - x, v - y]);
}
