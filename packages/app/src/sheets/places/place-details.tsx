// The selected place, large enough to build from: its number, its panel, and its joint picture; or
// the selected kind, hub or seam.

import { useMemo } from 'react';
import type { Quantities } from '../../engine/drawings.ts';
import { projectOf } from '../../state/app-state.ts';
import { useApp, useAppState, useDerived, useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { boltWords } from './bolt-words.ts';
import { Joint } from './joint.tsx';
import { placesAround, seamsOf } from './seams-of.ts';
import { type Stood, usePicked } from './stood.ts';
import { tagsOf } from './tags.ts';

/** What is selected. */
export function Details({ stood, quantities }: { stood: Stood; quantities: Quantities | null }) {
  const words = useWords().places.details;
  const { picked, kind, marked } = usePicked(stood);
  switch (picked?.type) {
    case 'place':
      return <PlaceDetails stood={stood} place={picked.place} quantities={quantities} />;
    case 'hub':
      return <HubDetails stood={stood} hub={picked.hub} />;
    case 'seam':
      return <SeamDetails stood={stood} side={picked.side} quantities={quantities} />;
    case undefined:
      return kind === null ? (
        <div className="details">
          <p className="quiet">{words.nothing}</p>
          <p>{words.hint}</p>
        </div>
      ) : (
        <KindDetails stood={stood} id={kind} places={marked} />
      );
  }
}

function PlaceDetails({
  stood,
  place,
  quantities,
}: {
  stood: Stood;
  place: number;
  quantities: Quantities | null;
}) {
  const { places: words } = useWords();
  const { standing, kinds } = stood;
  const { shell, courses } = standing.standing;
  const kind = kinds[shell.kind[place] as number];
  const number = standing.numbers[place] ?? '';
  const painted = standing.decision.frozen && standing.frozenFault === null;
  return (
    <div className="details place">
      <div className="details-words">
        <p className="details-number">{number}</p>
        <p className="details-kind">
          {words.details.kind(kind?.id ?? '?')}
          {kind?.hand ? `, ${words.details.hand[kind.hand]}` : ''}
        </p>
        <p>{words.details.course(courses.course[place] as number, courses.counts.length)}</p>
        {kind && kind.marks.length > 0 ? <p>{words.details.marks(kind.marks)}</p> : null}
        {painted ? (
          <p>{standing.painted[place] === 1 ? words.details.painted : words.details.added}</p>
        ) : null}
        <p className="quiet">{words.details.hubsNote}</p>
      </div>
      <Joint stood={stood} place={place} />
      <SideTable stood={stood} place={place} quantities={quantities} />
      <KindTags kind={kind?.id ?? null} fits />
    </div>
  );
}

function SideTable({
  stood: { standing, kinds },
  place,
  quantities,
}: {
  stood: Stood;
  place: number;
  quantities: Quantities | null;
}) {
  const words = useWords().places.details;
  const app = useApp();
  const lengths = useLengths();
  const { shell } = standing.standing;
  const sides = seamsOf({ shell, kinds, numbers: standing.numbers }, place);
  return (
    <table className="sides">
      <thead>
        <tr>
          <th scope="col">{words.columns.side}</th>
          <th scope="col">{words.columns.length}</th>
          <th scope="col">{words.columns.to}</th>
        </tr>
      </thead>
      <tbody>
        {sides.map(({ id, side, length, to }) => (
          <tr key={id}>
            <th scope="row">{side}</th>
            <td>
              {lengths.side(length)} <span className="quiet">{lengths.echo(length)}</span>
            </td>
            <td>
              {to ? (
                <button
                  type="button"
                  className="link"
                  onClick={() => app.select({ type: 'place', number: to.number })}
                >
                  {words.to(to.number, to.kind, to.side)}
                </button>
              ) : (
                words.open
              )}
              {to ? <span className="quiet">{boltWords(shell, id, quantities, words)}</span> : null}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function KindTags({ kind, fits }: { kind: string | null; fits: boolean }) {
  const words = useWords().places.details;
  const pile = useAppState((state) => projectOf(state).pile);
  const assigned = useDerived((derived) => derived.work.value?.worked.assigned);
  const tags = useMemo(
    () => tagsOf(pile.readings, assigned ?? []).filter((one) => one.kind === kind),
    [pile, assigned, kind],
  );
  if (tags.length === 0) return <p className="quiet">{words.noTags}</p>;
  return (
    <details className="tags">
      <summary>{words.tags(tags.length)}</summary>
      <p>{tags.map(({ tag }) => tag).join(', ')}</p>
      {fits ? <p className="quiet">{words.anyOf}</p> : null}
    </details>
  );
}

function KindDetails({
  stood: { kinds },
  id,
  places,
}: {
  stood: Stood;
  id: string;
  places: readonly number[];
}) {
  const words = useWords().places.details;
  const lengths = useLengths();
  const kind = kinds.find((one) => one.id === id);
  if (!kind) return <p className="details quiet">{words.nothing}</p>;
  const sides = kind.sides.map((length, i) => ({ side: i + 1, length }));
  return (
    <div className="details">
      <p className="details-number">{id}</p>
      <p className="details-kind">
        {words.kind(id)}
        {kind.hand ? `, ${words.hand[kind.hand]}` : ''}
      </p>
      <p>{places.length > 0 ? words.kindPlaces(places.length) : words.noPlaces}</p>
      {kind.marks.length > 0 ? <p>{words.marks(kind.marks)}</p> : null}
      <ul>
        {sides.map(({ side, length }) => (
          <li key={side}>
            {words.side(side)}: {lengths.side(length)}{' '}
            <span className="quiet">{lengths.echo(length)}</span>
          </li>
        ))}
      </ul>
      <KindTags kind={id} fits={false} />
    </div>
  );
}

function HubDetails({ stood: { standing, kinds }, hub }: { stood: Stood; hub: number }) {
  const words = useWords().places.details;
  const app = useApp();
  const { shell } = standing.standing;
  const around = placesAround(shell, hub);
  const rim = shell.sideHub.some((at, side) => {
    if (at !== hub) return false;
    return (shell.mate[side] as number) < 0;
  });
  return (
    <div className="details">
      <p className="details-kind">{words.hub}</p>
      <p>{words.hubOf(around.length, rim)}</p>
      <p className="quiet">{words.around}</p>
      <ol className="around">
        {around.map((place) => (
          <li key={place}>
            <button
              type="button"
              onClick={() => app.select({ type: 'place', number: standing.numbers[place] ?? '' })}
            >
              {standing.numbers[place]}
            </button>{' '}
            {words.kind(kinds[shell.kind[place] as number]?.id ?? '?')}
          </li>
        ))}
      </ol>
    </div>
  );
}

function SeamDetails({
  stood: { standing, kinds },
  side,
  quantities,
}: {
  stood: Stood;
  side: number;
  quantities: Quantities | null;
}) {
  const words = useWords().places.details;
  const app = useApp();
  const lengths = useLengths();
  const { shell } = standing.standing;
  const places = [side, shell.mate[side] as number].map((s) => shell.sidePlace[s] as number);
  const own = seamsOf({ shell, kinds, numbers: standing.numbers }, places[0] ?? 0).find(
    ({ id }) => id === side,
  );
  if (!own?.to) return null;
  const [a, b] = [standing.numbers[places[0] ?? 0] ?? '', own.to.number];
  return (
    <div className="details">
      <p className="quiet">{words.seam}</p>
      <p className="details-number">{words.seamOf(a, b)}</p>
      <p className="details-kind">{words.seamSides(a, own.side, b, own.to.side)}</p>
      <p>
        {lengths.side(own.length)} <span className="quiet">{lengths.echo(own.length)}</span>
      </p>
      <p>{boltWords(shell, side, quantities, words)}</p>
      <div className="buttons">
        {[a, b].map((number) => (
          <button key={number} type="button" onClick={() => app.select({ type: 'place', number })}>
            {number}
          </button>
        ))}
      </div>
    </div>
  );
}
