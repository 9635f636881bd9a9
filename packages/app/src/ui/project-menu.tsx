// The project menu, loaded when it is first opened.

import { Button, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import type { Command } from './commands.ts';

/** The menu with its button, open from the start. */
export function ProjectMenu({ label, commands }: { label: string; commands: readonly Command[] }) {
  return (
    <MenuTrigger defaultOpen>
      <Button className="menu-button">{label}</Button>
      <Popover className="popover" placement="bottom start">
        <Menu className="menu" onAction={(key) => commands.find(({ id }) => id === key)?.run()}>
          {commands.map(({ id, label: words, keys }) => (
            <MenuItem key={id} id={id} className="menu-item" textValue={words}>
              <span>{words}</span>
              {keys === '' ? null : <kbd>{keys}</kbd>}
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}
