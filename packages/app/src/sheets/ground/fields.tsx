// Fields of the ground's forms that hold a size: a length, a bare number, a force. Each has its limits,
// is read when it is left, and says what was expected where it can't be read.

import { readForce } from '@shellraise/core';
import { useLengths } from '../../ui/app-context.tsx';
import { LimitField } from '../../ui/limit-field.tsx';
import { useWords } from '../../words/words.ts';
import { lengthWithin, required, within } from './edits.ts';
import { useQuantities } from './use-ground.ts';

/** What a size may be, and what to do with it. */
export interface SizeField {
  readonly name: string;
  /** Null where it is not given. */
  readonly value: number | null;
  readonly least: number;
  readonly most: number;
  /** Whether there must be one. */
  readonly needed?: boolean;
  readonly note?: string;
  readonly onValue: (value: number | null) => void;
}

/** A length, metres. `fine`: typed and shown in millimetres or inches, to a hundredth of one. */
export function LengthField({ fine = false, ...field }: SizeField & { readonly fine?: boolean }) {
  const words = useWords().groundForms;
  const lengths = useLengths();
  const metric = lengths.system === 'metric';
  const unit = metric ? (fine ? 'mm' : 'm') : fine ? 'in' : 'ft';
  const show = (size: number): string =>
    fine ? fineLength(size, metric) : `${size < 0 ? '−' : ''}${lengths.large(Math.abs(size))}`;
  const { name, value, least, most, needed = false, note = '', onValue } = field;
  const [low, high] = [show(least), show(most)];
  return (
    <LimitField
      name={name}
      shown={value === null ? '' : show(value)}
      note={note}
      fault={needed ? words.range(low, high) : words.rangeOrNone(low, high)}
      read={(text) => {
        const typed = lengthWithin(text, unit, least, most);
        return needed ? required(typed) : typed;
      }}
      onValue={(typed) => onValue(typed ?? null)}
    />
  );
}

/** A thickness or a tolerance as it is typed: `4 mm`, `1.25 mm`, `0.16 in`. */
export const fineLength = (metres: number, metric: boolean): string =>
  metric ? `${plain(metres * 1000, 2)} mm` : `${plain(metres / 0.0254, 3)} in`;

/** A number with so many decimals at most and a proper minus. */
export const plain = (value: number, decimals: number): string =>
  String(Number(value.toFixed(decimals))).replace('-', '−');

/** A bare number, `per` SI units for each one typed. */
export function NumberField({
  per = 1,
  decimals = 4,
  ...field
}: SizeField & { readonly per?: number; readonly decimals?: number }) {
  const words = useWords().groundForms;
  const { name, value, least, most, needed = false, note = '', onValue } = field;
  const show = (size: number): string => plain(size / per, decimals);
  const [low, high] = [show(least), show(most)];
  return (
    <LimitField
      name={name}
      shown={value === null ? '' : show(value)}
      note={note}
      fault={needed ? words.range(low, high) : words.rangeOrNone(low, high)}
      read={(text) => {
        const typed = within(text.replace('−', '-'), least / per, most / per);
        return needed ? required(typed) : typed;
      }}
      onValue={(typed) => onValue(typed === undefined ? null : typed * per)}
      numeric
    />
  );
}

/** A force, newtons, over 0 to 500 kN; null where it is unknown. */
export function ForceField({
  name,
  value,
  onValue,
}: Pick<SizeField, 'name' | 'value' | 'onValue'>) {
  const words = useWords().groundForms;
  const { force, metric } = useQuantities();
  return (
    <LimitField
      name={name}
      shown={value === null ? '' : force(value)}
      note={words.emptyUnknown}
      fault={words.parts.forceFault}
      read={(text) => {
        if (text.trim() === '') return { ok: true, value: undefined };
        const read = readForce(text, { unit: metric ? 'kN' : 'lbf' });
        return read.ok && read.value > 0 && read.value <= 500_000 ? read : { ok: false };
      }}
      onValue={(typed) => onValue(typed ?? null)}
    />
  );
}
