// The files of a model to save: all as one zip, or one by one.

import type { ModelFile } from '@shellraise/core';
import { fileName } from '../../files/save-file.ts';
import { useWords } from '../../words/words.ts';

/** The ways to save; `zip`: all files. */
export function ModelFiles({
  files,
  zip,
  name,
}: {
  files: readonly ModelFile[];
  zip: Uint8Array;
  name: string;
}) {
  const words = useWords().patterns;
  return (
    <>
      <p>
        <button type="button" onClick={() => save(`${fileName(name)}.zip`, zip, 'application/zip')}>
          {words.saveAll}
        </button>
      </p>
      <details className="model-files">
        <summary>{words.files(files.length)}</summary>
        <ul>
          {files.map(({ name: one, text }) => (
            <li key={one}>
              <button
                type="button"
                aria-label={words.save(one)}
                onClick={() => save(one, text, typeOf(one))}
              >
                {one}
              </button>
            </li>
          ))}
        </ul>
      </details>
    </>
  );
}

const types: Readonly<Record<string, string>> = {
  svg: 'image/svg+xml',
  dxf: 'image/vnd.dxf',
  stl: 'model/stl',
  '3mf': 'model/3mf',
  glb: 'model/gltf-binary',
};

const typeOf = (name: string): string =>
  types[name.split('.').at(-1) ?? ''] ?? 'application/octet-stream';

/** Hands a file to the browser. */
function save(name: string, data: string | Uint8Array, type: string): void {
  const url = URL.createObjectURL(new Blob([data as BlobPart], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
