// How far hubs lie beyond what was measured, as the net says, to be taken or sharpened.

import type { AllowanceFound } from '@shellraise/core';
import { useApp, useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { takeAllowance } from './overrule.ts';

/** The note. */
export function AllowanceNote({
  allowance,
  canChange,
}: {
  allowance: AllowanceFound;
  canChange: boolean;
}) {
  const { allowance: words } = useWords().hard;
  const lengths = useLengths();
  const app = useApp();
  const { value, sd, tellable, sharper = [] } = allowance;
  const take = (): void =>
    app.change(
      (doc) => {
        takeAllowance(doc, value);
        return undefined;
      },
      { label: words.taking },
    );
  return (
    <div className="odd">
      <p>
        {tellable
          ? words.found(lengths.small(value), lengths.small(sd))
          : words.untold(lengths.small(sd))}
      </p>
      {sharper.length > 0 ? (
        <>
          <p>{words.what}</p>
          <ul className="dashed-list">
            {sharper.map((one) => (
              <li key={one.by}>{words.sharper[one.by](lengths.small(one.sd))}</li>
            ))}
          </ul>
        </>
      ) : null}
      {tellable && canChange ? (
        <div className="presses screen-only">
          <button type="button" onClick={take}>
            {words.takeLabel}
          </button>
        </div>
      ) : null}
    </div>
  );
}
