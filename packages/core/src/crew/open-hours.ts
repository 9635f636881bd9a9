// Which slots of time are open to each class of tasks, in one weather after the other. Ten thousand runs
// change little of it: a day on which the wind holds nobody back in the last weather and in this one, and
// after which it goes on as before, is as it was.

import type { HourClass } from './compile.ts';
import type { PlanHours } from './hours.ts';
import type { SerialCalendar } from './serial.ts';

/** Writes `until` and `next` of a calendar for days whose gusts come as so many times the forecast: a factor
 * a day, over 0. */
export type OpenHoursInto = (gustFactor: Float64Array) => void;

/** The writer of a calendar. Unknown gusts hold nobody back. Work goes on only while anybody is there
 * (`attended`: slot → 1), save what only waits. Nobody else may write those two arrays. */
export function openHoursInto(
  calendar: Pick<SerialCalendar, 'until' | 'next' | 'slots' | 'slotsPerDay'>,
  { open, gust }: PlanHours,
  classes: readonly HourClass[],
  attended: Uint8Array,
): OpenHoursInto {
  const { until, next, slots, slotsPerDay } = calendar;
  const days = slots / slotsPerDay;
  /** Class × day + day → the greatest gust in which its work would go on; -1 where none is known. */
  const most = new Float64Array(classes.length * days).fill(-1);
  classes.forEach(({ light }, c) => {
    for (let s = 0; s < slots; s++) {
      const x = c * days + Math.floor(s / slotsPerDay);
      if (open[light][s] === 1 && (light === 'waits' || attended[s] === 1) && gust[s] > most[x])
        most[x] = gust[s];
    }
  });
  /** 1 where a day stands as without wind, and with what came after it and comes out before it. */
  const calm = new Uint8Array(most.length);
  const [endAfter, firstAfter, endBefore, firstBefore] = [0, 1, 2, 3].map(
    () => new Int32Array(most.length),
  ) as [Int32Array, Int32Array, Int32Array, Int32Array];
  return (gustFactor) => {
    for (let c = 0; c < classes.length; c++) {
      const { light, gustLimit } = classes[c];
      const lit = open[light];
      const alone = light === 'waits';
      const row = c * slots;
      let [end, first] = [slots, slots];
      for (let day = days - 1; day >= 0; day--) {
        const x = c * days + day;
        const limit = gustLimit / gustFactor[day];
        const isCalm = !(most[x] > limit);
        if (isCalm && calm[x] === 1 && endAfter[x] === end && firstAfter[x] === first) {
          end = endBefore[x];
          first = firstBefore[x];
          continue;
        }
        calm[x] = isCalm ? 1 : 0;
        endAfter[x] = end;
        firstAfter[x] = first;
        for (let s = (day + 1) * slotsPerDay - 1; s >= day * slotsPerDay; s--) {
          if (lit[s] === 1 && (alone || attended[s] === 1) && !(gust[s] > limit)) {
            until[row + s] = end;
            first = s;
          } else {
            until[row + s] = s;
            end = s;
          }
          next[row + s] = first;
        }
        endBefore[x] = end;
        firstBefore[x] = first;
      }
    }
  };
}
