// A row of tabs over one pane; the arrow keys go from tab to tab, and so does a finger drawn across
// where that is wanted.

import {
  type KeyboardEvent,
  type PointerEvent,
  type ReactNode,
  useEffect,
  useId,
  useRef,
} from 'react';
import { type Stroke, stepOf, strokeFrom } from './swipe.ts';

/** One tab. */
export interface Tab<K extends string> {
  readonly key: K;
  readonly label: string;
}

/** The tabs with the pane of the chosen one. */
export function Tabs<K extends string>({
  label,
  tabs,
  chosen,
  onChoose,
  className,
  swiped = false,
  children,
}: {
  label: string;
  tabs: readonly Tab<K>[];
  chosen: K;
  onChoose: (key: K) => void;
  className?: string;
  /** Whether a finger drawn across goes to the tab beside. */
  swiped?: boolean;
  children: ReactNode;
}) {
  const id = useId();
  const row = useRef<HTMLDivElement>(null);
  const stroke = useRef<Stroke | null>(null);
  const pane = useRef<HTMLDivElement>(null);
  // Another tab begins at its top.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the tab is what it waits for
  useEffect(() => {
    if (pane.current) pane.current.scrollTop = 0;
  }, [chosen]);
  const at = tabs.findIndex(({ key }) => key === chosen);
  const press = (event: KeyboardEvent): void => {
    const step = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
    if (step === 0) return;
    event.preventDefault();
    const next = (at + step + tabs.length) % tabs.length;
    const to = tabs[next];
    if (!to) return;
    onChoose(to.key);
    const button = row.current?.children[next];
    if (button instanceof HTMLElement) button.focus();
  };
  const swipe = swiped && {
    onPointerDown: (event: PointerEvent<Element>) => {
      stroke.current = event.isPrimary ? strokeFrom(event) : null;
    },
    onPointerUp: (event: PointerEvent<Element>) => {
      const to = stroke.current && tabs[at + stepOf(stroke.current, event)];
      stroke.current = null;
      if (to && to.key !== chosen) onChoose(to.key);
    },
  };
  return (
    <div className={['tabs', swiped && 'swiped', className].filter(Boolean).join(' ')} {...swipe}>
      <div ref={row} className="tab-row screen-only" role="tablist" aria-label={label}>
        {tabs.map(({ key, label: name }) => (
          <button
            key={key}
            type="button"
            role="tab"
            id={`${id}-${key}`}
            aria-selected={key === chosen}
            aria-controls={`${id}-pane`}
            tabIndex={key === chosen ? 0 : -1}
            onClick={() => onChoose(key)}
            onKeyDown={press}
          >
            {name}
          </button>
        ))}
      </div>
      <div
        ref={pane}
        className="tab-pane"
        role="tabpanel"
        id={`${id}-pane`}
        aria-labelledby={`${id}-${chosen}`}
        {...reachable}
      >
        {children}
      </div>
    </div>
  );
}

/** A pane that scrolls must be reachable by keyboard. */
const reachable = { tabIndex: 0 };
