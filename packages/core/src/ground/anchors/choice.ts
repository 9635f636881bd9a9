// The anchors that the lead chose, and what one of them holds: by its source, or by test pulls on
// the site, which override it. One table of what each sort is called, how far apart it stands and
// of how many pieces one is made.

import { commonPractice, fromMemory, type Provenance } from '../../loads/provenance.ts';
import { type Read, refuse } from '../../measure/fault.ts';
import { INCH } from '../../measure/length.ts';
import type { Underlay } from './ballast.ts';
import type { Capacity, Pull } from './capacity.ts';
import { type Deadman, deadman } from './deadman.ts';
import { type Helical, helical } from './helical.ts';
import {
  type Combination,
  PICKET_STEP,
  picketRows,
  STEEL_PICKETS,
  steelPickets,
  woodPickets,
} from './pickets.ts';
import { type PullTest, testedCapacity } from './pull-test.ts';
import { knownSoil, type Soil } from './soil.ts';
import { drivenBar, gravelBar, lawnStake } from './stakes.ts';

/** An anchor that is pulled: everything but ballast. Lengths in metres. */
export type PulledAnchor =
  | { readonly type: 'wood pickets'; readonly combination: Combination }
  | { readonly type: 'steel pickets'; readonly count: number }
  | { readonly type: 'lawn stake' }
  | { readonly type: 'gravel bar' }
  | { readonly type: 'bar'; readonly diameter: number; readonly depth: number }
  | ({ readonly type: 'deadman' } & Deadman)
  | ({ readonly type: 'helical' } & Helical)
  | { readonly type: 'other'; readonly name: string; readonly spacing: number };

/** What the lead chose: anchors that are pulled, or pieces of ballast of so many kilograms. */
export type AnchorChoice =
  | PulledAnchor
  | { readonly type: 'ballast'; readonly underlay: Underlay; readonly mass: number };

/** What one anchor holds. Test pulls on the site go before published values; `other` anchors have
 * no published value. Faults for an unknown soil, and where the source does not cover the case. */
export function anchorCapacity(
  anchor: PulledAnchor,
  soil: Soil | null,
  pull: Pull,
  tests: readonly PullTest[] = [],
): Read<Capacity> {
  if (tests.length > 0) return testedCapacity(tests, soil?.wet ?? true);
  if (anchor.type === 'other')
    return refuse(
      'anchor',
      `${anchor.name}, which has no published value here`,
      'a pull test on the site',
    );
  const known = knownSoil(soil);
  return known.ok ? published(anchor, known.value, pull) : known;
}

function published(
  anchor: Exclude<PulledAnchor, { type: 'other' }>,
  soil: Soil,
  pull: Pull,
): Read<Capacity> {
  switch (anchor.type) {
    case 'wood pickets':
      return woodPickets(anchor.combination, soil, pull);
    case 'steel pickets':
      return steelPickets(anchor.count, soil, pull);
    case 'lawn stake':
      return lawnStake(soil, pull);
    case 'gravel bar':
      return gravelBar(soil, pull);
    case 'bar':
      return drivenBar(anchor.diameter, anchor.depth, soil, pull);
    case 'deadman':
      return deadman(anchor, soil, pull);
    case 'helical':
      return helical(anchor, soil);
  }
}

/** The anchor in words, one of it. */
export function anchorWords(anchor: AnchorChoice): string {
  switch (anchor.type) {
    case 'wood pickets':
      return `${anchor.combination} wood picket holdfast`;
    case 'steel pickets':
      return anchor.count === 1 ? 'steel picket' : `holdfast of ${anchor.count} steel pickets`;
    case 'lawn stake':
      return 'stake 25 mm × 0.9 m';
    case 'gravel bar':
      return 'reinforcing bar 25 mm × 1 m';
    case 'bar':
      return `bar ${Math.round(anchor.diameter * 1000)} mm, ${anchor.depth} m deep`;
    case 'deadman':
      return `${anchor.body} deadman ${anchor.length} m long, ${anchor.depth} m deep`;
    case 'helical':
      return `helical anchor, ${Math.round(anchor.plate * 1000)} mm plate`;
    case 'other':
      return anchor.name;
    case 'ballast':
      return `ballast, ${anchor.mass} kg a piece on ${anchor.underlay}`;
  }
}

/** Rows of pieces of one anchor, from the guy outwards, and how far apart the rows are, metres. */
export function piecesOf(anchor: AnchorChoice): {
  readonly rows: readonly number[];
  readonly step: number;
} {
  if (anchor.type === 'wood pickets')
    return { rows: picketRows[anchor.combination], step: PICKET_STEP };
  if (anchor.type === 'steel pickets')
    return { rows: Array.from({ length: anchor.count }, () => 1), step: 1 };
  return { rows: [1], step: 0 };
}

/** Least distance from one anchor to the next, metres, and where that comes from. */
export function spacingOf(anchor: AnchorChoice): {
  readonly value: number;
  readonly sources: readonly Provenance[];
} {
  const deep = commonPractice('driven anchors stand at least as far apart as they are deep');
  switch (anchor.type) {
    case 'wood pickets':
      return { value: 36 * INCH, sources: [deep] };
    case 'steel pickets':
      return { value: 1, sources: [STEEL_PICKETS] };
    case 'lawn stake':
    case 'gravel bar':
      return { value: 0.8, sources: [deep] };
    case 'bar':
      return { value: anchor.depth, sources: [deep] };
    case 'deadman':
      return {
        value: anchor.length + anchor.depth,
        sources: [commonPractice('deadmen lie at least their depth apart, end to end')],
      };
    case 'helical':
      return {
        value: 3 * anchor.plate,
        sources: [fromMemory('makers’ guides: helical anchors at least three plates apart')],
      };
    case 'other':
      return {
        value: anchor.spacing,
        sources: [{ text: 'spacing entered', confirmation: 'entered' }],
      };
    case 'ballast':
      return { value: 0, sources: [] };
  }
}
