import { describe, expect, it } from 'vitest';
import { baseOf } from '../../src/ground/base.ts';
import { dossierSheets } from '../../src/papers/dossier-sheets.ts';
import { type Drawing, flatItems } from '../../src/papers/drawing.ts';
import { elsewhereSheets } from '../../src/papers/elsewhere-sheets.ts';
import { stacksOf } from '../../src/papers/packing.ts';
import type { PermitQuestion } from '../../src/papers/permit-question.ts';
import { permitSheets } from '../../src/papers/permit-sheets.ts';
import { shellMeasures } from '../../src/papers/shell-measures.ts';
import { projectCode } from '../../src/papers/small-project.ts';
import { storageSheets } from '../../src/papers/storage-sheets.ts';
import { looksLikeProject, readProject } from '../../src/project/project.ts';
import type { RaisingStage } from '../../src/raise/plan.ts';
import { dossier } from '../../src/record/dossier.ts';
import { inventedWeekend } from '../../src/record/invented.ts';
import { RecordLog } from '../../src/record/log.ts';
import { recordPlan } from '../../src/record/names.ts';
import { coursesOf } from '../../src/shell/courses.ts';
import { takeoffSection } from '../../src/takeoff/schema.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { readCodes } from './read-code.ts';
import { outside, overlaps } from './sheet-checks.ts';
import { standing } from './standing.ts';

const of = standing({ solid: 'icosahedron', b: 2, c: 0, division: 'equal chords' }, -0.1, 2);
const courses = coursesOf(of.shell);
const facts = {
  project: 'Купол у пруда 穹頂 🙂, 24 ft',
  sheet: 'Trial',
  date: '2026-05-14',
  assumes: 'Nothing.',
};
const textOf = (sheets: readonly Drawing[]): string =>
  sheets
    .flatMap(({ items }) => flatItems(items))
    .flatMap((item) => (item.type === 'text' ? [item.text] : []))
    .join(' ');
function sound(sheets: readonly Drawing[]): readonly Drawing[] {
  expect(sheets.flatMap(overlaps)).toEqual([]);
  expect(sheets.flatMap(outside)).toEqual([]);
  return sheets;
}
const base = baseOf(of.shell);
if (!base.ok) throw new Error('it has a base ring');
const places = of.numbers.map((_, p) => p);
const stage = (number: number, pieces: readonly (readonly number[])[]): RaisingStage => ({
  number,
  sort: number === 1 ? 'base' : 'course',
  course: number,
  pieces,
  lifts: [],
  placed: pieces.flat(),
  pass: { finger: [], snug: [], final: [] },
  props: [],
  propsIn: [],
  propsOut: [],
  stopPoint: true,
  overnight: { verdict: 'stands', gust: null, leave: null, why: '' },
  time: { ground: 0, up: 0, tighten: 0 },
});
const plan = {
  stages: [1, 2].map((course) =>
    stage(
      course,
      places.filter((p) => (courses.course[p] === 1) === (course === 1)).map((p) => [p]),
    ),
  ),
  assumed: ['Everything is dry.'],
};
const question: PermitQuestion = {
  shell: of.shell,
  leftOut: [],
  base: base.value,
  loads: {
    wind: { value: 300, sources: [], code: 'en 1991-1-4' },
    drag: { force: 3860, from: 'case B' },
    lift: { force: 11410, from: 'case C' },
    weight: 7250,
    unweighed: [],
    snow: [],
    flags: [{ text: 'flat ground', confirmation: 'common practice' }],
    assumed: ['No gust from a neighbour.'],
  },
  anchors: null,
  plan,
  winds: [{ stage: 1, stopWork: 11.6, leave: null, unknown: [], propsHold: false }],
  massOf: () => 10,
};

describe('the permit pack', () => {
  it('says on every sheet that it is no engineer’s approval', () => {
    for (const paper of ['A4', 'Letter'] as const)
      for (const lengths of ['metric', 'inch'] as const)
        for (const sheet of sound(permitSheets(question, facts, { paper, lengths })))
          expect(textOf([sheet])).toContain('no engineer’s approval');
  });

  it('gives loads, the wind of each stage, what is not confirmed, and what is not there', () => {
    const said = textOf(permitSheets(question, facts));
    for (const words of [
      '3.86 kN',
      '11.41 kN',
      '11.6 m/s',
      'flat ground (common practice)',
      'no anchor plan yet',
      'Insurer',
    ])
      expect(said.replace(/\s+/g, ' ')).toContain(words);
  });

  it('measures a shell: the floor of a ring of equal sides, mass and what nobody weighed', () => {
    const measures = shellMeasures({ ...question, massOf: (p) => (p === 0 ? null : 10) });
    const n = base.value.hubs.length;
    const r = base.value.hubs[0]?.radius ?? 0;
    expect(measures.unweighed).toBe(1);
    expect(measures.mass).toBe(10 * (of.numbers.length - 1));
    // A polygon of n corners on a circle, its hubs spread nearly alike.
    const floor = (n / 2) * r * r * Math.sin((2 * Math.PI) / n);
    expect(Math.abs(measures.floor / floor - 1)).toBeLessThan(0.02);
    expect(measures.width).toBeLessThanOrEqual(4 + 1e-9);
    expect(measures.skin).toBeLessThan(2 * Math.PI * 4 * 1.3);
    const less = shellMeasures({ ...question, leftOut: [0] });
    expect([measures.panels - less.panels, measures.seams - less.seams]).toEqual([1, seamsOf(0)]);
  });
});

