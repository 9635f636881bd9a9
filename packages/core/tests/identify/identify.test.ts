import { describe, expect, test } from 'vitest';
import { judge, namedTrial, randomTrial, type Trial } from '../../bench/trials.ts';
import { starRuns } from '../../src/identify/groups.ts';
import { identify } from '../../src/identify/identify.ts';
import type { Identification } from '../../src/identify/shape.ts';
import { seededRandom } from '../../src/math/random.ts';
import { type NetShell, shellOfNet } from '../../src/nets/kinds.ts';
import { mixedNet, mixedNetNames } from '../../src/nets/mixed.ts';
import { namedNet } from '../../src/nets/named.ts';
import type { SolidName } from '../../src/nets/solid.ts';
import type { JoinedGroup, Kind } from '../../src/pile/kind.ts';
import { checkShell } from '../../src/shell/check.ts';
import { sideLength } from '../../src/shell/geometry.ts';
import type { SideId } from '../../src/shell/ids.ts';
import { kindSide, placeAt, sideCount } from '../../src/shell/shell.ts';

const kindsOf = (truth: NetShell, sd: number, seed: number): Kind[] => {
  const random = seededRandom(seed);
  return truth.kinds.map(({ sides }, i) => ({
    id: `${i + 1}`,
    marks: [],
    sides: sides.map((side) => side + sd * random.normal()),
    sideSds: sides.map(() => Math.max(sd, 1e-4)),
    hand: null,
    good: 0,
    repair: 0,
    scrap: 0,
    counted: false,
    mass: null,
  }));
};
const named = (b: number, c: number, solid: SolidName = 'icosahedron'): NetShell =>
  shellOfNet(namedNet({ solid, b, c, division: 'equal chords' }), 2.7);
const ask = (kinds: readonly Kind[], groups: readonly JoinedGroup[] = []): Identification =>
  identify({ kinds, groups });
const askTrial = (trial: Trial): Identification => ask(trial.kinds);

test('random piles at 0.5, 1 and 1.5 mm are found, seeds 1001 to 1010 each', () => {
  for (const sd of [5e-4, 1e-3, 1.5e-3])
    for (let seed = 1001; seed <= 1010; seed++) {
      const trial = randomTrial(sd, seed);
      const verdict = judge(trial, askTrial(trial));
      expect(verdict.right, `seed ${seed}: ${trial.name}`).toBe(true);
      expect(verdict.wrongButCertain).toBe(false);
    }
});

test('the judge refuses the same net with two kinds exchanged', () => {
  const trial = namedTrial(3, 1, 5e-4, false, 1);
  const answer = askTrial(trial);
  const [shape] = answer.shapes;
  if (!shape) throw new Error('nothing found');
  const swapped = shape.shell.kind.map((k) => (k === 0 ? 1 : k === 1 ? 0 : k));
  const wrong = { ...answer, shapes: [{ ...shape, shell: { ...shape.shell, kind: swapped } }] };
  expect(judge(trial, answer).right).toBe(true);
  expect(judge(trial, wrong).right).toBe(false);
});

describe('every shape listed', () => {
  const trial = namedTrial(4, 0, 1e-3, false, 3);
  const { shapes } = askTrial(trial);

  test('is one closed sphere, outside out, every hub on it', () => {
    for (const { shell } of shapes)
      expect(checkShell(shell)).toMatchObject({
        sound: true,
        closed: true,
        eulerCharacteristic: 2,
      });
  });

  test('has on every side of every place the fitted length of its kind', () => {
    for (const { shell, fittedSides, radius } of shapes)
      for (let s = 0; s < sideCount(shell); s++) {
        const own = fittedSides[shell.kind[placeAt(shell, s as SideId)] as number];
        const fitted = own?.[kindSide(shell, s as SideId)] as number;
        expect(Math.abs(sideLength(shell, s as SideId) - fitted)).toBeLessThan(1e-6 * radius);
      }
  });

  test('has a probability, and together they are at most certain', () => {
    const total = shapes.reduce((sum, { probability }) => sum + probability, 0);
    expect(total).toBeLessThanOrEqual(1 + 1e-12);
    expect(total).toBeGreaterThan(0.98);
  });
});

