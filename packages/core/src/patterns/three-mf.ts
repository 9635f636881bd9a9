// Meshes as a 3MF package: a zip of three XML files, millimetres, one object a mesh. After the 3MF Core
// Specification 1.3 (3MF Consortium), from memory. The same meshes give the same bytes.

import { toRadians } from '../math/angle.ts';
import { escapeXml } from '../papers/svg.ts';
import { zipOf } from '../papers/zip.ts';
import type { Mesh } from './mesh.ts';

/** A mesh by name. */
export interface NamedMesh {
  readonly name: string;
  readonly mesh: Mesh;
}

const head = '<?xml version="1.0" encoding="UTF-8"?>\n';
const types = `${head}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>`;
const relations = `${head}<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Target="/3D/3dmodel.model" Id="rel0" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>`;

/** A mesh where it is printed: turned about z, then moved, millimetres. */
export interface PlacedItem {
  /** Index of the mesh. */
  readonly part: number;
  /** Anticlockwise seen from above. */
  readonly turnDeg: number;
  readonly x: number;
  readonly y: number;
}

/** The bytes of a 3MF file: every mesh once where it stands, or as often and where `placed` has it. */
export function toThreeMf(
  meshes: readonly NamedMesh[],
  title: string,
  placed?: readonly PlacedItem[],
): Uint8Array {
  const objects = meshes.map(({ name, mesh }, i) => objectOf(name, mesh, i + 1));
  const items = placed?.map(itemOf) ?? meshes.map((_, i) => `<item objectid="${i + 1}"/>`);
  const model = `${head}<model unit="millimeter" xml:lang="en" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02"><metadata name="Title">${escapeXml(title)}</metadata><resources>${objects.join('')}</resources><build>${items.join('')}</build></model>`;
  return zipOf([
    { name: '[Content_Types].xml', text: types },
    { name: '_rels/.rels', text: relations },
    { name: '3D/3dmodel.model', text: model },
  ]);
}

/** The transform has the images of the axes as its rows. */
function itemOf({ part, turnDeg, x, y }: PlacedItem): string {
  const angle = toRadians(turnDeg);
  const [c, s] = [fine(Math.cos(angle)), fine(Math.sin(angle))];
  return `<item objectid="${part + 1}" transform="${c} ${s} 0 ${fine(-s)} ${c} 0 0 0 1 ${mm(x)} ${mm(y)} 0"/>`;
}

function objectOf(name: string, { points, triangles }: Mesh, id: number): string {
  const vertices: string[] = [];
  for (let i = 0; i < points.length; i += 3)
    vertices.push(
      `<vertex x="${mm(points[i])}" y="${mm(points[i + 1])}" z="${mm(points[i + 2])}"/>`,
    );
  const faces: string[] = [];
  for (let i = 0; i < triangles.length; i += 3)
    faces.push(
      `<triangle v1="${triangles[i]}" v2="${triangles[i + 1]}" v3="${triangles[i + 2]}"/>`,
    );
  return `<object id="${id}" type="model" name="${escapeXml(name)}"><mesh><vertices>${vertices.join('')}</vertices><triangles>${faces.join('')}</triangles></mesh></object>`;
}

const fine = (value: number): number => Math.round(value * 1e9) / 1e9 + 0;

/** To a tenth of a micrometre. */
const mm = (value: number | undefined): string =>
  String(Math.round((value as number) * 1e4) / 1e4 + 0);
