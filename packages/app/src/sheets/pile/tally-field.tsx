// The field in the cell that is typed in: a text, or a choice for the face and the condition. What
// was typed is written when the cell is left, and when the page goes out of sight.

import {
  type KeyboardEvent,
  useCallback,
  useEffect,
  useLayoutEffect,
  useRef,
  useState,
} from 'react';
import { useApp } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import type { Cell } from './cells.ts';
import type { TallyActions } from './use-tally.ts';
import type { Walk } from './walk.ts';

/** A field. `text` is what the cell holds; `onTyped` hears every change. */
export interface FieldProps {
  readonly row: number;
  readonly cell: Cell;
  readonly text: string;
  readonly label: string;
  readonly describedBy: string;
  readonly fault: boolean;
  readonly actions: TallyActions;
  readonly suggestions: string | undefined;
  readonly onTyped: (text: string | null) => void;
}

/** The field of a cell. */
export function TallyField(props: FieldProps) {
  return props.cell === 'seenFrom' || props.cell === 'condition' ? (
    <ChoiceField {...props} cell={props.cell} />
  ) : (
    <TextField {...props} />
  );
}

function TextField(props: FieldProps) {
  const { row, cell, text, label, describedBy, fault, actions, suggestions, onTyped } = props;
  const app = useApp();
  const [typed, setTyped] = useState(text);
  const input = useRef<HTMLInputElement>(null);
  const state = useRef({ typed: text, done: false });
  useLayoutEffect(() => {
    takeFocus(input.current);
    input.current?.select();
    return () => onTyped(null);
  }, [onTyped]);
  const put = (next: string): void => {
    state.current = { typed: next, done: false };
    setTyped(next);
    onTyped(next);
  };
  const write = useCallback((): void => {
    const { typed: now, done } = state.current;
    if (done || now === text) return;
    state.current = { typed: now, done: true };
    actions.write(row, cell, now);
  }, [actions, row, cell, text]);
  useEffect(() => {
    const leave = (): void => {
      if (document.visibilityState !== 'hidden') return;
      write();
      void app.save();
    };
    document.addEventListener('visibilitychange', leave);
    return () => document.removeEventListener('visibilitychange', leave);
  }, [app, write]);
  const hear = (event: KeyboardEvent<HTMLInputElement>): void => {
    if (event.nativeEvent.isComposing) return;
    if (event.key === 'Escape') {
      event.preventDefault();
      if (state.current.typed !== text) {
        put(text);
        requestAnimationFrame(() => input.current?.select());
      } else if (fault) actions.forgetUnread(row);
      return;
    }
    const undo = event.key.toLowerCase() === 'z' && (event.ctrlKey || event.metaKey);
    if (undo && state.current.typed !== text) {
      // What is being typed is taken back first, by the field itself.
      event.stopPropagation();
      return;
    }
    if (cell === 'count' && event.key === '+') {
      event.preventDefault();
      write();
      actions.countUp(row, 1);
      return;
    }
    const field = event.currentTarget;
    const all = field.selectionStart === 0 && field.selectionEnd === field.value.length;
    // Up and down choose among the names offered, once one was begun.
    const offered = suggestions !== undefined && state.current.typed !== text;
    if (offered && (event.key === 'ArrowUp' || event.key === 'ArrowDown')) return;
    const step = stepOf(event, {
      left: all || (field.selectionStart === 0 && field.selectionEnd === 0),
      right: all || field.selectionStart === field.value.length,
    });
    if (step === null) return;
    write();
    if (actions.walk(step)) event.preventDefault();
  };
  return (
    <input
      ref={input}
      className="tally-field"
      value={typed}
      aria-label={label}
      aria-describedby={describedBy}
      aria-invalid={fault}
      autoComplete="off"
      autoCapitalize="off"
      spellCheck={false}
      maxLength={cell === 'tag' || cell === 'mark' || cell === 'by' ? 60 : 64}
      list={suggestions}
      onChange={(event) => put(event.target.value)}
      onKeyDown={hear}
      onBlur={write}
    />
  );
}

/** Focuses a field and brings its whole cell in sight. */
function takeFocus(field: HTMLElement | null): void {
  field?.focus({ preventScroll: true });
  field?.closest('td')?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
}

function ChoiceField(props: FieldProps & { cell: 'seenFrom' | 'condition' }) {
  const { row, cell, text, label, describedBy, actions } = props;
  const words = useWords().pile.tally;
  const select = useRef<HTMLSelectElement>(null);
  useLayoutEffect(() => takeFocus(select.current), []);
  const options = Object.entries<string>(words[cell]);
  return (
    <select
      ref={select}
      className="tally-field"
      value={text}
      aria-label={label}
      aria-describedby={describedBy}
      onChange={(event) => actions.write(row, cell, event.target.value)}
      onKeyDown={(event) => {
        const step = event.altKey ? null : stepOf(event, { left: true, right: true });
        if (step !== null && actions.walk(step)) event.preventDefault();
      }}
    >
      {options.map(([value, name]) => (
        <option key={value} value={value}>
          {value === '' ? words.conditionNone : name}
        </option>
      ))}
    </select>
  );
}

/** The step that a key asks for. Left and right leave a text only from its ends. */
function stepOf(
  event: { key: string; shiftKey: boolean; ctrlKey: boolean; metaKey: boolean },
  ends: { left: boolean; right: boolean },
): Walk | null {
  const { key, shiftKey } = event;
  const strong = event.ctrlKey || event.metaKey;
  switch (key) {
    case 'Enter':
      return strong ? null : shiftKey ? 'back' : 'enter';
    case 'Tab':
      return strong ? null : shiftKey ? 'tab back' : 'tab';
    case 'ArrowUp':
      return 'up';
    case 'ArrowDown':
      return 'down';
    case 'ArrowLeft':
      return ends.left && !shiftKey ? 'left' : null;
    case 'ArrowRight':
      return ends.right && !shiftKey ? 'right' : null;
    case 'PageUp':
      return 'page up';
    case 'PageDown':
      return 'page down';
    case 'Home':
      return strong ? 'top' : ends.left ? 'first' : null;
    case 'End':
      return strong ? 'end' : ends.right ? 'last' : null;
    default:
      return null;
  }
}
