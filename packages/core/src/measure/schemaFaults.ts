// What a zod schema found wrong, as faults: path as people read it, the value found, what is
// allowed there.

import type { z } from 'zod';
import type { Fault } from './fault.ts';

type Path = readonly PropertyKey[];

/** Every fault of `input` that the schema reported in `error`, with paths that start at `base`. */
export function schemaFaults(
  error: z.ZodError,
  input: unknown,
  schema: z.ZodType,
  base = '',
): Fault[] {
  return error.issues.flatMap((issue) => {
    if (issue.code === 'unrecognized_keys') {
      const known = keysAt(schema, issue.path);
      return issue.keys.map((key) => ({
        path: pathText(base, [...issue.path, key]),
        found: 'an unknown key',
        expected: known.length > 0 ? `one of ${known.join(', ')}` : 'no such key',
      }));
    }
    return {
      path: pathText(base, issue.path),
      found: describeValue(valueAt(input, issue.path)),
      expected: expectation(issue),
    };
  });
}

/** `kinds[2].sides[0]`, after `base` and a point where there is one. */
function pathText(base: string, path: Path): string {
  return path.reduce<string>((text, step) => {
    if (typeof step === 'number') return `${text}[${step}]`;
    return text === '' ? String(step) : `${text}.${String(step)}`;
  }, base);
}

/** A found value in a few words: short JSON, or its kind and size where it is long. */
export function describeValue(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'number') return String(value);
  if (Array.isArray(value) && value.length > 6) return `a list of ${value.length}`;
  // A document of several devices may hold whole numbers of any length, which are no JSON.
  const text =
    JSON.stringify(value, (_, at) => (typeof at === 'bigint' ? `${at}` : at)) ?? typeof value;
  return text.length <= 60 ? text : `${text.slice(0, 57)}…`;
}

function expectation(issue: z.core.$ZodIssue): string {
  // A message that is not zod's own was written for this place.
  if (/^too_(small|big)$/.test(issue.code) && !/^Too (small|big)/.test(issue.message))
    return issue.message;
  switch (issue.code) {
    case 'invalid_type':
      return article(issue.expected);
    case 'invalid_value':
      return issue.values.length === 1
        ? JSON.stringify(issue.values[0])
        : `one of ${issue.values.map(String).join(', ')}`;
    case 'too_small':
      return size(
        issue.origin,
        issue.inclusive === false ? 'more than' : 'at least',
        issue.minimum,
      );
    case 'too_big':
      return size(issue.origin, issue.inclusive === false ? 'less than' : 'at most', issue.maximum);
    default:
      return issue.message;
  }
}

function size(origin: string, bound: string, limit: number | bigint): string {
  if (origin === 'string') return `text of ${bound} ${limit} characters`;
  if (origin === 'array') return `a list of ${bound} ${limit}`;
  return origin === 'int' ? `a whole number of ${bound} ${limit}` : `a number of ${bound} ${limit}`;
}

const ARTICLES: Readonly<Record<string, string>> = {
  int: 'a whole number',
  number: 'a finite number',
  string: 'text',
  array: 'a list',
  object: 'an object { … }',
  boolean: 'true or false',
};

const article = (type: string): string => ARTICLES[type] ?? type;

function valueAt(input: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, step) =>
      typeof value === 'object' && value !== null
        ? (value as Readonly<Record<PropertyKey, unknown>>)[step]
        : undefined,
    input,
  );
}

interface Definition {
  readonly shape?: Readonly<Record<string, z.ZodType>>;
  readonly element?: z.ZodType;
  readonly innerType?: z.ZodType;
}

/** Keys that the schema allows in the object at `path`. */
function keysAt(schema: z.ZodType, path: Path): string[] {
  const at = path.reduce<Definition>((def, step) => {
    const next = typeof step === 'number' ? def.element : def.shape?.[String(step)];
    return next ? unwrapped(next) : {};
  }, unwrapped(schema));
  return Object.keys(at.shape ?? {});
}

function unwrapped(schema: z.ZodType): Definition {
  const def = schema.def as Definition;
  return def.innerType ? unwrapped(def.innerType) : def;
}
