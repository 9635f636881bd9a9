// Where the line of a shared document to the laptop is.

/** Why a line was cut or something on it not taken. `ended`: the code no longer holds; `later`: too much
 * at once; `not kept`: the laptop could not write it; `malformed`: the laptop could not read it;
 * `denied`: this device's role may not. */
export interface LineTrouble {
  readonly what: 'ended' | 'later' | 'not kept' | 'malformed' | 'denied';
  /** In the laptop's own words. */
  readonly why: string;
}

/** Where a line is. */
export interface LineState {
  /** Whether both sides have told each other what they have. */
  readonly on: boolean;
  /** Changes that are not known to be kept on the laptop: 0, all are. */
  readonly waiting: number;
  readonly trouble: LineTrouble | null;
}

/** A line before there is one. */
export const noLine: LineState = { on: false, waiting: 0, trouble: null };
