// The head of the strip: product, project, undo and redo, the menu and the view, and the keys that
// work on every sheet.

import { lazy, Suspense, useEffect, useMemo, useState } from 'react';
import { projectOf } from '../state/app-state.ts';
import { useWords } from '../words/words.ts';
import { useApp, useAppState } from './app-context.tsx';
import { menuCommands, type Overlay, otherCommands } from './commands.ts';
import { isPressed } from './keys.ts';

const ProjectMenu = lazy(async () => ({
  default: (await import('./project-menu.tsx')).ProjectMenu,
}));
const Overlays = lazy(async () => ({ default: (await import('./overlays.tsx')).Overlays }));

/** The head of the strip. */
export function HeadBar() {
  const words = useWords().frame;
  const app = useApp();
  const title = useAppState((state) => (state.opening ? words.opening : projectOf(state).title));
  const undo = useAppState((state) => state.history.past.at(-1)?.label);
  const redo = useAppState((state) => state.history.future[0]?.label);
  const [menu, setMenu] = useState(false);
  const [overlay, setOverlay] = useState<Overlay | null>(null);
  const commands = useMemo(() => menuCommands(app, words, setOverlay), [app, words]);
  useKeys(setOverlay);
  const menuButton = (
    <button
      type="button"
      className="menu-button"
      aria-haspopup="menu"
      onClick={() => setMenu(true)}
      onPointerEnter={() => void import('./project-menu.tsx')}
    >
      {words.menu}
    </button>
  );
  return (
    <header className="head-bar">
      <p className="product">{words.product}</p>
      <p className="project-name quiet">{title || words.untitled}</p>
      <div className="head-actions">
        {menu ? (
          <Suspense fallback={menuButton}>
            <ProjectMenu label={words.menu} commands={commands} />
          </Suspense>
        ) : (
          menuButton
        )}
        <button type="button" onClick={() => setOverlay('view')}>
          {words.view}
        </button>
        <StepButton name={words.undo} full={undo && words.undoOf(undo)} act={app.undo} />
        <StepButton name={words.redo} full={redo && words.redoOf(redo)} act={app.redo} />
      </div>
      {overlay ? (
        <Suspense fallback={null}>
          <Overlays shown={overlay} close={() => setOverlay(null)} />
        </Suspense>
      ) : null}
    </header>
  );
}

/** Undo or redo; `full` says what, and is missing where there is nothing. */
function StepButton({
  name,
  full,
  act,
}: {
  name: string;
  full: string | undefined;
  act: () => void;
}) {
  return (
    <button type="button" disabled={full === undefined} onClick={act} title={full}>
      {name}
    </button>
  );
}

/** Keys that work everywhere. In a field that is typed in, undo and redo are the field's own. */
function useKeys(show: (overlay: Overlay) => void): void {
  const words = useWords().frame;
  const app = useApp();
  useEffect(() => {
    const commands = [...menuCommands(app, words, show), ...otherCommands(app, words, show)].filter(
      ({ id }) => id !== 'print',
    );
    const hear = (event: KeyboardEvent): void => {
      const command = commands.find(({ keys }) => isPressed(keys, event));
      if (!command || event.defaultPrevented) return;
      const typing =
        event.target instanceof HTMLInputElement &&
        event.target.value !== event.target.defaultValue;
      if (typing && (command.id === 'undo' || command.id === 'redo')) return;
      event.preventDefault();
      command.run();
    };
    addEventListener('keydown', hear);
    return () => removeEventListener('keydown', hear);
  }, [app, words, show]);
}
