// Soil and anchors: what is there, what is to be used, test pulls, and how many each base hub needs.

import { type AnchorChoice, anchorWords, readForce } from '@shellraise/core';
import { useState } from 'react';
import type { GroundAnswer } from '../../engine/ground.ts';
import { useLengths } from '../../ui/app-context.tsx';
import { Field } from '../../ui/field.tsx';
import { LimitField } from '../../ui/limit-field.tsx';
import { Rows } from '../../ui/rows.tsx';
import { useWords } from '../../words/words.ts';
import {
  type AnchorField,
  anchorFields,
  anchorStarts,
  lengthWithin,
  required,
  within,
} from './edits.ts';
import { Caution, Choice, Faults, optionsOf, Tick } from './small.tsx';
import { useGround, useQuantities } from './use-ground.ts';

/** The panel. */
export function AnchorsPanel({ answer }: { answer: GroundAnswer | null }) {
  const words = useWords().ground.anchors;
  return (
    <div className="fit-panel">
      <div className="ground-form">
        <SoilForm />
        <AnchorForm />
      </div>
      <h3>{words.plan}</h3>
      {answer === null ? null : answer.anchors.ok ? (
        <Plan plan={answer.anchors.value.plan} />
      ) : (
        <Faults faults={answer.anchors.faults} />
      )}
      <PullTests />
    </div>
  );
}

function SoilForm() {
  const { anchors: words, changes } = useWords().ground;
  const { ground, setGround } = useGround();
  const { soil } = ground;
  const none = { none: words.soilNone, ...words.soils };
  return (
    <>
      <Choice
        name={words.soil}
        value={soil?.kind ?? 'none'}
        of={optionsOf(none)}
        onChoose={(kind) =>
          setGround(
            {
              soil:
                kind === 'none'
                  ? null
                  : { kind, firm: soil?.firm ?? false, wet: soil?.wet ?? true },
            },
            changes.soil,
          )
        }
      />
      {soil ? (
        <div className="ground-ticks">
          <Tick
            name={words.firm}
            checked={soil.firm}
            onTick={(firm) => setGround({ soil: { ...soil, firm } }, changes.soil)}
          />
          <Tick
            name={words.wet}
            checked={soil.wet}
            onTick={(wet) => setGround({ soil: { ...soil, wet } }, changes.soil)}
          />
        </div>
      ) : null}
    </>
  );
}

function AnchorForm() {
  const { anchors: words, changes } = useWords().ground;
  const { ground, setGround } = useGround();
  const lengths = useLengths();
  const { anchor, guy } = ground;
  const sorts = { none: words.none, ...words.sorts };
  const large = lengths.system === 'metric' ? 'm' : 'ft';
  return (
    <>
      <Choice
        name={words.sort}
        value={anchor?.type ?? 'none'}
        of={optionsOf(sorts)}
        onChoose={(type) =>
          setGround({ anchor: type === 'none' ? null : { ...anchorStarts[type] } }, changes.anchor)
        }
      />
      {anchor
        ? anchorFields[anchor.type].map((field) => (
            <OneField
              key={`${anchor.type} ${field.key}`}
              field={field}
              value={(anchor as unknown as Readonly<Record<string, string | number>>)[field.key]}
              onValue={(value) =>
                setGround(
                  { anchor: { ...anchor, [field.key]: value } as AnchorChoice },
                  changes.anchor,
                )
              }
            />
          ))
        : null}
      <Choice
        name={words.practice}
        value={ground.practice}
        of={optionsOf(words.practices)}
        onChoose={(practice) => setGround({ practice }, changes.anchor)}
      />
      <LimitField
        name={words.price}
        shown={ground.price === null ? '' : String(ground.price)}
        note={words.priceNote}
        fault={words.priceFault}
        read={(text) => within(text, 0, 1e6)}
        onValue={(value) => setGround({ price: value ?? null }, changes.anchor)}
        numeric
      />
      <Tick
        name={words.guyed}
        checked={guy !== null}
        onTick={(on) =>
          setGround({ guy: on ? { elevation: Math.PI / 4, height: 1.5 } : null }, changes.anchor)
        }
      />
      {guy ? (
        <>
          <LimitField
            name={words.elevation}
            shown={String(Math.round((guy.elevation * 180) / Math.PI))}
            fault={words.elevationFault}
            read={(text) => required(within(text, 5, 85))}
            onValue={(value) =>
              value !== undefined &&
              setGround({ guy: { ...guy, elevation: (value * Math.PI) / 180 } }, changes.anchor)
            }
            numeric
          />
          <LimitField
            name={words.height}
            shown={lengths.large(guy.height)}
            fault={words.range(lengths.large(0.1), lengths.large(100))}
            read={(text) => required(lengthWithin(text, large, 0.1, 100))}
            onValue={(value) =>
              value !== undefined && setGround({ guy: { ...guy, height: value } }, changes.anchor)
            }
          />
        </>
      ) : null}
    </>
  );
}

