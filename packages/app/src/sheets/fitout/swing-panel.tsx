// The dish, its mount, and whether it swings.

import { type FitoutSettings, fitoutSection } from '@shellraise/core';
import type { FitoutTold } from '../../engine/fitout.ts';
import { useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { LengthField, NumberField } from '../ground/fields.tsx';
import { Choice, optionsOf } from '../ground/small.tsx';
import { Facts } from './parts.tsx';
import { useFitout } from './use-fitout.ts';

type Dish = NonNullable<FitoutSettings['dish']>;

/** A dish as a new one starts. */
export const newDish = (): Dish => fitoutSection.parse({ dish: { diameter: 2 } }).dish ?? missing();

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

function MountForm() {
  const { fitout } = useWords();
  const words = fitout.swing;
  const { settings, set } = useFitout();
  const { mount } = settings;
  const put = (part: Partial<FitoutSettings['mount']>): void =>
    set({ mount: { ...mount, ...part } }, fitout.changes.dish);
  const degrees = (
    key: 'lowestDeg' | 'highestDeg' | 'azimuthDeg' | 'latitudeDeg' | 'hourAngleDeg',
    name: string,
    least: number,
    most: number,
    note = '',
  ) => (
    <NumberField
      {...{ name, least, most, note }}
      value={mount[key]}
      needed
      onValue={(value) => value !== null && put({ [key]: value })}
    />
  );
  return (
    <div className="ground-form">
      <Choice
        name={words.kind}
        value={mount.kind}
        of={optionsOf(words.kinds)}
        onChoose={(kind) => put({ kind })}
      />
      <LengthField
        name={words.height}
        value={mount.height}
        least={0}
        most={60}
        needed
        onValue={(height) => height !== null && put({ height })}
      />
      <LengthField
        name={words.aside}
        value={mount.aside[0]}
        least={-30}
        most={30}
        needed
        onValue={(x) => x !== null && put({ aside: [x, mount.aside[1]] })}
      />
      <LengthField
        name={words.asideLeft}
        value={mount.aside[1]}
        least={-30}
        most={30}
        needed
        onValue={(y) => y !== null && put({ aside: [mount.aside[0], y] })}
      />
      {degrees('lowestDeg', words.lowest, 0, 89)}
      {degrees('highestDeg', words.highest, 0, 90)}
      {mount.kind === 'azimuth and elevation'
        ? null
        : degrees('azimuthDeg', words.azimuth, -360, 360, words.azimuthNote)}
      {mount.kind === 'equatorial' ? (
        <>
          {degrees('latitudeDeg', words.latitude, -90, 90)}
          {degrees('hourAngleDeg', words.hourAngle, 0, 180)}
        </>
      ) : null}
    </div>
  );
}
