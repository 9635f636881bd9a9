// What must pass: things with their sizes or an STL file, through the finished shell or the shell while it is
// built, and whether a way was found.

import type { FitoutSettings, LastPassing, STL_UNITS, ThingShape } from '@shellraise/core';
import { useState } from 'react';
import { fitoutEngine } from '../../engine/bridge.ts';
import type { CarryWhen, FitoutCarryQuestion, FitoutCarryTold } from '../../engine/fitout.ts';
import type { Run } from '../../engine/runs.ts';
import { chooseFiles } from '../../files/choose-file.ts';
import { useApp, useLengths } from '../../ui/app-context.tsx';
import { LimitField } from '../../ui/limit-field.tsx';
import { ProgressLine } from '../../ui/progress-line.tsx';
import { Rows } from '../../ui/rows.tsx';
import { useWords } from '../../words/words.ts';
import { LengthField, NumberField } from '../ground/fields.tsx';
import { Choice, Faults, optionsOf } from '../ground/small.tsx';
import { freeName, shapeSizes, shapeStarts, valueAt, withValue } from '../raising/gear-fields.ts';
import { useFitout } from './use-fitout.ts';

type Carry = FitoutSettings['carry'][number];
type Unit = keyof typeof STL_UNITS;

/** The panel. `placed`: panels that stand, null for all, or the latest moment. */
export function PassPanel({
  run,
  panels,
  placed,
  hasOpening,
  numbers,
  onPlaced,
  onGo,
  onCancel,
}: {
  run: Run<FitoutCarryQuestion, FitoutCarryTold>;
  /** Panels of the finished shell. */
  panels: number;
  placed: CarryWhen;
  hasOpening: boolean;
  numbers: readonly string[];
  onPlaced: (placed: CarryWhen) => void;
  onGo: (index: number) => void;
  onCancel: () => void;
}) {
  const { fitout } = useWords();
  const words = fitout.pass;
  const { settings, set } = useFitout();
  const { carry } = settings;
  const put = (next: readonly Carry[]): void => set({ carry: [...next] }, fitout.changes.carry);
  return (
    <div className="fit-panel gear-panel">
      <h3>{words.heading}</h3>
      <p className="facts-caution">{words.caution}</p>
      <div className="ground-form">
        <Choice
          name={words.through}
          value={placed === null ? 'whole' : placed === 'last' ? 'last' : 'stage'}
          of={optionsOf(words.ways)}
          onChoose={(way) =>
            onPlaced(way === 'whole' ? null : way === 'last' ? 'last' : Math.ceil(panels / 2))
          }
        />
        {typeof placed !== 'number' ? null : (
          <NumberField
            name={words.placed}
            value={placed}
            least={1}
            most={panels}
            decimals={0}
            needed
            onValue={(value) => value !== null && onPlaced(Math.round(value))}
          />
        )}
      </div>
      {placed === null && !hasOpening ? <p>{words.noOpening}</p> : null}
      <ProgressLine ask={run} what={words.looking} onCancel={onCancel} />
      <Outcome run={run} numbers={numbers} />
      {carry.length === 0 ? <p className="quiet">{words.none}</p> : null}
      <Rows
        className="fitout-things"
        rowClassName="gear-item"
        rows={carry}
        onRows={put}
        removeLabel={({ name }) => fitout.remove(name)}
        removeShort={fitout.removeShort}
        acts={({ name }, i) => (
          <button type="button" className="go" onClick={() => onGo(i)}>
            {words.go(name)}
          </button>
        )}
      >
        {(thing, change) => (
          <ThingForm thing={thing} others={carry.filter((one) => one !== thing)} onThing={change} />
        )}
      </Rows>
      <p className="buttons">
        <button
          type="button"
          disabled={carry.length >= 20}
          onClick={() =>
            put([
              ...carry,
              {
                name: freeName(words.one, carry),
                shape: shapeStarts.box as ThingShape,
                roughly: false,
              },
            ])
          }
        >
          {words.add}
        </button>
      </p>
      <FromFile carry={carry} onCarry={put} />
    </div>
  );
}

