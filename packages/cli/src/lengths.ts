// Lengths as the user asked to see them: metres and millimetres, or feet, inches and sixteenths.

import { writeLength } from '@shellraise/core';
import type { LengthSystem } from './options.ts';

/** Writers of one system. All take metres. */
export interface Lengths {
  /** A side of a panel: `1103 mm`, `43 7/16"`. */
  readonly side: (metres: number) => string;
  /** A side where the last tenth matters: `1103.2 mm`, `43 13/32"`. */
  readonly fine: (metres: number) => string;
  /** A radius or height: `2.743 m`, `9' 0"`. */
  readonly large: (metres: number) => string;
  /** A standard deviation or misfit: `0.7 mm`, `0.03 in`. */
  readonly small: (metres: number) => string;
  /** A misfit with its sign: `+9.1 mm`, `-0.36 in`. */
  readonly off: (metres: number) => string;
}

const metric: Lengths = {
  side: (metres) => writeLength(metres, { unit: 'mm', step: 0.5 }),
  fine: (metres) => `${(metres * 1000).toFixed(1)} mm`,
  large: (metres) => writeLength(metres, { unit: 'm' }),
  small: (metres) => `${(metres * 1000).toFixed(1)} mm`,
  off: (metres) => `${sign(metres)}${(Math.abs(metres) * 1000).toFixed(1)} mm`,
};

const inch: Lengths = {
  side: (metres) => writeLength(metres, { unit: 'in', step: 16 }),
  fine: (metres) => writeLength(metres, { unit: 'in', step: 32 }),
  large: (metres) => writeLength(metres, { unit: 'ft', step: 16 }),
  small: (metres) => `${(metres / 0.0254).toFixed(2)} in`,
  off: (metres) => `${sign(metres)}${(Math.abs(metres) / 0.0254).toFixed(2)} in`,
};

/** The writers of a system. */
export const lengthsIn = (system: LengthSystem): Lengths => (system === 'inch' ? inch : metric);

const sign = (value: number): string => (value < 0 ? '-' : '+');
