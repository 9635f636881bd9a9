// Every export of core has a doc comment, and every exported function under loads/ names its
// source: a line of its doc begins with "Source:". The checkout, or the folder given.

import { join, relative, sep } from 'node:path';
import ts from 'typescript';
import { root as checkout } from './run.mjs';

const root = process.argv[2] ?? checkout;
const src = join(root, 'packages', 'core', 'src');
const faults = checkAll();
for (const fault of faults) console.error(fault);
process.exitCode = faults.length > 0 ? 1 : 0;

function checkAll() {
  const files = ts.sys.readDirectory(src, ['.ts']);
  return files.flatMap((file) => {
    const text = ts.sys.readFile(file) ?? '';
    const source = ts.createSourceFile(file, text, ts.ScriptTarget.ES2022, true);
    return source.statements.filter(isExported).flatMap((statement) => faultsOf(source, statement));
  });
}

function isExported(statement) {
  return (
    ts.canHaveModifiers(statement) &&
    (ts.getModifiers(statement) ?? []).some((m) => m.kind === ts.SyntaxKind.ExportKeyword)
  );
}

function faultsOf(source, statement) {
  const where = `${relative(root, source.fileName)}:${lineOf(source, statement)}`;
  const name = nameOf(statement);
  const doc = docOf(source, statement);
  if (!doc) return [`${where}: ${name} has no doc comment`];
  const inLoads = relative(src, source.fileName).startsWith(`loads${sep}`);
  if (inLoads && isFunction(statement) && !/^[\s*/]*Source:\s*\S/m.test(doc))
    return [`${where}: ${name} does not name its source ("Source: …")`];
  return [];
}

/** The doc comment of a statement; overloads share the one above the first of them. */
function docOf(source, statement) {
  const own = ts.getJSDocCommentsAndTags(statement).filter(ts.isJSDoc).at(-1);
  if (own?.comment) return own.getText(source);
  if (!ts.isFunctionDeclaration(statement)) return '';
  const first = source.statements.find(
    (other) => ts.isFunctionDeclaration(other) && other.name?.text === statement.name?.text,
  );
  return first && first !== statement ? docOf(source, first) : '';
}

function isFunction(statement) {
  return (
    ts.isFunctionDeclaration(statement) ||
    (ts.isVariableStatement(statement) &&
      statement.declarationList.declarations.some(
        ({ initializer }) =>
          initializer && (ts.isArrowFunction(initializer) || ts.isFunctionExpression(initializer)),
      ))
  );
}

function lineOf(source, node) {
  return source.getLineAndCharacterOfPosition(node.getStart(source)).line + 1;
}

function nameOf(statement) {
  return ts.isVariableStatement(statement)
    ? statement.declarationList.declarations.map(({ name }) => name.getText()).join(', ')
    : (statement.name?.text ?? 'an export');
}
