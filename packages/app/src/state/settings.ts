// How this person likes the app: kept in the browser, not in the project. What comes from storage
// is read key by key; anything unknown falls back.

/** The looks: as the system has it, or one of three. */
export const schemes = ['system', 'light', 'dark', 'outdoor'] as const;
/** A look. */
export type Scheme = (typeof schemes)[number];
/** Which lengths come first. */
export type LengthSystem = 'metric' | 'inch';
/** What the plan's fills say. */
export const colourings = ['kind', 'course', 'condition', 'stock'] as const;
/** What the plan's fills say. */
export type Colouring = (typeof colourings)[number];

/** Everything a person can set. */
export interface Settings {
  readonly scheme: Scheme;
  readonly lengths: LengthSystem;
  /** True for the plan as seen from the floor looking up. */
  readonly fromBelow: boolean;
  readonly colouring: Colouring;
  /** Whether "ready to work offline" was said. */
  readonly offlineTold: boolean;
}

/** The settings of a newcomer. */
export const defaultSettings: Settings = {
  scheme: 'system',
  lengths: 'metric',
  fromBelow: false,
  colouring: 'kind',
  offlineTold: false,
};

/** Settings from what storage holds. */
export function readSettings(text: string | null): Settings {
  const raw = parsed(text);
  return {
    scheme: oneOf(schemes, raw.scheme, defaultSettings.scheme),
    lengths: oneOf(['metric', 'inch'] as const, raw.lengths, defaultSettings.lengths),
    fromBelow: raw.fromBelow === true,
    colouring: oneOf(colourings, raw.colouring, defaultSettings.colouring),
    offlineTold: raw.offlineTold === true,
  };
}

function parsed(text: string | null): Readonly<Record<string, unknown>> {
  try {
    const value: unknown = JSON.parse(text ?? '{}');
    return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
  } catch {
    return {};
  }
}

const oneOf = <T extends string>(list: readonly T[], value: unknown, fallback: T): T =>
  list.find((one) => one === value) ?? fallback;
