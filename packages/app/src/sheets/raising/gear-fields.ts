// The fields of each sort of gear with their limits as the project file has them, what a new one starts
// from, and how one field is read and put in its place. Metres, kilograms, newtons, watt hours.

import type { Gear, ThingShape } from '@shellraise/core';

/** The lists of gear that the form shows, in its order. */
export const gearLists = [
  'ladders',
  'platforms',
  'towers',
  'lifts',
  'powerTools',
  'lights',
  'batteries',
  'inside',
] as const;
/** One of them. */
export type GearList = (typeof gearLists)[number];
/** A piece of gear. */
export type GearItem<K extends GearList = GearList> = Gear[K][number];

/** A field: what it is typed in, and its limits. `needed`: there must be one; else none is unknown. */
export interface GearField {
  /** A path: `base.0` is the first of the base's two sides. */
  readonly key: string;
  readonly as: 'length' | 'mass' | 'number' | 'count' | 'form' | 'must';
  readonly most: number;
  readonly needed: boolean;
}

const metres = (key: string): GearField => ({ key, as: 'length', most: 60, needed: true });
const count: GearField = { key: 'count', as: 'count', most: 100, needed: true };
const bears: GearField = { key: 'bears', as: 'mass', most: 100_000, needed: false };

/** The fields of each sort, besides its name. */
export const gearFields: Readonly<Record<GearList, readonly GearField[]>> = {
  ladders: [{ key: 'form', as: 'form', most: 0, needed: true }, metres('length'), bears, count],
  platforms: [metres('height'), bears, count],
  towers: [metres('height'), metres('base.0'), metres('base.1'), bears, count],
  lifts: [metres('hookHeight'), bears],
  powerTools: [{ key: 'wattHoursPerBolt', as: 'number', most: 100, needed: false }],
  lights: [
    { key: 'watts', as: 'number', most: 5000, needed: true },
    count,
    { key: 'hours', as: 'number', most: 24, needed: false },
  ],
  batteries: [{ key: 'wattHours', as: 'number', most: 100_000, needed: true }, count],
  inside: [
    { key: 'must', as: 'must', most: 0, needed: true },
    { key: 'mass', as: 'mass', most: 100_000, needed: false },
  ],
};

/** What a new one of each sort starts from. */
export const gearStarts: { readonly [K in GearList]: Omit<GearItem<K>, 'name'> } = {
  ladders: { form: 'self-standing', length: 2.4, bears: null, count: 1 },
  platforms: { height: 0.8, bears: null, count: 1 },
  towers: { height: 3, base: [1.8, 1.4], bears: null, count: 1 },
  lifts: { hookHeight: 6, bears: null },
  powerTools: { wattHoursPerBolt: null },
  lights: { watts: 30, count: 1, hours: null },
  batteries: { wattHours: 90, count: 2 },
  inside: { shape: { form: 'box', size: [1, 0.6, 2] }, mass: null, must: 'come out' },
};

/** A new gin pole, and a new shape of each form that can be typed. */
export const ginPoleStart: NonNullable<Gear['ginPole']> = {
  name: 'gin pole',
  height: 5,
  headBears: null,
};

/** Forms of a shape that can be typed, each as it starts. */
export const shapeStarts = {
  box: { form: 'box', size: [1, 0.6, 2] },
  cylinder: { form: 'cylinder', diameter: 0.6, length: 2 },
  dish: { form: 'dish', diameter: 1.2, depth: 0.2, thickness: 0.05 },
} as const satisfies Readonly<Record<string, ThingShape>>;

/** Sizes of a shape that can be typed; none of hulls and parts. */
export const shapeSizes = (shape: ThingShape): readonly string[] =>
  shape.form === 'box'
    ? ['size.0', 'size.1', 'size.2']
    : shape.form === 'cylinder'
      ? ['diameter', 'length']
      : shape.form === 'dish'
        ? ['diameter', 'depth']
        : [];

/** The value at a path; undefined where there is none. */
export function valueAt(item: object, path: string): unknown {
  return path
    .split('.')
    .reduce<unknown>(
      (found, key) =>
        typeof found === 'object' && found !== null
          ? (found as Readonly<Record<string, unknown>>)[key]
          : undefined,
      item,
    );
}

/** The same with another value at a path. */
export function withValue<T extends object>(item: T, path: string, value: unknown): T {
  const [key = '', ...rest] = path.split('.');
  const inner = (item as Readonly<Record<string, unknown>>)[key];
  const put =
    rest.length > 0 && typeof inner === 'object' && inner !== null
      ? withValue(inner, rest.join('.'), value)
      : value;
  if (Array.isArray(item)) return item.map((one, i) => (String(i) === key ? put : one)) as never;
  return { ...item, [key]: put };
}

/** A name that nothing in a list bears yet: itself, or with a number. */
export function freeName(name: string, list: readonly { readonly name: string }[]): string {
  const taken = new Set(list.map((one) => one.name));
  for (let i = 2; ; i++) {
    const own = i === 2 && !taken.has(name) ? name : `${name} ${i}`;
    if (!taken.has(own)) return own;
  }
}
