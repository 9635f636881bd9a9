// A list that a person keeps: each row with its fields and a button that takes it out. What was typed into a
// row stays with that row; who takes one out by keyboard goes on at the next.

import { type ReactNode, useEffect, useRef } from 'react';
import { useRowKeys } from './row-keys.ts';

/** The list. `children`: a row's fields; `change` writes the row anew. */
export function Rows<T extends object>({
  rows,
  onRows,
  removeLabel,
  removeShort,
  className = '',
  rowClassName = '',
  isOrdered = false,
  acts,
  children,
}: {
  rows: readonly T[];
  onRows: (rows: T[]) => void;
  /** What the button of a row is called, by the row and its turn. */
  removeLabel: (row: T, index: number) => string;
  removeShort: string;
  className?: string;
  rowClassName?: string;
  isOrdered?: boolean;
  /** Further buttons of a row, before the one that takes it out. */
  acts?: (row: T, index: number) => ReactNode;
  children: (row: T, change: (next: T) => void, index: number) => ReactNode;
}) {
  const keys = useRowKeys(rows);
  const list = useRef<HTMLDivElement>(null);
  const taken = useRef<number | null>(null);
  useEffect(() => {
    if (taken.current === null || list.current === null) return;
    const buttons = [...list.current.querySelectorAll<HTMLElement>('[data-takes-out]')];
    (buttons[taken.current] ?? buttons.at(-1) ?? list.current).focus();
    taken.current = null;
  });
  const List = isOrdered ? 'ol' : 'ul';
  return (
    <div ref={list} tabIndex={-1}>
      <List className={className}>
        {rows.map((row, i) => (
          <li key={keys[i]} className={rowClassName}>
            {children(row, (next) => onRows(rows.map((was, k) => (k === i ? next : was))), i)}
            <span className="row-acts">
              {acts?.(row, i)}
              <button
                type="button"
                data-takes-out
                aria-label={removeLabel(row, i)}
                onClick={() => {
                  taken.current = i;
                  onRows(rows.filter((_, k) => k !== i));
                }}
              >
                {removeShort}
              </button>
            </span>
          </li>
        ))}
      </List>
    </div>
  );
}
