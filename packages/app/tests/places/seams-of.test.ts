import { describe, expect, it } from 'vitest';
import { saysOf } from '../../src/sheets/places/says.ts';
import { placesAround, seamsOf } from '../../src/sheets/places/seams-of.ts';
import { pickedOf, selectionOf } from '../../src/sheets/places/selected.ts';
import { placesWords } from '../../src/words/places.ts';
import { courses, kinds, numbers, placeOf, places, shell } from './notation.ts';

const content = { shell, kinds, numbers };

describe('the sides of a place', () => {
  it('come in the order of the kind, each with its own length', () => {
    for (const place of places) {
      const sides = seamsOf(content, place);
      expect(sides.map(({ side }) => side)).toEqual([1, 2, 3]);
      const kind = kinds[shell.kind[place] as number];
      expect(sides.map(({ length }) => length)).toEqual(kind?.sides);
    }
  });

  it('name the neighbour, whose side leads back', () => {
    for (const place of places)
      for (const { side, to } of seamsOf(content, place)) {
        if (!to) continue;
        const back = seamsOf(content, to.place).find((one) => one.side === to.side);
        expect(back?.to).toMatchObject({ place, number: numbers[place], side });
      }
  });

  it('meet sides of one length', () => {
    for (const place of places)
      for (const { length, to } of seamsOf(content, place)) {
        const other = to && seamsOf(content, to.place)[to.side - 1]?.length;
        if (other) expect(Math.abs(other - length)).toBeLessThan(1e-6);
      }
  });
});

describe('the places around a hub', () => {
  it('are all that have it, each next to the one before', () => {
    for (let hub = 0; 3 * hub < shell.hubs.length; hub++) {
      const around = placesAround(shell, hub);
      const own = places.filter((p) => seamHubs(p).includes(hub));
      expect([...around].sort((a, b) => a - b)).toEqual(own);
      around.slice(1).forEach((place, i) => {
        const before = seamsOf(content, around[i] as number).map(({ to }) => to?.place);
        expect(before).toContain(place);
      });
    }
  });
});

const seamHubs = (place: number): number[] =>
  Array.from(shell.sideHub.subarray(shell.placeStart[place], shell.placeStart[place + 1]));

describe('the selection', () => {
  it('names places, hubs and seams so that they are found again', () => {
    const numbered = { shell, numbers };
    for (const place of places) {
      const picked = { type: 'place', place } as const;
      expect(pickedOf(selectionOf(picked, numbered), numbered)).toEqual(picked);
    }
    for (let i = 0; i < shell.seams.length; i += 2) {
      const picked = { type: 'seam', side: shell.seams[i] as number } as const;
      expect(pickedOf(selectionOf(picked, numbered), numbered)).toEqual(picked);
    }
    expect(pickedOf({ type: 'hub', hub: 3 }, numbered)).toEqual({ type: 'hub', hub: 3 });
  });

  it('is nothing where the shell has no such thing', () => {
    const numbered = { shell, numbers };
    expect(pickedOf({ type: 'place', number: '99-01' }, numbered)).toBeNull();
    expect(pickedOf({ type: 'hub', hub: 10_000 }, numbered)).toBeNull();
    expect(pickedOf({ type: 'seam', places: ['1-01', '1-01'] }, numbered)).toBeNull();
    expect(pickedOf({ type: 'kind', id: '1' }, numbered)).toBeNull();
    expect(pickedOf(null, numbered)).toBeNull();
  });

  it('is read out with its neighbours', () => {
    const place = placeOf('1-02');
    const says = saysOf(
      { ...content, course: courses.course },
      { type: 'place', place },
      null,
      placesWords.details,
    );
    const [first] = seamsOf(content, place);
    expect(says).toContain('place 1-02, kind ');
    expect(says).toContain('course 1; side 1 ');
    expect(says).toContain(first?.to ? `side 1 to ${first.to.number}` : 'side 1 open');
    expect(says).toContain('open');
  });
});
