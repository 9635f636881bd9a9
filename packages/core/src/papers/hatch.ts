// Hatches and tints that tell kinds apart, hatch first, so that a black-and-white copy still works.
// A kind that is its own mirror image has a hatch that is too; a left and right pair share one
// leaning hatch, the left leaning left (\) and the right leaning right (/). Tints are pale forms of
// hues that stay apart for colour-blind eyes (after Okabe and Ito 2008, from memory).

import type { Kind } from '../pile/kind.ts';
import type { Fill } from './drawing.ts';

/** One hatch: a tile of lines or dots, repeated. */
export interface Hatch {
  /** Size of the square tile, millimetres. */
  readonly tile: number;
  /** Turn of the tile, degrees clockwise. */
  readonly angle: number;
  /** Lines along the tile's x: heights in the tile, millimetres. */
  readonly lines: readonly number[];
  /** True where the same lines also run along y. */
  readonly crossed: boolean;
  /** Share of each line that is drawn: 1 for whole lines. */
  readonly drawn: number;
  /** Dots: x, y and radius in the tile, millimetres; an open ring where `ring` is true. */
  readonly dots: readonly { x: number; y: number; r: number; ring: boolean }[];
}

const plain = { angle: 0, lines: [], crossed: false, drawn: 1, dots: [] };
const ruled = (tile: number, angle: number, more: Partial<Hatch> = {}): Hatch => ({
  ...plain,
  tile,
  angle,
  lines: [tile / 2],
  ...more,
});
const dotted = (tile: number, r: number, ring = false): Hatch => ({
  ...plain,
  tile,
  dots: [
    { x: tile / 4, y: tile / 4, r, ring },
    { x: (3 * tile) / 4, y: (3 * tile) / 4, r, ring },
  ],
});
const paired = (tile: number, angle: number): Hatch =>
  ruled(tile, angle, { lines: [tile * 0.36, tile * 0.64] });

const upright = {
  dots: dotted(1.8, 0.16),
  level: ruled(1.2, 0),
  grid: ruled(1.7, 0, { crossed: true }),
  upright: ruled(1.2, 90),
  rings: dotted(2.6, 0.42, true),
  'level-dashed': ruled(1.4, 0, { drawn: 0.6 }),
  lozenges: ruled(1.6, 45, { crossed: true }),
  'upright-pairs': paired(2.4, 90),
  'level-pairs': paired(2.4, 0),
  'upright-dashed': ruled(1.4, 90, { drawn: 0.6 }),
} as const satisfies Record<string, Hatch>;

const leaning = {
  slant: ruled(1.2, 45),
  'slant-pairs': paired(2.4, 45),
  'slant-dashed': ruled(1.3, 45, { drawn: 0.6 }),
  steep: ruled(1.1, 22),
  'steep-pairs': paired(2.2, 22),
  wide: ruled(2.2, 45),
  'steep-dashed': ruled(1.3, 22, { drawn: 0.6 }),
} as const satisfies Record<string, Hatch>;

/** Names of the hatches that are their own mirror image. */
export type UprightHatch = keyof typeof upright;

/** Names of the hatches that lean, with the way they lean. */
export type LeaningHatch = `${keyof typeof leaning}-${'left' | 'right'}`;

/** Name of a hatch. */
export type HatchName = UprightHatch | LeaningHatch;

/** The hatch of a name; a hatch leaning left is the mirror image of the one leaning right. */
export function hatchNamed(name: HatchName): Hatch {
  if (name in upright) return upright[name as UprightHatch];
  const [, base, way] = /^(.*)-(left|right)$/.exec(name) as unknown as [string, string, string];
  const hatch: Hatch = leaning[base as keyof typeof leaning];
  const slope = 90 - hatch.angle;
  return { ...hatch, angle: way === 'left' ? slope : -slope };
}

/** Every hatch. */
export const hatchNames: readonly HatchName[] = [
  ...(Object.keys(upright) as UprightHatch[]),
  ...(Object.keys(leaning) as (keyof typeof leaning)[]).flatMap((name): LeaningHatch[] => [
    `${name}-left`,
    `${name}-right`,
  ]),
];

/** Pale tints, sRGB. */
export const tints = {
  sand: '#faf0d4',
  rose: '#f8e2da',
  violet: '#e9e2f2',
  sky: '#dcebf7',
  mint: '#dcefe5',
  peach: '#fbe6cc',
  mist: '#e9eaec',
} as const;

const uprightOrder = Object.keys(upright) as UprightHatch[];
const leaningOrder = Object.keys(leaning) as (keyof typeof leaning)[];
const uprightTints = [
  tints.sand,
  tints.rose,
  tints.violet,
  tints.sky,
  tints.mint,
  tints.peach,
  tints.mist,
];
const leaningTints = [
  tints.sky,
  tints.mint,
  tints.peach,
  tints.violet,
  tints.sand,
  tints.rose,
  tints.mist,
];

/** Kind (index) → how its panels are filled. The first kind that has no hand is left white; hatch
 * and tint go on with unequal periods (10 and 7 upright, 7 and 6 leaning), so that kinds differ in
 * hatch or tint until there are 70 upright ones or 42 pairs. */
export function kindFills(kinds: readonly Kind[]): Fill[] {
  const pairs = new Map<string, number>();
  let lone = 0;
  return kinds.map((kind) => {
    if (kind.hand === null) {
      lone += 1;
      return lone === 1 ? { tint: null, hatch: null } : uprightFill(lone - 2);
    }
    const stem = kind.id.replace(/[LR]$/, '');
    const pair = pairs.get(stem) ?? pairs.size;
    pairs.set(stem, pair);
    return leaningFill(pair, kind.hand);
  });
}

function uprightFill(i: number): Fill {
  return {
    hatch: uprightOrder[i % uprightOrder.length] as UprightHatch,
    tint: uprightTints[i % uprightTints.length] as string,
  };
}

function leaningFill(i: number, hand: 'L' | 'R'): Fill {
  const base = leaningOrder[i % leaningOrder.length] as keyof typeof leaning;
  return {
    hatch: `${base}-${hand === 'L' ? 'left' : 'right'}`,
    tint: leaningTints[i % (leaningTints.length - 1)] as string,
  };
}
