// What the sheet says while there is no shell to show: working, nothing there, stopped, failed.

import type { Ask } from '../../engine/ask.ts';
import type { Sheet } from '../../state/app-state.ts';
import { useApp, useAppState, useDerived, useEngine } from '../../ui/app-context.tsx';
import { ProgressLine } from '../../ui/progress-line.tsx';
import { useWords } from '../../words/words.ts';

const steps = ['work', 'shapes', 'stand', 'list'] as const;
type Step = (typeof steps)[number];

/** Progress of whatever is under way, and what stopped or failed. */
export function Steps() {
  const { places, frame } = useWords();
  const words = places.states;
  const engine = useEngine();
  const asks: Readonly<Record<Step, Ask<unknown>>> = {
    work: useDerived((derived) => derived.work),
    shapes: useDerived((derived) => derived.shapes),
    stand: useDerived((derived) => derived.stand),
    list: useDerived((derived) => derived.list),
  };
  return (
    <>
      {steps.map((step) => {
        const ask = asks[step];
        if (ask.status === 'running')
          return (
            <ProgressLine
              key={step}
              ask={ask}
              what={words[step]}
              onCancel={() => engine.cancel(step)}
            />
          );
        if (ask.status !== 'failed' && ask.status !== 'cancelled') return null;
        return (
          <div key={step} className="step-ended" role="alert">
            <p>
              {words[step]}:{' '}
              {ask.status === 'cancelled' ? words.cancelled : ask.died ? words.died : words.failed}
            </p>
            {ask.status === 'failed' && !ask.died ? <p className="quiet">{ask.fault}</p> : null}
            <button type="button" onClick={() => engine.again(step)}>
              {frame.again}
            </button>
          </div>
        );
      })}
    </>
  );
}

/** Why there is no shell, with the sheet that helps. */
export function NoShell({ onChoose }: { onChoose: () => void }) {
  const words = useWords().places.states;
  const kinds = useDerived((derived) => derived.work.value?.question.kinds.length);
  const shapes = useDerived((derived) => derived.shapes.value);
  const shape = useDerived((derived) => derived.shapes.value?.shapes[derived.shape]);
  const list = useDerived((derived) => derived.list.value?.list);
  const stand = useDerived((derived) => derived.stand.value);
  if (kinds === 0)
    return (
      <Message heading={words.emptyHeading} text={words.empty} to="pile" label={words.toPile} />
    );
  if (shapes && shapes.shapes.length === 0)
    return (
      <Message heading={words.openHeading} text={words.open} to="shape" label={words.toShape} />
    );
  if (shape && !shape.closed)
    return (
      <Message heading={words.partHeading} text={words.part} to="shape" label={words.toShape} />
    );
  if (stand && !stand.found)
    return (
      <div className="no-shell">
        <h2>{words.lostHeading}</h2>
        <p>{words.lost(stand.reason)}</p>
        <button type="button" className="go" disabled={!list} onClick={onChoose}>
          {words.chooseAnew}
        </button>
      </div>
    );
  if (list && list.arrangements.length === 0)
    return (
      <Message
        heading={words.openHeading}
        text={list.status === 'arranged' ? words.nothingStands : words.notClosed(list.reason)}
        to="shape"
        label={words.toShape}
      />
    );
  return <Waiting />;
}

function Waiting() {
  const words = useWords().places.states;
  const busy = useDerived(({ work, shapes, list, stand }) =>
    [work, shapes, list, stand].some(({ status }) => status === 'running'),
  );
  return busy ? <p className="no-shell quiet">{words.waiting}</p> : null;
}

function Message({
  heading,
  text,
  to,
  label,
}: {
  heading: string;
  text: string;
  to: Sheet;
  label: string;
}) {
  const app = useApp();
  const sheet = useAppState((state) => state.sheet);
  return (
    <div className="no-shell">
      <h2>{heading}</h2>
      <p>{text}</p>
      <button type="button" className="go" disabled={sheet === to} onClick={() => app.goTo(to)}>
        {label}
      </button>
    </div>
  );
}
