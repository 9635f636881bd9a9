// H. S. M. Coxeter, "Virus macromolecules and geodesic domes" (1972), the notation {3,q+}b,c; D.
// Caspar & A. Klug (1962); M. Goldberg (1937). Classes I to III on three solids; numbers computed
// apart from this project.

import { checkNets } from './data/check-nets.ts';
import { latticeDivisions } from './data/lattice-divisions.ts';
import { readNets } from './data/net-table.ts';

checkNets(readNets(latticeDivisions));
