// The wall of a panel as a wave meets it, frequencies, paint and seams; and what they take from the signal.

import type { SignalTold } from '../../engine/fitout.ts';
import { LimitField } from '../../ui/limit-field.tsx';
import { Rows } from '../../ui/rows.tsx';
import { useWords } from '../../words/words.ts';
import { LengthField, NumberField } from '../ground/fields.tsx';
import { Choice } from '../ground/small.tsx';
import { Told } from './signal-told.tsx';
import { readFrequencies, writeFrequency } from './typed.ts';
import { useFitout } from './use-fitout.ts';
import { LayerForm, MeasuredForm, SeamForm } from './wall-forms.tsx';

/** The panel. `shown`: the frequency that is drawn. */
export function SignalPanel({
  told,
  shown,
  onShow,
}: {
  told: readonly SignalTold[] | null;
  shown: number;
  onShow: (frequency: number) => void;
}) {
  const { fitout } = useWords();
  const words = fitout.signal;
  const { settings, set } = useFitout();
  const step = fitout.changes.signal;
  const one = told?.find(({ frequency }) => frequency === shown) ?? told?.[0] ?? null;
  const asked = settings.wall.length > 0 && settings.frequencies.length > 0;
  return (
    <div className="fit-panel">
      <h3>{words.heading}</h3>
      <p className="facts-caution">{words.caution}</p>
      {!asked ? <p>{words.none}</p> : null}
      {asked && told === null ? <p className="quiet">{words.working}</p> : null}
      {told !== null && told.length > 1 && one ? (
        <Choice
          name={words.frequency}
          value={String(one.frequency)}
          of={told.map(({ frequency }) => [String(frequency), writeFrequency(frequency)] as const)}
          onChoose={(key) => onShow(Number(key))}
        />
      ) : null}
      {one === null ? null : <Told one={one} />}
      <h3>{words.layers}</h3>
      <Rows
        isOrdered
        className="fitout-things"
        rowClassName="gear-item"
        rows={settings.wall}
        onRows={(wall) => set({ wall }, step)}
        removeLabel={(_, i) => fitout.remove(words.layer(i + 1))}
        removeShort={fitout.removeShort}
      >
        {(layer, change) => <LayerForm layer={layer} onLayer={change} />}
      </Rows>
      <p className="buttons">
        <button
          type="button"
          disabled={settings.wall.length >= 20}
          onClick={() =>
            set(
              { wall: [...settings.wall, { material: 'glass polyester', thickness: 0.003 }] },
              step,
            )
          }
        >
          {words.add}
        </button>
      </p>
      <LimitField<number[]>
        name={words.frequencies}
        shown={settings.frequencies.map(writeFrequency).join(', ')}
        note={words.frequenciesNote}
        fault={words.frequenciesFault}
        read={readFrequencies}
        onValue={(frequencies) => set({ frequencies }, step)}
      />
      {settings.frequencies.length === 0 ? null : (
        <>
          <h3>{words.measured}</h3>
          <MeasuredForm />
        </>
      )}
      <h3>{words.paintRain}</h3>
      <div className="ground-form">
        <NumberField
          name={words.coats}
          value={settings.paint?.coats ?? null}
          least={0}
          most={20}
          decimals={0}
          onValue={(coats) =>
            set(
              {
                paint:
                  coats === null
                    ? null
                    : {
                        ...(settings.paint ?? { dryFilm: 1e-4, year: null, everyYears: 8 }),
                        coats: Math.round(coats),
                      },
              },
              step,
            )
          }
        />
        {settings.paint === null ? null : (
          <LengthField
            fine
            name={words.film}
            value={settings.paint.dryFilm}
            least={1e-5}
            most={2e-3}
            needed
            onValue={(dryFilm) =>
              dryFilm !== null &&
              settings.paint !== null &&
              set({ paint: { ...settings.paint, dryFilm } }, step)
            }
          />
        )}
        <NumberField
          name={words.rain}
          value={settings.rainMmHour}
          least={0}
          most={300}
          needed
          onValue={(rainMmHour) => rainMmHour !== null && set({ rainMmHour }, step)}
        />
        <NumberField
          name={words.system}
          value={settings.systemK}
          least={1}
          most={1e5}
          onValue={(systemK) => set({ systemK }, step)}
        />
      </div>
      <h3>{words.seams}</h3>
      <SeamForm />
    </div>
  );
}
