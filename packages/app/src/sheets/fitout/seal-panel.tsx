// How the shell is sealed: what to buy, in which order, in which hours; and leaks seen with where they may
// come from.

import { type FitoutSettings, SEALANT_PACKS, type SealantPack } from '@shellraise/core';
import type { FitoutTold } from '../../engine/fitout.ts';
import { useLengths } from '../../ui/app-context.tsx';
import { LimitField } from '../../ui/limit-field.tsx';
import { Rows } from '../../ui/rows.tsx';
import { useWords } from '../../words/words.ts';
import { LengthField, NumberField } from '../ground/fields.tsx';
import { Choice, Heads, optionsOf } from '../ground/small.tsx';
import { LinesField } from './parts.tsx';
import { readWeather, writeWeather } from './typed.ts';
import { useFitout } from './use-fitout.ts';

/** The panel. `seamOf`: whether two places share a seam. */
export function SealPanel({
  told,
  numbers,
  shareSeam,
}: {
  told: FitoutTold | null;
  numbers: readonly string[];
  shareSeam: (a: string, b: string) => boolean;
}) {
  const { fitout } = useWords();
  const words = fitout.seal;
  const { settings, set } = useFitout();
  const step = fitout.changes.seal;
  return (
    <div className="fit-panel">
      <h3>{words.heading}</h3>
      <p className="facts-caution">
        {fitout.caution} {words.caution}
      </p>
      {told === null ? (
        <p className="quiet">{fitout.working}</p>
      ) : (
        <Told told={told} numbers={numbers} />
      )}
      <SealForm />
      <LinesField
        name={words.typed}
        note={words.typedNote}
        shown={writeWeather(settings.weather)}
        read={readWeather}
        fault={words.typedFault}
        onValue={(weather) => set({ weather: [...weather] }, step)}
      />
      <h3>{words.leaks}</h3>
      <Leaks shareSeam={shareSeam} numbers={numbers} />
    </div>
  );
}

function Told({ told: { answer }, numbers }: { told: FitoutTold; numbers: readonly string[] }) {
  const words = useWords().fitout.seal;
  const lengths = useLengths();
  const { seal, leaks } = answer;
  const closing = seal.closing.reduce((sum, { seams }) => sum + seams.length, 0);
  const first = seal.closing[0];
  return (
    <>
      {seal.lines.length === 0 ? (
        <p>{words.nothing}</p>
      ) : (
        <table className="fitout-table">
          <caption>{words.buy}</caption>
          <Heads of={words.heads} />
          <tbody>
            {seal.lines.map((one) => (
              <tr key={one.item}>
                <th scope="row">{one.item}</th>
                <td>{words.items(one.length.toFixed(0))}</td>
                <td>
                  {one.unit === 'm'
                    ? words.items(one.amount.toFixed(0))
                    : words.litres((1000 * one.amount).toFixed(2))}
                </td>
                <td>{one.packs ?? '–'}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <p>{words.order(seal.order.length)}</p>
      <p>{words.closing(closing, first === undefined ? null : (numbers[first.place] ?? null))}</p>
      <h4>{words.weather}</h4>
      <p>
        {seal.weatherFrom === null
          ? words.noWeather
          : seal.windows.length === 0
            ? words.noHour(seal.weatherFrom)
            : words.hours(
                seal.weatherFrom,
                seal.windows.map(({ from, to }) => words.hour(from, to)),
              )}
      </p>
      {leaks.length > 0 ? (
        <p>
          {words.suspects(
            leaks
              .slice(0, 5)
              .map(({ along }) => (along === 0 ? words.here : words.above(lengths.large(along)))),
          )}
        </p>
      ) : null}
    </>
  );
}

function SealForm() {
  const { fitout } = useWords();
  const words = fitout.seal;
  const { settings, set } = useFitout();
  const { seal } = settings;
  const put = (part: Partial<FitoutSettings['seal']>): void =>
    set({ seal: { ...seal, ...part } }, fitout.changes.seal);
  return (
    <div className="ground-form">
      <Choice
        name={words.side}
        value={seal.side}
        of={optionsOf(words.sides)}
        onChoose={(side) => put({ side })}
      />
      <LengthField
        name={words.reach}
        value={seal.reach}
        least={0}
        most={30}
        needed
        onValue={(reach) => reach !== null && put({ reach })}
      />
      <LengthField
        fine
        name={words.joint}
        value={seal.joint}
        least={0.006}
        most={0.05}
        note={words.jointNote}
        onValue={(joint) => put({ joint })}
      />
      <Choice
        name={words.pack}
        value={seal.pack}
        of={(Object.keys(SEALANT_PACKS) as SealantPack[]).map((name) => [name, name] as const)}
        onChoose={(pack) => put({ pack })}
      />
      <NumberField
        name={words.tape}
        value={seal.tapeRoll}
        least={0.1}
        most={200}
        note={words.rollNote}
        onValue={(tapeRoll) => put({ tapeRoll })}
      />
      <NumberField
        name={words.foam}
        value={seal.foamRoll}
        least={0.1}
        most={200}
        note={words.rollNote}
        onValue={(foamRoll) => put({ foamRoll })}
      />
      <NumberField
        name={words.waste}
        value={seal.waste}
        per={0.01}
        decimals={0}
        least={0}
        most={2}
        needed
        onValue={(waste) => waste !== null && put({ waste })}
      />
    </div>
  );
}

function Leaks({
  shareSeam,
  numbers,
}: {
  shareSeam: (a: string, b: string) => boolean;
  numbers: readonly string[];
}) {
  const { fitout } = useWords();
  const words = fitout.seal;
  const { settings, set } = useFitout();
  const { leaks } = settings;
  const put = (next: FitoutSettings['leaks']): void => set({ leaks: next }, fitout.changes.seal);
  const add = (): void => {
    const pair = numbers
      .flatMap((a, i) => numbers.slice(i + 1).map((b): [string, string] => [a, b]))
      .find(([a, b]) => shareSeam(a, b));
    if (pair) put([...leaks, { between: pair, seen: '' }]);
  };
  return (
    <>
      <Rows
        className="fitout-things"
        rowClassName="gear-item"
        rows={leaks}
        onRows={put}
        removeLabel={(_, i) => fitout.remove(words.leak(i + 1))}
        removeShort={fitout.removeShort}
      >
        {(leak, change) => (
          <div className="ground-form">
            <LimitField<[string, string]>
              name={words.between}
              shown={leak.between.join(', ')}
              note={words.betweenNote}
              fault={words.betweenFault}
              read={(text) => {
                const [a = '', b = '', more] = text
                  .split(/[,;]|\band\b/)
                  .map((part) => part.trim());
                return more === undefined && shareSeam(a, b)
                  ? { ok: true, value: [a, b] }
                  : { ok: false };
              }}
              onValue={(between) => change({ ...leak, between })}
            />
            <LimitField
              name={words.seen}
              shown={leak.seen}
              read={(text) => ({ ok: true, value: text.trim().slice(0, 500) })}
              onValue={(seen) => change({ ...leak, seen })}
            />
          </div>
        )}
      </Rows>
      <p className="buttons">
        <button type="button" onClick={add}>
          {words.addLeak}
        </button>
      </p>
    </>
  );
}
