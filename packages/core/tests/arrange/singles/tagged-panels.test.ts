import { describe, expect, it } from 'vitest';
import { taggedPanels } from '../../../src/arrange/singles/tagged-panels.ts';
import type { AssignedReading } from '../../../src/pile/assign.ts';
import type { Kind } from '../../../src/pile/kind.ts';
import type { Pile } from '../../../src/pile/schema.ts';

const kinds = [{ id: 'A', sides: [1, 1.2, 1.4] }] as unknown as readonly Kind[];
type Row = Partial<Pile['readings'][number]> & { sides: number[] };
const pileOf = (hubAllowance: number | null, ...readings: Row[]) =>
  ({ readings, hubAllowance }) as unknown as Pile;
const read = (reading: number, tag: string | null, liesOn = [0, 1, 2], kind: string | null = 'A') =>
  ({ reading, tag, kind, liesOn }) as unknown as AssignedReading;
const by = (bias: number, applied = true) =>
  [{ by: 'Ada', bias, applied }] as unknown as Parameters<typeof taggedPanels>[1]['people'];

describe('tagged panels', () => {
  it('are off by what was measured less what is fitted, on the sides that each reading lies on', () => {
    const pile = pileOf(null, { sides: [1.401, 1.002, 1.197] });
    const [one] = taggedPanels(pile, { assigned: [read(0, 't', [2, 0, 1])], people: [] }, kinds);
    expect(one?.tag).toBe('t');
    expect(one?.off.map((x) => Math.round(1e6 * x))).toEqual([2000, -3000, 1000]);
  });

  it('have the mean of their readings, each person taken off and the hub allowance put on', () => {
    const pile = pileOf(
      0.1,
      { sides: [0.906, 1.106, 1.306], by: 'Ada' },
      { sides: [0.902, 1.102, 1.302] },
    );
    const assigned = [read(0, 't'), read(1, 't')];
    const offs = (people: ReturnType<typeof by>) =>
      taggedPanels(pile, { assigned, people }, kinds)[0]?.off.map((x) => Math.round(1e6 * x));
    expect(offs(by(0.004))).toEqual([2000, 2000, 2000]);
    expect(offs(by(0.004, false))).toEqual([4000, 4000, 4000]);
  });

  it('are weak where one reading wants mending, and none where one is scrap, or tag or kind is unknown', () => {
    const sides = [1, 1.2, 1.4];
    const pile = pileOf(
      null,
      { sides, condition: 'repair' },
      { sides, condition: 'scrap' },
      { sides },
    );
    const assigned = [read(0, 'r'), read(1, 's'), read(2, null), read(2, 'u', [0, 1, 2], null)];
    const found = taggedPanels(pile, { assigned: [...assigned, read(2, 'g')], people: [] }, kinds);
    expect(found.map(({ tag, weak }) => [tag, weak])).toEqual([
      ['r', true],
      ['g', false],
    ]);
  });
});