function Outcome({
  run,
  numbers,
}: {
  run: Run<FitoutCarryQuestion, FitoutCarryTold>;
  numbers: readonly string[];
}) {
  const words = useWords().fitout.pass;
  const lengths = useLengths();
  if (run.status === 'cancelled') return <p role="status">{words.stopped}</p>;
  if (run.status === 'failed') return <p role="alert">{run.fault}</p>;
  if (run.faults.length > 0) return <Faults faults={run.faults} />;
  if (run.value === null) return null;
  const { latest, carried } = run.value;
  if (latest !== null) return <Latest {...{ latest, numbers }} />;
  if (carried === null) return null;
  const { name, answer } = carried;
  return (
    <p
      role="status"
      className={answer.status === 'passes' ? 'raise-verdict' : 'raise-verdict accent'}
    >
      {answer.status === 'passes'
        ? words.passes(name, lengths.small(answer.clearance))
        : answer.status === 'cannot pass'
          ? `${words.cannot(name)} ${sentence(answer.why)}`
          : `${words.notFound(name)} ${sentence(answer.why)} ${words.notProof}`}
    </p>
  );
}

/** The latest moment. */
function Latest({ latest, numbers }: { latest: LastPassing; numbers: readonly string[] }) {
  const words = useWords().fitout.pass;
  const { name, last, after, panels } = latest;
  const newest = last?.carried.placed.at(-1);
  return (
    <p role="status" className={last === null ? 'raise-verdict accent' : 'raise-verdict'}>
      {last === null
        ? `${words.latestNone(name)} ${words.notProof}`
        : after === null
          ? words.latestOpen(name)
          : `${words.latest(name, last.placed, panels, newest === undefined ? null : (numbers[newest] ?? null))} ${words.oneMore} ${after.answer.status === 'cannot pass' ? sentence(after.answer.why) : words.notProof}`}
    </p>
  );
}

const sentence = (text: string): string =>
  `${text.slice(0, 1).toUpperCase()}${text.slice(1)}${/[.!?]$/.test(text) ? '' : '.'}`;

function ThingForm({
  thing,
  others,
  onThing,
}: {
  thing: Carry;
  others: readonly Carry[];
  onThing: (thing: Carry) => void;
}) {
  const words = useWords().fitout.pass;
  const { shape } = thing;
  const typed = shape.form in shapeStarts;
  const sizes = [...shapeSizes(shape), ...(shape.form === 'dish' ? ['thickness'] : [])];
  return (
    <div className="ground-form">
      <LimitField
        name={words.name}
        shown={thing.name}
        fault={words.nameFault}
        read={(text) => {
          const value = text.trim();
          return value !== '' && value.length <= 60 && others.every(({ name }) => name !== value)
            ? { ok: true, value }
            : { ok: false };
        }}
        onValue={(name) => onThing({ ...thing, name })}
      />
      {typed ? (
        <Choice
          name={words.form}
          value={shape.form as keyof typeof shapeStarts}
          of={optionsOf(words.forms)}
          onChoose={(form) =>
            onThing({ ...thing, shape: shapeStarts[form] as ThingShape, roughly: false })
          }
        />
      ) : (
        <p>
          {shape.form === 'hull' ? words.hull(shape.points.length) : words.parts}{' '}
          {thing.roughly ? words.roughly : ''}
        </p>
      )}
      {sizes.map((path) => (
        <LengthField
          key={path}
          name={words.fields[path as keyof typeof words.fields] ?? path}
          value={valueAt(shape, path) as number}
          least={0.001}
          most={50}
          needed
          onValue={(value) =>
            value !== null && onThing({ ...thing, shape: withValue(shape, path, value) })
          }
        />
      ))}
    </div>
  );
}

/** An STL file: its unit is told first, for the file says none. */
function FromFile({
  carry,
  onCarry,
}: {
  carry: readonly Carry[];
  onCarry: (next: readonly Carry[]) => void;
}) {
  const words = useWords().fitout.pass;
  const app = useApp();
  const [unit, setUnit] = useState<'' | Unit>('');
  const read = async (): Promise<void> => {
    const [file] = await chooseFiles('.stl,model/stl');
    if (!file) return;
    const bytes = new Uint8Array(await file.arrayBuffer());
    const found = await fitoutEngine.ask('stlShape', bytes, unit === '' ? null : unit).answer;
    if (!found.ok) {
      app.tell(
        'fault',
        file.name,
        found.faults.map((one) => `${one.path}: found ${one.found}, expected ${one.expected}`),
      );
      return;
    }
    const name = freeName(file.name.replace(/\.stl$/i, '').slice(0, 50) || words.one, carry);
    onCarry([...carry, { name, ...found.value }]);
  };
  return (
    <div className="ground-form">
      <Choice name={words.unit} value={unit} of={optionsOf(words.units)} onChoose={setUnit} />
      <button type="button" disabled={carry.length >= 20} onClick={() => void read()}>
        {words.file}
      </button>
    </div>
  );
}
