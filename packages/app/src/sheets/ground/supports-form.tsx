// Guys and a centre mast with chains that there are to hold the half-built shell in the place of props.
// Kept in the project; the Raising sheet says which are rigged when.

import { GUY_SLOPES, type StagesKnown } from '@shellraise/core';
import { useLengths } from '../../ui/app-context.tsx';
import { LimitField } from '../../ui/limit-field.tsx';
import { useWords } from '../../words/words.ts';
import { lengthsWithin } from './edits.ts';
import { ForceField, LengthField, NumberField } from './fields.tsx';
import { Choice, optionsOf } from './small.tsx';
import { useParts } from './use-ground.ts';

type Guys = NonNullable<StagesKnown['guys']>;
type Mast = NonNullable<StagesKnown['mast']>;

/** What a new entry starts from: to be changed. */
const someGuys: Guys = {
  radii: [8],
  count: 12,
  bearing: 0,
  least: GUY_SLOPES.least,
  most: GUY_SLOPES.most,
  bears: null,
};
const someMast: Mast = { height: 3, chains: 6, guyed: true, chainBears: null, bears: null };

const DEGREE = Math.PI / 180;

/** The form. */
export function SupportsForm() {
  const { supports: words, changes } = useWords().groundForms;
  const { stages, setStages } = useParts();
  const { guys, mast } = stages;
  return (
    <>
      <p className="quiet">{words.note}</p>
      <div className="ground-form">
        <Choice
          name={words.guys}
          value={guys === null ? 'none' : 'some'}
          of={optionsOf({ none: words.none, some: words.some })}
          onChoose={(of) => setStages({ guys: of === 'none' ? null : someGuys }, changes.parts)}
        />
        {guys === null ? null : <GuyFields guys={guys} />}
      </div>
      <div className="ground-form">
        <Choice
          name={words.mast}
          value={mast === null ? 'none' : 'some'}
          of={optionsOf({ none: words.none, some: words.some })}
          onChoose={(of) => setStages({ mast: of === 'none' ? null : someMast }, changes.parts)}
        />
        {mast === null ? null : <MastFields mast={mast} />}
      </div>
      {guys === null && mast === null ? null : <p className="facts-caution">{words.caution}</p>}
    </>
  );
}

function GuyFields({ guys }: { guys: Guys }) {
  const { supports: words, changes } = useWords().groundForms;
  const { setStages } = useParts();
  const lengths = useLengths();
  const set = (part: Partial<Guys>): void =>
    setStages({ guys: { ...guys, ...part } }, changes.parts);
  return (
    <>
      <LimitField<number[]>
        name={words.radii}
        shown={guys.radii.map((radius) => lengths.large(radius)).join(', ')}
        note={words.radiiNote}
        fault={words.radiiFault}
        read={(text) => {
          const read = lengthsWithin(
            /[a-z'"]/i.test(text) ? text : `${text} ${lengths.system === 'metric' ? 'm' : 'ft'}`,
            lengths.system === 'metric' ? 'mm' : 'in',
            0.1,
            100,
            4,
          );
          return read.ok && (read.value ?? []).length > 0 ? read : { ok: false };
        }}
        onValue={(radii) => set({ radii: radii ?? guys.radii })}
      />
      <NumberField
        name={words.count}
        value={guys.count}
        least={1}
        most={48}
        decimals={0}
        needed
        onValue={(count) => set({ count: Math.round(count ?? guys.count) })}
      />
      <NumberField
        name={words.bearing}
        value={guys.bearing}
        per={DEGREE}
        decimals={1}
        least={0}
        most={2 * Math.PI}
        needed
        onValue={(bearing) => set({ bearing: bearing ?? 0 })}
      />
      <ForceField name={words.guyBears} value={guys.bears} onValue={(bears) => set({ bears })} />
    </>
  );
}

function MastFields({ mast }: { mast: Mast }) {
  const { supports: words, changes } = useWords().groundForms;
  const { setStages } = useParts();
  const set = (part: Partial<Mast>): void =>
    setStages({ mast: { ...mast, ...part } }, changes.parts);
  return (
    <>
      <LengthField
        name={words.height}
        value={mast.height}
        least={0.1}
        most={100}
        needed
        onValue={(height) => set({ height: height ?? mast.height })}
      />
      <NumberField
        name={words.chains}
        value={mast.chains}
        least={1}
        most={24}
        decimals={0}
        needed
        onValue={(chains) => set({ chains: Math.round(chains ?? mast.chains) })}
      />
      <Choice
        name={words.guyed}
        value={mast.guyed ? 'guys' : 'chains'}
        of={optionsOf({ guys: words.byGuys, chains: words.byChains })}
        onChoose={(by) => set({ guyed: by === 'guys' })}
      />
      <ForceField
        name={words.chainBears}
        value={mast.chainBears}
        onValue={(chainBears) => set({ chainBears })}
      />
      <ForceField name={words.mastBears} value={mast.bears} onValue={(bears) => set({ bears })} />
    </>
  );
}
