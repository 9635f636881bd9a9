// What the questions about a standing shell share: the shell itself, and what its panels are of.

import type { Kind, LoadsSettings, PartsKnown, Shell } from '@shellraise/core';

/** A shell that stands. */
export interface StandingShell {
  readonly shell: Shell;
  /** Numbers of its places. */
  readonly numbers: readonly string[];
  /** Places left open on purpose. */
  readonly leftOut: readonly number[];
}

/** What its panels are of and weigh. */
export interface ShellParts {
  readonly kinds: readonly Kind[];
  readonly loads: LoadsSettings | undefined;
  readonly parts: PartsKnown | undefined;
}
