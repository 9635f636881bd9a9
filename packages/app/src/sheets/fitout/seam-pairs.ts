// Which places share a seam, by their numbers.

import { lyingSeams, type Shell } from '@shellraise/core';

/** Whether two places share a seam; numbers that are none share none. */
export function sharesSeam(
  shell: Shell,
  numbers: readonly string[],
): (a: string, b: string) => boolean {
  const pairs = new Set(
    lyingSeams(shell).flatMap(({ over, under }) => [
      `${numbers[over]} ${numbers[under]}`,
      `${numbers[under]} ${numbers[over]}`,
    ]),
  );
  return (a, b) => pairs.has(`${a} ${b}`);
}
