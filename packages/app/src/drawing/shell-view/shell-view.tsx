// A shell in three dimensions: a working drawing that can be turned. Panels in their kind's tint,
// seams thin, outline and base ring heavy, what lies behind hidden.

import type { Fill, Shell } from '@shellraise/core';
import { useMemo } from 'react';
import type { Bearing } from './bearings.ts';
import { panelsOfShell } from './panels.ts';
import { PanelsView } from './panels-view.tsx';
import type { View } from './pose.ts';

/** What the 3D view shows. Objects and lists should stay the same from one drawing to the next as
 * long as what they say is the same. */
export interface ShellViewProps {
  readonly shell: Shell;
  /** Kind (index) → its fill; only the tint is drawn. White where not given. */
  readonly fills?: readonly Fill[] | undefined;
  /** Place → its fill, before that of its kind: for colouring by course, condition or stock. */
  readonly placeFills?: readonly (Fill | undefined)[] | undefined;
  /** Selected place. */
  readonly selected?: number | null | undefined;
  /** Index of a kind whose panels are shown up. */
  readonly kind?: number | null | undefined;
  /** Given the place that was pressed, null where none was. */
  readonly onPick?: ((place: number | null) => void) | undefined;
  /** Only the first so many places, in `order`. */
  readonly shown?: number | undefined;
  /** Places in the order in which they appear; their own order where not given. */
  readonly order?: readonly number[] | undefined;
  /** Panels that appeared last stand out. */
  readonly growing?: boolean | undefined;
  /** Places that are left open. */
  readonly leftOut?: ReadonlySet<number> | undefined;
  /** Standing on the floor in the middle, looking up. */
  readonly fromInside?: boolean | undefined;
  /** Directions on the ground: the datum, the door, north. */
  readonly bearings?: readonly Bearing[] | undefined;
  /** How it is looked at first, and again whenever this changes. */
  readonly startView?: View | undefined;
  /** Names the drawing for those who don't see it. */
  readonly label: string;
  /** Says in words what it shows. */
  readonly description?: string | undefined;
  readonly className?: string | undefined;
}

export type { Bearing } from './bearings.ts';

/** The 3D view of a shell. */
export function ShellView(props: ShellViewProps) {
  const { shell, order, leftOut, fills, placeFills, selected = null, onPick, fromInside } = props;
  const panels = useMemo(
    () => panelsOfShell(shell, { ...(order && { order }), ...(leftOut && { leftOut }) }),
    [shell, order, leftOut],
  );
  const fillOf = useMemo(
    () =>
      (rank: number): Fill | undefined =>
        placeFills?.[panels.place[rank] as number] ?? fills?.[panels.kind[rank] as number],
    [panels, fills, placeFills],
  );
  const rank = selected === null ? -1 : panels.place.indexOf(selected);
  const { kind, shown, growing, bearings, startView, label, description, className } = props;
  return (
    <PanelsView
      panels={panels}
      fillOf={fillOf}
      selected={rank < 0 ? null : rank}
      onPick={
        onPick && ((picked) => onPick(picked === null ? null : (panels.place[picked] ?? null)))
      }
      inside={fromInside}
      {...{ kind, shown, growing, bearings, startView, label, description, className }}
    />
  );
}
