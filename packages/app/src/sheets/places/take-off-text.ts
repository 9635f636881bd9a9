// The take-off in words: one line a size, as it is read out, copied or sent to the shop.

import { type BuyLine, sizeWords, type TakeOff } from '@shellraise/core';
import type { Words } from '../../words/words.ts';

type TakeOffWords = Words['places']['takeOff'];

/** `bolt 5/16-18 × 1″`. */
export const nameOfLine = (line: BuyLine): string => `${line.item} ${sizeWords(line)}`.trim();

/** A quantity with its unit: pieces as they are, metres named. */
export const quantityWords = (quantity: number, { unit }: Pick<BuyLine, 'unit'>): string =>
  unit === 'm' ? `${Math.round(quantity * 10) / 10} m` : String(quantity);

/** `150 (3 packs of 50)`; empty where nothing is to be bought. */
export function buyWords(line: BuyLine, words: TakeOffWords): string {
  if (line.toBuy === 0) return '';
  const all = quantityWords(line.toBuy, line);
  return line.pack > 1 ? `${all} (${words.packs(line.packs, line.pack)})` : all;
}

/** The list as plain text: what is to be bought first, then what is in hand, then the cautions. */
export function takeOffText(
  { lines, cautions }: TakeOff,
  title: string,
  words: TakeOffWords,
): string {
  const written = (line: BuyLine): string =>
    words.line(
      nameOfLine(line),
      quantityWords(line.quantity, line),
      quantityWords(line.inHand, line),
      buyWords(line, words),
    );
  const buy = lines.filter((line) => line.toBuy > 0);
  const have = lines.filter((line) => line.toBuy === 0);
  return [
    `${title}: ${words.heading}`,
    '',
    words.buy,
    ...(buy.length > 0 ? buy.map(written) : [words.nothingToBuy]),
    ...(have.length > 0 ? ['', ...have.map(written)] : []),
    '',
    ...cautions,
    '',
  ].join('\n');
}
