// Kinds that were read or written down wrong, each with the mend to be taken.

import type { Kind, Mend, PileKinds } from '@shellraise/core';
import { useApp, useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { takeMend } from './overrule.ts';

/** The mends; nothing where there are none. `worked` is null where the pile has changed since. */
export function MendList({
  mends,
  worked,
  kinds,
}: {
  mends: readonly Mend[];
  worked: PileKinds | null;
  kinds: readonly Kind[];
}) {
  const words = useWords().hard;
  if (mends.length === 0) return null;
  return (
    <section className="findings-list">
      <h2>{words.mends.heading}</h2>
      <p className="quiet">{words.mends.intro}</p>
      <ul>
        {mends.map((mend) => (
          <li key={`${mend.kind} ${mend.slip}`}>
            <One mend={mend} worked={worked} known={kinds.some(({ id }) => id === mend.kind)} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function One({ mend, worked, known }: { mend: Mend; worked: PileKinds | null; known: boolean }) {
  const { mends, listed, take } = useWords().hard;
  const lengths = useLengths();
  const app = useApp();
  const { kind, slip, measured, expected } = mend;
  const sides = mend.sides.length > 0 ? mend.sides : measured.map((_, side) => side);
  const write = (list: readonly number[]): string =>
    listed(sides.map((side) => lengths.side(list[side] as number)));
  const takeIt = (of: PileKinds): void => {
    app.change(
      (doc) => {
        takeMend(doc, mend, of, (before) => mends.note(listed(before.map(lengths.side))));
        return undefined;
      },
      { label: mends.taken(kind) },
    );
  };
  return (
    <>
      <p>{mends.slips[slip](kind, sides, write(measured), write(expected))}</p>
      {worked && known ? (
        <button
          type="button"
          className="screen-only"
          aria-label={mends.takeOf(kind)}
          onClick={() => takeIt(worked)}
        >
          {take}
        </button>
      ) : null}
    </>
  );
}
