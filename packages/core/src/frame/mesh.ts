// The finite elements of a frame. Each panel becomes facets, each side of it a beam, its flange;
// where a seam is bolted, both sides of it share their nodes' movements; where it is snug, their
// rotations too, and both flanges are one beam twice as thick. So a finger-tight seam is a hinge.
//
//    finger   A ──●● B      two nodes that move together and turn each by itself
//    snug     A ──●── B     one node
//
// A hub plate keeps the movements of corners together; where it is known how stiff it is, it has a node
// of its own and a joint from that to each of them.

import { acos } from '../math/angle.ts';
import { joinInto, rootInto } from '../math/sets.ts';
import { add, dot, norm, normalize, pointAt, scale, subtract, type Vec3 } from '../math/vector.ts';
import type {
  Bar,
  Beam,
  Element,
  Facet,
  Joint,
  Prop,
  Section,
  Spring,
} from './elements/element.ts';
import { cornerStiffness, LARGEST_PLATE, type StiffHubPlate } from './hub-plate.ts';
import { cornerAt, joinedCorners } from './joints.ts';
import type { FrameModel } from './model.ts';
import type { FrameParts } from './parts.ts';
import type { Held, Structure } from './structure.ts';

/** The finite elements of a frame, and what they belong to. */
export interface FrameMesh {
  readonly structure: Structure;
  /** Corner of a panel (as in `Joints`) → node. */
  readonly nodeOfCorner: Int32Array;
  /** First corner of each panel. */
  readonly cornerStart: Int32Array;
  /** Node → hub that it stands at, −1 where it lies between hubs or at an anchor. */
  readonly hubOfNode: Int32Array;
  /** Panel → indices of its facets. */
  readonly facets: readonly (readonly number[])[];
  /** Prop → its elements, one for each joint at its hub; guy → likewise. */
  readonly props: readonly (readonly number[])[];
  readonly guys: readonly (readonly number[])[];
  /** Support → its springs' element; −1 where it does not give, or where nothing stands there. */
  readonly springs: readonly number[];
}

/** The mesh of a frame; each side of a panel in `parts` pieces (1 where left out). */
export function meshOf(model: FrameModel, known: FrameParts, parts = 1): FrameMesh {
  if (!(Number.isInteger(parts) && parts >= 1 && parts <= 32))
    throw new RangeError(`sides in ${parts} pieces, expected 1 to 32`);
  const draft = new Draft(model, known, parts);
  return draft.finish();
}

/** A mesh while it is made: nodes by panel first, then drawn together. */
class Draft {
  private readonly points: Vec3[] = [];
  /** Node of the draft → another that has the same rotation, and one that moves with it. */
  private readonly turnsWith: number[] = [];
  private readonly movesWith: number[] = [];
  private readonly elements: Element[] = [];
  private readonly facets: number[][] = [];
  private readonly hubOf: number[] = [];
  private readonly cornerNode: Int32Array;
  private readonly cornerStart: Int32Array;
  /** Panel → side → its nodes from corner to corner. */
  private readonly sides: number[][][] = [];
  private readonly model: FrameModel;
  private readonly known: FrameParts;
  private readonly pieces: number;

  constructor(model: FrameModel, known: FrameParts, pieces: number) {
    this.model = model;
    this.known = known;
    this.pieces = pieces;
    const { cornerStart, moves, turns } = joinedCorners(model);
    this.cornerStart = cornerStart;
    this.cornerNode = new Int32Array(moves.length);
    model.panels.forEach((panel, p) => {
      this.layPanel(p, panel.hubs);
    });
    moves.forEach((leader, corner) => {
      joinInto(this.movesWith, this.cornerNode[leader], this.cornerNode[corner]);
    });
    turns.forEach((leader, corner) => {
      joinInto(this.turnsWith, this.cornerNode[leader], this.cornerNode[corner]);
    });
    this.laySeams();
    if (known.hubPlate) this.layPlates(known.hubPlate);
  }

