// The wishes: in one sentence, and as a form below it. Each change is a step that can be undone.

import type { Wishes } from '@shellraise/core';
import { useApp, useLengths } from '../../../ui/app-context.tsx';
import type { Lengths } from '../../../ui/lengths.ts';
import { LimitField } from '../../../ui/limit-field.tsx';
import { useWords, type Words } from '../../../words/words.ts';
import {
  hasNoLimit,
  isOptional,
  lengthLimits,
  moved,
  notCounted,
  orderOf,
  readLimit,
  readWhole,
  shownLimit,
  USUAL_DOOR,
  type WholeLimit,
  wholeLimits,
  withCounted,
  withLength,
  withoutCounted,
  withoutDoor,
  withWhole,
} from './wishes.ts';

/** The sentence, and the form behind a press. */
export function WishesForm({ wishes, saved }: { wishes: Wishes; saved: boolean }) {
  const words = useWords().fitting;
  const lengths = useLengths();
  const app = useApp();
  const set = (next: Wishes | undefined, label: string): void =>
    app.change(
      ({ project }) => {
        if (next === undefined) delete project.wishes;
        else project.wishes = { ...next, order: [...next.order] };
        return undefined;
      },
      { label },
    );
  return (
    <section className="wishes" aria-label={words.wishes.heading}>
      <p>{sentenceOf(wishes, words.wishes, words.counts, lengths)}</p>
      <details className="tags screen-only">
        <summary>{words.wishes.change}</summary>
        <div className="wishes-form">
          <Order wishes={wishes} onWishes={(next) => set(next, words.changes.order)} />
          <Limits wishes={wishes} onWishes={(next) => set(next, words.changes.limit)} />
          {saved ? (
            <button type="button" onClick={() => set(undefined, words.changes.usual)}>
              {words.wishes.reset}
            </button>
          ) : null}
        </div>
      </details>
    </section>
  );
}

interface PartProps {
  readonly wishes: Wishes;
  readonly onWishes: (wishes: Wishes) => void;
}

function Order({ wishes, onWishes }: PartProps) {
  const words = useWords().fitting;
  const order = orderOf(wishes);
  return (
    <fieldset className="wish-order">
      <legend>{words.wishes.order}</legend>
      <ol>
        {order.map((what, i) => (
          <li key={what}>
            <span className="wish-rank">{i + 1}</span>
            <span className="wish-name">{words.counts(what)}</span>
            {isOptional(what) ? (
              <button
                type="button"
                aria-label={words.wishes.leave(words.counts(what))}
                onClick={() => onWishes(withoutCounted(wishes, what))}
              >
                ×
              </button>
            ) : null}
            <button
              type="button"
              disabled={i === 0}
              aria-label={words.wishes.up(words.counts(what))}
              onClick={() => onWishes(moved(wishes, what, -1))}
            >
              ↑
            </button>
            <button
              type="button"
              disabled={i === order.length - 1}
              aria-label={words.wishes.down(words.counts(what))}
              onClick={() => onWishes(moved(wishes, what, 1))}
            >
              ↓
            </button>
          </li>
        ))}
      </ol>
      <CountAsWell {...{ wishes, onWishes }} />
    </fieldset>
  );
}

/** A demand taken into the order may be missed for what stands before it. */
function CountAsWell({ wishes, onWishes }: PartProps) {
  const words = useWords().fitting;
  const others = notCounted(wishes);
  if (others.length === 0) return null;
  return (
    <label className="count-more">
      <span>{words.wishes.asWell}</span>
      <select
        value=""
        onChange={({ target }) => {
          const one = others.find((name) => name === target.value);
          if (one) onWishes(withCounted(wishes, one));
        }}
      >
        <option value="">{words.wishes.choose}</option>
        {others.map((one) => (
          <option key={one} value={one}>
            {words.counts(one)}
          </option>
        ))}
      </select>
      <span className="quiet">{words.wishes.asWellNote}</span>
    </label>
  );
}

function Limits({ wishes, onWishes }: PartProps) {
  const words = useWords().fitting.wishes;
  const lengths = useLengths();
  const unit = lengths.system === 'metric' ? 'm' : 'ft';
  const whole = (limit: WholeLimit) => (
    <LimitField
      key={limit}
      name={words[limit]}
      shown={wishes[limit] === undefined ? '' : String(wishes[limit])}
      note={hasNoLimit(limit) ? words.noLimit : ''}
      fault={words.wholeFault(wholeLimits[limit])}
      read={(text) => readWhole(text, wholeLimits[limit])}
      onValue={(value) => onWishes(withWhole(wishes, limit, value))}
      numeric
    />
  );
  return (
    <fieldset className="wish-limits">
      <legend>{words.limits}</legend>
      {(Object.keys(wholeLimits) as WholeLimit[]).map(whole)}
      {lengthLimits.map((limit) => {
        const shown = shownLimit(wishes, limit);
        return (
          <LimitField
            key={limit}
            name={words[limit]}
            shown={shown === undefined ? '' : lengths.large(shown)}
            note={words.noLimit}
            fault={words.lengthFault(lengths.large(50), lengths.large(3.5))}
            read={(text) => readLimit(text, unit)}
            onValue={(value) => onWishes(withLength(wishes, limit, value))}
          />
        );
      })}
      <label className="check">
        <input
          type="checkbox"
          checked={wishes.door !== undefined}
          onChange={({ target }) =>
            onWishes(target.checked ? { ...wishes, door: { ...USUAL_DOOR } } : withoutDoor(wishes))
          }
        />
        {words.door(
          lengths.large((wishes.door ?? USUAL_DOOR).width),
          lengths.large((wishes.door ?? USUAL_DOOR).height),
        )}
      </label>
      {(['mended', 'flatBase'] as const).map((flag) => (
        <label key={flag} className="check">
          <input
            type="checkbox"
            checked={wishes[flag]}
            onChange={({ target }) => onWishes({ ...wishes, [flag]: target.checked })}
          />
          {words[flag]}
        </label>
      ))}
    </fieldset>
  );
}

/** The wishes in one sentence. */
function sentenceOf(
  wishes: Wishes,
  words: Words['fitting']['wishes'],
  counts: Words['fitting']['counts'],
  lengths: Lengths,
): string {
  const { order, spares, mended, mostGaps, mostBought, flatBase } = wishes;
  const limit = (key: (typeof lengthLimits)[number]): string | null => {
    const shown = shownLimit(wishes, key);
    return shown === undefined ? null : lengths.large(shown);
  };
  const [tall, floor, within] = lengthLimits.map(limit);
  const [first, ...then] = order.length > 0 ? order : orderOf(wishes);
  return `${[
    words.first(counts(first ?? '')),
    ...then.map((what) => words.next(counts(what))),
    mended ? null : words.goodOnly,
    mostGaps > 0 ? words.gaps(mostGaps) : words.noGaps,
    spares > 0 ? words.keep(spares) : null,
    mostBought === undefined ? null : words.bought(mostBought),
    flatBase ? words.flat : null,
    wishes.door
      ? words.doorOf(lengths.large(wishes.door.width), lengths.large(wishes.door.height))
      : null,
    wishes.mostParted === undefined ? null : words.parted(wishes.mostParted),
    tall ? words.tall(tall) : null,
    floor ? words.floor(floor) : null,
    within ? words.within(within) : null,
  ]
    .filter((part) => part !== null)
    .join(', ')}.`;
}
