// What a command prints with: standard output for the answer, standard error for the rest; colour
// only on a terminal that wants it.

import Table from 'cli-table3';
import pico from 'picocolors';

/** Colours of the answer: plain where standard output is no terminal, or NO_COLOR is set. */
export const paint = pico.createColors(
  process.stdout.isTTY === true && !process.env.NO_COLOR && process.env.TERM !== 'dumb',
);

/** A column of a table. */
export interface Column {
  readonly head: string;
  readonly align?: 'left' | 'right' | 'center';
}

const rule = { top: '', 'top-mid': '', 'top-left': '', 'top-right': '' };
const bottom = { bottom: '', 'bottom-mid': '', 'bottom-left': '', 'bottom-right': '' };
const sides = { left: '  ', 'left-mid': '', right: '', 'right-mid': '', middle: '  ' };

/** A column of numbers. */
export const right = (head: string): Column => ({ head, align: 'right' });

/** A table as text: a heading line, a row each, no frame. Empty where there are no rows. */
export function table(columns: readonly Column[], rows: readonly (readonly string[])[]): string {
  if (rows.length === 0) return '';
  const out = new Table({
    head: columns.map(({ head }) => paint.bold(head)),
    colAligns: columns.map(({ align }) => align ?? 'left'),
    chars: { ...rule, ...bottom, ...sides, mid: '', 'mid-mid': '' },
    style: { head: [], border: [], 'padding-left': 0, 'padding-right': 0, compact: true },
  });
  out.push(...rows.map((row) => [...row]));
  return out
    .toString()
    .split('\n')
    .map((line) => line.trimEnd())
    .join('\n');
}

/** A heading of the answer. */
export const heading = (text: string): string => paint.bold(paint.underline(text));

/** A caution beside a number: plain words, once. */
export const caution = (text: string): string => wrap(`${paint.yellow('Caution.')} ${text}`, '');

/** The widest line of running text: 96 characters, less on a narrower terminal or where COLUMNS says
 * so. */
export const lineWidth = (): number =>
  Math.max(40, Math.min(96, process.stdout.columns || Number(process.env.COLUMNS) || 96));

/** Text in lines of at most `width` characters, the later ones indented. */
export function wrap(text: string, indent: string, width = lineWidth()): string {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && line.length + 1 + word.length > width) {
      lines.push(line);
      line = indent + word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line].join('\n');
}

/** A list with a point before each item, under a title where there is one; empty without items. */
export function bullets(title: string, items: readonly string[]): string {
  if (items.length === 0) return '';
  const lines = items.map((item) => wrap(`- ${item}`, '  '));
  return [...(title === '' ? [] : [title]), ...lines].join('\n');
}

/** `1 panel`, `2 panels`. */
export const count = (n: number, one: string, many = `${one}s`): string =>
  `${n.toLocaleString('en')} ${n === 1 ? one : many}`;

/** Prints blocks of text with an empty line between them; empty blocks are left out. */
export function print(...blocks: readonly string[]): void {
  process.stdout.write(`${blocks.filter((block) => block !== '').join('\n\n')}\n`);
}

/** Prints the one JSON document of a command. */
export const printJson = (document: unknown): void => {
  process.stdout.write(`${JSON.stringify(document, null, 2)}\n`);
};
