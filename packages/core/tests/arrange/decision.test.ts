import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { arrangements } from '../../src/arrange/arrangements.ts';
import { decisionFor, findDecided } from '../../src/arrange/decision.ts';
import { placesSection } from '../../src/arrange/schema.ts';
import { seededRandom } from '../../src/math/random.ts';
import { partOf } from '../../src/shell/part.ts';
import { placeCount } from '../../src/shell/shell.ts';
import { icosahedral, pileKinds } from '../shell/fixtures.ts';

const net = icosahedral(3, 1);
const kinds = pileKinds(net);
const list = arrangements(net.shell, kinds);

describe('a decision', () => {
  it('passes the section of the project file that keeps it, and is found again from it', () => {
    for (const arrangement of list.arrangements.filter((_, i) => i % 40 === 0)) {
      const text = JSON.stringify(decisionFor(list, arrangement, false, 0.5));
      const decision = placesSection.parse(JSON.parse(text));
      const again = findDecided(net.shell, kinds, decision);
      expect(again).toMatchObject({ found: true, arrangement: { wayUp: arrangement.wayUp } });
      if (again.found) expect(again.arrangement.cut.places).toEqual(arrangement.cut.places);
    }
  });

  it('is found again when the net is fitted anew and its places are numbered anew (seed 8)', () => {
    const random = seededRandom(8);
    const order = random.shuffle([...Array(placeCount(net.shell)).keys()]);
    const fitted = {
      ...net.shell,
      hubs: net.shell.hubs.map((x) => x * 1.003 + 1e-5 * random.normal()),
      radius: 1.003,
    };
    const { shell } = partOf(fitted, order);
    const arrangement = list.arrangements[12] as (typeof list.arrangements)[number];
    const again = findDecided(shell, kinds, decisionFor(list, arrangement, false));
    const sorted = (places: Iterable<number>): number[] => [...places].sort((a, b) => a - b);
    const alike = list.arrangements
      .filter((a) => a.wayUp === arrangement.wayUp)
      .map((a) => a.stock.map((r) => r.need).join());
    expect(again.found).toBe(true);
    if (!again.found) return;
    expect(again.arrangement.cut.places).toHaveLength(arrangement.cut.places.length);
    expect(again.arrangement.courses).toEqual(arrangement.courses);
    expect(alike).toContain(again.arrangement.stock.map((row) => row.need).join());
    expect(again.arrangement.stock.map((row) => row.need)).toEqual(
      arrangement.stock.map((row) => row.need),
    );
    expect(sorted(again.arrangement.cut.places)).toEqual([...again.arrangement.cut.places]);
  });

  it('is not found, with the reason, where the net has no such way up, cut, or end', () => {
    const decision = decisionFor(list, list.arrangements[0] as never, false);
    const other = findDecided(net.shell, kinds, {
      ...decision,
      wayUp: { ...decision.wayUp, orbit: 99 },
    });
    expect(other).toMatchObject({ found: false });
    expect(!other.found && other.reason).toContain('no way up');
    const cut = findDecided(net.shell, kinds, { ...decision, cut: { places: 7, height: 1 } });
    expect(!cut.found && cut.reason).toContain('no cut');
    const open = findDecided(partOf(net.shell, [0, 1]).shell, kinds, decision);
    expect(!open.found && open.reason).toContain('not complete');
  });
});

describe('the places section', () => {
  const good = { wayUp: { at: 'hub', kinds: ['1'], orbit: 0 }, cut: { places: 40, height: 2.5 } };

  it('fills in what is left out', () => {
    expect(placesSection.parse(good)).toEqual({ ...good, repaired: false, datumTurn: 0 });
  });

  it.each([
    ['wayUp.at', { ...good, wayUp: { ...good.wayUp, at: 'edge' } }],
    ['wayUp.kinds', { ...good, wayUp: { ...good.wayUp, kinds: [] } }],
    ['wayUp.orbit', { ...good, wayUp: { ...good.wayUp, orbit: -1 } }],
    ['cut.places', { ...good, cut: { places: 0, height: 1 } }],
    ['cut.height', { ...good, cut: { places: 4, height: 0 } }],
    ['datumTurn', { ...good, datumTurn: 9 }],
    ['repaired', { ...good, repaired: 'yes' }],
    ['', { ...good, crown: 1 }],
  ])('refuses a fault in %s', (path, value) => {
    const read = placesSection.safeParse(value);
    expect(read.success).toBe(false);
    expect(read.error?.issues[0]?.path.join('.')).toBe(path);
  });

  it('has a JSON Schema', () => {
    expect(z.toJSONSchema(placesSection, { io: 'input' })).toMatchObject({
      required: ['wayUp', 'cut'],
    });
  });
});