function OneField({
  field,
  value,
  onValue,
}: {
  field: AnchorField;
  value: string | number | undefined;
  onValue: (value: string | number) => void;
}) {
  const words = useWords().ground.anchors;
  const lengths = useLengths();
  const name = words.fields[field.key as keyof typeof words.fields];
  const named: Readonly<Record<string, string>> = { ...words.bodies, ...words.underlays };
  if (field.as === 'choice')
    return (
      <Choice
        name={name}
        value={String(value)}
        of={field.of.map((one) => [one, named[one] ?? one] as const)}
        onChoose={onValue}
      />
    );
  if (field.as === 'text')
    return (
      <LimitField
        name={name}
        shown={String(value)}
        fault={words.text}
        read={(text) => {
          const typed = text.trim();
          return typed === '' || typed.length > 60 ? { ok: false } : { ok: true, value: typed };
        }}
        onValue={onValue}
      />
    );
  const { least, most } = field;
  const long = field.as === 'length';
  const fine = most <= 1;
  const show = (size: number): string =>
    long ? (fine ? lengths.side(size) : lengths.large(size)) : String(size);
  const unit = lengths.system === 'metric' ? (fine ? 'mm' : 'm') : fine ? 'in' : 'ft';
  return (
    <LimitField
      name={name}
      shown={show(Number(value))}
      fault={words.range(show(least), show(most))}
      read={(text) => {
        const typed = required(
          long ? lengthWithin(text, unit, least, most) : within(text, least, most),
        );
        const whole = field.key === 'count';
        return whole && typed.ok && !Number.isInteger(typed.value) ? { ok: false } : typed;
      }}
      onValue={(typed) => typed !== undefined && onValue(typed)}
      numeric={!long}
    />
  );
}

type PlanOf = Extract<GroundAnswer['anchors'], { ok: true }>['value']['plan'];

function Plan({ plan }: { plan: PlanOf }) {
  const words = useWords().ground.anchors;
  const { ground } = useGround();
  const { force } = useQuantities();
  const ballast = ground.anchor?.type === 'ballast';
  const table = ballast ? { ...words.table, ...words.ofBallast } : words.table;
  return (
    <>
      <p className="facts-size">
        {words.count(plan.count, plan.pieces)}
        {ground.anchor ? `: ${anchorWords(ground.anchor)}` : ''}
        {plan.cost === null ? '' : `; ${words.cost(plan.cost.toFixed(2))}`}
      </p>
      <p>{(ballast ? words.weighs : words.allowed)(force(plan.allowed), plan.practice)}</p>
      {plan.tooNear.length > 0 ? (
        <p className="accent">{words.tooNear(plan.tooNear.length)}</p>
      ) : null}
      <Caution sources={plan.sources} />
      <table className="ground-table">
        <thead>
          <tr>
            {Object.values(table).map((head, i) => (
              <th key={head} scope="col" className={i > 0 ? 'number' : undefined}>
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {plan.hubs.map(({ hub, up, shear, pull, count, use }) => (
            <tr key={hub}>
              <th scope="row">{hub}</th>
              <td className="number">{force(up)}</td>
              <td className="number">{force(shear)}</td>
              <td className="number">{force(pull)}</td>
              <td className="number">{count}</td>
              <td className="number">{Math.round(use * 100)} %</td>
            </tr>
          ))}
        </tbody>
      </table>
      <ul className="notes">
        {plan.notes.map((note) => (
          <li key={note}>{note}</li>
        ))}
      </ul>
    </>
  );
}

function PullTests() {
  const { anchors: words, changes } = useWords().ground;
  const { ground, setGround } = useGround();
  const { force, metric } = useQuantities();
  const [text, setText] = useState('');
  const [held, setHeld] = useState(true);
  const [wet, setWet] = useState(false);
  const [faulty, setFaulty] = useState(false);
  const add = (): void => {
    const read = readForce(text, { unit: metric ? 'kN' : 'lbf' });
    const good = read.ok && read.value > 0 && read.value <= 200_000;
    setFaulty(!good);
    if (!read.ok || !good) return;
    setText('');
    setGround({ pullTests: [...ground.pullTests, { pull: read.value, held, wet }] }, changes.tests);
  };
  return (
    <>
      <h3>{words.tests}</h3>
      <p className="quiet">{words.testsNote}</p>
      <Rows
        className="pull-tests"
        rows={ground.pullTests}
        onRows={(pullTests) => setGround({ pullTests }, changes.tests)}
        removeLabel={(_, i) => words.remove(i + 1)}
        removeShort={words.removeShort}
      >
        {(test, _, i) => (
          <span>
            {i + 1}. {force(test.pull)}, {test.held ? words.held.toLowerCase() : words.came}
            {test.wet ? `, ${words.testWet}` : ''}
          </span>
        )}
      </Rows>
      <form
        className="ground-form"
        onSubmit={(event) => {
          event.preventDefault();
          add();
        }}
      >
        <Field name={words.pull} fault={faulty ? words.pullFault : null}>
          {(props) => (
            <input {...props} value={text} onChange={({ target }) => setText(target.value)} />
          )}
        </Field>
        <div className="ground-ticks">
          <Tick name={words.held} checked={held} onTick={setHeld} />
          <Tick name={words.testWet} checked={wet} onTick={setWet} />
        </div>
        <button type="submit">{words.add}</button>
      </form>
    </>
  );
}
