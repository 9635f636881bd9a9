// Apart from the code that makes certificates, which is loaded only where https is asked for.

/** A file cannot serve as a root certificate; it is left as it is. */
export class RootUnusable extends Error {
  constructor(
    readonly file: string,
    readonly why: string,
  ) {
    super(`${file} ${why}`);
  }
}
