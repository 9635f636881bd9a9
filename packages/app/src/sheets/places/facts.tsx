// What stands, in words beside its picture: height with the caution, floor, what is short, and the
// ways to change it.

import type { PlacesDecision } from '@shellraise/core';
import { projectOf } from '../../state/app-state.ts';
import { useApp, useAppState, useDerived, useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { decidedCandidate, nextCut } from './candidates.ts';
import { chosen } from './decide.ts';
import type { Stood } from './stood.ts';

/** The facts of a standing shell. */
export function Facts({ stood }: { stood: Stood }) {
  const { places: words, frame } = useWords();
  const lengths = useLengths();
  const { standing } = stood;
  const decided = useAppState((state) => projectOf(state).places !== undefined);
  const shapes = useDerived((derived) => derived.shapes.value?.shapes.length ?? 0);
  const { facts } = words;
  const same = facts.same(standing.sameIn, shapes);
  return (
    <div className="facts">
      <p className="facts-size">
        {facts.size(lengths.large(standing.height), lengths.large(2 * standing.floorMean))}
      </p>
      <p className="quiet">
        {facts.sizeEcho(
          lengths.largeEcho(standing.height),
          lengths.largeEcho(2 * standing.floorMean),
        )}
      </p>
      <p className="facts-caution">{frame.caution}</p>
      <p>
        {facts.places(standing.numbers.length, standing.standing.courses.counts.length)},{' '}
        {standing.flat ? facts.flat : facts.uneven(lengths.large(standing.baseUnevenness))},{' '}
        <Short stood={stood} />
        {standing.leftOut.length > 0 ? `, ${facts.leftOut(standing.leftOut.length)}` : ''}.
      </p>
      {same ? <p>{same}</p> : null}
      <FrozenLines stood={stood} />
      {decided ? null : <p>{facts.undecided}</p>}
    </div>
  );
}

/** Nothing short, or what is, in the accent. */
function Short({ stood: { standing } }: { stood: Stood }) {
  const words = useWords().places;
  const short = standing.stock.filter((row) => row.short > 0);
  const mended = standing.stock.reduce((sum, row) => sum + row.mended, 0);
  const withMended = mended > 0 ? `, ${words.facts.mended(mended)}` : '';
  if (short.length === 0)
    return (
      <>
        {words.facts.nothingShort}
        {withMended}
      </>
    );
  const mendable = short.reduce((sum, row) => sum + row.mendable, 0);
  return (
    <>
      <strong className="accent">
        {short
          .map((row) => words.facts.short(row.short, words.details.kind(row.kinds.join(' = '))))
          .join(', ')}
      </strong>
      {withMended}
      {mendable > 0 ? `, ${words.facts.mendable(mendable)}` : ''}
    </>
  );
}

function FrozenLines({ stood: { standing } }: { stood: Stood }) {
  const { facts } = useWords().places;
  if (standing.frozenFault !== null)
    return <p className="accent">{facts.frozenFault(standing.frozenFault)}</p>;
  if (!standing.decision.frozen) return null;
  return (
    <p>
      {facts.frozen} {standing.idle.length > 0 ? facts.idle(standing.idle.length) : ''}
    </p>
  );
}

/** The ways to change what stands. */
export function StandButtons({
  stood: { standing },
  onChoose,
}: {
  stood: Stood;
  onChoose: () => void;
}) {
  const words = useWords().places;
  const decided = useAppState((state) => projectOf(state).places !== undefined);
  const app = useApp();
  const list = useDerived((derived) => derived.list.value);
  const at = list ? decidedCandidate(list.list, standing.decision) : null;
  const to = (way: 'lower' | 'higher'): PlacesDecision | null => {
    const next = list && at !== null ? nextCut(list.list, at, way) : null;
    return (next === null ? null : list?.decisions[next]) ?? null;
  };
  const choose = (decision: PlacesDecision): void => {
    app.change(
      ({ project }) => {
        project.places = chosen(decision, project.places);
        return undefined;
      },
      { label: words.changes.choose },
    );
  };
  const [lower, higher] = [to('lower'), to('higher')];
  return (
    <div className="stand-buttons screen-only">
      <button type="button" className="main" onClick={onChoose}>
        {list ? words.facts.choose(list.list.arrangements.length) : words.facts.chooseNone}
      </button>
      {decided ? null : (
        <button type="button" onClick={() => choose(standing.decision)}>
          {words.facts.decideIt}
        </button>
      )}
      <button type="button" disabled={!lower} onClick={() => lower && choose(lower)}>
        {words.facts.lower}
      </button>
      <button type="button" disabled={!higher} onClick={() => higher && choose(higher)}>
        {words.facts.higher}
      </button>
      {decided ? (
        <button type="button" onClick={() => app.goTo('ground')}>
          {words.facts.toGround}
        </button>
      ) : null}
    </div>
  );
}
