// One setting of a model as a field, a choice or a tick.

import type { ModelSettings } from '@shellraise/core';
import { LimitField } from '../../ui/limit-field.tsx';
import { useWords } from '../../words/words.ts';
import { readNumber, readSizes, writeSizes } from './model-settings.ts';

/** The field. */
export function ModelSetting({
  name,
  settings,
  onSettings,
}: {
  name: keyof ModelSettings;
  settings: ModelSettings;
  onSettings: (settings: ModelSettings) => void;
}) {
  const words = useWords().patterns;
  const label = words.settings[name];
  const put = (part: Partial<ModelSettings>): void => onSettings({ ...settings, ...part });
  if (name === 'paper')
    return (
      <Choices
        label={label}
        of={['A4', 'Letter', 'A3'] as const}
        shown={(one) => one}
        chosen={settings.paper}
        onChoose={(paper) => put({ paper })}
      />
    );
  if (name === 'joint')
    return (
      <Choices
        label={label}
        of={['butt', 'bevel', 'slot'] as const}
        shown={(one) => words.joints[one]}
        chosen={settings.joint}
        onChoose={(joint) => put({ joint })}
      />
    );
  if (name === 'snap')
    return (
      <label className="model-tick">
        <input
          type="checkbox"
          checked={settings.snap}
          onChange={({ target }) => put({ snap: target.checked })}
        />{' '}
        {label}
      </label>
    );
  if (name === 'sheet' || name === 'bed') {
    const count = name === 'sheet' ? 2 : 3;
    return (
      <LimitField
        name={label}
        shown={writeSizes(settings[name])}
        fault={words.expectedSizes(count)}
        read={readSizes(count)}
        onValue={(sizes) => put({ [name]: sizes })}
      />
    );
  }
  return (
    <LimitField
      name={label}
      shown={String(settings[name])}
      fault={words.expected}
      read={readNumber}
      onValue={(value) => put({ [name]: value })}
    />
  );
}

function Choices<T extends string>({
  label,
  of,
  shown,
  chosen,
  onChoose,
}: {
  label: string;
  of: readonly T[];
  shown: (one: T) => string;
  chosen: T;
  onChoose: (one: T) => void;
}) {
  return (
    <fieldset className="legend-choices">
      <legend>{label}</legend>
      {of.map((one) => (
        <button key={one} type="button" aria-pressed={one === chosen} onClick={() => onChoose(one)}>
          {shown(one)}
        </button>
      ))}
    </fieldset>
  );
}
