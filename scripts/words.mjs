// `npm run words`: every text that a person reads, in one list, each with its file and line: what
// the sources of the packages say, and the pages. Folders or files given narrow it. `--check` lists
// only the texts that say a word which is not used here (not-used.mjs), with the word to say
// instead, and fails where there is one.

import { readFileSync, statSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import ts from 'typescript';
import { sourceFiles } from './imports.mjs';
import { notUsed } from './not-used.mjs';
import { root } from './run.mjs';

/** Whose sources are read, and which pages besides docs. */
const packages = ['app', 'core', 'sync', 'cli', 'server'];
const pages = ['README.md', ...packages.map((name) => join('packages', name, 'README.md'))];

/** Pages that scripts make, out of what others wrote too. */
const made = /\b(checks|licences)\.md$/;

/** Attributes that hold no words. */
const drawn = /^(className|d|transform|points|viewBox|style|href|id|media|selector)$/;

/** Some words, with values between or a number before; or one that begins as a label does. */
const prose = /(\p{L}{2}|\{\}).*\s(.*\p{L}{2}|\{\})|^\d.*\s\p{L}{2}|^\p{Lu}\p{Ll}{2}/u;

const args = process.argv.slice(2);
const asked = args.filter((arg) => arg !== '--check').map((path) => resolve(path));
const texts = (asked.length > 0 ? asked : everywhere()).flatMap(filesOf).flatMap(textsOf);
if (args.includes('--check')) check(texts);
else for (const { where, text } of texts) console.log(`${where}: ${text}`);

function everywhere() {
  const sources = packages.map((name) => join(root, 'packages', name, 'src'));
  const docs = ts.sys.readDirectory(join(root, 'docs'), ['.md']).filter((page) => !made.test(page));
  return [...sources, ...pages.map((page) => join(root, page)).filter(ts.sys.fileExists), ...docs];
}

function filesOf(path) {
  if (!statSync(path).isDirectory()) return [path];
  return sourceFiles(path).filter((file) => /\.tsx?$/.test(file));
}

/** The texts of a file: of a page its lines, of a source its strings. */
function textsOf(file) {
  const content = readFileSync(file, 'utf8');
  const name = relative(root, file);
  if (!/\.tsx?$/.test(file))
    return content.split('\n').map((text, at) => ({ where: `${name}:${at + 1}`, text }));
  const source = ts.createSourceFile(file, content, ts.ScriptTarget.ES2022, true);
  const isTable = file.includes(join('app', 'src', 'words'));
  const found = [];
  walk(source, (node) => {
    const text = textOf(node)
      ?.replace(/[\s\p{Cc}]+/gu, ' ')
      .trim();
    if (!text || !(isTable ? /\p{L}/u : prose).test(text)) return;
    const { line } = source.getLineAndCharacterOfPosition(node.getStart(source));
    found.push({ where: `${name}:${line + 1}`, text });
  });
  return found;
}

function walk(node, each) {
  if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node) || ts.isTypeNode(node)) return;
  if (ts.isJsxAttribute(node) && drawn.test(node.name.getText())) return;
  each(node);
  ts.forEachChild(node, (child) => walk(child, each));
}

/** What a node says; of a template also where its values stand, as `{}`. */
function textOf(node) {
  if (ts.isJsxText(node)) return node.text;
  if (ts.isTemplateExpression(node))
    return node.head.text + node.templateSpans.map(({ literal }) => `{}${literal.text}`).join('');
  return ts.isStringLiteralLike(node) && !isName(node.parent) ? node.text : undefined;
}

/** Whether strings under a node are names in the code: a case, a key, what a value is held to. */
function isName(node) {
  if (ts.isBinaryExpression(node)) return /^[!=]==?$/.test(node.operatorToken.getText());
  return ts.isCaseClause(node) || ts.isElementAccessExpression(node);
}

function check(all) {
  const faults = all.flatMap(({ where, text }) =>
    notUsed
      .filter((one) => (one.where ?? /./).test(where))
      .flatMap(({ word, say, within }) => {
        const said = word.exec(within ? text.replace(within, '') : text);
        return said ? [`${where}: "${said[0]}": say ${say}`] : [];
      }),
  );
  for (const fault of faults) console.error(fault);
  process.exitCode = faults.length > 0 ? 1 : 0;
}
