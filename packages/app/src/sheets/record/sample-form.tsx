// Bolts of a seam checked with the wrench: how many, how many failed, at which torque.

import { samplesTaken, samplesWanted } from '@shellraise/core';
import { type FormEvent, useState } from 'react';
import { Field } from '../../ui/field.tsx';
import { useWords } from '../../words/words.ts';
import { useQuantities } from '../ground/use-ground.ts';
import type { Noted } from './use-noted.ts';

/** What a torque is typed in, and how many newton-metres it is. */
const torqueUnits = {
  metric: { name: 'N·m', newtonMetres: 1 },
  inch: { name: 'lbf·ft', newtonMetres: 1.355_817_948_3 },
} as const;

/** The form of one seam. */
export function SampleForm({ noted, seam }: { noted: Noted; seam: number }) {
  const words = useWords().recording.sample;
  const unit = torqueUnits[useQuantities().metric ? 'metric' : 'inch'];
  const [typed, setTyped] = useState({ bolts: '', failed: '0', torque: '' });
  const [fault, setFault] = useState<string | null>(null);
  const name = noted.plan.seams[seam]!;
  const all = noted.bolts(seam);
  const taken = samplesTaken(noted.session.log).get(name) ?? { bolts: 0, failed: 0 };
  const wanted = samplesWanted(all, taken.failed);
  const note = (event: FormEvent): void => {
    event.preventDefault();
    const read = readSample(typed, unit.newtonMetres);
    setFault(typeof read === 'string' ? words[read] : null);
    if (typeof read === 'string') return;
    if (noted.say({ kind: 'seam sampled', seam: name, ...read }))
      setTyped({ ...typed, bolts: '', failed: '0' });
  };
  const field = (key: keyof typeof typed, label: string) => (
    <Field name={label} fault={null}>
      {(props) => (
        <input
          {...props}
          inputMode={key === 'torque' ? 'decimal' : 'numeric'}
          value={typed[key]}
          onChange={({ target }) => setTyped({ ...typed, [key]: target.value })}
        />
      )}
    </Field>
  );
  return (
    <form className="record-form screen-only" onSubmit={note}>
      <h3>{words.heading}</h3>
      <p className="quiet">
        {all === null ? words.ofUnknown : words.of(all)}{' '}
        {words.so(taken.bolts, taken.failed, Number.isFinite(wanted) ? wanted : null)}
      </p>
      <div className="record-fields">
        {field('bolts', words.bolts)}
        {field('failed', words.failed)}
        {field('torque', words.torque(unit.name))}
      </div>
      <p role="alert" className="accent">
        {fault ?? ''}
      </p>
      <button type="submit" disabled={!noted.open}>
        {words.note}
      </button>
    </form>
  );
}

/** What was typed, or which words say why it can't be. */
function readSample(
  typed: { readonly bolts: string; readonly failed: string; readonly torque: string },
  newtonMetres: number,
) {
  const [bolts, failed] = [Number(typed.bolts), Number(typed.failed || '0')];
  const whole = [bolts, failed].every((one) => Number.isInteger(one) && one >= 0 && one <= 1000);
  if (!whole || bolts < 1 || failed > bolts) return 'fault' as const;
  if (typed.torque.trim() === '') return { bolts, failed };
  const torque = Math.round(Number(typed.torque.replace(',', '.')) * newtonMetres * 1000) / 1000;
  return torque > 0 && torque <= 1000 ? { bolts, failed, torque } : ('torqueFault' as const);
}
