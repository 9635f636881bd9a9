// The ring beam that the base stands on: its sizes, and the pieces to cut.

import { beamCuts, cutFromStock } from '@shellraise/core';
import type { GroundAnswer } from '../../engine/ground.ts';
import { useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { LengthField, plain } from './fields.tsx';
import { Faults, Heads, Tick } from './small.tsx';
import { useGround } from './use-ground.ts';

/** A beam as it comes, to be changed. */
const FIRST = { width: 0.1, outside: 0, stock: null } as const;

/** The panel. */
export function BeamPanel({ answer }: { answer: GroundAnswer | null }) {
  const { beam: words, changes } = useWords().groundForms;
  const { ground, setGround } = useGround();
  const { ringBeam } = ground;
  const set = (part: Partial<typeof FIRST> | object): void =>
    setGround({ ringBeam: { ...(ringBeam ?? FIRST), ...part } }, changes.beam);
  return (
    <div className="fit-panel">
      <h3>{words.heading}</h3>
      <Tick
        name={words.has}
        checked={ringBeam !== null}
        onTick={(on) => setGround({ ringBeam: on ? { ...FIRST } : null }, changes.beam)}
      />
      {ringBeam === null ? <p className="quiet">{words.none}</p> : null}
      {ringBeam ? (
        <div className="ground-form">
          <LengthField
            fine
            needed
            name={words.width}
            value={ringBeam.width}
            least={0.01}
            most={1}
            onValue={(width) => width !== null && set({ width })}
          />
          <LengthField
            fine
            needed
            name={words.outside}
            note={words.outsideNote}
            value={ringBeam.outside}
            least={-1}
            most={1}
            onValue={(outside) => outside !== null && set({ outside })}
          />
          <LengthField
            name={words.stock}
            note={words.stockNote}
            value={ringBeam.stock}
            least={0.1}
            most={100}
            onValue={(stock) => set({ stock })}
          />
        </div>
      ) : null}
      {answer?.beam && ringBeam ? (
        answer.beam.ok ? (
          <Cuts pieces={answer.beam.value.pieces} stock={ringBeam.stock} />
        ) : (
          <Faults faults={answer.beam.faults} />
        )
      ) : null}
    </div>
  );
}

type Pieces = Parameters<typeof beamCuts>[0];

function Cuts({ pieces, stock }: { pieces: Pieces; stock: number | null }) {
  const words = useWords().groundForms.beam;
  const lengths = useLengths();
  const order =
    stock === null
      ? null
      : cutFromStock(
          pieces.map(({ outer, inner }) => Math.max(outer, inner)),
          stock,
        );
  const degrees = (angle: number): string => `${plain((angle * 180) / Math.PI, 1)}°`;
  return (
    <>
      <table className="ground-table">
        <Heads of={words.table} numbers />
        <tbody>
          {beamCuts(pieces).map(({ piece, from }, i) => (
            <tr key={from[0]}>
              <th scope="row">{i + 1}</th>
              <td className="number">{from.length}</td>
              <td className="number">{lengths.side(piece.outer)}</td>
              <td className="number">{lengths.side(piece.inner)}</td>
              <td className="number">
                {[...new Set([degrees(piece.mitreFrom), degrees(piece.mitreTo)])].join(', ')}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="quiet">{words.mitreNote}</p>
      {order && stock !== null ? (
        <p>{words.order(order.lengths.length, lengths.large(stock))}</p>
      ) : null}
      {order && order.tooLong.length > 0 ? (
        <p className="accent">{words.tooLong(order.tooLong.length)}</p>
      ) : null}
    </>
  );
}