test('all twins are listed: 2V two, 4V four, 6V two, (3,3) three, octahedral 2V three', () => {
  for (const [b, c, solid, twins] of [
    [2, 0, 'icosahedron', 2],
    [3, 0, 'icosahedron', 1],
    [4, 0, 'icosahedron', 4],
    [5, 0, 'icosahedron', 1],
    [6, 0, 'icosahedron', 2],
    [2, 2, 'icosahedron', 1],
    [3, 3, 'icosahedron', 3],
    [2, 0, 'octahedron', 3],
    [4, 0, 'octahedron', 4],
  ] as const) {
    const { shapes } = ask(kindsOf(named(b, c, solid), 5e-4, 1));
    expect(shapes, `${solid} (${b}, ${c})`).toHaveLength(twins);
    for (const { probability } of shapes) expect(probability).toBeCloseTo(1 / twins, 1);
  }
});

test('octahedral and tetrahedral nets are found and named', () => {
  for (const [b, c, solid] of [
    [3, 0, 'octahedron'],
    [2, 1, 'octahedron'],
    [3, 0, 'tetrahedron'],
    [2, 1, 'tetrahedron'],
  ] as const) {
    const [shape] = ask(kindsOf(named(b, c, solid), 1e-3, 2)).shapes;
    expect(shape?.subdivision).toMatchObject({ solid, b, c });
    expect(Math.abs((shape?.radius ?? 0) - 2.7)).toBeLessThan(4 * (shape?.radiusSd ?? 0));
  }
});

test.each(mixedNetNames)('the %s closes at 1 mm, whichever other nets its panels make', (name) => {
  const truth = shellOfNet(mixedNet(name), 2.7);
  const { shapes } = ask(kindsOf(truth, 1e-3, 5));
  const places = truth.shell.kind.length;
  const found = shapes.find(
    ({ shell, radius }) => shell.kind.length === places && Math.abs(radius - 2.7) < 0.02,
  );
  expect(found).toBeDefined();
});

test('neither the order of kinds nor the side they start with changes the answer', () => {
  const trial = namedTrial(3, 1, 1e-3, false, 7);
  const one = askTrial(trial);
  const turned = [...trial.kinds].reverse().map((kind) => ({
    ...kind,
    sides: [...kind.sides.slice(1), kind.sides[0] as number],
  }));
  const other = ask(turned);
  expect(other.shapes.map(({ radius }) => radius)).toEqual(one.shapes.map(({ radius }) => radius));
  expect(other.shapes.map(({ probability }) => probability)).toEqual(
    one.shapes.map(({ probability }) => probability),
  );
  const ids = (kinds: readonly Kind[], answer: Identification): string[] =>
    Array.from(answer.shapes[0]?.shell.kind ?? [], (k) => (kinds[k] as Kind).id);
  expect(ids(turned, other)).toEqual(ids(trial.kinds, one));
  const turn = other.shapes[0]?.shell.turn[0] as number;
  expect((turn + 1) % 3).toBe(one.shapes[0]?.shell.turn[0]);
});

test('a joined group settles which of four twins it is', () => {
  const kinds = kindsOf(named(4, 0), 5e-4, 1);
  const { shapes } = ask(kinds);
  const runs = shapes.map(({ shell }) =>
    starRuns(
      shell,
      kinds.map((_, k) => k),
    ),
  );
  const texts = runs.map((own) => own.map((run) => run.join()));
  const at = texts.findIndex((own, i) =>
    own.some((run) => texts.every((others, j) => j === i || !others.includes(run))),
  );
  const sign = (texts[at] as string[]).find((run) =>
    texts.every((others, j) => j === at || !others.includes(run)),
  ) as string;
  const around = sign.split(',').map((k) => (kinds[Number(k)] as Kind).id);
  const settled = ask(kinds, [{ around, closed: true, count: 1 }]);
  expect(settled.shapes[0]?.probability).toBeGreaterThan(0.9);
  expect(settled.shapes[0]?.misfitGroups).toEqual([]);
  const family = kinds.map((_, k) => k);
  const found = starRuns(settled.shapes[0]?.shell as NetShell['shell'], family);
  expect(found.map((run) => run.join())).toContain(sign);
});

test('counts with surplus and shortages do not mislead it', () => {
  const trial = namedTrial(5, 0, 1e-3, true, 11);
  const random = seededRandom(4);
  const kinds = trial.kinds.map((kind) => ({
    ...kind,
    good: Math.round(kind.good * (0.85 + 0.5 * random.uniform())),
  }));
  expect(judge(trial, ask(kinds)).right).toBe(true);
});

test('counts tell a ball of 20 equal triangles from the octahedron and the tetrahedron', () => {
  const [kind] = kindsOf(named(1, 0), 1e-3, 1) as [Kind];
  const alone = ask([kind]).shapes.map(({ shell }) => shell.kind.length);
  expect([...alone].sort((a, b) => a - b)).toEqual([4, 8, 20]);
  const counted = ask([{ ...kind, good: 8, counted: true }]);
  expect(counted.shapes[0]?.shell.kind.length).toBe(8);
  expect(counted.shapes[0]?.probability).toBeGreaterThan(0.8);
});

