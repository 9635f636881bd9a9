// Draws docs/architecture.svg from the imports that the sources really have: core's folders in their
// order with a dot for each that imports another, and the packages around core. With `--check` nothing is
// written; the exit code is 1 where the drawing there is another.

import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import { line, polygon, rectangle, text } from '../packages/core/dist/papers/drawing.js';
import { toSvg } from '../packages/core/dist/papers/svg.js';
import { importsOf, sourceFiles } from './imports.mjs';
import { folders, layers } from './layers.mjs';
import { root } from './run.mjs';

const target = join(root, 'docs', 'architecture.svg');
const packages = {
  core: 'the engine: plain TypeScript, no DOM, no Node, no clock',
  sync: 'project and record as documents that devices share',
  server: 'serves the app; keeps what phones share',
  cli: 'shellraise: one command for each phase',
  app: 'the browser app: one sheet for each phase',
};

/** Folder of core → the folders it imports from. */
function folderImports() {
  const src = join(root, 'packages/core/src');
  const found = new Map(layers.map((name) => [name, new Set()]));
  for (const file of sourceFiles(src)) {
    const from = relative(src, file).split(sep)[0];
    for (const path of importsOf(file, readFileSync(file, 'utf8'))) {
      const to = relative(src, resolve(file, '..', path)).split(sep)[0];
      if (from !== to && layers.includes(to)) found.get(from)?.add(to);
    }
  }
  return found;
}

/** Package → the packages it imports from. */
const packageImports = () =>
  new Map(
    Object.keys(packages).map((name) => {
      const all = sourceFiles(join(root, 'packages', name, 'src')).flatMap((file) =>
        importsOf(file, readFileSync(file, 'utf8')),
      );
      const named = Object.keys(packages).filter((one) => all.includes(`@shellraise/${one}`));
      return [name, new Set(named)];
    }),
  );

function drawing() {
  const imports = folderImports();
  const step = 7;
  const [left, top] = [16, 34];
  const grid = 154;
  const items = [
    text([left, 14], 'Shellraise: what imports what', 6, { bold: true }),
    text(
      [left, 22],
      'A folder of core imports only from those above it: every dot lies left of the stair.',
      3.4,
      { ink: 'grey' },
    ),
  ];
  layers.forEach((name, row) => {
    const y = top + row * step + step / 2;
    items.push(
      line([left, y + step / 2], [grid + (row + 1) * step, y + step / 2], {
        weight: 'hair',
        ink: 'grey',
      }),
      text([left, y], `${row + 1}`, 3, { ink: 'grey' }),
      text([left + 7, y], name, 3.8, { bold: true }),
      text([left + 31, y], folders[name], 3.1),
      text([grid + row * step + step / 2, y], `${row + 1}`, 3, { anchor: 'middle', ink: 'grey' }),
    );
    layers.forEach((other, column) => {
      const x = grid + column * step + step / 2;
      if (imports.get(name).has(other)) items.push(dot([x, y], 1.5));
    });
  });
  layers.forEach((_, column) => {
    const x = grid + column * step;
    const y = top + column * step;
    items.push(
      line([x, y], [x, top + layers.length * step], { weight: 'hair', ink: 'grey' }),
      line([x, y], [x + step, y], { weight: 'light' }),
      line([x + step, y], [x + step, y + step], { weight: 'light' }),
    );
  });
  const foot = top + layers.length * step;
  items.push(...around(left, foot + 12, grid + layers.length * step));
  return {
    width: grid + layers.length * step + left,
    height: foot + 78,
    title: 'Shellraise: what imports what',
    description: `Folders of core in their order, each importing only from those before it: ${layers.join(', ')}. Around core: sync, server, cli, app.`,
    items,
  };
}

/** The packages, each with those it imports from. */
function around(x, y, right) {
  const imports = packageImports();
  const step = 11;
  return [
    text([x, y], 'Packages', 4.4, { bold: true }),
    ...Object.keys(packages).flatMap((name, row) => {
      const at = y + 10 + row * step;
      const from = [...imports.get(name)];
      return [
        rectangle(
          { x, y: at - 4, width: 24, height: 8 },
          { weight: name === 'core' ? 'bold' : 'light' },
        ),
        text([x + 12, at], name, 3.8, { bold: true, anchor: 'middle' }),
        text([x + 30, at], packages[name], 3.3),
        ...(from.length === 0
          ? []
          : [
              ...arrow([right - 118, at], [right - 124, at]),
              text([right - 114, at], `imports from the index of ${from.join(', ')}`, 3.3),
            ]),
      ];
    }),
  ];
}

const arrow = ([x, y], [tip]) => [
  line([x, y], [tip + 2, y], { weight: 'light' }),
  polygon(
    [
      [tip, y],
      [tip + 2.6, y - 1.1],
      [tip + 2.6, y + 1.1],
    ],
    null,
    { tint: '#15171c', hatch: null },
  ),
];

const dot = (centre, radius) => ({
  type: 'circle',
  centre,
  radius,
  stroke: null,
  fill: { tint: '#15171c', hatch: null },
});

const drawn = toSvg(drawing());
if (!process.argv.includes('--check')) writeFileSync(target, drawn);
else if (!existsSync(target) || readFileSync(target, 'utf8') !== drawn) {
  console.error(
    'docs/architecture.svg is not what the imports say: node scripts/make-architecture.mjs',
  );
  process.exitCode = 1;
}
