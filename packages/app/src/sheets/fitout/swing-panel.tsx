// The dish, its mount, and whether it swings.

import { type FitoutSettings, fitoutSection } from '@shellraise/core';
import type { FitoutTold } from '../../engine/fitout.ts';
import { useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { LengthField, NumberField } from '../ground/fields.tsx';
import { AroundForm, MountForm } from './mount-forms.tsx';
import { Facts } from './parts.tsx';
import { useFitout } from './use-fitout.ts';

type Dish = NonNullable<FitoutSettings['dish']>;

/** A dish as a new one starts. */
const newDish = (): Dish => fitoutSection.parse({ dish: { diameter: 2 } }).dish ?? missing();

const missing = (): never => {
  throw new Error('the schema has no dish');
};

/** The panel. */
export function SwingPanel({
  told,
  numbers,
}: {
  told: FitoutTold | null;
  numbers: readonly string[];
}) {
  const { fitout } = useWords();
  const words = fitout.swing;
  const { settings, set } = useFitout();
  const step = fitout.changes.dish;
  const { dish } = settings;
  if (dish === null)
    return (
      <div className="fit-panel">
        <h3>{words.heading}</h3>
        <p>{words.none}</p>
        <button type="button" className="go" onClick={() => set({ dish: newDish() }, step)}>
          {words.add}
        </button>
      </div>
    );
  const put = (part: Partial<Dish>): void => set({ dish: { ...dish, ...part } }, step);
  return (
    <div className="fit-panel">
      <h3>{words.heading}</h3>
      <Verdict told={told} numbers={numbers} />
      <div className="ground-form">
        <LengthField
          name={words.diameter}
          value={dish.diameter}
          least={0.05}
          most={30}
          needed
          onValue={(diameter) => diameter !== null && put({ diameter })}
        />
        <NumberField
          name={words.focalRatio}
          value={dish.focalRatio}
          least={0.2}
          most={2}
          needed
          onValue={(focalRatio) => focalRatio !== null && put({ focalRatio })}
        />
        <LengthField
          name={words.vertexAhead}
          value={dish.vertexAhead}
          least={-10}
          most={10}
          needed
          onValue={(vertexAhead) => vertexAhead !== null && put({ vertexAhead })}
        />
        <LengthField
          name={words.margin}
          value={settings.margin}
          least={0}
          most={5}
          needed
          onValue={(margin) => margin !== null && set({ margin }, step)}
        />
        <LengthField
          name={words.beyond}
          value={dish.feed.beyond}
          least={0}
          most={10}
          needed
          onValue={(beyond) => beyond !== null && put({ feed: { ...dish.feed, beyond } })}
        />
        <LengthField
          name={words.feed}
          value={dish.feed.diameter}
          least={0}
          most={10}
          needed
          onValue={(diameter) => diameter !== null && put({ feed: { ...dish.feed, diameter } })}
        />
        <LengthField
          name={words.behind}
          value={dish.back.behind}
          least={0}
          most={20}
          needed
          onValue={(behind) => behind !== null && put({ back: { ...dish.back, behind } })}
        />
        <LengthField
          name={words.back}
          value={dish.back.diameter}
          least={0}
          most={20}
          needed
          onValue={(diameter) => diameter !== null && put({ back: { ...dish.back, diameter } })}
        />
      </div>
      <h3>{words.mount}</h3>
      <MountForm />
      <h3>{words.around}</h3>
      <AroundForm />
      <button type="button" onClick={() => set({ dish: null }, step)}>
        {words.drop}
      </button>
    </div>
  );
}

function Verdict({ told, numbers }: { told: FitoutTold | null; numbers: readonly string[] }) {
  const { fitout } = useWords();
  const words = fitout.swing;
  const lengths = useLengths();
  const { settings } = useFitout();
  if (told?.answer.swing == null) return <p className="quiet">{fitout.working}</p>;
  const { swing, horizon } = told.answer;
  const { nearest, best, largest } = swing;
  const where = nearest.place < 0 ? words.floor : words.panel(numbers[nearest.place] ?? '');
  const degrees = (radians: number): number => Math.round((radians * 180) / Math.PI);
  const lowest = [...horizon].sort((a, b) => b.elevation - a.elevation)[0];
  return (
    <>
      <p className={swing.swings ? 'raise-verdict' : 'raise-verdict accent'} role="status">
        {swing.swings
          ? words.swings(lengths.side(nearest.clearance))
          : nearest.clearance < 0
            ? words.touches(lengths.side(-nearest.clearance), where)
            : words.near(lengths.side(nearest.clearance), where, lengths.side(settings.margin))}
      </p>
      <p className="facts-caution">
        {fitout.caution} {words.caution}
      </p>
      <Facts
        of={[
          [words.largest, largest > 0 ? lengths.large(largest) : words.noDish],
          largest > 0
            ? [words.best, words.bestTold(lengths.large(best.height), lengths.large(best.largest))]
            : null,
          lowest === undefined
            ? null
            : [
                words.horizon,
                words.horizonTold(
                  degrees(Math.min(...horizon.map(({ elevation }) => elevation))),
                  degrees(lowest.elevation),
                  lowest.by,
                  degrees(lowest.azimuth),
                ),
              ],
        ]}
      />
    </>
  );
}