  private node(point: Vec3, hub = -1): number {
    const node = this.points.push(point) - 1;
    this.turnsWith.push(node);
    this.movesWith.push(node);
    this.hubOf.push(hub);
    return node;
  }

  /** A triangle is laid as it is; a panel with more corners as triangles about its middle. */
  private layPanel(p: number, hubs: readonly number[]): void {
    const corners = hubs.map((hub, i) => {
      const node = this.node(pointAt(this.model.hubs, hub), hub);
      this.cornerNode[this.cornerStart[p] + i] = node;
      return node;
    });
    this.facets.push([]);
    const lines = new Map<string, number[]>();
    if (corners.length === 3) this.layTriangle(p, corners, lines);
    else {
      const sum = corners.reduce<Vec3>((total, node) => add(total, this.points[node]), [0, 0, 0]);
      const middle = this.node(scale(sum, 1 / corners.length));
      corners.forEach((corner, i) => {
        this.layTriangle(p, [corner, corners[(i + 1) % corners.length], middle], lines);
      });
    }
    this.sides.push(
      corners.map((corner, i) => this.line(corner, corners[(i + 1) % corners.length], lines)),
    );
  }

  /** Nodes from one node to another along a straight line, made once. */
  private line(from: number, to: number, lines: Map<string, number[]>): number[] {
    if (this.pieces === 1) return [from, to];
    const known = lines.get(`${from} ${to}`);
    if (known) return known;
    const [a, b] = [this.points[from], this.points[to]];
    const nodes = [from];
    for (let k = 1; k < this.pieces; k++)
      nodes.push(this.node(add(a, scale(subtract(b, a), k / this.pieces))));
    nodes.push(to);
    lines.set(`${from} ${to}`, nodes);
    lines.set(`${to} ${from}`, [...nodes].reverse());
    return nodes;
  }

  /** A triangle in rows from its first corner to its far side, pieces² facets. */
  private layTriangle(p: number, [a, b, c]: readonly number[], lines: Map<string, number[]>): void {
    const n = this.pieces;
    const left = this.line(a, b, lines);
    const right = this.line(a, c, lines);
    const far = this.line(b, c, lines);
    let above = [a];
    for (let r = 1; r <= n; r++) {
      const row = r === n ? far : this.rowBetween(left[r], right[r], r);
      for (let k = 0; k < r; k++) {
        this.facet(p, above[k], row[k], row[k + 1]);
        if (k + 1 < r) this.facet(p, above[k], row[k + 1], above[k + 1]);
      }
      above = row;
    }
  }

  private rowBetween(from: number, to: number, steps: number): number[] {
    const [a, b] = [this.points[from], this.points[to]];
    const row = [from];
    for (let k = 1; k < steps; k++) row.push(this.node(add(a, scale(subtract(b, a), k / steps))));
    row.push(to);
    return row;
  }

  private facet(p: number, a: number, b: number, c: number): void {
    const { thickness, bendingThickness, young, poisson, density } = this.known;
    const facet: Facet = {
      kind: 'facet',
      nodes: [a, b, c],
      thickness,
      bendingThickness,
      young,
      poisson,
      density,
    };
    this.facets[p].push(this.elements.push(facet) - 1);
  }

  private laySeams(): void {
    const bolted = this.sides.map((sides) => sides.map(() => false));
    for (const seam of this.model.seams) {
      const [first, second] = seam.panels.map((panel) => this.sideAt(panel, seam.hubs));
      const [one, other] = [this.sides[seam.panels[0]][first], this.sides[seam.panels[1]][second]];
      const across = this.samePoint(one[0], other[0]) ? other : [...other].reverse();
      const snug = seam.pass !== 'finger';
      for (let k = 1; k + 1 < one.length; k++) {
        joinInto(this.movesWith, one[k], across[k]);
        if (snug) joinInto(this.turnsWith, one[k], across[k]);
      }
      bolted[seam.panels[0]][first] = bolted[seam.panels[1]][second] = true;
      const out = add(this.outward(seam.panels[0]), this.outward(seam.panels[1]));
      this.flange(one, out, snug ? 2 : 1);
      if (!snug) this.flange(across, out, 1);
    }
    this.sides.forEach((sides, p) => {
      sides.forEach((nodes, side) => {
        if (!bolted[p][side]) this.flange(nodes, this.outward(p), 1);
      });
    });
  }

