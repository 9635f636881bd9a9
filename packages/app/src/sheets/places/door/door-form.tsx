// The size of the door and where the wind comes from, kept with the wishes; what candidates are ranked by,
// and which way it is wanted.

import type { OpeningRank, Wishes } from '@shellraise/core';
import { useApp, useLengths } from '../../../ui/app-context.tsx';
import { LimitField } from '../../../ui/limit-field.tsx';
import { useWords } from '../../../words/words.ts';
import { readLimit, readWhole, withDoor, withWind } from '../fit/wishes.ts';
import { clockwise, doorRanks } from './doors.ts';

/** The form. */
export function DoorForm({
  wishes,
  door,
  rank,
  towards,
  onRank,
  onTowards,
}: {
  wishes: Wishes;
  door: { readonly width: number; readonly height: number };
  rank: OpeningRank;
  /** Degrees clockwise from the datum. */
  towards: number;
  onRank: (rank: OpeningRank) => void;
  onTowards: (degrees: number) => void;
}) {
  const { fitting } = useWords();
  const words = fitting.door;
  const app = useApp();
  const lengths = useLengths();
  const unit = lengths.system === 'metric' ? 'm' : 'ft';
  const { windFrom } = wishes;
  const ranks = doorRanks(windFrom !== undefined);
  const setWind = (degrees: number | undefined): void =>
    app.change(
      ({ project }) => {
        const next = withWind(wishes, degrees);
        project.wishes = { ...next, order: [...next.order] };
        return undefined;
      },
      { label: words.turningWind },
    );
  const set = (size: 'width' | 'height', value: number | undefined): void => {
    if (value === undefined) return;
    app.change(
      ({ project }) => {
        const next = withDoor(wishes, size, value);
        project.wishes = { ...next, order: [...next.order] };
        return undefined;
      },
      { label: words.resizing },
    );
  };
  return (
    <div className="door-form screen-only">
      {(['width', 'height'] as const).map((size) => (
        <LimitField
          key={size}
          name={words[size]}
          shown={lengths.large(door[size])}
          fault={fitting.wishes.lengthFault(lengths.large(50), lengths.large(2))}
          read={(text) => {
            const typed = readLimit(text, unit);
            return typed.ok && typed.value === undefined ? { ok: false } : typed;
          }}
          onValue={(value) => set(size, value)}
        />
      ))}
      <div className="field">
        <label htmlFor="door-rank">{words.rankBy}</label>
        <select
          id="door-rank"
          value={rank}
          onChange={({ target }) => {
            const one = ranks.find((name) => name === target.value);
            if (one) onRank(one);
          }}
        >
          {ranks.map((one) => (
            <option key={one} value={one}>
              {words.ranks[one]}
            </option>
          ))}
        </select>
      </div>
      <LimitField
        name={words.towards}
        shown={String(towards)}
        note={words.towardsNote}
        fault={fitting.wishes.wholeFault(359)}
        read={(text) => readWhole(text, 359)}
        onValue={(value) => onTowards(value ?? 0)}
        numeric
      />
      <LimitField
        name={words.wind}
        shown={windFrom === undefined ? '' : String(clockwise(windFrom))}
        note={words.windNote}
        fault={fitting.wishes.wholeFault(359)}
        read={(text) => readWhole(text, 359)}
        onValue={setWind}
        numeric
      />
    </div>
  );
}
