// Which settings each sort of model asks for, and how sizes are read.

import type { ModelSettings, ModelSort } from '@shellraise/core';
import type { Typed } from '../../ui/use-typed.ts';

/** Sort → its settings, in the order they are asked for. */
export const settingsOf: Readonly<Record<ModelSort, readonly (keyof ModelSettings)[]>> = {
  net: ['scale', 'paper'],
  strips: ['scale', 'paper'],
  cut: ['scale', 'sheet', 'thickness', 'kerf', 'joint', 'snap'],
  print: ['scale', 'wall', 'bed'],
  snap: ['scale', 'wall', 'bed', 'peg', 'clearance'],
  'full-size': ['paper', 'flange', 'plate', 'hole', 'floor'],
};

/** A number as typed, with a point or a comma; `25`, `1 : 25`, `3 mm`. */
export function readNumber(text: string): Typed<number> {
  const bare = text
    .trim()
    .replace(',', '.')
    .replace(/\s*mm$/, '')
    .replace(/^1\s*:\s*/, '');
  const value = Number(bare);
  return bare !== '' && Number.isFinite(value) && value >= 0 ? { ok: true, value } : { ok: false };
}

/** So many numbers with an x between, each above 0. */
export const readSizes =
  (count: number) =>
  (text: string): Typed<number[]> => {
    const values = text.split(/[x×]/i).map((part) => {
      const read = readNumber(part);
      return read.ok ? read.value : 0;
    });
    return values.length === count && values.every((value) => value > 0)
      ? { ok: true, value: values }
      : { ok: false };
  };

/** Sizes as they are typed. */
export const writeSizes = (sizes: readonly number[]): string => sizes.join(' x ');
