// The head of the strip: product, project, undo and redo, the menus.

import { projectOf } from '../state/app-state.ts';
import { useWords } from '../words/words.ts';
import { useApp, useAppState } from './app-context.tsx';

/** The head of the strip. */
export function HeadBar() {
  const words = useWords().frame;
  const app = useApp();
  const title = useAppState((state) => projectOf(state).title);
  const undo = useAppState((state) => state.history.past.at(-1)?.label);
  const redo = useAppState((state) => state.history.future[0]?.label);
  return (
    <header className="head-bar">
      <p className="product">{words.product}</p>
      <p className="project-name">{title || words.untitled}</p>
      <div className="head-actions">
        <button
          type="button"
          disabled={undo === undefined}
          onClick={app.undo}
          title={undo && words.undoOf(undo)}
        >
          {words.undo}
        </button>
        <button
          type="button"
          disabled={redo === undefined}
          onClick={app.redo}
          title={redo && words.redoOf(redo)}
        >
          {words.redo}
        </button>
      </div>
    </header>
  );
}
