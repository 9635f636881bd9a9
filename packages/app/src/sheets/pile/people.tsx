// Whose tape reads long, what is done about it, and the press that overrules it.

import { useApp, useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { stateTape } from './slip-mends.ts';
import type { Worked } from './worked.ts';

/** Deviations beyond which a tape that is left as it is may be taken off. */
const WORTH_A_PRESS = 2;

/** The table; nothing where nobody's tape is told from another's. */
export function People({ worked }: { worked: Worked }) {
  const words = useWords().pile.people;
  const lengths = useLengths();
  const app = useApp();
  const state = (by: string, shift: number | null): void =>
    app.change(
      (doc) => {
        stateTape(doc, by, shift);
        return undefined;
      },
      { label: words.stating(by) },
    );
  const { people, noise } = worked.kinds;
  if (people.length === 0) return null;
  return (
    <section aria-labelledby="pile-people-title">
      <h2 id="pile-people-title">{words.title}</h2>
      <table>
        <thead>
          <tr>
            <th scope="col">{words.columns.by}</th>
            <th scope="col" className="number">
              {words.columns.readings}
            </th>
            <th scope="col" className="number">
              {words.columns.off}
            </th>
            <th scope="col">{words.columns.note}</th>
          </tr>
        </thead>
        <tbody>
          {people.map(({ by, readings, bias, sd, basis, applied, stated }) => (
            <tr key={by}>
              <th scope="row">{by}</th>
              <td className="number">{readings}</td>
              <td className="number">
                {basis === 'nothing' && !stated
                  ? words.nothing
                  : `${lengths.off(bias)}${sd === null ? '' : ` ± ${lengths.small(sd)}`}`}
              </td>
              <td>
                {stated
                  ? bias === 0
                    ? words.statedNone
                    : words.stated
                  : applied
                    ? words.applied
                    : basis === 'kinds'
                      ? words.kindsOnly
                      : basis === 'panels'
                        ? words.small
                        : ''}
                {stated ? (
                  <button type="button" className="screen-only" onClick={() => state(by, null)}>
                    {words.reckon}
                    <span className="read-out">, {by}</span>
                  </button>
                ) : !applied && Math.abs(bias) <= WORTH_A_PRESS * (sd ?? Infinity) ? null : (
                  <button
                    type="button"
                    className="screen-only"
                    onClick={() => state(by, applied ? 0 : bias)}
                  >
                    {applied ? words.leave : words.takeOff}
                    <span className="read-out">, {by}</span>
                  </button>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="quiet">
        {words.noise(
          lengths.small(noise.used),
          lengths.small(noise.stated),
          noise.found === null ? null : lengths.small(noise.found),
        )}
      </p>
    </section>
  );
}
