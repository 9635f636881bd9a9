// The outside tests as they stand in the sources: file, source (its comment on top) and the titles of
// its tests, those that its ./data/ helpers declare included.

import { existsSync, readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import ts from 'typescript';

/** `{ file, source, titles }` of each outside test file, by name; paths from the checkout. */
export function outsideFiles(root) {
  return readdirSync(join(root, 'packages')).flatMap((name) => {
    const folder = `packages/${name}/tests/outside`;
    if (!existsSync(join(root, folder))) return [];
    const files = readdirSync(join(root, folder)).filter((file) => file.endsWith('.test.ts'));
    return files.sort().map((file) => outsideFile(root, `${folder}/${file}`));
  });
}

function outsideFile(root, file) {
  const path = join(root, file);
  const text = ts.sys.readFile(path);
  return { file, source: sourceOf(text), titles: [...new Set(titlesIn(path))] };
}

/** The comment lines that the file opens with, as one line. */
function sourceOf(text) {
  const lines = text.split('\n');
  const end = lines.findIndex((line) => !line.startsWith('//'));
  return lines
    .slice(0, end)
    .map((line) => line.slice(2).trim())
    .join(' ');
}

/** Titles of the tests, each as a regular expression: what is filled in matches anything. */
function titlesIn(path) {
  const source = ts.createSourceFile(path, ts.sys.readFile(path), ts.ScriptTarget.ES2022, true);
  const titles = [];
  const visit = (node) => {
    if (ts.isCallExpression(node) && isTest(node.expression))
      titles.push(pattern(node.arguments[0]));
    if (ts.isImportDeclaration(node) && node.moduleSpecifier.text.startsWith('./data/'))
      titles.push(...titlesIn(join(dirname(path), node.moduleSpecifier.text)));
    ts.forEachChild(node, visit);
  };
  visit(source);
  return titles;
}

/** `test(…)`, `it(…)`, or either after `.each(…)` or the like. */
function isTest(callee) {
  if (ts.isIdentifier(callee)) return callee.text === 'test' || callee.text === 'it';
  if (ts.isPropertyAccessExpression(callee))
    return callee.name.text !== 'each' && isTest(callee.expression);
  return (
    ts.isCallExpression(callee) &&
    ts.isPropertyAccessExpression(callee.expression) &&
    callee.expression.name.text === 'each' &&
    isTest(callee.expression.expression)
  );
}

function pattern(title) {
  if (title && ts.isStringLiteralLike(title)) return filled(title.text);
  if (title && ts.isTemplateExpression(title))
    return [title.head, ...title.templateSpans.map(({ literal }) => literal)]
      .map(({ text }) => filled(text))
      .join('.*');
  return '.*';
}

const filled = (text) =>
  text
    .split(/%%|%[sdifjo#c]|\$[A-Za-z_][\w.]*/)
    .map((part) => part.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&'))
    .join('.*');
