// Lengths as people type them become metres; what is none comes back as a fault.
import { describeFault, readLength, writeLength } from '@shellraise/core';

for (const typed of ['43 7/16"', '1103 mm', "3' 7-7/16", 'a yard'])
  console.log(typed, '=', shown(readLength(typed)));

function shown(read) {
  if (!read.ok) return read.faults.map(describeFault).join('; ');
  return `${read.value.toFixed(4)} m = ${writeLength(read.value, { unit: 'in', step: 16 })}`;
}

// → 43 7/16" = 1.1033 m = 43 7/16"
// → 1103 mm = 1.1030 m = 43 7/16"
// → 3' 7-7/16 = 1.1033 m = 43 7/16"
// → a yard = : found "a yard", expected a number with a unit (mm, cm, m, in, ft)
