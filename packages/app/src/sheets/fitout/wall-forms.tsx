// Forms of the wall of a panel: a layer, seams and plates, and what was measured of it.

import { type FitoutSettings, RADIO_MATERIAL_NAMES } from '@shellraise/core';
import { LimitField } from '../../ui/limit-field.tsx';
import { useWords } from '../../words/words.ts';
import { LengthField, NumberField } from '../ground/fields.tsx';
import { Choice } from '../ground/small.tsx';
import { writeFrequency } from './typed.ts';
import { useFitout } from './use-fitout.ts';

type Layer = FitoutSettings['wall'][number];

/** One layer: material and thickness; its own permittivity and loss where it is none of the list. */
export function LayerForm({ layer, onLayer }: { layer: Layer; onLayer: (layer: Layer) => void }) {
  const words = useWords().fitout.signal;
  const known = (RADIO_MATERIAL_NAMES as readonly string[]).includes(layer.material);
  return (
    <div className="ground-form">
      <Choice
        name={words.material}
        value={known ? layer.material : OTHER}
        of={[...RADIO_MATERIAL_NAMES.map((name) => [name, name] as const), [OTHER, words.other]]}
        onChoose={(material) =>
          onLayer(
            material === OTHER
              ? {
                  material: words.other,
                  thickness: layer.thickness,
                  permittivity: 4,
                  lossTangent: 0.02,
                }
              : { material, thickness: layer.thickness },
          )
        }
      />
      <LengthField
        fine
        name={words.thickness}
        value={layer.thickness}
        least={1e-6}
        most={1}
        needed
        onValue={(thickness) => thickness !== null && onLayer({ ...layer, thickness })}
      />
      {known ? null : (
        <>
          <LimitField
            name={words.otherName}
            shown={layer.material}
            read={(text) =>
              text.trim() === '' ? { ok: false } : { ok: true, value: text.trim().slice(0, 60) }
            }
            onValue={(material) => onLayer({ ...layer, material })}
          />
          <NumberField
            name={words.permittivity}
            value={layer.permittivity ?? null}
            least={1}
            most={200}
            needed
            onValue={(permittivity) => permittivity !== null && onLayer({ ...layer, permittivity })}
          />
          <NumberField
            name={words.lossTangent}
            value={layer.lossTangent ?? null}
            least={0}
            most={10}
            needed
            onValue={(lossTangent) => lossTangent !== null && onLayer({ ...layer, lossTangent })}
          />
        </>
      )}
    </div>
  );
}

const OTHER = ' ';

/** Seams, flanges and hub plates as a wave meets them. */
export function SeamForm() {
  const { fitout } = useWords();
  const words = fitout.signal;
  const { settings, set } = useFitout();
  const { seams } = settings;
  const put = (part: Partial<FitoutSettings['seams']>): void =>
    set({ seams: { ...seams, ...part } }, fitout.changes.signal);
  return (
    <div className="ground-form">
      <LengthField
        fine
        name={words.width}
        value={seams.width}
        least={0}
        most={1}
        needed
        onValue={(width) => width !== null && put({ width })}
      />
      <LengthField
        fine
        name={words.depth}
        value={seams.depth}
        least={0}
        most={1}
        needed
        onValue={(depth) => depth !== null && put({ depth })}
      />
      <LengthField
        fine
        name={words.plate}
        value={seams.plateDiameter}
        least={0}
        most={2}
        needed
        onValue={(plateDiameter) => plateDiameter !== null && put({ plateDiameter })}
      />
      <NumberField
        name={words.opacity}
        value={seams.opacity}
        per={0.01}
        decimals={0}
        least={0}
        most={1}
        needed
        onValue={(opacity) => opacity !== null && put({ opacity })}
      />
    </div>
  );
}

/** The loss that was measured square on, frequency by frequency. */
export function MeasuredForm() {
  const { fitout } = useWords();
  const words = fitout.signal;
  const { settings, set } = useFitout();
  const { measured, frequencies } = settings;
  return (
    <div className="ground-form">
      {frequencies.map((frequency) => (
        <NumberField
          key={frequency}
          name={words.measuredOf(writeFrequency(frequency))}
          value={measured.find((one) => one.frequency === frequency)?.lossDb ?? null}
          least={0}
          most={40}
          decimals={3}
          note={words.measuredNote}
          onValue={(lossDb) => {
            const others = measured.filter((one) => one.frequency !== frequency);
            set(
              { measured: lossDb === null ? others : [...others, { frequency, lossDb }] },
              fitout.changes.signal,
            );
          }}
        />
      ))}
    </div>
  );
}
