// Forms of what the dish stands on, and of what stands round about.

import type { FitoutSettings } from '@shellraise/core';
import { LimitField } from '../../ui/limit-field.tsx';
import { useWords } from '../../words/words.ts';
import { LengthField, NumberField } from '../ground/fields.tsx';
import { Choice, optionsOf } from '../ground/small.tsx';
import { readDegrees } from './typed.ts';
import { useFitout } from './use-fitout.ts';

/** The mount. */
export function MountForm() {
  const { fitout } = useWords();
  const words = fitout.swing;
  const { settings, set } = useFitout();
  const { mount } = settings;
  const put = (part: Partial<FitoutSettings['mount']>): void =>
    set({ mount: { ...mount, ...part } }, fitout.changes.dish);
  const degrees = (
    key: 'lowestDeg' | 'highestDeg' | 'azimuthDeg' | 'latitudeDeg' | 'hourAngleDeg',
    name: string,
    least: number,
    most: number,
    note = '',
  ) => (
    <NumberField
      {...{ name, least, most, note }}
      value={mount[key]}
      needed
      onValue={(value) => value !== null && put({ [key]: value })}
    />
  );
  return (
    <div className="ground-form">
      <Choice
        name={words.kind}
        value={mount.kind}
        of={optionsOf(words.kinds)}
        onChoose={(kind) => put({ kind })}
      />
      <LengthField
        name={words.height}
        value={mount.height}
        least={0}
        most={60}
        needed
        onValue={(height) => height !== null && put({ height })}
      />
      <LengthField
        name={words.aside}
        value={mount.aside[0]}
        least={-30}
        most={30}
        needed
        onValue={(x) => x !== null && put({ aside: [x, mount.aside[1]] })}
      />
      <LengthField
        name={words.asideLeft}
        value={mount.aside[1]}
        least={-30}
        most={30}
        needed
        onValue={(y) => y !== null && put({ aside: [mount.aside[0], y] })}
      />
      {degrees('lowestDeg', words.lowest, 0, 89)}
      {degrees('highestDeg', words.highest, 0, 90)}
      {mount.kind === 'azimuth and elevation'
        ? null
        : degrees('azimuthDeg', words.azimuth, -360, 360, words.azimuthNote)}
      {mount.kind === 'equatorial' ? (
        <>
          {degrees('latitudeDeg', words.latitude, -90, 90)}
          {degrees('hourAngleDeg', words.hourAngle, 0, 180)}
        </>
      ) : null}
    </div>
  );
}

/** The ring and the skyline over which the dish looks. */
export function AroundForm() {
  const { fitout } = useWords();
  const words = fitout.swing;
  const { settings, set } = useFitout();
  const { horizon } = settings;
  const put = (part: Partial<FitoutSettings['horizon']>): void =>
    set({ horizon: { ...horizon, ...part } }, fitout.changes.dish);
  return (
    <div className="ground-form">
      <LengthField
        name={words.ring}
        value={horizon.ringHeight}
        least={0}
        most={5}
        needed
        note={words.ringNote}
        onValue={(ringHeight) => ringHeight !== null && put({ ringHeight })}
      />
      <LimitField<number[]>
        name={words.skyline}
        shown={horizon.skylineDeg.join(', ')}
        note={words.skylineNote}
        fault={words.skylineFault}
        read={readDegrees}
        onValue={(skylineDeg) => put({ skylineDeg })}
      />
    </div>
  );
}
