// What the Model tab asks: the files of a scale model of the standing shell, or what stands in the way.

import {
  type ModelMade,
  type ModelRefused,
  type ModelSettings,
  type ModelSort,
  modelOf,
  type Read,
  type Shell,
  zipOf,
} from '@shellraise/core';
import type { OnPaper } from './on-paper.ts';

/** A shell with what is asked of its model, and what its papers say. */
export interface PatternQuestion extends OnPaper {
  readonly shell: Shell;
  readonly course: Int32Array | readonly number[];
  readonly numbers: readonly string[];
  /** Kind (index) → its id and its first mark. */
  readonly kinds: readonly { readonly id: string; readonly mark: string }[];
  readonly leftOut: readonly number[];
  /** Hub-to-hub length less the measured side, metres; null: unknown. */
  readonly allowance: number | null;
  /** Kind (index) → its sides → holes along each. */
  readonly holes: readonly (readonly (number | null)[])[];
  readonly sort: ModelSort;
  readonly settings: ModelSettings;
}

/** The model with all its files as one zip, or the refusal. */
export type PatternTold = (ModelMade & { readonly zip: Uint8Array }) | ModelRefused;

/** Makes the files; `onProgress` is told 0 … 1. */
export function patternsTold(
  question: PatternQuestion,
  onProgress?: (done: number) => void,
): Read<PatternTold> {
  const { shell, course, numbers, kinds, leftOut, allowance, holes, sort, settings } = question;
  const { facts, lengths } = question;
  onProgress?.(0.1);
  const made = modelOf(
    sort,
    {
      ...{ shell, course, leftOut, lengths },
      faces: numbers.map((number, p) => {
        const kind = kinds[shell.kind[p] as number];
        return { number, kind: kind?.id ?? '?', mark: kind?.mark ?? '' };
      }),
      kinds: kinds.map(({ id }) => id),
      title: facts.project,
      making: { allowance, holes: (kind) => holes[kind] ?? [] },
      facts: (sheet) => {
        const { caution, ...plain } = facts;
        return sort === 'full-size' ? { ...plain, sheet } : { ...plain, sheet, caution };
      },
    },
    settings,
  );
  onProgress?.(0.9);
  return { ok: true, value: made.ok ? { ...made, zip: zipOf(made.files) } : made };
}
