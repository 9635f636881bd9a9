// Python 3's own zipfile and xml.etree: an independent reader of the 3MF package. What it finds (parts in
// place, millimetres, volume by its own sum) is held to the parts as made; edges are counted by it as well.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { meshBox, meshVolume } from '../../src/patterns/mesh.ts';
import { bedMesh, snapBeds } from '../../src/patterns/snap-beds.ts';
import { snapParts } from '../../src/patterns/snap-parts.ts';
import { toThreeMf } from '../../src/patterns/three-mf.ts';
import { ball } from '../patterns/fixtures.ts';
import { checked } from './data/checked.ts';

const script = `
import sys, json, zipfile, collections
import xml.etree.ElementTree as tree
z = zipfile.ZipFile(sys.argv[1])
assert z.testzip() is None
rels = tree.fromstring(z.read('_rels/.rels'))
start = [r.get('Target') for r in rels if r.get('Type').endswith('/3dmodel')][0]
types = [t.get('Extension') for t in tree.fromstring(z.read('[Content_Types].xml'))]
model = tree.fromstring(z.read(start.lstrip('/')))
n = {'m': 'http://schemas.microsoft.com/3dmanufacturing/core/2015/02'}
objects = {}
for o in model.findall('.//m:object', n):
    v = [tuple(float(p.get(k)) for k in 'xyz') for p in o.findall('.//m:vertex', n)]
    t = [tuple(int(f.get(k)) for k in ('v1', 'v2', 'v3')) for f in o.findall('.//m:triangle', n)]
    e = collections.Counter((f[i], f[(i + 1) % 3]) for f in t for i in range(3))
    bad = sum(1 for (a, b), c in e.items() if c != 1 or e.get((b, a)) != 1)
    objects[o.get('id')] = (o.get('name'), v, t, bad)
volume, box, names, bad = 0.0, [1e9, 1e9, 1e9, -1e9, -1e9, -1e9], collections.Counter(), 0
for i in model.findall('.//m:build/m:item', n):
    name, v, t, wrong = objects[i.get('objectid')]
    m = [float(x) for x in i.get('transform').split()]
    v = [tuple(sum(p[r] * m[3 * r + c] for r in range(3)) + m[9 + c] for c in range(3)) for p in v]
    names[name] += 1
    bad += wrong
    for p in v:
        for c in range(3):
            box[c] = min(box[c], p[c]); box[3 + c] = max(box[3 + c], p[c])
    for a, b, c in t:
        (x, y, w), (p, q, r), (f, g, h) = v[a], v[b], v[c]
        volume += (x * (q * h - r * g) + y * (r * f - p * h) + w * (p * g - q * f)) / 6
print(json.dumps({'unit': model.get('unit'), 'types': types, 'volume': volume, 'box': box, 'names': names, 'bad': bad}))
`;

const python = spawnSync('python3', ['--version']).status === 0;
if (!python) console.log('python3 is not installed: 3MF is not read by its zipfile and xml.etree');

test.skipIf(!python)(
  'reads a bed of parts where they lie, closed, and as large as they are',
  () => {
    const made = snapParts(ball(1, 2), ['1'], { scale: 20, wall: 3, clearance: 0.2, peg: 4 });
    if (!made.ok) throw new Error(made.reason);
    const { parts } = made;
    const laid = snapBeds(parts, [220, 220, 250])?.beds[0];
    if (!laid) throw new Error('they fit');
    const folder = mkdtempSync(join(tmpdir(), 'shellraise-3mf-'));
    try {
      const file = join(folder, 'bed.3mf');
      const meshes = parts.map(({ name, mesh }) => ({ name, mesh }));
      writeFileSync(file, toThreeMf(meshes, 'A <bed> & more', laid));
      const ran = spawnSync('python3', ['-c', script, file], { encoding: 'utf8' });
      expect(ran.stderr).toBe('');
      const told = JSON.parse(ran.stdout);
      const mesh = bedMesh(parts, laid);
      const { least, most } = meshBox(mesh);
      checked({ what: 'volume', got: told.volume, expected: meshVolume(mesh), ratio: 1e-5 });
      checked({ what: 'box', got: told.box, expected: [...least, ...most], within: 0.001 });
      expect(Math.abs(told.volume / (1.0001 * meshVolume(mesh)) - 1)).toBeGreaterThan(1e-5);
      expect(told).toMatchObject({ unit: 'millimeter', bad: 0, types: ['rels', 'model'] });
      const count = (index: number): number => laid.filter(({ part }) => part === index).length;
      expect(told.names).toEqual(
        Object.fromEntries(parts.map(({ name }, i) => [name, count(i)]).filter(([, n]) => n !== 0)),
      );
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  },
);
