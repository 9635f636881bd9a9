// Lengths, lists and kinds in the words of the engine.

/** Lengths (metres) in millimetres, as fine as it takes to tell them apart. */
export function lengthTexts(lengths: readonly number[]): string[] {
  const near = lengths.some((a, i) => lengths.slice(0, i).some((b) => Math.abs(a - b) < 0.002));
  return lengths.map((length) => `${(1000 * length).toFixed(near ? 1 : 0)} mm`);
}

/** A length, metres, in millimetres: to a tenth below a centimetre. */
export const lengthText = (length: number): string =>
  `${(1000 * length).toFixed(Math.abs(length) < 0.01 ? 1 : 0)} mm`;

/** "1, 2 or 3". */
export const orList = (texts: readonly string[]): string => listWith(texts, 'or');

/** "1, 2 and 3". */
export const andList = (texts: readonly string[]): string => listWith(texts, 'and');

const listWith = (texts: readonly string[], word: string): string =>
  texts.length < 2
    ? (texts[0] ?? '')
    : `${texts.slice(0, -1).join(', ')} ${word} ${texts.at(-1) as string}`;
