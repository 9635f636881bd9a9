// Where a site is kept unless a folder is named: where the system has programs keep what is theirs.

import { homedir } from 'node:os';
import { join } from 'node:path';

/** The usual folder of this person's site. */
export function usualFolder(
  platform: string = process.platform,
  env: Readonly<Record<string, string | undefined>> = process.env,
  home: string = homedir(),
): string {
  if (platform === 'win32')
    return join(env.LOCALAPPDATA ?? join(home, 'AppData', 'Local'), 'Shellraise');
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Shellraise');
  return join(env.XDG_DATA_HOME || join(home, '.local', 'share'), 'shellraise');
}
