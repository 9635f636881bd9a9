// How long the patterns of a ball of 720 places take: `npm run bench -- patterns`.

import type { Line } from '../../../scripts/bench-line.d.ts';
import { netShell } from '../src/nets/kinds.ts';
import { paperNet } from '../src/patterns/paper-net.ts';
import { shellMesh } from '../src/patterns/shell-mesh.ts';
import { toThreeMf } from '../src/patterns/three-mf.ts';
import { cpuMs } from './clock.ts';

/** Wanted, seconds: the net of 720 places. */
const WANTED = 5;

/** Prints the times. */
export function main(): readonly Line[] {
  const { shell } = netShell({ solid: 'icosahedron', b: 6, c: 0, division: 'equal chords' }, 2.7);
  const before = process.cpuUsage().user;
  const start = performance.now();
  const net = paperNet(shell, { scale: 15, room: [176, 230], tab: 5 });
  const seconds = (performance.now() - start) / 1000;
  const work = (process.cpuUsage().user - before) / 1e6;
  if (!net.ok) throw new Error('the ball has no net');
  console.log(
    `net of 720 places at 1 : 15 on A4: ${seconds.toFixed(2)} s, at work ${work.toFixed(2)} s (wanted ${WANTED}); ${net.pieces.length} pieces, no fewer than ${net.leastPieces} possible, ${net.taped.length} seams taped`,
  );
  const then = cpuMs();
  const mesh = shellMesh(shell, { scale: 30, wall: 1.6 });
  const bytes = toThreeMf([{ name: 'shell', mesh }], 'ball').length;
  const solid = cpuMs() - then;
  console.log(`solid and 3MF: ${solid.toFixed(0)} ms, ${bytes} bytes`);
  return [
    { what: 'paper net of 720 places', found: work, unit: 's', wanted: WANTED },
    { what: 'solid of 720 places and its 3MF', found: solid, unit: 'ms' },
  ];
}
