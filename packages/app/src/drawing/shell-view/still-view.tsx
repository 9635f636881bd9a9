// The shell as a drawing that stands still, in SVG.

import type { Fill } from '@shellraise/core';
import { useMemo } from 'react';
import { usePrinting } from '../../ui/use-printing.ts';
import { SvgItems } from '../svg-items.tsx';
import type { Panels } from './panels.ts';
import { poseOf, roomOf, type View } from './pose.ts';
import { type StillOptions, stillItems } from './still.ts';

/** What a still drawing shows. */
export interface StillViewProps {
  readonly panels: Panels;
  readonly view: View;
  readonly fillOf: (rank: number) => Fill;
  /** Millimetres; lines are as heavy as on a sheet of that size. */
  readonly width: number;
  readonly height: number;
  /** Read out in its place; where it is empty the words beside it say all. */
  readonly label?: string;
  readonly inside?: boolean;
  readonly more?: Pick<StillOptions, 'shown' | 'selected' | 'marked' | 'seam'>;
  readonly className?: string;
}

/** A still drawing of panels. */
export function StillView(props: StillViewProps) {
  const { panels, view, fillOf, width, height, label, inside = false, more, className } = props;
  const items = useMemo(() => {
    const pose = poseOf(view, roomOf(panels), width / height, inside);
    return stillItems(panels, pose, { width, height, fillOf, inside, ...more });
  }, [panels, view, fillOf, width, height, inside, more]);
  const box = `0 0 ${width} ${height}`;
  const drawn = <SvgItems items={items} onPaper={usePrinting()} />;
  return label ? (
    <svg className={className} viewBox={box} role="img" aria-label={label}>
      {drawn}
    </svg>
  ) : (
    <svg className={className} viewBox={box} aria-hidden="true">
      {drawn}
    </svg>
  );
}
