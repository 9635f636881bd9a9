// One candidate: which places go, what that costs, the edge to be framed side by side, and the presses
// that show it and decide for it.

import { useApp, useLengths } from '../../../ui/app-context.tsx';
import { useWords } from '../../../words/words.ts';
import { opened } from '../decide.ts';
import type { Stood } from '../stood.ts';
import { useDecide } from '../use-decide.ts';
import { clockwise, type DoorContent, kindsOut, type RankedDoor } from './doors.ts';

/** The row. */
export function DoorRow({
  opening,
  figures,
  stiffness,
  number,
  stood,
  content,
}: RankedDoor & {
  /** Part of the shell's stiffness that is left, 0 … 1; null where it was not asked, or not yet. */
  stiffness: number | null;
  number: number;
  stood: Stood;
  content: DoorContent;
}) {
  const words = useWords().fitting.door;
  const app = useApp();
  const lengths = useLengths();
  const decide = useDecide(stood);
  const { numbers, plain, standing } = stood.standing;
  const { places, reveal, passage, toBase } = opening;
  const { saved, seamsCut, hubsFreed, edge, sill, top, offWind } = figures;
  const names = places.map((place) => numbers[place] ?? '');
  const use = toBase ? 'door' : 'hatch';
  return (
    <li className="way-out">
      <div className="fit-words">
        <p>
          <strong>{words.out(places.length, clockwise(passage.azimuth))}</strong>
        </p>
        <p>
          {kindsOut(content, opening)
            .map(({ kind, count }) => `${count} × ${kind}`)
            .join(', ')}
        </p>
        <p>
          {words.costs(seamsCut, hubsFreed, lengths.large(edge))}{' '}
          {words.reach(lengths.large(sill), lengths.large(top))}{' '}
          {offWind === null ? '' : words.offWind(Math.round((offWind * 180) / Math.PI))}{' '}
          {saved > 0 ? words.saves(saved) : ''}{' '}
          {stiffness === null ? '' : words.stiffness(Math.round(100 * stiffness))}
        </p>
      </div>
      <div className="fit-act">
        <button
          type="button"
          aria-label={`${words.show}: ${words.candidate(number)}`}
          onClick={() => app.select({ type: 'places', numbers: names })}
        >
          {words.show}
        </button>
        <button
          type="button"
          className={number === 1 ? 'main' : undefined}
          aria-label={`${words.adopt}: ${words.candidate(number)}`}
          onClick={() =>
            decide(
              (decision) =>
                opened(decision, { use, places: places.map((place) => plain[place] as string) }),
              words.adopting[use],
            )
          }
        >
          {words.adopt}
        </button>
      </div>
      <details className="tags fit-why">
        <summary aria-label={`${words.reveal}: ${words.candidate(number)}`}>{words.reveal}</summary>
        <p>{words.places(names)}</p>
        <ul className="short-list">
          {reveal.map(({ side, length }) => (
            <li key={side}>
              {words.side(numbers[standing.shell.sidePlace[side] as number] ?? '')}{' '}
              {lengths.side(length)}
            </li>
          ))}
        </ul>
      </details>
    </li>
  );
}
