// Runs CHOLMOD on a matrix, if this machine has a C compiler and the library (Debian:
// libsuitesparse-dev), to print how much longer we take.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { SymmetricMatrix } from '../../src/math/sparse/symmetric.ts';

/** Times of CHOLMOD, milliseconds. */
export interface CholmodTimes {
  readonly analyse: number;
  readonly factor: number;
  readonly solve: number;
  readonly whole: number;
  /** Entries of its L. */
  readonly entries: number;
  /** Largest residual, part of the load. */
  readonly residual: number;
}

/** The least times of `runs`, or the reason why there are none. */
export function cholmodTimes(
  matrix: SymmetricMatrix,
  load: Float64Array,
  runs: number,
): CholmodTimes | string {
  const folder = mkdtempSync(join(tmpdir(), 'shellraise-cholmod-'));
  try {
    const program = join(folder, 'cholmod');
    const source = fileURLToPath(new URL('../../../bench/frame/cholmod.c', import.meta.url));
    const compiled = spawnSync(
      'cc',
      ['-O2', '-I/usr/include/suitesparse', source, '-o', program, '-lcholmod', '-lm'],
      { encoding: 'utf8' },
    );
    if (compiled.error) return 'there is no C compiler';
    if (compiled.status !== 0) return 'CHOLMOD is not installed (Debian: libsuitesparse-dev)';
    const data = join(folder, 'matrix');
    const parts = [Int32Array.of(matrix.n, matrix.row.length), matrix.start, matrix.row];
    writeFileSync(
      data,
      Buffer.concat(
        [...parts, matrix.value, load].map((x) =>
          Buffer.from(x.buffer, x.byteOffset, x.byteLength),
        ),
      ),
    );
    const { status, stdout } = spawnSync(program, [data, String(runs)], { encoding: 'utf8' });
    if (status !== 0) return `CHOLMOD ended with ${status}`;
    const [analyse, factor, solve, whole, entries, residual] = stdout.trim().split(' ').map(Number);
    return { analyse, factor, solve, whole, entries, residual };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