  /** A node for each hub plate, which moves with the hub, and a joint from it to every corner. */
  private layPlates(plate: StiffHubPlate): void {
    const nodes = new Map<number, number>();
    this.model.panels.forEach(({ hubs }, p) => {
      hubs.forEach((hub, i) => {
        if (!this.model.plates[hub]) return;
        const corner = this.cornerNode[this.cornerStart[p] + i];
        const at = pointAt(this.model.hubs, hub);
        const middle = nodes.get(hub) ?? this.node(at, hub);
        nodes.set(hub, middle);
        joinInto(this.movesWith, corner, middle);
        const sides = [hubs[(i + 1) % hubs.length], hubs[(i + hubs.length - 1) % hubs.length]].map(
          (other) => subtract(pointAt(this.model.hubs, other), at),
        );
        const shortest = Math.min(...sides.map(norm));
        if (plate.boltCircle > LARGEST_PLATE * shortest)
          throw new RangeError(
            `a hub plate with a bolt circle of ${plate.boltCircle} m at hub ${hub}, where a side is ${shortest.toFixed(3)} m: expected up to ${LARGEST_PLATE} of it`,
          );
        const theta = acos(dot(normalize(sides[0]), normalize(sides[1])));
        const joint: Joint = {
          kind: 'joint',
          nodes: [middle, corner],
          stiffness: cornerStiffness(plate, theta),
        };
        this.elements.push(joint);
      });
    });
  }

  private sideAt(panel: number, hubs: readonly [number, number]): number {
    const own = this.model.panels[panel].hubs;
    const [a, b] = hubs.map((hub) => cornerAt(this.model, this.cornerStart, panel, hub));
    const [i, j] = [a - this.cornerStart[panel], b - this.cornerStart[panel]];
    if ((i + 1) % own.length === j) return i;
    if ((j + 1) % own.length === i) return j;
    throw new Error(`panel ${panel} has no side from hub ${hubs[0]} to hub ${hubs[1]}`);
  }

  private samePoint(a: number, b: number): boolean {
    return this.hubOf[a] === this.hubOf[b];
  }

  private outward(p: number): Vec3 {
    const { hubs } = this.model.panels[p];
    const points = hubs.map((hub) => pointAt(this.model.hubs, hub));
    let normal: Vec3 = [0, 0, 0];
    points.forEach((a, i) => {
      const b = points[(i + 1) % points.length];
      normal = add(normal, [
        (a[1] - b[1]) * (a[2] + b[2]),
        (a[2] - b[2]) * (a[0] + b[0]),
        (a[0] - b[0]) * (a[1] + b[1]),
      ]);
    });
    return normalize(normal);
  }

  /** Beams along a line of nodes, as many flanges thick as told; axis y points outwards. */
  private flange(nodes: readonly number[], out: Vec3, flanges: number): void {
    const { young, poisson, density, flangeDepth, flangeThickness } = this.known;
    const section = plateSection(flangeDepth, flanges * flangeThickness);
    const shear = young / (2 * (1 + poisson));
    for (let k = 0; k + 1 < nodes.length; k++) {
      const beam: Beam = {
        kind: 'beam',
        nodes: [nodes[k], nodes[k + 1]],
        section,
        young,
        shear,
        axisY: out,
        density,
      };
      this.elements.push(beam);
    }
  }

