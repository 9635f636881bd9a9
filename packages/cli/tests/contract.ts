// What `shape --json` promises, checked on its own: nothing here comes from the engine.

export interface ShapeDoc {
  readonly radius: number;
  readonly radiusSd: number;
  readonly closed: boolean;
  readonly hubs: readonly (readonly [number, number, number])[];
  readonly places: readonly {
    readonly hubs: readonly number[];
    readonly kind: string;
    readonly turn: number;
  }[];
  readonly stock: Readonly<
    Record<string, { readonly have: number | null; readonly places: number }>
  >;
  readonly residual: number;
  readonly subdivision: object | null;
  readonly probability: number;
  readonly suspects: readonly { readonly kind: string; readonly side: number }[];
}

/** Kind → measured hub-to-hub sides, metres. */
export type Sides = Readonly<Record<string, readonly number[]>>;

/** Places whose sides are off those of their kind by more than `tolerance` metres; suspect sides
 * are told apart by the document itself and left out. */
export function misfits(doc: ShapeDoc, sides: Sides, tolerance: number): string[] {
  const suspect = new Set(doc.suspects.map(({ kind, side }) => `${kind}/${side}`));
  return doc.places.flatMap(({ hubs, kind, turn }, p) =>
    hubs.flatMap((hub, i) => {
      const side = (turn + i) % hubs.length;
      const expected = sides[kind]?.[side] ?? Number.NaN;
      const length = distance(doc.hubs[hub], doc.hubs[hubs[(i + 1) % hubs.length] as number]);
      const fits = Math.abs(length - expected) <= tolerance || suspect.has(`${kind}/${side}`);
      return fits && sides[kind]?.length === hubs.length
        ? []
        : [`place ${p}, side ${i}: ${length} m, kind ${kind} has ${expected} m`];
    }),
  );
}

/** What keeps the net from being one closed surface, oriented outwards, on its sphere. */
export function flaws(doc: ShapeDoc): string[] {
  const directed = new Set<string>();
  const found: string[] = [];
  for (const { hubs } of doc.places)
    hubs.forEach((hub, i) => {
      const key = `${hub}-${hubs[(i + 1) % hubs.length]}`;
      if (directed.has(key)) found.push(`two places run along ${key}`);
      directed.add(key);
    });
  for (const key of directed) {
    const [from, to] = key.split('-');
    if (!directed.has(`${to}-${from}`)) found.push(`nothing meets ${key}`);
  }
  const euler = doc.hubs.length - directed.size / 2 + doc.places.length;
  if (euler !== 2) found.push(`hubs − seams + places is ${euler}`);
  doc.hubs.forEach((hub, h) => {
    if (Math.abs(Math.hypot(...hub) - doc.radius) > 1e-6) found.push(`hub ${h} is off the sphere`);
  });
  doc.places.forEach(({ hubs }, p) => {
    const [a, b, c] = hubs.map((hub) => doc.hubs[hub]);
    if (a && b && c && volume(a, b, c) <= 0) found.push(`place ${p} is inside out`);
  });
  return found;
}

type Vector = readonly [number, number, number];

const distance = (a: Vector | undefined, b: Vector | undefined): number =>
  a && b ? Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]) : Number.NaN;

const volume = (a: Vector, b: Vector, c: Vector): number =>
  a[0] * (b[1] * c[2] - b[2] * c[1]) +
  a[1] * (b[2] * c[0] - b[0] * c[2]) +
  a[2] * (b[0] * c[1] - b[1] * c[0]);
