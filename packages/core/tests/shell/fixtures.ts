// Shells to try things on: named nets as whole balls, the cube and the dodecahedron, domes cut
// from them, kinds in the pile's form, and labels for symmetries.

import { normalize, type Vec3 } from '../../src/math/vector.ts';
import type { Division } from '../../src/nets/division.ts';
import { type NetKind, type NetShell, netShell, shellOfNet } from '../../src/nets/kinds.ts';
import type { Kind } from '../../src/pile/kind.ts';
import { type Cut, type CutOptions, naturalCuts } from '../../src/shell/cuts.ts';
import type { HubId } from '../../src/shell/ids.ts';
import { crownAtHub, orientShell } from '../../src/shell/orient.ts';
import { partOf } from '../../src/shell/part.ts';
import { kindSide, type Shell, sideCount } from '../../src/shell/shell.ts';

export const icosahedral = (b: number, c: number, division: Division = 'equal chords'): NetShell =>
  netShell({ solid: 'icosahedron', b, c, division }, 1);

export const octahedral = (b: number, c: number): NetShell =>
  netShell({ solid: 'octahedron', b, c, division: 'equal chords' }, 1);

/** Six squares, anticlockwise seen from outside. */
export function cube(): NetShell {
  const hubs = [...Array(8).keys()].map((i) =>
    normalize([i & 1 ? 1 : -1, i & 2 ? 1 : -1, i & 4 ? 1 : -1] as Vec3),
  );
  const places = [
    [0, 2, 3, 1],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 4, 6, 2],
    [1, 3, 7, 5],
  ];
  return shellOfNet({ hubs: Float64Array.from(hubs.flat()), places }, 1);
}

/** The dual of a closed shell of triangles, its hubs pushed out to the sphere: the icosahedron
 * gives the dodecahedron. */
export function dualOf({ shell }: NetShell): NetShell {
  const centres: number[] = [];
  for (let p = 0; p + 1 < shell.placeStart.length; p++) {
    const sum = [0, 0, 0];
    for (let s = 3 * p; s < 3 * p + 3; s++)
      for (let i = 0; i < 3; i++)
        sum[i] = (sum[i] as number) + (shell.hubs[3 * (shell.sideHub[s] as number) + i] as number);
    centres.push(...normalize(sum as unknown as Vec3));
  }
  const places: number[][] = [];
  for (let hub = 0; hub < shell.hubs.length / 3; hub++) {
    const first = shell.sideHub.indexOf(hub);
    const around: number[] = [];
    let side = first;
    do {
      around.push(Math.floor(side / 3));
      side = shell.mate[3 * Math.floor(side / 3) + ((side + 2) % 3)] as number;
    } while (side !== first);
    places.push(around);
  }
  return shellOfNet({ hubs: Float64Array.from(centres), places }, 1);
}

/** A closed shell turned so that hub 0 is the crown. */
export const crownUp = (shell: Shell): Shell => orientShell(shell, crownAtHub(shell, 0 as HubId));

/** The dome of a natural cut of a shell that stands crown up. */
export const domeOf = (shell: Shell, cut: Cut): Shell => partOf(shell, cut.places).shell;

/** The natural cut whose mean base height is nearest to z. */
export function cutNear(shell: Shell, z: number, options: CutOptions = {}): Cut {
  const cuts = naturalCuts(shell, options);
  return cuts.reduce((best, cut) =>
    Math.abs(cut.baseZ.mean - z) < Math.abs(best.baseZ.mean - z) ? cut : best,
  );
}

/** Side → label by class of length: what symmetries must keep. */
export function lengthLabels({ shell, kinds }: NetShell): Int32Array {
  return Int32Array.from({ length: sideCount(shell) }, (_, s) => {
    const kind = kinds[shell.kind[shell.sidePlace[s] as number] as number] as NetKind;
    return kind.sideClasses[kindSide(shell, s as never)] as number;
  });
}

/** Kinds in the pile's form: as many good panels of each as the whole ball has places. */
export function pileKinds({ kinds }: NetShell): Kind[] {
  const ids: string[] = [];
  let number = 0;
  kinds.forEach((kind, k) => {
    if (ids[k]) return;
    number += 1;
    const handed = kind.mirror !== null && kind.mirror !== k;
    ids[k] = handed ? `${number}L` : `${number}`;
    if (handed) ids[kind.mirror as number] = `${number}R`;
  });
  return kinds.map((kind, k) => ({
    id: ids[k] as string,
    marks: [],
    sides: kind.sides,
    sideSds: kind.sides.map(() => 0),
    hand: ids[k]?.endsWith('L') ? 'L' : ids[k]?.endsWith('R') ? 'R' : null,
    good: kind.count,
    repair: 0,
    scrap: 0,
    counted: true,
    mass: null,
  }));
}
