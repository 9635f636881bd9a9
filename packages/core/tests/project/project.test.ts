import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { describeFault } from '../../src/measure/fault.ts';
import { jsonFaults } from '../../src/project/json.ts';
import { type Migration, migrate } from '../../src/project/migrate.ts';
import {
  looksLikeProject,
  MAX_PROJECT_CHARACTERS,
  projectFrom,
  readProject,
  writeProject,
} from '../../src/project/project.ts';
import { type Project, projectJsonSchema } from '../../src/project/schema.ts';

const SEED = 7;
const faultsOf = (text: string): string[] => {
  const read = readProject(text);
  return read.ok ? [] : read.faults.map(describeFault);
};
const project = (text: string): Project => {
  const read = readProject(text);
  if (!read.ok) throw new Error(read.faults.map(describeFault).join('\n'));
  return read.value;
};
const kindRow = {
  id: '1',
  marks: ['R'],
  sides: [0.928, 0.928, 1.082],
  good: 58,
  repair: 2,
  scrap: 1,
  mass: 9.6,
  laps: null,
};
const design = {
  shellraise: 1,
  title: 'Shell of the lower field',
  pile: {
    measuredAlong: 'holes',
    hubAllowance: 0.004,
    readingSd: 0.001,
    kinds: [
      kindRow,
      { id: '2', sides: [1.082, 1.082, 1.082] },
      { id: '3L', sides: [0.9, 1, 1.1] },
      { id: '3R', sides: [0.9, 1.1, 1] },
    ],
    readings: [
      {
        tag: '017',
        mark: 'R',
        sides: [0.9282, 0.9279, 1.0816],
        seenFrom: 'outside',
        condition: 'good',
      },
    ],
    groups: [{ around: ['1', '1', '2', '3L', '3R', '2'], count: 6 }],
    hardware: [
      {
        item: 'bolt',
        thread: '5/16-18',
        length: 0.0254,
        grade: 'SAE J429 Gr 5',
        count: 600,
        state: 'used',
        price: 0.21,
        pack: 50,
      },
    ],
  },
};

describe('a project file', () => {
  test('is read as the design writes it, with defaults for what is left out', () => {
    const read = project(JSON.stringify(design));
    expect(read.pile.kinds[0]).toEqual(kindRow);
    expect(read.pile.groups).toEqual(design.pile.groups);
    expect(read.pile.hardware).toEqual(design.pile.hardware);
    expect(project('{"shellraise":1,"pile":{}}')).toEqual({
      shellraise: 1,
      title: '',
      pile: {
        measuredAlong: 'hubs',
        hubAllowance: null,
        readingSd: 0.001,
        kinds: [],
        readings: [],
        groups: [],
        hardware: [],
      },
    });
  });

  test('with a byte order mark is read', () =>
    expect(project('\ufeff{"shellraise":1,"pile":{}}').title).toBe(''));

  test('is written so that reading gives it back, and the same whatever the order of its keys', () => {
    const read = project(JSON.stringify(design));
    const text = writeProject(read);
    expect(project(text)).toEqual(read);
    const backwards = {
      ...read,
      pile: Object.fromEntries(Object.entries(read.pile).reverse()),
    } as Project;
    expect(writeProject(backwards)).toBe(text);
    expect(text).toContain('\n      { "id": "2", "marks": [], "sides": [1.082, 1.082, 1.082] },\n');
    expect(text.endsWith('}\n')).toBe(true);
  });

  test(`round trips for any sides, titles and notes (seed ${SEED})`, () => {
    const side = fc.double({ min: 1, max: 1.9, noNaN: true });
    const row = fc.record({
      id: fc.uuid(),
      marks: fc.array(fc.constantFrom('R', 'ü', '½')),
      sides: fc.array(side, { minLength: 3, maxLength: 6 }),
    });
    fc.assert(
      fc.property(
        fc.uniqueArray(row, { selector: (r) => r.id, maxLength: 6 }),
        fc.string({ unit: 'binary', maxLength: 30 }),
        (kinds, title) => {
          const read = project(
            JSON.stringify({ shellraise: 1, title, notes: title, pile: { kinds } }),
          );
          expect(project(writeProject(read))).toEqual(read);
          expect(read.title).toBe(title);
        },
      ),
      { seed: SEED },
    );
  });

  test('that does not fit the schema is never written', () => {
    const read = project(JSON.stringify(design));
    expect(() => writeProject({ ...read, title: 'x'.repeat(201) })).toThrow();
  });
});

