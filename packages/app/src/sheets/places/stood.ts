// The standing shell as the sheet shows it: what the engine stood up, with the kinds it was made of.

import type { Kind, Shape } from '@shellraise/core';
import { useCallback, useMemo } from 'react';
import type { Picked } from '../../drawing/plan-view/pick.ts';
import type { StandingShell } from '../../engine/api.ts';
import { useApp, useAppState } from '../../ui/app-context.tsx';
import { pickedOf, selectionOf } from './selected.ts';

/** A standing shell with its kinds. */
export interface Stood {
  readonly standing: StandingShell;
  readonly kinds: readonly Kind[];
  /** The shape that it is a part of, with the whole net. */
  readonly shape: Shape;
}

/** The selected thing of a standing shell, places of the selected kind or those selected together, and
 * the way to pick. */
export function usePicked({ standing, kinds }: Stood) {
  const app = useApp();
  const selection = useAppState((state) => state.selection);
  const { shell } = standing.standing;
  const numbered = useMemo(() => ({ shell, numbers: standing.numbers }), [shell, standing]);
  const picked = useMemo(() => pickedOf(selection, numbered), [selection, numbered]);
  const kind = selection?.type === 'kind' ? selection.id : null;
  const several = selection?.type === 'places' ? selection.numbers : null;
  const marked = useMemo(() => {
    if (several)
      return several.map((number) => numbered.numbers.indexOf(number)).filter((p) => p >= 0);
    const index = kinds.findIndex(({ id }) => id === kind);
    return index < 0 ? none : Array.from(shell.kind.keys()).filter((p) => shell.kind[p] === index);
  }, [kind, several, kinds, shell, numbered]);
  const pick = useCallback(
    (next: Picked | null) => app.select(selectionOf(next, numbered)),
    [app, numbered],
  );
  return { picked, kind, marked, pick };
}

const none: readonly number[] = [];

/** The kinds with their sides as the shape has them. */
export const fittedKinds = ({ kinds, shape }: Stood): readonly Kind[] =>
  kinds.map((kind, k) => ({ ...kind, sides: shape.fittedSides[k] ?? kind.sides }));
