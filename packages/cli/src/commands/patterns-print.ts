// `shellraise patterns --as print`: the whole shell as a solid for a printer (STL, 3MF), a person beside it,
// and both in true size for viewers (GLB).

import {
  type Mesh,
  meshBox,
  meshFaults,
  meshVolume,
  movedMesh,
  PERSON,
  personMesh,
  readLength,
  shellMesh,
  toGlb,
  toStl,
  toThreeMf,
} from '@shellraise/core';
import { badInput } from '../ending.ts';
import type { Made, PatternJob } from './patterns.ts';

/** Between the shell and the person, parts of the shell's width. */
const APART = 0.1;

/** The files of the print. */
export function printOf({ chosen, options, leftOut }: PatternJob): Made {
  const { shell } = chosen.standing;
  const { scale } = options;
  const wall = lengthOf('--wall', options.wall) * 1000;
  const bed = sizesOf('--bed', options.bed, 3).map((metres) => metres * 1000);
  const solid = solidOf(() => shellMesh(shell, { scale, wall, leftOut }), wall);
  const { least, most } = meshBox(solid);
  const size = most.map((x, i) => x - (least[i] as number));
  const over = Math.max(...size.map((x, i) => x / (bed[i] as number)));
  const told = size.map((x) => x.toFixed(0)).join(' x ');
  if (over > 1)
    throw badInput(
      `--bed: found ${options.bed}, but at 1 : ${scale} the shell is ${told} mm; the nearest scale that fits is ${Math.ceil(scale * over * 10) / 10}`,
    );
  const faults = meshFaults(solid);
  if (faults.edges + faults.points + faults.flat > 0)
    throw new Error(`the solid is not closed: ${JSON.stringify(faults)}`);
  const mesh = movedMesh(solid, [0, 0, -least[2]]);
  const person = personMesh((PERSON * 1000) / scale);
  const beside = movedMesh(person, [most[0] + APART * (size[0] as number), 0, 0]);
  const title = chosen.loaded.title;
  const volume = meshVolume(mesh) / 1000;
  return {
    files: [
      { name: 'shell.stl', text: toStl(mesh, title) },
      { name: 'shell.3mf', text: toThreeMf([{ name: 'shell', mesh }], title) },
      { name: 'person.stl', text: toStl(person, 'a person to scale') },
      {
        name: 'shell.glb',
        text: toGlb(
          [
            { name: 'shell', mesh },
            { name: 'person', mesh: beside },
          ],
          scale / 1000,
          title,
        ),
      },
    ],
    words: `Solid at 1 : ${scale}: ${told} mm, wall ${wall} mm or a little more, ${volume.toFixed(1)} cm³, closed and manifold. The person is ${PERSON} m tall. Files for viewers are in true size.`,
    told: { size, wall, volume: volume * 1000, triangles: mesh.triangles.length / 3 },
  };
}

function solidOf(make: () => Mesh, wall: number): Mesh {
  try {
    return make();
  } catch (error) {
    if (error instanceof RangeError)
      throw badInput(`--wall: found ${wall} mm, ${error.message.replace(/^.*mm, /, '')}`);
    throw error;
  }
}

/** A length above 0, metres. */
export function lengthOf(option: string, text: string): number {
  const read = readLength(text.trim());
  if (!read.ok || read.value <= 0)
    throw badInput(`${option}: found ${text}, expected a length with its unit, such as "3 mm"`);
  return read.value;
}

/** So many lengths above 0, metres; a unit at the end stands for all. */
export function sizesOf(option: string, text: string, count: number): number[] {
  const parts = text.split(/[x×]/i).map((part) => part.trim());
  const unit = /[a-z"'″′]+$/i.exec(parts.at(-1) ?? '')?.[0] ?? '';
  const sizes = parts.map((part) => readLength(/\d$/.test(part) ? `${part} ${unit}` : part));
  const values = sizes.map((read) => (read.ok ? read.value : 0));
  if (values.length !== count || values.some((value) => !(value > 0)))
    throw badInput(
      `${option}: found ${text}, expected ${count} lengths such as "${['600', '400', '250'].slice(0, count).join(' x ')} mm"`,
    );
  return values;
}
