// What the lead knows of panels, flanges, bolts, props and hubs; what is reckoned with where he does
// not know is told beside it.

import { BOLT_GRADES, boltName, frameParts, type PartsKnown, readThread } from '@shellraise/core';
import { LimitField } from '../../ui/limit-field.tsx';
import { useWords } from '../../words/words.ts';
import { ForceField, fineLength, LengthField, NumberField, plain } from './fields.tsx';
import { Caution, Choice, optionsOf } from './small.tsx';
import { SupportsForm } from './supports-form.tsx';
import { useParts, useQuantities } from './use-ground.ts';

/** The panel. */
export function PartsPanel() {
  const { parts: words, supports } = useWords().groundForms;
  return (
    <div className="fit-panel">
      <h3>{words.heading}</h3>
      <p className="quiet">{words.note}</p>
      <h4>{words.panel}</h4>
      <PanelForm />
      <h4>{words.flange}</h4>
      <FlangeForm />
      <h4>{words.bolts}</h4>
      <BoltForm />
      <h4>{words.props}</h4>
      <PropForm />
      <h4>{supports.heading}</h4>
      <SupportsForm />
      <Reckoned />
    </div>
  );
}

const GIGA = 1e9;
const MEGA = 1e6;

function PanelForm() {
  const { parts: words, changes, unknown } = useWords().groundForms;
  const { parts, setPart } = useParts();
  const { panel } = parts;
  const set = (part: Partial<PartsKnown['panel']>): void => setPart('panel', part, changes.parts);
  return (
    <div className="ground-form">
      <Choice
        name={words.material}
        value={panel.material ?? 'unknown'}
        of={optionsOf({ unknown, ...words.materials })}
        onChoose={(material) => set({ material: material === 'unknown' ? null : material })}
      />
      <LengthField
        fine
        name={words.thickness}
        value={panel.thickness}
        least={1e-4}
        most={1}
        onValue={(thickness) => set({ thickness })}
      />
      <LengthField
        fine
        name={words.bendingThickness}
        note={words.bendingNote}
        value={panel.bendingThickness}
        least={1e-4}
        most={1}
        onValue={(bendingThickness) => set({ bendingThickness })}
      />
      <NumberField
        name={words.strength}
        note={words.strengthNote}
        per={MEGA}
        value={panel.strength}
        least={1e4}
        most={1e10}
        onValue={(strength) => set({ strength })}
      />
      <NumberField
        name={words.young}
        note={words.ofMaterial}
        per={GIGA}
        value={panel.young}
        least={1e6}
        most={1e12}
        onValue={(young) => set({ young })}
      />
      <NumberField
        name={words.poisson}
        note={words.ofMaterial}
        value={panel.poisson}
        least={0}
        most={0.49}
        onValue={(poisson) => set({ poisson })}
      />
      <NumberField
        name={words.density}
        note={words.ofMaterial}
        value={panel.density}
        least={1}
        most={20_000}
        onValue={(density) => set({ density })}
      />
    </div>
  );
}

function FlangeForm() {
  const { parts: words, changes } = useWords().groundForms;
  const { parts, setPart } = useParts();
  const { flange } = parts;
  return (
    <div className="ground-form">
      <LengthField
        fine
        name={words.depth}
        value={flange.depth}
        least={1e-3}
        most={1}
        onValue={(depth) => setPart('flange', { depth }, changes.parts)}
      />
      <LengthField
        fine
        name={words.flangeThickness}
        note={words.flangeNote}
        value={flange.thickness}
        least={1e-4}
        most={1}
        onValue={(thickness) => setPart('flange', { thickness }, changes.parts)}
      />
    </div>
  );
}

function BoltForm() {
  const { parts: words, changes, unknown } = useWords().groundForms;
  const { parts, setPart } = useParts();
  const { bolt } = parts;
  const { boltProof } = frameParts(parts);
  const { force } = useQuantities();
  return (
    <>
      <div className="ground-form">
        <LimitField<string | null>
          name={words.thread}
          shown={bolt.thread ?? ''}
          note={words.threadNote}
          fault={words.threadFault}
          read={(text) => {
            const typed = text.trim();
            if (typed === '') return { ok: true, value: null };
            return readThread(typed).ok ? { ok: true, value: typed } : { ok: false };
          }}
          onValue={(thread) => setPart('bolt', { thread }, changes.parts)}
        />
        <Choice
          name={words.grade}
          value={bolt.grade ?? 'unknown'}
          of={[
            ['unknown', unknown],
            ...Object.keys(BOLT_GRADES).map((name) => [name, name] as const),
          ]}
          onChoose={(grade) =>
            setPart('bolt', { grade: grade === 'unknown' ? null : grade }, changes.parts)
          }
        />
      </div>
      {boltProof === null ? null : (
        <p className="quiet">
          {boltName(bolt)}. {words.proof(force(boltProof))}
        </p>
      )}
    </>
  );
}

function PropForm() {
  const { parts: words, changes } = useWords().groundForms;
  const { stages, setStages } = useParts();
  return (
    <div className="ground-form">
      <ForceField
        name={words.propBears}
        value={stages.propBears}
        onValue={(propBears) => setStages({ propBears }, changes.parts)}
      />
      <ForceField
        name={words.hubBears}
        value={stages.hubBears}
        onValue={(hubBears) => setStages({ hubBears }, changes.parts)}
      />
    </div>
  );
}

/** What the frame reckons with, and what of it nobody said. */
function Reckoned() {
  const { parts: words } = useWords().groundForms;
  const { parts } = useParts();
  const { metric } = useQuantities();
  const { young, poisson, density, thickness, flangeDepth, flangeThickness, supposed, sources } =
    frameParts(parts);
  const rows: readonly (readonly [string, string])[] = [
    [words.young, plain(young / GIGA, 2)],
    [words.poisson, plain(poisson, 2)],
    [words.density, plain(density, 0)],
    [words.thickness, fineLength(thickness, metric)],
    [words.depth, fineLength(flangeDepth, metric)],
    [words.flangeThickness, fineLength(flangeThickness, metric)],
  ];
  return (
    <>
      <h3>{words.reckoned}</h3>
      <dl className="ground-facts">
        {rows.map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      <p className={supposed.length > 0 ? 'accent' : 'quiet'}>
        {supposed.length > 0 ? words.supposed(supposed) : words.nothingSupposed}
      </p>
      <Caution sources={sources} />
    </>
  );
}
