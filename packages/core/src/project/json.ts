// Where a JSON text goes wrong: the line and column of the first error, and keys given twice,
// which JSON.parse would silently drop. Grammar of RFC 8259. Browsers and Node word their own
// messages differently, so this scanner only locates; JSON.parse stays the reader.

import type { Fault } from '../measure/fault.ts';

/** Deepest nesting that is followed; a project file needs eight. */
const MAX_DEPTH = 64;

/** Thrown inside the scanner only, and caught there. */
interface Stop {
  readonly at: number;
  readonly expected: string;
}

const SPACE = /[\t\n\r ]*/y;
const LITERAL = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null/y;
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;

/** The faults of a text as JSON: none where it is JSON with every key once; the first error with
 * its line and column; or each key given twice. */
export function jsonFaults(text: string): Fault[] {
  const scanner = new Scanner(text);
  const stop = scanner.document();
  if (stop)
    return [{ path: place(text, stop.at), found: near(text, stop.at), expected: stop.expected }];
  return scanner.twice.map(({ at, key }) => ({
    path: place(text, at),
    found: `the key ${key} a second time in one object`,
    expected: 'every key once',
  }));
}

const near = (text: string, at: number): string =>
  at >= text.length ? 'the end of the text' : JSON.stringify(text.slice(at, at + 12));

/** `line 3, column 7`, both from 1. */
function place(text: string, at: number): string {
  const before = text.slice(0, at).split(/\r\n|\n|\r/);
  return `line ${before.length}, column ${(before.at(-1) ?? '').length + 1}`;
}

/** Reads tokens one after the other; holds the position, hence a class. */
class Scanner {
  readonly twice: { at: number; key: string }[] = [];
  private readonly text: string;
  private token = '';
  private at = 0;
  private end = 0;

  constructor(text: string) {
    this.text = text;
  }

  /** Scans the whole text; the first error, or null. */
  document(): Stop | null {
    this.next();
    return (
      this.value(0) ??
      (this.token === '' && this.at >= this.text.length ? null : this.stop('the end of the text'))
    );
  }

  /** Moves to the next token; an empty one where there is none. */
  private next(): void {
    this.at = this.after(SPACE, this.end);
    const first = this.text.charAt(this.at);
    if ('{}[],:'.includes(first)) this.end = Math.min(this.at + 1, this.text.length);
    else if (first === '"') this.end = this.stringEnd(this.at + 1);
    else this.end = this.after(LITERAL, this.at);
    this.token = this.text.slice(this.at, this.end);
  }

  /** Where the match of a sticky pattern at `from` ends; `from` where there is none. */
  private after(pattern: RegExp, from: number): number {
    pattern.lastIndex = from;
    return pattern.test(this.text) ? pattern.lastIndex : from;
  }

  /** One past the closing quote; the string's start, an empty token, where it is not closed. Not
   * one regular expression, which would run out of stack on a long string. */
  private stringEnd(from: number): number {
    let i = from;
    for (;;) {
      const code = this.text.charCodeAt(i);
      if (code === 0x22) return i + 1;
      const next = code === 0x5c ? this.after(ESCAPE, i) : i + 1;
      if (!(code >= 0x20) || next === i) return from - 1;
      i = next;
    }
  }

  private is(token: string): boolean {
    return this.token === token;
  }

  private stop(expected: string): Stop {
    return { at: this.at, expected };
  }

  private value(depth: number): Stop | null {
    if (depth > MAX_DEPTH) return this.stop(`nesting of at most ${MAX_DEPTH}`);
    if (this.is('{')) return this.object(depth);
    if (this.is('[')) return this.list(depth);
    if (this.token === '' || '}],:'.includes(this.token))
      return this.stop(
        this.text.charAt(this.at) === '"' ? 'a string closed on its line' : 'a value',
      );
    this.next();
    return null;
  }

  private object(depth: number): Stop | null {
    const keys = new Set<string>();
    this.next();
    if (this.is('}')) return this.done();
    for (;;) {
      if (!this.token.startsWith('"')) return this.stop('a key in double quotes');
      const key = JSON.stringify(JSON.parse(this.token));
      if (keys.has(key)) this.twice.push({ at: this.at, key });
      keys.add(key);
      this.next();
      if (!this.is(':')) return this.stop('a colon');
      this.next();
      const stop = this.value(depth + 1);
      if (stop) return stop;
      if (this.is('}')) return this.done();
      if (!this.is(',')) return this.stop('a comma or }');
      this.next();
    }
  }

  private list(depth: number): Stop | null {
    this.next();
    if (this.is(']')) return this.done();
    for (;;) {
      const stop = this.value(depth + 1);
      if (stop) return stop;
      if (this.is(']')) return this.done();
      if (!this.is(',')) return this.stop('a comma or ]');
      this.next();
    }
  }

  private done(): null {
    this.next();
    return null;
  }
}
