// Bad input, told as data: every reader of text or files returns the whole list of its faults.

/** One fault of the input: where it stands, what was found there and what was expected. */
export interface Fault {
  /** Place in the input, e.g. `pile.kinds[2].sides[0]` or `row 7, column side2`. */
  readonly path: string;
  readonly found: string;
  readonly expected: string;
}

/** What a reader returns: the value, or every fault that kept it from being read. */
export type Read<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** What a reader returns where one fault keeps it from reading. */
export const refuse = (path: string, found: string, expected: string): Read<never> => ({
  ok: false,
  faults: [{ path, found, expected }],
});

/** One fault as a sentence. */
export function describeFault(fault: Fault): string {
  return `${fault.path}: found ${fault.found}, expected ${fault.expected}`;
}
