// Kinds that the shape has no place for, with what they are instead; kinds that are wanted.

import type { Kind, Shape, Stranger } from '@shellraise/core';
import { kindsOfShape } from '@shellraise/core';
import { useApp, useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { leaveOut } from './overrule.ts';
import { strangersOf, wantedOf } from './wants.ts';

/** Strangers of a shape. */
export function StrangerList({
  shape,
  kinds,
  canChange,
}: {
  shape: Shape;
  kinds: readonly Kind[];
  /** False where the pile has changed since. */
  canChange: boolean;
}) {
  const { strangers: words } = useWords().hard;
  const app = useApp();
  const all = strangersOf(shape);
  if (all.length === 0) return null;
  const leave = (kind: Kind): void =>
    app.change(
      (doc) => {
        leaveOut(doc, kind);
        return undefined;
      },
      { label: words.leaving(kind.id) },
    );
  return (
    <section className="findings-list">
      <h2>{words.heading}</h2>
      <ul>
        {all.map((stranger) => {
          const kind = kinds.find(({ id }) => id === stranger.kind);
          return (
            <li key={stranger.kind}>
              <Says stranger={stranger} kinds={kindsOfShape(shape, kinds)} />
              {kind && canChange ? (
                <button type="button" className="screen-only" onClick={() => leave(kind)}>
                  {words.leaveOut(kind.id)}
                </button>
              ) : null}
            </li>
          );
        })}
      </ul>
    </section>
  );
}

function Says({ stranger, kinds }: { stranger: Stranger; kinds: readonly Kind[] }) {
  const { strangers: words } = useWords().hard;
  const lengths = useLengths();
  switch (stranger.as) {
    case 'cut':
      return (
        <p>
          {words.cut(
            stranger.kind,
            kinds[stranger.from]?.id ?? '',
            stranger.cutSide,
            lengths.small(stranger.misfit),
          )}
        </p>
      );
    case 'misread':
      return (
        <p>
          {words.misread(
            stranger.kind,
            kinds[stranger.of]?.id ?? '',
            stranger.expected.map((side) => lengths.side(side)).join(', '),
          )}
        </p>
      );
    case 'course':
      return <p>{words.course(stranger.kind, lengths.side(stranger.height), stranger.rimSides)}</p>;
    default:
      return <p>{words[stranger.as](stranger.kind)}</p>;
  }
}

/** Kinds that the shell needs and the pile has none of. */
export function WantedList({ shape, kinds }: { shape: Shape; kinds: readonly Kind[] }) {
  const words = useWords().hard;
  const lengths = useLengths();
  const wanted = wantedOf(shape, kinds);
  if (wanted.length === 0) return null;
  return (
    <section className="findings-list">
      <h2>{words.wanted.heading}</h2>
      <p className="quiet">{words.wanted.intro}</p>
      <ul>
        {wanted.map(({ kind, places }) => (
          <li key={kind.id}>
            <p>
              {words.wanted.one(
                kind.id,
                places,
                words.listed(
                  kind.sides.map((side, i) =>
                    words.wanted.side(lengths.side(side), lengths.small(kind.sideSds[i] ?? 0)),
                  ),
                ),
              )}
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
}