  finish(): FrameMesh {
    const { model } = this;
    const held: Held[] = [];
    const springs = model.supports.map(({ hub, stiffness }) => {
      const [node] = this.jointsAtHub(hub);
      if (node === undefined) return -1;
      if (stiffness === null) {
        held.push({ node, directions: null });
        return -1;
      }
      const spring: Spring = { kind: 'spring', nodes: [node], stiffness: [...stiffness, 0, 0, 0] };
      return this.elements.push(spring) - 1;
    });
    const props = model.props.map(({ hub, along, stiffness }) =>
      this.jointsAtHub(hub).map((node) => {
        const stiff = stiffness ?? this.stiff();
        const prop: Prop = { kind: 'prop', nodes: [node], along, stiffness: stiff };
        return this.elements.push(prop) - 1;
      }),
    );
    const guys = model.guys.map(({ hub, anchor, axialStiffness, pretension }) =>
      this.jointsAtHub(hub).map((node, _, all) => {
        const far = this.node(anchor);
        held.push({ node: far, directions: null });
        const guy: Bar = {
          kind: 'bar',
          nodes: [node, far],
          area: 1 / all.length,
          young: axialStiffness,
          only: 'pull',
          pretension: pretension / all.length,
        };
        return this.elements.push(guy) - 1;
      }),
    );
    return { ...this.numbered(held), springs, props, guys };
  }

  /** Stiffness of what is said not to give: a thousand times that of a seam along itself. */
  private stiff(): number {
    const { young, flangeDepth, flangeThickness, thickness } = this.known;
    return 1e3 * young * (2 * flangeDepth * flangeThickness + thickness * flangeDepth);
  }

  /** One node of each joint at a hub. */
  private jointsAtHub(hub: number): number[] {
    const leaders = new Set<number>();
    this.hubOf.forEach((one, node) => {
      if (one === hub) leaders.add(rootInto(this.movesWith, node));
    });
    return [...leaders];
  }

  /** Draws nodes that turn together into one, in the order of the first of each. */
  private numbered(held: readonly Held[]): Omit<FrameMesh, 'springs' | 'props' | 'guys'> {
    const number = new Int32Array(this.points.length).fill(-1);
    const kept: number[] = [];
    this.points.forEach((_, node) => {
      const leader = rootInto(this.turnsWith, node);
      if (number[leader] < 0) number[leader] = kept.push(leader) - 1;
      number[node] = number[leader];
    });
    const first = new Map<number, number>();
    const movesWith = Int32Array.from(kept, (node, k) => {
      const leader = rootInto(this.movesWith, node);
      if (!first.has(leader)) first.set(leader, k);
      return first.get(leader) as number;
    });
    const elements = this.elements.map(
      (element) =>
        ({ ...element, nodes: element.nodes.map((node) => number[node]) }) as unknown as Element,
    );
    return {
      structure: {
        nodes: Float64Array.from(kept.flatMap((node) => this.points[node])),
        elements,
        held: held.map(({ node, directions }) => ({ node: number[node], directions })),
        movesWith,
      },
      nodeOfCorner: this.cornerNode.map((node) => number[node]),
      cornerStart: this.cornerStart,
      hubOfNode: Int32Array.from(kept, (node) => this.hubOf[node]),
      facets: this.facets,
    };
  }
}

/** A flat bar `deep` along its axis y and `thick` along z, metres; torsion by de Saint-Venant's
 * series, its first terms (thin bar: t³ d (1 − 0.63 t/d)/3). */
export function plateSection(deep: number, thick: number): Section {
  const [long, short] = deep > thick ? [deep, thick] : [thick, deep];
  return {
    area: deep * thick,
    iz: (thick * deep ** 3) / 12,
    iy: (deep * thick ** 3) / 12,
    torsion: (long * short ** 3 * (1 - (0.63 * short) / long)) / 3,
  };
}
