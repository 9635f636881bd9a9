// Pieces that nobody and nothing there can lift, as troubles of a plan: those that lack the same are one.

import type { TooHeavy } from './raise-tasks.ts';
import type { Trouble } from './troubles.ts';

/** Their troubles, in the order of work. Of many pieces the highest tells why, for what helps it helps
 * all, but the heaviest. */
export const heavyTroubles = (heavy: readonly TooHeavy[]): Trouble[] =>
  [...byLack(heavy).values()].map((alike) => {
    const highest = alike.reduce((most, one) => (one.high > most.high ? one : most));
    const heaviest = alike.reduce((most, one) => ((one.mass ?? 0) > (most.mass ?? 0) ? one : most));
    const helps = [...new Set([highest, heaviest].map(changeOf))];
    return {
      sort: 'too heavy',
      tasks: alike.map(({ stage, lift }) => `lift ${stage}.${lift + 1}`),
      found: `${named(alike, highest)} cannot be lifted by anybody or anything there: ${highest.why.join('; ')}`,
      change: helps.join('; '),
    };
  });

/** By what helps, whatever its amounts; a lift or pole has two that go together, so there by them too. */
function byLack(heavy: readonly TooHeavy[]): Map<string, TooHeavy[]> {
  const groups = new Map<string, TooHeavy[]>();
  for (const one of heavy) {
    const change = changeOf(one);
    const key = change.includes('hook at') ? change : change.replace(/[\d.]+/g, '');
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return groups;
}

const changeOf = ({ change }: TooHeavy): string =>
  change.replace(/^Least change that helps: /, '').replace(/\.$/, '');

function named(alike: readonly TooHeavy[], highest: TooHeavy): string {
  if (alike.length > 1) return `${alike.length} pieces (the highest: ${pieceOf(highest)})`;
  return `${pieceOf(highest)}${highest.mass === null ? '' : ','}`;
}

function pieceOf({ numbers, mass }: TooHeavy): string {
  const panels =
    numbers.length === 1
      ? `panel ${numbers[0]}`
      : `the piece of ${numbers.length} panels with ${numbers[0]}`;
  return mass === null ? panels : `${panels}, ${mass.toFixed(0)} kg`;
}
