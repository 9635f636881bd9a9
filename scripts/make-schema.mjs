// Writes docs/project.schema.json anew, from the schema that the code validates with:
// node scripts/make-schema.mjs

import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { projectJsonSchema } from '@shellraise/core';
import { bin, root, run } from './run.mjs';

const file = join(root, 'docs', 'project.schema.json');
writeFileSync(file, `${JSON.stringify(projectJsonSchema(), null, 2)}\n`);
process.exitCode = run(process.execPath, [
  bin('@biomejs/biome', 'biome'),
  'format',
  '--write',
  file,
]);
