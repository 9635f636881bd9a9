// Air and wet: vents low and high, water at the ring, hours in which the wall drips.

import type { FitoutSettings } from '@shellraise/core';
import type { FitoutTold } from '../../engine/fitout.ts';
import { useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { NumberField } from '../ground/fields.tsx';
import { useQuantities } from '../ground/use-ground.ts';
import { Facts, LinesField } from './parts.tsx';
import { readDrips, writeDrips } from './typed.ts';
import { useFitout } from './use-fitout.ts';

/** The panel. */
export function AirPanel({ told }: { told: FitoutTold | null }) {
  const { fitout } = useWords();
  const words = fitout.air;
  const { settings, set } = useFitout();
  const { metric } = useQuantities();
  const lengths = useLengths();
  const put = (part: Partial<FitoutSettings['air']>): void =>
    set({ air: { ...settings.air, ...part } }, fitout.changes.air);
  const air = told?.answer.air;
  const small = (area: number): string =>
    metric ? `${(1e4 * area).toFixed(0)} cm²` : `${(area / 0.0254 ** 2).toFixed(0)} in²`;
  return (
    <div className="fit-panel">
      <h3>{words.heading}</h3>
      <p className="facts-caution">
        {fitout.caution} {words.caution}
      </p>
      {air === undefined ? (
        <p className="quiet">{fitout.working}</p>
      ) : (
        <Facts
          of={[
            [
              words.vents,
              air.ventArea === null
                ? words.noVents
                : words.ventsTold(small(air.ventArea), lengths.large(air.between)),
            ],
            air.drain === null
              ? null
              : [
                  words.drain,
                  words.drainTold(air.drain.all.toFixed(2), air.drain.perMetre.toFixed(3)),
                ],
            [
              words.drips,
              air.drips === null ? words.unknown : words.dripsTold(air.drips.hours, air.drips.of),
            ],
          ]}
        />
      )}
      <div className="ground-form">
        <NumberField
          name={words.changes}
          value={settings.air.changesPerHour}
          least={0}
          most={100}
          needed
          onValue={(changesPerHour) => changesPerHour !== null && put({ changesPerHour })}
        />
        <NumberField
          name={words.warmer}
          value={settings.air.warmer}
          least={0}
          most={60}
          needed
          onValue={(warmer) => warmer !== null && put({ warmer })}
        />
        <NumberField
          name={words.outside}
          value={settings.air.outsideC}
          least={-45}
          most={60}
          needed
          onValue={(outsideC) => outsideC !== null && put({ outsideC })}
        />
      </div>
      <LinesField
        name={words.readings}
        note={words.readingsNote}
        shown={writeDrips(settings.air.readings)}
        read={readDrips}
        fault={words.readingsFault}
        onValue={(readings) => put({ readings: [...readings] })}
      />
    </div>
  );
}
