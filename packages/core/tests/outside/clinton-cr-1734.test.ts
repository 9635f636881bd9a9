// J. D. Clinton, "Advanced Structural Geometry Studies, Part I: Polyhedral Subdivision Concepts for
// Structural Applications", NASA CR-1734 (1971): class I by methods 1, 2 and 3. Definitions from
// memory; numbers computed apart from this project.

import { checkNets } from './data/check-nets.ts';
import { edgeDivisions } from './data/edge-divisions.ts';
import { readNets } from './data/net-table.ts';

checkNets(readNets(edgeDivisions));
