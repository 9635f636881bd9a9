// Shells with kinds, stock and place numbers for the papers: a named net, whole or the part of it
// above a height. Stock is invented: one over, short of one, none counted, in turn.

import { netShell } from '../../src/nets/kinds.ts';
import type { NetSpec } from '../../src/nets/named.ts';
import type { Hand, Kind } from '../../src/pile/kind.ts';
import { coursesOf } from '../../src/shell/courses.ts';
import { placeCentre } from '../../src/shell/geometry.ts';
import type { PlaceId } from '../../src/shell/ids.ts';
import { partOf } from '../../src/shell/part.ts';
import { placeCount, type Shell } from '../../src/shell/shell.ts';

export interface Standing {
  readonly shell: Shell;
  readonly kinds: readonly Kind[];
  readonly numbers: readonly string[];
}

/** The net's places whose centre stands above `height` radii over the sphere's centre. */
export function standing(spec: NetSpec, height = -2, radius = 3.6): Standing {
  const net = netShell(spec, radius);
  const kept = Array.from({ length: placeCount(net.shell) }, (_, p) => p).filter(
    (p) => placeCentre(net.shell, p as PlaceId)[2] > height * radius,
  );
  const shell = partOf(net.shell, kept).shell;
  let number = 0;
  const ids: string[] = [];
  net.kinds.forEach(({ mirror }, k) => {
    if (mirror !== null && mirror < k) {
      ids.push((ids[mirror] as string).replace('L', 'R'));
      return;
    }
    number += 1;
    ids.push(mirror === k ? String(number) : `${number}L`);
  });
  const kinds = net.kinds.map((kind, k): Kind => {
    const places = shell.kind.filter((at) => at === k).length;
    const hand = /[LR]$/.test(ids[k] as string) ? ((ids[k] as string).slice(-1) as Hand) : null;
    return {
      id: ids[k] as string,
      marks: k === 0 ? ['R', 'red dot'] : [],
      sides: kind.sides,
      sideSds: kind.sides.map(() => 0.001),
      hand,
      good: k % 3 === 2 ? 0 : places + (k % 3 === 0 ? 1 : -1),
      repair: k % 2,
      scrap: 0,
      counted: k % 3 !== 2,
      mass: 9.6,
    };
  });
  return { shell, kinds, numbers: coursesOf(shell).numbers };
}
