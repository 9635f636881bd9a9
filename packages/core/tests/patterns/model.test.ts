import { describe, expect, it } from 'vitest';
import type { NamedFile } from '../../src/papers/zip.ts';
import { modelOf } from '../../src/patterns/model.ts';
import {
  defaultModel,
  type ModelGround,
  type ModelRefused,
  type ModelSettings,
  type ModelSort,
} from '../../src/patterns/model-ask.ts';
import { coursesOf } from '../../src/shell/courses.ts';
import { dome } from './fixtures.ts';

const shell = dome(2);
const { course, numbers } = coursesOf(shell);
const kinds = ['1', '2'];
const ground: ModelGround = {
  shell,
  course,
  faces: numbers.map((number, p) => ({
    number,
    kind: kinds[shell.kind[p] as number] ?? '',
    mark: '',
  })),
  kinds,
  leftOut: [],
  title: 'Barn',
  lengths: 'metric',
  facts: (sheet) => ({ project: 'Barn', sheet, date: '2026-05-01', assumes: 'Nothing.' }),
};
const ask = (sort: ModelSort, more: Partial<ModelSettings> = {}, on: Partial<ModelGround> = {}) =>
  modelOf(sort, { ...ground, ...on }, { ...defaultModel, scale: 25, wall: 3, ...more });
const no = (sort: ModelSort, more: Partial<ModelSettings>): ModelRefused => {
  const made = ask(sort, more);
  if (made.ok) throw new Error('it was made');
  return made;
};
/** Name, length and a sum of all bytes in their order. */
const digest = ({ name, text }: NamedFile): string => {
  const bytes = typeof text === 'string' ? new TextEncoder().encode(text) : text;
  return `${name} ${bytes.length} ${bytes.reduce((sum, byte) => (31 * sum + byte) % 4294967291, 7)}`;
};
const everyPlace = Array.from(shell.kind.keys());

describe('a model', () => {
  it.each([
    ['net', /^net(-\d+)?\.svg$/],
    ['strips', /^strips(-\d+)?\.svg$/],
    ['cut', /^cut(-\d+)?\.(svg|dxf)$/],
    ['print', /^(shell|person)\.(stl|3mf|glb|svg)$/],
    ['full-size', /^(panel-\d|hub-plate-\d)\.(svg|dxf)$/],
    ['snap', /^(bed(-\d+)?|panel-\d|hub-\d)\.(stl|3mf|svg)$/],
  ] as const)('as %s is files with names of its own, the same bytes each time', (sort, names) => {
    const made = ask(sort);
    if (!made.ok) throw new Error(made.expected);
    expect(made.files.length).toBeGreaterThan(0);
    for (const { name, text } of made.files) {
      expect(name).toMatch(names);
      expect(text.length).toBeGreaterThan(80);
    }
    expect(new Set(made.files.map(({ name }) => name)).size).toBe(made.files.length);
    const again = ask(sort);
    if (!again.ok) throw new Error(again.expected);
    expect(again.files.map(digest)).toEqual(made.files.map(digest));
  });

  it('is refused with the setting and the nearest that works, which then does', () => {
    const cases = [
      ['net', { scale: 2 }],
      ['print', { scale: 10 }],
      ['cut', { scale: 2 }],
      ['snap', { scale: 2 }],
      ['snap', { scale: 120 }],
    ] as const;
    for (const [sort, more] of cases) {
      const { setting, expected } = no(sort, more);
      expect(['scale', 'bed', 'sheet']).toContain(setting);
      const nearest = Number(
        /(?:works|fits) (?:is|from 1 :) ([\d.]+)|from 1 : ([\d.]+)/
          .exec(expected)
          ?.slice(1)
          .find(Boolean),
      );
      expect(nearest).toBeGreaterThan(0);
      expect(ask(sort, { scale: nearest }).ok).toBe(true);
    }
  });

  it('is refused where a setting is none', () => {
    for (const sort of ['net', 'cut', 'print', 'snap'] as const)
      for (const scale of [0, -20, Number.NaN, Infinity])
        expect(no(sort, { scale }).setting).toBe('scale');
    expect(no('cut', { kerf: -0.1 })).toMatchObject({
      setting: 'kerf',
      expected: expect.stringContaining('the nearest that works is 0 mm'),
    });
    expect(no('cut', { thickness: 0 }).setting).toBe('thickness');
    expect(no('cut', { thickness: 300 }).setting).toBe('thickness');
    expect(no('cut', { joint: 'slot', kerf: 3 }).setting).toBe('kerf');
    expect(no('cut', { joint: 'slot', snap: true }).setting).toBe('snap');
    expect(no('print', { wall: -1 }).setting).toBe('wall');
    expect(no('snap', { wall: 1 })).toMatchObject({
      setting: 'wall',
      expected: expect.stringContaining('1.6 mm'),
    });
    expect(no('snap', { clearance: -0.2 }).setting).toBe('clearance');
    expect(no('snap', { peg: -4 }).setting).toBe('peg');
    expect(no('snap', { bed: [220, 220, 4] }).expected).toMatch(/lower than/);
    expect(no('snap', { bed: [20, 20, 20] }).expected).toMatch(/at no scale/);
    expect(no('full-size', { flange: -1 }).setting).toBe('flange');
    expect(no('full-size', { hole: 0 }).setting).toBe('hole');
    expect(no('full-size', { plate: 20 })).toMatchObject({
      setting: 'plate',
      expected: expect.stringContaining('more than 27 mm'),
    });
    expect(ask('full-size', { plate: 27.1 }).ok).toBe(true);
    expect(no('full-size', { floor: 1e5 }).setting).toBe('floor');
    for (const sort of ['net', 'snap', 'full-size'] as const)
      expect(ask(sort, {}, { leftOut: everyPlace })).toMatchObject({ ok: false, setting: 'open' });
  });
});
