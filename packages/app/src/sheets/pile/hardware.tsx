// The hardware lots: a line each, opened to be changed.

import { type HardwareRow, hardwareItems, hardwareStates } from '@shellraise/core';
import { useState } from 'react';
import { projectOf } from '../../state/app-state.ts';
import { useApp, useAppState, useLengths } from '../../ui/app-context.tsx';
import { Field } from '../../ui/field.tsx';
import { type Lengths, lengthsIn } from '../../ui/lengths.ts';
import { useWords, type Words } from '../../words/words.ts';
import { type LotText, lotText, readLot } from './lots.ts';

/** The lots of the pile. */
export function Hardware() {
  const words = useWords().pile;
  const lengths = useLengths();
  const hardware = useAppState((state) => projectOf(state).pile.hardware);
  const [open, setOpen] = useState<number | 'new' | null>(null);
  const close = (): void => setOpen(null);
  const lots = hardware.map((lot, at) => ({ lot, at, line: lotLine(lot, lengths, words) }));
  return (
    <section className="hardware" aria-labelledby="pile-hardware">
      <h2 id="pile-hardware">{words.hardware.title}</h2>
      {lots.length === 0 && open === null ? <p className="quiet">{words.hardware.none}</p> : null}
      <ul className="lots">
        {lots.map(({ lot, at, line }) => (
          <li key={`${at} of ${lots.length}`}>
            {open === at ? (
              <LotForm at={at} lot={lot} close={close} />
            ) : (
              <button type="button" className="plain lot" onClick={() => setOpen(at)}>
                <span className="lot-count">{lot.count}</span>
                <span>{line}</span>
              </button>
            )}
          </li>
        ))}
      </ul>
      {open === 'new' ? (
        <LotForm at={hardware.length} lot={null} close={close} />
      ) : (
        <button type="button" onClick={() => setOpen('new')}>
          {words.hardware.add}
        </button>
      )}
    </section>
  );
}

/** A bolt's length as it is sold: inches with an inch thread, millimetres with a metric one. */
const lotLengths = ({ thread }: Pick<HardwareRow, 'thread'>, lengths: Lengths): Lengths =>
  thread === undefined ? lengths : lengthsIn(/^m\d/i.test(thread) ? 'metric' : 'inch');

/** A lot in words without its count: `bolt 5/16-18 × 1 1/4", used`. */
function lotLine(lot: HardwareRow, lengths: Lengths, words: Words['pile']): string {
  const { hardware } = words;
  const size = [
    lot.thread,
    lot.length === undefined ? undefined : lotLengths(lot, lengths).side(lot.length),
  ]
    .filter((part) => part !== undefined)
    .join(' × ');
  const parts = [
    hardware.items[lot.item],
    lot.corners === undefined ? '' : hardware.corners(lot.corners),
    lot.rim ? hardware.rim : '',
    size,
  ].filter((part) => part !== '');
  return [parts.join(' '), hardware.states[lot.state], lot.grade ?? '']
    .filter((part) => part !== '')
    .join(', ');
}

function LotForm({ at, lot, close }: { at: number; lot: HardwareRow | null; close: () => void }) {
  const words = useWords().pile;
  const app = useApp();
  const own = useLengths();
  const lengths = lot ? lotLengths(lot, own) : own;
  const [text, setText] = useState<LotText>(() => lotText(lot, lengths.side));
  const [told, setTold] = useState(false);
  const { lot: read, faults } = readLot(text, lot, lengths.bare, lengths.side);
  const put = (part: Partial<LotText>): void => setText((old) => ({ ...old, ...part }));
  const done = (): void => {
    if (!read) {
      setTold(true);
      return;
    }
    app.change(
      ({ project }) => {
        project.pile.hardware[at] = read;
        return undefined;
      },
      { label: lot ? words.changes.lot : words.changes.newLot },
    );
    close();
  };
  const remove = (): void => {
    app.change(
      ({ project }) => {
        project.pile.hardware.splice(at, 1);
        return undefined;
      },
      { label: words.changes.removeLot },
    );
    close();
  };
  const faultOf = (field: 'length' | 'count' | 'corners'): string | null => {
    const fault = faults.find((one) => one.field === field);
    if (!told || !fault) return null;
    if (fault.field !== 'length') return words.hardware.countFault(text[fault.field]);
    return fault.expected === null
      ? words.hardware.lengthRange
      : words.hardware.lengthFault(text.length, fault.expected);
  };
  const { fields } = words.hardware;
  return (
    <form
      className="lot-form"
      onSubmit={(event) => {
        event.preventDefault();
        done();
      }}
      onKeyDown={(event) => {
        if (event.key === 'Escape') close();
      }}
    >
      <Field name={fields.count} fault={faultOf('count')}>
        {(props) => (
          <input
            {...props}
            inputMode="numeric"
            value={text.count}
            onChange={(event) => put({ count: event.target.value })}
          />
        )}
      </Field>
      <Field name={fields.item} fault={null}>
        {(props) => (
          <select
            {...props}
            value={text.item}
            onChange={(event) => put({ item: oneOf(hardwareItems, event.target.value) })}
          >
            {hardwareItems.map((item) => (
              <option key={item} value={item}>
                {words.hardware.items[item]}
              </option>
            ))}
          </select>
        )}
      </Field>
      {text.item === 'plate' ? (
        <Field name={fields.corners} fault={faultOf('corners')}>
          {(props) => (
            <input
              {...props}
              inputMode="numeric"
              value={text.corners}
              onChange={(event) => put({ corners: event.target.value })}
            />
          )}
        </Field>
      ) : (
        <Field name={fields.thread} fault={null}>
          {(props) => (
            <input
              {...props}
              maxLength={60}
              value={text.thread}
              onChange={(event) => put({ thread: event.target.value })}
            />
          )}
        </Field>
      )}
      <Field name={fields.length} fault={faultOf('length')}>
        {(props) => (
          <input
            {...props}
            value={text.length}
            onChange={(event) => put({ length: event.target.value })}
          />
        )}
      </Field>
      <Field name={fields.state} fault={null}>
        {(props) => (
          <select
            {...props}
            value={text.state}
            onChange={(event) => put({ state: oneOf(hardwareStates, event.target.value) })}
          >
            {hardwareStates.map((state) => (
              <option key={state} value={state}>
                {words.hardware.states[state]}
              </option>
            ))}
          </select>
        )}
      </Field>
      <div className="lot-actions">
        <button type="submit" className="main">
          {words.hardware.done}
        </button>
        {lot ? (
          <button type="button" onClick={remove}>
            {words.hardware.remove}
          </button>
        ) : null}
      </div>
    </form>
  );
}

const oneOf = <T extends string>(list: readonly [T, ...T[]] | readonly T[], value: string): T =>
  list.find((one) => one === value) ?? (list[0] as T);
