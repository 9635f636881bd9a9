// Every fault of a file at once, each with its place.
import { describeFault, readProject } from '@shellraise/core';

const read = readProject(
  '{ "shellraise": 1, "pile": { "readingSd": -1, "kinds": [{ "id": "1" }] } }',
);
if (!read.ok) for (const fault of read.faults) console.log(describeFault(fault));

// → pile.readingSd: found -1, expected a number of at least 0.00005
// → pile.kinds[0].sides: found nothing, expected a list
