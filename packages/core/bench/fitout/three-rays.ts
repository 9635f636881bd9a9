// The same rays through the same panels with the ray caster of three.js, to compare with.

import {
  BufferAttribute,
  BufferGeometry,
  DoubleSide,
  Mesh,
  MeshBasicMaterial,
  Raycaster,
  Vector3,
} from 'three';
import { seededRandom } from '../../src/math/random.ts';
import { placeCount, type Shell } from '../../src/shell/shell.ts';

/** Seconds of processor for so many rays from near a point upwards: some are cast, the rest reckoned. */
export function threeRays(
  shell: Shell,
  from: readonly [number, number, number],
  rays: number,
): number {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(Float32Array.from(shell.hubs), 3));
  const triangles: number[] = [];
  for (let place = 0; place < placeCount(shell); place++) {
    const [start, end] = [shell.placeStart[place] as number, shell.placeStart[place + 1] as number];
    for (let side = start + 1; side + 1 < end; side++)
      triangles.push(...[start, side, side + 1].map((s) => shell.sideHub[s] as number));
  }
  geometry.setIndex(triangles);
  const mesh = new Mesh(geometry, new MeshBasicMaterial({ side: DoubleSide }));
  mesh.updateMatrixWorld();
  const caster = new Raycaster();
  const random = seededRandom(1);
  const [origin, to] = [new Vector3(), new Vector3()];
  let hits = 0;
  const before = process.cpuUsage().user;
  for (let i = 0; i < CAST; i++) {
    origin.set(...from).addScalar(0.2 * (random.uniform() - 0.5));
    to.set(random.normal(), random.normal(), Math.abs(random.normal())).normalize();
    caster.set(origin, to);
    if (caster.intersectObject(mesh).length > 0) hits++;
  }
  const seconds = (process.cpuUsage().user - before) / 1e6;
  if (hits < CAST / 2) throw new Error(`${hits} of ${CAST} rays met the shell`);
  return (seconds * rays) / CAST;
}

/** Rays that are cast. */
const CAST = 20_000;
