// How the readings of one kind scatter about it, and in which directions more than noise does: the
// directions along which the kind may be two.

import { blunderCost, type Item, likeliest, readingLikelihood } from './mixture.ts';

/** Residuals of each reading in its likeliest way. */
export function residuals(
  items: readonly Item[],
  mean: readonly number[],
  sd: number,
): { item: number; off: number[] }[] {
  const cap = blunderCost(sd);
  const chance = new Float64Array(64);
  return items.flatMap((item, p) =>
    item.readings.map((reading) => {
      readingLikelihood(reading, mean, sd, cap, chance);
      const way = likeliest(chance, reading.ways);
      return {
        item: p,
        off: mean.map((x, i) => (reading.sides[way * mean.length + i] as number) - x),
      };
    }),
  );
}

/** Directions in which the residuals scatter more than noise does, most first; at most two. The
 * bound is the edge of the noise spectrum (Marchenko & Pastur 1967), n sides and m readings. */
export function scatterAxes(
  offsets: readonly { off: readonly number[] }[],
  n: number,
  sd: number,
): { axis: number[]; variance: number }[] {
  const m = offsets.length;
  const edge = sd * sd * (m < 6 ? 0.5 : (1 + Math.sqrt(n / m)) ** 2 * 0.85);
  const matrix = Array.from({ length: n }, (_, i) =>
    Array.from(
      { length: n },
      (_, j) =>
        offsets.reduce((sum, { off }) => sum + (off[i] as number) * (off[j] as number), 0) / m,
    ),
  );
  const axes: { axis: number[]; variance: number }[] = [];
  for (let k = 0; k < 2; k++) {
    const found = topAxis(matrix);
    if (found.variance <= edge) break;
    axes.push(found);
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++) {
        const row = matrix[i] as number[];
        row[j] =
          (row[j] as number) -
          found.variance * (found.axis[i] as number) * (found.axis[j] as number);
      }
  }
  return axes;
}

/** The direction of largest variance, by power iteration from the largest column. */
function topAxis(matrix: readonly (readonly number[])[]): { axis: number[]; variance: number } {
  const size = (v: readonly number[]): number => Math.sqrt(v.reduce((sum, x) => sum + x * x, 0));
  let axis = [...(matrix.reduce((a, b) => (size(b) > size(a) ? b : a)) as number[])];
  let variance = size(axis);
  if (variance === 0) return { axis: axis.map((_, i) => (i === 0 ? 1 : 0)), variance: 0 };
  for (let pass = 0; pass < 30; pass++) {
    const length = size(axis);
    const unit = axis.map((x) => x / length);
    axis = matrix.map((row) => row.reduce((sum, x, j) => sum + x * (unit[j] as number), 0));
    variance = size(axis);
    if (variance === 0) return { axis: unit, variance: 0 };
  }
  return { axis: axis.map((x) => x / variance), variance };
}
