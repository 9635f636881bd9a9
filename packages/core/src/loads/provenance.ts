// Where a number came from, and how far that is confirmed. A result carries the sources of every
// number it was reckoned from, so that no screen or sheet can show it without its flags.

/** How far a number is confirmed, the surest first. `confirmed`: read in the source or reckoned
 * twice from it. `entered`: the lead's own number, with the reason given. `from memory`: the source
 * is named but was not at hand. `common practice`: no published source. */
export const CONFIRMATIONS = ['confirmed', 'entered', 'from memory', 'common practice'] as const;

/** How far a number is confirmed: one of {@link CONFIRMATIONS}. */
export type Confirmation = (typeof CONFIRMATIONS)[number];

/** A source of a number: title, edition and clause; or the lead's reason. */
export interface Provenance {
  readonly text: string;
  readonly confirmation: Confirmation;
}

/** A value with every source that it rests on, each once. */
export interface Sourced<T = number> {
  readonly value: T;
  readonly sources: readonly Provenance[];
}

/** A source that was read or reckoned again.
 * Source: none, it makes plain data. */
export const confirmed = (text: string): Provenance => ({ text, confirmation: 'confirmed' });

/** A source named from memory.
 * Source: none, it makes plain data. */
export const fromMemory = (text: string): Provenance => ({ text, confirmation: 'from memory' });

/** What people do, with no published source.
 * Source: none, it makes plain data. */
export const commonPractice = (text: string): Provenance => ({
  text,
  confirmation: 'common practice',
});

/** All sources of the lists in the order met, each once.
 * Source: none, it sorts plain data. */
export function mergeSources(...lists: readonly (readonly Provenance[])[]): Provenance[] {
  const seen = new Set<string>();
  return lists.flat().filter((source) => {
    const key = `${source.confirmation}|${source.text}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/** A value reckoned from others, with the sources of them all.
 * Source: none, it keeps what it is given. */
export const reckonedFrom = <T>(value: T, ...parts: readonly Sourced<unknown>[]): Sourced<T> => ({
  value,
  sources: mergeSources(...parts.map((part) => part.sources)),
});

/** The value with further sources of its own (the clause that it was reckoned by).
 * Source: none, it keeps what it is given. */
export const withSources = <T>(
  part: Sourced<T>,
  ...sources: readonly Provenance[]
): Sourced<T> => ({
  value: part.value,
  sources: mergeSources(part.sources, sources),
});

/** The sum of values, with the sources of them all; nothing sums to 0 with no source.
 * Source: none, plain arithmetic. */
export const sumOf = (...parts: readonly Sourced[]): Sourced =>
  reckonedFrom(
    parts.reduce((sum, part) => sum + part.value, 0),
    ...parts,
  );

/** The product of values, with the sources of them all; of none 1.
 * Source: none, plain arithmetic. */
export const productOf = (...parts: readonly Sourced[]): Sourced =>
  reckonedFrom(
    parts.reduce((product, part) => product * part.value, 1),
    ...parts,
  );

/** The least sure confirmation among sources; `confirmed` where there are none.
 * Source: none, the order is that of {@link CONFIRMATIONS}. */
export function weakest(sources: readonly Provenance[]): Confirmation {
  const rank = Math.max(
    0,
    ...sources.map(({ confirmation }) => CONFIRMATIONS.indexOf(confirmation)),
  );
  return CONFIRMATIONS[rank] as Confirmation;
}

/** The sources that a screen or sheet must tell beside the number: all but the confirmed ones, the
 * least sure first.
 * Source: none, it sorts plain data. */
export const flagsOf = ({ sources }: Pick<Sourced<unknown>, 'sources'>): Provenance[] =>
  sources
    .filter(({ confirmation }) => confirmation !== 'confirmed')
    .sort((a, b) => CONFIRMATIONS.indexOf(b.confirmation) - CONFIRMATIONS.indexOf(a.confirmation));
