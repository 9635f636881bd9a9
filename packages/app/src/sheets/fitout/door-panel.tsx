// The door that is left out on the Places sheet: what its frame follows, where to prop, the order in which
// panels come out, and what it costs the frame.

import { useMemo } from 'react';
import type { FitoutDoorQuestion, FitoutDoorTold } from '../../engine/fitout.ts';
import type { Run } from '../../engine/runs.ts';
import { useApp, useLengths } from '../../ui/app-context.tsx';
import { LimitField } from '../../ui/limit-field.tsx';
import { ProgressLine } from '../../ui/progress-line.tsx';
import { useWords } from '../../words/words.ts';
import { BarForm, BracingFacts } from './door-bars.tsx';
import { Facts } from './parts.tsx';
import { useFitout } from './use-fitout.ts';

/** The panel; `run` reckons the frame. */
export function DoorPanel({
  numbers,
  leftOut,
  hasWind,
  told,
  run,
  onCancel,
}: {
  numbers: readonly string[];
  leftOut: readonly number[];
  hasWind: boolean;
  told: FitoutDoorTold | null;
  run: Run<FitoutDoorQuestion, FitoutDoorTold>;
  onCancel: () => void;
}) {
  const { fitout } = useWords();
  const words = fitout.door;
  const app = useApp();
  const lengths = useLengths();
  const named = useMemo(() => (place: number) => numbers[place] ?? '', [numbers]);
  if (leftOut.length === 0)
    return (
      <div className="fit-panel">
        <h3>{words.heading}</h3>
        <p>{words.none}</p>
        <Panels numbers={numbers} />
        <button type="button" className="go" onClick={() => app.goTo('places')}>
          {words.toPlaces}
        </button>
      </div>
    );
  if (told === null) return <p className="quiet">{fitout.working}</p>;
  const { advice, frame } = told;
  const degrees = (radians: number): number => Math.round((radians * 180) / Math.PI);
  return (
    <div className="fit-panel">
      <h3>{words.heading}</h3>
      <p className="facts-caution">
        {fitout.caution} {words.caution}
      </p>
      <Panels numbers={numbers} />
      <ProgressLine ask={run} what={words.working} onCancel={onCancel} />
      <Facts
        of={[
          ...(['header', 'jamb', 'sill'] as const).map((part) =>
            advice.lengths[part] > 0
              ? ([words[part], lengths.large(advice.lengths[part])] as const)
              : null,
          ),
          [words.props, words.propsTold(advice.props.length)],
          [words.out, words.outTold(advice.cutOrder.map(named))],
          [words.spares, String(advice.spares)],
          [
            words.wind,
            advice.offWind === null || !hasWind
              ? words.windUnknown
              : words.windTold(degrees(advice.offWind)),
          ],
          frame === null ? null : [words.stiffness, words.share(frame.stiffness.kept)],
          frame?.sag
            ? [
                words.sag,
                words.sagTold(lengths.small(frame.sag.open), lengths.small(frame.sag.whole)),
              ]
            : null,
          frame?.buckling
            ? [words.buckling, words.share(Math.min(1, frame.buckling.open / frame.buckling.whole))]
            : null,
        ]}
      />
      {advice.held.length > 0 ? (
        <p>{words.held(advice.held.map((step) => named(advice.cutOrder[step] ?? -1)))}</p>
      ) : null}
      {frame === null ? null : <p className="quiet">{words.unframed}</p>}
      {frame?.bracing ? <BracingFacts bracing={frame.bracing} /> : null}
      {frame !== null && frame.supposed.length > 0 ? (
        <p className="accent">{words.supposed(frame.supposed)}</p>
      ) : null}
      <BarForm />
    </div>
  );
}

/** The panels of the door, by number. */
function Panels({ numbers }: { numbers: readonly string[] }) {
  const { fitout } = useWords();
  const { settings, set } = useFitout();
  return (
    <LimitField<string[]>
      name={fitout.door.panels}
      shown={settings.door.join(', ')}
      note={fitout.door.panelsNote}
      fault={fitout.door.panelsFault}
      read={(text) => {
        const value = text.split(/[,;\s]+/).filter((one) => one !== '');
        return value.length <= 60 && value.every((one) => numbers.includes(one))
          ? { ok: true, value: [...new Set(value)] }
          : { ok: false };
      }}
      onValue={(door) => set({ door }, fitout.changes.door)}
    />
  );
}
