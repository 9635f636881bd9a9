import { describe, expect, it } from 'vitest';
import { raiseTasks } from '../../src/crew/raise-tasks.ts';
import { crewSection } from '../../src/crew/schema.ts';
import { crewBook } from '../../src/papers/crew-book/book.ts';
import type { CrewBookContent } from '../../src/papers/crew-book/content.ts';
import { pieceWords } from '../../src/papers/crew-book/content.ts';
import { jointSheets } from '../../src/papers/crew-book/joint-sheets.ts';
import { boltWords } from '../../src/papers/crew-book/stage-cards.ts';
import { type Drawing, flatItems } from '../../src/papers/drawing.ts';
import { noGear } from '../../src/raise/gear.ts';
import { plainBrief, planRaising } from '../../src/raise/order/raise.ts';
import { outside, overlaps, smallestType } from './sheet-checks.ts';
import { standing } from './standing.ts';

const { shell, kinds, numbers } = standing(
  { solid: 'icosahedron', b: 2, c: 0, division: 'equal chords' },
  -0.1,
  2.4,
);
const read = planRaising(plainBrief(shell), { seed: 1, tries: 1 });
if (!read.ok) throw new Error('the small shell has an order');
const plan = read.value;
const crew = crewSection.parse({
  site: { latitudeDeg: -41.25, longitudeDeg: 174.78125, utcOffsetHours: 13 },
  people: [
    { name: 'Żaneta Łoś', leads: true, climbs: true },
    { name: 'Иван 穹', sure: true },
  ],
});
const content: CrewBookContent = {
  shell,
  numbers,
  kinds,
  leftOut: [],
  plan,
  threadOf: () => '5/16-18',
  winds: plan.stages.slice(1).map(({ number }) => ({
    stage: number,
    stopWork: 9,
    leave: number % 2 === 0 ? 14 : null,
    unknown: ['anchor'],
    propsHold: false,
  })),
  tasks: raiseTasks({
    shell,
    numbers,
    plan,
    holes: () => 4,
    massOf: () => null,
    gear: noGear,
    crew,
    winds: [],
    anchors: null,
  }).tasks,
  crew,
  painted: false,
};
const facts = {
  project: 'Купол у пруда 穹頂 🙂, 24 ft',
  sheet: 'Crew book',
  date: '2026-05-14',
  assumes: 'Sphere of radius 2.400 m, give or take 0.4 mm.',
};
const book = crewBook(content, facts, { paper: 'A4', lengths: 'metric' });
const wordsOf = (sheets: readonly Drawing[]): string =>
  sheets
    .flatMap(({ items }) => flatItems(items))
    .flatMap((item) => (item.type === 'text' ? [item.text] : []))
    .join(' ');
const named = (name: string): Drawing[] => book.filter(({ title }) => title.includes(name));

describe('the crew book', () => {
  it.each([
    ['A4', 'metric'],
    ['Letter', 'inch'],
  ] as const)(
    'on %s in %s has no word that is cut, overlaps or leaves the sheet',
    (paper, lengths) => {
      const sheets = paper === 'A4' ? book : crewBook(content, facts, { paper, lengths });
      for (const sheet of sheets) {
        expect(overlaps(sheet), sheet.title).toEqual([]);
        expect(outside(sheet), sheet.title).toEqual([]);
      }
      expect(wordsOf(sheets)).not.toContain('…');
    },
  );

  it('has a card for each stage with its number, what stands, and the wind to stop at', () => {
    for (const { number, placed } of plan.stages) {
      const said = wordsOf(named(`Stage ${number} of ${plan.stages.length}`));
      expect(said).toContain(`${placed.length} of ${numbers.length} stand`);
      expect(said).toContain(
        number === 1 ? 'Wind to stop work at: NOT KNOWN' : 'STOP WORK at gusts of 9.0 m/s',
      );
    }
  });

  it('names every place on the card of the stage in which it goes up', () => {
    for (const { number, lifts } of plan.stages) {
      const said = wordsOf(named(`Stage ${number} of ${plan.stages.length}`));
      for (const { places } of lifts) {
        const [first] = places.map((place) => numbers[place] as string).sort();
        expect(said, `stage ${number}`).toContain(first);
      }
    }
  });

  it('is read aloud in about two minutes, says STOP first, and tells left from right or that none is', () => {
    const said = wordsOf(named('Briefing'));
    expect(said).toContain('STOP: anybody says it');
    expect(said).toContain('No kind here has a hand');
    // 120 to 150 words a minute are read aloud, from memory; title block and caution are not read.
    expect(said.split(' ').length).toBeLessThan(420);
  });

  it('has every course with every place and its neighbours', () => {
    const said = wordsOf(named('Course'));
    for (const number of numbers) expect(said).toContain(number);
  });

  it('tells where it is, in degrees and minutes, with south and east', () => {
    const said = wordsOf(named('Emergency'));
    expect(said).toContain('41.25000° S');
    expect(said).toContain('174° 46.875′ E');
    expect(said).toContain('emergency number here');
  });

  it('leaves room to write the coordinates in where nobody entered them', () => {
    const sheets = crewBook({ ...content, crew: { ...crew, site: null } }, facts, {
      paper: 'A4',
      lengths: 'metric',
    });
    expect(wordsOf(sheets.filter(({ title }) => title.includes('Emergency')))).toContain(
      'latitude',
    );
  });

  it('lists for the night only the stages that may be left', () => {
    const said = wordsOf(named('Close-down'));
    const stops = plan.stages.filter(({ stopPoint }) => stopPoint);
    expect(said.match(/panels? up/g)?.length ?? 0).toBe(stops.length);
  });
});

describe('joint pictures', () => {
  const sheets = jointSheets(
    { ...content, bolts: () => 4 },
    { ...facts, sheet: 'Joint pictures' },
    { paper: 'Letter', lengths: 'inch' },
  );

  it('show every place once, four to a sheet, in the order of work', () => {
    expect(sheets.length).toBe(Math.ceil(numbers.length / 4));
    const order = sheets.flatMap(({ items }) =>
      items.flatMap((item) => (item.type === 'group' && item.data?.place ? [item.data.place] : [])),
    );
    expect(order).toEqual(
      plan.stages.flatMap(({ lifts }) => lifts.flatMap(({ places }) => places.map(String))),
    );
  });

  it('stay on their sheet, in type that can be read', () => {
    for (const sheet of sheets) {
      expect(outside(sheet), sheet.title).toEqual([]);
      expect(smallestType(sheet)).toBeGreaterThan(1);
    }
  });
});

describe('words of a card', () => {
  it('shorten neighbours of one course, not others', () => {
    expect(pieceWords([0, 1, 2, 3], ['1-01', '1-02', '1-03', '2-04'])).toBe(
      '1-01 to 1-03 and 2-04',
    );
    expect(pieceWords([0, 1], ['1-01', '1-02'])).toBe('1-01 and 1-02');
  });

  it('say how many bolts hold a piece before it is let go', () => {
    expect(boltWords([])).toBe('on the ground');
    expect(boltWords([2])).toBe('2 in the seam');
    expect(boltWords([2, 2])).toBe('2 each, 2 seams');
    expect(boltWords([2, 3])).toBe('2 to 3 each, 2 seams');
    expect(boltWords([null, 3])).toBe('2 or more each, 2 seams');
  });
});
