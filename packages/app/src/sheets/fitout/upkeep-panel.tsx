// Keeping the shell: calendar, snow, coats, the round after a storm, taking down, and prompts for earth.

import { dayNumber, EARTH_PROMPTS, SNOW_WORDS, TAKING_DOWN } from '@shellraise/core';
import type { FitoutTold } from '../../engine/fitout.ts';
import { useLengths } from '../../ui/app-context.tsx';
import { LimitField } from '../../ui/limit-field.tsx';
import { useWords } from '../../words/words.ts';
import { NumberField } from '../ground/fields.tsx';
import { Heads } from '../ground/small.tsx';
import { useFitout } from './use-fitout.ts';

/** Days of the calendar that the screen shows. */
const SHOWN = 6;

/** The panel. */
export function UpkeepPanel({
  told,
  numbers,
  leftOut,
}: {
  told: FitoutTold | null;
  numbers: readonly string[];
  leftOut: readonly number[];
}) {
  const { fitout } = useWords();
  const words = fitout.upkeep;
  const { settings, set } = useFitout();
  const lengths = useLengths();
  const step = fitout.changes.upkeep;
  const { paint } = settings;
  const upkeep = told?.answer.upkeep;
  const stands = (place: number): boolean => !leftOut.includes(place);
  const first = upkeep?.round.find(stands);
  return (
    <div className="fit-panel">
      <h3>{words.heading}</h3>
      <p className="facts-caution">{fitout.caution}</p>
      <div className="ground-form">
        <LimitField
          name={words.stands}
          shown={settings.standsFrom ?? ''}
          note={words.standsNote}
          fault={words.standsFault}
          read={(text) =>
            text.trim() === '' || dayNumber(text.trim()) !== null
              ? { ok: true, value: text.trim() }
              : { ok: false }
          }
          onValue={(day) => set({ standsFrom: day === '' ? null : day }, step)}
        />
        <NumberField
          name={words.year}
          value={paint?.year ?? null}
          least={1950}
          most={2200}
          decimals={0}
          onValue={(year) =>
            set(
              {
                paint: {
                  ...(paint ?? { coats: 1, dryFilm: 1e-4, everyYears: 8 }),
                  year: year === null ? null : Math.round(year),
                },
              },
              step,
            )
          }
        />
        {paint === null ? null : (
          <NumberField
            name={words.every}
            value={paint.everyYears}
            least={1}
            most={50}
            needed
            onValue={(everyYears) =>
              everyYears !== null && set({ paint: { ...paint, everyYears } }, step)
            }
          />
        )}
      </div>
      {upkeep === undefined ? (
        <p className="quiet">{fitout.working}</p>
      ) : (
        <>
          {upkeep.calendar.length > 0 ? (
            <>
              <h4>{words.calendar}</h4>
              <dl className="ground-facts">
                {upkeep.calendar.slice(0, SHOWN).map(({ date, what }) => (
                  <div key={date}>
                    <dt>{date}</dt>
                    <dd className="fitout-what">{what.join('; ')}</dd>
                  </div>
                ))}
              </dl>
              {upkeep.calendar.length > SHOWN ? (
                <p className="quiet">{words.more(upkeep.calendar.length - SHOWN)}</p>
              ) : null}
            </>
          ) : null}
          <h4>{words.snow}</h4>
          {upkeep.snow.length === 0 ? (
            <p>{words.noSnow}</p>
          ) : (
            <>
              <table className="fitout-table">
                <Heads of={words.snowHeads} />
                <tbody>
                  {upkeep.snow.map(({ snow, clear, leave }) => (
                    <tr key={snow}>
                      <th scope="row">{words.snows[snow]}</th>
                      <td>{lengths.side(clear)}</td>
                      <td>{lengths.side(leave)}</td>
                    </tr>
                  ))}
                </tbody>
              </table>
              <p>{SNOW_WORDS}</p>
            </>
          )}
          {upkeep.repaint.length > 0 ? <p>{words.coats(upkeep.repaint.map(String))}</p> : null}
          {first === undefined ? null : <p>{words.round(numbers[first] ?? '')}</p>}
          <details className="tags">
            <summary>{words.down}</summary>
            <p>
              {words.downOrder(
                upkeep.down
                  .filter(stands)
                  .slice(0, 6)
                  .map((place) => numbers[place] ?? ''),
              )}
            </p>
            <ol className="notes">
              {TAKING_DOWN.map((one) => (
                <li key={one}>{one}</li>
              ))}
            </ol>
          </details>
        </>
      )}
      <details className="tags">
        <summary>{words.earth}</summary>
        <ol className="notes">
          {EARTH_PROMPTS.map((one) => (
            <li key={one}>{one}</li>
          ))}
        </ol>
      </details>
    </div>
  );
}
