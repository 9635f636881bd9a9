// What to read or look at next, the most telling first, with what one would find and which shape it
// then is; or that enough is measured.

import type { Identification, NextReading, PileKinds } from '@shellraise/core';
import { useApp, useLengths } from '../../ui/app-context.tsx';
import { inOwnLengths } from '../../ui/own-lengths.ts';
import { useWords } from '../../words/words.ts';
import { isLookAtHand, likeliestOf, tellsApart } from './outcomes.ts';
import { percentOf } from './sentences.ts';

/** Things shown at once, at most. */
const MOST_NEXT = 4;

/** What to do next; nothing where nothing is known of it. */
export function NextList({
  found,
  handTold = false,
  worked,
}: {
  found: Pick<Identification, 'next' | 'enough'>;
  /** Whether the look that settles the hand is told elsewhere. */
  handTold?: boolean;
  worked: PileKinds | null;
}) {
  const { next: words } = useWords().hard;
  const next = found.next.filter((one) => !handTold || !isLookAtHand(one));
  if (next.length === 0) return found.enough ? <p className="enough">{words.enough}</p> : null;
  return (
    <section className="findings-list next-readings">
      {found.enough ? <p className="enough">{words.enough}</p> : null}
      <h2>{found.enough ? words.surer : words.heading}</h2>
      <ol>
        {next.slice(0, MOST_NEXT).map((one) => (
          <li key={one.words}>
            <One one={one} worked={worked} />
          </li>
        ))}
      </ol>
    </section>
  );
}

function One({ one, worked }: { one: NextReading; worked: PileKinds | null }) {
  const { hard, shape } = useWords();
  const words = hard.next;
  const lengths = useLengths();
  const app = useApp();
  const { kind } = one;
  const reading = worked?.assigned.find((own) => (own.kind ?? own.candidates[0]) === kind)?.reading;
  const go = (): void => {
    if (reading !== undefined) app.select({ type: 'reading', row: reading });
    else if (kind !== null) app.select({ type: 'kind', id: kind });
    app.goTo('pile');
  };
  return (
    <>
      <div>
        <p>{shape.capital(inOwnLengths(one.words, lengths))}.</p>
        {tellsApart(one) ? (
          <ul className="finds" aria-label={words.finds}>
            {one.outcomes.map(({ find, length, run, shapes }) => {
              const { index, share } = likeliestOf(shapes);
              const what =
                index === shapes.length - 1
                  ? words.none
                  : share > 0.95
                    ? words.shapeSure(index + 1)
                    : words.shape(index + 1, percentOf(share));
              const seen =
                length !== undefined
                  ? lengths.small(length)
                  : (run?.join(' ') ?? inOwnLengths(find, lengths));
              return <li key={find}>{words.find(seen, what)}</li>;
            })}
          </ul>
        ) : null}
      </div>
      {kind === null ? null : (
        <button type="button" className="screen-only" onClick={go}>
          {words.acts[one.act]}
        </button>
      )}
    </>
  );
}
