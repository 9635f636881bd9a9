import { describe, expect, it } from 'vitest';
import {
  readDegrees,
  readDrips,
  readFrequencies,
  readWeather,
  writeDrips,
  writeFrequency,
  writeWeather,
} from '../../src/sheets/fitout/typed.ts';

describe('frequencies as they are typed', () => {
  it('are read with their units and written back', () => {
    const read = readFrequencies('1420.40575 MHz; 10.7 GHz, 432MHz');
    expect(read).toEqual({ ok: true, value: [1_420_405_750, 10_700_000_000, 432_000_000] });
    expect(writeFrequency(1_420_405_750)).toBe('1420.40575 MHz');
    expect(writeFrequency(10_700_000_000)).toBe('10.7 GHz');
  });

  it.each(['1420', '1 kHz', '200 GHz', '12 m', Array(13).fill('1 GHz').join(', ')])(
    'are not read from %s',
    (text) => {
      expect(readFrequencies(text)).toEqual({ ok: false });
    },
  );

  it('are none where nothing is typed', () => {
    expect(readFrequencies(' ')).toEqual({ ok: true, value: [] });
  });
});

describe('a skyline as it is typed', () => {
  it('is numbers with commas between, none where nothing is typed', () => {
    expect(readDegrees('0, 4.5°; 12,3')).toEqual({ ok: true, value: [0, 4.5, 12, 3] });
    expect(readDegrees(' ')).toEqual({ ok: true, value: [] });
  });

  it.each(['low', '-1, 3', '3, 90', '1,,2', Array(361).fill('1').join()])(
    'is not read from %s',
    (text) => {
      expect(readDegrees(text)).toEqual({ ok: false });
    },
  );
});

describe('lines of numbers', () => {
  const hours = '2026-05-04T06:00, 9, 85, 0\n2026-05-04T07:00, 10 °C, 81 %, 0.4 mm';

  it('are hours of weather, back and forth', () => {
    const read = readWeather(hours);
    if (!read.ok) throw new Error('refused');
    expect(read.value[1]).toEqual({
      at: '2026-05-04T07:00',
      temperatureC: 10,
      humidity: 0.81,
      rainMm: 0.4,
    });
    expect(readWeather(writeWeather([...read.value]))).toEqual(read);
  });

  it('name the line that cannot be read', () => {
    expect(readWeather(`${hours}\n\nnoon, 9, 85`)).toEqual({ ok: false, line: 4 });
    expect(readWeather('2026-05-04T06:00, 9, 185, 0')).toEqual({ ok: false, line: 1 });
    expect(readDrips('4, 9, 80, 8\n4, 9, 80')).toEqual({ ok: false, line: 2 });
  });

  it('are readings for drips, back and forth', () => {
    const read = readDrips('4, 9, 80, 8\n−2, 7, 90, 3');
    if (!read.ok) throw new Error('refused');
    expect(read.value[1]).toEqual({ outsideC: -2, insideC: 7, insideHumidity: 0.9, hours: 3 });
    expect(readDrips(writeDrips([...read.value]))).toEqual(read);
  });
});
