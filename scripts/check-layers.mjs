// Holds the sources to the architecture: the folder order inside core, what each package may
// import (style sheets too), what of the app stands without a screen, and one index.ts per package
// that names its exports one by one. The checkout, or the folder given.

import { readFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { dirname, join, relative, resolve, sep } from 'node:path';
import ts from 'typescript';
import { importsOf, sourceFiles } from './imports.mjs';
import { layers } from './layers.mjs';
import { root as checkout } from './run.mjs';

const root = process.argv[2] ?? checkout;
const builtins = new Set(builtinModules.flatMap((name) => [name, `node:${name}`]));
/** Folders of the app that know nothing of the screen. */
const withoutScreen = new Set(['engine', 'files', 'state', 'store']);
const faults = ['core', 'sync', 'cli', 'server', 'app'].flatMap(checkPackage);
for (const fault of faults) console.error(fault);
process.exitCode = faults.length > 0 ? 1 : 0;

function checkPackage(name) {
  const src = join(root, 'packages', name, 'src');
  const { dependencies = {} } = JSON.parse(
    readFileSync(join(root, 'packages', name, 'package.json'), 'utf8'),
  );
  const allowed = new Set(Object.keys(dependencies));
  if (name !== 'core') allowed.add('@shellraise/core');
  if (name === 'app') allowed.add('@shellraise/sync');
  return sourceFiles(src).flatMap((file) => {
    const text = readFileSync(file, 'utf8');
    const where = relative(root, file);
    const faults = importsOf(file, text)
      .map((target) => importFault(name, src, file, target, allowed))
      .filter(Boolean);
    if (!file.endsWith('.css')) faults.push(...exportFaults(name, src, file, text));
    return faults.map((fault) => `${where}: ${fault}`);
  });
}

function importFault(name, src, file, target, allowed) {
  if (target.startsWith('.')) {
    const path = resolve(dirname(file), target);
    if (!path.startsWith(src + sep)) return `imports ${target}, outside its package`;
    if (name === 'app' && withoutScreen.has(layerOf(src, file)) && target.endsWith('.tsx'))
      return `imports ${target}; ${layerOf(src, file)} stands without a screen`;
    return name === 'core' ? layerFault(src, file, path) : null;
  }
  if (/^(https?:)?\/\//.test(target)) return `fetches ${target}; the app works without a network`;
  if (builtins.has(target)) {
    if (name === 'core' || name === 'sync' || name === 'app')
      return `imports ${target}; ${name} runs without Node`;
    return target.startsWith('node:') ? null : `imports ${target}; write node:${target}`;
  }
  if (name === 'app') {
    if (target === 'virtual:demo') return null;
    if (/^react(-|\/|$)/.test(target) && withoutScreen.has(layerOf(src, file)))
      return `imports ${target}; ${layerOf(src, file)} stands without a screen`;
  }
  const owner = allowed.has(target)
    ? target
    : target
        .split('/')
        .slice(0, target.startsWith('@') ? 2 : 1)
        .join('/');
  if (owner === '@shellraise/core' && target !== owner)
    return `imports ${target}; only @shellraise/core itself is public`;
  return allowed.has(owner) ? null : `imports ${target}, which its package.json does not list`;
}

function layerFault(src, file, target) {
  const from = layerOf(src, file);
  const to = layerOf(src, target);
  if (from === 'index.ts') return null;
  if (!layers.includes(from)) return `stands in ${from}, which is no layer of core`;
  if (!layers.includes(to)) return `imports from ${to}, which is no layer of core`;
  return layers.indexOf(to) > layers.indexOf(from)
    ? `${from} imports from ${to}, which stands below it`
    : null;
}

function layerOf(src, file) {
  return relative(src, file).split(sep)[0];
}

function exportFaults(name, src, file, text) {
  const faults = [];
  const path = relative(src, file);
  if (path !== 'index.ts' && path.endsWith('index.ts'))
    faults.push('is a second index.ts; a package has one');
  for (const statement of ts.createSourceFile(file, text, ts.ScriptTarget.ES2022).statements) {
    if (ts.isExportDeclaration(statement) && !statement.exportClause)
      faults.push('exports *; name the exports one by one');
    const isDefault =
      ts.isExportAssignment(statement) ||
      (ts.canHaveModifiers(statement) &&
        ts.getModifiers(statement)?.some((m) => m.kind === ts.SyntaxKind.DefaultKeyword));
    if (isDefault) faults.push('has a default export; exports are named');
  }
  if (name === 'core' && path !== 'index.ts' && !path.includes(sep))
    faults.push('stands beside the layers of core; give it a folder');
  return faults;
}
