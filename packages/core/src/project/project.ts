// Reading and writing the project file. Reading never guesses: every fault is listed with its
// place, and a newer version is refused, so that nobody overwrites what they could not read.

import { type Fault, type Read, refuse } from '../measure/fault.ts';
import { describeValue, schemaFaults } from '../measure/schemaFaults.ts';
import { pileFaults } from '../pile/check.ts';
import { isProjectCode, textOfCode } from './from-code.ts';
import { jsonFaults } from './json.ts';
import { migrate } from './migrate.ts';
import { PROJECT_VERSION, type Project, projectSchema } from './schema.ts';

/** Longest text that is read, characters; refused by length before anything is parsed. */
export const MAX_PROJECT_CHARACTERS = 20 * 1024 * 1024;

/** The project from the text of its file, or every fault at once. A byte order mark is skipped. */
export function readProject(text: string): Read<Project> {
  if (text.length > MAX_PROJECT_CHARACTERS)
    return refuse('file', `${text.length} characters`, `at most ${MAX_PROJECT_CHARACTERS}`);
  const read = plainText(text.replace(/^\ufeff/, ''));
  if (!read.ok) return read;
  const plain = read.value;
  const faults = jsonFaults(plain);
  if (faults.length > 0) return { ok: false, faults: faults.map(underFile) };
  return projectFrom(JSON.parse(plain));
}

/** Unpacked where it is the text of a code. */
const plainText = (text: string): Read<string> =>
  isProjectCode(text) ? textOfCode(text) : { ok: true, value: text };

/** Whether a file is meant as a project, not as a spreadsheet: a project begins with a brace or is the
 * text of a code, a spreadsheet begins with another word; an empty file goes by its name. */
export function looksLikeProject(name: string, text: string): boolean {
  if (isProjectCode(text)) return true;
  const start = text.trimStart().charAt(0);
  if (start === '{' || start === '[') return true;
  return start === '' ? !/\.(csv|tsv|txt)$/i.test(name) : /\.json$/i.test(name);
}

/** The project from parsed JSON, or every fault at once. */
export function projectFrom(raw: unknown): Read<Project> {
  if (!isRecord(raw)) return refuse('file', describeValue(raw), 'a project file: an object { … }');
  const version = versionFault(raw.shellraise);
  if (version) return { ok: false, faults: [version] };
  const current = migrate(raw, raw.shellraise as number, PROJECT_VERSION);
  const parsed = projectSchema.safeParse(current);
  const shape = parsed.success ? [] : schemaFaults(parsed.error, current, projectSchema);
  const faults = [...shape, ...pileFaults(current.pile)];
  return parsed.success && faults.length === 0
    ? { ok: true, value: parsed.data }
    : { ok: false, faults };
}

/** The text of a project's file: keys in the order of the schema, two spaces, short rows on one
 * line, a newline at the end. Same project, same text. Throws on a project that does not fit the
 * schema, which nothing of ours should make. */
export function writeProject(project: Project): string {
  return `${layOut(projectSchema.parse(project), '')}\n`;
}

const underFile = (fault: Fault): Fault => ({ ...fault, path: `file ${fault.path}` });

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function versionFault(version: unknown): Fault | null {
  const path = 'shellraise';
  if (version === undefined)
    return {
      path,
      found: 'nothing',
      expected: `the version of the project file, ${PROJECT_VERSION}`,
    };
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    return {
      path,
      found: describeValue(version),
      expected: `the version of the project file, ${PROJECT_VERSION}`,
    };
  if (version > PROJECT_VERSION)
    return {
      path,
      found: `version ${version}`,
      expected: `version ${PROJECT_VERSION} or older; a newer Shellraise wrote this file, and it was left untouched`,
    };
  return null;
}

const LINE = 160;

/** JSON with short lists and objects on one line. */
function layOut(value: unknown, indent: string): string {
  const flat = oneLine(value);
  if (flat.length + indent.length <= LINE || typeof value !== 'object' || value === null)
    return flat;
  const deeper = `${indent}  `;
  const items = Array.isArray(value)
    ? value.map((item: unknown) => `${deeper}${layOut(item, deeper)}`)
    : entries(value).map(
        ([key, item]) => `${deeper}${JSON.stringify(key)}: ${layOut(item, deeper)}`,
      );
  const [open, close] = Array.isArray(value) ? '[]' : '{}';
  return `${open}\n${items.join(',\n')}\n${indent}${close}`;
}

function oneLine(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(oneLine).join(', ')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const inside = entries(value).map(([key, item]) => `${JSON.stringify(key)}: ${oneLine(item)}`);
  return inside.length === 0 ? '{}' : `{ ${inside.join(', ')} }`;
}

const entries = (value: object): [string, unknown][] =>
  Object.entries(value).filter(([, item]) => item !== undefined);
