// The public face of the engine: what a name in it needs, it offers too.

import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { expect, test } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));
const layers = fileURLToPath(new URL('../../../scripts/layers.mjs', import.meta.url));
const index = fileURLToPath(new URL('../src/index.ts', import.meta.url));

/** Types of core that the signature of a declaration names, without what stands in bodies. */
function typesNamed(node: ts.Node, checker: ts.TypeChecker): ts.Symbol[] {
  if (ts.isBlock(node)) return [];
  if (ts.isVariableDeclaration(node) && node.type) return typesNamed(node.type, checker);
  const arrow = ts.isVariableDeclaration(node) ? node.initializer : node;
  if (arrow && ts.isArrowFunction(arrow))
    return [...arrow.parameters, ...(arrow.type ? [arrow.type] : [])].flatMap((part) =>
      typesNamed(part, checker),
    );
  if (ts.isVariableDeclaration(node)) return [];
  const own = ts.isTypeReferenceNode(node) ? [meant(node.typeName, checker)] : [];
  const inside: ts.Symbol[] = [];
  ts.forEachChild(node, (child) => {
    inside.push(...typesNamed(child, checker));
  });
  return [...own, ...inside].filter((symbol) => symbol !== null);
}

function meant(name: ts.Node, checker: ts.TypeChecker): ts.Symbol | null {
  const symbol = checker.getSymbolAtLocation(name);
  if (!symbol) return null;
  const real = symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol;
  const file = real.declarations?.[0]?.getSourceFile().fileName ?? '';
  const generic = real.flags & ts.SymbolFlags.TypeParameter;
  return file.includes('/core/src/') && !generic ? real : null;
}

function missing(file: string): string[] {
  const config = ts.readConfigFile(`${root}tsconfig.json`, ts.sys.readFile).config;
  const { options } = ts.parseJsonConfigFileContent(config, ts.sys, root);
  const program = ts.createProgram([file], { ...options, noEmit: true });
  const checker = program.getTypeChecker();
  const source = program.getSourceFile(file) as ts.SourceFile;
  const module = checker.getSymbolAtLocation(source) as ts.Symbol;
  const offered = checker
    .getExportsOfModule(module)
    .map((name) => (name.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(name) : name));
  expect(offered.length).toBeGreaterThan(100);
  const known = new Set(offered);
  return offered.flatMap((name) =>
    (name.declarations ?? [])
      .flatMap((declaration) => typesNamed(declaration, checker))
      .filter((type) => !known.has(type))
      .map((type) => `${name.name} needs ${type.name}`),
  );
}

test('every type of the engine that an offered name speaks of is offered', () => {
  expect(missing(index)).toEqual([]);
});

test('names are offered one by one, in the order of the folders', () => {
  const text = readFileSync(index, 'utf8');
  expect(text).not.toMatch(/export \*/);
  const folders = [...text.matchAll(/from '\.\/([^/]*)\/.*\.ts'/g)].map((m) => m[1] as string);
  const order = readFileSync(layers, 'utf8').match(/(?<=^ {2}'?)\w+(?='?[:,])/gm) as string[];
  const all = order.filter((folder) => existsSync(`${root}src/${folder}`));
  expect(folders).toEqual([...folders].sort((a, b) => all.indexOf(a) - all.indexOf(b)));
  expect(new Set(folders)).toEqual(new Set(all));
});
