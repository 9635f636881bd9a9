// Finding a place, a kind's mark or a panel's tag; Ctrl+K goes to it from anywhere on the sheet.

import { type KeyboardEvent, useEffect, useId, useMemo, useRef, useState } from 'react';
import { projectOf } from '../../state/app-state.ts';
import { useApp, useAppState, useDerived } from '../../ui/app-context.tsx';
import { isPressed } from '../../ui/keys.ts';
import { useWords } from '../../words/words.ts';
import { type Found, search } from './search.ts';
import type { Stood } from './stood.ts';
import { tagsOf } from './tags.ts';

/** The field with its results. */
export function SearchBox({ stood: { standing, kinds } }: { stood: Stood }) {
  const words = useWords().places.search;
  const app = useApp();
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  const [query, setQuery] = useState('');
  const [open, setOpen] = useState(false);
  const [at, setAt] = useState(0);
  const findable = useFindable({ standing, kinds });
  const results = useMemo(() => (open ? search(query, findable) : []), [open, query, findable]);
  useFocusKey(field);

  const close = (): void => {
    setOpen(false);
    setAt(0);
  };
  const choose = (found: Found | undefined): void => {
    if (!found) return;
    if (found.type === 'place') app.select({ type: 'place', number: found.number });
    else if (found.kind !== null) app.select({ type: 'kind', id: found.kind });
    setQuery(nameOf(found));
    close();
  };
  const press = (event: KeyboardEvent): void => {
    if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      const step = event.key === 'ArrowDown' ? 1 : -1;
      setOpen(true);
      if (results.length > 0) setAt((at + step + results.length) % results.length);
    } else if (event.key === 'Enter') choose(results[at]);
    else if (event.key === 'Escape' && (open || query !== '')) {
      if (!open) setQuery('');
      close();
    } else return;
    event.preventDefault();
  };
  const shown = open && query.trim() !== '';
  return (
    <div className="search screen-only">
      <input
        ref={field}
        type="search"
        role="combobox"
        aria-label={words.label}
        aria-expanded={shown && results.length > 0}
        aria-controls={`${id}-list`}
        aria-autocomplete="list"
        aria-activedescendant={shown && results.length > 0 ? `${id}-${at}` : undefined}
        placeholder={words.placeholder}
        autoComplete="off"
        spellCheck={false}
        enterKeyHint="search"
        value={query}
        onChange={({ target }) => {
          setQuery(target.value);
          setOpen(true);
          setAt(0);
        }}
        onFocus={({ target }) => target.select()}
        onBlur={close}
        onKeyDown={press}
      />
      <span className="read-out" role="status">
        {shown ? (results.length === 0 ? words.none(query) : words.count(results.length)) : ''}
      </span>
      <div
        id={`${id}-list`}
        className="found"
        role="listbox"
        aria-label={words.label}
        hidden={!shown}
      >
        {results.map((found, i) => {
          const { name, more } = wordsOf(found, words);
          return (
            <div
              key={`${found.type} ${name} ${more}`}
              id={`${id}-${i}`}
              role="option"
              aria-selected={i === at}
              tabIndex={-1}
              // The field keeps the focus, and a finger can scroll the list.
              onMouseDown={(event) => event.preventDefault()}
              onClick={() => choose(found)}
              onKeyDown={press}
            >
              <strong>{name}</strong> <span className="quiet">{more}</span>
            </div>
          );
        })}
      </div>
      {shown && results.length === 0 ? <p className="search-none">{words.none(query)}</p> : null}
    </div>
  );
}

function useFindable({ standing, kinds }: Pick<Stood, 'standing' | 'kinds'>) {
  const readings = useAppState((state) => projectOf(state).pile.readings);
  const assigned = useDerived((derived) => derived.work.value?.worked.assigned);
  return useMemo(
    () => ({
      numbers: standing.numbers,
      kindAt: standing.standing.shell.kind,
      kinds,
      tags: tagsOf(readings, assigned ?? []),
    }),
    [standing, kinds, readings, assigned],
  );
}

function useFocusKey(field: { readonly current: HTMLInputElement | null }): void {
  useEffect(() => {
    const hear = (event: globalThis.KeyboardEvent): void => {
      if (!isPressed('Ctrl+K', event) || event.defaultPrevented) return;
      event.preventDefault();
      field.current?.focus();
      field.current?.select();
    };
    addEventListener('keydown', hear);
    return () => removeEventListener('keydown', hear);
  }, [field]);
}

const nameOf = (found: Found): string =>
  found.type === 'place'
    ? found.number
    : found.type === 'tag'
      ? found.tag
      : (found.mark ?? found.kind);

function wordsOf(found: Found, words: ReturnType<typeof useWords>['places']['search']) {
  if (found.type === 'place') return words.place(found.number, found.kind);
  if (found.type === 'tag') return words.tag(found.tag, found.kind);
  return found.mark === null ? words.kind(found.kind) : words.mark(found.mark, found.kind);
}
