// How a join code is written for people and for their cameras. What stands behind the # of an address is sent
// to no server and goes into no log.

/** The address that joins with a code; `base` is the app's own, with or without a hash. */
export const joinAddress = (base: string, code: string): string =>
  `${base.replace(/#.*$/, '')}#join=${spelled(code)}`;

/** A code as people read it out: two groups of five. */
export const spelled = (code: string): string =>
  code.length === 10 ? `${code.slice(0, 5)}-${code.slice(5)}` : code;
