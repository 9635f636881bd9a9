// Shells that the tests of the patterns cut up.

import type { Division } from '../../src/nets/division.ts';
import { netShell } from '../../src/nets/kinds.ts';
import { coursesOf } from '../../src/shell/courses.ts';
import { naturalCuts } from '../../src/shell/cuts.ts';
import type { HubId } from '../../src/shell/ids.ts';
import { crownAtHub, orientShell } from '../../src/shell/orient.ts';
import { partOf } from '../../src/shell/part.ts';
import { placeCount, type Shell } from '../../src/shell/shell.ts';

/** A whole ball of the icosahedron, class I, of 20 n² places. */
export function ball(n: number, radius = 2.7): Shell {
  const spec = { solid: 'icosahedron', b: n, c: 0, division: 'equal chords' as Division } as const;
  const { shell } = netShell(spec, radius);
  return orientShell(shell, crownAtHub(shell, 0 as HubId));
}

/** The ball cut near its equator: its largest natural cut of at most five eighths of its places. */
export function dome(n: number, radius = 2.7): Shell {
  const whole = ball(n, radius);
  const cuts = naturalCuts(whole).filter(
    ({ places }) => places.length <= (placeCount(whole) * 5) / 8,
  );
  const best = cuts.reduce((a, b) => (b.places.length > a.places.length ? b : a));
  return partOf(whole, best.places).shell;
}

/** The numbers of its places. */
export const numbersOf = (shell: Shell): readonly string[] => coursesOf(shell).numbers;
