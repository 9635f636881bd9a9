// Sentences of the engine with the lengths in them written as this person reads them: core writes
// millimetres and metres.

import type { Lengths } from './lengths.ts';

/** Below this a length in a sentence is a misfit or a gap rather than a side, metres. A length with a
 * fraction of a millimetre is to be told from another like it: it stays as fine. */
const SMALL = 0.05;

/** The sentence with its lengths in this person's system. */
export function inOwnLengths(text: string, lengths: Lengths): string {
  if (lengths.system === 'metric') return text;
  return text
    .replace(/(\d[\d,]*(?:\.\d+)?) mm\b/g, (_, figures: string) => {
      const metres = Number(figures.replaceAll(',', '')) / 1000;
      return metres < SMALL || figures.includes('.') ? lengths.small(metres) : lengths.side(metres);
    })
    .replace(/(\d+(?:\.\d+)?) m\b/g, (_, figures: string) => lengths.large(Number(figures)));
}
