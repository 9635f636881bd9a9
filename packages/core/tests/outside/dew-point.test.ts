// Dew point by the form of the WMO (Vaisala AWS330 manual, Appendix B, citing WMO Annex 4.B, read); 22 °C
// and 78 % give 17.98 °C (assignmentexpert.com 86009, read, with other coefficients); the rows reckoned
// apart from this code.

import { expect, test } from 'vitest';
import { dewPoint, saturation, sealHours, sealWindows } from '../../src/fitout/weather.ts';
import { checked } from './data/checked.ts';

test.each([
  [25, 50, 13.852],
  [20, 60, 11.995],
  [20, 80, 16.442],
  [15, 70, 9.569],
  [10, 90, 8.434],
  [30, 40, 14.925],
  [5, 85, 2.686],
  [22, 78, 17.985],
  [0, 80, -3.04],
])('%d °C and %d %% of humidity', (t, rh, td) => {
  checked({ got: dewPoint(t, rh / 100), expected: td, within: 6e-4 });
  expect(Math.abs(dewPoint(t, rh / 100) - td - 6e-3)).toBeGreaterThan(6e-4);
  checked({
    got: saturation(dewPoint(t, rh / 100)),
    expected: (saturation(t) * rh) / 100,
    ratio: 1e-9,
  });
});

test('vapour pressure over water, hectopascals', () => {
  checked({
    got: [0, 5, 10, 15, 20, 25, 30, 40].map(saturation),
    expected: [6.112, 8.7174, 12.2603, 17.0167, 23.326, 31.6006, 42.3372].concat(saturation(40)),
    within: 6e-5,
  });
  checked({ got: dewPoint(22, 0.78), expected: 17.98, within: 0.04 });
});

test('sealing waits for rain to be over, for the dew to go, and for what comes after', () => {
  const fair = { temperatureC: 20, humidity: 0.6, rainMm: 0 };
  const day = Array.from({ length: 16 }, (_, hour) => ({ ...fair, hour }));
  day[0] = { ...fair, hour: 0, rainMm: 0.5 };
  day[3] = { ...fair, hour: 3, humidity: 0.95 };
  day[4] = { ...fair, hour: 4, temperatureC: 6 };
  day[11] = { ...fair, hour: 11, rainMm: 1 };
  const hours = sealHours(day);
  expect(hours.map(({ why }) => why)).toEqual([
    ...['rain', 'rain before', 'rain before', 'dew', 'cold', null, null],
    ...['rain after', 'rain after', 'rain after', 'rain after', 'rain'],
    ...['rain before', 'rain before', 'not known after', 'not known after'],
  ]);
  expect(sealWindows(hours)).toEqual([{ from: 5, to: 7 }]);
  expect(() => sealHours([day[0], day[0]])).toThrow(/hour 0 of the weather is entered twice/);
});
