// Readings that went wrong, each named with what it should read: put right in place, told to stand,
// or measured again.

import type { ReadingSlip, Slip } from '@shellraise/core';
import { memo } from 'react';
import { projectOf } from '../../state/app-state.ts';
import { useApp, useAppState, useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import type { GoTo } from './next-things.tsx';
import { isOf, mendReading, standAsRead } from './slip-mends.ts';
import type { Worked } from './worked.ts';

/** The slips of the readings, and those that somebody let stand. */
export const SlipList = memo(function SlipList({
  worked,
  goTo,
}: {
  worked: Worked | null;
  goTo: GoTo;
}) {
  const words = useWords().pile.slips;
  const readings = useAppState((state) => projectOf(state).pile.readings);
  // Rows may have moved, or been put right, since the pile was worked up.
  const slips = (worked?.kinds.slips ?? []).flatMap((slip) => {
    const before = worked?.pile.readings[slip.reading];
    const row = before ? readings.indexOf(before) : -1;
    const now = readings[row];
    return now && isOf(now, slip) && !now.asRead ? [{ slip, row }] : [];
  });
  const standing = readings.flatMap((reading, row) => (reading.asRead ? [{ reading, row }] : []));
  if (slips.length === 0 && standing.length === 0) return null;
  return (
    <section className="slips" aria-labelledby="pile-slips">
      <h2 id="pile-slips">{words.title}</h2>
      <ul>
        {slips.map(({ slip, row }) => (
          <li key={`${row} ${slip.slip}`}>
            <One slip={slip} row={row} goTo={goTo} />
          </li>
        ))}
        {standing.map(({ reading, row }) => (
          <li key={`stands ${row}`}>
            <Standing name={reading.tag ?? ''} row={row} />
          </li>
        ))}
      </ul>
    </section>
  );
});

function One({ slip, row, goTo }: { slip: ReadingSlip; row: number; goTo: GoTo }) {
  const { slips: words, tally, and, next } = useWords().pile;
  const lengths = useLengths();
  const app = useApp();
  const name = tally.rowOf(slip.tag ?? '', row + 1);
  const write = (list: readonly number[]): string =>
    and(slip.sides.map((side) => lengths.side(list[side] as number)));
  const sides = words.sides(and(slip.sides.map((side) => String(side + 1))), slip.sides.length);
  const [read, should] = [write(slip.measured), write(slip.expected)];
  const mend = (as: Slip): void =>
    app.change(
      (doc) => {
        mendReading(doc, row, { slip, as }, words.note(and(slip.measured.map(lengths.side))));
        return undefined;
      },
      { label: words.mending(name) },
    );
  const stand = (): void =>
    app.change(
      (doc) => {
        standAsRead(doc, row, true);
        return undefined;
      },
      { label: words.standing(name) },
    );
  const ways = [slip.slip, ...(slip.orElse === null ? [] : [slip.orElse])];
  return (
    <>
      <p>{words.says[slip.slip](words.who(name, slip.by), sides, read, should, slip.kind)}</p>
      {slip.orElse === null ? null : <p className="quiet">{words.alike}</p>}
      <div className="presses screen-only">
        {ways.map((way) => (
          <button key={way} type="button" onClick={() => mend(way)}>
            {words.mend[way]}
            <span className="read-out">, {name}</span>
          </button>
        ))}
        <button type="button" onClick={() => goTo(row, slip.sides[0] ?? 0)}>
          {next.again}
          <span className="read-out">, {name}</span>
        </button>
        <button type="button" onClick={stand}>
          {words.stands}
          <span className="read-out">, {name}</span>
        </button>
      </div>
    </>
  );
}

function Standing({ name, row }: { name: string; row: number }) {
  const { slips: words, tally } = useWords().pile;
  const app = useApp();
  const who = tally.rowOf(name, row + 1);
  return (
    <>
      <p className="quiet">{words.standsLine(who)}</p>
      <div className="presses screen-only">
        <button
          type="button"
          onClick={() =>
            app.change(
              (doc) => {
                standAsRead(doc, row, false);
                return undefined;
              },
              { label: words.doubting(who) },
            )
          }
        >
          {words.doubt}
          <span className="read-out">, {who}</span>
        </button>
      </div>
    </>
  );
}
