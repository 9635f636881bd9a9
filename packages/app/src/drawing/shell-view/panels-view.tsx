// Panels in three dimensions, to be turned by finger, mouse and keys. Drawn only when something
// changed. Where the browser has no WebGL, or takes it away, the same drawing stands there in SVG
// with a note, and can still be turned.

import type { Fill } from '@shellraise/core';
import { type KeyboardEvent, useCallback, useId, useRef } from 'react';
import { useWords } from '../../words/words.ts';
import type { Bearing } from './bearings.ts';
import type { Panels } from './panels.ts';
import { keyed, type View } from './pose.ts';
import { StillView } from './still-view.tsx';
import { shapeOf, useDrawing } from './use-drawing.ts';

/** What the 3D view shows of panels; see ShellView. */
export interface PanelsViewProps {
  readonly panels: Panels;
  /** Fill of a panel by its rank; keep the same function as long as the fills are the same. */
  readonly fillOf: (rank: number) => Fill | undefined;
  readonly label: string;
  readonly description?: string | undefined;
  readonly shown?: number | undefined;
  readonly growing?: boolean | undefined;
  /** Rank of the selected panel. */
  readonly selected?: number | null | undefined;
  readonly kind?: number | null | undefined;
  /** Given the rank of the panel that was pressed, null where none was. */
  readonly onPick?: ((rank: number | null) => void) | undefined;
  readonly inside?: boolean | undefined;
  readonly bearings?: readonly Bearing[] | undefined;
  /** How it is looked at first, and again whenever this changes. */
  readonly startView?: View | undefined;
  /** Room for the whole ball, however few panels there are. */
  readonly steady?: boolean | undefined;
  readonly className?: string | undefined;
}

/** The 3D view of panels. */
export function PanelsView(props: PanelsViewProps) {
  const { panels, fillOf, label, description, inside = false, bearings = none, className } = props;
  const words = useWords().shape.view;
  const id = useId();
  const host = useRef<HTMLDivElement>(null);
  const drawing = useDrawing(host, props);
  const { engine, still, view, turn, pickMiddle } = drawing;

  const stillFill = useCallback((rank: number) => fillOf(rank) ?? plain, [fillOf]);

  const press = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const next = keyed(view.current, event.key, inside);
    if (next) turn(next);
    else if (event.key === 'Enter' && props.onPick) pickMiddle();
    else return;
    event.preventDefault();
  };

  const says = [description, words.keys].filter(Boolean).join(' ');
  return (
    <div className={['shell-view', className].filter(Boolean).join(' ')}>
      <div
        ref={host}
        className="shell-view-canvas"
        data-takes-finger
        role="application"
        aria-roledescription={words.role}
        aria-label={label}
        aria-describedby={id}
        {...takesKeys}
        onKeyDown={press}
      >
        {still ? (
          <StillView
            panels={panels}
            view={still}
            fillOf={stillFill}
            width={STILL_HEIGHT * shapeOf(host.current)}
            height={STILL_HEIGHT}
            inside={inside}
            more={{ shown: props.shown ?? Infinity, selected: props.selected ?? null }}
            className="shell-view-still"
          />
        ) : null}
      </div>
      <svg className="bearings" aria-hidden="true">
        {bearings.map(({ label: text, main }) => (
          <g key={text} className={main ? 'bearing main' : 'bearing'} visibility="hidden">
            <path />
            <path d="M2 0L-9 4.5V-4.5Z" />
            <text>{text}</text>
          </g>
        ))}
      </svg>
      <span id={id} className="read-out">
        {says}
      </span>
      {engine === 'missing' || engine === 'lost' ? (
        <p className="shell-view-note" role="status">
          {words[engine]}
        </p>
      ) : null}
    </div>
  );
}

/** A drawing is no control, and yet it takes keys. */
const takesKeys = { tabIndex: 0 };
/** Millimetres: lines are as heavy as on a sheet of that height. */
const STILL_HEIGHT = 140;

const none: readonly Bearing[] = [];
const plain: Fill = { tint: null, hatch: null };