describe('a text that is no project file is refused', () => {
  test.each([
    ['', 'file line 1, column 1: found the end of the text, expected a value'],
    ['{\n  "a": 1,\n}', 'file line 3, column 1: found "}", expected a key in double quotes'],
    ['[1 2]', 'file line 1, column 4: found "2]", expected a comma or ]'],
    ['{"a" 1}', 'file line 1, column 6: found "1}", expected a colon'],
    ['{"a":1 "b":2}', 'file line 1, column 8: found "\\"b\\":2}", expected a comma or }'],
    [
      '{"a":"b\n"}',
      'file line 1, column 6: found "\\"b\\n\\"}", expected a string closed on its line',
    ],
    ['{"a":01}', 'file line 1, column 7: found "1}", expected a comma or }'],
    [
      '{"a":"\\x"}',
      'file line 1, column 6: found "\\"\\\\x\\"}", expected a string closed on its line',
    ],
    ['{"a":nil}', 'file line 1, column 6: found "nil}", expected a value'],
    ['{} {}', 'file line 1, column 4: found "{}", expected the end of the text'],
    [
      '{"shellraise":1,"pile":{},"p\\u0069le":{}}',
      'file line 1, column 27: found the key "pile" a second time in one object, expected every key once',
    ],
    ['[]', 'file: found [], expected a project file: an object { … }'],
    ['{"pile":{}}', 'shellraise: found nothing, expected the version of the project file, 1'],
    [
      '{"shellraise":"1","pile":{}}',
      'shellraise: found "1", expected the version of the project file, 1',
    ],
    [
      '{"shellraise":0,"pile":{}}',
      'shellraise: found 0, expected the version of the project file, 1',
    ],
    ['{"shellraise":1}', 'pile: found nothing, expected an object { … }'],
    [
      '{"shellraise":1,"pile":{},"plie":2}',
      /^plie: found an unknown key, expected one of shellraise, title, notes, pile, takeoff, wishes, places/,
    ],
    ['{"shellraise":1,"pile":{},"title":3}', 'title: found 3, expected text'],
    [
      '{"shellraise":1,"pile":{},"takeoff":{"baseBolt":{"thread":"M99","length":0.02}}}',
      'takeoff.baseBolt.thread: found "M99", expected a metric thread such as M8 or M8x1, size 3 to 36',
    ],
    [
      '{"shellraise":1,"pile":{},"takeoff":{"seamBolt":{"thread":"M8","length":25}}}',
      'takeoff.seamBolt.length: found 25, expected a number of at most 1',
    ],
    [`${'['.repeat(99)}`, /nesting of at most 64/],
  ])('%s', (text, expected) => {
    const faults = faultsOf(text);
    expect(faults).toHaveLength(1);
    if (typeof expected === 'string') expect(faults[0]).toBe(expected);
    else expect(faults[0]).toMatch(expected);
  });

  test('of a newer version, whatever else it holds, with the one fault that matters', () => {
    expect(faultsOf('{"shellraise":2,"pile":7,"new":1}')).toEqual([
      'shellraise: found version 2, expected version 1 or older; a newer Shellraise wrote this file, and it was left untouched',
    ]);
  });

  test('of 50 MB, by its length, before anything is parsed', () => {
    const start = performance.now();
    expect(faultsOf('['.repeat(50 * 1024 * 1024))).toEqual([
      `file: found 52428800 characters, expected at most ${MAX_PROJECT_CHARACTERS}`,
    ]);
    expect(performance.now() - start).toBeLessThan(1000);
  });

  test('with a string of millions of characters, without running out of stack', () => {
    expect(faultsOf(`{"shellraise":1,"notes":"${'x\\n'.repeat(2e6)}","pile":{}}`)[0]).toContain(
      'at most 100000 characters',
    );
  });
});

test(`the scanner and JSON.parse agree on what is JSON (seed ${SEED})`, () => {
  const agree = (text: string): void => {
    let parses = true;
    try {
      JSON.parse(text);
    } catch {
      parses = false;
    }
    expect(jsonFaults(text).some((fault) => fault.expected !== 'every key once')).toBe(!parses);
  };
  fc.assert(fc.property(fc.json(), agree), { seed: SEED, numRuns: 300 });
  const scraps = fc.array(
    fc.constantFrom(
      ...'{}[],:"\\ \t\n01-.eEu',
      'true',
      'nul',
      '"a"',
      '\\u00e9',
      '\u0001',
      '\ufeff',
    ),
    { maxLength: 9 },
  );
  fc.assert(
    fc.property(scraps, (parts) => agree(parts.join(''))),
    { seed: SEED, numRuns: 3000 },
  );
  fc.assert(
    fc.property(fc.json(), fc.nat(), (text, at) =>
      agree(text.slice(0, at % text.length) + text.slice((at % text.length) + 1)),
    ),
    { seed: SEED, numRuns: 1000 },
  );
});

describe('migration', () => {
  const steps = new Map<number, Migration>([
    [1, (raw) => ({ ...raw, name: 'Old' })],
    [2, (raw) => ({ ...raw, pile: {} })],
  ]);
  test('goes up one version at a time and stamps each', () => {
    expect(migrate({ shellraise: 1 }, 1, 3, steps)).toEqual({
      shellraise: 3,
      name: 'Old',
      pile: {},
    });
    expect(migrate({ shellraise: 2 }, 2, 3, steps)).toEqual({ shellraise: 3, pile: {} });
    expect(migrate({ shellraise: 1 }, 1, 1)).toEqual({ shellraise: 1 });
  });
  test('throws where a step is missing', () =>
    expect(() => migrate({}, 3, 4, steps)).toThrow('version 3'));
});

test('the JSON Schema lists every section and lets defaults be left out', () => {
  const schema = projectJsonSchema() as {
    required: string[];
    properties: Record<string, { required?: string[]; properties?: Record<string, unknown> }>;
  };
  expect(schema.required).toEqual(['shellraise', 'pile']);
  expect(schema.properties.pile?.required).toBeUndefined();
  expect(Object.keys(schema.properties.pile?.properties ?? {})).toContain('hubAllowance');
  expect(JSON.stringify(schema)).toContain('"minimum":0.05');
});

test('parsed JSON is read like its text', () => {
  expect(projectFrom(design)).toEqual(readProject(JSON.stringify(design)));
});

describe('a file that is meant as a project', () => {
  test('begins with a brace, whatever its name', () => {
    expect(looksLikeProject('heap.csv', ' \n{ "shellraise": 1 }')).toBe(true);
    expect(looksLikeProject('heap', '[1]')).toBe(true);
  });

  test('goes by its name where it begins otherwise, or is empty', () => {
    expect(looksLikeProject('heap.json', 'shellraise')).toBe(true);
    expect(looksLikeProject('heap.txt', 'tag,side1')).toBe(false);
    expect(looksLikeProject('heap.csv', '')).toBe(false);
    expect(looksLikeProject('heap', '')).toBe(true);
  });
});
