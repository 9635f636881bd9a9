// The paper that hangs on the fence: how to join, the picture, and the code for those without a camera. It
// is printed alone, in place of the sheet.

import { joinAddress, spelled } from '@shellraise/sync';
import { createPortal } from 'react-dom';
import { projectOf } from '../../state/app-state.ts';
import type { JoinCode } from '../../sync/site-calls.ts';
import { useAppState } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import { CodeDrawing } from './code-drawing.tsx';

/** The paper of a code. */
export function JoinPaper({
  base,
  plain,
  code,
}: {
  base: string;
  /** Over https: the address that gives a phone the laptop's root the first time. */
  plain: string | undefined;
  code: JoinCode;
}) {
  const { sharing, frame } = useWords();
  const words = sharing.paper;
  const title = useAppState((state) => projectOf(state).title);
  return createPortal(
    <div className="join-paper printed-alone print-only">
      <p className="join-paper-project">{title || frame.untitled}</p>
      <h1>{words.title(code.role)}</h1>
      <CodeDrawing text={joinAddress(base, code.code)} label="" />
      <ol>
        {plain === undefined ? null : <li>{words.trust(plain)}</li>}
        {words.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <p>{words.byHand}</p>
      <p className="join-paper-typed">
        {base}
        <br />
        <strong>{spelled(code.code)}</strong>
      </p>
      <p>{words.file}</p>
      <p>{words.privacy}</p>
      <p>{frame.caution}</p>
    </div>,
    document.body,
  );
}
