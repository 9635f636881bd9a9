// The shims on paper: what goes under each base hub.

import type { Base } from '../ground/base.ts';
import type { Shim, ShimPlan } from '../ground/shims.ts';
import { type Drawing, type Item, text } from './drawing.ts';
import { cautionOf, type SheetFacts } from './flat-plan-sheet.ts';
import {
  baseItems,
  beyondHub,
  type GroundPlacing,
  groundSheets,
  hubNumbers,
  plainRow,
} from './ground-plan.ts';
import {
  type LengthsShown,
  largeFirst,
  lengthFirst,
  lengthSecond,
  lengthsNote,
} from './length-text.ts';
import { type Paper, pageOf } from './page.ts';

/** Options of `shimSheets`. */
export interface ShimSheetOptions {
  readonly paper?: Paper;
  readonly lengths?: LengthsShown;
  /** Where the datum peg stands, metres from the centre; 1 m outside the ring unless told. */
  readonly datum?: number;
}

/** A stack higher than this wants a sleeper or a block, metres: common practice, no source. */
const HIGH = 0.05;

const caution =
  'A hub on a high stack of shims can slide off it: fix the stack, and take the load on blocks or a sleeper where it is over 50 mm (common practice). Read the levels again when all shims are in.';

/** The shims of a base; one sheet at least. */
export function shimSheets(
  base: Base,
  plan: ShimPlan,
  facts: SheetFacts,
  options: ShimSheetOptions = {},
): Drawing[] {
  const shown = options.lengths ?? 'metric';
  const datum = options.datum ?? Math.max(...base.hubs.map((hub) => hub.radius)) + 1;
  const none = (shim: Shim): boolean => shim.thickness < 5e-4;
  const items = (placing: GroundPlacing): Item[] => [
    ...baseItems(base, datum, placing),
    ...hubNumbers(base, placing, 5),
    ...plan.shims.map((shim, k) =>
      text(
        beyondHub(base.hubs[k] as Base['hubs'][number], placing, -8),
        none(shim) ? '0' : plainLength(shim.thickness, shown),
        2.8,
        { anchor: 'middle', halo: 0.8, bold: true, ink: shim.thickness > HIGH ? 'accent' : 'ink' },
      ),
    ),
  ];
  const packed = plan.shims.some(({ pieces }) => pieces !== null);
  const rows = plan.shims.map((shim) =>
    plainRow(
      [
        String(shim.hub),
        lengthFirst(shim.ground, shown),
        none(shim) ? 'none' : lengthFirst(shim.thickness, shown),
        none(shim) ? '' : lengthSecond(shim.thickness, shown),
        ...(packed ? [packWords(shim)] : []),
        Math.abs(shim.off) < 5e-4 ? '–' : lengthFirst(-shim.off, shown),
      ],
      shim.thickness > HIGH,
    ),
  );
  const slope = Math.hypot(...plan.slope);
  const one = plan.highest.length === 1;
  const highest = `${one ? 'Hub' : 'Hubs'} ${plan.highest.join(', ')} ${one ? 'stands' : 'stand'} on the highest ground and ${one ? 'gets' : 'get'} none; nothing is dug away.`;
  return groundSheets(pageOf(options.paper ?? 'A4', 'across'), {
    heading: 'Shims',
    remark: `under each base hub${shown === 'metric' ? ', millimetres on the plan' : ''}; ${largeFirst(plan.total, shown)} in all, the highest ${lengthFirst(plan.max, shown)}`,
    facts,
    lengths: lengthsNote(shown),
    caution: cautionOf(facts, caution),
    notes: [
      highest,
      `As shimmed neighbours step by ${lengthFirst(plan.neighbourStep, shown)} at most, and all hubs lie within ${lengthFirst(plan.overallStep, shown)} of the plane.`,
      ...(slope > 1e-6
        ? [`The base is left tilted by ${(slope * 1000).toFixed(1)} mm in a metre.`]
        : []),
      ...(packed ? ['Shims in hand, thickest first, millimetres. Low: below the plane.'] : []),
    ],
    points: [...base.hubs.map((hub) => hub.at), [datum, 0]],
    plan: items,
    columns: [
      { name: 'hub', share: 0.08, align: 'start' },
      { name: 'ground', share: 0.15, align: 'end' },
      { name: 'shim', share: 0.15, align: 'end' },
      { name: '', share: 0.17, align: 'end' },
      ...(packed ? [{ name: 'of', share: 0.32, align: 'end' as const }] : []),
      { name: 'low', share: packed ? 0.13 : 0.45, align: 'end' },
    ],
    rows,
  });
}

/** A length for the plan, where there is no room for `mm` at every hub. */
const plainLength = (metres: number, shown: LengthsShown): string =>
  lengthFirst(metres, shown).replace(' mm', '');

const packWords = ({ pieces }: Shim): string =>
  pieces === null || pieces.length === 0
    ? ''
    : pieces.map((piece) => String(Math.round(piece * 1e4) / 10)).join(' + ');
