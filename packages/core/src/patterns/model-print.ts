// The whole shell as one solid for a printer, a person beside it, and both in true size for viewers, as
// files.

import { toGlb } from './glb.ts';
import { type Mesh, meshBox, meshFaults, meshVolume, movedMesh } from './mesh.ts';
import { meshPicture } from './mesh-picture.ts';
import {
  type ModelGround,
  type ModelMade,
  type ModelRefused,
  type ModelSettings,
  refused,
  sizeWords,
} from './model-ask.ts';
import { PERSON, personMesh } from './person-mesh.ts';
import { shellMesh } from './shell-mesh.ts';
import { toStl } from './stl.ts';
import { toThreeMf } from './three-mf.ts';

/** Between the shell and the person, parts of the shell's width. */
const APART = 0.1;

/** The files of the print. */
export function printModel(
  { shell, leftOut, title }: ModelGround,
  { scale, wall, bed }: Pick<ModelSettings, 'scale' | 'wall' | 'bed'>,
): ModelMade | ModelRefused {
  let solid: Mesh;
  try {
    solid = shellMesh(shell, { scale, wall, leftOut });
  } catch (error) {
    if (error instanceof RangeError)
      return refused('wall', `${wall} mm`, error.message.replace(/^.*mm, /, ''));
    throw error;
  }
  const { least, most } = meshBox(solid);
  const size = most.map((x, i) => x - (least[i] as number));
  const over = Math.max(...size.map((x, i) => x / (bed[i] as number)));
  if (!(over <= 1))
    return refused(
      'bed',
      sizeWords(bed),
      `but at 1 : ${scale} the shell is ${sizeWords(size)}; the nearest scale that fits is ${Math.ceil(scale * over * 10) / 10}`,
    );
  assertClosed(solid);
  const mesh = movedMesh(solid, [0, 0, -least[2]]);
  const person = personMesh((PERSON * 1000) / scale);
  const beside = movedMesh(person, [most[0] + APART * (size[0] as number), 0, 0]);
  const volume = meshVolume(mesh) / 1000;
  const both = [
    { name: 'shell', mesh },
    { name: 'person', mesh: beside },
  ];
  return {
    ok: true,
    files: [
      { name: 'shell.stl', text: toStl(mesh, title) },
      { name: 'shell.3mf', text: toThreeMf([{ name: 'shell', mesh }], title) },
      { name: 'person.stl', text: toStl(person, 'a person to scale') },
      { name: 'shell.glb', text: toGlb(both, scale / 1000, title) },
      { name: 'shell.svg', text: meshPicture(both.map((one) => one.mesh)) },
    ],
    words: `Solid at 1 : ${scale}: ${sizeWords(size)}, wall ${wall} mm or a little more, ${volume.toFixed(1)} cm³, closed and manifold. The person is ${PERSON} m tall. Files for viewers are in true size.`,
    told: { size, wall, volume: volume * 1000, triangles: mesh.triangles.length / 3 },
  };
}

/** Throws for a mesh that no printer should be given. */
export function assertClosed(mesh: Mesh): void {
  const faults = meshFaults(mesh);
  if (faults.edges + faults.points + faults.flat > 0)
    throw new Error(`the solid is not closed: ${JSON.stringify(faults)}`);
}
