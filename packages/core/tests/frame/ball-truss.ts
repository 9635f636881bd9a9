// Trusses on the seams of a ball, for tests: radius 1, E A = 1.

import type { Bar, Element } from '../../src/frame/elements/element.ts';
import type { Structure } from '../../src/frame/structure.ts';
import type { Shell } from '../../src/shell/shell.ts';

/** A bar on every side of the places, the given hubs pinned; hubs that no bar reaches are held. */
export function ballTruss(
  shell: Shell,
  places: readonly number[],
  pinned: readonly number[],
): Structure {
  const seen = new Set<string>();
  const bars: Bar[] = [];
  for (const p of places)
    for (let s = shell.placeStart[p]; s < shell.placeStart[p + 1]; s++) {
      const next = s + 1 === shell.placeStart[p + 1] ? shell.placeStart[p] : s + 1;
      const [a, b] = [shell.sideHub[s], shell.sideHub[next]].sort((x, y) => x - y);
      if (seen.has(`${a} ${b}`)) continue;
      seen.add(`${a} ${b}`);
      bars.push({ kind: 'bar', nodes: [a, b], area: 1, young: 1 });
    }
  return {
    nodes: shell.hubs,
    elements: bars,
    held: pinned.map((node) => ({ node, directions: null })),
  };
}

/** The same, hanging in springs so soft that they carry nothing to speak of. */
export function hanging(structure: Structure, stiffness: number): Structure {
  const springs: Element[] = Array.from({ length: structure.nodes.length / 3 }, (_, node) => ({
    kind: 'spring',
    nodes: [node],
    stiffness: [stiffness, stiffness, stiffness, 0, 0, 0],
  }));
  return { ...structure, elements: [...structure.elements, ...springs] };
}
