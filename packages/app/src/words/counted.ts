// Counts and lists in English, for the message tables.

/** `1 panel`, `3 panels`. */
export const plural = (count: number, one: string, more = `${one}s`): string =>
  `${count} ${count === 1 ? one : more}`;

/** `a`, `a and b`, `a, b and c`; nothing of none. */
export const listed = (names: readonly string[], last = 'and'): string =>
  names.length < 2
    ? (names[0] ?? '')
    : `${names.slice(0, -1).join(', ')} ${last} ${names[names.length - 1]}`;
