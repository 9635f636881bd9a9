// The answer in plain words.

import type { Identification, Pile, Shape, Subdivision } from '@shellraise/core';
import type { Relation } from '../../engine/relate.ts';
import type { Lengths } from '../../ui/lengths.ts';
import type { Words } from '../../words/words.ts';

type ShapeWords = Words['shape'];

/** What these kinds close into, in one or two sentences. `relation` is null where it is not known,
 * or one shape stands alone. */
export function headlineOf(
  found: Identification,
  shape: Shape,
  relation: Relation | null,
  words: ShapeWords,
  lengths: Lengths,
): string {
  const say = words.headline;
  const ball = shape.closed ? say.ball : say.part;
  const opening = ball(lengths.large(2 * shape.radius), shape.shell.kind.length);
  const count = found.shapes.length;
  if (count === 1) return `${opening}; ${found.complete ? say.alone : say.aloneSoFar}`;
  const parts = [
    say.several(count),
    differenceOf(found, relation, words),
    standsOf(found, relation, words),
  ];
  const nets = parts.filter((part) => part !== '').join(', ');
  return `${opening}; ${nets}.${found.complete ? '' : ` ${words.capital(say.more)}`}`;
}

/** How the nets differ. */
function differenceOf(found: Identification, relation: Relation | null, words: ShapeWords): string {
  if (relation?.halves) return words.headline.halves;
  const turned = found.shapes.slice(1).every(({ apart }) => apart.startsWith(ONLY_TURNED));
  return turned ? words.headline.turns : '';
}

/** How core begins to tell a net that differs from the first in turns alone. */
const ONLY_TURNED = 'the kinds stand as in shape 1;';

/** Whether it matters. */
function standsOf(found: Identification, relation: Relation | null, words: ShapeWords): string {
  if (!relation?.stands) return '';
  const { decided, panels, sameIn } = relation.stands;
  const [all, say] = [found.shapes.length, words.headline];
  if (sameIn.length === all) return decided ? say.sameForDecided : say.sameForBest(panels);
  return sameIn.length > 1 ? say.sameInSome(sameIn.length, all) : say.differs;
}

/** A named subdivision in plain words. */
export function ruleOf(subdivision: Subdivision | null, words: ShapeWords): string {
  const { rule } = words;
  if (subdivision === null) return rule.none;
  const { solid, b, c, division } = subdivision;
  const steps = c === 0 ? rule.straight(b) : rule.across(b, c, rule.stars[solid]);
  return rule.of(solid, steps, division);
}

/** A probability in per cent. */
export function percentOf(share: number): string {
  if (share > 0.995) return 'over 99 %';
  if (share < 0.005) return 'under 1 %';
  return `${Math.round(100 * share)} %`;
}

/** What the lengths assume. */
export function assumesOf(pile: Pile, words: ShapeWords, lengths: Lengths): string {
  const { assumes, beyond, unknown } = words.block;
  const along = assumes[pile.measuredAlong];
  if (pile.measuredAlong === 'hubs') return along;
  if (pile.hubAllowance === null) return `${along}, ${unknown}`;
  return `${along}, ${beyond(lengths.small(pile.hubAllowance))}`;
}

/** `1, 2 and 3L`. */
export const listOf = (ids: readonly string[]): string =>
  ids.length < 2 ? ids.join('') : `${ids.slice(0, -1).join(', ')} and ${ids.at(-1)}`;
