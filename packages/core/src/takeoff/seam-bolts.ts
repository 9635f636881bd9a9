// Which bolts go through which seam. A seam's holes are said by the rules of the settings, once for
// each of its two sides; the two must agree in holes, thread and length. Where they do not, nobody
// knows which is right, so neither is taken. Lengths in metres.

import type { Kind } from '../pile/kind.ts';
import type { SideId } from '../shell/ids.ts';
import { kindSide, type Shell, seamCount } from '../shell/shell.ts';
import type { SideRule, TakeoffSettings } from './schema.ts';
import { readThread } from './threads.ts';
import { SAME_BOLT_LENGTH } from './tolerances.ts';

/** What a rule says of one side: holes along it, and the bolt through each. */
export interface SidePattern {
  readonly holes: number;
  /** Normalised, e.g. `5/16-18`. */
  readonly thread: string;
  readonly length: number;
}

/** The bolts of one seam or open side. */
export type SeamBolts =
  | { readonly status: 'known'; readonly pattern: SidePattern; readonly fromOneSide: boolean }
  | { readonly status: 'disagree'; readonly patterns: readonly [SidePattern, SidePattern] }
  | { readonly status: 'unknown' };

/** Holes counted on the panels themselves: kind → side → holes, null where nobody counted. */
export type HoleCounts = readonly (readonly (number | null)[] | null)[];

/** The pattern of every kind's sides, `null` where nothing speaks: kind → side. A rule for that
 * kind and side goes first; then a count from the panels, with the bolt of the rule for its length
 * or else the settings' `seamBolt`; then the rule for its length alone. */
export function sidePatterns(
  kinds: readonly Kind[],
  settings: TakeoffSettings,
  counts: HoleCounts = [],
): readonly (readonly (SidePattern | null)[])[] {
  return kinds.map((kind, k) =>
    kind.sides.map((length, side) => {
      const rule = ruleFor(settings.sides, kind.id, side, length);
      const counted = rule?.kind === undefined ? (counts[k]?.[side] ?? null) : null;
      const bolt = rule ?? (counted === null ? null : settings.seamBolt);
      if (bolt === null) return null;
      const holes = counted ?? rule?.holes ?? 0;
      return { holes, thread: normalThread(bolt.thread), length: bolt.length };
    }),
  );
}

/** The rule for a kind's side: counted by hand first, else the nearest by length within its
 * margin; of two equally near the first listed; null where none speaks. */
export function ruleFor(
  rules: readonly SideRule[],
  kind: string,
  side: number,
  length: number,
): SideRule | null {
  const counted = rules.find((rule) => rule.kind === kind && rule.side === side);
  if (counted !== undefined) return counted;
  const gap = (rule: SideRule): number => Math.abs((rule.sideLength ?? Infinity) - length);
  return rules
    .filter((rule) => gap(rule) <= rule.within)
    .reduce<SideRule | null>((best, rule) => (best && gap(best) <= gap(rule) ? best : rule), null);
}

/** Seam (in the order of `shell.seams`) → its bolts. A seam with a rule for one of its sides only
 * takes that one and says so. */
export function seamBolts(
  shell: Shell,
  kinds: readonly Kind[],
  settings: TakeoffSettings,
  counts: HoleCounts = [],
): SeamBolts[] {
  const patterns = sidePatterns(kinds, settings, counts);
  return Array.from({ length: seamCount(shell) }, (_, i) =>
    agree(
      patternAt(shell, patterns, shell.seams[2 * i] as SideId),
      patternAt(shell, patterns, shell.seams[2 * i + 1] as SideId),
    ),
  );
}

/** The pattern on a side of the shell, or null where no rule speaks. */
export function patternAt(
  shell: Shell,
  patterns: readonly (readonly (SidePattern | null)[])[],
  side: SideId,
): SidePattern | null {
  const kind = shell.kind[shell.sidePlace[side] as number] as number;
  return patterns[kind]?.[kindSide(shell, side)] ?? null;
}

function agree(a: SidePattern | null, b: SidePattern | null): SeamBolts {
  if (a === null && b === null) return { status: 'unknown' };
  if (a === null || b === null)
    return { status: 'known', pattern: (a ?? b) as SidePattern, fromOneSide: true };
  const same =
    a.holes === b.holes &&
    a.thread === b.thread &&
    Math.abs(a.length - b.length) <= SAME_BOLT_LENGTH;
  if (!same) return { status: 'disagree', patterns: [a, b] };
  return { status: 'known', pattern: a, fromOneSide: false };
}

/** The short form of a thread that the schema has already accepted; throws on any other text. */
export function normalThread(text: string): string {
  const read = readThread(text);
  if (!read.ok) throw new Error(`"${text}" is no thread: settings were not validated`);
  return read.value.designation;
}
