// A record of 200,000 entries: how long it takes to open (read, check, fold and show), and how long one
// more tap takes until the state of what it touched is known.

import type { Line } from '../../../scripts/bench-line.d.ts';
import { seededRandom } from '../src/math/random.ts';
import { netShell } from '../src/nets/kinds.ts';
import { type Entry, readEntry } from '../src/record/entry.ts';
import { RecordLog } from '../src/record/log.ts';
import { recordPlan } from '../src/record/names.ts';
import { recordState } from '../src/record/state.ts';
import { coursesOf } from '../src/shell/courses.ts';
import { cpuMs } from './clock.ts';

const ENTRIES = 200_000;
const TAPS = 1000;

/** Prints times in milliseconds. */
export function main(): readonly Line[] {
  const { shell } = netShell({ solid: 'icosahedron', b: 6, c: 0, division: 'equal chords' }, 3);
  const plan = recordPlan(shell, coursesOf(shell));
  const texts = written(plan.seams);
  const start = cpuMs();
  const log = new RecordLog();
  for (const text of texts) {
    const read = readEntry(JSON.parse(text));
    if (!read.ok) throw new Error(JSON.stringify(read.faults));
    log.add(read.value);
  }
  const folded = cpuMs();
  const state = recordState(log, plan);
  const shown = cpuMs();
  console.log(
    `${log.size} entries, ${plan.seams.length} seams: read and folded in ${ms(folded - start)}, state in ${ms(shown - folded)}, ${state.questions.length} questions`,
  );
  const taps: number[] = [];
  for (let i = 0; i < TAPS; i++) {
    const seam = plan.seams[i % plan.seams.length] as string;
    const before = cpuMs();
    log.add(log.write({ kind: 'seam pass', seam, pass: 'snug' }, pen(i)));
    recordState(log, plan);
    taps.push(cpuMs() - before);
  }
  taps.sort((a, b) => a - b);
  console.log(
    `one more tap with the whole state after it: median ${ms(taps[TAPS / 2] as number)}, 99 % ${ms(taps[(TAPS * 99) / 100] as number)}, worst ${ms(taps[TAPS - 1] as number)}`,
  );
  return [
    {
      what: 'record file of 200 000 entries: read, checked, folded',
      found: folded - start,
      unit: 'ms',
    },
    {
      what: 'a tap on it with the whole state after it, 99 %',
      found: taps[(TAPS * 99) / 100] as number,
      unit: 'ms',
      wanted: 50,
    },
  ];
}

const ms = (time: number): string => `${time.toFixed(1)} ms`;
const pen = (i: number) => ({ writer: 'bench000', by: 'Ada', at: 1_780_000_000_000 + i * 1000 });

/** Entries of twenty phones that take turns at random. */
function written(seams: readonly string[]): string[] {
  const random = seededRandom(1);
  const log = new RecordLog();
  const texts: string[] = [];
  for (let i = 0; i < ENTRIES; i++) {
    const entry: Entry = log.write(
      {
        kind: 'seam pass',
        seam: seams[random.below(seams.length)] as string,
        pass: (['finger', 'snug', 'final'] as const)[random.below(3)] as 'finger',
      },
      { ...pen(i), writer: `phone${String(random.below(20)).padStart(4, '0')}` },
    );
    log.add(entry);
    texts.push(JSON.stringify(entry));
  }
  return texts;
}
