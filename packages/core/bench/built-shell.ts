// The shell that benchmarks build: a ball of 500 places, cut to 325 on its base ring.

import { netShell } from '../src/nets/kinds.ts';
import { naturalCuts } from '../src/shell/cuts.ts';
import type { HubId } from '../src/shell/ids.ts';
import { crownAtHub, orientShell } from '../src/shell/orient.ts';
import { partOf } from '../src/shell/part.ts';
import type { Shell } from '../src/shell/shell.ts';

/** The shell, of a ball of this radius, metres. */
export function builtShell(radius = 3.65): Shell {
  const net = netShell({ solid: 'icosahedron', b: 5, c: 0, division: 'equal chords' }, radius);
  const up = orientShell(net.shell, crownAtHub(net.shell, 0 as HubId));
  const cut = naturalCuts(up).find(({ places }) => places.length === 325);
  if (!cut) throw new Error('no cut leaves 325 places');
  return partOf(up, cut.places).shell;
}
