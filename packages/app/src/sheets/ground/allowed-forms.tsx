// What is allowed of the base, of shims and of tapes: common practice unless the lead changes it.

import { useLengths } from '../../ui/app-context.tsx';
import { LimitField } from '../../ui/limit-field.tsx';
import { useWords } from '../../words/words.ts';
import { lengthsWithin } from './edits.ts';
import { fineLength, LengthField, NumberField } from './fields.tsx';
import { useGround } from './use-ground.ts';

const tolerances = ['radiusGood', 'radiusStop', 'neighbour', 'overall', 'hubHeight'] as const;
const plays = ['slack', 'gap', 'depth'] as const;

/** Tolerances of the survey and play of the seams. */
export function SurveyAllowed() {
  const { allowed: words, changes } = useWords().groundForms;
  const { ground, setGround } = useGround();
  return (
    <details className="tags">
      <summary>{words.survey}</summary>
      <p className="quiet">{words.note}</p>
      <div className="ground-form">
        {tolerances.map((key) => (
          <LengthField
            key={key}
            fine
            needed
            name={words[key]}
            value={ground.tolerances[key]}
            least={0}
            most={1}
            onValue={(value) =>
              value !== null &&
              setGround({ tolerances: { ...ground.tolerances, [key]: value } }, changes.allowed)
            }
          />
        ))}
        {plays.map((key) => (
          <LengthField
            key={key}
            fine
            needed
            name={words[key]}
            value={ground.play[key]}
            least={key === 'depth' ? 0.001 : 0}
            most={1}
            onValue={(value) =>
              value !== null &&
              setGround({ play: { ...ground.play, [key]: value } }, changes.allowed)
            }
          />
        ))}
      </div>
    </details>
  );
}

const SHIM = { least: 1e-4, most: 0.2 } as const;

/** Tilt and steps allowed of the shims, and those in hand. */
export function ShimsAllowed() {
  const { allowed: words, changes } = useWords().groundForms;
  const { ground, setGround } = useGround();
  const metric = useLengths().system === 'metric';
  const { shims } = ground;
  const set = (part: Partial<typeof shims>): void =>
    setGround({ shims: { ...shims, ...part } }, changes.allowed);
  const show = (size: number): string => fineLength(size, metric);
  return (
    <details className="tags">
      <summary>{words.shims}</summary>
      <p className="quiet">{words.note}</p>
      <div className="ground-form">
        <NumberField
          name={words.tilt}
          needed
          per={0.001}
          value={shims.tilt}
          least={0}
          most={0.05}
          onValue={(tilt) => set({ tilt: tilt ?? 0 })}
        />
        <LengthField
          fine
          needed
          name={words.neighbourStep}
          value={shims.neighbour}
          least={0}
          most={1}
          onValue={(neighbour) => set({ neighbour: neighbour ?? 0 })}
        />
        <LengthField
          fine
          needed
          name={words.overallStep}
          value={shims.overall}
          least={0}
          most={1}
          onValue={(overall) => set({ overall: overall ?? 0 })}
        />
        <LimitField<number[]>
          name={words.pieces}
          shown={shims.pieces.map(show).join(', ')}
          note={words.piecesNote(metric ? '1, 2, 5, 10 mm' : '1/16, 1/8, 1/4 in')}
          fault={words.piecesFault(show(SHIM.least), show(SHIM.most))}
          read={(text) => lengthsWithin(text, metric ? 'mm' : 'in', SHIM.least, SHIM.most, 20)}
          onValue={(pieces) => set({ pieces })}
        />
      </div>
    </details>
  );
}

/** How tapes are read, and how long they are. */
export function TapeForm() {
  const { tape: words, changes } = useWords().groundForms;
  const { ground, setGround } = useGround();
  const { tape } = ground;
  const set = (part: Partial<typeof tape>): void =>
    setGround({ tape: { ...tape, ...part } }, changes.tape);
  return (
    <details className="tags">
      <summary>{words.heading}</summary>
      <div className="ground-form">
        <LengthField
          fine
          needed
          name={words.sd}
          value={tape.sd}
          least={1e-4}
          most={0.1}
          onValue={(sd) => sd !== null && set({ sd })}
        />
        <LengthField
          needed
          name={words.length}
          value={tape.length}
          least={0.1}
          most={100}
          onValue={(length) => length !== null && set({ length })}
        />
        <LengthField
          name={words.datum}
          note={words.datumNote}
          value={tape.datum}
          least={0.1}
          most={100}
          onValue={(datum) => set({ datum })}
        />
      </div>
    </details>
  );
}
