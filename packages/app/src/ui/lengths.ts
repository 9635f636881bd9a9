// Lengths as this person reads them: the chosen system first, the other as its echo.

import { type LengthStyle, type LengthUnit, writeLength } from '@shellraise/core';
import type { LengthSystem } from '../state/settings.ts';

/** Writers of one system. All take metres. */
export interface Lengths {
  readonly system: LengthSystem;
  /** The unit a bare number is in when typed. */
  readonly bare: LengthUnit;
  /** A side of a panel: `1103.5 mm`, `43 7/16"`. */
  readonly side: (metres: number) => string;
  /** The same in the other system. */
  readonly echo: (metres: number) => string;
  /** A radius or height: `2.743 m`, `9' 0"`. */
  readonly large: (metres: number) => string;
  /** The same in the other system. */
  readonly largeEcho: (metres: number) => string;
  /** A way on foot: `14.4 m`, `47' 0"`. */
  readonly far: (metres: number) => string;
  /** A standard deviation or misfit: `0.7 mm`, `0.03 in`. */
  readonly small: (metres: number) => string;
  /** A misfit with its sign: `+9.1 mm`, `−0.36 in`. */
  readonly off: (metres: number) => string;
}

const styles = {
  side: { metric: { unit: 'mm', step: 0.5 }, inch: { unit: 'in', step: 16 } },
  large: { metric: { unit: 'm' }, inch: { unit: 'ft', step: 16 } },
} as const satisfies Record<string, Record<LengthSystem, LengthStyle>>;

/** Drops a nought after the point: `1103.0 mm` is `1103 mm`. */
const trimmed = (text: string): string => text.replace(/\.0 mm$/, ' mm');

const other = (system: LengthSystem): LengthSystem => (system === 'metric' ? 'inch' : 'metric');

function small(metres: number, system: LengthSystem): string {
  const size = Math.abs(metres);
  return system === 'metric'
    ? `${(size * 1000).toFixed(1)} mm`
    : `${(size / 0.0254).toFixed(size < 0.000254 ? 3 : 2)} in`;
}

/** The writers of a system. */
export function lengthsIn(system: LengthSystem): Lengths {
  const write = (use: keyof typeof styles, own: LengthSystem) => (metres: number) =>
    trimmed(writeLength(metres, styles[use][own]));
  return {
    system,
    bare: system === 'metric' ? 'mm' : 'in',
    side: write('side', system),
    echo: write('side', other(system)),
    large: write('large', system),
    largeEcho: write('large', other(system)),
    far: (metres) =>
      system === 'metric'
        ? `${metres.toFixed(1)} m`
        : write('large', system)(0.3048 * Math.round(metres / 0.3048)),
    small: (metres) => small(metres, system),
    off: (metres) => `${metres < 0 ? '−' : '+'}${small(metres, system)}`,
  };
}
