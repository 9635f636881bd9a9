// What there is: ladders, platforms, towers, lifts, a gin pole, tools, lights and batteries, and what stands
// inside the shell. Each piece a row of fields; each field a step of the project.

import type { Gear, ThingInside } from '@shellraise/core';
import { LimitField } from '../../ui/limit-field.tsx';
import { useWords } from '../../words/words.ts';
import { ForceField, LengthField, NumberField } from '../ground/fields.tsx';
import { Choice, optionsOf } from '../ground/small.tsx';
import { useQuantities } from '../ground/use-ground.ts';
import {
  freeName,
  type GearField,
  type GearItem,
  type GearList,
  gearFields,
  gearLists,
  gearStarts,
  ginPoleStart,
  shapeSizes,
  shapeStarts,
  valueAt,
  withValue,
} from './gear-fields.ts';
import { useGear } from './use-gear.ts';

/** The form. `of`: the lists that it shows. */
export function GearForm({ of = gearLists }: { of?: readonly GearList[] }) {
  return (
    <>
      {of.map((list) => (
        <ListForm key={list} list={list} />
      ))}
      {of.includes('lifts') ? <GinPoleForm /> : null}
      {of.includes('ladders') ? <LiftLimits /> : null}
    </>
  );
}

function ListForm({ list }: { list: GearList }) {
  const words = useWords().yard.gear;
  const { gear, set } = useGear();
  const items: readonly GearItem[] = gear[list];
  const put = (next: readonly GearItem[]): void => set({ [list]: next } as Partial<Gear>);
  const add = (): void => {
    const name = freeName(words.one[list], items);
    put([...items, { name, ...gearStarts[list] } as GearItem]);
  };
  return (
    <details className="tags gear-list" open={list === 'inside' || undefined}>
      <summary>
        {words.lists[list]} <span className="quiet">{words.count(items.length)}</span>
      </summary>
      <ul>
        {items.map((item, i) => (
          <li key={item.name} className="gear-item">
            <ItemForm
              list={list}
              item={item}
              others={items.filter((one) => one !== item)}
              onItem={(next) => put(items.map((one, k) => (k === i ? next : one)))}
            />
            <button
              type="button"
              aria-label={words.remove(item.name)}
              onClick={() => put(items.filter((one) => one !== item))}
            >
              {words.removeShort}
            </button>
          </li>
        ))}
      </ul>
      <button type="button" onClick={add}>
        {words.add[list]}
      </button>
    </details>
  );
}

function ItemForm({
  list,
  item,
  others,
  onItem,
}: {
  list: GearList;
  item: GearItem;
  others: readonly GearItem[];
  onItem: (item: GearItem) => void;
}) {
  const words = useWords().yard.gear;
  const isThing = (one: GearItem): one is ThingInside => 'shape' in one;
  return (
    <div className="ground-form">
      <LimitField
        name={words.name}
        shown={item.name}
        fault={words.nameFault}
        read={(text) => {
          const value = text.trim();
          const fits = value !== '' && value.length <= 100;
          return fits && others.every(({ name }) => name !== value)
            ? { ok: true, value }
            : { ok: false };
        }}
        onValue={(name) => onItem({ ...item, name })}
      />
      {gearFields[list].map((field) => (
        <OneField
          key={field.key}
          field={field}
          value={valueAt(item, field.key)}
          onValue={(value) => onItem(withValue(item, field.key, value))}
        />
      ))}
      {isThing(item) ? (
        <ShapeForm shape={item.shape} onShape={(shape) => onItem({ ...item, shape })} />
      ) : null}
    </div>
  );
}

