import { describe, expect, it } from 'vitest';
import { ById, nameOf } from '../../src/record/by-id.ts';
import { entrySchema, idOf } from '../../src/record/entry.ts';
import { isUsualEntry } from '../../src/record/usual.ts';

const entry = {
  writer: 'ada00000',
  seq: 3,
  order: 7,
  at: 1_781_254_800_000,
  by: 'Ada',
  follows: ['bob00000-1'],
};
const pass = { kind: 'seam pass', seam: '3-07/3-08', pass: 'snug', hands: 2 };
const seal = { kind: 'seam sealed', seam: '3-07/3-08', sealed: true };

/** What a field may hold instead. */
const ODD: readonly unknown[] = [
  ...[undefined, null, true, 0, -0, -1, 0.5, 1, 2 ** 40, 2 ** 41, 2 ** 53, Number.NaN, Infinity],
  ...['', 'x', ' Ada', 'Ada ', '\u00a0Ada', 'x'.repeat(60), 'x'.repeat(61), 'ada00000', 'ADA00000'],
  ...['3-07/3-08', '3-07/3-08\n', '3-07', 'none', 'tight', 'seam pass', 'seam sealed', 'undo'],
  ...[[], ['bob00000-1'], ['bob00000'], [1], Array(100).fill('bob00000-1')],
  ...[Array(101).fill('bob00000-1'), {}, Object.create(null), new Date(0), new Map()],
  ...['1781254800000', 946_684_800_000, 946_684_799_999, 4_102_444_800_001],
];

const variants = (): unknown[] => {
  const all: unknown[] = [...ODD];
  for (const what of [pass, seal]) {
    all.push(
      { ...entry, what },
      { ...entry, what: { ...what, more: 1 } },
      { ...entry, what, more: 1 },
    );
    for (const odd of ODD) {
      for (const key of [...Object.keys(entry), 'what', 'more'])
        all.push({ ...entry, what, [key]: odd });
      for (const key of [...Object.keys(what), 'more'])
        all.push({ ...entry, what: { ...what, [key]: odd } });
    }
  }
  all.push(JSON.parse('{"__proto__": 1}'), Object.create({ ...entry, what: pass }));
  return all;
};

describe('an entry that is told by hand', () => {
  it('is one by the schema, which gives it back as it is', () => {
    let told = 0;
    for (const raw of variants())
      if (isUsualEntry(raw)) {
        told++;
        const read = entrySchema.safeParse(raw);
        expect(read.success ? read.data : read.error).toEqual(raw);
      }
    expect(told).toBeGreaterThan(20);
  });

  it('is every pass and seal that the schema would give back as it is', () => {
    for (const raw of variants()) {
      const read = entrySchema.safeParse(raw);
      const kind = read.success ? read.data.what.kind : null;
      const isSame =
        read.success && JSON.stringify(read.data.by) === JSON.stringify((raw as { by: string }).by);
      if (
        (kind === 'seam pass' || kind === 'seam sealed') &&
        isSame &&
        Object.hasOwn(raw as object, 'what')
      )
        expect(isUsualEntry(raw), JSON.stringify(raw)).toBe(true);
    }
  });
});

describe('things by id', () => {
  it('are found by entry and by id, and by no other writing of it', () => {
    const things = new ById<string>();
    const [a, b] = [entry, { writer: 'bob00000', seq: 3 }];
    expect([things.at(a), things.get('ada00000-3'), things.size]).toEqual([
      undefined,
      undefined,
      0,
    ]);
    things.put(a, 'a');
    things.put(b, 'b');
    things.put(a, 'again');
    expect([things.at(a), things.get(idOf(b)), things.size]).toEqual(['again', 'b', 2]);
    expect([...things.values()]).toEqual(['again', 'b']);
    for (const id of ['ada00000-03', 'ada00000', '-3', 'ada00000-', 'ada00000-3.0', '']) {
      expect(things.get(id), id).toBeUndefined();
      expect(nameOf(id), id).toBeNull();
    }
    things.clear();
    expect([things.size, things.at(a)]).toEqual([0, undefined]);
  });
});
