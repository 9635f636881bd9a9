// The part of papaparse 5 that is used here; its own type package needs DOM and Node types.

declare module 'papaparse' {
  interface ParseError {
    readonly code: string;
    readonly message: string;
    /** Record in which it was found, from 0. */
    readonly row?: number;
  }
  interface Papa {
    parse(
      text: string,
      options: { readonly delimiter: string; readonly newline: string },
    ): { readonly data: string[][]; readonly errors: readonly ParseError[] };
    unparse(
      rows: readonly (readonly (string | number)[])[],
      options: { readonly newline: string; readonly escapeFormulae: RegExp },
    ): string;
  }
  const papa: Papa;
  export default papa;
}