const storage = {
  shell: of.shell,
  numbers: of.numbers,
  kinds: of.kinds,
  leftOut: [],
  plan,
  stacks: stacksOf(
    of.numbers.map((number, p) => ({
      number,
      kind: '1',
      course: courses.course[p] as number,
      mass: 9,
      size: [1, 1],
    })),
  ),
  vehicles: [{ name: 'фургон', length: 3, width: 1.7, height: 1.7, payload: 900 }],
  takeOff: takeOff(of.shell, of.kinds, [], takeoffSection.parse({})),
};

/** Seams of a place. */
const seamsOf = (place: number): number =>
  Array.from(of.shell.seams).filter((side) => of.shell.sidePlace[side] === place).length;

describe('the storage pack', () => {
  it('has every panel in the order backwards and in a stack, and the trips of the van', () => {
    for (const paper of ['A4', 'Letter'] as const) {
      const said = textOf(sound(storageSheets(storage, facts, { paper })));
      for (const number of of.numbers) expect(said).toContain(number);
      expect(said.indexOf('2: course 2')).toBeLessThan(said.indexOf('1: base ring'));
      expect(said).toContain('фургон: 1 trip, panels alone');
    }
  });

  it('asks for no panel where a place is left open', () => {
    const kinds = of.kinds.map((kind, k) => ({
      ...kind,
      counted: true,
      good: of.shell.kind.filter((at) => at === k).length - 1,
    }));
    const short = (leftOut: readonly number[]): number =>
      textOf(storageSheets({ ...storage, kinds, leftOut }, facts)).match(/1 short of/g)?.length ??
      0;
    const one = of.kinds.map((_, k) => of.shell.kind.indexOf(k));
    expect([short([]), short(one)]).toEqual([of.kinds.length, 0]);
  });

  it('carries kinds as a code that reads back as a project, by an independent reader', () => {
    const [kinds, net] = storageSheets(storage, facts).flatMap((sheet) => readCodes(sheet, 6));
    const read = readProject(kinds ?? '');
    expect(looksLikeProject('code.txt', kinds ?? '')).toBe(true);
    expect(read.ok && read.value.pile.kinds.map(({ id, sides }) => [id, sides])).toEqual(
      of.kinds.map(({ id, sides }) => [id, sides.map((side) => Math.round(side * 1e4) / 1e4)]),
    );
    expect(read.ok && read.value.title).toBe(facts.project);
    expect(net?.startsWith('SHELLRAISE NET 1:')).toBe(true);
  });

  it('refuses a code that is cut short or changed, and says where one is too big', () => {
    const code = projectCode(facts.project, of.kinds);
    for (const bad of [code.slice(0, -7), `${code.slice(0, 60)}A${code.slice(61)}`, `${code}?`]) {
      const read = readProject(bad);
      expect(read.ok).toBe(false);
    }
    const many = Array.from({ length: 250 }, (_, i) => ({
      ...(of.kinds[0] as (typeof of.kinds)[number]),
      id: `${i}`,
      sides: [1 + Math.sin(i), 1.5 + Math.cos(7 * i) / 9, 1.9 + Math.sin(5 * i) / 7],
    }));
    const said = textOf(sound(storageSheets({ ...storage, kinds: many }, facts)));
    expect(said).toMatch(/Too big for a code: \d+ characters, at most 4296 go into one/);
  });

  it('says what to do where there is no order of work', () => {
    expect(textOf(sound(storageSheets({ ...storage, plan: null }, facts)))).toContain(
      'Ask a rigger',
    );
  });

  it('comes out the same twice', () => {
    expect(JSON.stringify(storageSheets(storage, facts))).toBe(
      JSON.stringify(storageSheets(storage, facts)),
    );
  });
});

describe('a shell that stands elsewhere', () => {
  it('gets rows for as many courses as are asked for', () => {
    expect(textOf(sound(elsewhereSheets(facts, { courses: 20 })))).toContain('Number it');
    expect(() => elsewhereSheets(facts, { courses: 0 })).toThrow('0 courses: expected 1 to 40');
  });
});

describe('the dossier as sheets', () => {
  it('has every panel and seam of the record', () => {
    const names = recordPlan(of.shell, courses);
    const log = new RecordLog();
    log.addAll(inventedWeekend(names, { seed: 3, from: Date.UTC(2026, 5, 12, 7), bolts: () => 4 }));
    const made = dossier(log, names, { bolts: () => 4 });
    const said = textOf(
      sound(
        dossierSheets(made, facts, { timeText: (at) => new Date(at).toISOString().slice(0, 16) }),
      ),
    );
    for (const name of [...names.places, ...names.seams]) expect(said).toContain(name);
    expect(said).toContain('no proof that it is so');
    expect(said).toContain(`of ${names.places.length} panels in place`);
  });
});
