// The wall of a panel as a wave meets it, frequencies, paint and seams; and what they take from the signal.

import { type FitoutSettings, RADIO_MATERIAL_NAMES } from '@shellraise/core';
import type { SignalTold } from '../../engine/fitout.ts';
import { LimitField } from '../../ui/limit-field.tsx';
import { Rows } from '../../ui/rows.tsx';
import { useWords } from '../../words/words.ts';
import { LengthField, NumberField, plain } from '../ground/fields.tsx';
import { Choice } from '../ground/small.tsx';
import { useQuantities } from '../ground/use-ground.ts';
import { Facts } from './parts.tsx';
import { readFrequencies, writeFrequency } from './typed.ts';
import { useFitout } from './use-fitout.ts';

type Layer = FitoutSettings['wall'][number];

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

function Told({ one }: { one: SignalTold }) {
  const words = useWords().fitout.signal;
  const { metric } = useQuantities();
  const thick = (metres: number): string =>
    metric ? `${plain(1000 * metres, 1)} mm` : `${plain(metres / 0.0254, 2)} in`;
  const { sky, best, worst } = one;
  return (
    <>
      <Facts
        of={[
          sky === null
            ? null
            : [words.best, words.at(lossOf(sky.best), sky.best.azimuthDeg, sky.best.elevationDeg)],
          sky === null
            ? null
            : [
                words.worst,
                words.at(lossOf(sky.worst), sky.worst.azimuthDeg, sky.worst.elevationDeg),
              ],
          sky === null ? null : [words.mean, words.db(sky.meanDb)],
          best && worst
            ? [words.gain, words.gainTold(best.db, worst.least.db, worst.most.db)]
            : null,
          [words.wet, words.db(one.wetAtMost)],
          one.repainted === null ? null : [words.coat, words.db(one.repainted)],
          one.halfWaves.length === 0
            ? null
            : [words.halfWaves, one.halfWaves.map(thick).join(', ')],
        ]}
      />
      {sky === null ? <p>{words.noSky}</p> : null}
      <table className="fitout-table">
        <caption>{words.table}</caption>
        <thead>
          <tr>
            <th scope="col">{words.heads.angle}</th>
            <th scope="col">{words.heads.te}</th>
            <th scope="col">{words.heads.tm}</th>
          </tr>
        </thead>
        <tbody>
          {one.angles.map(({ incidence, te, tm }) => (
            <tr key={incidence}>
              <th scope="row">{Math.round((incidence * 180) / Math.PI)}°</th>
              <td>{te.toFixed(2)}</td>
              <td>{tm.toFixed(2)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

const lossOf = ({ keptLevel, keptUpright }: { keptLevel: number; keptUpright: number }): number =>
  -10 * Math.log10(Math.min(keptLevel, keptUpright));

function LayerForm({ layer, onLayer }: { layer: Layer; onLayer: (layer: Layer) => void }) {
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

function SeamForm() {
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