function OneField({
  field: { key, as, most, needed },
  value,
  onValue,
}: {
  field: GearField;
  value: unknown;
  onValue: (value: unknown) => void;
}) {
  const words = useWords().yard.gear;
  const { metric } = useQuantities();
  const name = words.fields[key as keyof typeof words.fields] ?? key;
  const put = (next: number | null): void => {
    if (next !== null || !needed) onValue(next);
  };
  const size = { value: typeof value === 'number' ? value : null, most, needed, onValue: put };
  const note = needed ? '' : words.unknown;
  switch (as) {
    case 'length':
      return <LengthField {...size} name={name} least={0.01} />;
    case 'mass':
      return (
        <NumberField
          {...size}
          name={`${name}, ${metric ? 'kg' : 'lb'}`}
          note={note}
          least={0.1}
          per={metric ? 1 : 0.453_592_37}
          decimals={1}
        />
      );
    case 'number':
      return <NumberField {...size} name={name} note={note} least={0.01} />;
    case 'count':
      return (
        <NumberField
          {...size}
          name={name}
          least={1}
          decimals={0}
          onValue={(next) => put(next === null ? null : Math.round(next))}
        />
      );
    case 'form':
      return (
        <Choice
          name={name}
          value={value === 'leaning' ? 'leaning' : 'self-standing'}
          of={optionsOf(words.forms)}
          onChoose={onValue}
        />
      );
    case 'must':
      return (
        <Choice
          name={name}
          value={value as ThingInside['must']}
          of={optionsOf(words.musts)}
          onChoose={onValue}
        />
      );
  }
}

function ShapeForm({
  shape,
  onShape,
}: {
  shape: ThingInside['shape'];
  onShape: (shape: ThingInside['shape']) => void;
}) {
  const words = useWords().yard.gear;
  const sizes = shapeSizes(shape);
  if (sizes.length === 0) return <p className="quiet">{words.shapeOfFile}</p>;
  const { form } = shape;
  return (
    <>
      <Choice
        name={words.shape}
        value={form as keyof typeof shapeStarts}
        of={optionsOf(words.shapes)}
        onChoose={(next) =>
          onShape(structuredClone(shapeStarts[next]) as unknown as ThingInside['shape'])
        }
      />
      {sizes.map((key) => (
        <LengthField
          key={key}
          name={words.sizes[key as keyof typeof words.sizes]}
          value={valueAt(shape, key) as number}
          least={0.01}
          most={60}
          needed
          onValue={(value) => value !== null && onShape(withValue(shape, key, value))}
        />
      ))}
    </>
  );
}

function GinPoleForm() {
  const words = useWords().yard.gear;
  const { gear, set } = useGear();
  const pole = gear.ginPole;
  return (
    <details className="tags gear-list">
      <summary>
        {words.pole} <span className="quiet">{words.count(pole === null ? 0 : 1)}</span>
      </summary>
      {pole === null ? (
        <button type="button" onClick={() => set({ ginPole: ginPoleStart })}>
          {words.poleAdd}
        </button>
      ) : (
        <div className="gear-item">
          <div className="ground-form">
            <LengthField
              name={words.fields.height}
              value={pole.height}
              least={0.1}
              most={60}
              needed
              onValue={(height) => height !== null && set({ ginPole: { ...pole, height } })}
            />
            <ForceField
              name={words.headBears}
              value={pole.headBears}
              onValue={(headBears) => set({ ginPole: { ...pole, headBears } })}
            />
          </div>
          <button type="button" onClick={() => set({ ginPole: null })}>
            {words.removeShort}
          </button>
        </div>
      )}
    </details>
  );
}

function LiftLimits() {
  const words = useWords().yard.gear;
  const { metric } = useQuantities();
  const { gear, set } = useGear();
  return (
    <div className="ground-form">
      <NumberField
        name={words.personLifts(metric ? 'kg' : 'lb')}
        note={words.personLiftsNote}
        value={gear.personLifts}
        per={metric ? 1 : 0.453_592_37}
        decimals={1}
        least={5}
        most={60}
        needed
        onValue={(personLifts) => personLifts !== null && set({ personLifts })}
      />
      <LengthField
        name={words.cardAbove}
        value={gear.cardAbove}
        least={0.5}
        most={20}
        needed
        onValue={(cardAbove) => cardAbove !== null && set({ cardAbove })}
      />
    </div>
  );
}
