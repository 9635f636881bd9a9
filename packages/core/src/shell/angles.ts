// Angles of a shell of flat panels: corners, seams and hubs. Radians.

import { acos, TAU } from '../math/angle.ts';
import { dot, normalize, subtract } from '../math/vector.ts';
import { dihedral } from '../sphere/dihedral.ts';
import { endHubAt, hubPoint } from './geometry.ts';
import type { SideId } from './ids.ts';
import { hubAt, hubCount, previousSide, type Shell, seamCount, sideCount } from './shell.ts';

/** Corner (named by its side) → flat angle of the panel there, radians. */
export function cornerAngles(shell: Shell): Float64Array {
  return Float64Array.from({ length: sideCount(shell) }, (_, s) => {
    const side = s as SideId;
    const hub = hubPoint(shell, hubAt(shell, side));
    const to = normalize(subtract(hubPoint(shell, endHubAt(shell, side)), hub));
    const before = hubAt(shell, previousSide(shell, side));
    return acos(dot(to, normalize(subtract(hubPoint(shell, before), hub))));
  });
}

/** Seam → angle between its two flat panels measured inside the shell, radians: under π where the
 * seam is a ridge seen from outside, π where the panels lie in one plane, over π in a valley. */
export function dihedralAngles(shell: Shell): Float64Array {
  return Float64Array.from({ length: seamCount(shell) }, (_, m) => {
    const side = shell.seams[2 * m] as SideId;
    const mate = shell.seams[2 * m + 1] as SideId;
    return dihedral(
      hubPoint(shell, hubAt(shell, side)),
      hubPoint(shell, hubAt(shell, mate)),
      hubPoint(shell, hubAt(shell, previousSide(shell, side))),
      hubPoint(shell, hubAt(shell, previousSide(shell, mate))),
    );
  });
}

/** Hub → angular defect, radians: 2π less its flat corner angles, or π less them where the star
 * is open. Over a sound shell they sum to 2π times its Euler characteristic (Descartes; with a
 * rim, Gauss–Bonnet). */
export function angularDefects(shell: Shell): Float64Array {
  const defects = new Float64Array(hubCount(shell)).fill(TAU);
  const corners = cornerAngles(shell);
  for (let s = 0; s < corners.length; s++) {
    const hub = shell.sideHub[s] as number;
    const open = (shell.mate[s] as number) < 0 ? Math.PI : 0;
    defects[hub] = (defects[hub] as number) - (corners[s] as number) - open;
  }
  return defects;
}
