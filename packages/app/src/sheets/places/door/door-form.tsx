// What the opening is for and its size (a door's is kept with the wishes, and so is where the wind comes
// from); what candidates are ranked by, and which way it is wanted.

import type { OpeningRank, ViewPoint, Wishes } from '@shellraise/core';
import { useApp, useLengths } from '../../../ui/app-context.tsx';
import { LimitField } from '../../../ui/limit-field.tsx';
import { useWords } from '../../../words/words.ts';
import { readLimit, readWhole, withDoor, withWind } from '../fit/wishes.ts';
import { type AskedAs, HATCH, readSection, spans } from './asked.ts';
import { clockwise, doorRanks } from './doors.ts';

/** The form. */
export function DoorForm({
  wishes,
  as,
  door,
  diameter,
  outline,
  rank,
  towards,
  onAs,
  onDiameter,
  onOutline,
  onRank,
  onTowards,
}: {
  wishes: Wishes;
  as: AskedAs;
  door: { readonly width: number; readonly height: number };
  /** Of a hatch, metres. */
  diameter: number;
  /** Of a thing. */
  outline: readonly ViewPoint[];
  rank: OpeningRank;
  /** Degrees clockwise from the datum. */
  towards: number;
  onAs: (as: AskedAs) => void;
  onDiameter: (metres: number) => void;
  onOutline: (outline: readonly ViewPoint[]) => void;
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
    <div className="door-form screen-only" data-as={as}>
      <div className="field wide">
        <label htmlFor="door-as">{words.as}</label>
        <select
          id="door-as"
          value={as}
          onChange={({ target }) => {
            const one = ASKED.find((name) => name === target.value);
            if (one) onAs(one);
          }}
        >
          {ASKED.map((one) => (
            <option key={one} value={one}>
              {words.askedAs[one]}
            </option>
          ))}
        </select>
      </div>
      {as === 'door' ? <DoorSize door={door} onSize={set} /> : null}
      {as === 'hatch' ? (
        <LimitField
          name={words.diameter}
          shown={lengths.large(diameter)}
          fault={fitting.wishes.lengthFault(lengths.large(HATCH.most), lengths.large(0.6))}
          read={(text) => {
            const typed = readLimit(text, unit);
            return typed.ok &&
              typed.value !== undefined &&
              typed.value >= HATCH.least &&
              typed.value <= HATCH.most
              ? typed
              : { ok: false };
          }}
          onValue={(value) => value !== undefined && onDiameter(value)}
        />
      ) : null}
      {as === 'thing' ? <ThingSection outline={outline} onOutline={onOutline} /> : null}
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

const ASKED = ['door', 'hatch', 'thing'] as const satisfies readonly AskedAs[];

function DoorSize({
  door,
  onSize,
}: {
  door: { readonly width: number; readonly height: number };
  onSize: (size: 'width' | 'height', value: number | undefined) => void;
}) {
  const { fitting } = useWords();
  const lengths = useLengths();
  const unit = lengths.system === 'metric' ? 'm' : 'ft';
  return (['width', 'height'] as const).map((size) => (
    <LimitField
      key={size}
      name={fitting.door[size]}
      shown={lengths.large(door[size])}
      fault={fitting.wishes.lengthFault(lengths.large(50), lengths.large(2))}
      read={(text) => {
        const typed = readLimit(text, unit);
        return typed.ok && typed.value === undefined ? { ok: false } : typed;
      }}
      onValue={(value) => onSize(size, value)}
    />
  ));
}

/** The corners of a thing's section, with a drawing of it standing on the floor. */
function ThingSection({
  outline,
  onOutline,
}: {
  outline: readonly ViewPoint[];
  onOutline: (outline: readonly ViewPoint[]) => void;
}) {
  const words = useWords().fitting.door;
  const { system, large } = useLengths();
  const unit = system === 'metric' ? 'm' : 'ft';
  const per = system === 'metric' ? 1 : 0.3048;
  const typed = (metres: number): string => String(Number((metres / per).toFixed(3)));
  const shown = outline.map(([u, v]) => `${typed(u)} ${unit}, ${typed(v)} ${unit}`).join('; ');
  const such = ['0, 0', '1.2, 0', '1.2, 0.8', '0.6, 1.4', '0, 0.8'].join('; ');
  return (
    <div className="thing-section">
      <LimitField<readonly ViewPoint[]>
        name={words.section}
        shown={shown}
        note={words.sectionNote(such)}
        fault={words.sectionFault}
        read={(text) => readSection(text, unit)}
        onValue={onOutline}
      />
      <SectionDrawing
        outline={outline}
        label={words.sectionDrawn(large(spans(outline).width), large(spans(outline).height))}
      />
    </div>
  );
}

function SectionDrawing({ outline, label }: { outline: readonly ViewPoint[]; label: string }) {
  const { width } = spans(outline);
  const top = Math.max(...outline.map(([, up]) => up));
  const k = 90 / Math.max(width, top);
  const path = outline.map(([u, v]) => `${(u * k).toFixed(2)} ${(-v * k).toFixed(2)}`).join('L');
  return (
    <figure>
      <svg viewBox="-55 -95 110 105" role="img" aria-label={label}>
        <path className="section-thing" d={`M${path}Z`} />
        <path className="section-floor" d="M-53 0H53" />
      </svg>
      <figcaption className="quiet">{label}</figcaption>
    </figure>
  );
}
