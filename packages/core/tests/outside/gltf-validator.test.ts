// Khronos Group, glTF Validator 2.0.0-dev.3.10 (npm gltf-validator): the standard's own checker.

// @ts-expect-error it has no types
import validator from 'gltf-validator';
import { expect, it } from 'vitest';
import { toGlb } from '../../src/patterns/glb.ts';
import { personMesh } from '../../src/patterns/person-mesh.ts';
import { shellMesh } from '../../src/patterns/shell-mesh.ts';
import { ball } from '../patterns/fixtures.ts';

const bytes = toGlb(
  [
    { name: 'shell', mesh: shellMesh(ball(2), { scale: 20, wall: 2 }) },
    { name: 'person', mesh: personMesh(87.5) },
  ],
  0.02,
  'A ball',
);

it('finds nothing wrong with a shell and a person', async () => {
  const { issues, info } = await validator.validateBytes(bytes);
  expect(issues.messages).toEqual([]);
  expect(info.totalTriangleCount).toBe(2 * 80 + 24 * 22);
});

it('finds a length that is wrong', async () => {
  const bad = Uint8Array.from(bytes);
  bad[8] = ((bad[8] as number) + 4) % 256;
  const { issues } = await validator.validateBytes(bad);
  expect(issues.numErrors).toBeGreaterThan(0);
});
