// A field of a form with its name, and below it what is wrong with it or to be known of it.

import { type ReactNode, useId } from 'react';

/** A named field with what is wrong with it. */
export function Field({
  name,
  fault,
  note,
  children,
}: {
  name: string;
  fault: string | null;
  note?: string;
  children: (props: {
    id: string;
    'aria-invalid': boolean;
    'aria-describedby': string;
    autoComplete: 'off';
  }) => ReactNode;
}) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{name}</label>
      {children({
        id,
        'aria-invalid': fault !== null,
        'aria-describedby': `${id}-note`,
        autoComplete: 'off',
      })}
      <p id={`${id}-note`} className={fault === null ? 'quiet' : 'accent'}>
        {fault ?? note ?? ''}
      </p>
    </div>
  );
}
