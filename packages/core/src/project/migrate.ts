// Older versions of the project file, brought up one version at a time before they are validated.

/** Turns the raw file of one version into that of the next. */
export type Migration = (raw: Readonly<Record<string, unknown>>) => Record<string, unknown>;

/** Version → the step that leads from it to the next. Version 1 is the first, so there is none. */
const MIGRATIONS: ReadonlyMap<number, Migration> = new Map();

/** The raw file brought from its version to `to`, stamped with it. Throws where a step is missing:
 * every version that was ever written must stay readable. */
export function migrate(
  raw: Readonly<Record<string, unknown>>,
  from: number,
  to: number,
  steps: ReadonlyMap<number, Migration> = MIGRATIONS,
): Readonly<Record<string, unknown>> {
  let current = raw;
  for (let version = from; version < to; version++) {
    const step = steps.get(version);
    if (!step) throw new Error(`no migration of the project file from version ${version}`);
    current = { ...step(current), shellraise: version + 1 };
  }
  return current;
}
