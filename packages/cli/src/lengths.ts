// Lengths as the user asked to see them: metres and millimetres, or feet, inches and sixteenths.

import { writeLength } from '@shellraise/core';
import type { LengthSystem } from './options.ts';

/** Writers of one system. All take metres. */
export interface Lengths {
  /** The unit of `sides`, for the head of a column: `mm`, `in`. */
  readonly unit: string;
  /** The sides of a panel without their unit, three to a line: `924.0, 924.0, 1077.5`. */
  readonly sides: (metres: readonly number[]) => string;
  /** A side of a panel: `1103 mm`, `43 7/16"`. */
  readonly side: (metres: number) => string;
  /** A side where the last tenth matters: `1103.2 mm`, `43 13/32"`. */
  readonly fine: (metres: number) => string;
  /** A radius or height: `2.743 m`, `9' 0"`. */
  readonly large: (metres: number) => string;
  /** A standard deviation or misfit: `0.7 mm`, `0.03 in`. */
  readonly small: (metres: number) => string;
  /** The engine's own words, which are in millimetres, in these units. */
  readonly inWords: (text: string) => string;
  /** A misfit with its sign: `+9.1 mm`, `-0.36 in`. */
  readonly off: (metres: number) => string;
}

/** Values without their unit, three to a line. */
function inThrees(values: readonly string[]): string {
  const bare = values.map((value) => value.replace(/( mm|")$/, ''));
  const lines = bare.flatMap((_, i) => (i % 3 === 0 ? [bare.slice(i, i + 3).join(', ')] : []));
  return lines.join(',\n');
}

const metric: Lengths = {
  unit: 'mm',
  sides: (metres) => inThrees(metres.map(metric.side)),
  side: (metres) => writeLength(metres, { unit: 'mm', step: 0.5 }),
  fine: (metres) => `${(metres * 1000).toFixed(1)} mm`,
  large: (metres) => writeLength(metres, { unit: 'm' }),
  small: (metres) => `${(metres * 1000).toFixed(1)} mm`,
  off: (metres) => `${sign(metres)}${(Math.abs(metres) * 1000).toFixed(1)} mm`,
  inWords: (text) => text,
};

const inch: Lengths = {
  unit: 'in',
  sides: (metres) => inThrees(metres.map(inch.side)),
  side: (metres) => writeLength(metres, { unit: 'in', step: 16 }),
  fine: (metres) => writeLength(metres, { unit: 'in', step: 32 }),
  large: (metres) => writeLength(metres, { unit: 'ft', step: 16 }),
  small: (metres) => `${(metres / 0.0254).toFixed(metres < 0.000254 ? 3 : 2)} in`,
  off: (metres) => `${sign(metres)}${(Math.abs(metres) / 0.0254).toFixed(2)} in`,
  // Below a centimetre it is a misfit or a deviation; above, a length as on the tape.
  inWords: (text) =>
    text.replace(/(\d+(?:\.\d+)?(?:, \d+(?:\.\d+)?)*) mm\b/g, (_, list: string) =>
      list
        .split(', ')
        .map((mm) => (Number(mm) < 10 ? inch.small : inch.fine)(Number(mm) / 1000))
        .join(', '),
    ),
};

/** The writers of a system. */
export const lengthsIn = (system: LengthSystem): Lengths => (system === 'inch' ? inch : metric);

const sign = (value: number): string => (value < 0 ? '-' : '+');
