import { expect, test } from 'vitest';
import { identify } from '../../src/identify/identify.ts';
import type { Shape } from '../../src/identify/shape.ts';
import { againFirst, apartness, reasonsFor, settling } from '../../src/identify/telling.ts';
import { shellOfNet } from '../../src/nets/kinds.ts';
import { mixedNet } from '../../src/nets/mixed.ts';
import type { Kind } from '../../src/pile/kind.ts';
import { kindWith, readKinds, truthOf } from './piles.ts';

const nameOf = (family: number): string => `K${family}`;
const tetrahedron = truthOf(1, 0, 'tetrahedron').shell;
const octahedron = truthOf(1, 0, 'octahedron').shell;
const nothing = { nets: [], complete: true, deepest: 0, grown: null, ends: [] };
const question = (...kinds: Kind[]) => ({ kinds, groups: [] });

test('a shape that stands alone needs nothing to tell it, nor anything to settle', () => {
  expect(apartness([octahedron], [0], nameOf)).toEqual(['']);
  expect(settling([octahedron], [0], nameOf, true)).toEqual([]);
});

test('two shapes are told by a run of kinds that only one has around a hub', () => {
  const apart = apartness([tetrahedron, octahedron], [0], nameOf);
  expect(apart[0]).toContain('the kinds K0 K0 K0');
  expect(apart[1]).toContain('the kinds K0 K0 K0 K0');
  expect(apart[1]).toContain('anticlockwise seen from outside');
});

test('a shape whose every run occurs in the others too is not told by a run', () => {
  for (const told of apartness([octahedron, octahedron], [0], nameOf)) {
    expect(told).not.toBe('');
    expect(told).not.toContain('only here');
  }
});

test('what settles it names the run to look for and the shape it means, then whether tape helps', () => {
  const level = settling([tetrahedron, octahedron], [0], nameOf, true);
  expect(level).toHaveLength(3);
  expect(level[0]).toMatch(/run K0 K0 K0 .*then it is shape 1$/);
  expect(level[1]).toMatch(/run K0 K0 K0 K0 .*then it is shape 2$/);
  expect(level[2]).toContain('measuring again will not tell them apart');
  const uneven = settling([tetrahedron, octahedron], [0], nameOf, false);
  expect(uneven[2]).toContain('measure the sides of each kind again');
});

test('the run that tells each twin of (4, 0) occurs in it alone: each can be settled by it', () => {
  const kinds = readKinds(truthOf(4, 0), 2e-4, 3);
  const { shapes } = identify({ kinds, groups: [] });
  const told = shapes.filter(({ apart }) => apart.includes('only here'));
  expect(told).toHaveLength(3);
  for (const shape of told) {
    const around = (shape.apart.split('the kinds ')[1] as string).split(' ');
    const settled = identify({ kinds, groups: [{ around, closed: true, count: 1 }] });
    expect(settled.shapes[0]?.apart).toBe(shape.apart);
    expect(settled.shapes[0]?.probability).toBeGreaterThan(0.9);
    expect(settled.shapes[0]?.misfitGroups).toEqual([]);
    expect(settled.shapes.slice(1).every(({ misfitGroups }) => misfitGroups.length === 1)).toBe(
      true,
    );
  }
});

test('a suspect side is to be measured first: counted from 1, in millimetres', () => {
  const shape = { suspects: [{ kind: '3L', side: 1, measured: 1.138, expected: 1.1281 }] };
  const [line] = againFirst(shape as unknown as Shape);
  expect(line).toBe(
    'measure side 2 of kind 3L again, on more than one panel: 1138 mm does not fit, 1128 mm hub to hub would',
  );
  expect(againFirst(undefined)).toEqual([]);
});

test('no kinds, no star, or a part that stood together: each is said', () => {
  expect(reasonsFor(question(), nothing)).toEqual([
    'there are no kinds: nothing has been measured yet',
  ]);
  const kind = kindWith('1', [1, 1, 1], 1e-3);
  expect(reasonsFor(question(kind), nothing)).toEqual([
    'no star of these kinds closes: no hub of three, four or five equal corners, at any radius',
  ]);
  const [far] = reasonsFor(question(kind), { ...nothing, deepest: 120 });
  expect(far).toContain('120 places');
  expect(reasonsFor(question(kind), { ...nothing, complete: false })).toHaveLength(2);
});

test('a side as long as no other is named by kind and number; within the noise it is not alone', () => {
  const kinds = [kindWith('1', [1, 1, 1.2], 1e-3), kindWith('2', [1, 1.3, 1.3], 1e-3)];
  expect(reasonsFor(question(...kinds), nothing)[0]).toContain('as long as kind 1 side 3:');
  const near = [kindWith('1', [1, 1, 1.2], 1e-3), kindWith('2', [1, 1.3, 1.205], 1e-3)];
  expect(reasonsFor(question(...near), nothing)[0]).toContain('as long as kind 2 side 2:');
});

test('when nothing closes the identification gives the reasons and nothing to settle', () => {
  const kinds = [kindWith('a', [1, 1.1, 1.7], 1e-3), kindWith('b', [0.6, 0.9, 1.25], 1e-3)];
  const { shapes, reasons, settle } = identify(question(...kinds));
  expect(shapes).toEqual([]);
  expect(settle).toEqual([]);
  expect(reasons[0]).toContain('no other side is as long as');
});

test('polygons of several kinds are told apart by runs too: cuboctahedron and its twin', () => {
  const truth = shellOfNet(mixedNet('cuboctahedron'), 2.7);
  const { shapes } = identify(question(...readKinds(truth, 2e-4, 1)));
  const twins = shapes.filter(({ shell }) => shell.kind.length === 14);
  expect(twins).toHaveLength(2);
  expect(twins.filter(({ apart }) => apart.includes('only here'))).toHaveLength(1);
});
