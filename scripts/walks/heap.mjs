// The heap of the walks, an invented one: sixty of the eighty panels of a ball 5 m across, each edge of
// an icosahedron in two steps, read once each in centimetres with a tape's noise, and three mistakes.

/** Length of the two edges at radius 1: the chord of half an edge's angle, and of a mid-point to the next. */
const SHORT = 0.54653;
const LONG = 0.618034;
const RADIUS_CM = 250.4;
const NOISE_CM = 0.1;
const SEED = 20261130;

/** The first row as somebody writes it who was told nothing. */
export const ownNames = 'panel,mark,a cm,b cm,c cm';
/** The first row as the app asks for it. */
export const askedNames = 'tag,mark,side1 cm,side2 cm,side3 cm';

/** What the tape says of the panel whose digits were swapped, when it is held to it again. */
export const mistakes = { swapped: '21', again: '137.0 cm', inches: '37', tagRow: 44, tag: '44' };

/** The spreadsheet under a first row. */
export function heapCsv(names) {
  const random = seeded(SEED);
  const [short, long] = [RADIUS_CM * SHORT, RADIUS_CM * LONG];
  const rows = Array.from({ length: 60 }, (_, i) => {
    const isEven = i % 4 === 3;
    const sides = isEven ? [long, long, long] : [long, short, short];
    const turn = Math.floor(random() * 3);
    const read = sides.map((_, j) =>
      (sides[(j + turn) % 3] + NOISE_CM * normal(random)).toFixed(1),
    );
    return { tag: String(i + 1).padStart(2, '0'), mark: isEven ? 'K' : 'W', read };
  });
  const [swapped, inches, tagged] = [rows[20], rows[36], rows[43]];
  // 137.0 becomes 173.0; a side read off the inch edge of the tape; 44 called 43.
  swapped.read[1] = swapped.read[1].replace(/^(.)(.)(.)/, '$1$3$2');
  inches.read[2] = (Number(inches.read[2]) / 2.54).toFixed(1);
  tagged.tag = '43';
  return `${[names, ...rows.map(({ tag, mark, read }) => [tag, mark, ...read].join(','))].join('\n')}\n`;
}

function seeded(seed) {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

const normal = (random) =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
