// Small parts of the sheets: a choice, a box to tick, the heads of a table, what can't be made and why, an
// answer that failed, the caution with how many values are shaky, and sources with how sure they are.

import type { Fault, Provenance } from '@shellraise/core';
import { useId } from 'react';
import { useWords } from '../../words/words.ts';

/** A named choice of several. */
export function Choice<K extends string>({
  name,
  value,
  of,
  onChoose,
}: {
  name: string;
  value: K;
  of: readonly (readonly [K, string])[];
  onChoose: (key: K) => void;
}) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{name}</label>
      <select
        id={id}
        value={value}
        onChange={({ target }) => {
          const found = of.find(([key]) => key === target.value);
          if (found) onChoose(found[0]);
        }}
      >
        {of.map(([key, label]) => (
          <option key={key} value={key}>
            {label}
          </option>
        ))}
      </select>
    </div>
  );
}

/** A box to tick. */
export function Tick({
  name,
  checked,
  onTick,
}: {
  name: string;
  checked: boolean;
  onTick: (checked: boolean) => void;
}) {
  return (
    <label className="check">
      <input type="checkbox" checked={checked} onChange={({ target }) => onTick(target.checked)} />
      {name}
    </label>
  );
}

/** The keys of a table of words, each with its words. */
export const optionsOf = <K extends string>(
  table: Readonly<Record<K, string>>,
): readonly (readonly [K, string])[] => Object.entries(table) as [K, string][];

/** The heads of a table; with `numbers` all but the first stand over numbers. */
export function Heads({
  of,
  numbers = false,
}: {
  of: Readonly<Record<string, string>>;
  numbers?: boolean;
}) {
  return (
    <thead>
      <tr>
        {Object.values(of).map((head, i) => (
          <th key={head} scope="col" className={numbers && i > 0 ? 'number' : undefined}>
            {head}
          </th>
        ))}
      </tr>
    </thead>
  );
}

/** An answer that failed, and the way to ask again; nothing where none did. */
export function Failed({
  failed,
  fault,
  onAgain,
}: {
  failed: string;
  fault: string | null;
  onAgain: () => void;
}) {
  const { again } = useWords().frame;
  return fault === null ? null : (
    <p role="alert" className="step-ended">
      {failed} {fault}{' '}
      <button type="button" onClick={onAgain}>
        {again}
      </button>
    </p>
  );
}

/** Why something can't be made. */
export function Faults({ faults }: { faults: readonly Fault[] }) {
  const words = useWords().ground;
  return (
    <ul className="ground-faults" role="alert">
      {faults.slice(0, 8).map(({ path, found, expected }) => (
        <li key={`${path} ${found}`}>{words.fault(path, found, expected)}</li>
      ))}
    </ul>
  );
}

/** Whether a source is from memory or common practice. */
export const isShaky = ({ confirmation }: Provenance): boolean =>
  confirmation === 'from memory' || confirmation === 'common practice';

/** The caution beside numbers, and how many of their sources are not confirmed. */
export function Caution({ sources = [] }: { sources?: readonly Provenance[] }) {
  const words = useWords().ground;
  const shaky = sources.filter(isShaky).length;
  return (
    <p className="facts-caution">
      {words.caution} {shaky > 0 ? words.assumed.shaky(shaky) : ''}
    </p>
  );
}

/** Sources, each with how far it is confirmed, as items of a list. */
export function SourceItems({ of }: { of: readonly Provenance[] }) {
  const { flags } = useWords().ground.assumed;
  return of.map(({ text, confirmation }) => (
    <li key={`${confirmation} ${text}`}>
      <span className={`flag ${confirmation.replace(' ', '-')}`}>{flags[confirmation]}</span> {text}
    </li>
  ));
}
