// What lies over the sheet when asked for: the projects on this device, the view, the keys.

import { openKept } from '../files/open-kept.ts';
import { type Colouring, type Scheme, schemes } from '../state/settings.ts';
import { linkOf } from '../sync/site-links.ts';
import { ownLinks } from '../sync/start-site.ts';
import { useWords } from '../words/words.ts';
import { useApp, useAppState } from './app-context.tsx';
import { type Command, menuCommands, type Overlay, otherCommands } from './commands.ts';
import { OverSheet } from './over-sheet.tsx';

/** The overlay on show. */
export function Overlays({ shown, close }: { shown: Overlay; close: () => void }) {
  const words = useWords().frame;
  const titles = { projects: words.projectsTitle, keys: words.keys, view: words.view };
  return (
    <OverSheet title={titles[shown]} close={close}>
      {shown === 'projects' ? <Projects close={close} /> : null}
      {shown === 'keys' ? <Keys /> : null}
      {shown === 'view' ? <View /> : null}
    </OverSheet>
  );
}

function Projects({ close }: { close: () => void }) {
  const { frame: words, sharing } = useWords();
  const links = ownLinks().all();
  const ofSite = (id: string): string => {
    const link = linkOf(links, id);
    return link ? `${sharing.sitesProject(link.role)}, ` : '';
  };
  const app = useApp();
  const projects = useAppState((state) => state.projects);
  const current = useAppState((state) => state.projectId);
  if (projects.length === 0) return <p>{words.projectsEmpty}</p>;
  const open = async (id: string): Promise<void> => {
    if (await openKept(app, words, id)) close();
  };
  return (
    <ul className="project-list">
      {projects.map(({ id, title, savedAt, panels }) => (
        <li key={id} aria-current={id === current ? 'true' : undefined}>
          <button type="button" className="plain" onClick={() => void open(id)}>
            <strong>{title || words.untitled}</strong>
            <span className="quiet">
              {ofSite(id)}
              {words.panels(panels)},{' '}
              {words.keptAt(
                new Date(savedAt).toLocaleString('en-GB', {
                  dateStyle: 'medium',
                  timeStyle: 'short',
                }),
              )}
            </span>
          </button>
          {id === current ? null : (
            <button type="button" onClick={() => void removeProject(id, title)}>
              {words.remove}
            </button>
          )}
        </li>
      ))}
    </ul>
  );

  /** Removes, and offers to take that back. */
  async function removeProject(id: string, title: string): Promise<void> {
    const kept = await app.remove(id);
    const choices = kept ? [{ label: words.undo, act: () => void app.restore(kept) }] : [];
    app.tell('note', words.removed(title || words.untitled), [], choices);
  }
}

function Keys() {
  const words = useWords().frame;
  const app = useApp();
  const nothing = (): void => undefined;
  const commands: readonly Pick<Command, 'label' | 'keys'>[] = [
    ...menuCommands(app, words, nothing),
    ...otherCommands(app, words, nothing),
    { label: words.find, keys: 'Ctrl+K' },
    ...words.sheetKeys,
  ];
  return (
    <>
      <table className="keys">
        <tbody>
          {commands
            .filter(({ keys }) => keys !== '')
            .map(({ label, keys }) => (
              <tr key={label}>
                <th scope="row">{label}</th>
                <td>
                  <kbd>{keys}</kbd>
                </td>
              </tr>
            ))}
        </tbody>
      </table>
      <p className="quiet">{words.keysNote}</p>
    </>
  );
}

function View() {
  const words = useWords().frame;
  const app = useApp();
  const { scheme, lengths } = useAppState((state) => state.settings);
  return (
    <div className="view-settings">
      <Choices
        name={words.scheme}
        options={schemes.map((one): [Scheme, string] => [one, words.schemes[one]])}
        value={scheme}
        onChange={(one) => app.set({ scheme: one })}
      />
      <Choices
        name={words.lengthSystem}
        options={[
          ['metric', words.metric],
          ['inch', words.inch],
        ]}
        value={lengths}
        onChange={(one) => app.set({ lengths: one })}
      />
    </div>
  );
}

function Choices<T extends Scheme | Colouring | 'metric' | 'inch'>({
  name,
  options,
  value,
  onChange,
}: {
  name: string;
  options: readonly (readonly [T, string])[];
  value: T;
  onChange: (value: T) => void;
}) {
  return (
    <fieldset className="choices">
      <legend>{name}</legend>
      {options.map(([one, label]) => (
        <label key={one}>
          <input type="radio" name={name} checked={one === value} onChange={() => onChange(one)} />
          {label}
        </label>
      ))}
    </fieldset>
  );
}
