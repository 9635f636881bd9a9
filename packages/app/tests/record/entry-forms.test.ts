import { describe, expect, it } from 'vitest';
import {
  type EntryUnits,
  entryFormOf,
  entryForms,
  readEntryForm,
} from '../../src/sheets/record/entry-forms.ts';
import { recordingWords } from '../../src/words/recording.ts';

const metric: EntryUnits = { length: 'm', speed: 'm/s', force: 'N' };
const inch: EntryUnits = { length: 'ft', speed: 'mph', force: 'lbf' };
const what = (...of: Parameters<typeof readEntryForm>) => {
  const read = readEntryForm(...of);
  return read.ok ? read.what : read.at;
};

describe('a form', () => {
  it('makes the entry that the record wants, in SI, whatever units people type', () => {
    expect(what('person', { person: ' Bo ', here: 'out' }, metric)).toEqual({
      kind: 'person',
      person: 'Bo',
      here: false,
    });
    expect(what('weather', { gust: '9', sky: 'rain', temperatureC: '−2,5' }, metric)).toEqual({
      kind: 'weather',
      gust: 9,
      sky: 'rain',
      temperatureC: -2.5,
    });
    expect(what('weather', { gust: '20' }, inch)).toMatchObject({ gust: 8.9408, sky: 'dry' });
    expect(what('survey', { hub: '4', length: '-12 mm' }, metric)).toEqual({
      kind: 'surveyed',
      reading: { what: 'level', hub: 4, height: -0.012 },
    });
    expect(what('survey', { what: 'chord', hub: '4', to: '5', length: '1.1' }, metric)).toEqual({
      kind: 'surveyed',
      reading: { what: 'chord', from: 4, to: 5, length: 1.1 },
    });
    expect(what('pull', { anchor: '2', pull: '2.5 kN', held: 'did not hold' }, inch)).toEqual({
      kind: 'anchor pulled',
      anchor: 2,
      pull: 2500,
      held: false,
    });
    const bolts = { thread: '5/16-18', length: '1 in', count: '120' };
    expect(what('bolts', bolts, { ...metric, length: 'mm' })).toEqual({
      kind: 'bolts counted',
      thread: '5/16-18',
      length: 0.0254,
      count: 120,
    });
    expect(
      what('note', { text: 'Crack.' }, metric, { about: { what: 'place', name: '1-01' } }),
    ).toEqual({ kind: 'note', text: 'Crack.', about: { what: 'place', name: '1-01' } });
  });

  it('names the fields that can’t be read, and refuses what is out of bounds', () => {
    expect(what('person', {}, metric)).toEqual(['person']);
    expect(what('anchor', { anchor: '2.5' }, metric)).toEqual(['anchor']);
    expect(what('weather', { gust: 'much' }, metric)).toEqual(['gust']);
    expect(what('weather', { gust: '101' }, metric)).toEqual([]);
    expect(what('survey', { what: 'chord', hub: '4', length: '1' }, metric)).toEqual([]);
  });

  it('has words for every field, choice and refusal', () => {
    const { field, choice, of, why, refused } = recordingWords.forms;
    for (const form of entryForms) {
      expect([of[form], why[form], refused[form]].every((text) => text.length > 3)).toBe(true);
      for (const { key, sort } of entryFormOf[form].fields) {
        expect(
          [`${form} ${key}`, key].some((name) => name in field),
          `${form} ${key}`,
        ).toBe(true);
        if (typeof sort !== 'string')
          for (const one of sort) expect(one in choice || /^[a-z ]+$/.test(one), one).toBe(true);
      }
    }
  });
});
