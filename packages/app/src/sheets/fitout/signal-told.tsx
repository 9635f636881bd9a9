// What the wall takes at one frequency: best and worst of the sky, measured and reckoned, by angle.

import type { SignalTold } from '../../engine/fitout.ts';
import { useWords } from '../../words/words.ts';
import { plain } from '../ground/fields.tsx';
import { useQuantities } from '../ground/use-ground.ts';
import { Facts } from './parts.tsx';

/** The answer of one frequency. */
export function Told({ one }: { one: SignalTold }) {
  const words = useWords().fitout.signal;
  const { metric } = useQuantities();
  const thick = (metres: number): string =>
    metric ? `${plain(1000 * metres, 1)} mm` : `${plain(metres / 0.0254, 2)} in`;
  const { sky, best, worst } = one;
  return (
    <>
      <Facts
        of={[
          sky === null
            ? null
            : [words.best, words.at(lossOf(sky.best), sky.best.azimuthDeg, sky.best.elevationDeg)],
          sky === null
            ? null
            : [
                words.worst,
                words.at(lossOf(sky.worst), sky.worst.azimuthDeg, sky.worst.elevationDeg),
              ],
          sky === null ? null : [words.mean, words.db(sky.meanDb)],
          best && worst
            ? [words.gain, words.gainTold(best.db, worst.least.db, worst.most.db)]
            : null,
          [
            words.square,
            words.squareTold(
              words.db(one.angles[0]?.te ?? 0),
              one.measured === null ? null : words.db(one.measured),
            ),
          ],
          [words.wet, words.db(one.wetAtMost)],
          one.repainted === null ? null : [words.coat, words.db(one.repainted)],
          one.halfWaves.length === 0
            ? null
            : [words.halfWaves, one.halfWaves.map(thick).join(', ')],
        ]}
      />
      {sky === null ? <p>{words.noSky}</p> : null}
      {sky !== null && one.measured !== null ? <p>{words.usesMeasured}</p> : null}
      <table className="fitout-table">
        <caption>{words.table}</caption>
        <thead>
          <tr>
            <th scope="col">{words.heads.angle}</th>
            <th scope="col">{words.heads.te}</th>
            <th scope="col">{words.heads.tm}</th>
          </tr>
        </thead>
        <tbody>
          {one.angles.map(({ incidence, te, tm }) => (
            <tr key={incidence}>
              <th scope="row">{Math.round((incidence * 180) / Math.PI)}°</th>
              <td>{te.toFixed(2)}</td>
              <td>{tm.toFixed(2)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

const lossOf = ({ keptLevel, keptUpright }: { keptLevel: number; keptUpright: number }): number =>
  -10 * Math.log10(Math.min(keptLevel, keptUpright));
