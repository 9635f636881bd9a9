// A row of tabs over one pane; the arrow keys go from tab to tab.

import { type KeyboardEvent, type ReactNode, useId, useRef } from 'react';

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
  children,
}: {
  label: string;
  tabs: readonly Tab<K>[];
  chosen: K;
  onChoose: (key: K) => void;
  className?: string;
  children: ReactNode;
}) {
  const id = useId();
  const row = useRef<HTMLDivElement>(null);
  const press = (event: KeyboardEvent): void => {
    const step = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
    if (step === 0) return;
    event.preventDefault();
    const at = tabs.findIndex(({ key }) => key === chosen);
    const next = (at + step + tabs.length) % tabs.length;
    const to = tabs[next];
    if (!to) return;
    onChoose(to.key);
    const button = row.current?.children[next];
    if (button instanceof HTMLElement) button.focus();
  };
  return (
    <div className={['tabs', className].filter(Boolean).join(' ')}>
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
