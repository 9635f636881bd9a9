// What else the shell could be: floor by headroom, volume, sound, daylight, room for a table or a bed.

import type { FitoutSettings } from '@shellraise/core';
import type { FitoutTold } from '../../engine/fitout.ts';
import { useLengths } from '../../ui/app-context.tsx';
import { LimitField } from '../../ui/limit-field.tsx';
import { Rows } from '../../ui/rows.tsx';
import { useWords } from '../../words/words.ts';
import { LengthField, NumberField } from '../ground/fields.tsx';
import { useQuantities } from '../ground/use-ground.ts';
import { freeName } from '../raising/gear-fields.ts';
import { Facts } from './parts.tsx';
import { useFitout } from './use-fitout.ts';

type Use = FitoutSettings['use'];

/** The panel. */
export function RoomPanel({ told }: { told: FitoutTold | null }) {
  const { fitout } = useWords();
  const words = fitout.room;
  const { settings, set } = useFitout();
  const { use } = settings;
  const put = (part: Partial<Use>): void => set({ use: { ...use, ...part } }, fitout.changes.room);
  return (
    <div className="fit-panel">
      <h3>{words.heading}</h3>
      <Told told={told} />
      <div className="ground-form">
        <LengthField
          name={words.headroom}
          value={use.headroom}
          least={0}
          most={30}
          needed
          onValue={(headroom) => headroom !== null && put({ headroom })}
        />
        <LengthField
          name={words.soundOff}
          value={use.soundOff}
          least={0}
          most={20}
          needed
          onValue={(soundOff) => soundOff !== null && put({ soundOff })}
        />
        <NumberField
          name={words.bare}
          value={use.bareAbsorption}
          per={0.01}
          decimals={0}
          least={0}
          most={0.99}
          needed
          onValue={(bareAbsorption) => bareAbsorption !== null && put({ bareAbsorption })}
        />
        <NumberField
          name={words.cover}
          value={use.coverAbsorption}
          per={0.01}
          decimals={0}
          least={0}
          most={1}
          needed
          onValue={(coverAbsorption) => coverAbsorption !== null && put({ coverAbsorption })}
        />
        <NumberField
          name={words.clear}
          value={use.clearArea}
          least={0}
          most={1e4}
          needed
          onValue={(clearArea) => clearArea !== null && put({ clearArea })}
        />
      </div>
      <h3>{words.boxes}</h3>
      <Boxes boxes={use.boxes} told={told} onBoxes={(boxes) => put({ boxes: [...boxes] })} />
    </div>
  );
}

function Told({ told }: { told: FitoutTold | null }) {
  const { fitout } = useWords();
  const words = fitout.room;
  const { area, metric } = useQuantities();
  const lengths = useLengths();
  const { settings } = useFitout();
  if (told === null) return <p className="quiet">{fitout.working}</p>;
  const { use } = told.answer;
  const volume = metric
    ? `${use.volume.toFixed(0)} m³`
    : `${(use.volume / 0.3048 ** 3).toFixed(0)} ft³`;
  const cover = Number.isFinite(use.cover) ? `${Math.round(100 * use.cover)} %` : words.moreThanAll;
  return (
    <Facts
      of={[
        [
          words.floor,
          words.floorTold(
            area(use.floorArea),
            area(use.headroomArea),
            lengths.large(settings.use.headroom),
          ),
        ],
        [words.volume, volume],
        [words.echo, words.echoTold(use.echo.toFixed(1), area(use.absorbing))],
        [words.focus, words.focusTold(lengths.large(use.focus), cover)],
        use.daylight > 0
          ? [words.daylight, words.daylightTold((100 * use.daylight).toFixed(1))]
          : null,
      ]}
    />
  );
}

function Boxes({
  boxes,
  told,
  onBoxes,
}: {
  boxes: Use['boxes'];
  told: FitoutTold | null;
  onBoxes: (boxes: Use['boxes']) => void;
}) {
  const { fitout } = useWords();
  const words = fitout.room;
  const lengths = useLengths();
  return (
    <>
      <Rows
        className="fitout-things"
        rowClassName="gear-item"
        rows={boxes}
        onRows={onBoxes}
        removeLabel={({ name }) => fitout.remove(name)}
        removeShort={fitout.removeShort}
      >
        {(box, change) => {
          const found = told?.answer.use.boxes.find(({ name }) => name === box.name);
          return (
            <>
              <div className="ground-form">
                <LimitField
                  name={words.name}
                  shown={box.name}
                  fault={fitout.pass.nameFault}
                  read={(text) => {
                    const value = text.trim();
                    return value !== '' &&
                      value.length <= 60 &&
                      boxes.every((one) => one === box || one.name !== value)
                      ? { ok: true, value }
                      : { ok: false };
                  }}
                  onValue={(name) => change({ ...box, name })}
                />
                {(['length', 'depth', 'height'] as const).map((key) => (
                  <LengthField
                    key={key}
                    name={words[key]}
                    value={box[key]}
                    least={0.05}
                    most={30}
                    needed
                    onValue={(value) => value !== null && change({ ...box, [key]: value })}
                  />
                ))}
              </div>
              {found === undefined ? null : (
                <p className={found.room === null ? 'accent' : undefined}>
                  {box.name}:{' '}
                  {found.room === null
                    ? words.no
                    : words.fits(lengths.large(Math.max(0, found.room.out)))}
                </p>
              )}
            </>
          );
        }}
      </Rows>
      <p className="buttons">
        <button
          type="button"
          disabled={boxes.length >= 30}
          onClick={() =>
            onBoxes([
              ...boxes,
              { name: freeName(words.one, boxes), length: 1.2, depth: 0.7, height: 0.75 },
            ])
          }
        >
          {words.add}
        </button>
      </p>
    </>
  );
}
