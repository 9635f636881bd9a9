import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { example, fileOf, run } from './run.ts';

const demo = example('demo/project.json');
const project = JSON.parse(readFileSync(demo, 'utf8')) as object;
const withWishes = (wishes: object): string => fileOf(JSON.stringify({ ...project, wishes }));

interface Doc {
  readonly status: string;
  readonly conflict: readonly string[];
  readonly nearest: readonly { readonly demand: string; readonly value?: number }[];
  readonly fits: readonly {
    readonly places: readonly { readonly kind: string; readonly source: string }[];
    readonly joined: readonly { readonly around: readonly string[]; readonly places: number[] }[];
    readonly parted: number;
    readonly door: { readonly places: readonly number[] } | null;
  }[];
}

describe('places --fit with the lead’s wishes', () => {
  it('leaves a door’s places out of the stock, and keeps joined groups around a hub in their order', async () => {
    const wishes = {
      order: ['fewest bought', 'groups joined', 'tallest', 'fewest mended'],
      door: { width: 0.8, height: 1.8 },
      flatBase: true,
    };
    const { out, code } = await run(['places', withWishes(wishes), '--fit', '--json']);
    expect(code).toBe(0);
    const [best] = (JSON.parse(out) as Doc).fits;
    if (!best?.door) throw new Error('no door');
    const inDoor = best.places.flatMap(({ source }, i) => (source === 'door' ? [i] : []));
    expect(inDoor).toEqual([...best.door.places].sort((a, b) => a - b));
    expect(best.joined.length).toBeGreaterThan(0);
    for (const { around, places } of best.joined) {
      expect(places.map((i) => best.places[i]?.kind)).toEqual(around);
      expect(places.every((i) => best.places[i]?.source === 'good')).toBe(true);
    }
  });

  it('names what can’t be had, and what could', async () => {
    const { out, code } = await run(['places', withWishes({ spares: 100 }), '--fit', '--json']);
    expect(code).toBe(1);
    const doc = JSON.parse(out) as Doc;
    expect(doc).toMatchObject({ status: 'conflict', conflict: ['spares'] });
    expect(doc.nearest[0]?.demand).toBe('spares');
  });
});