test('a side read 10 mm wrong is named, with what it should be', () => {
  const kinds = kindsOf(named(4, 0), 5e-4, 9);
  const true2 = named(4, 0).kinds[2]?.sides[1] as number;
  const wrong = kinds.map((kind, k) =>
    k === 2 ? { ...kind, sides: kind.sides.map((s, i) => (i === 1 ? s + 0.01 : s)) } : kind,
  );
  const { shapes, settle } = ask(wrong);
  const [shape] = shapes;
  expect(shape?.shell.kind.length).toBe(320);
  expect(shape?.suspects[0]).toMatchObject({ kind: '3', side: 1 });
  expect(Math.abs((shape?.suspects[0]?.expected ?? 0) - true2)).toBeLessThan(0.003);
  expect(shapes.reduce((sum, { probability }) => sum + probability, 0)).toBeLessThan(0.9);
  expect(settle[0]).toContain('side 2 of kind 3');
});

test('an unknown allowance that all sides lack is borne, and the radius is then less sure', () => {
  const kinds = kindsOf(named(3, 1), 5e-4, 2);
  const short = kinds.map((kind) => ({ ...kind, sides: kind.sides.map((s) => s - 0.004) }));
  const { shapes } = identify({ kinds: short, groups: [], allowanceSd: 0.005 });
  const sure = ask(kinds).shapes[0];
  expect(shapes[0]?.shell.kind.length).toBe(260);
  expect(shapes[0]?.radiusSd).toBeGreaterThan(3 * (sure?.radiusSd ?? 0));
  expect(Math.abs((shapes[0]?.radius ?? 0) - 2.7)).toBeLessThan(4 * (shapes[0]?.radiusSd ?? 0));
});

test('sides known to a tenth of a millimetre and to two are both enough for three frequencies', () => {
  for (const sd of [1e-4, 2e-3]) {
    const [shape] = ask(kindsOf(named(3, 0), sd, 3)).shapes;
    expect(shape?.subdivision).toMatchObject({ b: 3, c: 0 });
  }
});

describe('when nothing closes', () => {
  test('there is no shape, and a side that meets nothing is named', () => {
    const random = seededRandom(3);
    const side = (): number => 0.8 + 0.4 * random.uniform();
    const kinds = Array.from({ length: 6 }, (_, i): Kind => {
      const sides = [side(), side(), side()];
      return { ...(kindsOf(named(1, 0), 1e-3, 1)[0] as Kind), id: `${i}`, sides };
    });
    const { shapes, reasons, settle } = ask(kinds);
    expect(shapes).toEqual([]);
    expect(settle).toEqual([]);
    expect(reasons[0]).toContain('no other side is as long as kind');
  });

  test('no kinds at all is said to be no kinds', () => {
    expect(ask([])).toMatchObject({ shapes: [], reasons: [expect.stringContaining('no kinds')] });
  });
});

test('a kind that is no polygon is refused at the door', () => {
  const [kind] = kindsOf(named(1, 0), 1e-3, 1) as [Kind];
  expect(() => ask([{ ...kind, sides: [1, 1, 3] }])).toThrow(RangeError);
  expect(() => ask([{ ...kind, sides: [1, Number.NaN, 1] }])).toThrow(RangeError);
  expect(() => ask([{ ...kind, sideSds: [0.001, 0.001] }])).toThrow(RangeError);
});

test('it can be watched and stopped', () => {
  const { kinds } = namedTrial(6, 0, 1e-3, false, 1);
  let calls = 0;
  const answer = identify({ kinds, groups: [] }, { shouldStop: () => ++calls > 5 });
  expect(calls).toBeLessThan(30);
  expect(answer.complete).toBe(false);
  const placed: number[] = [];
  identify({ kinds, groups: [] }, { onProgress: (progress) => placed.push(progress.placed) });
  expect(Math.max(...placed)).toBeGreaterThanOrEqual(720);
});

test('a pile of many times what the only net takes says that a larger net was not found', () => {
  const [kind] = kindsOf(named(1, 0), 1e-3, 1) as [Kind];
  const lone = { ...kind, sides: [1.1121895927, 1.0890419269, 1.1155927058], counted: true };
  const few = ask([{ ...lone, good: 4 }]);
  const many = ask([{ ...lone, good: 60 }]);
  expect(few.shapes[0]?.probability).toBeGreaterThan(0.9);
  expect(many.shapes[0]?.probability).toBeLessThan(0.1);
});
