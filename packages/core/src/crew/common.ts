// Planning values of the crew that have no published source, or one that was only read in a copy; each
// may be changed in the project. Seconds, metres per second, degrees Celsius.

import { commonPractice, confirmed, type Provenance } from '../loads/provenance.ts';

/** Part of the offered help that does not turn up. */
export const NO_SHOW = 0.4;

/** Standard deviation of the logarithm of the gust that comes about the gust forecast, one day's for all
 * of its hours. */
export const GUST_SD = 0.2;

/** Closing down a stop point where nobody says: seconds and hands. */
export const CLOSE_DOWN = { seconds: 1800, hands: 2 } as const;

/** The way to the next stop point counts as so much longer than planned when work on it is begun. */
export const NIGHT_MARGIN = 1.25;

/** Breaks of a day where nobody says otherwise. */
export const BREAKS = [
  { from: '10:30', to: '10:45' },
  { from: '12:30', to: '13:15' },
  { from: '15:30', to: '15:45' },
] as const;

/** Daylight where nobody said where the site is. */
export const UNKNOWN_LIGHT = { from: 8 * 3600, to: 17 * 3600 } as const;

/** From 30 °C work goes at three quarters of its speed; from 35 °C (95 °F) ten minutes of every two hours
 * are rest besides. */
export const HEAT = { warm: 30, warmPace: 0.75, hot: 35, hotRest: 10 / 120 } as const;

/** Hours of a forecast further apart than this leave a gap, seconds. */
export const FORECAST_GAP = 3 * 3600;

/** Where these come from. */
export const CREW_SOURCES: Readonly<
  Record<'noShow' | 'gust' | 'closing' | 'breaks' | 'heat' | 'rest', Provenance>
> = {
  noShow: commonPractice('40 % of offered help does not turn up (a camp organiser’s ten years)'),
  gust: commonPractice('gusts come within a fifth of the forecast, two days in three'),
  closing: commonPractice(
    'half an hour and two people to close down; a quarter on top of the way to a stop point',
  ),
  breaks: commonPractice('three breaks a day, an hour and a quarter in all'),
  heat: commonPractice('three quarters of the speed in heat (an event camp’s build orientation)'),
  rest: confirmed(
    'California Code of Regulations, Title 8, §3395: at 95 °F ten minutes of rest every two hours (read in a copy)',
  ),
};
